// SPDX-License-Identifier: MIT
// How the sums of the whole house come about, for their cards.
#include "view/bill_words.hpp"
#include "view/house_bill.hpp"
#include "view/why.hpp"

namespace shimlight::view {

/// How a sum came about: opening by opening, as they are printed.
void HouseBill::explain(Ui& ui, const Session& session) const {
    if (!ui.why) return;
    Why& why = *ui.why;
    const auto sum = [&](const char* id, double (*of)(const house::OpeningAnswer&)) {
        if (!why.asks(id)) return;
        std::string words;
        for (std::size_t n = 0; n < slots_.size(); ++n)
            words += session.house().openings[n].name + ": " + whole(of(openings_[n].today)) +
                     " → " + whole(of(answer(n, slots_[n].chosen))) + "\n";
        why.tell(words + "added up");
    };
    const auto part = [&](const char* id, auto of) {
        if (today_.by_months) sum(id, of);
    };
    using A = const house::OpeningAnswer&;
    sum("bill.house.heat", [](A a) { return a.result.year_kwh; });
    sum("bill.house.people", [](A a) { return a.bothered_pct(); });
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
        const std::string& currency = session.house().currency;
        std::string words;
        for (std::size_t n = 0; n < each_.size(); ++n)
            if (each_[n].chosen >= 0)
                words += session.house().openings[n].name + ": " +
                         format_money(saving ? each_[n].saving.value : each_[n].price, currency) +
                         "\n";
        why.tell(words + "added up; as entered " +
                 format_money(saving ? money_.saving_per_year.value : money_.price, currency));
    }
    if (why.asks("bill.house.payback"))
        why.tell("price ÷ saving = " + format_money(money_.price, session.house().currency) +
                 " ÷ " + format_money(money_.saving_per_year.value, session.house().currency));
}

} // namespace shimlight::view
