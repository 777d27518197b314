// SPDX-License-Identifier: MIT
// What levers did to a house, in a few lines: for the moment before what writes houses has come.
#pragma once

#include "house/house.hpp"

#include <string>
#include <string_view>

namespace shimlight::house {

/// What made `to` of `from` in the opening on the screen: levers of Today and of the remedies, and
/// which remedy was chosen. Empty when nothing did.
std::string moves(const House& from, const House& to);

/// The house after them. Lines that mean nothing here are left out.
House moved(House house, std::string_view moves);

} // namespace shimlight::house
