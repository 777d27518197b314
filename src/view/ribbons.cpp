// SPDX-License-Identifier: MIT
#include "view/ribbons.hpp"

#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float label_px = 18, line_px = 17; // small type
constexpr float flat_below_px = 118;         // lower: one line above and below
constexpr float point_px = 12;               // of an arrow
constexpr float hatch_px = 7;                // between strokes of radiation
constexpr double circling = 1.05;            // Nusselt number from which gas moves

ImU32 radiation_ink(const Ui& ui) {
    return faded(ui.theme.lever, 0.5f);
}
ImU32 gas_ink(const Ui& ui) {
    return faded(ui.theme.water, 0.4f);
}

/// Of a line of names and numbers; before a class the type is larger.
float label_height(const Ui& ui) {
    return std::max(label_px, font_px(ui, ui.platform.fonts.strong) * 1.2f);
}

/// Radiation is hatched, so that grey print and any eye tell it from gas.
void hatch(Ui& ui, Box box) {
    if (box.h < 2) return;
    ui.list->PushClipRect(box.min(), box.max(), true);
    for (float x = box.x - box.h; x < box.right(); x += hatch_px)
        ui.list->AddLine({x, box.bottom()}, {x + box.h, box.y}, faded(ui.theme.lever, 0.6f));
    ui.list->PopClipRect();
}

/// The widths of one space's two ribbons about their common axis.
struct Widths {
    float radiation = 0, gas = 0;
};

struct Winter {
    Ui& ui;
    const Ribbons& r;
    PaneRow row;
    float px_per_w = 1, axis = 0;

    Widths widths(std::size_t k) const {
        const auto px = [&](double w) { return static_cast<float>(std::fabs(w)) * px_per_w; };
        return {px(r.heat.at[k].radiation_w_m2), px(r.heat.at[k].gas_w_m2)};
    }
    std::string flux(double w) const { return format_flux(std::fabs(w), ui.units); }
    void space(std::size_t k) const;
    Box touched(Box where, Box ribbon, bool above) const;
    void panes() const;
    void faces() const;
    void star() const;
    void unit() const;
    void names(std::size_t k) const;
};

/// What to write beside a ribbon, longest first; the mirror has the first.
std::string radiation_names(const Winter& w, std::size_t k) {
    return k == 0                ? "to sky and ground|rays"
           : k == w.r.heat.panes ? "from the room's surfaces|from surfaces|rays"
                                 : "radiation|rays";
}

std::string carried_names(const Winter& w, std::size_t k) {
    if (k == 0) return "to the outdoor air|to the air|air";
    if (k == w.r.heat.panes) return "from the room air|from air|air";
    const std::string gas = gas_name(w.r.c.opening, k);
    const char* how = w.r.result.glass.gaps[k - 1].nusselt > circling ? "circling" : "still";
    return "by " + std::string(how) + " " + gas.substr(0, gas.find(' ')) + "|" + how + "|gas";
}

void Winter::space(std::size_t k) const {
    const Widths px = widths(k);
    const Box where = row.space(k);
    Box radiated{where.x, axis - 1 - px.radiation, where.w, px.radiation},
        carried{where.x, axis + 1, where.w, px.gas};
    const bool outwards = r.heat.at[k].sum() >= 0, end = k == (outwards ? 0 : row.count);
    if (k == 0 || k == row.count) { // away from the border of the picture
        if (k == 0) radiated.x += 4, carried.x += 4;
        radiated.w -= 4, carried.w -= 4;
    }
    if (end) {
        arrow(ui, radiated, outwards, radiation_ink(ui));
        arrow(ui, carried, outwards, gas_ink(ui));
    } else {
        fill(ui, radiated, radiation_ink(ui));
        fill(ui, carried, gas_ink(ui));
    }
    hatch(ui, end ? Box{radiated.x + (outwards ? point_px : 0), radiated.y, radiated.w - point_px,
                        radiated.h}
                  : radiated);
    const assess::SpaceHeat& heat = r.heat.at[k];
    const std::string unit = std::string(" ") + flux_unit(ui.units), at = std::to_string(k);
    ribbon_label(ui, where, radiated.y - label_height(ui), radiation_names(*this, k),
                 flux(heat.radiation_w_m2));
    const std::string ways = carried_names(*this, k);
    ribbon_label(ui, where, carried.bottom() + 1, ways, flux(heat.gas_w_m2));
    const std::string place = k == 0           ? "outdoors"
                              : k == row.count ? "in the room"
                                               : "in space " + at + ", " + gas_name(r.c.opening, k);
    about_number(ui, r, ".radiation." + at, radiated, touched(where, radiated, true),
                 "Radiation " + place, flux(heat.radiation_w_m2) + unit, "ribbon");
    about_number(ui, r, ".gas." + at, carried, touched(where, carried, false),
                 "Carried " + ways.substr(0, ways.find('|')) + " " + place,
                 flux(heat.gas_w_m2) + unit, "ribbon");
    const std::string sum =
        "radiated + carried = " + flux(heat.radiation_w_m2) + " + " + flux(heat.gas_w_m2) + unit;
    for (const char* what : {".radiation.", ".gas."})
        if (ui.why && ui.why->asks(r.id + what + at)) ui.why->tell(sum);
}

