// SPDX-License-Identifier: MIT
#include "view/column.hpp"

#include "view/why.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float row_px = 32;

/// The sign of what opens a card.
void dots(Ui& ui, float from, float to, float y) {
    for (; from < to; from += 4)
        fill(ui, {from, y, 1.5f, 1.5f}, ui.theme.soft);
}

} // namespace

Columns::Columns(Box page) {
    constexpr float widest_px = 1100, two_from_px = 720, between_px = 40;
    const float all = std::min(page.w - 2 * margin_px, widest_px);
    two = all >= two_from_px;
    width = two ? (all - between_px) / 2 : all;
    x = page.x + (page.w - all) / 2;
}

void Column::heading(std::string_view id, std::string_view words, int level) {
    const Fonts& fonts = ui_->platform.fonts;
    const bool part = level == 2;
    text_fitted(*ui_, part ? fonts.title : fonts.strong, {x(), y}, width(), ui_->theme.ink, words);
    note(*ui_, Role::heading, id, {x(), y, width(), part ? 28.0f : 22.0f}, words,
         std::to_string(level));
    y += part ? 34 : 26;
}

void Column::tell(std::string_view id, std::string_view name, std::string_view value, Box box,
                  About about) {
    const std::string said = std::string(about.whose) + std::string(name);
    if (about.key.empty()) return note(*ui_, Role::output, id, box, said, value);
    figure(*ui_, id, box, said, value, about.key, about.of);
    figure_touch(*ui_, id, box, about.key, about.of);
}

void Column::sentence(std::string_view id, std::string_view name, std::string_view words,
                      ImU32 colour, About about) {
    if (words.empty()) return;
    ImFont* font = ui_->platform.fonts.body;
    const bool opens = !about.key.empty();
    const float height = paragraph(*ui_, font, {}, width(), colour, words, false);
    const float most = opens ? std::max(height, touch_px) : height, at = y + (most - height) / 2;
    paragraph(*ui_, font, {x(), at}, width(), colour, words);
    if (opens)
        dots(*ui_, x(), x() + std::min(width(), text_size(*ui_, font, words).x), at + height);
    tell(id, name, words, {x(), y, width(), most}, about);
    y += most + 6;
}

void Column::row(std::string_view id, std::string_view name, std::string_view value, ImU32 colour,
                 About about) {
    const Fonts& fonts = ui_->platform.fonts;
    const float value_px = text_size(*ui_, fonts.strong, value).x;
    const float height = about.key.empty() ? row_px : touch_px, at = y + (height - 20) / 2;
    text_fitted(*ui_, fonts.body, {x(), at}, width() - value_px - 12, ui_->theme.ink, name);
    text(*ui_, fonts.strong, {x() + width(), at}, colour, value, Align::right);
    if (!about.key.empty()) dots(*ui_, x() + width() - value_px, x() + width(), at + 21);
    ui_->list->AddLine({x(), y + height}, {x() + width(), y + height}, ui_->theme.rule);
    tell(id, name, value, {x(), y, width(), height}, about);
    y += height + 2;
}

void Column::entry(std::string_view id, const std::string& name, const std::string& figure,
                   const std::string& words, const std::string& mark, ImU32 mark_colour) {
    Ui& ui = *ui_;
    const Fonts& fonts = ui.platform.fonts;
    const float figure_px = text_size(ui, fonts.strong, figure).x, left = width() - figure_px - 12;
    const float high = paragraph(ui, fonts.body, {}, left, 0, name, false);
    const Box row = take(high + (mark.empty() ? 29.0f : 46.0f), 0);
    paragraph(ui, fonts.body, {row.x, row.y + 5}, left, ui.theme.ink, name);
    text(ui, fonts.strong, {row.right(), row.y + 5}, ui.theme.ink, figure, Align::right);
    const float y = row.y + high + 4;
    text_fitted(ui, fonts.small, {row.x, y}, row.w, ui.theme.soft, words);
    text_fitted(ui, fonts.small, {row.x, y + 17}, row.w, mark_colour, mark);
    ui.list->AddLine({row.x, row.bottom() - 2}, {row.right(), row.bottom() - 2}, ui.theme.rule);
    note(ui, Role::output, id, row, name,
         figure + ", " + words + (mark.empty() ? "" : ", " + mark));
}

Box Column::take(float height_px, float gap_px) {
    const Box box{x(), y, width(), height_px};
    y += height_px + gap_px;
    return box;
}

bool Column::card(const std::string& id, const std::string& name, const std::string& aside,
                  const std::string& words, bool on) {
    Ui& ui = *ui_;
    const Fonts& fonts = ui.platform.fonts;
    const float inner = width() - 28;
    const float high = words.empty() ? 0 : paragraph(ui, fonts.small, {}, inner, 0, words, false);
    const Box box = take(44 + high + (words.empty() ? 0.0f : 8.0f));
    MirrorNode node;
    node.id = id;
    node.role = Role::toggle;
    node.name = name + (aside.empty() ? "" : ", " + aside) + (words.empty() ? "" : ": " + words);
    node.on = on;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
    const Touch touch = touch_area(ui, id, box);
    fill(ui, box, touch.hovered ? ui.theme.quote : ui.theme.card, radius_px);
    frame(ui, box, on ? ui.theme.lever : ui.theme.rule, radius_px, on ? 2.0f : 1.0f);
    const float aside_px = text_size(ui, fonts.body, aside).x;
    text_fitted(ui, fonts.strong, {box.x + 14, box.y + 12}, inner - aside_px - 10, ui.theme.ink,
                name);
    text(ui, fonts.body, {box.right() - 14, box.y + 12}, ui.theme.soft, aside, Align::right);
    paragraph(ui, fonts.small, {box.x + 14, box.y + 38}, inner, ui.theme.soft, words);
    focus_ring(ui, id, box);
    return touch.pressed || ui.mirror.pressed(id);
}

} // namespace shimlight::view
