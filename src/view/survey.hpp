// SPDX-License-Identifier: MIT
// Survey: walking through a house with a phone. Its openings by room with how far each one is, and
// of the chosen one what is typed, seen and photographed on the spot.
#pragma once

#include "view/column.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

namespace shimlight::view {

/// How far an opening is: "Measured · read before · 2 photographs · Foam the shim space".
std::string survey_state(const house::OpeningRecord& record);

class Survey {
  public:
    /// `top`: where the page's content begins, for bringing a new opening into sight.
    void draw(Ui& ui, Session& session, Column& column, Scroll& scroll, float top);

  private:
    bool open_ = false;    ///< the chosen opening shows what can be written down of it
    bool reveal_ = false;  ///< it is new: bring it into sight
    std::string deleted_;  ///< name of what was deleted last
    int deleted_at_ = -1;  ///< revision after that
    float shown_from_ = 0; ///< of the chosen opening in this frame
    float shown_to_ = 0;

    void list(Ui& ui, Session& session, Column& column);
    void editor(Ui& ui, Session& session, Column& column);
    void quick(Ui& ui, Session& session, Column& column);
    void actions(Ui& ui, Session& session, Column& column);
    void changed(Ui& ui, Session& session, house::House next);
    void seen(Ui& ui, Session& session, Column& column);
    void photos(Ui& ui, Session& session, Column& column);
    void add(Ui& ui, Session& session, Column& column);
};

} // namespace shimlight::view
