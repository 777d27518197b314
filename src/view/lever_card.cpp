// SPDX-License-Identifier: MIT
#include "view/lever_card.hpp"

#include "view/lever.hpp"

#include <cmath>

namespace shimlight::view {
namespace {

constexpr float long_press_s = 0.5f; // common practice on phones
constexpr float still_px = 5;        // a finger that moves farther drags or scrolls

/// A finger that has lain still in `box` long enough. Frames are asked for only while it waits.
bool long_pressed(Ui& ui, Box box) {
    const ImGuiIO& io = ImGui::GetIO();
    const Gesture& g = ui.gesture;
    if (!ui.platform.touch || !g.down || g.grip != Grip::undecided || !box.contains(g.start))
        return false;
    if (std::hypot(io.MousePos.x - g.start.x, io.MousePos.y - g.start.y) > still_px) return false;
    if (io.MouseDownDuration[0] >= long_press_s) return true;
    ui.wishes.another_frame = true;
    return false;
}

bool differ(double a, double b) {
    return std::fabs(a - b) > 1e-12;
}

} // namespace

void LeverCard::show(Ui& ui, const opening::Field& field, Shown of) {
    field_ = &field;
    of_ = of;
    state_.fresh = true;
    ui.wishes.another_frame = true;
}

void LeverCard::listen(Ui& ui, Session& session, const opening::Field& field, Shown of, Box box) {
    const std::string id = "lever." + std::string(field.key);
    for (const bool card : {true, false}) {
        MirrorNode node;
        node.id = id + (card ? ".card" : ".back");
        node.name = std::string(field.label) + (card ? ", back and copy" : ", back");
        node.action = "no-tab"; // keys reach it from the lever itself
        put_in_place(ui, node, box);
        node.reachable = false; // a finger there means the lever
        ui.mirror.add(std::move(node));
    }
    if (ui.mirror.pressed(id + ".card")) show(ui, field, of);
    if (ui.mirror.pressed(id + ".back")) {
        const double back = session.earlier_value(field, of);
        if (differ(back, field.get(session.shown_case(of)))) session.move(field, back, of, "");
    }
    const ImGuiIO& io = ImGui::GetIO();
    if (ui.blocked || !ui.visible.contains(ui.gesture.down ? ui.gesture.start : io.MousePos))
        return;
    if (io.MouseClicked[1] && box.contains(io.MousePos)) show(ui, field, of);
    if (!long_pressed(ui, box)) return;
    ui.gesture.grip = Grip::held; // lifting the finger does nothing more
    show(ui, field, of);
}

void LeverCard::draw(Ui& ui, Session& session) {
    if (!open()) return;
    if (!session.has_remedy()) of_ = Shown::today;
    constexpr float head_px = 46, between_px = 8, pad_px = 16;
    const Box box =
        begin_card(ui, "lever card", 340, head_px + 3 * (touch_px + between_px) + between_px);
    const std::string title(field_->label);
    const bool of_remedy = of_ == Shown::remedy && field_->scope == opening::Scope::opening;
    const double now = field_->get(session.shown_case(of_));
    const double back = session.earlier_value(*field_, of_);
    const auto told = [&, trade = trade_of(session.house())](double si) {
        return value_text(*field_, si, ui.units, trade);
    };
    Box place{box.x + pad_px, box.y + head_px, box.w - 2 * pad_px, touch_px};
    text_fitted(ui, ui.platform.fonts.strong, {place.x, box.y + 14}, place.w, ui.theme.ink, title);
    note(ui, Role::heading, "lever_card.title", {place.x, box.y + 8, place.w, 30}, title, "2");
    ButtonStyle style;
    style.enabled = told(back) != told(now);
    if (!style.enabled) style.help = "It stands there already";
    bool done = button(ui, "lever_card.back", place,
                       "Back to " + told(back) + (of_remedy ? ", as today" : ", as opened"), style);
    if (done) session.move(*field_, back, of_, "");
    place.y += touch_px + between_px;
    style = {};
    style.action = "copy";
    style.value = told(now);
    done = button(ui, "lever_card.copy", place, "Copy " + style.value, style) || done;
    place.y += touch_px + between_px;
    style = {};
    style.look = ButtonLook::filled;
    done = button(ui, "lever_card.close", place, "Close", style) || done;
    if (!end_card(ui, state_, box) && !done) return;
    field_ = nullptr;
    ui.wishes.another_frame = true;
}

} // namespace shimlight::view
