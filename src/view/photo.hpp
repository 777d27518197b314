// SPDX-License-Identifier: MIT
// A photograph: the page lays it over the canvas (web/photos.js); the canvas draws its place.
#pragma once

#include "view/rest.hpp"
#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

inline constexpr float photo_wide_px = 120, photo_high_px = 90; ///< 4 to 3, as web/photos.js has it

/// A press opens it larger. Covered by anything it is not shown.
void photo(Ui& ui, const Session& session, Box box, const house::Photo& photo);

/// What web/photos.js hands over once it has kept a picture: "photo", a space and its id. It goes
/// to the chosen opening. False when that is something else.
SHIMLIGHT_REST bool take_photo(Session& session, std::string_view opened);

} // namespace shimlight::view
