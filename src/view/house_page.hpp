// SPDX-License-Identifier: MIT
// House: its openings and their complaints, the remedies of the one chosen, the file, the settings.
#pragma once

#include "view/scroll.hpp"
#include "view/session.hpp"

#include <string>

namespace shimlight::view {

class HousePage {
  public:
    /// Draws the page. True when an opening was chosen: time to look at it.
    bool draw(Ui& ui, Session& session, Box box);

  private:
    Scroll scroll_;
    float openings(Ui& ui, Session& session, Box box, bool& chosen);
    float remedy(Ui& ui, Session& session, Box box);
    float file(Ui& ui, Session& session, Box box);
    float settings(Ui& ui, Session& session, Box box);
    float honesty(Ui& ui, Box box);
    float content_px_ = 1200; ///< measured in the last frame
};

} // namespace shimlight::view
