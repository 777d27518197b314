// SPDX-License-Identifier: MIT
// All levers of the opening on the screen, in one list that scrolls.
#pragma once

#include "view/scroll.hpp"
#include "view/session.hpp"

namespace shimlight::view {

class LeversPanel {
  public:
    /// Draws the levers of Today or of the Remedy; moves them in the session. True when one moved.
    bool draw(Ui& ui, Session& session, Box box);
    void to_top() { scroll_.to_top(); }

  private:
    Scroll scroll_;
    std::string focused_; ///< the lever that had the focus, to bring it into sight once
    float head(Ui& ui, Session& session, Box box);
    void title(Ui& ui, std::string_view words, Box box);
    bool row(Ui& ui, Session& session, const opening::Field& field, Box box, Shown shown);
};

} // namespace shimlight::view
