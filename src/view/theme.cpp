// SPDX-License-Identifier: MIT
#include "view/theme.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr ImU32 rgb(unsigned hex, unsigned alpha = 255) {
    return IM_COL32((hex >> 16) & 255, (hex >> 8) & 255, hex & 255, alpha);
}

constexpr Theme light{rgb(0xF7F3EA), rgb(0xFFFDF8), rgb(0x24292E),     rgb(0x62676B),
                      rgb(0xD9D2C3), rgb(0xA6541C), rgb(0xFFFDF8),     rgb(0x1B6E4E),
                      rgb(0xA93B23), rgb(0xE9EEF0), rgb(0xF9F2E4),     rgb(0xEFE8DA),
                      rgb(0x1F5F92), rgb(0x24292E), rgb(0xFBF8F1, 242)};
constexpr Theme dark_theme{rgb(0x14181D), rgb(0x1B2128), rgb(0xE9E4DA),     rgb(0x9AA3AB),
                           rgb(0x39424B), rgb(0xE0A458), rgb(0x14181D),     rgb(0x7CC5A0),
                           rgb(0xE58A6A), rgb(0x18212B), rgb(0x1F1C1A),     rgb(0x222A32),
                           rgb(0x7DB8E8), rgb(0x0B0E11), rgb(0x14181D, 242)};

} // namespace

const Theme& theme(bool dark) {
    return dark ? dark_theme : light;
}

ImU32 faded(ImU32 colour, float share) {
    const unsigned alpha = (colour >> IM_COL32_A_SHIFT) & 255u;
    const auto scaled =
        static_cast<unsigned>(static_cast<float>(alpha) * std::clamp(share, 0.0f, 1.0f));
    return (colour & ~IM_COL32_A_MASK) | (scaled << IM_COL32_A_SHIFT);
}

} // namespace shimlight::view
