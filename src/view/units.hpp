// SPDX-License-Identifier: MIT
// The edge between SI inside and what people read and type: °F / inch / mph or °C / mm / m/s.
#pragma once

#include "house/house.hpp"
#include "opening/field_table.hpp"

#include <optional>
#include <string>

namespace shimlight::view {

using house::Units;
using opening::Quantity;

/// The number of a quantity in the reader's unit (10 for -12.2 °C in US units), and back.
double to_display(Quantity quantity, double si, Units units);
double from_display(Quantity quantity, double shown, Units units);

/// The unit's sign, "°F", "in", "%"; empty for plain numbers.
const char* unit_sign(Quantity quantity, Units units);

/// A number with its unit as people write it: "10 °F", "5/8 in", "38 %".
std::string format(Quantity quantity, double si, Units units);

/// The same without unit, for the typed field.
std::string format_bare(Quantity quantity, double si, Units units);

/// What was typed, in SI: "10", "-12 °C", "1 1/2 in", "38 %". A unit that was typed wins over the
/// reader's. Empty when it cannot be read.
std::optional<double> parse(Quantity quantity, const std::string& typed, Units units);

/// The +/- step of a field in SI: a round number in the reader's unit.
double step_si(const opening::Field& field, Units units);

std::string format_temperature(double c, Units units); ///< "57 °F"
std::string format_tenths(double c, Units units);      ///< "57.4 °F", for what is set side by side
double shown_u(double u_w_m2k, Units units);           ///< in the reader's unit
std::string format_u(double u_w_m2k, Units units);     ///< "0.30"
const char* u_unit(Units units);                       ///< "Btu/h·ft²·°F"
std::string format_flux(double w_m2, Units units);     ///< "12.3", unit apart
const char* flux_unit(Units units);                    ///< "Btu/h·ft²"
std::string format_heat(double w, Units units);        ///< "410 Btu/h"
std::string format_area(double m2, Units units);       ///< "12.4 ft²"
std::string format_percent(double share, int digits = 0); ///< 0.31 → "31 %"
std::string format_speed(double m_s, Units units);        ///< air speed: ft/min or m/s
std::string format_kelvin(double k, Units units);         ///< a difference: "4 °F"
std::string format_flow(double m3_s, Units units);        ///< of air: cfm or m³/h
double flow_display(double m3_s, Units units);            ///< the number alone, for charts
const char* flow_unit(Units units);
double speed_display(double m_s, Units units); ///< of air, the number alone
const char* speed_unit(Units units);
std::string format_watts(double w, Units units); ///< heat: Btu/h or W
std::string format_pascal(double pa);
std::string format_mass(double kg, Units units); ///< of carbon: lb or kg

/// A sentence whose K, m, mm, m/s and W/m²K are turned into the reader's units.
std::string in_units(std::string_view sentence, Units units);

inline constexpr const char* thin_space = "\xE2\x80\x89";
/// What stands between thousands for readers of these units.
inline std::string_view thousands_mark(Units units) {
    return units == Units::us ? "," : thin_space;
}

/// A number's thousands set apart as readers of these units expect, "1,391", with a real minus
/// sign. For what is read: not for what is typed, nor for files.
std::string grouped(std::string number, Units units);
/// The same of every number in a sentence.
std::string all_grouped(std::string_view words, Units units);

/// Real minus sign, thin spaces: what printf's output needs before it is shown.
std::string typeset(std::string text);

} // namespace shimlight::view
