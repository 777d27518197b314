// SPDX-License-Identifier: MIT
// What each build of a wall is made of, across it and beside the rough opening.
#pragma once

#include "opening/cut.hpp"

namespace shimlight::opening {

/// Thicknesses from outside to inside; 0 where a wall has no such layer.
struct WallSizes {
    double outside_m = 0;   ///< cladding, or the outer leaf of masonry
    double behind_m = 0;    ///< air behind a brick veneer
    double sheathing_m = 0; ///< frames only
    double core_m = 0;      ///< studs; solid masonry inside the outer leaf; cavity and inner leaf
    double cavity_m = 0;    ///< of the core: all of a stud bay, the gap of a cavity wall
    double backing_m = 0;   ///< lath, or furring under board on masonry
    double lining_m = 0;    ///< plaster or board
};
WallSizes wall_sizes(const Wall& wall);

/// From the plane of the window frame's outside to the room: the way of the air through the joint.
double joint_depth_m(const Wall& wall);

/// Length along the wall of what frames the opening: header or lintel, studs or closer, sill.
double framing_length_m(WallBuild build, Position position);

inline bool is_masonry(const Wall& wall) {
    return wall.build == WallBuild::brick_cavity || wall.build == WallBuild::solid_masonry;
}

/// The outermost layer is brick that stands before the frame's outside.
inline bool brick_outside(const Wall& wall) {
    return is_masonry(wall) || wall.cladding == Cladding::brick_veneer;
}

/// Conductivity that gives a closed air space of this thickness across the wall its resistance.
double still_air_w_mk(double thickness_m);

/// Brickwork that no rain reaches.
inline constexpr double inner_brick_w_mk = 0.56; // usual U-value tables, protected brickwork
inline constexpr double stucco_w_mk = 0.72;      // ASHRAE Fundamentals 2021 ch. 26 Table 1

} // namespace shimlight::opening
