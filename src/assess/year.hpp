// SPDX-License-Identifier: MIT
// A year at one window of a house: twelve months by the hours of their mean day.
//
// Three words are kept apart. Loss is what passes the glass, the frame and the joint while it is
// colder outdoors than the room should be; leakage is the part of it that air carries. What the
// window costs is the house's heating with the window less its heating with a wall in its place
// that passes nothing: the monthly balance of the house (physics/house_heat.hpp) made without the
// window, with its losses, and with its losses and its sun. A saving is the difference between two
// windows' costs. So every kelvin counts up to the room's temperature while the house is heated at
// all, and sun counts as far as the house can use it.
#pragma once

#include "opening/climate.hpp"
#include "opening/opening.hpp"
#include "physics/crack.hpp"
#include "physics/problem.hpp"
#include "physics/solar_gain.hpp"

#include <array>

namespace shimlight::assess {

inline constexpr std::size_t angle_count = 10; ///< 0, 10 … 90°

/// What of the sun on the glass ends in the room.
struct SunGlass {
    double area_m2 = 1;
    double shgc = 0.7; ///< straight on
    /// Share of `shgc` at angles to the normal, and for diffuse light. Two clear panes (Fresnel).
    std::array<double, angle_count> by_angle{1,     0.999, 0.995, 0.988, 0.972,
                                             0.939, 0.860, 0.671, 0.316, 0};
    double diffuse = 0.878;
};

struct YearWindow {
    double conduction_w_k = 0; ///< of unit and joint, without leakage
    double facing_deg = 180;   ///< clockwise from north
    double tilt_deg = 90;      ///< 90 a wall, 0 flat
    SunGlass glass;
    double shade = 0;       ///< share of the sun that trees, eaves and screens keep away
    physics::PowerLaw leak; ///< sash and joint together
    double height_above_neutral_m = 0;
    double shelter = 0.5; ///< share of the wind's pressure that reaches the wall
};

/// The house around the window. Defaults are an engineering estimate for a detached house of
/// 140 m² on medium heavy floors; the window's own cost depends on them weakly.
struct YearHouse {
    double heating_c = 20, cooling_c = 25; ///< the room's temperature
    double conductance_w_k = 250;          ///< with leakage, without the window
    double gains_w = 500;                  ///< people, light, appliances; mean of the day
    double sun_area_m2 = 6; ///< other glass times its solar gain, evenly on four walls
    double capacity_j_k = 2.5e7;
    /// Of air kept out here, the share that finds another way: with as much crack above the neutral
    /// level as below it, one half (both lie in series).
    double air_elsewhere = 0.5;
};

/// kWh of one month or of the year.
struct MonthHeat {
    double outside_c = 0;
    double conduction_kwh = 0, leakage_kwh = 0; ///< lost
    double sun_kwh = 0;                         ///< falls on the glass, shade off
    double gain_kwh = 0;                        ///< of it, into the room
    double heating_by_conduction_kwh = 0, heating_by_leakage_kwh = 0;
    double useful_gain_kwh = 0; ///< of the gain, replaces heating
    double heating_kwh = 0;     ///< the two less the useful gain; negative when the sun wins
    double cooling_kwh = 0;     ///< that the window adds; dry heat only
};

/// The usual formula: 24 h times degree days times conductance, leakage included.
struct DegreeDayHeat {
    double base_c = 18;
    double degree_days_k = 0;
    double kwh = 0;
    // From the formula to the balance: kwh + by_air + by_base - the year's useful gain = heating.
    double by_air_kwh = 0;  ///< air that finds another way
    double by_base_kwh = 0; ///< free gains do not fall with the window's loss
};

struct YearHeat {
    std::array<MonthHeat, opening::months_per_year> months;
    MonthHeat total;
    DegreeDayHeat degree_days;
    double house_heating_kwh = 0, house_cooling_kwh = 0; ///< of the whole house, window included
};

/// Pure; about 0.1 ms.
YearHeat year_heat(const YearWindow& window, const YearHouse& house,
                   const opening::Climate& climate, double degree_day_base_c = 18);

/// Sentences for a place outside the latitudes the sun was tested for.
Warnings year_warnings(const opening::Climate& climate);

/// One hour of a month's mean day, solar time. The room is kept between the two temperatures.
struct YearHour {
    double outside_c = 0;
    double conduction_w = 0, leakage_w = 0; ///< out of the room
    double sun_w = 0, gain_w = 0;           ///< on the glass; into the room
    double leak_w_k = 0;
    double other_gain_w = 0; ///< through the other glass of the house
};
using YearDay = std::array<YearHour, 24>;
YearDay mean_day(const YearWindow& window, const YearHouse& house, const opening::Climate& climate,
                 std::size_t month);

} // namespace shimlight::assess
