// SPDX-License-Identifier: MIT
// House: its openings and their complaints, the houses beside it, the remedies of the one chosen, a
// window by its label, the file, the settings.
#pragma once

#include "view/column.hpp"
#include "view/label_entry.hpp"
#include "view/library.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"
#include "view/survey.hpp"
#include "view/words_entry.hpp"

#include <memory>

namespace shimlight::view {

class Report;

class HousePage {
  public:
    HousePage();
    ~HousePage();
    /// Draws the page. True when an opening or a remedy was chosen: time to look at it.
    SHIMLIGHT_REST bool draw(Ui& ui, Session& session, Box box, bool& keys);

  private:
    Scroll scroll_;
    Survey survey_;
    WordsEntry words_;
    LabelEntry label_;
    Library library_;
    std::unique_ptr<Report> report_; ///< made with the first drawing
    void remedy(Ui& ui, Session& session, Column& column);
    void file(Ui& ui, Session& session, Column& column);
    bool settings(Ui& ui, Session& session, Column& column);
    void honesty(Ui& ui, Column& column);
    float content_px_ = 1200; ///< measured in the last frame
};

} // namespace shimlight::view
