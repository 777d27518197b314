// SPDX-License-Identifier: MIT
// All levers of the opening on the screen, in one list that scrolls.
#pragma once

#include "view/scroll.hpp"
#include "view/session.hpp"

#include <optional>
#include <string>
#include <vector>

namespace shimlight::view {

class LeversPanel {
  public:
    /// Draws the levers of Today or of the Remedy; moves them in the session. True when one moved.
    bool draw(Ui& ui, Session& session, Box box);
    void to_top() { scroll_.to_top(); }

  private:
    /// A heading or a lever, and where it stands in the list.
    struct Item {
        std::string_view heading; ///< empty for a lever
        const opening::Field* field = nullptr;
        int group = 0, column = 0;
        float top_px = 0, height_px = 0; ///< from the list's start
    };
    struct List {
        std::vector<Item> items;
        float height_px = 0; ///< of the longest column
    };

    Scroll scroll_;
    std::optional<unsigned> open_; ///< a bit a group, once the reader has opened or folded one
    std::string focused_;          ///< the lever that had the focus, to bring it into sight once
    List arrange(const Ui& ui, const opening::Case& c, int columns) const;
    float head(Ui& ui, Session& session, Box box);
    void title(Ui& ui, const Item& item, Box box);
    bool is_open(const Ui& ui, int group) const;
    bool row(Ui& ui, Session& session, const opening::Field& field, Box box, Shown shown);
};

} // namespace shimlight::view
