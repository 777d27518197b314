// SPDX-License-Identifier: MIT
// Three U-factors of one window: centre of glass, whole window, installed window.
#pragma once

#include "assess/solve_memory.hpp"

#include <span>

namespace shimlight::assess {

/// Conductances, W/K. 0 while the cuts they need are missing.
struct WindowConductance {
    double unit_w_k = 0;  ///< glass, edge, frame and meeting rail of the unit alone
    double joint_w_k = 0; ///< what standing in the wall adds, heat to the joint's air included
    double stream_w = 0;  ///< W (not per kelvin): heat that the joint's air takes on its way
    double unit_m2 = 0, opening_m2 = 0;
    double frame_w_k = 0, frame_m2 = 0; ///< frame, sashes and meeting rail, as they show inside
    double edge_w_k = 0, edge_m2 = 0;   ///< the band of glass along them
};

/// `alone` are the unit's own cuts, `installed` those with the wall, both by position.
WindowConductance window_conductance(const opening::Case& c, double glass_u_w_m2k,
                                     std::span<const Slot> alone, std::span<const Slot> installed);

} // namespace shimlight::assess
