// SPDX-License-Identifier: MIT
#include "opening/wall_build.hpp"
#include "opening/dimensions.hpp"

namespace shimlight::opening {

namespace {

// Closed air spaces, heat flowing sideways, ISO 6946:2007 Table 2: from 25 mm on, and about 19 mm.
constexpr double wide_space_m2k_w = 0.18, narrow_space_m2k_w = 0.17, wide_space_m = 0.025;

void add_outside(WallSizes& sizes, const Wall& wall) {
    switch (wall.cladding) {
    case Cladding::wood:
        sizes.outside_m = siding_m;
        break;
    case Cladding::brick_veneer:
        sizes.outside_m = veneer_m;
        sizes.behind_m = veneer_air_m;
        break;
    case Cladding::stucco:
        sizes.outside_m = stucco_m;
        break;
    }
}

WallSizes framed(const Wall& wall) {
    WallSizes sizes;
    add_outside(sizes, wall);
    const bool balloon = wall.build == WallBuild::balloon;
    sizes.sheathing_m = balloon ? board_sheathing_m : sheathing_m;
    sizes.core_m = balloon                              ? old_stud_m
                   : wall.build == WallBuild::frame_2x4 ? stud_2x4_m
                                                        : stud_2x6_m;
    sizes.cavity_m = sizes.core_m;
    const bool plaster = wall.lining == Lining::plaster;
    sizes.backing_m = plaster ? lath_m : 0;
    sizes.lining_m = plaster ? lath_plaster_m : gypsum_m;
    return sizes;
}

WallSizes masonry(const Wall& wall) {
    WallSizes sizes;
    const bool cavity = wall.build == WallBuild::brick_cavity;
    sizes.outside_m = leaf_m;
    sizes.core_m = cavity ? brick_cavity_m + leaf_m : solid_brick_m - leaf_m;
    sizes.cavity_m = cavity ? brick_cavity_m : 0;
    const bool plaster = wall.lining == Lining::plaster;
    sizes.backing_m = plaster ? 0 : furring_m;
    sizes.lining_m = plaster ? masonry_plaster_m : gypsum_m;
    return sizes;
}

} // namespace

WallSizes wall_sizes(const Wall& wall) {
    return is_masonry(wall) ? masonry(wall) : framed(wall);
}

double joint_depth_m(const Wall& wall) {
    const WallSizes sizes = wall_sizes(wall);
    return sizes.sheathing_m + sizes.core_m + sizes.backing_m + sizes.lining_m;
}

double framing_length_m(WallBuild build, Position position) {
    const bool head = position == Position::head, jamb = position == Position::jamb;
    switch (build) {
    case WallBuild::frame_2x4:
    case WallBuild::frame_2x6:
        return head ? header_m : jamb ? 2 * lumber_m : lumber_m;
    case WallBuild::balloon: // doubled pieces laid flat over the opening and beside it
        return head || jamb ? 2 * old_lumber_m : old_lumber_m;
    case WallBuild::brick_cavity:
        return head ? lintel_m : jamb ? leaf_m : sill_course_m;
    case WallBuild::solid_masonry:
        break;
    }
    return head ? lintel_m : 0;
}

double still_air_w_mk(double thickness_m) {
    return thickness_m / (thickness_m < wide_space_m ? narrow_space_m2k_w : wide_space_m2k_w);
}

} // namespace shimlight::opening
