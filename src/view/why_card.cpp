// SPDX-License-Identifier: MIT
// The card itself.
#include "view/column.hpp"
#include "view/lever.hpp"
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
std::string step_text(const Effect& e, bool up, Units units, const Trade& trade) {
    const std::string size =
        e.field->quantity == Quantity::temperature_c
            ? format(Quantity::number, units == Units::us ? e.step * 1.8 : e.step, units) + " " +
                  unit_sign(Quantity::temperature_c, units)
            : value_text(*e.field, e.step, units, trade);
    return (up ? "+" : "−") + size;
}

std::string signed_text(const assess::Figure& figure, double change, Units units,
                        const Trade& trade) {
    std::string size = figure_difference(figure, change, units, trade);
    // The long unit of U stands with the value.
    if (figure.kind == assess::FigureKind::u_w_m2k)
        size.resize(size.find(u_unit(units)) - 3); // and its thin space
    return (change < 0 ? "−" : "+") + size;
}

/// ".today" or ".remedy" where a number's id names one.
std::string of_text(const std::string& id) {
    for (const char* whose : {".today", ".remedy"})
        if (id.find(whose) != std::string::npos) return whose;
    return "";
}

} // namespace

/// What it depends on most: each lever with its step and what that does.
float Why::dependence(Ui& ui, const Trade& trade, Box box, float y) {
    const assess::Figure* found = tried_figure(key_);
    if (!found) return y;
    const assess::Figure& figure = *found;
    const Fonts& fonts = ui.platform.fonts;
    text(ui, fonts.small, {box.x, y}, ui.theme.lever, "Depends most on");
    note(ui, Role::heading, "why.depends", {box.x, y, box.w, 18}, "Depends most on", "3");
    y += 20;
    if (figure.key != key_) {
        const std::string words = "With it goes: " + std::string(figure.name) +
                                  ". Each lever tells what "
                                  "it does to that.";
        const float h = paragraph(ui, fonts.small, {box.x, y}, box.w, ui.theme.soft, words);
        note(ui, Role::output, "why.leans", {box.x, y, box.w, h}, "Goes with it", words);
        y += h + 4;
    }
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
            told += step_text(e, up, ui.units, trade) + ": " +
                    signed_text(figure, change, ui.units, trade);
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

/// The figures that this one is made of; each opens its card.
float Why::parts(Ui& ui, const Session& session, Box box, float y) {
    const std::string_view keys = card_text(key_).parts;
    if (keys.empty()) return y;
    text(ui, ui.platform.fonts.small, {box.x, y}, ui.theme.lever, "Made of");
    Column column(ui, {box.x, y + 18, box.w, 0});
    const Shown of = of_;
    for (std::size_t from = 0; from < keys.size();) {
        const std::size_t to = std::min(keys.find(' ', from), keys.size());
        const assess::Figure& part = *assess::find_figure(keys.substr(from, to - from));
        const double value = part.read(session.shown_case(of), session.result(of));
        column.row("why.part." + std::string(part.key), part.name,
                   figure_text(part, value, ui.units, trade_of(session.house())), ui.theme.ink,
                   {part.key, of});
        from = to + 1;
    }
    return column.y + gap_px;
}

/// All that scrolls; the y below it.
float Why::body(Ui& ui, Session& session, Box box, float y) {
    const CardText& card = card_text(key_);
    const Trade trade = trade_of(session.house());
    const auto formula = [&](Shown of) {
        std::string words =
            why_formula(key_, session.shown_case(of), session.result(of), ui.units, trade);
        return words.empty() ? page_formula(key_, session, of, ui.units) : words;
    };
    std::string words = told_;
    if (words.empty()) {
        words = formula(of_);
        const bool both = session.has_remedy() && of_text(number_).empty() && !number_.empty();
        const std::string then = both ? formula(Shown::remedy) : "";
        if (then != words && !then.empty()) words = "Today: " + words + "\nRemedy: " + then;
    }
    y = section(ui, "why.what", "What it is", in_units(card.what, ui.units), box, y);
    y = section(ui, "why.formula", "How it comes about", words, box, y);
    y = parts(ui, session, box, y);
    y = dependence(ui, trade, box, y) + gap_px;
    y = section(ui, "why.source", "Method", std::string(card.source), box, y);
    return section(ui, "why.range", "How far to trust it", in_units(card.range, ui.units) + ends_,
                   box, y);
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

/// The pressed number as the screen shows it in this frame; false when nothing tells it any more.
bool Why::find_number(const Ui& ui, const Session& session) {
    const assess::Figure* figure = assess::find_figure(key_);
    const char* whose = of_ == Shown::today ? ".today" : ".remedy";
    const MirrorNode* found = nullptr;
    for (const MirrorNode& node : ui.mirror.nodes())
        if (!number_.empty() && (node.id == number_ || node.id == number_ + whose)) found = &node;
    if (found) value_ = found->value;
    if (found && !figure) name_ = found->name;
    if (figure) name_ = figure->name;
    if (!found && figure)
        value_ = figure_text(*figure, figure->read(session.shown_case(of_), session.result(of_)),
                             ui.units, trade_of(session.house()));
    if (found || figure) return true;
    return ui.mirror.nodes().empty();
}

/// From today's number to the remedy's and back.
void Why::other(Ui& ui, const Session& session, Box place) {
    const bool today = of_ == Shown::today;
    const std::string from = of_text(number_), to = today ? ".remedy" : ".today";
    if (!session.has_remedy() || (from.empty() && !assess::find_figure(key_))) return;
    std::string number = number_;
    if (!from.empty()) number.replace(number.find(from), from.size(), to);
    const auto& nodes = ui.mirror.nodes();
    const bool there = std::any_of(nodes.begin(), nodes.end(),
                                   [&](const MirrorNode& n) { return n.id == number; });
    if (!there && !assess::find_figure(key_)) return;
    ButtonStyle style;
    style.compact = true;
    if (!button(ui, "why.other", place, today ? "See remedy" : "See today", style)) return;
    show(key_, today ? Shown::remedy : Shown::today, number);
    ui.wishes.another_frame = true;
}

/// Whose number, and what it is; returns the height.
float Why::head(Ui& ui, const Session& session, Box in, float top) {
    const Platform& p = ui.platform;
    const bool one =
        !session.has_remedy() || (of_text(number_).empty() && !assess::find_figure(key_));
    const std::string whose = one                   ? name_
                              : of_ == Shown::today ? name_ + ", today"
                                                    : name_ + ", with the remedy";
    text_fitted(ui, p.fonts.strong, {in.x, top + 12}, in.w, ui.theme.ink, whose);
    note(ui, Role::heading, "why.title", {in.x, top + 8, in.w, 24}, whose, "2");
    const float room = in.w - (session.has_remedy() ? 116 : 0);
    float height = 34;
    if (text_size(ui, p.fonts.large, value_).x <= room)
        text(ui, p.fonts.large, {in.x, top + 40}, ui.theme.ink, value_);
    else
        height = std::max(
            height, paragraph(ui, p.fonts.strong, {in.x, top + 40}, room, ui.theme.ink, value_));
    note(ui, Role::output, "why.value", {in.x, top + 40, room, height}, whose, value_);
    other(ui, session, {in.right() - 108, top + 36, 108, touch_px});
    return 58 + height;
}

void Why::draw(Ui& ui, Session& session) {
    if (!open()) return;
    if (ui.mirror.pressed("menu.escape") || !find_number(ui, session)) return close();
    if (!session.has_remedy()) of_ = Shown::today;
    ui.group = "why";
    ui.modal = true;
    ui.blocked = !ui.overlay.id.empty();
    compute(ui, session);
    const Platform& p = ui.platform;
    const float width = std::min(p.width_px - 2 * edge_px, card_px);
    const float foot_px = touch_px + 2 * gap_px;
    const float most = p.height_px - p.safe_top - p.safe_bottom - 2 * edge_px;
    const float height = std::min(most, head_px_ + content_px_ + foot_px + gap_px);
    const Box box{(p.width_px - width) / 2, p.safe_top + edge_px + (most - height) / 2, width,
                  height};
    fill(ui, {0, 0, p.width_px, p.height_px}, faded(ui.theme.ink, 0.3f));
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.rule, radius_px);
    const Box in{box.x + pad_px, box.y, box.w - 2 * pad_px, box.h};
    const float was_px = head_px_ + content_px_;
    head_px_ = head(ui, session, in, box.y);
    const Box middle{box.x, box.y + head_px_, box.w, box.h - head_px_ - foot_px};
    const float top = scroll_.begin(ui, middle, content_px_);
    const float end = body(ui, session, in, top);
    scroll_.end(ui);
    content_px_ = end - top;
    if (was_px != head_px_ + content_px_) ui.wishes.another_frame = true;
    buttons(ui, {in.x, box.bottom() - foot_px + gap_px, in.w, touch_px}, name_ + ": " + value_);
    ui.modal = false;
    const ImGuiIO& io = ImGui::GetIO();
    const bool outside = io.MouseReleased[0] && !box.contains(io.MousePos);
    if (!fresh_ && outside && ui.overlay.id.empty() && ui.gesture.grip == Grip::undecided) close();
    fresh_ = false;
    if (!open()) ui.wishes.another_frame = true;
}

} // namespace shimlight::view
