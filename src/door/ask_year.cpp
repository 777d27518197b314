// SPDX-License-Identifier: MIT
// Question `year`: twelve months at one window, what a remedy saves of them, and money.
// Fields, ranges and defaults stand at the top of year_question.cpp, year_climate.cpp and
// year_money.cpp; the guide has an example.
#include "door/answer.hpp"
#include "door/year_question.hpp"

namespace shimlight::door {
namespace {

using assess::MonthHeat;
using assess::YearHeat;
using house::Ranged;

Json heat_json(const MonthHeat& m) {
    return object({{"outside_c", m.outside_c},
                   {"conduction_kwh", m.conduction_kwh},
                   {"leakage_kwh", m.leakage_kwh},
                   {"sun_kwh", m.sun_kwh},
                   {"gain_kwh", m.gain_kwh},
                   {"heating_by_conduction_kwh", m.heating_by_conduction_kwh},
                   {"heating_by_leakage_kwh", m.heating_by_leakage_kwh},
                   {"useful_gain_kwh", m.useful_gain_kwh},
                   {"heating_kwh", m.heating_kwh},
                   {"cooling_kwh", m.cooling_kwh}});
}

Json year_json(const YearHeat& year) {
    Json months = Json::array();
    for (const MonthHeat& month : year.months)
        months.push_back(heat_json(month));
    const assess::DegreeDayHeat& formula = year.degree_days;
    return object(
        {{"months", std::move(months)},
         {"year", heat_json(year.total)},
         {"degree_days",
          {{"base_c", formula.base_c},
           {"degree_days_k", formula.degree_days_k},
           {"kwh", formula.kwh},
           {"by_air_kwh", formula.by_air_kwh},
           {"by_base_kwh", formula.by_base_kwh},
           {"by_sun_kwh", -year.total.useful_gain_kwh}}},
         {"house",
          {{"heating_kwh", year.house_heating_kwh}, {"cooling_kwh", year.house_cooling_kwh}}}});
}

Json day_json(const assess::YearDay& day) {
    Json hours = Json::array();
    for (const assess::YearHour& hour : day)
        hours.push_back(object({{"outside_c", hour.outside_c},
                                {"conduction_w", hour.conduction_w},
                                {"leakage_w", hour.leakage_w},
                                {"sun_w", hour.sun_w},
                                {"gain_w", hour.gain_w}}));
    return hours;
}

/// Of what: null where there is nothing to be a share of.
Json share_of(double part, double whole) {
    if (whole <= 0) return nullptr;
    return part / whole;
}

Json saving_json(const YearHeat& today, const house::HeatParts& saved) {
    return object(
        {{"heating_kwh", saved.heating_kwh()},
         {"by_conduction_kwh", saved.conduction_kwh},
         {"by_leakage_kwh", saved.leakage_kwh},
         {"by_sun_kwh", saved.sun_kwh},
         {"cooling_kwh", saved.cooling_kwh},
         {"share_of_window_heating", share_of(saved.heating_kwh(), today.total.heating_kwh)},
         {"share_of_house_heating", share_of(saved.heating_kwh(), today.house_heating_kwh)}});
}

Json ranged_json(const Ranged& r) {
    return object({{"low", number_or_null(r.low)},
                   {"value", number_or_null(r.value)},
                   {"high", number_or_null(r.high)}});
}

Json cost_json(const YearHeat& year, const house::MoneyInput& input) {
    return object({{"per_year", house::year_cost(year, input)},
                   {"kg_co2_per_year", house::year_kg_co2(year, input)}});
}

Json money_json(const house::Money& m, double life_years) {
    return object({{"price", m.price},
                   {"heat_saved_kwh_per_year", ranged_json(m.heat_kwh_per_year)},
                   {"saving_per_year", ranged_json(m.saving_per_year)},
                   {"kg_co2_saved_per_year", ranged_json(m.kg_co2_per_year)},
                   {"payback_years", ranged_json(m.payback_years)},
                   {"discounted_payback_years", ranged_json(m.discounted_payback_years)},
                   {"net_value", ranged_json(m.net_value)},
                   {"pays_share", m.pays_share},
                   {"outlasts", m.outlasts},
                   {"sentence", house::payback_sentence(m, life_years)}});
}

/// What the house saves by a lower thermostat, once the remedy is in.
double thermostat_kwh(const YearQuestion& q, const YearHeat& remedy) {
    assess::YearHouse cooler = q.house;
    cooler.heating_c -= q.thermostat_lower_k;
    const YearHeat lower = year_heat(*q.remedy, cooler, q.climate, q.degree_day_base_c);
    return remedy.house_heating_kwh - lower.house_heating_kwh;
}

void answer_remedy(const YearQuestion& q, const YearHeat& today, Json& answer) {
    const YearHeat remedy = year_heat(*q.remedy, q.house, q.climate, q.degree_day_base_c);
    const house::HeatParts saved = house::saved_parts(today, remedy);
    answer["remedy"] = year_json(remedy);
    answer["saving"] = saving_json(today, saved);
    const double cooler_kwh = thermostat_kwh(q, remedy);
    if (q.thermostat_lower_k > 0) answer["saving"]["thermostat_kwh"] = cooler_kwh;
    if (!q.money) return;
    house::MoneyInput input = *q.money;
    input.saved = saved;
    Json& money = answer["money"] = money_json(house::money(input), input.life_years);
    money["remedy_cost"] = cost_json(remedy, input);
    if (q.thermostat_lower_k > 0) money["thermostat_per_year"] = input.heat.cost(cooler_kwh);
}

} // namespace

Answer ask_year(ObjectReader& question) {
    const YearQuestion q = read_year(question);
    if (auto fault = settle(question)) return *fault;
    const YearHeat today = year_heat(q.window, q.house, q.climate, q.degree_day_base_c);
    Json answer = year_json(today);
    if (q.remedy) answer_remedy(q, today, answer);
    if (q.money) answer["money"]["cost"] = cost_json(today, *q.money);
    if (q.day_of_month > 0)
        answer["day"] = day_json(assess::mean_day(q.window, q.house, q.climate,
                                                  static_cast<std::size_t>(q.day_of_month - 1)));
    if (!q.climate_note.empty()) answer["climate_note"] = q.climate_note;
    answer["warnings"] = sentences(assess::year_warnings(q.climate));
    return answer;
}

} // namespace shimlight::door
