// SPDX-License-Identifier: MIT
#include "assess/joint_air.hpp"
#include "opening/crack_stream.hpp"
#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::assess {

namespace {

// What wood walls give to the air of a joint per metre; the order of size of the cuts solved.
constexpr double wood_w_mk = 0.6;

/// Mean of the outlets over the sides of the window; outdoor air where nothing is solved.
double mean_outlet_c(const opening::Case& c, std::span<const Slot> installed,
                     std::string_view stream) {
    double sum_cm = 0, length_m = 0;
    for (const Slot& slot : installed) {
        const std::optional<double> outlet_c = slot.outlet_c(stream);
        if (!outlet_c) continue;
        const double side_m =
            slot.position() == opening::Position::jamb ? 2 * c.opening.height_m : c.opening.width_m;
        sum_cm += *outlet_c * side_m;
        length_m += side_m;
    }
    return length_m > 0 ? sum_cm / length_m : c.weather.outside_c;
}

double through_filled_c(const opening::Case& c, const LeakResult& leak, const SolvedCuts& cuts) {
    const double outside_c = c.weather.outside_c;
    const double joint_c = mean_joint_c(cuts, outside_c);
    const physics::AirState air = opening::moving_air(c, leak.drive.pressure_pa);
    const double capacity_w_mk = leak.shim_m3_s / opening::joint_leakage(c.opening).length_m *
                                 air.density_kg_m3 * physics::air_specific_heat_j_kgk;
    return outside_c + (joint_c - outside_c) * wood_w_mk / (wood_w_mk + capacity_w_mk);
}

} // namespace

double shim_air_c(const opening::Case& c, const LeakResult& leak, std::span<const Slot> installed,
                  const SolvedCuts& cuts) {
    if (leak.shim_m3_s <= 0) return c.weather.outside_c;
    return c.opening.shim.fill == opening::ShimFill::open
               ? mean_outlet_c(c, installed, opening::joint_stream_name)
               : through_filled_c(c, leak, cuts);
}

double sash_air_c(const opening::Case& c, const LeakResult& leak, std::span<const Slot> installed) {
    if (leak.sash_m3_s <= 0) return c.weather.outside_c;
    return mean_outlet_c(c, installed, opening::sash_stream_name);
}

} // namespace shimlight::assess
