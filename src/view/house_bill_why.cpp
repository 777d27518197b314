// SPDX-License-Identifier: MIT
// How the sums of the whole house come about, for their cards.
#include "view/adding_up.hpp"
#include "view/bill_words.hpp"
#include "view/house_bill.hpp"
#include "view/why.hpp"

#include <numeric>

namespace shimlight::view {

namespace {

std::string part_words(double v, bool fine, Units units) {
    return grouped(fine ? cents(v, {}) : one_digit(v), units);
}

} // namespace

/// How a sum came about: opening by opening, as they are printed.
void HouseBill::explain(Ui& ui, const Session& session) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const Trade trade = trade_of(session.house());
    const auto sum = [&](const char* id, double (*of)(const house::OpeningAnswer&),
                         bool heat = true) {
        if (!why.asks(id)) return;
        std::vector<double> before, after;
        for (std::size_t n = 0; n < slots_.size(); ++n) {
            const double unit = heat ? trade.heat_kwh : 1;
            before.push_back(of(openings_[n].today) / unit);
            after.push_back(of(answer(n, slots_[n].chosen)) / unit);
        }
        const bool fine = heat && trade.heat_kwh > 1;
        const auto told = [&](double v) { return part_words(v, fine, ui.units); };
        const auto all = [&](const std::vector<double>& parts) {
            return told(std::accumulate(parts.begin(), parts.end(), 0.0));
        };
        const std::string together = all(before) + " → " + all(after);
        before = adding_up(std::move(before), fine ? 0.01 : 0.1);
        after = adding_up(std::move(after), fine ? 0.01 : 0.1);
        std::string words;
        for (std::size_t n = 0; n < slots_.size(); ++n)
            words += session.house().openings[n].name + ": " + told(before[n]) + " → " +
                     told(after[n]) + "\n";
        why.tell(words + "added up: " + together);
    };
    const auto part = [&](const char* id, auto of) {
        if (today_.by_months) sum(id, of);
    };
    using A = const house::OpeningAnswer&;
    sum("bill.house.heat", [](A a) { return a.result.year_kwh; });
    sum(
        "bill.house.people", [](A a) { return a.bothered_pct(); }, false);
    part("bill.house.conduction", [](A a) { return a.result.year->total.conduction_kwh; });
    part("bill.house.gain", [](A a) { return a.result.year->total.gain_kwh; });
    part("bill.house.useful", [](A a) { return a.result.year->total.useful_gain_kwh; });
    part("bill.house.cool", [](A a) { return a.result.year->total.cooling_kwh; });
    if (today_.by_months)
        sum("bill.house.leakage", [](A a) { return a.result.year->total.leakage_kwh; });
    else
        sum("bill.house.leakage", [](A a) { return a.result.year_kwh * a.result.year_air_share; });
    const bool saving = why.asks("bill.house.saving") || why.asks("bill.house.kept");
    if (saving || why.asks("bill.house.price")) {
        std::vector<double> parts;
        for (const Told& one : each_)
            parts.push_back(one.chosen < 0 ? 0 : saving ? one.saving.value : one.price);
        parts = adding_up(std::move(parts), 0.01);
        std::string words;
        for (std::size_t n = 0; n < each_.size(); ++n)
            if (each_[n].chosen >= 0)
                words += session.house().openings[n].name + ": " + cents(parts[n], trade) + "\n";
        why.tell(words + "added up; as entered " +
                 cents(saving ? money_.saving_per_year.value : money_.price, trade));
    }
    if (why.asks("bill.house.payback"))
        why.tell("price ÷ saving = " + format_money(money_.price, trade) + " ÷ " +
                 format_money(money_.saving_per_year.value, trade));
}

} // namespace shimlight::view
