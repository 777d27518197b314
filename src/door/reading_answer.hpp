// SPDX-License-Identifier: MIT
// What questions say of a reading beside the computation.
#pragma once

#include "assess/explanation.hpp"
#include "door/answer.hpp"

namespace shimlight::door {

Json reading_answer(const assess::SurfaceReading& reading);

} // namespace shimlight::door
