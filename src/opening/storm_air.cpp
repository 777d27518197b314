// SPDX-License-Identifier: MIT
#include "opening/storm_air.hpp"
#include "opening/crack_stream.hpp"
#include "opening/cut.hpp"
#include "physics/constants.hpp"
#include "physics/storm_space.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

// With airs nearer than this nothing is warmer or colder than them, K.
constexpr double telling_k = 0.01;

/// The space as a node between room and outdoors, per kelvin between the two.
struct Node {
    double inner_w_k = 0, outer_w_k = 0; ///< conductances of glass to the room and of storm panel
    double at_rest = 0;                  ///< 0 as cold as outdoors … 1 as warm as the room
};

Node node_of(const Case& c, const physics::GlazingResult& glass) {
    const double difference_k = c.room.air_c - c.weather.outside_c;
    const UnitSize size = unit_size(c.opening);
    const double rest_c = (glass.faces_c[1] + glass.faces_c[2]) / 2;
    Node node;
    node.at_rest = (rest_c - c.weather.outside_c) / difference_k;
    const double whole_w_k = glass.u_w_m2k * size.width_m * size.height_m;
    node.inner_w_k = whole_w_k / (1 - node.at_rest);
    node.outer_w_k = whole_w_k / node.at_rest;
    return node;
}

double capacity_w_k(double flow_m3_s, const physics::AirState& air) {
    return std::fabs(flow_m3_s) * air.density_kg_m3 * physics::air_specific_heat_j_kgk;
}

physics::StormSpaceAir exchange(const Case& c, const SashLeakage& sash, double space_c,
                                double pressure_pa) {
    physics::StormSpace space;
    space.sash = {sash.fit, sash.slipped};
    space.storm = sash.storm_crack;
    space.height_m = unit_size(c.opening).height_m;
    space.room_c = c.room.air_c;
    space.space_c = space_c;
    space.outside_c = c.weather.outside_c;
    space.pressure_pa = pressure_pa;
    return physics::storm_space_air(space);
}

} // namespace

StormAir storm_air(const Case& c, const physics::GlazingResult& glass) {
    StormAir result;
    result.storm = c.opening.glazing.storm != Storm::none;
    const double outside_c = c.weather.outside_c, difference_k = c.room.air_c - outside_c;
    result.space_c = result.face_c = outside_c;
    if (!result.storm || std::fabs(difference_k) < telling_k) return result;
    const Node node = node_of(c, glass);
    const SashLeakage sash = sash_leakage(c.opening);
    const double pressure_pa = driving_pressure_now(c).pressure_pa;
    const physics::AirState air = moving_air(c, pressure_pa);
    const double flow_m3_s = sash_flow_m3_s(sash, pressure_pa, air);
    const double in_w_k = flow_m3_s > 0 ? capacity_w_k(flow_m3_s, air) : 0;
    const double out_w_k = flow_m3_s < 0 ? capacity_w_k(flow_m3_s, air) : 0;
    const double warmth =
        (node.inner_w_k + out_w_k) / (node.inner_w_k + node.outer_w_k + in_w_k + out_w_k);
    result.space_c = outside_c + warmth * difference_k;
    result.face_c = outside_c + (glass.faces_c[1] - outside_c) * warmth / node.at_rest;
    result.counted_twice_w_k =
        std::max(0.0, in_w_k * warmth + node.inner_w_k * (warmth - node.at_rest));
    result.room_share = exchange(c, sash, result.space_c, pressure_pa).room_share();
    return result;
}

} // namespace shimlight::opening
