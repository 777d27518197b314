// SPDX-License-Identifier: MIT
#include "view/air_house.hpp"

#include "assess/words.hpp"
#include "opening/crack_stream.hpp"
#include "view/pen.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr double storey_m = 2.8, sill_to_middle_m = 1.4; // a usual storey, its window's middle
constexpr int arrows = 7;
constexpr float most_arrow_px = 54;
constexpr double still_pa = 0.05;

/// Where things stand. The neutral level lies about half-way up; the window's storey is the one
/// nearest to where its height puts it.
struct House {
    int storeys = 2;
    double window_m = 0, neutral_m = 0; ///< above the ground
    float wall_x = 0, right_x = 0, ground_y = 0, px_per_m = 1, roof_px = 0;

    double high_m() const { return storeys * storey_m; }
    float y(double up_m) const { return ground_y - static_cast<float>(up_m) * px_per_m; }
};

House house_of(double above_neutral_m, Box box) {
    House h;
    h.storeys = std::clamp(
        static_cast<int>(std::ceil((std::fabs(above_neutral_m) + 1) / sill_to_middle_m)), 2, 4);
    const int storey =
        std::clamp(static_cast<int>(std::lround(
                       (h.high_m() / 2 + above_neutral_m - sill_to_middle_m) / storey_m)),
                   0, h.storeys - 1);
    h.window_m = storey * storey_m + sill_to_middle_m;
    h.neutral_m = std::clamp(h.window_m - above_neutral_m, 0.3, h.high_m() - 0.3);
    h.ground_y = box.bottom() - 8;
    h.roof_px = box.h * 0.17f;
    h.px_per_m = (box.h - 8 - h.roof_px) / static_cast<float>(h.high_m());
    h.wall_x = box.x + std::max(118.0f, box.w * 0.34f);
    h.right_x = std::min(h.wall_x + std::min(7.0f * h.px_per_m, box.w * 0.3f), box.right() - 112);
    return h;
}

double pressure_at(const opening::Case& c, const House& h, double up_m) {
    opening::Case there = c;
    there.room.height_above_neutral_m = c.room.height_above_neutral_m + up_m - h.window_m;
    return opening::driving_pressure_now(there).pressure_pa;
}

ImU32 way_ink(const Ui& ui, double sign) {
    return sign > 0 ? ui.theme.water : ui.theme.lever;
}

void draw_shell(Ui& ui, const House& h) {
    const ImU32 ink = ui.platform.dark ? ui.theme.soft : ui.theme.ink;
    const float top = h.y(h.high_m()),
                roof = top - std::min((h.right_x - h.wall_x) * 0.22f, h.roof_px - 3);
    fill(ui, {h.wall_x, top, h.right_x - h.wall_x, h.ground_y - top}, ui.theme.indoor_air);
    for (int i = 1; i < h.storeys; ++i)
        ui.list->AddLine({h.wall_x, h.y(i * storey_m)}, {h.right_x, h.y(i * storey_m)},
                         ui.theme.soft, 1);
    ui.list->AddTriangleFilled({h.wall_x - 8, top}, {(h.wall_x + h.right_x) / 2, roof},
                               {h.right_x + 8, top}, ui.theme.quote);
    ui.list->AddTriangle({h.wall_x - 8, top}, {(h.wall_x + h.right_x) / 2, roof},
                         {h.right_x + 8, top}, ink, 1.2f);
    for (const float x : {h.wall_x, h.right_x})
        ui.list->AddLine({x, top}, {x, h.ground_y}, ink, 3);
    ui.list->AddLine({h.wall_x - 60, h.ground_y}, {h.right_x + 40, h.ground_y}, ink, 1.5f);
    for (int i = 0; i < h.storeys; ++i) {
        const float middle = h.y(i * storey_m + sill_to_middle_m), half = 0.7f * h.px_per_m;
        ui.list->AddLine({h.right_x, middle - half}, {h.right_x, middle + half}, ui.theme.paper, 3);
        ui.list->AddLine({h.right_x, middle - half}, {h.right_x, middle + half}, ink, 1);
    }
}

/// Warm air rises in the house: dotted.
void draw_rise(Ui& ui, const House& h) {
    const float x = (h.wall_x + h.right_x) / 2;
    const Way way{{x, h.y(0.5)}, {x, h.y(h.high_m() - 0.6)}};
    stroke(ui, way, ui.theme.lever, 2, return_dash);
    arrow_head(ui, way[0], way[1], ui.theme.lever, 5);
}

void draw_neutral(Ui& ui, const House& h, Box box) {
    const float y = h.y(h.neutral_m);
    stroke(ui, {{h.wall_x - 14, y}, {h.right_x + 14, y}}, ui.theme.ink, 1.5f, {10, 4});
    text_fitted(ui, ui.platform.fonts.small, {h.right_x + 18, y - 9}, box.right() - h.right_x - 20,
                ui.theme.ink, "neutral level");
}

/// Arrows through the wall; as long as the pressure is large.
void draw_pressures(Ui& ui, const opening::Case& c, const House& h) {
    double most = std::fabs(pressure_at(c, h, h.window_m));
    for (int i = 0; i < arrows; ++i)
        most = std::max(most, std::fabs(pressure_at(c, h, h.high_m() * (i + 0.4) / arrows)));
    if (most < still_pa) return;
    const auto one = [&](double up_m, float width) {
        const double pa = pressure_at(c, h, up_m);
        const float length = most_arrow_px * static_cast<float>(std::fabs(pa) / most),
                    y = h.y(up_m);
        if (length < 3) return;
        const ImVec2 far{h.wall_x - 8 - length, y}, near{h.wall_x - 8, y};
        if (pa > 0)
            arrow(ui, far, near, way_ink(ui, pa), width);
        else
            arrow(ui, near, far, way_ink(ui, pa), width);
    };
    for (int i = 0; i < arrows; ++i) {
        const double up = h.high_m() * (i + 0.4) / arrows;
        if (std::fabs(h.y(up) - h.y(h.window_m)) > 9) one(up, 1.5f);
    }
    one(h.window_m, 3);
}

