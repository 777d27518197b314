// SPDX-License-Identifier: MIT
#include "opening/glazing_balance.hpp"
#include "opening/cut.hpp"
#include "opening/films.hpp"
#include "opening/leakage.hpp"
#include "opening/sash_glass.hpp"
#include "physics/glazing_leaky.hpp"
#include "physics/pressure.hpp"

#include <array>
#include <cmath>
#include <numbers>

namespace shimlight::opening {

namespace {

// Wind presses unevenly along a panel: a tenth of its stagnation pressure between the lower and the
// upper cracks, 0.03 to 0.2; an engineering estimate. None of it reaches the room side.
constexpr double uneven_share = 0.1;

physics::PowerLaw half(const physics::PowerLaw& crack) {
    return {crack.coefficient_m3_s_pan / 2, crack.exponent};
}

/// Of a length along the glass, what it rises: 1 where it stands.
double upright_share(const Opening& opening) {
    return std::sin(opening.tilt_deg * std::numbers::pi / 180);
}

struct Leaks {
    std::array<physics::LeakySpace, 2> spaces;
    std::size_t count = 0;
    double rise_m = 0; ///< from the foot of the unit to its head

    void add(std::size_t gap, bool to_room, const physics::PowerLaw& crack, double wind_pa,
             const UnitSize& unit) {
        spaces[count++] = {gap,    to_room, half(crack), rise_m, unit.height_m * unit.width_m,
                           wind_pa};
    }
};

Leaks leaks_of(const Case& c, const physics::GlazingStack& stack) {
    const Glazing& glazing = c.opening.glazing;
    const UnitSize unit = unit_size(c.opening);
    Leaks leaks;
    leaks.rise_m = unit.height_m * upright_share(c.opening);
    const double density_kg_m3 = physics::air_state(c.weather.outside_c).density_kg_m3;
    const double wind_pa =
        uneven_share * c.room.shelter * density_kg_m3 / 2 * c.weather.wind_m_s * c.weather.wind_m_s;
    if (glazing.storm != Storm::none)
        leaks.add(0, false, storm_panel_crack(c.opening), wind_pa, unit);
    if (panel_inside(glazing) != Panel::none)
        leaks.add(stack.pane_count - 2, true, inside_panel_crack(c.opening), 0, unit);
    return leaks;
}

} // namespace

physics::GlazingResult glazing_balance(const Case& c, const physics::AbsorbedSun& absorbed_w_m2) {
    physics::GlazingSide inside;
    inside.air_c = c.room.air_c;
    return glazing_balance(c, inside, absorbed_w_m2);
}

physics::GlazingResult glazing_balance(const Case& c, const physics::GlazingSide& inside,
                                       const physics::AbsorbedSun& absorbed_w_m2) {
    const physics::GlazingStack stack = glazing_stack(c.opening);
    physics::GlazingSide outside;
    outside.air_c = c.weather.outside_c;
    outside.wind_m_s = c.weather.wind_m_s;
    if (c.weather.sky == Sky::clear_night)
        outside.radiant_c = outside_radiant_c(c.weather, stack.tilt_deg);
    const Leaks leaks = leaks_of(c, stack);
    return physics::glazing_leaky(stack, outside, inside, {leaks.spaces.data(), leaks.count},
                                  absorbed_w_m2);
}

} // namespace shimlight::opening
