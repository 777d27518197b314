// SPDX-License-Identifier: MIT
// What a file or a link brings into the house on the screen. Either it is opened, or nothing
// changes; the session's message tells which.
#pragma once

#include "view/rest.hpp"
#include "view/session.hpp"
#include "view/ui.hpp"

#include <string>

namespace shimlight::view {

/// A house file: beside the others where houses are kept (view/library.hpp).
SHIMLIGHT_REST void open_house(Ui& ui, Session& session, const std::string& text);

/// An opening that joins the house; undo takes it out again.
SHIMLIGHT_REST void open_link(Session& session, const std::string& text);

} // namespace shimlight::view
