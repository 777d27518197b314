// SPDX-License-Identifier: MIT
#include "house/house_bill.hpp"

#include "assess/quick_seat.hpp"
#include "assess/sentences.hpp"
#include "assess/year_case.hpp"
#include "opening/cut.hpp"
#include "physics/house_heat.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::house {
namespace {

using assess::MonthHeat;

constexpr double hours_per_day = 24, w_per_kw = 1000;

void add(MonthHeat& sum, const MonthHeat& one) {
    constexpr double MonthHeat::*parts[] = {&MonthHeat::conduction_kwh,
                                            &MonthHeat::leakage_kwh,
                                            &MonthHeat::sun_kwh,
                                            &MonthHeat::gain_kwh,
                                            &MonthHeat::heating_by_conduction_kwh,
                                            &MonthHeat::heating_by_leakage_kwh,
                                            &MonthHeat::useful_gain_kwh,
                                            &MonthHeat::heating_kwh,
                                            &MonthHeat::cooling_kwh};
    for (double MonthHeat::*const part : parts)
        sum.*part += one.*part;
    sum.outside_c = one.outside_c;
}

/// The window behind a year: what it conducts follows from what it lost.
assess::YearWindow window_of(const OpeningAnswer& a, const opening::Climate& climate,
                             const assess::YearHouse& house) {
    const opening::Case& c = a.of;
    const opening::UnitSize size = opening::unit_size(c.opening);
    assess::YearWindow window = assess::year_window(
        c, 1, 45.0 * static_cast<int>(c.opening.facing),
        assess::sun_glass(a.result.sun, size.width_m * size.height_m - a.result.frame_m2));
    const double of_one_kwh = assess::year_heat(window, house, climate).total.conduction_kwh;
    window.conduction_w_k = of_one_kwh > 0 ? a.result.year->total.conduction_kwh / of_one_kwh : 0;
    return window;
}

assess::YearHouse house_at(double room_c) {
    assess::YearHouse house;
    house.heating_c = room_c;
    house.cooling_c = std::max(house.cooling_c, room_c + 1);
    return house;
}

/// What a window adds to its house's day, Wh.
struct DayShare {
    double heating_loss = 0, cooling_loss = 0, gain = 0, other_gain = 0;
};

DayShare share_of(const assess::YearWindow& window, const assess::YearHouse& house,
                  const opening::Climate& climate, std::size_t month) {
    double leak_wh_k = 0, leak_outside_wh = 0;
    DayShare share;
    for (const assess::YearHour& hour : assess::mean_day(window, house, climate, month)) {
        leak_wh_k += hour.leak_w_k;
        leak_outside_wh += hour.leak_w_k * hour.outside_c;
        share.gain += hour.gain_w;
        share.other_gain += hour.other_gain_w;
    }
    const auto loss = [&](double inside_c) {
        return window.conduction_w_k * hours_per_day * (inside_c - climate.months[month].mean_c) +
               (1 - house.air_elsewhere) * (leak_wh_k * inside_c - leak_outside_wh);
    };
    share.heating_loss = loss(house.heating_c);
    share.cooling_loss = loss(house.cooling_c);
    return share;
}

} // namespace

OpeningAnswer opening_answer(const opening::Case& c, const assess::Assessment& result) {
    OpeningAnswer answer{true, c, result};
    answer.result.cuts = {};
    return answer;
}

bool same_changes(const opening::Remedy& a, const opening::Remedy& b) {
    return std::equal(a.changes.begin(), a.changes.end(), b.changes.begin(), b.changes.end(),
                      [](const opening::Change& x, const opening::Change& y) {
                          return x.field == y.field && x.value == y.value;
                      });
}

std::vector<OpeningChoice> opening_choices(const OpeningRecord& record, const opening::Case& today,
                                           const assess::Assessment& now) {
    std::vector<OpeningChoice> all;
    for (const opening::Remedy& remedy : record.remedies) {
        OpeningChoice choice;
        choice.remedy = remedy;
        choice.own = true;
        choice.quick_pct =
            assess::quick_seat(opening::apply(remedy, today), today, now).ankle_bare_pct;
        all.push_back(std::move(choice));
    }
    const std::size_t own = all.size();
    for (assess::Plan& plan : assess::plans({today, now})) {
        OpeningChoice choice;
        choice.remedy = std::move(plan.remedy);
        choice.remedy.name = plan.name;
        choice.combined = plan.name.find(" plus ") != std::string::npos;
        choice.quick_pct = plan.bothered_pct;
        for (std::size_t i = 0; i < own; ++i)
            choice.hidden = choice.hidden || same_changes(all[i].remedy, choice.remedy);
        all.push_back(std::move(choice));
    }
    return all;
}

void price_choices(std::vector<OpeningChoice>& choices, const House& house,
                   const OpeningRecord& record) {
    for (OpeningChoice& c : choices)
        c.dearer = priced(house, record, c.remedy).material_cost - c.remedy.material_cost;
}

