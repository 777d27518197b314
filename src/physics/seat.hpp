// SPDX-License-Identifier: MIT
// One window, one person: the falling air, the leaks' jets and the cold radiation at the seat.
#pragma once

#include "physics/problem.hpp"
#include "physics/view_factor.hpp"

#include <span>

namespace shimlight::physics {

enum class LeakPlace { sash, shim };

/// One leak as the room sees it: a slot jet of outdoor air.
struct RoomLeak {
    LeakPlace place = LeakPlace::shim;
    double flow_m3_s = 0; ///< <= 0 leaks outward and bothers nobody
    double air_c = 0;     ///< temperature as it enters the room
    double gap_m = 0.002;
    double length_m = 1.0;
    double height_m = 0.6; ///< above the floor
};

struct SeatWindow {
    double width_m = 1.2, height_m = 1.5, sill_m = 0.6;
    double surface_c = 10; ///< inside face of the glass, or of a covering drawn before it
    double frame_c = 12;   ///< inside face of the frame
};

/// Cold air that comes out below a covering along the whole sill.
struct SeatSpill {
    double speed_m_s = 0;
    double flow_m3_s_m = 0; ///< per metre of width; 0 without a covering
    double air_c = 0;
};

/// What the falling air meets or brings with it below the glass.
struct SeatBelow {
    SeatSpill spill;
    double sill_depth_m = 0; ///< deeper sill board than usual: more way for the cold air
    double heater_w_m = 0;   ///< warm air's heat rising under the window, W per metre of it
};

struct SeatRoom {
    double air_c = 21;
    double rh = 0.4;
    double width_m = 4, depth_m = 4, height_m = 2.5;
    double surfaces_c = 20; ///< the other surfaces
};

struct SeatPerson {
    double distance_m = 1.0; ///< from the window, measured from the plane of the wall
    Posture posture = Posture::seated;
    double met = 1.1;
    double clo = 0.9;
};

struct DraftShare { ///< of the draft at the ankles; sums to 1 (all zero when there is none)
    double cold_glass = 0, sash_leak = 0, shim_leak = 0;
};

struct SeatResult {
    double downdraft_speed_at_sill_m_s = 0;
    double downdraft_layer_m = 0;   ///< thickness of the falling air there
    double downdraft_speed_m_s = 0; ///< at the person's ankles
    double downdraft_air_c = 0;
    double leak_speed_at_sill_m_s = 0; ///< where the leaks' air passes the level of the sill
    double leak_speed_m_s = 0;         ///< at the ankles
    double leak_air_c = 0;
    double ankle_speed_m_s = 0; ///< all causes together
    double ankle_air_c = 0;
    double neck_speed_m_s = 0, neck_air_c = 0;
    double draft_rate_ankle_pct = 0; ///< ISO 7730 draught rate
    double draft_rate_neck_pct = 0;
    double ankle_bare_pct = 0;    ///< ASHRAE 55 ankle draft, share of people bothered
    double ankle_covered_pct = 0; ///< the same with socks and long trousers
    DraftShare share;
    double mean_radiant_c = 0, operative_c = 0;
    double asymmetry_k = 0, asymmetry_dissatisfied_pct = 0;
    double pmv = 0, ppd_pct = 0;
    Warnings warnings;
};

SeatResult seat(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person,
                std::span<const RoomLeak> leaks, const SeatBelow& below = {});

} // namespace shimlight::physics
