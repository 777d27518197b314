// SPDX-License-Identifier: MIT
// Writes down a column of a page: headings, sentences, rows of figures. Each goes to the mirror
// too.
#pragma once

#include "view/about.hpp"
#include "view/ui.hpp"

#include <string>
#include <vector>

namespace shimlight::view {

/// One column in the middle of a page, or two where there is room.
struct Columns {
    bool two = false;
    float x = 0, width = 0; ///< of the first
    explicit Columns(Box page);
    Box first(float top) const { return {x, top, width, 0}; }
    Box second(float top) const { return {x + width + 40, top, width, 0}; }
};

class Column {
  public:
    Column(Ui& ui, Box box) : y(box.y), ui_(&ui), box_(box) {}

    float y; ///< where the next thing goes

    float x() const { return box_.x; }
    float width() const { return box_.w; }
    float height() const { return y - box_.y; }
    void space(float px) { y += px; }

    /// Level 2: a part of the page. Level 3: smaller, within a part.
    void heading(std::string_view id, std::string_view words, int level = 2);
    /// A paragraph; empty words take no room. With a card it opens that.
    void sentence(std::string_view id, std::string_view name, std::string_view words, ImU32 colour,
                  About about = {});
    /// Name on the left, figure on the right, a rule below. One with a card has its figure
    /// underlined, and the height a finger needs.
    void row(std::string_view id, std::string_view name, std::string_view value, ImU32 colour,
             About about = {});
    struct Cell {
        std::string id, name, value, words; ///< `id`.is: the words
        About about;
    };
    /// Figures beside one another, each with its name above and a sentence below.
    void cells(const std::vector<Cell>& all);
    /// Whether they have room beside one another, and how high they are then.
    bool cells_fit(const std::vector<Cell>& all) const;
    float cells_px(const std::vector<Cell>& all) const;
    /// A card to press: a name, something aside, words below. True when pressed.
    bool card(const std::string& id, const std::string& name, const std::string& aside,
              const std::string& words, bool on);
    /// A name with a figure on the right, a small line below and, when there is one, a mark.
    void entry(std::string_view id, const std::string& name, const std::string& figure,
               const std::string& words, const std::string& mark, ImU32 mark_colour);
    /// The box of something `height_px` high, which the caller draws.
    Box take(float height_px, float gap_px = 8);

  private:
    Ui* ui_;
    Box box_;
    float cell_width(std::size_t count) const;
    void tell(std::string_view id, std::string_view name, std::string_view value, Box box,
              About about);
};

} // namespace shimlight::view
