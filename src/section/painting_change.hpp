// SPDX-License-Identifier: MIT
// By how much two paintings differ: a lever moves between paintings of one shape.
#pragma once

#include "section/painting.hpp"

namespace shimlight::section {

/// The largest factor, 1 or more, between a conductivity, film or stream's flow of `a` and that of
/// `b`; temperatures do not count. No conductance of the balance differs by more. Infinite if the
/// paintings differ in anything else.
double largest_change(const Painting& a, const Painting& b);

/// Gives the cavities of `to` that take their temperatures from the solution those of `from`, where
/// it has the same region.
void take_up_cavities(const Painting& from, Painting& to);

} // namespace shimlight::section
