// SPDX-License-Identifier: MIT
// How the numbers of the Bill come about, for their cards.
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

} // namespace

void Bill::tell_year(Ui& ui, const Session& session) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const opening::Running& running = session.house().running;
    const house::Fuel& fuel = house::fuels()[this->fuel(running)];
    const auto both = [&](std::string (*one)(const assess::Assessment&, const opening::Running&,
                                             const house::Fuel&)) {
        const std::string today = one(session.today_result(), running, fuel);
        if (!session.has_remedy()) return today;
        return "Today: " + today + "\nRemedy: " + one(session.remedy_result(), running, fuel);
    };
    if (why.asks("bill.heat") && session.today_result().year)
        why.tell(both([](const assess::Assessment& a, const opening::Running&, const house::Fuel&) {
            const assess::MonthHeat& t = a.year->total;
            return "lost − sun that saves heating, by months\nyear's sums " +
                   whole(t.conduction_kwh) + " + " + whole(t.leakage_kwh) + " − " +
                   whole(t.useful_gain_kwh) + " kWh";
        }));
    if (why.asks("bill.fuel_used"))
        why.tell(
            both([](const assess::Assessment& a, const opening::Running& r, const house::Fuel& f) {
                return whole(a.year_kwh) + " kWh ÷ " + hundredths(r.efficiency) + " ÷ " +
                       hundredths(f.kwh_per_unit) + " kWh a " + std::string(f.unit);
            }));
    if (why.asks("bill.cost"))
        why.tell(
            both([](const assess::Assessment& a, const opening::Running& r, const house::Fuel&) {
                return whole(a.year_kwh) + " kWh ÷ " + hundredths(r.efficiency) + " × " +
                       hundredths(r.price_per_kwh) + " a kWh";
            }));
    if (why.asks("bill.carbon"))
        why.tell(
            both([](const assess::Assessment& a, const opening::Running& r, const house::Fuel& f) {
                return hundredths(a.year_kwh / r.efficiency / f.kwh_per_unit) + " × " +
                       hundredths(f.kg_co2_per_unit) + " kg a " + std::string(f.unit);
            }));
}

void Bill::tell_money(Ui& ui, const Session& session, const opening::Remedy& remedy) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const std::string& currency = session.house().currency;
    const auto money = [&](double amount) { return format_money(amount, currency); };
    const house::MoneyInput in = input(session, session.remedy_result(), remedy);
    const std::string price = money(money_.price), saving = money(money_.saving_per_year.value);
    if (why.asks("bill.price"))
        why.tell(tenths(remedy.hours) + " hours × " + money(session.house().hour) + " + material " +
                 money(remedy.material_cost));
    if (why.asks("bill.saving") || why.asks("bill.kept"))
        why.tell("heat saved ÷ efficiency × price of fuel" +
                 std::string(in.cools ? ", and cooling" : "") + "\n" +
                 whole(in.saved.conduction_kwh) + " conduction + " + whole(in.saved.leakage_kwh) +
                 " leakage + (" + whole(in.saved.sun_kwh) +
                 ") sun = " + whole(in.saved.heating_kwh()) + " kWh ÷ " +
                 hundredths(in.heat.efficiency) + " × " + hundredths(in.heat.per_kwh) +
                 "\nas entered: " + saving + ", " + whole(money_.kg_co2_per_year.value) + " kg");
    if (why.asks("bill.payback")) why.tell("price ÷ saving = " + price + " ÷ " + saving);
    if (why.asks("bill.discounted") || why.asks("bill.value") || why.asks("bill.pays"))
        why.tell("each year's saving × " + hundredths(1 + in.escalation) + "^year ÷ " +
                 hundredths(1 + in.discount) + "^year, summed over " + whole(in.life_years) +
                 " years, less the price " + price + "; " + saving + " in the first");
}

} // namespace shimlight::view
