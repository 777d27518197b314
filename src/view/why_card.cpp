// SPDX-License-Identifier: MIT
// The card itself.
#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float card_px = 560, pad_px = 16, gap_px = 8, edge_px = 8;

/// A caption and words under it, both in one node; the y below.
float section(Ui& ui, const char* id, const char* caption, const std::string& words, Box box,
              float y) {
    if (words.empty()) return y;
    const float top = y;
    text(ui, ui.platform.fonts.small, {box.x, y}, ui.theme.lever, caption);
    y += 19;
    for (std::size_t from = 0; from <= words.size();) {
        const std::size_t to = std::min(words.find('\n', from), words.size());
        y += paragraph(ui, ui.platform.fonts.body, {box.x, y}, box.w, ui.theme.ink,
                       words.substr(from, to - from));
        from = to + 1;
    }
    note(ui, Role::output, id, {box.x, top, box.w, y - top}, caption, words);
    return y + gap_px;
}

/// "+5 °F": a lever's step.
std::string step_text(const Effect& e, bool up, Units units) {
    const std::string size =
        e.field->quantity == Quantity::temperature_c
            ? format(Quantity::number, units == Units::us ? e.step * 1.8 : e.step, units) + " " +
                  unit_sign(Quantity::temperature_c, units)
            : format(e.field->quantity, e.step, units);
    return (up ? "+" : "−") + size;
}

std::string signed_text(const assess::Figure& figure, double change, Units units,
                        const std::string& currency) {
    std::string size = figure_difference(figure, change, units, currency);
    // The long unit of U stands with the value.
    if (figure.kind == assess::FigureKind::u_w_m2k)
        size.resize(size.find(u_unit(units)) - 3); // and its thin space
    return (change < 0 ? "−" : "+") + size;
}

} // namespace

/// What it depends on most: each lever with its step and what that does.
float Why::dependence(Ui& ui, const std::string& currency, Box box, float y) {
    const assess::Figure& figure = *assess::find_figure(key_);
    const Fonts& fonts = ui.platform.fonts;
    text(ui, fonts.small, {box.x, y}, ui.theme.lever, "Depends most on");
    note(ui, Role::heading, "why.depends", {box.x, y, box.w, 18}, "Depends most on", "3");
    y += 20;
    if (next_ < 2 * opening::fields().size()) {
        text(ui, fonts.body, {box.x, y}, ui.theme.soft, "Trying each lever …");
        return y + 24;
    }
    if (effects_.empty()) {
        text(ui, fonts.body, {box.x, y}, ui.theme.soft, "No lever that moves in small steps.");
        return y + 24;
    }
    for (std::size_t i = 0; i < effects_.size(); ++i) {
        const Effect& e = effects_[i];
        std::string told;
        for (const bool up : {true, false}) {
            const double change = up ? e.up : e.down;
            if (!std::isfinite(change)) continue;
            if (!told.empty()) told += ";  ";
            told +=
                step_text(e, up, ui.units) + ": " + signed_text(figure, change, ui.units, currency);
        }
        const std::string name(e.field->label);
        text(ui, fonts.strong, {box.x, y}, ui.theme.ink, name);
        const float height = paragraph(ui, fonts.body, {box.x, y + 20}, box.w, ui.theme.ink, told);
        note(ui, Role::output, "why.effect" + std::to_string(i), {box.x, y, box.w, 20 + height},
             name, told);
        y += 20 + height + 4;
    }
    return y;
}

/// All that scrolls; the y below it.
float Why::body(Ui& ui, Session& session, Box box, float y) {
    const opening::Case c = session.shown_case(of_);
    const assess::Assessment& now = session.result(of_);
    const CardText& card = card_text(key_);
    const std::string& currency = session.house().currency;
    y = section(ui, "why.what", "What it is", std::string(card.what), box, y);
    y = section(ui, "why.formula", "How it comes about",
                why_formula(key_, c, now, ui.units, currency), box, y);
    y = dependence(ui, currency, box, y) + gap_px;
    y = section(ui, "why.source", "Method", std::string(card.source), box, y);
    return section(ui, "why.range", "How far to trust it", std::string(card.range) + ends_, box, y);
}

