// SPDX-License-Identifier: MIT
#include "house/money.hpp"

#include "house/random.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <vector>

namespace shimlight::house {
namespace {

constexpr std::size_t draw_count = 1000;
constexpr std::size_t low_rank = draw_count / 10, high_rank = draw_count - 1 - low_rank;
constexpr double never = std::numeric_limits<double>::infinity();

/// Factors on one opening's inputs; 1 is as told.
struct Own {
    double conduction = 1, leakage = 1, sun = 1;
};

/// On those of all openings.
struct Common {
    double cooling = 1, house = 1, fuel = 1, work = 1;
    double escalation = 0; ///< added
};

double about_one(double share, SeededDraws& draws) {
    return 1 + share * draws.triangle();
}

Own own_drawn(const Spread& spread, SeededDraws& draws) {
    Own f;
    f.conduction = about_one(spread.conduction, draws);
    f.leakage = std::exp(std::log(spread.leakage_factor) * draws.triangle());
    f.sun = about_one(spread.sun, draws);
    return f;
}

Common common_drawn(const Spread& spread, SeededDraws& draws) {
    Common f;
    f.cooling = about_one(spread.cooling, draws);
    f.house = about_one(spread.house, draws);
    f.fuel = about_one(spread.price_of_fuel, draws);
    f.work = about_one(spread.price_of_work, draws);
    f.escalation = spread.escalation * draws.triangle();
    return f;
}

/// What a saving of 1 a year is worth over the years: the first comes at the end of year one.
double worth_of_years(double years, double growth) {
    if (std::fabs(growth - 1) < 1e-9) return years;
    return growth * (std::pow(growth, years) - 1) / (growth - 1);
}

/// Years until savings of `saving` a year, each `growth` times the one before, make up the price.
double years_until(double price, double saving, double growth) {
    if (price <= 0) return 0;
    if (saving <= 0) return never;
    const double need = price / saving;
    if (std::fabs(growth - 1) < 1e-9) return need;
    const double power = 1 + need * (growth - 1) / growth;
    return power > 0 ? std::log(power) / std::log(growth) : never;
}

struct Outcome {
    double price = 0, heat_kwh = 0, saving = 0, kg_co2 = 0, payback = 0, discounted = 0, value = 0;
};

Outcome outcome(std::span<const MoneyInput> each, const Common& f, const std::vector<Own>& own) {
    Outcome out;
    if (each.empty()) return out;
    const double growth = (1 + each[0].escalation + f.escalation) / (1 + each[0].discount);
    for (std::size_t n = 0; n < each.size(); ++n) {
        const MoneyInput& in = each[n];
        const double heat_kwh =
            f.house *
            (in.saved.conduction_kwh * own[n].conduction + in.saved.leakage_kwh * own[n].leakage +
             in.saved.sun_kwh * own[n].sun + in.saved.rest_kwh * own[n].conduction);
        const double cool_kwh = in.cools ? f.house * f.cooling * in.saved.cooling_kwh : 0;
        const double price = in.work.price() * f.work;
        const double saving = f.fuel * (in.heat.cost(heat_kwh) + in.cool.cost(cool_kwh));
        out.price += price;
        out.heat_kwh += heat_kwh;
        out.saving += saving;
        out.kg_co2 += in.heat.kg_co2(heat_kwh) + in.cool.kg_co2(cool_kwh);
        out.value += saving * worth_of_years(in.life_years, growth) - price;
    }
    out.payback = years_until(out.price, out.saving, 1);
    out.discounted = years_until(out.price, out.saving, growth);
    return out;
}

using Draws = std::array<double, draw_count>;

Ranged ranged(Draws& draws, double value) {
    const auto at = [&](std::size_t rank) {
        const auto place = draws.begin() + static_cast<std::ptrdiff_t>(rank);
        std::nth_element(draws.begin(), place, draws.end());
        return *place;
    };
    return {at(low_rank), value, at(high_rank)};
}

std::string percent_text(double share) {
    char text[16];
    std::snprintf(text, sizeof text, "%.3g\u2009%%", 100 * share);
    return text;
}

std::string years_text(double years) {
    return std::to_string(static_cast<long>(std::lround(years)));
}

} // namespace

HeatParts saved_parts(const assess::YearHeat& today, const assess::YearHeat& remedy) {
    const assess::MonthHeat &a = today.total, &b = remedy.total;
    return {a.heating_by_conduction_kwh - b.heating_by_conduction_kwh,
            a.heating_by_leakage_kwh - b.heating_by_leakage_kwh,
            b.useful_gain_kwh - a.useful_gain_kwh, a.cooling_kwh - b.cooling_kwh};
}

double life_years(std::span<const MoneyInput> each) {
    double by_price = 0, price = 0, longest = 0;
    for (const MoneyInput& in : each) {
        by_price += in.life_years * in.work.price();
        price += in.work.price();
        longest = std::max(longest, in.life_years);
    }
    return price > 0 ? by_price / price : longest;
}

Money money(const MoneyInput& input) {
    return money(std::span(&input, 1));
}

Money money(std::span<const MoneyInput> each) {
    std::vector<Own> own(each.size());
    const Outcome told = outcome(each, {}, own);
    Draws heat, saving, kg_co2, payback, discounted, value;
    const MoneyInput first = each.empty() ? MoneyInput{} : each[0];
    SeededDraws draws(first.seed);
    std::size_t pays = 0;
    for (std::size_t n = 0; n < draw_count; ++n) {
        for (std::size_t i = 0; i < each.size(); ++i)
            own[i] = own_drawn(each[i].spread, draws);
        const Outcome out = outcome(each, common_drawn(first.spread, draws), own);
        heat[n] = out.heat_kwh;
        saving[n] = out.saving;
        kg_co2[n] = out.kg_co2;
        payback[n] = out.payback;
        discounted[n] = out.discounted;
        value[n] = out.value;
        if (out.value > 0) ++pays;
    }
    Money result;
    result.price = told.price;
    result.heat_kwh_per_year = ranged(heat, told.heat_kwh);
    result.saving_per_year = ranged(saving, told.saving);
    result.kg_co2_per_year = ranged(kg_co2, told.kg_co2);
    result.payback_years = ranged(payback, told.payback);
    result.discounted_payback_years = ranged(discounted, told.discounted);
    result.net_value = ranged(value, told.value);
    result.pays_share = static_cast<double>(pays) / draw_count;
    result.outlasts = told.discounted > life_years(each);
    result.discount = first.discount;
    result.escalation = first.escalation;
    return result;
}

double year_cost(const assess::YearHeat& year, const MoneyInput& input) {
    return input.heat.cost(year.total.heating_kwh) +
           (input.cools ? input.cool.cost(year.total.cooling_kwh) : 0);
}

double year_kg_co2(const assess::YearHeat& year, const MoneyInput& input) {
    return input.heat.kg_co2(year.total.heating_kwh) +
           (input.cools ? input.cool.kg_co2(year.total.cooling_kwh) : 0);
}

std::string payback_sentence(const Money& money, double life_years) {
    const Ranged& years = money.discounted_payback_years;
    const std::string life = years_text(life_years) + " years";
    const std::string it_pays = "With " + percent_text(money.discount) + " interest and fuel " +
                                percent_text(money.escalation) + " dearer a year it pays back in ";
    if (money.saving_per_year.value <= 0) return "It saves no money; other reasons must carry it.";
    if (years.low > life_years)
        return it_pays + "more than the " + life +
               " it will last; comfort, dryness and working order must carry it.";
    if (money.outlasts)
        return it_pays + "more than the " + life +
               " it will last, most likely; the chance that it " + "pays within them is " +
               years_text(100 * money.pays_share) + " in 100.";
    const std::string from = it_pays + years_text(years.low) + " to ";
    if (years.high > life_years)
        return from + "more than the " + life + " it will last, most likely about " +
               years_text(years.value) + ".";
    return from + years_text(years.high) + " years, most likely about " + years_text(years.value) +
           ".";
}

} // namespace shimlight::house
