// SPDX-License-Identifier: MIT
#include "physics/comfort.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::physics {

namespace {

// ISO 7730:2005 Annex D; its program rounds 273.15 to 273, and the printed rows follow it.
constexpr double annex_d_kelvin = 273;
constexpr double met_w_m2 = 58.15;
constexpr double clo_m2k_w = 0.155;
constexpr double settled_k = 1e-10; ///< clothing surface; far below the third decimal of a vote
constexpr int most_rounds = 100;

double fourth(double x) {
    return x * x * x * x;
}

/// Loss by radiation and convection from the clothed body, W/m², at a clothing surface.
struct ClothedBody {
    double air_c, radiant_c, speed_m_s, area_factor;

    double dry_loss_w_m2(double surface_c) const {
        const double difference = surface_c - air_c;
        const double still = 2.38 * std::sqrt(std::sqrt(std::abs(difference)));
        const double convection = std::max(still, 12.1 * std::sqrt(speed_m_s));
        return area_factor * (3.96e-8 * (fourth(surface_c + annex_d_kelvin) -
                                         fourth(radiant_c + annex_d_kelvin)) +
                              convection * difference);
    }
};

/// The clothing surface at which what comes through the clothing leaves it. The left side rises
/// with the temperature, so bisection cannot fail.
double clothing_surface_c(const ClothedBody& body, double skin_c, double clothing_m2k_w) {
    double low = std::min({skin_c, body.air_c, body.radiant_c});
    double high = std::max({skin_c, body.air_c, body.radiant_c});
    for (int round = 0; round < most_rounds && high - low > settled_k; ++round) {
        const double middle = (low + high) / 2;
        const double left = middle + clothing_m2k_w * body.dry_loss_w_m2(middle);
        (left < skin_c ? low : high) = middle;
    }
    return (low + high) / 2;
}

double clothing_area_factor(double clothing_m2k_w) {
    return clothing_m2k_w <= 0.078 ? 1 + 1.29 * clothing_m2k_w : 1.05 + 0.645 * clothing_m2k_w;
}

double annex_d_vapour_pa(const ThermalState& s) {
    return s.rh * 1000 * std::exp(16.6536 - 4030.183 / (s.air_c + 235));
}

double logistic_pct(double exponent) {
    return 100 / (1 + std::exp(-exponent));
}

} // namespace

double predicted_mean_vote(const ThermalState& s) {
    const double heat = s.met * met_w_m2;
    const double clothing = s.clo * clo_m2k_w;
    const double vapour_pa = annex_d_vapour_pa(s);
    const ClothedBody body{s.air_c, s.radiant_c, s.speed_m_s, clothing_area_factor(clothing)};
    const double surface_c = clothing_surface_c(body, 35.7 - 0.028 * heat, clothing);
    const double skin_vapour = 3.05e-3 * (5733 - 6.99 * heat - vapour_pa);
    const double sweat = heat > met_w_m2 ? 0.42 * (heat - met_w_m2) : 0;
    const double breath = 1.7e-5 * heat * (5867 - vapour_pa) + 0.0014 * heat * (34 - s.air_c);
    return (0.303 * std::exp(-0.036 * heat) + 0.028) *
           (heat - skin_vapour - sweat - breath - body.dry_loss_w_m2(surface_c));
}

double predicted_dissatisfied_pct(double pmv) {
    return 100 - 95 * std::exp(-0.03353 * fourth(pmv) - 0.2179 * pmv * pmv);
}

double draught_rate_pct(double air_c, double speed_m_s, double turbulence_pct) {
    if (air_c >= 34) return 0;
    const double speed = std::max(speed_m_s, 0.05);
    const double rate =
        (34 - air_c) * std::pow(speed - 0.05, 0.62) * (0.37 * speed * turbulence_pct + 3.14);
    return std::min(rate, 100.0);
}

double draught_speed_m_s(double air_c, double rate_pct, double turbulence_pct) {
    double low = 0.05, high = 1;
    const double rate = std::min(rate_pct, 100.0);
    if (air_c >= 34) return std::numeric_limits<double>::infinity();
    while (draught_rate_pct(air_c, high, turbulence_pct) < rate)
        high *= 2;
    for (int round = 0; round < most_rounds && high - low > 1e-12; ++round) {
        const double middle = (low + high) / 2;
        (draught_rate_pct(air_c, middle, turbulence_pct) < rate ? low : high) = middle;
    }
    return (low + high) / 2;
}

AnkleDraft ankle_draft(double ankle_speed_m_s, double pmv) {
    return {logistic_pct(-2.58 + 3.05 * ankle_speed_m_s - 1.06 * pmv),
            logistic_pct(-2.087 + 2.255 * ankle_speed_m_s - 0.915 * pmv),
            logistic_pct(-3.222 + 1.878 * ankle_speed_m_s - 0.983 * pmv)};
}

double operative_iso_c(double air_c, double radiant_c, double speed_m_s) {
    const double weight = std::sqrt(10 * std::max(speed_m_s, 0.0));
    return (air_c * weight + radiant_c) / (1 + weight);
}

double operative_ashrae_c(double air_c, double radiant_c, double speed_m_s) {
    const double weight = speed_m_s < 0.2 ? 0.5 : speed_m_s < 0.6 ? 0.6 : 0.7;
    return weight * air_c + (1 - weight) * radiant_c;
}

double relative_speed_m_s(double speed_m_s, double met) {
    return speed_m_s + 0.3 * std::max(met - 1, 0.0);
}

double dynamic_clo(double clo, double met) {
    return met > 1.2 ? clo * (0.6 + 0.4 / met) : clo;
}

double cool_wall_pct(double asymmetry_k) {
    return logistic_pct(-6.61 + 0.345 * std::max(asymmetry_k, 0.0));
}

double warm_wall_pct(double asymmetry_k) {
    return std::max(logistic_pct(-3.72 + 0.052 * std::max(asymmetry_k, 0.0)) - 3.5, 0.0);
}

double cool_ceiling_pct(double asymmetry_k) {
    return logistic_pct(-9.93 + 0.50 * std::max(asymmetry_k, 0.0));
}

double warm_ceiling_pct(double asymmetry_k) {
    return std::max(logistic_pct(-2.84 + 0.174 * std::max(asymmetry_k, 0.0)) - 5.5, 0.0);
}

double head_to_ankle_pct(double difference_k) {
    return logistic_pct(-5.76 + 0.856 * std::max(difference_k, 0.0));
}

double floor_pct(double floor_c) {
    return 100 - 94 * std::exp(-1.387 + 0.118 * floor_c - 0.0025 * floor_c * floor_c);
}

ComfortAnswer comfort(const ComfortQuestion& question) {
    const ThermalState& state = question.state;
    ComfortAnswer answer;
    answer.pmv = predicted_mean_vote(state);
    answer.ppd_pct = predicted_dissatisfied_pct(answer.pmv);
    warn_thermal_state(state, answer.pmv, answer.warnings);
    if (question.turbulence_pct) {
        const double turbulence = *question.turbulence_pct;
        answer.draft_rate_pct = draught_rate_pct(state.air_c, state.speed_m_s, turbulence);
        warn_draught_rate(state.air_c, state.speed_m_s, turbulence, answer.warnings);
    }
    if (question.ankle) {
        answer.ankle = ankle_draft(question.ankle->speed_m_s, answer.pmv);
        warn_ankle_draft(*question.ankle, state, answer.warnings);
    }
    return answer;
}

} // namespace shimlight::physics
