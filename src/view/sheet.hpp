// SPDX-License-Identifier: MIT
// Sheet: measuring, ordering and materials of this opening, and what can hurt someone at it.
#pragma once

#include "house/sheet.hpp"
#include "view/column.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

namespace shimlight::view {

class SheetPage {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box);

  private:
    Scroll scroll_;
    float content_px_ = 0;
    void tape(Ui& ui, Session& session, Column& column, const house::Sheet& s) const;
    void order(Ui& ui, Session& session, Column& column, const house::Sheet& s) const;
    void work(Ui& ui, Session& session, Column& column, const house::Sheet& s) const;
    void safety(Ui& ui, Session& session, Column& column) const;
};

} // namespace shimlight::view
