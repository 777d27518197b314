// SPDX-License-Identifier: MIT
// Question `comfort`: how a person feels air and surfaces.
#include "door/answer.hpp"
#include "physics/comfort.hpp"

namespace shimlight::door {

namespace {

// Accepted ranges; the formulas' tested ranges are narrower and told as warnings.
constexpr Range felt_air_c{-50, 60};
constexpr Range felt_radiant_c{-100, 150};
constexpr Range felt_speed_m_s{0, 20};
constexpr Range turbulence_pct{0, 100};

// Defaults: sitting quietly indoors in winter (ISO 7730:2005, ISO 9920; from memory).
constexpr double usual_speed_m_s = 0.1;
constexpr double usual_rh = 0.4;
constexpr double usual_met = 1.1;
constexpr double usual_clo = 0.9;

physics::AnkleAir read_ankle(ObjectReader ankle, double air_c) {
    physics::AnkleAir result;
    result.air_c = ankle.number("air_c", felt_air_c, air_c);
    result.speed_m_s = ankle.number("speed_m_s", felt_speed_m_s);
    ankle.finish();
    return result;
}

physics::ComfortQuestion read(ObjectReader& question) {
    physics::ComfortQuestion result;
    physics::ThermalState& state = result.state;
    state.air_c = question.number("air_c", felt_air_c);
    state.radiant_c = question.number("radiant_c", felt_radiant_c, state.air_c);
    state.speed_m_s = question.number("speed_m_s", felt_speed_m_s, usual_speed_m_s);
    state.rh = question.number("rh", fraction_range, usual_rh);
    state.met = question.number("met", met_range, usual_met);
    state.clo = question.number("clo", clo_range, usual_clo);
    result.turbulence_pct = question.optional_number("turbulence_pct", turbulence_pct);
    if (question.has("ankle")) result.ankle = read_ankle(question.object("ankle"), state.air_c);
    question.find("ankle");
    return result;
}

} // namespace

Answer ask_comfort(ObjectReader& question) {
    const physics::ComfortQuestion asked = read(question);
    if (auto fault = settle(question)) return *fault;

    const physics::ComfortAnswer result = physics::comfort(asked);
    Json answer = object({{"pmv", result.pmv}, {"ppd_pct", result.ppd_pct}});
    if (result.draft_rate_pct) answer["draft_rate_pct"] = *result.draft_rate_pct;
    if (result.ankle) {
        answer["ankle_ppd_pct"] = result.ankle->standard_pct;
        answer["ankle_bare_pct"] = result.ankle->bare_pct;
        answer["ankle_covered_pct"] = result.ankle->covered_pct;
    }
    answer["warnings"] = sentences(result.warnings);
    return answer;
}

} // namespace shimlight::door