void draw_window(Ui& ui, const House& h, const opening::Case& c, const assess::LeakResult& leak,
                 Box box) {
    const float y = h.y(h.window_m), half = 0.7f * h.px_per_m;
    ui.list->AddLine({h.wall_x, y - half}, {h.wall_x, y + half}, ui.theme.card, 5);
    frame(ui, {h.wall_x - 3, y - half, 6, 2 * half}, ui.theme.water, 0, 1.5f);
    frame(ui, {h.wall_x - 8, y - half - 4, 16, 2 * half + 8}, ui.theme.lever, 4, 2);
    ImFont* small = ui.platform.fonts.small;
    const float x = h.right_x + 18, width = box.right() - x - 2, neutral = h.y(h.neutral_m);
    const float at = std::clamp(
        std::fabs(y - neutral) < 46 ? (y > neutral ? neutral + 14 : neutral - 64) : y - 24, box.y,
        box.bottom() - 56);
    text_fitted(ui, ui.platform.fonts.strong, {x, at}, width, ui.theme.ink, "This window");
    text_fitted(ui, small, {x, at + 18}, width, ui.theme.ink, height_words(c, ui.units, " it"));
    text_fitted(ui, small, {x, at + 34}, width, way_ink(ui, leak.drive.pressure_pa),
                format_pascal(std::fabs(leak.drive.pressure_pa)) +
                    (leak.drive.pressure_pa > 0 ? " inwards" : " outwards"));
}

const char* wind_words(opening::Facade facade) {
    return facade == opening::Facade::windward ? "into this wall"
           : facade == opening::Facade::side   ? "along this wall"
                                               : "from behind";
}

void draw_wind(Ui& ui, const opening::Case& c, const House& h, Box box) {
    ImFont* small = ui.platform.fonts.small;
    text(ui, ui.platform.fonts.strong, {box.x + 4, box.y}, ui.theme.ink,
         "Wind " + format(Quantity::speed_m_s, c.weather.wind_m_s, ui.units));
    text(ui, small, {box.x + 4, box.y + 18}, ui.theme.ink, wind_words(c.room.facade));
    if (c.weather.wind_m_s <= 0) return;
    const float length = std::clamp(6.0f * static_cast<float>(c.weather.wind_m_s), 10.0f, 44.0f);
    const float room = h.wall_x - 8 - most_arrow_px - box.x - 8;
    for (int i = 0; i < 3; ++i) {
        const float x = box.x + 6, y = h.y(h.high_m() * (0.25 + 0.25 * i));
        const float reach = std::min(length, room);
        const ImU32 ink = ui.theme.soft;
        if (c.room.facade == opening::Facade::windward)
            arrow(ui, {x, y}, {x + reach, y}, ink, 2);
        else if (c.room.facade == opening::Facade::lee)
            arrow(ui, {x + reach, y}, {x, y}, ink, 2);
        else { // it blows into the picture
            ui.list->AddCircle({x + 10, y}, 7, ink, 0, 1.5f);
            ui.list->AddLine({x + 6, y - 4}, {x + 14, y + 4}, ink, 1.5f);
            ui.list->AddLine({x + 6, y + 4}, {x + 14, y - 4}, ink, 1.5f);
        }
    }
}

} // namespace

const char* way_word(double sign) {
    return sign > 0 ? "comes in" : sign < 0 ? "goes out" : "stands still";
}

std::string height_words(const opening::Case& c, Units units, const char* what) {
    const double above_m = c.room.height_above_neutral_m;
    return assess::fill("{0} {1}{2}", {format(Quantity::height_m, std::fabs(above_m), units),
                                       above_m < 0 ? "below" : "above", what});
}

void draw_house(Ui& ui, const opening::Case& c, const assess::LeakResult& leak, Box box,
                std::string_view id, std::string_view name) {
    const House h = house_of(c.room.height_above_neutral_m, box);
    fill(ui, {box.x, box.y, box.w, h.ground_y - box.y}, ui.theme.outdoor_air, 6);
    draw_wind(ui, c, h, box);
    draw_shell(ui, h);
    draw_rise(ui, h);
    draw_neutral(ui, h, box);
    draw_pressures(ui, c, h);
    draw_window(ui, h, c, leak, box);
    const std::string words = assess::fill(
        "Pressure on this window's wall, house of {0} stories. The window lies {1} the neutral "
        "level. Wind {2} {3}. At the ground {4}, at this window {5}, under the roof {6}; above "
        "zero air comes in, below it goes out.",
        {std::to_string(h.storeys), height_words(c, ui.units, ""),
         format(Quantity::speed_m_s, c.weather.wind_m_s, ui.units), wind_words(c.room.facade),
         format_pascal(pressure_at(c, h, 0)), format_pascal(leak.drive.pressure_pa),
         format_pascal(pressure_at(c, h, h.high_m()))});
    note(ui, Role::image, id, box, name, words);
}

} // namespace shimlight::view
