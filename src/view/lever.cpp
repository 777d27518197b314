// SPDX-License-Identifier: MIT
#include "view/lever.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using opening::Field;

constexpr float decide_px = 6; // sideways movement of a finger before the lever follows
constexpr float knob_px = 11;  // radius
constexpr float track_px = 5;

bool is_choice(const Field& field) {
    return field.quantity == Quantity::choice;
}

/// Nearest possible choice from `from` in direction `way`; `from` when there is none.
double step_choice(const Field& field, const opening::Case& c, double from, int way) {
    const int count = static_cast<int>(field.choices.size());
    for (int i = static_cast<int>(from) + way; i >= 0 && i < count; i += way)
        if (opening::choice_possible(field, static_cast<std::size_t>(i), c)) return i;
    return from;
}

bool is_price(const Field& field) {
    return field.quantity == Quantity::price_per_kwh;
}

/// The upper end of the slide.
double top_si(const LeverState& s) {
    const double dearest = is_price(s.field) ? s.trade.dearest_per_kwh : 0;
    return dearest > 0 ? std::min(dearest, s.field.max) : s.field.max;
}

/// As it is shown, a price by its fuel's unit; back; and the step.
double shown_of(const Ui& ui, const LeverState& s, double si) {
    return is_price(s.field) ? si * s.trade.fuel_kwh : to_display(s.field.quantity, si, ui.units);
}

double si_of(const Ui& ui, const LeverState& s, double shown) {
    return is_price(s.field) ? shown / s.trade.fuel_kwh
                             : from_display(s.field.quantity, shown, ui.units);
}

double shown_step(const Ui& ui, const LeverState& s) {
    if (const double step = price_step(s.trade); is_price(s.field) && step > 0) return step;
    return shown_of(ui, s, step_si(s.field, ui.units)) - shown_of(ui, s, 0);
}

double stepped(const Ui& ui, const LeverState& s, int way) {
    const double now = s.field.get(s.shown);
    if (is_choice(s.field)) return step_choice(s.field, s.shown, now, way);
    const double step = shown_step(ui, s);
    const double place = shown_of(ui, s, now) / step;
    const double near = std::round(place);
    const double base = std::fabs(place - near) < 1e-6 ? near
                        : way > 0                      ? std::floor(place)
                                                       : std::ceil(place);
    return si_of(ui, s, (base + way) * step);
}

double value_at(const Ui& ui, const LeverState& s, float share) {
    const Field& f = s.field;
    const double raw = f.min + std::clamp(share, 0.0f, 1.0f) * (top_si(s) - f.min);
    if (is_choice(f)) {
        const double index = std::round(raw);
        if (opening::choice_possible(f, static_cast<std::size_t>(index), s.shown)) return index;
        return f.get(s.shown);
    }
    const double step = shown_step(ui, s);
    return std::clamp(si_of(ui, s, std::round(shown_of(ui, s, raw) / step) * step), f.min, f.max);
}

void register_slider(Ui& ui, const LeverState& s, const std::string& id, Box box) {
    const Field& f = s.field;
    MirrorNode node;
    node.id = id;
    node.name = std::string(f.label);
    node.help = std::string(f.help);
    node.value = value_text(f, f.get(s.shown), ui.units, s.trade);
    put_in_place(ui, node, box);
    if (is_choice(f)) {
        node.role = Role::choice;
        for (std::size_t i = 0; i < f.choices.size(); ++i)
            node.options.push_back(std::string(f.choices[i].label));
        node.now = f.get(s.shown);
        node.max = f.max;
    } else {
        node.role = Role::slider;
        // The page's own range input counts its steps from its minimum: both lie on whole steps.
        node.step = shown_step(ui, s);
        auto on_step = [&node](double shown) { return std::round(shown / node.step) * node.step; };
        node.min = on_step(shown_of(ui, s, f.min));
        node.max = on_step(shown_of(ui, s, top_si(s)));
        node.now = shown_of(ui, s, f.get(s.shown));
    }
    ui.mirror.add(std::move(node));
}

