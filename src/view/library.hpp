// SPDX-License-Identifier: MIT
// The houses on this device: name and place of the one that is open, the others, the trash.
#pragma once

#include "view/column.hpp"
#include "view/session.hpp"

namespace shimlight::view {

class Library {
  public:
    void draw(Ui& ui, Session& session, Column& column);

  private:
    std::string gone_;  ///< name of the house that was just deleted
    bool sure_ = false; ///< the trash was asked to be emptied
    void this_house(Ui& ui, Session& session, Column& column);
    void others(Ui& ui, Session& session, Column& column);
    void trash(Ui& ui, Column& column);
};

/// A house that comes from a file or is begun: beside the others where houses are kept, else in the
/// place of the one that is here, which undo brings back.
void open_beside(Ui& ui, Session& session, house::House house);

} // namespace shimlight::view
