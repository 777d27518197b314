// SPDX-License-Identifier: MIT
// Heat exchange between air and the walls of a narrow channel between parallel plates.
#pragma once

#include "physics/crack.hpp"

namespace shimlight::physics {

/// A channel `gap_m` wide and `length_m` long, through which `flow_m2_s` flows per metre across.
struct Channel {
    double gap_m = 0.01;
    double length_m = 0.1;
    double flow_m2_s = 0;
};

/// Mean film on each wall, W/m²K, walls of one temperature. Laminar with its entrance after
/// Edwards, Denny and Mills, Transfer Processes (1979), turbulent after Gnielinski (Int. Chem. Eng.
/// 16, 1976), both from memory; in between by a straight line. Air properties near 10 °C.
double channel_film_w_m2k(const Channel& channel, const AirState& air = {});

} // namespace shimlight::physics