bool take_over(HouseOpening& opening, const std::vector<opening::Remedy>& own) {
    std::vector<OpeningChoice> all;
    for (const opening::Remedy& remedy : own) {
        const auto known =
            std::find_if(opening.choices.begin(), opening.choices.end(),
                         [&](const OpeningChoice& c) { return same_changes(c.remedy, remedy); });
        if (known == opening.choices.end()) return false;
        all.push_back(*known);
        all.back().remedy = remedy;
        all.back().own = true;
        all.back().combined = all.back().hidden = false;
    }
    for (OpeningChoice& choice : opening.choices) {
        if (choice.own) continue;
        choice.hidden = false;
        for (std::size_t i = 0; i < own.size(); ++i)
            if (same_changes(own[i], choice.remedy)) {
                choice.hidden = true;
                if (all[i].answer.known) choice.answer = all[i].answer;
            }
        all.push_back(std::move(choice));
    }
    opening.choices = std::move(all);
    return true;
}

std::vector<MixOpening> mix_of(const std::vector<HouseOpening>& openings, double hour) {
    std::vector<MixOpening> mix;
    for (const HouseOpening& opening : openings) {
        MixOpening& one = mix.emplace_back();
        for (const OpeningChoice& c : opening.choices) {
            const bool takes_part = c.priced() && !c.hidden;
            one.push_back(
                {takes_part ? c.price(hour) : -1, opening.today.bothered_pct() - c.bothered_pct()});
        }
    }
    return mix;
}

std::vector<RankedRemedy> ranked_remedies(const std::vector<HouseOpening>& openings, double hour) {
    const std::vector<MixOpening> mix = mix_of(openings, hour);
    const auto before = [](const RankedRemedy& a, const RankedRemedy& b) {
        const double x = a.fewer * b.price, y = b.fewer * a.price;
        return x > y || (x == y && a.fewer > b.fewer && a.price == b.price);
    };
    std::vector<RankedRemedy> all;
    for (std::size_t n = 0; n < mix.size(); ++n)
        for (std::size_t i = 0; i < mix[n].size(); ++i) {
            const MixChoice& c = mix[n][i];
            if (c.price < 0 || c.gain < assess::noticed_pct || openings[n].choices[i].combined)
                continue;
            const RankedRemedy r{n, i, c.price, c.gain};
            all.insert(std::upper_bound(all.begin(), all.end(), r, before), r);
        }
    return all;
}

HouseTotals house_totals(const Answers& answers) {
    HouseTotals totals;
    totals.by_months = !answers.empty();
    for (const OpeningAnswer* a : answers) {
        totals.kwh += a->result.year_kwh;
        totals.air_kwh += a->result.year_kwh * a->result.year_air_share;
        totals.bothered += a->bothered_pct();
        totals.wet += a->wet() ? 1 : 0;
        totals.by_months = totals.by_months && a->result.year;
        if (!a->result.year) continue;
        add(totals.year.total, a->result.year->total);
        for (std::size_t m = 0; m < opening::months_per_year; ++m)
            add(totals.year.months[m], a->result.year->months[m]);
    }
    return totals;
}

HouseNeed house_need(const Answers& answers, const opening::Climate& climate) {
    HouseNeed need;
    if (answers.empty()) return need;
    double room_c = 0;
    std::vector<assess::YearHouse> houses;
    std::vector<assess::YearWindow> windows;
    for (const OpeningAnswer* a : answers) {
        room_c += a->of.room.air_c / static_cast<double>(answers.size());
        houses.push_back(house_at(a->of.room.air_c));
        windows.push_back(window_of(*a, climate, houses.back()));
    }
    const assess::YearHouse house = house_at(room_c);
    const double exponent =
        physics::utilisation_exponent(house.capacity_j_k, house.conductance_w_k);
    for (std::size_t m = 0; m < opening::months_per_year; ++m) {
        const double outside_c = climate.months[m].mean_c;
        DayShare sum{house.conductance_w_k * hours_per_day * (house.heating_c - outside_c),
                     house.conductance_w_k * hours_per_day * (house.cooling_c - outside_c),
                     hours_per_day * house.gains_w};
        for (std::size_t n = 0; n < windows.size(); ++n) {
            const DayShare one = share_of(windows[n], houses[n], climate, m);
            sum.heating_loss += one.heating_loss;
            sum.cooling_loss += one.cooling_loss;
            sum.gain += one.gain + (n == 0 ? one.other_gain : 0);
        }
        const double kwh = opening::days_of_month[m] / w_per_kw;
        need.heating_kwh += physics::heating_need(sum.heating_loss, sum.gain, exponent) * kwh;
        need.cooling_kwh += physics::cooling_need(sum.cooling_loss, sum.gain, exponent) * kwh;
    }
    return need;
}

int take_set(House& house, const std::vector<HouseOpening>& openings,
             const std::vector<int>& chosen) {
    int full = 0;
    for (std::size_t n = 0; n < chosen.size() && n < house.openings.size(); ++n) {
        OpeningRecord& record = house.openings[n];
        if (chosen[n] < 0 || openings[n].choices[static_cast<std::size_t>(chosen[n])].own) {
            record.chosen = chosen[n];
        } else if (record.remedies.size() < max_remedies) {
            record.remedies.push_back(
                openings[n].choices[static_cast<std::size_t>(chosen[n])].remedy);
            record.chosen = static_cast<int>(record.remedies.size()) - 1;
        } else {
            ++full;
        }
    }
    return full;
}

} // namespace shimlight::house
