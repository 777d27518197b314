// SPDX-License-Identifier: MIT
#include "opening/covered_glass.hpp"
#include "opening/films.hpp"
#include "opening/glazing_balance.hpp"
#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::opening {

namespace {

constexpr double settled_k = 1e-10;
constexpr int most_rounds = 200;
constexpr double step = 0.5; ///< of the relaxation
// With airs nearer than this there is no film to tell by its heat, K.
constexpr double telling_k = 0.1;

/// What radiates on the glass as much as the covering does: the glass balance takes its
/// surroundings for black, and a covering is not.
double black_c(double glass_c, double emissivity, const physics::CoveringResult& covering) {
    const double glass_k = glass_c + physics::kelvin_offset_k;
    const double heat_w_m2 = covering.radiative_w_m2k * (covering.back_c - glass_c);
    const double fourth =
        std::pow(glass_k, 4) + heat_w_m2 / (emissivity * physics::stefan_boltzmann_w_m2k4);
    return std::pow(fourth, 0.25) - physics::kelvin_offset_k;
}

/// Films and U between room and outdoors instead of between glass and the air behind the covering.
void count_from_room(CoveredGlass& result, const Case& c, double glass_c) {
    physics::GlazingResult& glass = result.glass;
    const physics::CoveringResult& behind = result.covering;
    const double film_k = c.room.air_c - glass_c;
    glass.inside_film = {behind.convective_w_m2k * (behind.gap_c - glass_c) / film_k,
                         behind.radiative_w_m2k * (behind.back_c - glass_c) / film_k};
    glass.u_w_m2k =
        glass.flux_w_m2 /
        (c.room.air_c - outside_environment_c(c.weather, glass.outside_film, c.opening.tilt_deg));
    glass.r_m2k_w = 1 / glass.u_w_m2k;
}

CoveredGlass balance(const Case& c, double slots, const physics::AbsorbedSun& sun_w_m2) {
    CoveredGlass result{glazing_balance(c, sun_w_m2), true, {}};
    physics::Covering covering = usual_covering(c.opening.covering);
    covering.top_m *= slots;
    covering.bottom_m *= slots;
    covering.side_m *= slots;
    const physics::GlazingStack stack = glazing_stack(c.opening);
    const std::size_t face = 2 * stack.pane_count - 1;
    const double emissivity = stack.panes[stack.pane_count - 1].emissivity_in;
    double glass_c = result.glass.faces_c[face], change_k = 1;
    const auto face_at = [&](double c_now) {
        return physics::CoveredFace{c_now, emissivity, c.room.air_c, c.opening.width_m,
                                    c.opening.height_m};
    };
    result.covering = physics::covering(covering, face_at(glass_c));
    for (int round = 0; round < most_rounds && std::fabs(change_k) > settled_k; ++round) {
        result.covering = physics::covering(covering, face_at(glass_c), result.covering);
        physics::GlazingSide inside;
        inside.air_c = result.covering.gap_c;
        inside.convective_w_m2k = result.covering.convective_w_m2k;
        inside.radiant_c = black_c(glass_c, emissivity, result.covering);
        result.glass = glazing_balance(c, inside, sun_w_m2);
        change_k = result.glass.faces_c[face] - glass_c;
        glass_c += step * change_k;
    }
    result.covering.converged = result.covering.converged && std::fabs(change_k) <= settled_k;
    count_from_room(result, c, glass_c);
    return result;
}

} // namespace

physics::Covering usual_covering(Covering kind) {
    switch (kind) {
    case Covering::none:
        break;
    case Covering::blind: // closed slats in the reveal
        return {0, 0.85, 0.05, 0.010, 0.020, 0.015, 0.05};
    case Covering::shade: // roller shade of cloth in the reveal
        return {0, 0.85, 0.05, 0.015, 0.010, 0.012, 0};
    case Covering::curtain: // two cloths with air between, from a rail before the wall
        return {0.06, 0.85, 0.10, 0.050, 0.020, 0.020, 0};
    }
    return {};
}

CoveredGlass covered_glass(const Case& c, double slots, const physics::AbsorbedSun& sun_w_m2) {
    if (c.opening.covering == Covering::none) return {glazing_balance(c, sun_w_m2), false, {}};
    if (std::fabs(c.room.air_c - c.weather.outside_c) >= telling_k)
        return balance(c, slots, sun_w_m2);
    // Films hardly change over a kelvin: those of a slightly colder day serve.
    Case colder = c;
    colder.weather.outside_c = c.room.air_c - 1;
    const CoveredGlass like = balance(colder, slots, {});
    CoveredGlass result{glazing_balance(c, sun_w_m2), true, like.covering};
    result.glass.inside_film = like.glass.inside_film;
    result.glass.u_w_m2k = like.glass.u_w_m2k;
    result.glass.r_m2k_w = like.glass.r_m2k_w;
    result.covering.gap_c = result.covering.spill_c = result.covering.back_c =
        result.covering.front_c = c.room.air_c;
    result.covering.speed_m_s = 0;
    return result;
}

} // namespace shimlight::opening
