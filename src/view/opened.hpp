// SPDX-License-Identifier: MIT
// What a file or a link brings into the house on the screen. Either it is opened, or nothing
// changes; the session's message tells which.
#pragma once

#include "view/session.hpp"

#include <string>

namespace shimlight::view {

/// A house file in place of the house; undo brings the other back.
void open_house(Session& session, const std::string& text);

/// An opening that joins the house; undo takes it out again.
void open_link(Session& session, const std::string& text);

} // namespace shimlight::view
