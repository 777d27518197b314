// SPDX-License-Identifier: MIT
// A lever's own card, by right click, long press or key: back to its earlier value, copy, close.
#pragma once

#include "view/card.hpp"
#include "view/session.hpp"

namespace shimlight::view {

class LeverCard {
  public:
    bool open() const { return field_ != nullptr; }
    /// Opens the card of the lever that lies in `box` when it is asked for. `of`: whose lever it
    /// is.
    void listen(Ui& ui, Session& session, const opening::Field& field, Shown of, Box box);
    SHIMLIGHT_REST void draw(Ui& ui, Session& session);

  private:
    const opening::Field* field_ = nullptr;
    Shown of_ = Shown::today;
    CardState state_;
    void show(Ui& ui, const opening::Field& field, Shown of);
};

} // namespace shimlight::view
