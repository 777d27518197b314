// SPDX-License-Identifier: MIT
// An opening described in words: what was understood, what was assumed, and a new opening of it.
#pragma once

#include "opening/words.hpp"
#include "view/column.hpp"
#include "view/session.hpp"

namespace shimlight::view {

class WordsEntry {
  public:
    /// True when the opening was added: time to look at it.
    bool draw(Ui& ui, Session& session, Column& column);

  private:
    std::string text_;
    opening::WordsAnswer found_;
    bool tell(Ui& ui, Session& session, Column& column) const;
};

} // namespace shimlight::view
