// SPDX-License-Identifier: MIT
#include "door/year_question.hpp"

#include <array>

namespace shimlight::door {
namespace {

using assess::YearHouse;
using assess::YearWindow;

// Accepted ranges.
constexpr Range conductance_w_k{0, 1e4};
constexpr Range facing_deg{-360, 360}, tilt_deg{0, 90};
constexpr Range area_m2{0, 100};
constexpr Range share_of_straight_on{0, 1.2}; ///< a coated pane may let more in at some angle
constexpr Range coefficient_m3_s_pan{0, 1};
constexpr Range exponent{0.5, 1}; ///< turbulent … laminar
constexpr Range height_m{-100, 100};
constexpr Range room_c{5, 35};
constexpr Range gains_w{0, 1e5};
constexpr Range sun_area_m2{0, 500};
constexpr Range capacity_j_k{1e5, 1e10};
constexpr Range base_c{0, 30};
constexpr Range thermostat_k{0, 5};
constexpr Range month_of_year{1, 12};

/// As today where the remedy says nothing, else required.
double number(ObjectReader& reader, std::string_view key, Range range, const double* today) {
    return today ? reader.number(key, range, *today) : reader.number(key, range);
}

assess::SunGlass read_glass(ObjectReader glass, const assess::SunGlass* today) {
    assess::SunGlass result = today ? *today : assess::SunGlass{};
    result.area_m2 = number(glass, "area_m2", area_m2, today ? &today->area_m2 : nullptr);
    result.shgc = number(glass, "shgc", fraction_range, today ? &today->shgc : nullptr);
    if (glass.has("by_angle")) {
        const ArrayReader list = glass.array("by_angle", assess::angle_count, assess::angle_count);
        for (std::size_t n = 0; n < list.size(); ++n)
            result.by_angle[n] = list.number(n, share_of_straight_on);
    } else {
        glass.find("by_angle");
        glass.reading().assume(glass.path("by_angle"), result.by_angle);
    }
    result.diffuse = glass.number("diffuse", share_of_straight_on, result.diffuse);
    glass.finish();
    return result;
}

void read_leak(ObjectReader leak, YearWindow& window) {
    window.leak.coefficient_m3_s_pan =
        leak.number("coefficient_m3_s_pan", coefficient_m3_s_pan, window.leak.coefficient_m3_s_pan);
    window.leak.exponent = leak.number("exponent", exponent, window.leak.exponent);
    window.height_above_neutral_m =
        leak.number("height_above_neutral_m", height_m, window.height_above_neutral_m);
    window.shelter = leak.number("shelter", fraction_range, window.shelter);
    leak.finish();
}

YearWindow read_window(ObjectReader window, const YearWindow* today) {
    YearWindow result = today ? *today : YearWindow{};
    result.conduction_w_k =
        number(window, "conduction_w_k", conductance_w_k, today ? &today->conduction_w_k : nullptr);
    result.facing_deg =
        number(window, "facing_deg", facing_deg, today ? &today->facing_deg : nullptr);
    result.tilt_deg = window.number("tilt_deg", tilt_deg, result.tilt_deg);
    result.glass = read_glass(today ? window.object_or_empty("glass") : window.object("glass"),
                              today ? &today->glass : nullptr);
    result.shade = window.number("shade", fraction_range, result.shade);
    read_leak(window.object_or_empty("leak"), result);
    window.finish();
    return result;
}

YearHouse read_house(ObjectReader house) {
    YearHouse h;
    h.heating_c = house.number("heating_c", room_c, h.heating_c);
    h.cooling_c = house.number("cooling_c", room_c, h.cooling_c);
    h.conductance_w_k =
        house.number("conductance_w_k", {1, conductance_w_k.max}, h.conductance_w_k);
    h.gains_w = house.number("gains_w", gains_w, h.gains_w);
    h.sun_area_m2 = house.number("sun_area_m2", sun_area_m2, h.sun_area_m2);
    h.capacity_j_k = house.number("capacity_j_k", capacity_j_k, h.capacity_j_k);
    h.air_elsewhere = house.number("air_elsewhere", fraction_range, h.air_elsewhere);
    if (h.cooling_c < h.heating_c)
        house.reading().fail(house.path("cooling_c"), "is below heating_c; accepted is at least " +
                                                          house::number_text(h.heating_c));
    house.finish();
    return h;
}

} // namespace

YearQuestion read_year(ObjectReader& question) {
    YearQuestion year;
    read_climate(question, year);
    year.window = read_window(question.object("window"), nullptr);
    year.house = read_house(question.object_or_empty("house"));
    if (question.has("remedy")) {
        year.remedy = read_window(question.object("remedy"), &year.window);
        year.thermostat_lower_k = question.number("thermostat_lower_k", thermostat_k, 0.0);
    } else {
        question.find("remedy");
    }
    year.degree_day_base_c = question.number("degree_day_base_c", base_c, year.degree_day_base_c);
    if (question.has("day_of_month"))
        year.day_of_month = question.count("day_of_month", month_of_year);
    else
        question.find("day_of_month");
    if (question.has("money"))
        year.money = read_money(question.object("money"), year.remedy.has_value());
    else
        question.find("money");
    return year;
}

} // namespace shimlight::door