/// Ribbon and words, from the axis on, with the height a finger needs.
Box Winter::touched(Box where, Box ribbon, bool above) const {
    const float h = std::max(ribbon.h + label_height(ui), touch_px);
    return {where.x, above ? axis - h : axis, where.w, h};
}

/// Within a pane all is conduction: one band that joins the ribbons on both sides.
void Winter::panes() const {
    for (std::size_t k = 0; k < row.count; ++k) {
        const Widths out = widths(k), in = widths(k + 1);
        const float x0 = row.left(k), x1 = row.right(k);
        ui.list->AddQuadFilled({x0, axis - 1 - out.radiation}, {x1, axis - 1 - in.radiation},
                               {x1, axis + 1 + in.gas}, {x0, axis + 1 + out.gas},
                               faded(ui.theme.ink, 0.3f));
    }
}

/// Temperatures left and right of each pane, and the number of the face.
void Winter::faces() const {
    const Fonts& fonts = ui.platform.fonts;
    const bool narrow = row.flat || (row.count > 2 && row.gap_px < 96);
    const float unit_px = text_size(ui, fonts.small, flux_unit(ui.units)).x;
    bool starred = false;
    for (std::size_t face = 1; face <= 2 * row.count; ++face) {
        const bool outer = face % 2 == 1;
        const std::size_t pane = (face - 1) / 2;
        const double c = r.result.glass.faces_c[face - 1];
        const float x = outer ? row.left(pane) - 3 : row.right(pane) + 3;
        const float y = row.box.bottom() - row.foot_px + 2;
        const Align align = outer ? Align::right : Align::left;
        const bool coated = face_coated(r.c.opening, face);
        const std::string value =
            narrow ? typeset(format_bare(Quantity::temperature_c, c, ui.units)) + "°"
                   : format_temperature(c, ui.units);
        // On a flat picture the unit stands beside the outermost face, where both have room.
        const bool shown = !row.flat || face > 1 ||
                           text_size(ui, fonts.small, value).x + unit_px + 14 < row.zone_px;
        if (shown)
            text(ui, narrow ? fonts.small : fonts.strong, {x, row.flat ? y - 2 : y}, ui.theme.ink,
                 value, align);
        const std::string number = std::to_string(face);
        const bool at_end = face == 1 || face == 2 * row.count;
        const float room = (at_end && row.zone_px < row.gap_px ? row.zone_px : row.gap_px / 2) - 8;
        std::string words = "face " + number + (coated ? ", low-e" : "");
        if (text_size(ui, fonts.small, words).x > room && row.count > 1) {
            words = number + (coated ? (room > 52 ? ", low-e" : "*") : "");
            starred = starred || words.back() == '*';
        }
        if (!row.flat)
            text(ui, fonts.small, {x, y + 18}, coated ? ui.theme.lever : ui.theme.soft, words,
                 align);
        about_number(ui, r, ".face." + number, {outer ? x - 40 : x, y, 40, row.foot_px - 4},
                     {outer ? x - 44 : x, y - 6, touch_px, touch_px},
                     "Face " + number + (coated ? ", low-e coated" : ""),
                     format_temperature(c, ui.units),
                     face == 2 * row.count ? "glass_inside" : "face");
    }
    if (starred && !row.flat) star();
}

/// What the star beside a face's number says, at the foot of the room.
void Winter::star() const {
    ImFont* small = ui.platform.fonts.small;
    const float x = row.box.right() - 8, y = row.box.bottom() - row.foot_px + 2;
    const float room = x - row.right(row.count - 1) - 3 -
                       text_size(ui, small, typeset("-00") + "°").x - 4; // beside the inner face
    const bool fits = text_size(ui, small, "coating").x <= room;
    text(ui, small, {x, fits ? y : y + 18}, ui.theme.lever, "* low-e", Align::right);
    if (fits) text(ui, small, {x, y + 18}, ui.theme.lever, "coating", Align::right);
}

