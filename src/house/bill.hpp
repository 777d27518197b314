// SPDX-License-Identifier: MIT
// From a house's levers to what a remedy brings in money: which fuel, what work, for how long.
#pragma once

#include "assess/assessment.hpp"
#include "house/fuels.hpp"
#include "house/house.hpp"
#include "house/money.hpp"
#include "opening/remedy.hpp"

namespace shimlight::house {

/// Usual price of a fuel in dollars a kWh of heat content: United States, homes, 2023 (EIA, from
/// memory; wood an estimate). Every house has its own.
double usual_price_per_kwh(const Fuel& fuel);

/// Index in fuels() of the fuel whose usual price and heater are nearest to these: older files keep
/// price and efficiency, not a name.
std::size_t likely_fuel(const opening::Running& running);
/// The house's own, or the likely one.
std::size_t fuel_of(const House& house);

/// Years a remedy lasts before it must be done again: that of its longest-lived part. Common
/// practice, within a third or so either way.
double lasts_years(const opening::Remedy& remedy);

struct BillQuestion {
    const opening::Running& running;
    std::size_t fuel = 0; ///< in fuels()
    const assess::Assessment& today;
    const assess::Assessment& then;
    const opening::Remedy& remedy;
    double hour = 60;    ///< price of an hour of work
    bool cools = false;  ///< the house has a cooler
    double warmer_k = 0; ///< by so much the remedy raises the thermostat, of the whole house
};

/// With a place's climate by its year; with degree days by what is lost, sun left out.
MoneyInput bill_input(const BillQuestion& question);

/// Degree days that a room warmer by one kelvin adds where a year has so many: the days on which
/// it is heated by more than free gains. Fitted to the places of the climate table, see bill_test.
double heated_days(double degree_days_k);

/// What the whole house with this window in it takes more for a room warmer by `warmer_k`, kWh;
/// without a climate by its degree days. Of YearHouse, as above and below: an estimate.
double warmer_house_kwh(const opening::Case& c, const assess::Assessment& result, double warmer_k);

/// What the whole house saves by a thermostat lower by `lower_k` with this window in it, kWh; 0
/// without a climate. The house is that of YearHouse: an estimate of a detached one of 140 m².
double lower_thermostat_kwh(const opening::Case& c, const assess::Assessment& result,
                            double lower_k);

} // namespace shimlight::house