std::optional<double> from_mirror(Ui& ui, const LeverState& s, const std::string& id) {
    const auto moved = ui.mirror.number(id);
    if (!moved) return {};
    return is_choice(s.field) ? *moved : si_of(ui, s, *moved);
}

void draw_track(Ui& ui, const LeverState& s, Box track, float share, bool hot) {
    if (!in_sight(ui, track)) return;
    const Theme& t = ui.theme;
    const float y = track.centre().y;
    const ImVec2 knob{track.x + share * track.w, y};
    fill(ui, {track.x, y - track_px / 2, track.w, track_px}, t.rule, track_px / 2);
    fill(ui, {track.x, y - track_px / 2, share * track.w, track_px}, t.lever, track_px / 2);
    if (is_choice(s.field))
        for (std::size_t i = 0; i < s.field.choices.size(); ++i) {
            const auto at = static_cast<float>((static_cast<double>(i) - s.field.min) /
                                               (s.field.max - s.field.min));
            ui.list->AddCircleFilled({track.x + at * track.w, y}, 4,
                                     at <= share ? t.lever : t.rule);
        }
    ui.list->AddCircleFilled(knob, knob_px + (hot ? 2.0f : 0.0f), t.lever);
    ui.list->AddCircleFilled(knob, knob_px - 3 + (hot ? 2.0f : 0.0f), t.card);
}

/// Slider on the canvas; a finger must first move sideways, the mouse grips at once.
std::optional<double> drag(Ui& ui, const LeverState& s, const std::string& id, Box track) {
    const Box area{track.x - knob_px, track.y, track.w + 2 * knob_px, track.h};
    const Touch touch = touch_area(ui, id, area);
    const Field& f = s.field;
    const auto share =
        static_cast<float>((f.get(s.shown) - f.min) / std::max(top_si(s) - f.min, 1e-12));
    draw_track(ui, s, track, std::clamp(share, 0.0f, 1.0f), touch.held || touch.hovered);
    focus_ring(ui, id, area);
    const ImVec2 at = ImGui::GetIO().MousePos;
    if (touch.held && ui.gesture.grip == Grip::undecided) {
        const float dx = std::fabs(at.x - ui.gesture.start.x);
        const float dy = std::fabs(at.y - ui.gesture.start.y);
        if (!ui.platform.touch || (dx > decide_px && dx >= dy)) ui.gesture.grip = Grip::lever;
    }
    const bool tapped = touch.pressed && ui.gesture.grip == Grip::undecided;
    if ((touch.held && ui.gesture.grip == Grip::lever) || tapped)
        return value_at(ui, s, (at.x - track.x) / track.w);
    return {};
}

bool step_button(Ui& ui, const LeverState& s, const std::string& id, Box box, int way) {
    ButtonStyle style;
    style.look = ButtonLook::plain;
    style.sign = true;
    style.action = "no-tab";
    style.spoken = std::string(s.field.label) + (way < 0 ? ", less" : ", more");
    return button(ui, id + (way < 0 ? ".less" : ".more"), box, way < 0 ? "−" : "+", style);
}

/// The value, typed through the page's own input.
std::optional<double> typed(Ui& ui, const LeverState& s, const std::string& id, Box box) {
    const Field& f = s.field;
    const std::string shown = value_text(f, f.get(s.shown), ui.units, s.trade);
    text(ui, ui.platform.fonts.strong, {box.right(), box.y + 3}, ui.theme.ink, shown, Align::right);
    if (is_choice(f)) return {};
    MirrorNode node;
    node.id = id + ".typed";
    node.role = Role::number;
    node.name = std::string(f.label) + ", typed";
    node.value = is_price(f) ? price_number(f.get(s.shown), s.trade)
                             : typeset(format_bare(f.quantity, f.get(s.shown), ui.units));
    node.help = is_price(f) ? price_sign(s.trade) : unit_sign(f.quantity, ui.units);
    node.action = "no-tab";
    const float width = text_size(ui, ui.platform.fonts.strong, shown).x + 24;
    const float wide = std::max(width, 64.0f);
    put_in_place(ui, node, {box.right() - wide, box.y - 8, wide + 8, 36});
    ui.mirror.add(std::move(node));
    const float underline = box.y + 22;
    ui.list->AddLine({box.right() - width + 24, underline}, {box.right(), underline},
                     faded(ui.theme.soft, 0.5f));
    const auto entered = ui.mirror.text(id + ".typed");
    if (!entered || !is_price(f))
        return entered ? parse(f.quantity, *entered, ui.units) : std::nullopt;
    const std::size_t number = std::min(entered->find_first_of("-.0123456789"), entered->size());
    const auto price = parse(Quantity::number, entered->substr(number), ui.units); // "$1.76"
    return price ? std::optional(si_of(ui, s, *price)) : std::nullopt;
}

