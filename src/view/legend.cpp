// SPDX-License-Identifier: MIT
#include "view/legend.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float bar_px = 8;
constexpr int patches = 64;

ImU32 ink(Rgb c) {
    return ImGui::ColorConvertFloat4ToU32({c.r, c.g, c.b, 1});
}

} // namespace

void legend(Ui& ui, const TemperatureScale& scale, Box area) {
    const float width = std::min(220.0f, area.w * 0.4f);
    const Box bar{area.centre().x - width / 2, area.bottom() - legend_height_px + 4, width, bar_px};
    const double span = scale.high_c - scale.low_c;
    const float patch = width / patches;
    for (int i = 0; i < patches; ++i)
        fill(ui, {bar.x + patch * static_cast<float>(i), bar.y, patch + 0.5f, bar_px},
             ink(scale.colour(scale.low_c + span * (i + 0.5) / patches)));
    const auto hinge = static_cast<float>((scale.hinge_c - scale.low_c) / span);
    const float x = bar.x + hinge * width;
    ui.list->AddLine({x, bar.y - 3}, {x, bar.bottom() + 3}, ui.theme.ink, 2);
    ImFont* small = ui.platform.fonts.small;
    const float y = bar.bottom() + 3;
    text(ui, small, {x, y}, ui.theme.ink,
         "dew point " + format_temperature(scale.hinge_c, ui.units), Align::centre);
    text(ui, small, {bar.x - 6, bar.y - 5}, ui.theme.soft, "colder", Align::right);
    text(ui, small, {bar.right() + 6, bar.y - 5}, ui.theme.soft, "room");
    text(ui, small, {area.centre().x, y + 15}, ui.theme.soft,
         "Band along the surface: how much colder than the room", Align::centre);
}

} // namespace shimlight::view
