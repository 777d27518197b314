// SPDX-License-Identifier: MIT
#include "view/column.hpp"

#include "view/why.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float row_px = 32;
constexpr float cell_gap_px = 16, cell_words_px = 48; // its name and figure stand above its words

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

float Column::cell_width(std::size_t count) const {
    const auto n = static_cast<float>(count);
    return (width() - (n - 1) * cell_gap_px) / n;
}

bool Column::cells_fit(const std::vector<Cell>& all) const {
    const float each = cell_width(all.size());
    const Fonts& fonts = ui_->platform.fonts;
    return std::all_of(all.begin(), all.end(), [&](const Cell& cell) {
        return text_size(*ui_, fonts.strong, cell.value).x <= each &&
               text_size(*ui_, fonts.body, cell.name).x <= each;
    });
}

float Column::cells_px(const std::vector<Cell>& all) const {
    float words = 0;
    for (const Cell& cell : all)
        words = std::max(words, paragraph(*ui_, ui_->platform.fonts.small, {},
                                          cell_width(all.size()), 0, cell.words, false));
    return cell_words_px + words + 6;
}

void Column::cells(const std::vector<Cell>& all) {
    const Fonts& fonts = ui_->platform.fonts;
    const float each = cell_width(all.size()), height = cells_px(all);
    float at = x();
    for (const Cell& cell : all) {
        text(*ui_, fonts.body, {at, y}, ui_->theme.ink, cell.name);
        text(*ui_, fonts.strong, {at, y + 20}, ui_->theme.ink, cell.value);
        if (!cell.about.key.empty())
            dots(*ui_, at, at + text_size(*ui_, fonts.strong, cell.value).x, y + 41);
        tell(cell.id, cell.name, cell.value, {at, y, each, touch_px}, cell.about);
        const float high = paragraph(*ui_, fonts.small, {at, y + cell_words_px}, each,
                                     ui_->theme.soft, cell.words);
        note(*ui_, Role::output, cell.id + ".is", {at, y + cell_words_px, each, high},
             "What it holds", cell.words);
        at += each + cell_gap_px;
    }
    y += height;
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