std::optional<double> yes_no(Ui& ui, const LeverState& s, const std::string& id, Box box) {
    const bool on = s.field.get(s.shown) > 0.5;
    MirrorNode node;
    node.id = id;
    node.role = Role::toggle;
    node.name = std::string(s.field.label);
    node.help = std::string(s.field.help);
    node.on = on;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
    const Box area{box.right() - 64, box.y + 26, 64, touch_px};
    const Touch touch = touch_area(ui, id, area);
    const Box rail{area.right() - 46, area.centre().y - 13, 46, 26};
    fill(ui, rail, on ? ui.theme.lever : ui.theme.rule, 13);
    ui.list->AddCircleFilled({on ? rail.right() - 13 : rail.x + 13, rail.centre().y}, 10,
                             ui.theme.card);
    focus_ring(ui, id, rail, 13);
    if (touch.pressed || ui.mirror.pressed(id)) return on ? 0.0 : 1.0;
    return {};
}

} // namespace

std::string value_text(const Field& field, double si, Units units, const Trade& trade) {
    if (field.quantity == Quantity::choice) {
        const auto index = static_cast<std::size_t>(std::max(0.0, std::round(si - 0)));
        return index < field.choices.size() ? std::string(field.choices[index].label)
                                            : std::string();
    }
    if (field.quantity == Quantity::yes_no) return si > 0.5 ? "yes" : "no";
    return is_price(field) ? format_price(si, trade) : format(field.quantity, si, units);
}

std::optional<double> lever(Ui& ui, const LeverState& s, Box box) {
    const std::string id = "lever." + std::string(s.field.key);
    const Fonts& fonts = ui.platform.fonts;
    const Box head{box.x, box.y + 4, box.w, 24};
    text_fitted(ui, fonts.body, {head.x, head.y + 3}, head.w * 0.55f, ui.theme.ink,
                std::string(s.field.label));
    if (s.field.quantity == Quantity::yes_no) {
        const auto flipped = yes_no(ui, s, id, box);
        text(ui, fonts.strong, {head.right(), head.y + 3}, ui.theme.ink,
             value_text(s.field, s.field.get(s.shown), ui.units), Align::right);
        paragraph(ui, fonts.small, {box.x, box.y + 34}, box.w - 70, ui.theme.soft,
                  std::string(s.field.help));
        return flipped;
    }
    const Box row{box.x, box.y + 26, box.w, touch_px};
    const Box track{row.x + touch_px + 8, row.y, row.w - 2 * touch_px - 16, row.h};
    register_slider(ui, s, id, {track.x - knob_px, row.y, track.w + 2 * knob_px, row.h});
    std::optional<double> result = from_mirror(ui, s, id);
    if (const auto dragged = drag(ui, s, id, track)) result = dragged;
    if (step_button(ui, s, id, {row.x - 8, row.y, touch_px, row.h}, -1))
        result = stepped(ui, s, -1);
    if (step_button(ui, s, id, {row.right() - touch_px + 8, row.y, touch_px, row.h}, 1))
        result = stepped(ui, s, 1);
    if (const auto entered = typed(ui, s, id, head)) result = entered;
    if (!s.was.empty()) {
        const float used = text_size(ui, fonts.body, s.field.label).x;
        text_fitted(ui, fonts.small, {head.x + used + 8, head.y + 5}, head.w * 0.35f, ui.theme.soft,
                    "was " + s.was);
    }
    return result;
}

} // namespace shimlight::view
