// SPDX-License-Identifier: MIT
// Power laws from published leakage; each coefficient in m³/(s·m) at 1 Pa with its source.
#include "opening/leakage.hpp"
#include "opening/cut.hpp"
#include "opening/wall_build.hpp"

#include <cmath>

namespace shimlight::opening {

namespace {

// Sash. Worn: 3 m³/(h·m) at 9.81 Pa without, 1 with weather strip, the German field study that
// confirmed DIN 4701 (Gesundheits-Ingenieur 83, 1962), exponent 2/3 assumed.
constexpr double worn_c = 0.182e-3, worn_stripped_c = 0.061e-3, sash_exponent = 2.0 / 3;
// Loose against average fit at 20 mph: 154 to 59 without, 51 to 36 ft³/(h·ft) with weather strip,
// classic crack table of the ASHRAE Guide (all but 59 from memory).
constexpr double loose_ratio = 154.0 / 59, loose_stripped_ratio = 51.0 / 36;
// Tight: 0.3 cfm/ft² at 75 Pa, the limit for new windows (AAMA/WDMA/CSA 101/I.S.2/A440), spread
// over the crack of a 3 × 5 ft window: 0.367 L/(s·m), brought to 1 Pa with exponent 2/3.
constexpr double tight_c = 0.0206e-3;
// Locking an unstripped metal sash: 10 % less (Houghten and O'Connell, ASHVE Trans. 34, 1928).
constexpr double unlocked_ratio = 1 / 0.9;
constexpr double sash_depth_m = 0.035; // 1 3/8 in

// Storm panel: double-hung with storm 0.97 cm²/m against 2.5 without (ASHRAE Fundamentals 2001
// ch. 26 Table 1, from memory); what in series gives the first from the second, exponent 0.65.
constexpr double storm_c = 0.121e-3;
// Panel inside with a gasket or magnet strip: like a tight sash, a third to twice as much; film
// taped all round: like a sealed joint, 0.003 to 0.03. Engineering estimates.
constexpr double panel_c = 0.0206e-3, film_c = 0.006e-3;

// Joint. Unsealed and empty behind trim 0.2 L/(s·m) at 1 Pa, engineering judgement between 0.06
// (AIVC TN 44 quartiles, from memory) and 0.8 (bare 3/4 in gap, Baechler et al. 2010): trim outside
// and casing inside alike, each 0.2 × 2^0.65.
constexpr double joint_exponent = 0.65;
constexpr double trim_c = 0.314e-3;
// Caulked casing: with the rest in series 0.18 of the unsealed joint, the ratio of caulked to
// uncaulked wood framing, 0.3 to 1.7 cm²/m² (ASHRAE Fundamentals 2001 ch. 26 Table 1, from memory).
constexpr double caulked_casing_c = 0.0369e-3;
// Fibre at the usual 12.7 mm: in series 0.35 of the empty joint (Proskiw 1995, ASTM STP 1255).
constexpr double fibre_c = 0.081e-3, usual_width_m = 0.0127;
// Foam, or rod and sealant: under 0.026 of the empty joint (Proskiw 1995), 0.003 to 0.010.
constexpr double sealed_c = 0.006e-3;
// A bead of foam is said to be worse than a full filling (Van Den Bossche et al. 2012, no figure):
// taken as the geometric mean of foam and fibre, an estimate within a factor of 2.
// Trim against masonry: unsealed 3.8 times wood in ASHRAE Fundamentals 2001 ch. 26 Table 1, 1.2
// times in the classic crack table (both from memory); twice lies between, and within the 0 to 31
// m³/(h·m) at 50 Pa measured on cavity walls (Van Den Bossche et al. 2012).
constexpr double masonry_ratio = 2;
// Weight pockets, an estimate within a factor of 2: four pulley holes with 1.5 cm² each left beside
// cord and wheel, sharp-edged; outside the trim along both jambs. Closed and filled like a sealed
// joint.
constexpr double pulley_m2 = 4 * 1.5e-4, hole_discharge = 0.6, hole_exponent = 0.5;
constexpr double reference_density_kg_m3 = 1.25;

constexpr int halvings = 60; ///< of the pressure split: down to round-off

double fit_c(const Sash& sash) {
    switch (sash.fit) {
    case SashFit::tight:
        return tight_c;
    case SashFit::worn:
        return sash.weatherstrip ? worn_stripped_c : worn_c;
    case SashFit::loose:
        return sash.weatherstrip ? worn_stripped_c * loose_stripped_ratio : worn_c * loose_ratio;
    }
    return worn_c;
}

double inside_panel_c(const Glazing& glazing) {
    if (glazing.panel == Panel::none) return 0;
    return glazing.panel == Panel::film ? film_c : panel_c;
}

double crack_length_m(const Opening& opening) {
    const UnitSize unit = unit_size(opening);
    return 2 * unit.height_m + 3 * unit.width_m;
}

/// Of storm panel and inside panel, one behind the other when there are both; 0 without.
double panels_c(const Glazing& glazing) {
    const double outside_c = glazing.storm != Storm::none ? storm_c : 0;
    const double inside_c = inside_panel_c(glazing);
    if (inside_c == 0) return outside_c;
    if (outside_c == 0) return inside_c;
    const double root = 1 / joint_exponent;
    return std::pow(std::pow(inside_c, -root) + std::pow(outside_c, -root), -joint_exponent);
}

bool is_rated(const Sash& sash) {
    return sash.fit == SashFit::tight && sash.rated_l_s_m2 > 0;
}

/// A rating brought from 75 to 1 Pa, of the whole sash, as the limit above is.
double rated_c(const Sash& sash, double area_m2) {
    constexpr double rating_pa = 75, l_per_m3 = 1000;
    return sash.rated_l_s_m2 / l_per_m3 * area_m2 / std::pow(rating_pa, sash_exponent);
}

/// Across a filled strip the flow grows with its width.
physics::Crack fill_crack(const ShimSpace& shim, double length_m, double depth_m) {
    switch (shim.fill) {
    case ShimFill::open:
        return physics::Slot{shim.width_m, depth_m, length_m, 0};
    case ShimFill::stuffed:
        return physics::PowerLaw{fibre_c * length_m * shim.width_m / usual_width_m, joint_exponent};
    case ShimFill::partly_foamed: {
        const double bead_c = std::sqrt(sealed_c * fibre_c * shim.width_m / usual_width_m);
        return physics::PowerLaw{bead_c * length_m, joint_exponent};
    }
    case ShimFill::backer_rod:
    case ShimFill::foamed:
        break;
    }
    return physics::PowerLaw{sealed_c * length_m, joint_exponent};
}

double bare_sash_flow_m3_s(const SashLeakage& sash, double pressure_pa,
                           const physics::AirState& air) {
    double flow_m3_s = physics::crack_flow_m3_s(sash.fit, pressure_pa, air);
    if (sash.slipped.gap_m > 0)
        flow_m3_s += physics::crack_flow_m3_s(sash.slipped, pressure_pa, air);
    return flow_m3_s;
}

} // namespace

SashLeakage sash_leakage(const Opening& opening) {
    const UnitSize unit = unit_size(opening);
    SashLeakage sash;
    sash.length_m = crack_length_m(opening);
    const double lock_ratio = opening.sash.locked ? 1 : unlocked_ratio;
    const double per_m = is_rated(opening.sash)
                             ? rated_c(opening.sash, unit.width_m * unit.height_m) / sash.length_m
                             : fit_c(opening.sash);
    sash.fit = {per_m * lock_ratio * sash.length_m, sash_exponent};
    sash.slipped = {opening.sash.slipped_m, sash_depth_m, 2 * unit.width_m, 1};
    sash.storm = opening.glazing.storm != Storm::none || opening.glazing.panel != Panel::none;
    sash.storm_crack = {panels_c(opening.glazing) * sash.length_m, joint_exponent};
    return sash;
}

JointLeakage joint_leakage(const Opening& opening) {
    JointLeakage joint;
    joint.length_m = 2 * (opening.width_m + opening.height_m);
    const double build = is_masonry(opening.wall) ? masonry_ratio : 1;
    const double casing_c = opening.casing.seal == CasingSeal::caulked ? caulked_casing_c : trim_c;
    joint.in_series = {
        physics::PowerLaw{build * trim_c * joint.length_m, joint_exponent},
        fill_crack(opening.shim, joint.length_m, joint_depth_m(opening.wall)),
        physics::PowerLaw{build * casing_c * joint.length_m, joint_exponent},
    };
    joint.pockets = has_pockets(opening);
    const double jambs_m = 2 * opening.height_m;
    joint.past_pockets[0] = physics::PowerLaw{build * trim_c * jambs_m, joint_exponent};
    joint.past_pockets[1] =
        opening.pockets == Pockets::insulated
            ? physics::PowerLaw{sealed_c * jambs_m, joint_exponent}
            : physics::PowerLaw{hole_discharge * pulley_m2 * std::sqrt(2 / reference_density_kg_m3),
                                hole_exponent};
    return joint;
}

physics::PowerLaw storm_panel_crack(const Opening& opening) {
    const bool there = opening.glazing.storm != Storm::none;
    return {there ? storm_c * crack_length_m(opening) : 0, joint_exponent};
}

physics::PowerLaw inside_panel_crack(const Opening& opening) {
    return {inside_panel_c(opening.glazing) * crack_length_m(opening), joint_exponent};
}

double sash_flow_m3_s(const SashLeakage& sash, double pressure_pa, const physics::AirState& air) {
    if (!sash.storm) return bare_sash_flow_m3_s(sash, pressure_pa, air);
    // The share of the pressure that the sashes take, so that both pass the same flow.
    double low = 0, high = 1;
    for (int i = 0; i < halvings; ++i) {
        const double share = (low + high) / 2;
        const double sashes = bare_sash_flow_m3_s(sash, share * pressure_pa, air);
        const double storm =
            physics::crack_flow_m3_s(sash.storm_crack, (1 - share) * pressure_pa, air);
        (std::fabs(sashes) < std::fabs(storm) ? low : high) = share;
    }
    return bare_sash_flow_m3_s(sash, low * pressure_pa, air);
}

double shim_flow_m3_s(const JointLeakage& joint, double pressure_pa, const physics::AirState& air) {
    return physics::series_flow_m3_s(joint.in_series, pressure_pa, air);
}

double joint_flow_m3_s(const JointLeakage& joint, double pressure_pa,
                       const physics::AirState& air) {
    const double shim_m3_s = shim_flow_m3_s(joint, pressure_pa, air);
    if (!joint.pockets) return shim_m3_s;
    return shim_m3_s + physics::series_flow_m3_s(joint.past_pockets, pressure_pa, air);
}

} // namespace shimlight::opening
