// SPDX-License-Identifier: MIT
// How the numbers of the Bill come about, for their cards.
#include "view/adding_up.hpp"
#include "view/bill.hpp"
#include "view/bill_words.hpp"
#include "view/why.hpp"

#include <cmath>
#include <cstdio>

namespace shimlight::view {
namespace {

std::string hundredths(double v) {
    char text[24];
    std::snprintf(text, sizeof text, "%.4g", v);
    return typeset(text);
}

using assess::MonthHeat;

/// A sum of the page and its months.
struct MonthSum {
    std::string_view id, words;
    double MonthHeat::*of;
};
constexpr MonthSum month_sums[] = {
    {"bill.conduction", "through glass, frame and shim space", &MonthHeat::conduction_kwh},
    {"bill.leakage", "with leaking air", &MonthHeat::leakage_kwh},
    {"bill.gain", "sun on the glass × what of it comes in", &MonthHeat::gain_kwh},
    {"bill.useful", "sun let in × what the house can use of it", &MonthHeat::useful_gain_kwh},
    {"bill.heat", "heating with the window − heating with a wall that passes nothing",
     &MonthHeat::heating_kwh},
    {"bill.cool", "cooling with the window − cooling without", &MonthHeat::cooling_kwh},
};

/// "20.12 + 15.31 + … = 80.24 kWh", January first. Of million Btu too hundredths, as sums have
/// them.
std::string month_terms(const assess::YearHeat& year, double MonthHeat::*of, const Trade& trade) {
    std::vector<double> months;
    for (const MonthHeat& month : year.months)
        months.push_back(month.*of / trade.heat_kwh);
    std::string words;
    for (const double month : adding_up(std::move(months), 0.01)) {
        const std::string term = cents(month, {});
        words += (words.empty() ? "" : " + ") + (month < 0 ? "(" + term + ")" : term);
    }
    return words + " = " + cents(year.total.*of / trade.heat_kwh, {}) + " " +
           std::string(trade.heat_unit);
}

} // namespace

/// Sums of twelve months; by degree days the whole, and what of it air carries.
void Bill::tell_months(Why& why, const Session& session) const {
    const Trade trade = trade_of(session.house());
    const assess::Assessment *today = &session.today_result(), *remedy = &session.remedy_result();
    const auto tell = [&](const std::string& words, const std::string& a, const std::string& b) {
        why.tell(words + (session.has_remedy() ? "\nToday: " + a + "\nRemedy: " + b : "\n" + a));
    };
    if (today->year && remedy->year) {
        for (const MonthSum& sum : month_sums)
            if (why.asks(sum.id))
                tell("each month " + std::string(sum.words) + ", January to December",
                     month_terms(*today->year, sum.of, trade),
                     month_terms(*remedy->year, sum.of, trade));
        return;
    }
    const auto share = [&](const assess::Assessment& a) {
        return format_energy(a.year_kwh, trade) + " × " + hundredths(a.year_air_share);
    };
    const auto days = [&](Shown of) {
        return why_formula("year_kwh", session.shown_case(of), session.result(of), Units::si,
                           trade);
    };
    if (why.asks("bill.leakage"))
        tell("heat lost × share that air carries", share(*today), share(*remedy));
    if (why.asks("bill.heat")) tell("degree days", days(Shown::today), days(Shown::remedy));
}

void Bill::tell_year(Ui& ui, const Session& session) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const opening::Running& running = session.house().running;
    const house::Fuel& fuel = house::fuels()[house::fuel_of(session.house())];
    const Trade trade = trade_of(session.house());
    const auto both = [&](const auto& one) {
        const std::string today = one(session.today_result(), running, fuel);
        if (!session.has_remedy()) return today;
        return "Today: " + today + "\nRemedy: " + one(session.remedy_result(), running, fuel);
    };
    tell_months(why, session);
    if (why.asks("bill.fuel_used"))
        why.tell(
            both([&](const assess::Assessment& a, const opening::Running& r, const house::Fuel&) {
                return format_energy(a.year_kwh, trade) + used_words(r.efficiency, trade);
            }));
    if (why.asks("bill.cost"))
        why.tell(
            both([&](const assess::Assessment& a, const opening::Running& r, const house::Fuel&) {
                return heat_cost_words(a.year_kwh, r.efficiency, r.price_per_kwh, trade);
            }));
    if (why.asks("bill.carbon"))
        why.tell(both([&](const assess::Assessment& a, const opening::Running& r,
                          const house::Fuel& f) {
            return hundredths(a.year_kwh / r.efficiency / f.kwh_per_unit) + " × " +
                   hundredths(f.kg_co2_per_unit) + " kg a " + std::string(f.unit) + " = " +
                   grouped(whole(a.year_kwh / r.efficiency / f.kwh_per_unit * f.kg_co2_per_unit),
                           trade.units) +
                   " kg";
        }));
}

void Bill::tell_money(Ui& ui, const Session& session, const opening::Remedy& remedy) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const Trade trade = trade_of(session.house());
    const auto money = [&](double amount) { return format_money(amount, trade); };
    const house::MoneyInput in = input(session, session.remedy_result(), remedy);
    const auto saved =
        adding_up({in.saved.conduction_kwh / trade.heat_kwh, in.saved.leakage_kwh / trade.heat_kwh,
                   in.saved.sun_kwh / trade.heat_kwh, in.saved.rest_kwh / trade.heat_kwh},
                  0.01);
    const std::string price = money(money_.price), saving = money(money_.saving_per_year.value);
    if (why.asks("bill.price"))
        why.tell(tenths(remedy.hours) + " hours × " + money(session.house().hour) + " + material " +
                 money(remedy.material_cost));
    if (why.asks("bill.saving") || why.asks("bill.kept"))
        why.tell(
            "heat saved ÷ efficiency × price of fuel" +
            std::string(in.cools ? ", and cooling" : "") + "\n" + cents(saved[0], {}) +
            " conduction + " + cents(saved[1], {}) + " leakage + (" + cents(saved[2], {}) +
            ") sun" + (saved[3] != 0 ? " + (" + cents(saved[3], {}) + ") a warmer house" : "") +
            " = " + cents(in.saved.heating_kwh() / trade.heat_kwh, {}) + " " +
            std::string(trade.heat_unit) + fuel_words(in.heat.efficiency, in.heat.per_kwh, trade) +
            "\nas entered: " + saving + ", " + format_mass(money_.kg_co2_per_year.value, ui.units));
    if (why.asks("bill.payback")) why.tell("price ÷ saving = " + price + " ÷ " + saving);
    if (why.asks("bill.discounted") || why.asks("bill.value") || why.asks("bill.pays"))
        why.tell("each year's saving × " + hundredths(1 + in.escalation) + "^year ÷ " +
                 hundredths(1 + in.discount) + "^year, summed over " + whole(in.life_years) +
                 " years, less the price " + price + "; " + saving + " in the first");
}

} // namespace shimlight::view
