// SPDX-License-Identifier: MIT
#include "view/bars.hpp"

#include "view/chart.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace shimlight::view {
namespace {

constexpr float left_px = 36, top_px = 48, foot_px = 20;
constexpr const char* names[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

std::string number(double v, int decimals, Units units) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", decimals, v);
    const bool none = std::strtod(text, nullptr) == 0; // no −0
    return grouped(none && text[0] == '-' ? text + 1 : text, units);
}

void legend(Ui& ui, Box box, const Months& m) {
    ImFont* font = ui.platform.fonts.small;
    float x = box.x + left_px;
    const Box first{x, box.y + 29, 14, 10};
    frame(ui, first, ui.theme.ink, 0, 1.5f);
    text(ui, font, {x + 19, box.y + 25}, ui.theme.ink, m.first_name);
    if (m.second_name.empty()) return;
    x += 19 + text_size(ui, font, m.first_name).x + 16;
    fill(ui, {x, box.y + 29, 14, 10}, ui.theme.lever);
    text_fitted(ui, font, {x + 19, box.y + 25}, box.right() - x - 19, ui.theme.ink, m.second_name);
}

} // namespace

void month_bars(Ui& ui, Box box, const Months& m) {
    const Fonts& fonts = ui.platform.fonts;
    const Theme& t = ui.theme;
    const Box area{box.x + left_px, box.y + top_px, box.w - left_px, box.h - top_px - foot_px};
    const auto y_of = [&](double v) {
        return area.bottom() - area.h * static_cast<float>((v - m.low) / (m.high - m.low));
    };
    text_fitted(ui, fonts.strong, {box.x, box.y}, box.w, t.ink, m.title);
    legend(ui, box, m);
    const std::vector<double> ticks = round_ticks(m.low, m.high, 4);
    const int tick_decimals = m.decimals > 0 ? decimals_of(ticks[1] - ticks[0]) : 0;
    for (const double tick : ticks) {
        ui.list->AddLine({area.x, y_of(tick)}, {area.right(), y_of(tick)}, t.rule);
        text(ui, fonts.small, {area.x - 5, y_of(tick) - 9}, t.soft,
             number(tick, tick_decimals, ui.units), Align::right);
    }
    std::string words;
    const float step = area.w / 12, bar = std::max(3.0f, step * 0.36f), zero = y_of(0);
    for (std::size_t i = 0; i < 12; ++i) {
        const float x = area.x + step * (static_cast<float>(i) + 0.5f);
        const auto box_of = [&](double v, float from) {
            const float y = y_of(v);
            return Box{from, std::min(y, zero), bar, std::max(1.0f, std::fabs(zero - y))};
        };
        if (std::fabs(y_of(m.first[i]) - zero) >= 2)
            frame(ui, box_of(m.first[i], x - bar - 0.5f), t.ink, 0, 1.5f);
        if (!m.second_name.empty()) fill(ui, box_of(m.second[i], x + 0.5f), t.lever);
        const bool narrow = step < 30;
        text(ui, fonts.small, {x, area.bottom() + 2}, t.soft,
             narrow ? std::string(names[i], 1) : names[i], Align::centre);
        words += std::string(names[i]) + " " + number(m.first[i], m.decimals, ui.units) +
                 (m.second_name.empty() ? "" : " to " + number(m.second[i], m.decimals, ui.units)) +
                 (i < 11 ? ", " : ".");
    }
    ui.list->AddLine({area.x, zero}, {area.right(), zero}, t.soft);
    note(ui, Role::image, m.id, box, m.title,
         m.first_name + (m.second_name.empty() ? "" : " to " + m.second_name) + ", " + m.unit +
             ": " + words);
}

} // namespace shimlight::view
