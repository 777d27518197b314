// SPDX-License-Identifier: MIT
// The remedies thought of for this opening: choose one, make one ("like today, but …"), take one of
// the trade's.
#pragma once

#include "assess/advice.hpp"
#include "view/column.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

namespace shimlight::view {

/// Puts a remedy at the end of the opening's list and chooses it; says so where there is no room.
bool add_remedy(Session& session, opening::Remedy remedy);

class Remedies {
  public:
    /// Ends `session.choosing_remedy` when the reader is done.
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box);

  private:
    Scroll scroll_;
    float content_px_ = 0;
    // What would help most, of this revision and unit.
    int revision_ = -1, waited_ = 0;
    Units units_ = Units::us;
    bool complete_ = false;
    assess::Advice advice_;
    void advise(const Session& session, bool with_cheapest);
    void help(Ui& ui, const Session& session, Column& column);
    void own(Ui& ui, Session& session, Column& column);
    void chosen(Ui& ui, Session& session, Column& column);
    void ready(Session& session, Column& column);
};

} // namespace shimlight::view
