// SPDX-License-Identifier: MIT
#include "house/bill.hpp"

#include "assess/year_case.hpp"
#include "opening/cut.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::house {
namespace {

// A unit, by fuels(): therm, gallon, gallon, kWh, kWh, cord.
constexpr double usual_unit_prices[] = {1.5, 2.6, 4.0, 0.16, 0.16, 300};

struct Life {
    std::string_view field;
    double years;
};

constexpr Life lives[] = {{"installation", 25},  {"glazing.panes", 25}, {"frame", 25},
                          {"glazing.storm", 20}, {"shim.fill", 20},     {"pockets", 20},
                          {"casing.seal", 10},   {"covering", 10},      {"sash.weatherstrip", 8}};
constexpr double panel_years = 15, film_years = 1, other_years = 10;

double life_of(const opening::Change& change) {
    if (change.field->key == "glazing.panel")
        return change.value == static_cast<double>(opening::Panel::film) ? film_years : panel_years;
    for (const Life& life : lives)
        if (life.field == change.field->key) return life.years;
    return 0;
}

double beside_window_kwh(const assess::YearHeat& year) {
    return year.house_heating_kwh - year.total.heating_kwh;
}

/// Of the house with so much more in it.
double by_degree_days_kwh(const opening::Running& running, double more_w_k, double warmer_k) {
    constexpr double hours_per_day = 24, w_per_kw = 1000;
    return (assess::YearHouse{}.conductance_w_k + more_w_k) * hours_per_day *
           heated_days(running.heating_degree_days_k) * warmer_k / w_per_kw;
}

} // namespace

double usual_price_per_kwh(const Fuel& fuel) {
    return usual_unit_prices[&fuel - fuels().data()] / fuel.kwh_per_unit;
}

std::size_t likely_fuel(const opening::Running& running) {
    std::size_t best = 0;
    double least = 1e9;
    for (std::size_t i = 0; i < fuels().size(); ++i) {
        const Fuel& fuel = fuels()[i];
        const double off = std::fabs(std::log(running.efficiency / fuel.efficiency)) +
                           std::fabs(std::log(running.price_per_kwh / usual_price_per_kwh(fuel)));
        if (off < least) least = off, best = i;
    }
    return best;
}

std::size_t fuel_of(const House& house) {
    return house.fuel < 0 ? likely_fuel(house.running) : static_cast<std::size_t>(house.fuel);
}

double lasts_years(const opening::Remedy& remedy) {
    double years = 0;
    for (const opening::Change& change : remedy.changes)
        years = std::max(years, life_of(change));
    return years > 0 ? years : other_years;
}

MoneyInput bill_input(const BillQuestion& q) {
    const Fuel& fuel = fuels()[q.fuel];
    MoneyInput in;
    if (q.today.year && q.then.year) {
        in.saved = saved_parts(*q.today.year, *q.then.year);
    } else {
        const double air_kwh =
            q.today.year_kwh * q.today.year_air_share - q.then.year_kwh * q.then.year_air_share;
        in.saved.leakage_kwh = air_kwh;
        in.saved.conduction_kwh = q.today.year_kwh - q.then.year_kwh - air_kwh;
    }
    if (q.warmer_k != 0)
        in.saved.rest_kwh = q.today.year && q.then.year
                                ? beside_window_kwh(*q.today.year) - beside_window_kwh(*q.then.year)
                                : -by_degree_days_kwh(q.running, 0, q.warmer_k);
    in.heat = {q.running.price_per_kwh, q.running.efficiency,
               fuel.kg_co2_per_unit / fuel.kwh_per_unit};
    in.cools = q.cools;
    in.work = {q.remedy.hours, q.hour, q.remedy.material_cost};
    in.life_years = lasts_years(q.remedy);
    return in;
}

double heated_days(double degree_days_k) {
    constexpr double days_a_root = 4.4; // the table's places lie within a quarter of it
    return days_a_root * std::sqrt(degree_days_k);
}

double warmer_house_kwh(const opening::Case& c, const assess::Assessment& result, double warmer_k) {
    if (c.running.climate <= 0)
        return by_degree_days_kwh(
            c.running, result.u_installed_w_m2k * c.opening.width_m * c.opening.height_m, warmer_k);
    opening::Case warm = c;
    warm.room.air_c += warmer_k;
    return lower_thermostat_kwh(warm, result, warmer_k);
}

double lower_thermostat_kwh(const opening::Case& c, const assess::Assessment& result,
                            double lower_k) {
    if (c.running.climate <= 0 || !(lower_k > 0)) return 0;
    const double still_w_k =
        result.u_installed_w_m2k * (1 - result.air_share) * c.opening.width_m * c.opening.height_m;
    const opening::UnitSize size = opening::unit_size(c.opening);
    const assess::YearWindow window = assess::year_window(
        c, still_w_k, 45.0 * static_cast<int>(c.opening.facing),
        assess::sun_glass(result.sun, size.width_m * size.height_m - result.frame_m2));
    const opening::Climate climate =
        opening::climate_at(static_cast<std::size_t>(c.running.climate - 1));
    assess::YearHouse house;
    house.heating_c = c.room.air_c;
    house.cooling_c = std::max(house.cooling_c, c.room.air_c + 1);
    const double now_kwh = assess::year_heat(window, house, climate).house_heating_kwh;
    house.heating_c -= lower_k;
    return now_kwh - assess::year_heat(window, house, climate).house_heating_kwh;
}

} // namespace shimlight::house
