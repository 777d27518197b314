// SPDX-License-Identifier: MIT
#include "view/column.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float row_px = 32;

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

void Column::sentence(std::string_view id, std::string_view name, std::string_view words,
                      ImU32 colour) {
    if (words.empty()) return;
    const float height =
        paragraph(*ui_, ui_->platform.fonts.body, {x(), y}, width(), colour, words);
    note(*ui_, Role::output, id, {x(), y, width(), height}, name, words);
    y += height + 6;
}

void Column::row(std::string_view id, std::string_view name, std::string_view value, ImU32 colour) {
    const Fonts& fonts = ui_->platform.fonts;
    const float value_px = text_size(*ui_, fonts.strong, value).x;
    text_fitted(*ui_, fonts.body, {x(), y + 6}, width() - value_px - 12, ui_->theme.ink, name);
    text(*ui_, fonts.strong, {x() + width(), y + 6}, colour, value, Align::right);
    ui_->list->AddLine({x(), y + row_px}, {x() + width(), y + row_px}, ui_->theme.rule);
    note(*ui_, Role::output, id, {x(), y, width(), row_px}, name, value);
    y += row_px + 2;
}

Box Column::take(float height_px, float gap_px) {
    const Box box{x(), y, width(), height_px};
    y += height_px + gap_px;
    return box;
}

} // namespace shimlight::view
