// SPDX-License-Identifier: MIT
#include "assess/covering_case.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

constexpr double tighter = 0.5, looser = 2; // slots, as they are seen in houses; an estimate

double inner_face_c(const opening::Case& c, const physics::GlazingResult& glass) {
    return glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
}

} // namespace

CoveringEffect covering_result(const opening::Case& c, const opening::CoveredGlass& glass) {
    CoveringEffect effect;
    if (!glass.covered) return effect;
    const opening::CoveredGlass tight = opening::covered_glass(c, tighter);
    const opening::CoveredGlass loose = opening::covered_glass(c, looser);
    opening::Case open = c;
    open.opening.covering = opening::Covering::none;
    const double open_u = opening::covered_glass(open).glass.u_w_m2k;
    effect.covered = true;
    effect.glass_c = inner_face_c(c, glass.glass);
    const double tight_c = inner_face_c(c, tight.glass), loose_c = inner_face_c(c, loose.glass);
    effect.glass_low_c = std::min(tight_c, loose_c);
    effect.glass_high_c = std::max(tight_c, loose_c);
    effect.front_c = glass.covering.front_c;
    effect.spill_c = glass.covering.spill_c;
    effect.spill_m_s = glass.covering.speed_m_s;
    effect.spill_m3_s_m =
        glass.covering.speed_m_s * opening::usual_covering(c.opening.covering).gap_m;
    effect.saved = 1 - glass.glass.u_w_m2k / open_u;
    effect.saved_low = 1 - loose.glass.u_w_m2k / open_u;
    effect.saved_high = 1 - tight.glass.u_w_m2k / open_u;
    return effect;
}

} // namespace shimlight::assess
