// SPDX-License-Identifier: MIT
// A blind, shade or curtain before glass: the space behind it is partly open to the room, whose air
// sinks through it along the cold glass and spills out below. ISO 15099:2003 clause 7 (ventilated
// gaps, formulas from memory).
#pragma once

namespace shimlight::physics {

/// Sizes of the covering as it hangs; slots are those along its edges.
struct Covering {
    double resistance_m2k_w = 0;                         ///< of cloth or slats alone
    double emissivity = 0.85;                            ///< both faces
    double gap_m = 0.05;                                 ///< to the glass
    double top_m = 0.01, bottom_m = 0.01, side_m = 0.01; ///< width of each slot
    double open_share = 0;                               ///< of the face: between slats
};

/// What the covering hangs before.
struct CoveredFace {
    double surface_c = 10; ///< of the glass
    double emissivity = 0.84;
    double room_c = 21; ///< air and surroundings
    double width_m = 1, height_m = 1;
};

struct CoveringResult {
    double convective_w_m2k = 0; ///< glass to the air behind the covering
    double radiative_w_m2k = 0;  ///< glass to the covering
    double gap_c = 0;            ///< mean of the air behind
    double spill_c = 0;   ///< of that air as it leaves, below when it is colder than the room
    double speed_m_s = 0; ///< mean within the gap
    double back_c = 0, front_c = 0; ///< faces of the covering, to the glass and to the room
    bool converged = true;
};

/// Steady state behind a covering of glass at `surface_c`. Made for vertical glass and gaps of
/// about 15 to 300 mm; an estimate, since nobody hangs a curtain to a millimetre.
CoveringResult covering(const Covering& covering, const CoveredFace& face);
/// The same from a state near it, which takes fewer rounds.
CoveringResult covering(const Covering& covering, const CoveredFace& face,
                        const CoveringResult& start);

} // namespace shimlight::physics
