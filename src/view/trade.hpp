// SPDX-License-Identifier: MIT
// Money, the price of fuel and a year's heat as the house's readers buy and tell them.
#pragma once

#include "assess/advice.hpp"
#include "view/units.hpp"

#include <string>
#include <string_view>

namespace shimlight::view {

struct Trade {
    std::string currency;
    Units units = Units::us;
    std::string_view fuel_unit = "kWh"; ///< in which the price of fuel is told
    double fuel_kwh = 1;                ///< in one of them
    std::string_view heat_unit = "kWh"; ///< of what a year takes
    double heat_kwh = 1;
    double dearest_per_kwh = 0; ///< where the lever of the price ends; typed it may be more; 0: any
};
/// In °F fuel by its trade's unit, and heat beside therms and gallons in million Btu.
Trade trade_of(const house::House& house);

/// How advice is worded for them; it points into the house.
assess::AdviceStyle advice_style(const house::House& house);

double shown_money(double amount);                           ///< rounded as it is shown, for sums
std::string format_money(double amount, const Trade& trade); ///< "$1,391"

std::string heat_number(double kwh, const Trade& trade);   ///< "4.03", "1,182"; unit apart
std::string format_energy(double kwh, const Trade& trade); ///< with its unit

std::string fuel_amount(double kwh, const Trade& trade); ///< of fuel, "50.3"; unit apart

double price_step(const Trade& trade); ///< of the lever, in money a unit; 0: the field's own
std::string price_number(double per_kwh, const Trade& trade); ///< "1.76", for the typed field
std::string price_sign(const Trade& trade);                   ///< "per therm"
std::string format_price(double per_kwh, const Trade& trade); ///< "$1.76 per therm"

/// How heat becomes fuel: " ÷ 0.8 ÷ 0.1 million Btu a therm".
std::string used_words(double efficiency, const Trade& trade);

/// How heat becomes money: " ÷ 0.8 ÷ 0.1 million Btu a therm × $1.76 a therm".
std::string fuel_words(double efficiency, double per_kwh, const Trade& trade);
std::string heat_cost_words(double kwh, double efficiency, double per_kwh, const Trade& trade);

} // namespace shimlight::view
