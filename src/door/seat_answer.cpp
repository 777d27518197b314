// SPDX-License-Identifier: MIT
// What the questions `room` and `house` say about the person at the window.
#include "door/answer.hpp"
#include "physics/seat.hpp"

namespace shimlight::door {

namespace {

Json air(double speed_m_s, double air_c) {
    return object({{"speed_m_s", speed_m_s}, {"air_c", air_c}});
}

Json draft(double at_sill_m_s, double speed_m_s, double air_c) {
    return object({{"speed_at_sill_m_s", at_sill_m_s}, {"speed_m_s", speed_m_s}, {"air_c", air_c}});
}

} // namespace

Json seat_answer(const physics::SeatResult& seat) {
    Json answer{
        {"downdraft",
         draft(seat.downdraft_speed_at_sill_m_s, seat.downdraft_speed_m_s, seat.downdraft_air_c)},
        {"leak_draft", draft(seat.leak_speed_at_sill_m_s, seat.leak_speed_m_s, seat.leak_air_c)},
        {"ankle", air(seat.ankle_speed_m_s, seat.ankle_air_c)},
        {"neck", air(seat.neck_speed_m_s, seat.neck_air_c)},
        {"draft_rate_pct",
         {{"ankle", seat.draft_rate_ankle_pct}, {"neck", seat.draft_rate_neck_pct}}},
        {"ankle_bare_pct", seat.ankle_bare_pct},
        {"ankle_covered_pct", seat.ankle_covered_pct},
        {"share",
         {{"cold_glass", seat.share.cold_glass},
          {"sash_leak", seat.share.sash_leak},
          {"shim_leak", seat.share.shim_leak}}},
        {"mean_radiant_c", seat.mean_radiant_c},
        {"operative_c", seat.operative_c},
        {"asymmetry_k", seat.asymmetry_k},
        {"asymmetry_dissatisfied_pct", seat.asymmetry_dissatisfied_pct},
        {"pmv", seat.pmv},
        {"ppd_pct", seat.ppd_pct}};
    Warnings warnings = seat.warnings;
    if (seat.share.cold_glass + seat.share.sash_leak + seat.share.shim_leak == 0) {
        warnings.push_back("There is no draft at the ankles to share out: all shares are 0.");
    }
    answer["warnings"] = sentences(warnings);
    return answer;
}

} // namespace shimlight::door
