// SPDX-License-Identifier: MIT
#include "view/bill_words.hpp"

#include "house/bill.hpp"
#include "view/adding_up.hpp"

#include <cmath>
#include <cstdio>

namespace shimlight::view {
namespace {

constexpr double noticed_rh = 0.02, noticed_pct = 1;

std::string printed(const char* form, double v) {
    char words[32];
    std::snprintf(words, sizeof words, form, v);
    return typeset(words);
}

std::string years(double v) {
    return std::isfinite(v) && v < 200 ? whole(v) : "never";
}

std::string between(const std::string& low, const std::string& high, const char* unit) {
    return low == high ? "about " + low + unit : "between " + low + " and " + high + unit;
}

std::string money_signed(double amount, const Trade& trade) {
    const bool none = std::fabs(amount) < 0.05;
    return (amount < 0 && !none ? typeset("-") : "") +
           format_money(none ? 0 : std::fabs(amount), trade);
}

} // namespace

std::string whole(double v) {
    return printed("%.0f", std::fabs(v) < 0.5 ? 0.0 : v);
}

std::string tenths(double v) {
    return std::fabs(v) >= 100 ? whole(v) : printed("%.1f", v);
}

std::string one_digit(double v) {
    return printed("%.1f", std::fabs(v) < 0.05 ? 0.0 : v);
}

std::string cents(double amount, const Trade& trade) {
    return trade.currency + grouped(printed("%.2f", amount), trade.units);
}

std::string plural(std::string unit) {
    return unit == "kWh" ? unit : unit + "s";
}

std::string pair_words(const std::string& today, const std::string& remedy, bool two) {
    return two ? today + " → " + remedy : today;
}

std::string between_money(const house::Ranged& range, const Trade& trade) {
    return between(money_signed(range.low, trade), money_signed(range.high, trade), "");
}

std::string between_years(const house::Ranged& range) {
    const std::string low = years(range.low), high = years(range.high);
    if (low == "never") return "never";
    if (high == "never") return low + " years to never";
    return between(low, high, " years");
}

std::string between_mass(const house::Ranged& range, Units units) {
    const std::string low = format_mass(range.low, units), high = format_mass(range.high, units);
    return between(low.substr(0, low.rfind("\u2009")), high, "");
}

std::string range_words(const std::string& what) {
    return "Nobody knows " + what +
           " exactly: all was worked out a thousand times, each time with them a little different. "
           "8 of 10 results lie within each range.";
}

std::string work_words(const opening::Remedy& remedy, double hour, const Trade& trade) {
    const auto parts = adding_up({remedy.hours * hour, remedy.material_cost}, 1);
    return "Labor " + format_money(parts[0], trade) + " (" + tenths(remedy.hours) + " hours at " +
           format_money(hour, trade) + "), material " + format_money(parts[1], trade) +
           ". The price of an hour stands on the Sheet.";
}

std::string ordinary_size(Units units) {
    return units == Units::us ? "1,500 ft²" : "140 m²";
}

std::string share_words(const assess::Assessment& today, const assess::Assessment& remedy,
                        Units units) {
    const double saved_kwh = today.year_kwh - remedy.year_kwh;
    if (saved_kwh < 0) return "The remedy costs more heat than it saves.";
    std::string words =
        "It saves " + format_percent(saved_kwh / today.year_kwh) + " of this opening's heat";
    if (today.year && today.year->house_heating_kwh > 0)
        words += ", " + format_percent(saved_kwh / today.year->house_heating_kwh, 1) +
                 " of the heating of an ordinary house of " + ordinary_size(units);
    return words + ".";
}

std::string warmer_cost(const Session& session, const opening::Remedy& remedy) {
    const double warmer_k = session.warmer_k(remedy);
    if (!(warmer_k > 0)) return {};
    const opening::Running& running = session.house().running;
    const double kwh = house::warmer_house_kwh(session.today(), session.today_result(), warmer_k);
    return format_money(kwh / running.efficiency * running.price_per_kwh,
                        trade_of(session.house()));
}

std::string warmer_words(const std::string& cost, Units units) {
    return "The warmer room takes about " + cost +
           " of fuel a year in the whole house, taken as an ordinary one of " +
           ordinary_size(units) + ".";
}

std::string reasons_words(const house::Money& money, const assess::Assessment& today,
                          const assess::Assessment& remedy) {
    std::string words = money.outlasts || money.saving_per_year.value <= 0
                            ? "Longer than it will last, so other reasons count: "
                            : "Besides money: ";
    if (std::fabs(today.seat.ankle_bare_pct - remedy.seat.ankle_bare_pct) > noticed_pct)
        words += "comfort, " + whole(today.seat.ankle_bare_pct) + " → " +
                 whole(remedy.seat.ankle_bare_pct) + " of 100 bothered at the ankles; ";
    if (std::fabs(today.max_rh - remedy.max_rh) > noticed_rh)
        words += "water, the glass wet above " + format_percent(today.max_rh) + " → " +
                 format_percent(remedy.max_rh) + " humidity; ";
    return words + "how it opens, closes and locks.";
}

std::string measure_words(const assess::Plan& plan, const house::Ranged& saving,
                          const Trade& trade) {
    const std::string people = whole(plan.bothered_pct) + " of 100 bothered";
    if (!plan.solved) return "about " + people + ", computing …";
    if (std::fabs(saving.high) < 0.5 && std::fabs(saving.low) < 0.5)
        return people + ", saves nothing";
    return people + ", saves " + between_money(saving, trade) + " a year";
}

} // namespace shimlight::view
