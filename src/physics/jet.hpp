// SPDX-License-Identifier: MIT
// Air from a crack into the room: a plane jet that cold air also pulls down.
#pragma once

namespace shimlight::physics {

/// Air as it leaves a long narrow opening.
struct PlaneJet {
    double speed_m_s = 0; ///< flow over area of the opening
    double gap_m = 0.002;
    double colder_k = 0; ///< than the room, K; negative for warmer air
};

/// Middle of the jet after some way.
struct JetAir {
    double speed_m_s = 0;
    double colder_k = 0;
};

/// Free plane jet, `way_m` from the opening: speed falls as 2.43 sqrt(gap/way), excess temperature
/// as 2.00 sqrt(gap/way) (Hagström, Sirén and Zhivov 1999), neither above its value at the opening.
JetAir free_jet(const PlaneJet& jet, double way_m);

/// The same along a wall or floor, which mirrors it: both constants times sqrt(2).
JetAir attached_jet(const PlaneJet& jet, double way_m);

/// Speed and excess temperature at `off_axis_m` as a share of those in the middle, 0…1.
double jet_profile(double way_m, double off_axis_m);

/// How far a cold horizontal free jet has sunk after `way_m`, m (negative: warm air has risen).
double jet_drop_m(const PlaneJet& jet, double way_m, double room_c);

/// Cold air from an opening that clings to the wall, after falling `height_m`. Engineering
/// estimate: attached jet and plane plume joined by the cubes of their speeds, the heat carried
/// staying the same.
JetAir falling_jet(const PlaneJet& jet, double height_m, double room_c);

/// The same air after it has run `floor_m` over the floor. The plume's part slows there like the
/// stream from cold glass (floor_speed_ratio).
JetAir fallen_jet(const PlaneJet& jet, double height_m, double floor_m, double room_c);

} // namespace shimlight::physics
