// SPDX-License-Identifier: MIT
// Panes: the glazing enlarged, its heat as ribbons; the three U-factors; what gas, space and
// coating would do.
#pragma once

#include "view/glass_curves.hpp"
#include "view/pair.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"

namespace shimlight::view {

class Column;

class Panes {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);

  private:
    bool summer_ = false;
    Scroll scroll_;
    float content_px_ = 0;
    std::array<GlassCurves, 2> curves_;       ///< of the house at
    std::array<int, 2> revisions_ = {-1, -1}; ///< these revisions

    void pictures(Ui& ui, const Session& session, const Pair& pair, float y, float height);
    struct Sizes {
        float picture_px = 0;
        bool beside = false; ///< the three U-factors stand in one row
    };
    Sizes sizes(Ui& ui, const Session& session, const Pair& pair) const;
    void facts(Ui& ui, const Session& session, Shown of, Column& column, bool beside) const;
};

} // namespace shimlight::view