void Why::buttons(Ui& ui, Box box, const std::string& copied) {
    ButtonStyle style;
    style.action = "copy";
    style.value = copied;
    const float each = (box.w - gap_px) / 2;
    button(ui, "why.copy", {box.x, box.y, each, touch_px}, "Copy", style);
    style = {};
    style.look = ButtonLook::filled;
    const Box place{box.x + each + gap_px, box.y, each, touch_px};
    if (button(ui, "why.close", place, "Close", style)) close();
}

void Why::draw(Ui& ui, Session& session) {
    const assess::Figure* shown = assess::find_figure(key_);
    if (!open()) return;
    if (!shown || ui.mirror.pressed("menu.escape")) return close();
    if (!session.has_remedy()) of_ = Shown::today;
    ui.group = "why";
    ui.modal = true;
    ui.blocked = !ui.overlay.id.empty();
    compute(ui, session);
    const Platform& p = ui.platform;
    const float width = std::min(p.width_px - 2 * edge_px, card_px);
    const float head_px = 92, foot_px = touch_px + 2 * gap_px;
    const float most = p.height_px - p.safe_top - p.safe_bottom - 2 * edge_px;
    const float height = std::min(most, head_px + content_px_ + foot_px + gap_px);
    const Box box{(p.width_px - width) / 2, p.safe_top + edge_px + (most - height) / 2, width,
                  height};
    fill(ui, {0, 0, p.width_px, p.height_px}, faded(ui.theme.ink, 0.3f));
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.rule, radius_px);
    const Box in{box.x + pad_px, box.y, box.w - 2 * pad_px, box.h};
    const std::string name(shown->name);
    const std::string whose = !session.has_remedy() ? name
                              : of_ == Shown::today ? name + ", today"
                                                    : name + ", with the remedy";
    const std::string value =
        figure_text(*shown, shown->read(session.shown_case(of_), session.result(of_)), ui.units,
                    session.house().currency);
    text_fitted(ui, p.fonts.strong, {in.x, box.y + 12}, in.w, ui.theme.ink, whose);
    note(ui, Role::heading, "why.title", {in.x, box.y + 8, in.w, 24}, whose, "2");
    text_fitted(ui, p.fonts.large, {in.x, box.y + 40}, in.w - 116, ui.theme.ink, value);
    note(ui, Role::output, "why.value", {in.x, box.y + 40, in.w - 116, 34}, whose, value);
    if (session.has_remedy()) {
        ButtonStyle style;
        style.compact = true;
        const char* label = of_ == Shown::today ? "See remedy" : "See today";
        if (button(ui, "why.other", {in.right() - 108, box.y + 36, 108, touch_px}, label, style)) {
            show(std::string(key_), of_ == Shown::today ? Shown::remedy : Shown::today);
            ui.wishes.another_frame = true;
        }
    }
    const Box middle{box.x, box.y + head_px, box.w, box.h - head_px - foot_px};
    const float top = scroll_.begin(ui, middle, content_px_);
    const float end = body(ui, session, in, top);
    scroll_.end(ui);
    if (content_px_ != end - top) ui.wishes.another_frame = true;
    content_px_ = end - top;
    buttons(ui, {in.x, box.bottom() - foot_px + gap_px, in.w, touch_px}, whose + ": " + value);
    ui.modal = false;
    const ImGuiIO& io = ImGui::GetIO();
    const bool outside = io.MouseReleased[0] && !box.contains(io.MousePos);
    if (!fresh_ && outside && ui.overlay.id.empty() && ui.gesture.grip == Grip::undecided) close();
    fresh_ = false;
    if (!open()) ui.wishes.another_frame = true;
}

} // namespace shimlight::view