/// What is in the space, and how wide it is.
void Winter::names(std::size_t k) const {
    const Box space = row.space(k);
    const Fonts& fonts = ui.platform.fonts;
    const std::string gas = gas_name(r.c.opening, k);
    const std::string width = format(Quantity::thin_m, space_width_m(r.c.opening, k), ui.units);
    const bool fits = text_size(ui, fonts.small, gas).x < space.w - 4;
    const float x = space.centre().x;
    text(ui, fonts.small, {x, row.box.y + 2}, ui.theme.ink,
         fits ? gas : gas.substr(0, gas.find(' ')), Align::centre);
    if (!row.flat) text(ui, fonts.small, {x, row.box.y + 19}, ui.theme.soft, width, Align::centre);
}

/// The unit of all ribbons, at the foot of outdoors.
void Winter::unit() const {
    const bool us = ui.units == Units::us;
    ImFont* small = ui.platform.fonts.small;
    const ImVec2 foot{row.box.x + 6, row.box.bottom() - row.foot_px + (row.flat ? 0 : 3)};
    if (row.flat) return text(ui, small, foot, ui.theme.soft, flux_unit(ui.units));
    text(ui, small, foot, ui.theme.soft, us ? "Btu/h" : "W");
    text(ui, small, {foot.x, foot.y + 17}, ui.theme.soft, us ? "per ft²" : "per m²");
}

std::string winter_words(const Ribbons& r, Units units) {
    const auto flux = [&](double w) {
        return format_flux(std::fabs(w), units) + " " + flux_unit(units);
    };
    const std::size_t n = r.heat.panes;
    std::string words = std::to_string(n) + (n == 1 ? " pane. " : " panes. ");
    words += "Room " + format_temperature(r.c.room.air_c, units) + ": " +
             flux(r.heat.room().radiation_w_m2) + " from its surfaces, " +
             flux(r.heat.room().gas_w_m2) + " from its air. ";
    for (std::size_t k = n - 1; k > 0; --k)
        words += "Space " + std::to_string(k) + ", " + gas_name(r.c.opening, k) + ": " +
                 flux(r.heat.at[k].radiation_w_m2) + " radiated, " + flux(r.heat.at[k].gas_w_m2) +
                 " carried. ";
    return words + "Outdoors " + format_temperature(r.c.weather.outside_c, units) + ": " +
           flux(r.heat.outdoors().radiation_w_m2) + " to sky and ground, " +
           flux(r.heat.outdoors().gas_w_m2) + " to the air.";
}

} // namespace

bool face_coated(const opening::Opening& opening, std::size_t face) {
    const physics::GlazingStack stack = opening::glazing_stack(opening);
    const physics::Pane& pane = stack.panes[(face - 1) / 2];
    return (face % 2 ? pane.emissivity_out : pane.emissivity_in) < physics::glass_emissivity;
}

std::string gas_name(const opening::Opening& opening, std::size_t k) {
    static constexpr const char* names[] = {"air", "argon", "krypton", "xenon", "SF6"};
    const auto parts = opening::glazing_stack(opening).gaps[k - 1].gas.fraction;
    std::size_t most = 0;
    for (std::size_t g = 1; g < parts.size(); ++g)
        if (parts[g] > 0) most = g;
    return most == 0 ? "air" : std::string(names[most]) + " " + format_percent(parts[most]);
}

double space_width_m(const opening::Opening& opening, std::size_t k) {
    return opening::glazing_stack(opening).gaps[k - 1].width_m;
}

PaneRow pane_row(Box box, std::size_t count) {
    PaneRow row;
    row.box = box;
    row.flat = box.h < flat_below_px;
    if (row.flat) row.head_px = row.foot_px = line_px;
    row.ribbons = {box.x, box.y + row.head_px, box.w, box.h - row.head_px - row.foot_px};
    row.count = count;
    const auto n = static_cast<float>(count);
    row.pane_px = box.w < 420 ? 10.0f : 14.0f;
    const float glass = n * row.pane_px;
    row.zone_px = count == 1 ? (box.w - glass) / 2 : std::clamp(box.w * 0.27f, 88.0f, 190.0f);
    row.gap_px = count == 1 ? 0 : (box.w - 2 * row.zone_px - glass) / (n - 1);
    return row;
}

