// SPDX-License-Identifier: MIT
#include "view/legend.hpp"

#include <algorithm>
#include <optional>

namespace shimlight::view {
namespace {

constexpr float bar_px = 8, small_bar_px = 7;
constexpr int patches = 64;
constexpr float small_from_px = 200; // a lower picture is not covered by a legend
constexpr float beside_px = 100;     // for the names of the airs, on both sides
constexpr float edge_px = 8, step_px = 6;

ImU32 ink(Rgb c) {
    return ImGui::ColorConvertFloat4ToU32({c.r, c.g, c.b, 1});
}

struct Words {
    std::string low, hinge, high;
};

Words words_of(const Ui& ui, const TemperatureScale& scale) {
    return {format_temperature(scale.low_c, ui.units),
            "dew point " + format_temperature(scale.hinge_c, ui.units),
            format_temperature(scale.high_c, ui.units)};
}

/// Where the dew point is, or the end that it lies beyond.
float hinge_x(const TemperatureScale& scale, Box bar) {
    const double share = (scale.hinge_c - scale.low_c) / (scale.high_c - scale.low_c);
    return bar.x + bar.w * static_cast<float>(std::clamp(share, 0.0, 1.0));
}

void draw_bar(Ui& ui, const TemperatureScale& scale, Box bar) {
    const double span = scale.high_c - scale.low_c;
    const float patch = bar.w / patches;
    for (int i = 0; i < patches; ++i)
        fill(ui, {bar.x + patch * static_cast<float>(i), bar.y, patch + 0.5f, bar.h},
             ink(scale.colour(scale.low_c + span * (i + 0.5) / patches)));
    frame(ui, bar, faded(ui.theme.soft, 0.6f));
    if (scale.hinge_c < scale.low_c || scale.hinge_c > scale.high_c) return;
    const float x = hinge_x(scale, bar);
    ui.list->AddLine({x, bar.y - 3}, {x, bar.bottom() + 3}, ui.theme.ink, 2);
}

void tell(Ui& ui, const Words& words, Box box) {
    note(ui, Role::output, "slice.legend", box, "Colours of the picture",
         words.low + " coldest, " + words.hinge + ", colder is blue, " + words.high + " warmest");
}

/// The lowest free place at the right edge or the left.
std::optional<Box> free_place(const CalloutPlacer& placer, ImVec2 size) {
    const Ground& g = placer.ground();
    const auto is_free = [&](Box box) {
        if (placer.is_taken(box)) return false;
        for (int i = 0; i <= 6; ++i)
            for (int j = 0; j <= 4; ++j)
                if (g.is_ink({box.x + box.w * static_cast<float>(i) / 6,
                              box.y + box.h * static_cast<float>(j) / 4}))
                    return false;
        return true;
    };
    for (float y = g.area.bottom() - size.y; y > g.area.y; y -= step_px)
        for (const float x : {g.area.x + edge_px, g.area.right() - edge_px - size.x})
            if (const Box box{x, y, size.x, size.y}; is_free(box)) return box;
    return {};
}

} // namespace

void legend(Ui& ui, const TemperatureScale& scale, Box area) {
    const float width = std::min(260.0f, area.w * 0.4f);
    const Box bar{area.centre().x - width / 2, area.bottom() - legend_height_px + 4, width, bar_px};
    const Words words = words_of(ui, scale);
    draw_bar(ui, scale, bar);
    ImFont* small = ui.platform.fonts.small;
    const float y = bar.bottom() + 3;
    text(ui, small, {hinge_x(scale, bar), y}, ui.theme.ink, words.hinge, Align::centre);
    text(ui, small, {bar.x - 6, bar.y - 5}, ui.theme.ink, words.low, Align::right);
    text(ui, small, {bar.right() + 6, bar.y - 5}, ui.theme.ink, words.high);
    std::string about = "Band along the surface: how much colder than the room";
    const std::string more = about + ". Glass faces are counted from outdoors.";
    if (text_size(ui, small, more).x < area.w - 2 * beside_px) about = more;
    text(ui, small, {area.centre().x, y + 15}, ui.theme.soft, about, Align::centre);
    tell(ui, words, {bar.x - 50, bar.y - 5, bar.w + 100, 30});
}

void small_legend(Ui& ui, const TemperatureScale& scale, CalloutPlacer& placer) {
    const Words words = words_of(ui, scale);
    ImFont* font = ui.platform.fonts.small;
    const ImVec2 hinge = text_size(ui, font, words.hinge);
    const float ends = text_size(ui, font, words.low).x + 10 + text_size(ui, font, words.high).x;
    const ImVec2 size{std::max(hinge.x, ends) + 8, 2 * hinge.y + small_bar_px + 10};
    std::optional<Box> place = free_place(placer, size);
    const Box& area = placer.ground().area;
    if (!place && area.h < small_from_px) return;
    if (!place) place = Box{area.x + edge_px, area.bottom() - 26 - size.y, size.x, size.y};
    const Box& b = *place;
    fill(ui, b, ui.theme.halo, 4);
    const Box bar{b.x + 4, b.y + hinge.y + 4, b.w - 8, small_bar_px};
    draw_bar(ui, scale, bar);
    const float x = std::clamp(hinge_x(scale, bar), bar.x + hinge.x / 2, bar.right() - hinge.x / 2);
    text(ui, font, {x, b.y + 1}, ui.theme.ink, words.hinge, Align::centre);
    text(ui, font, {bar.x, bar.bottom() + 2}, ui.theme.ink, words.low);
    text(ui, font, {bar.right(), bar.bottom() + 2}, ui.theme.ink, words.high, Align::right);
    placer.reserve(b);
    tell(ui, words, b);
}

} // namespace shimlight::view
