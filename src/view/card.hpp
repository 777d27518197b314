// SPDX-License-Identifier: MIT
// A card over the page: shade, frame, title. To the mirror it is a dialog.
#pragma once

#include "view/rest.hpp"
#include "view/scroll.hpp"

namespace shimlight::view {

/// What all cards share; each keeps one.
struct CardState {
    bool fresh = false; ///< opened by a press that is not over yet: it must not close it
};

/// Opens the region `group`, shades the page and draws the empty card in its middle; from here to
/// end_card() all nodes belong to the dialog.
Box begin_card(Ui& ui, const char* group, float width_px, float height_px);
/// True when Escape or a press beside the card closes it.
bool end_card(Ui& ui, CardState& card, Box box);

/// Lines of words under a title, with a button that closes them.
class WordsCard {
  public:
    struct Line {
        const char* head; ///< in bold; may be empty
        std::string words;
    };
    bool open() const { return !title_.empty(); }
    void show(std::string_view title, std::vector<Line> lines);
    SHIMLIGHT_REST void draw(Ui& ui);

  private:
    std::string title_;
    std::vector<Line> lines_;
    CardState state_;
    Scroll scroll_;
    float content_px_ = 0;
};

} // namespace shimlight::view
