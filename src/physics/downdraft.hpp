// SPDX-License-Identifier: MIT
// Air that cold glass cools: it falls along the glass and runs out over the floor.
#pragma once

#include "physics/problem.hpp"

namespace shimlight::physics {

/// The falling layer at the lower end of a cold face, per metre of width.
struct FallingLayer {
    double peak_speed_m_s = 0;
    double thickness_m = 0; ///< to where the speed is nil again
    double flow_m3_s_m = 0; ///< per metre of width
};

/// Turbulent layer of Eckert and Jackson 1950 (NACA TN 2207, formulas from memory) after `height_m`
/// of a face `difference_k` colder than the room. A face no colder than the air has no layer.
FallingLayer falling_layer(double height_m, double difference_k, double room_c = 21);

/// Heat that the layer has taken from the room's air, W per metre of width.
double layer_heat_w_m(const FallingLayer& layer, double difference_k, double room_c = 21);

/// Speed at `from_glass_m` away from the glass within that layer, m/s; nil outside it.
double layer_speed_m_s(const FallingLayer& layer, double from_glass_m);

/// The stream that the layer feeds, along wall and floor.
struct FloorStream {
    double speed_m_s = 0;
    double colder_k = 0; ///< coldest air in the stream below the room's, K
};

/// Heiselberg 1994 (equations from memory): fastest and coldest air of the floor stream after a way
/// of `way_m` from the foot of glass of `height_m`, `difference_k` colder than the room. Made for
/// glass down to the floor; for glass above a sill the way down the wall is counted in `way_m`.
FloorStream floor_stream(double height_m, double difference_k, double way_m);

/// Part of the peak speed at the foot of the wall that is left after `way_m` on the floor, 0…1.
double floor_speed_ratio(double way_m);

/// Sentences for glass, distance or difference outside the range the equations are used for.
Warnings floor_stream_warnings(double height_m, double difference_k, double way_m,
                               double sill_m = 0);

} // namespace shimlight::physics
