// SPDX-License-Identifier: MIT
// Contrast by WCAG 2.2, success criteria 1.4.3 and 1.4.11 (relative luminance of sRGB as there).
#include "view/theme.hpp"

#include "view/temperature_scale.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <vector>

using namespace shimlight::view;

namespace {

constexpr double text_ratio = 4.5, sign_ratio = 3;

double linear(double share) {
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(ImU32 c) {
    const auto part = [c](int shift) { return linear((c >> shift & 255u) / 255.0); };
    return 0.2126 * part(IM_COL32_R_SHIFT) + 0.7152 * part(IM_COL32_G_SHIFT) +
           0.0722 * part(IM_COL32_B_SHIFT);
}

double contrast(ImU32 a, ImU32 b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::fmax(la, lb) + 0.05) / (std::fmin(la, lb) + 0.05);
}

/// What one sees where a colour that lets some light through lies on a ground.
ImU32 laid_on(ImU32 over, ImU32 ground) {
    const double share = (over >> IM_COL32_A_SHIFT & 255u) / 255.0;
    const auto part = [&](int shift) {
        const double a = over >> shift & 255u, b = ground >> shift & 255u;
        return static_cast<unsigned>(std::lround(b + (a - b) * share));
    };
    return IM_COL32(part(IM_COL32_R_SHIFT), part(IM_COL32_G_SHIFT), part(IM_COL32_B_SHIFT), 255);
}

ImU32 ink_of(Rgb c) {
    const auto part = [](float share) { return static_cast<unsigned>(std::lround(255 * share)); };
    return IM_COL32(part(c.r), part(c.g), part(c.b), 255);
}

} // namespace

TEST_CASE("contrast of black and white") {
    CHECK(contrast(IM_COL32_BLACK, IM_COL32_WHITE) == doctest::Approx(21));
}

TEST_CASE("words can be read on everything they stand on, light and dark") {
    for (const bool dark : {false, true}) {
        CAPTURE(dark);
        const Theme& t = theme(dark);
        for (const ImU32 ground : {t.paper, t.card, t.quote, t.outdoor_air, t.indoor_air}) {
            CHECK(contrast(t.ink, ground) >= text_ratio);
            CHECK(contrast(t.soft, ground) >= text_ratio);
            CHECK(contrast(t.water, ground) >= text_ratio);
        }
        for (const ImU32 ground : {t.paper, t.card}) {
            CHECK(contrast(t.lever, ground) >= text_ratio);
            CHECK(contrast(t.better, ground) >= text_ratio);
            CHECK(contrast(t.worse, ground) >= text_ratio);
        }
        // Callouts lie on the wash, on its lines and on the ways of the air.
        std::vector<ImU32> under{t.ink, t.outline, t.water, t.paper, t.lever};
        for (const Rgb& stop : wash_stops)
            under.push_back(ink_of(stop));
        for (const ImU32 ground : under)
            for (const ImU32 words : {t.ink, t.soft, t.water})
                CHECK(contrast(words, laid_on(t.halo, ground)) >= text_ratio);
        CHECK(contrast(t.on_lever, t.lever) >= text_ratio);
        CHECK(contrast(t.lever, t.quote) >= sign_ratio);
    }
}
