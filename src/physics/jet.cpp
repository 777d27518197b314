// SPDX-License-Identifier: MIT
#include "physics/jet.hpp"

#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {
namespace {

constexpr double speed_decay = 2.43;       // K1, Hagström, Sirén and Zhivov 1999
constexpr double temperature_decay = 2.00; // K2, the same
constexpr double half_angle_tan = 0.10423; // tan 5.95°, half-velocity spread, the same
constexpr double profile_steepness = 0.7;  // profile exp(-0.7 (y/y_half)²), the same
constexpr double drop_factor = 0.4;        // Awbi 2003, drop of a horizontal plane jet
// Plane plume of a line source: w = 1.66 B^(1/3), B buoyancy flux per length (Rouse, Yih and
// Humphreys 1952, from memory).
constexpr double plume_factor = 1.66;

/// Decayed by `constant` sqrt(gap/way), never above the value at the opening.
double decay(double constant, double gap_m, double way_m) {
    if (way_m <= 0) return 1;
    return std::min(1.0, constant * std::sqrt(gap_m / way_m));
}

} // namespace

JetAir free_jet(const PlaneJet& jet, double way_m) {
    return {jet.speed_m_s * decay(speed_decay, jet.gap_m, way_m),
            jet.colder_k * decay(temperature_decay, jet.gap_m, way_m)};
}

JetAir attached_jet(const PlaneJet& jet, double way_m) {
    constexpr double mirrored = std::numbers::sqrt2;
    return {jet.speed_m_s * decay(mirrored * speed_decay, jet.gap_m, way_m),
            jet.colder_k * decay(mirrored * temperature_decay, jet.gap_m, way_m)};
}

double jet_profile(double way_m, double off_axis_m) {
    if (way_m <= 0) return off_axis_m == 0 ? 1 : 0;
    const double half_m = half_angle_tan * way_m;
    const double s = off_axis_m / half_m;
    return std::exp(-profile_steepness * s * s);
}

double jet_drop_m(const PlaneJet& jet, double way_m, double room_c) {
    if (jet.speed_m_s <= 0 || way_m <= 0 || jet.gap_m <= 0) return 0;
    const double archimedes = gravity_m_s2 * jet.gap_m * jet.colder_k /
                              ((room_c + kelvin_offset_k) * jet.speed_m_s * jet.speed_m_s);
    return jet.gap_m * drop_factor * temperature_decay / (speed_decay * speed_decay) * archimedes *
           std::pow(way_m / jet.gap_m, 2.5);
}

JetAir fallen_jet(const PlaneJet& jet, double height_m, double floor_m, double room_c) {
    if (jet.speed_m_s <= 0 || jet.gap_m <= 0) return {};
    const double way = std::max(height_m, 0.0) + std::max(floor_m, 0.0);
    const JetAir attached = attached_jet(jet, way);
    const double buoyancy_m3_s3 = gravity_m_s2 * std::max(jet.colder_k, 0.0) /
                                  (room_c + kelvin_offset_k) * jet.speed_m_s * jet.gap_m;
    const double plume_m_s = plume_factor * std::cbrt(buoyancy_m3_s3);
    // The plume gathers speed over the fall from the opening; it keeps what the floor leaves of it.
    const double fallen = height_m / (height_m + 0.1 + std::max(floor_m, 0.0));
    JetAir air;
    air.speed_m_s = std::cbrt(std::pow(attached.speed_m_s, 3) + std::pow(plume_m_s * fallen, 3));
    air.colder_k = attached.colder_k;
    // A faster stream carries the same heat with less temperature difference.
    if (air.speed_m_s > attached.speed_m_s && air.speed_m_s > 0)
        air.colder_k *= attached.speed_m_s / air.speed_m_s;
    return air;
}

} // namespace shimlight::physics
