// SPDX-License-Identifier: MIT
// What questions say of readings and tests beside the computation.
#pragma once

#include "assess/explanation.hpp"
#include "assess/find_out.hpp"
#include "door/answer.hpp"

namespace shimlight::door {

Json reading_answer(const assess::SurfaceReading& reading);
Json share_answer(const physics::DraftShare& share);

/// Causes with their ranges and what does not agree, without the tests.
Json found_answer(const assess::FindOut& found);

/// "glass_centre", "casing", …
std::string part_key(opening::Part part);

/// "colder", "as_computed" or "warmer"
std::string compared_key(assess::Compared compared);

} // namespace shimlight::door
