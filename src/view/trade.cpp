// SPDX-License-Identifier: MIT
#include "view/trade.hpp"

#include "house/bill.hpp"
#include "view/put.hpp"

#include <cmath>
#include <cstdio>

namespace shimlight::view {
namespace {

constexpr double dearest = 4;            // times the usual price: what households meet, from memory
constexpr double by_the_cord_kwh = 1000; // a unit as large as that has no cents

std::string fixed(double value, int digits) {
    char text[48];
    std::snprintf(text, sizeof text, "%.*f", digits, value);
    return text;
}

} // namespace

Trade trade_of(const house::House& house) {
    Trade trade{house.currency, house.units};
    const house::Fuel& fuel = house::fuels()[house::fuel_of(house)];
    const double top = dearest * house::usual_price_per_kwh(fuel);
    trade.dearest_per_kwh = house.running.price_per_kwh > top ? 0 : top;
    if (house.units == Units::si || fuel.unit == trade.fuel_unit) return trade;
    trade.fuel_unit = fuel.unit;
    trade.fuel_kwh = fuel.kwh_per_unit;
    trade.heat_unit = "million Btu";
    trade.heat_kwh = 1e6 * house::kwh_per_btu;
    return trade;
}

assess::AdviceStyle advice_style(const house::House& house) {
    const bool us = house.units == Units::us;
    return {us, house.currency, thousands_mark(house.units)};
}

/// From ten on whole; below to ten cents.
double shown_money(double amount) {
    return std::fabs(amount) < 9.95 ? std::round(amount * 10) / 10 : std::round(amount);
}

std::string format_money(double amount, const Trade& trade) {
    const double shown = shown_money(amount);
    const std::string size = fixed(std::fabs(shown), shown == std::round(shown) ? 0 : 2);
    return (shown < 0 ? typeset("-") : "") + trade.currency + grouped(size, trade.units);
}

std::string heat_number(double kwh, const Trade& trade) {
    const int digits = trade.heat_kwh > 1 ? 2 : 0;
    const double least = digits ? 0.005 : 0.5, shown = kwh / trade.heat_kwh;
    return grouped(fixed(std::fabs(shown) < least ? 0 : shown, digits), trade.units);
}

std::string format_energy(double kwh, const Trade& trade) {
    return heat_number(kwh, trade) + thin_space + std::string(trade.heat_unit);
}

double price_step(const Trade& trade) {
    return trade.fuel_kwh > by_the_cord_kwh ? 10 : trade.fuel_kwh > 1 ? 0.05 : 0;
}

std::string price_number(double per_kwh, const Trade& trade) {
    const int digits = trade.fuel_kwh > by_the_cord_kwh ? 0 : trade.fuel_kwh > 1 ? 2 : 3;
    return fixed(per_kwh * trade.fuel_kwh, digits);
}

std::string fuel_amount(double kwh, const Trade& trade) {
    return grouped(fixed(kwh / trade.fuel_kwh, trade.fuel_kwh > 1 ? 1 : 0), trade.units);
}

std::string price_sign(const Trade& trade) {
    return "per " + std::string(trade.fuel_unit);
}

std::string format_price(double per_kwh, const Trade& trade) {
    return trade.currency + grouped(price_number(per_kwh, trade), trade.units) + thin_space +
           price_sign(trade);
}

std::string used_words(double efficiency, const Trade& trade) {
    std::string words = put(" ÷ %.4g", efficiency);
    if (trade.fuel_kwh != trade.heat_kwh)
        words += put(" ÷ %.4g ", trade.fuel_kwh / trade.heat_kwh) + std::string(trade.heat_unit) +
                 " a " + std::string(trade.fuel_unit);
    return words;
}

std::string fuel_words(double efficiency, double per_kwh, const Trade& trade) {
    const std::string a_unit = " a " + std::string(trade.fuel_unit);
    return used_words(efficiency, trade) + " × " + trade.currency +
           (trade.fuel_kwh > 1 ? price_number(per_kwh, trade) : put("%.4g", per_kwh)) + a_unit;
}

std::string heat_cost_words(double kwh, double efficiency, double per_kwh, const Trade& trade) {
    return format_energy(kwh, trade) + fuel_words(efficiency, per_kwh, trade);
}

} // namespace shimlight::view
