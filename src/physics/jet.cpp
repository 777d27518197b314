// SPDX-License-Identifier: MIT
#include "physics/jet.hpp"

#include "physics/constants.hpp"
#include "physics/downdraft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace shimlight::physics {

namespace {

constexpr double speed_decay = 2.43;       ///< K1 of plane jets
constexpr double temperature_decay = 2.00; ///< K2
constexpr double spread = 0.10423;         ///< tan 5.95°, where the speed is half the middle's

/// Speed of a plane plume over the cube root of its buoyancy flux per width (Rouse, Yih and
/// Humphreys 1952, from memory; later measurements lie between 1.66 and 1.9).
constexpr double plume_speed = 1.8;

constexpr double least_way_m = 1e-4; ///< nearer, a jet is still as it left the opening

/// Decay of the middle: constant times sqrt(gap/way), 1 at most.
double decay(double constant, double gap_m, double way_m) {
    return std::min(1.0, constant * std::sqrt(gap_m / std::max(way_m, least_way_m)));
}

JetAir decayed(const PlaneJet& jet, double way_m, double mirror) {
    return {jet.speed_m_s * decay(speed_decay * mirror, jet.gap_m, way_m),
            jet.colder_k * decay(temperature_decay * mirror, jet.gap_m, way_m)};
}

double buoyancy_m_s2(const PlaneJet& jet, double room_c) {
    return gravity_m_s2 * jet.colder_k / (room_c + kelvin_offset_k);
}

/// A plume gets no faster than free fall from the opening.
double plume_m_s(const PlaneJet& jet, double height_m, double room_c) {
    const double buoyancy = std::max(buoyancy_m_s2(jet, room_c), 0.0);
    const double free_fall = std::sqrt(2 * buoyancy * std::max(height_m, 0.0));
    return std::min(plume_speed * std::cbrt(buoyancy * jet.speed_m_s * jet.gap_m), free_fall);
}

JetAir joined(const JetAir& jet, double plume_m_s) {
    if (jet.speed_m_s <= 0) return {};
    const double ratio = plume_m_s / jet.speed_m_s;
    const double faster = std::cbrt(1 + ratio * ratio * ratio);
    return {jet.speed_m_s * faster, jet.colder_k / faster};
}

} // namespace

JetAir free_jet(const PlaneJet& jet, double way_m) {
    return decayed(jet, way_m, 1);
}

JetAir attached_jet(const PlaneJet& jet, double way_m) {
    return decayed(jet, way_m, std::numbers::sqrt2);
}

double jet_profile(double way_m, double off_axis_m) {
    const double share = off_axis_m / (spread * std::max(way_m, least_way_m));
    return std::exp(-0.7 * share * share);
}

double jet_drop_m(const PlaneJet& jet, double way_m, double room_c) {
    if (jet.colder_k == 0 || way_m <= 0) return 0;
    if (jet.speed_m_s <= 0)
        return std::copysign(std::numeric_limits<double>::infinity(), jet.colder_k);
    const double archimedes =
        buoyancy_m_s2(jet, room_c) * jet.gap_m / (jet.speed_m_s * jet.speed_m_s);
    return jet.gap_m * 0.4 * temperature_decay / (speed_decay * speed_decay) * archimedes *
           std::pow(way_m / jet.gap_m, 2.5);
}

JetAir falling_jet(const PlaneJet& jet, double height_m, double room_c) {
    return joined(attached_jet(jet, height_m), plume_m_s(jet, height_m, room_c));
}

JetAir fallen_jet(const PlaneJet& jet, double height_m, double floor_m, double room_c) {
    return joined(attached_jet(jet, height_m + floor_m),
                  plume_m_s(jet, height_m, room_c) * floor_speed_ratio(floor_m));
}

} // namespace shimlight::physics
