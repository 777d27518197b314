// SPDX-License-Identifier: MIT
// What a remedy costs and brings: fuel, carbon, payback, value over its life, each with a range.
#pragma once

#include "assess/year.hpp"

#include <cstdint>
#include <span>
#include <string>

namespace shimlight::house {

/// Heat or coolness of one year by its cause, kWh. A saving by the sun is negative when less sun
/// comes in than did.
struct HeatParts {
    double conduction_kwh = 0, leakage_kwh = 0;
    double sun_kwh = 0; ///< useful gain
    double cooling_kwh = 0;
    double rest_kwh = 0; ///< heating of the house beside the window; negative of a warmer room
    double heating_kwh() const { return conduction_kwh + leakage_kwh + sun_kwh + rest_kwh; }
};

/// Today's cost less the remedy's, cause by cause.
HeatParts saved_parts(const assess::YearHeat& today, const assess::YearHeat& remedy);

/// What a kWh costs and emits. Prices are in the house's currency.
struct EnergyPrice {
    double per_kwh = 0.05;    ///< of fuel's heat content
    double efficiency = 0.85; ///< of heater; of cooler its COP
    double kg_co2_per_kwh = 0.18;
    double cost(double heat_kwh) const { return heat_kwh / efficiency * per_kwh; }
    double kg_co2(double heat_kwh) const { return heat_kwh / efficiency * kg_co2_per_kwh; }
};

struct Work {
    double hours = 0, rate_per_h = 0, material = 0;
    double price() const { return hours * rate_per_h + material; }
};

/// How far each input may be off: draws lie between both ends, most near the middle. Defaults are
/// engineering estimates: frames and edges differ within a kind; trees, dirt, snow and blinds
/// change the sun; cooling depends on blinds and open windows, and the monthly balance is a quarter
/// off it.
struct Spread {
    double conduction = 0.15, sun = 0.25, cooling = 0.4; ///< ± share
    double leakage_factor = 2.5; ///< times or over: measured joints scatter by more
    double house = 0.15;         ///< ± share: weather of a year, thermostat, use of gains
    double price_of_fuel = 0.15; ///< ± share
    double price_of_work = 0.15; ///< ± share
    double escalation = 0.02;    ///< ± a year
};

struct MoneyInput {
    HeatParts saved;
    EnergyPrice heat;
    EnergyPrice cool{0.16, 3.0, 0.39};
    bool cools = false; ///< the house has a cooler
    Work work;
    double life_years = 25;                    ///< of the remedy
    double discount = 0.04, escalation = 0.02; ///< a year; of money, of fuel's price
    Spread spread;
    std::uint64_t seed = 1;
};

/// 10 of 100 draws lie below `low`, 10 above `high`; `value` is what the inputs give as they are.
struct Ranged {
    double low = 0, value = 0, high = 0;
};

struct Money {
    double price = 0;
    Ranged heat_kwh_per_year; ///< of heating that is no longer needed
    Ranged saving_per_year;   ///< of money, in the first year
    Ranged kg_co2_per_year;   ///< kept out of the air
    Ranged payback_years;     ///< price over saving; infinite without a saving
    /// The same with discount and escalation; infinite when it never comes back.
    Ranged discounted_payback_years;
    Ranged net_value;                    ///< discounted savings over the life, less the price
    double pays_share = 0;               ///< of the draws, value above 0 at the end of the life
    bool outlasts = false;               ///< the discounted payback is longer than the life
    double discount = 0, escalation = 0; ///< a year, that it was reckoned with
};

Money money(const MoneyInput& input);

/// Of several openings of one house together. Weather, thermostat, cooling, prices and fuel's rise
/// are off for all alike; how far glass, leaks and sun are off is drawn for each by itself. What is
/// the same for all is taken from the first.
Money money(std::span<const MoneyInput> each);

/// How long what was bought lasts, by price.
double life_years(std::span<const MoneyInput> each);

/// Cost of one year of a window, heating and cooling; kg likewise.
double year_cost(const assess::YearHeat& year, const MoneyInput& input);
double year_kg_co2(const assess::YearHeat& year, const MoneyInput& input);

/// A plain sentence on the payback: years from … to …, never, or longer than it will last.
std::string payback_sentence(const Money& money, double life_years);

} // namespace shimlight::house