void draw_glass(Ui& ui, const PaneRow& row, const Ribbons& r, std::string_view outdoors,
                std::string_view room) {
    const Theme& t = ui.theme;
    const Box& b = row.box;
    fill(ui, {b.x, b.y, row.left(0) - b.x, b.h}, t.outdoor_air);
    const float inside = row.right(row.count - 1);
    fill(ui, {inside, b.y, b.right() - inside, b.h}, t.indoor_air);
    for (std::size_t k = 0; k < row.count; ++k) {
        const Box glass{row.left(k), b.y, row.pane_px, b.h - row.foot_px};
        fill(ui, glass, faded(t.water, 0.16f));
        frame(ui, glass, t.soft);
        for (const std::size_t face : {2 * k + 1, 2 * k + 2})
            if (face_coated(r.c.opening, face))
                fill(ui, {face % 2 ? glass.x - 2 : glass.right() - 2, glass.y, 4, glass.h},
                     t.lever);
    }
    const Fonts& fonts = ui.platform.fonts;
    if (row.flat) {
        text(ui, fonts.small, {b.x + 6, b.y + 1}, t.soft, "out");
        const float x = b.x + 10 + text_size(ui, fonts.small, "out").x;
        text(ui, fonts.strong, {x, b.y}, t.ink, outdoors);
        text(ui, fonts.strong, {b.right() - 8, b.y}, t.ink, room, Align::right);
        const float end = b.right() - 12 - text_size(ui, fonts.strong, room).x;
        return text(ui, fonts.small, {end, b.y + 1}, t.soft, "room", Align::right);
    }
    text(ui, fonts.small, {b.x + 6, b.y + 2}, t.soft, "outdoors");
    text(ui, fonts.strong, {b.x + 6, b.y + 18}, t.ink, outdoors);
    text(ui, fonts.small, {b.right() - 8, b.y + 2}, t.soft, "room", Align::right);
    text(ui, fonts.strong, {b.right() - 8, b.y + 18}, t.ink, room, Align::right);
}

void ribbon_label(Ui& ui, const Box& space, float y, std::string_view words,
                  std::string_view number) {
    const Fonts& fonts = ui.platform.fonts;
    const float n = text_size(ui, fonts.strong, number).x, most = space.w - 6 - n - 5;
    std::string told;
    float told_px = 0;
    for (std::size_t from = 0; from < words.size() && told.empty();) {
        const std::size_t to = std::min(words.find('|', from), words.size());
        const std::string_view word = words.substr(from, to - from);
        told_px = text_size(ui, fonts.small, word).x + 5;
        if (told_px - 5 <= most) told = word;
        from = to + 1;
    }
    if (told.empty()) told_px = 0;
    const float x = space.centre().x - (n + told_px) / 2;
    text(ui, fonts.small, {x, y + 1.5f}, ui.theme.soft, told);
    text(ui, fonts.strong, {x + told_px, y}, ui.theme.ink, number);
}

void arrow(Ui& ui, Box box, bool to_left, ImU32 colour) {
    const float tip = to_left ? box.x : box.right();
    const float neck = to_left ? box.x + point_px : box.right() - point_px;
    fill(ui, {to_left ? neck : box.x, box.y, box.w - point_px, box.h}, colour);
    const ImVec2 upper{neck, box.y}, lower{neck, box.bottom()}, point{tip, box.centre().y};
    ui.list->AddTriangleFilled(to_left ? upper : lower, to_left ? lower : upper, point, colour);
}

void about_number(Ui& ui, const Ribbons& r, const std::string& what, Box box, Box touch,
                  const std::string& name, const std::string& value, const char* key) {
    const std::string id = r.id + what;
    const Shown of = id.find(".today") != std::string::npos ? Shown::today : Shown::remedy;
    figure_touch(ui, id, touch, key, of);
    figure(ui, id, box, name + ", " + r.name, value, key, of);
}

void draw_winter(Ui& ui, Box box, const Ribbons& r) {
    Winter w{ui, r, pane_row(box, r.heat.panes)};
    const float room = w.row.ribbons.h - 2 * label_height(ui) - 6;
    w.px_per_w = room / static_cast<float>(std::max(1.0, r.widest.sum()));
    w.axis = w.row.ribbons.y + label_height(ui) + 2 +
             static_cast<float>(r.widest.radiation_w_m2) * w.px_per_w;
    draw_glass(ui, w.row, r, format_temperature(r.c.weather.outside_c, ui.units),
               format_temperature(r.c.room.air_c, ui.units));
    note(ui, Role::image, r.id + ".picture", box, "Heat through the glass, " + r.name,
         winter_words(r, ui.units));
    w.panes();
    for (std::size_t k = 0; k <= r.heat.panes; ++k) {
        w.space(k);
        if (k > 0 && k < r.heat.panes) w.names(k);
    }
    w.faces();
    w.unit();
}

} // namespace shimlight::view
