// SPDX-License-Identifier: MIT
#include "view/bill.hpp"

#include "assess/thermostat.hpp"
#include "view/bars.hpp"
#include "view/bill_words.hpp"
#include "view/column.hpp"
#include "view/lever.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using assess::MonthHeat;
using house::fuels;

constexpr float two_columns_from_px = 720, between_px = 40, bars_px = 200, measure_px = 48,
                mark_px = 16;
constexpr double telling_k = 0.2; // a thermostat lower by less is not worth a word

const opening::Field& field(const char* key) {
    return *opening::find_field(key);
}

/// Today, or Today and the Remedy.
struct Both {
    const assess::Assessment *today, *remedy;
    bool two = false;
    Trade trade;
    std::string heat(double today_kwh, double remedy_kwh) const {
        return pair_words(heat_number(today_kwh, trade), heat_number(remedy_kwh, trade), two) +
               " " + std::string(trade.heat_unit);
    }
    std::string heat(double MonthHeat::*part) const {
        return heat(today->year->total.*part, remedy->year->total.*part);
    }
};

Both both_of(const Session& session) {
    return {&session.today_result(), &session.remedy_result(), session.has_remedy(),
            trade_of(session.house())};
}

void bars(Ui& ui, Column& column, const Session& session, const char* id, const char* title,
          double MonthHeat::*part) {
    const Both b = both_of(session);
    Months m;
    m.id = id;
    m.unit = b.trade.heat_unit;
    m.title = title + m.unit;
    m.decimals = b.trade.heat_kwh > 1 ? 2 : 0;
    m.high /= b.trade.heat_kwh;
    m.first_name = "Today";
    if (b.two) m.second_name = session.remedy_name();
    for (std::size_t i = 0; i < 12; ++i) {
        m.first[i] = b.today->year->months[i].*part / b.trade.heat_kwh;
        m.second[i] = b.remedy->year->months[i].*part / b.trade.heat_kwh;
        m.low = std::min({m.low, m.first[i], m.second[i]});
        m.high = std::max({m.high, m.first[i], m.second[i]});
    }
    month_bars(ui, column.take(bars_px), m);
}

/// What the measures' sections depend on: all but prices and which remedy is chosen.
std::string solved_of(const Session& session) {
    house::House h = session.house();
    const opening::Running usual;
    h.fuel = -1;
    h.running.price_per_kwh = usual.price_per_kwh;
    h.running.efficiency = usual.efficiency;
    for (house::OpeningRecord& record : h.openings)
        record.chosen = -1;
    return house::to_json(h);
}

} // namespace

house::MoneyInput Bill::input(const Session& session, const assess::Assessment& then,
                              const opening::Remedy& remedy) const {
    const opening::Running& running = session.house().running;
    return house::bill_input({running, house::fuel_of(session.house()), session.today_result(),
                              then, house::priced(session.house(), session.record(), remedy),
                              session.house().hour, cools_, session.warmer_k(remedy)});
}

/// The draws, once for each change and again when the last section is solved.
void Bill::work_out(Ui& ui, const Session& session) {
    if (revision_ != session.revision()) {
        revision_ = session.revision();
        begun_ = false;
    }
    const bool ready = session.today_result().complete && session.remedy_result().complete;
    if (begun_ || !ready || ui.gesture.down) return;
    begun_ = true;
    keep_or_begin_measures(session);
    lower_k_ = lower_kwh_ = 0;
    const opening::Remedy* remedy = house::chosen_remedy(session.record());
    if (!remedy) return;
    const house::MoneyInput in = input(session, session.remedy_result(), *remedy);
    money_ = house::money(in);
    life_years_ = in.life_years;
    lower_k_ = session.today().room.air_c - assess::same_comfort_c(session.remedy(),
                                                                   session.remedy_result(),
                                                                   session.today_result().seat.pmv);
    lower_kwh_ = house::lower_thermostat_kwh(session.remedy(), session.remedy_result(), lower_k_);
}

void Bill::keep_or_begin_measures(const Session& session) {
    std::string now = solved_of(session);
    if (now != solved_of_) {
        solved_of_ = std::move(now);
        measures_.clear();
        solved_ = 0;
        begin_measures(session);
    }
    for (Measure& m : measures_) {
        m.chosen = session.has_remedy() && m.plan.name == session.remedy_name();
        if (m.plan.solved) m.saving = saving(session, m);
    }
}

/// The house's own remedies, each ready-made measure, and of the combinations those that leave
/// fewer people bothered than everything cheaper.
void Bill::begin_measures(const Session& session) {
    const auto& own = session.record().remedies;
    const opening::Case today = session.today();
    double fewest = 100;
    for (assess::Plan& plan :
         house::plans(session.house(), session.record(),
                      {today, session.today_result(), own, session.house().hour})) {
        const bool is_own = std::any_of(
            own.begin(), own.end(), [&](const opening::Remedy& r) { return r.name == plan.name; });
        const bool single = plan.name.find(" plus ") == std::string::npos;
        if (!is_own && !single && plan.bothered_pct > fewest - 1) continue;
        fewest = std::min(fewest, plan.bothered_pct);
        measures_.push_back({std::move(plan), {}, {}, false});
    }
}

void Bill::solve_one(const Session& session) {
    Measure& m = measures_[solved_++];
    const assess::Assessment then =
        assess::assess(opening::apply(m.plan.remedy, session.today()), section::Accuracy::draft);
    m.plan.bothered_pct = then.seat.ankle_bare_pct;
    m.plan.solved = true;
    m.saved = input(session, then, m.plan.remedy).saved;
    m.saving = saving(session, m);
}

house::Ranged Bill::saving(const Session& session, const Measure& m) const {
    house::MoneyInput in = input(session, session.remedy_result(), m.plan.remedy);
    in.saved = m.saved;
    return house::money(in).saving_per_year;
}

/// The switch between this opening and all of them.
void Bill::one_or_all(Ui& ui, const Session& session, Column& column) {
    if (session.house().openings.size() < 2) whole_ = false;
    const Box row = column.take(touch_px);
    const float half = (row.w - 8) / 2;
    ButtonStyle style;
    style.role = Role::toggle;
    const bool was = whole_;
    style.on = !whole_;
    if (button(ui, "bill.one", {row.x, row.y, half, row.h}, "This opening", style)) whole_ = false;
    style.on = was;
    style.enabled = session.house().openings.size() > 1;
    if (button(ui, "bill.all", {row.x + half + 8, row.y, half, row.h}, "Whole house", style))
        whole_ = true;
    if (whole_ != was) ui.wishes.another_frame = true;
}

void Bill::place(Ui& ui, Session& session, Column& column) {
    if (!whole_) column.heading("bill.year", "A year of this opening");
    const opening::Field& climate = field("running.climate");
    const Box row = column.take(touch_px, 4);
    text(ui, ui.platform.fonts.small, {row.x, row.y + 14}, ui.theme.soft, "Climate of");
    std::vector<std::string> names;
    for (const opening::Choice& place : climate.choices)
        names.emplace_back(place.label);
    const int now = session.house().running.climate;
    const int chosen =
        choice(ui, "bill.place", {row.x + 76, row.y, row.w - 76, row.h}, "Climate of", names, now);
    if (chosen >= 0 && chosen != now) session.move(climate, chosen, Shown::today, "");
    if (now == 0)
        column.sentence("bill.no_place", "Without a place",
                        "Choose a place for months, sun and cooling. Degree days alone know the "
                        "cold, not the sun.",
                        ui.theme.soft);
}

void Bill::energy(Ui& ui, const Session& session, Column& column) const {
    const Both b = both_of(session);
    const opening::Running& running = session.house().running;
    const house::Fuel& fuel = fuels()[house::fuel_of(session.house())];
    const ImU32 ink = ui.theme.ink;
    const auto row = [&](const char* id, const char* name, const std::string& value,
                         const char* key) { column.row(id, name, value, ink, {key}); };
    if (b.today->year && b.remedy->year) {
        bars(ui, column, session, "bill.heating", "Heating that this window costs, ",
             &MonthHeat::heating_kwh);
        bars(ui, column, session, "bill.cooling", "Cooling that it adds, ",
             &MonthHeat::cooling_kwh);
        column.heading("bill.sums", b.two ? "The year: today → remedy" : "The year", 3);
        row("bill.conduction", "Lost by glass, frame, shim space",
            b.heat(&MonthHeat::conduction_kwh), "bill.loss");
        row("bill.leakage", "Lost by leaking air", b.heat(&MonthHeat::leakage_kwh), "bill.loss");
        row("bill.gain", "Sun let in", b.heat(&MonthHeat::gain_kwh), "bill.loss");
        row("bill.useful", "Of that, saves heating", b.heat(&MonthHeat::useful_gain_kwh),
            "bill.loss");
        row("bill.heat", "Heating it costs", b.heat(&MonthHeat::heating_kwh), "bill.heat");
        row("bill.cool", "Cooling it adds", b.heat(&MonthHeat::cooling_kwh), "bill.cool");
    } else {
        column.heading("bill.sums", b.two ? "The year: today → remedy" : "The year", 3);
        row("bill.heat", "Heat lost, by degree days", b.heat(b.today->year_kwh, b.remedy->year_kwh),
            "bill.heat");
        row("bill.leakage", "Of that, by leaking air",
            b.heat(b.today->year_kwh * b.today->year_air_share,
                   b.remedy->year_kwh * b.remedy->year_air_share),
            "bill.loss");
    }
    const Trade& trade = b.trade;
    const auto units = [&](const assess::Assessment& a) {
        return a.year_kwh / running.efficiency / fuel.kwh_per_unit;
    };
    const auto amount = [&](const assess::Assessment& a) {
        return fuel_amount(a.year_kwh / running.efficiency, trade);
    };
    row("bill.fuel_used", "Fuel for it",
        pair_words(amount(*b.today), amount(*b.remedy), b.two) + " " +
            plural(std::string(trade.fuel_unit)),
        "bill.fuel");
    row("bill.cost", "Price of that fuel",
        pair_words(format_money(b.today->year_cost, trade),
                   format_money(b.remedy->year_cost, trade), b.two),
        "bill.cost");
    row("bill.carbon", "CO₂ from it",
        pair_words(format_mass(units(*b.today) * fuel.kg_co2_per_unit, ui.units),
                   format_mass(units(*b.remedy) * fuel.kg_co2_per_unit, ui.units), b.two),
        "bill.carbon");
    tell_year(ui, session);
    if (b.two && b.today->year_kwh > 1)
        column.sentence("bill.share", "Saving, and of what",
                        share_words(*b.today, *b.remedy, ui.units), ui.theme.ink);
    column.sentence("bill.base", "Base",
                    "This opening alone, as it is today; other windows of the house are not in "
                    "these figures.",
                    ui.theme.soft);
}

void Bill::fuel_and_price(Ui& ui, Session& session, Column& column) {
    column.heading("bill.fuel.head", "Fuel and its price", 3);
    const std::size_t now = house::fuel_of(session.house());
    std::vector<std::string> names;
    for (const house::Fuel& fuel : fuels())
        names.emplace_back(fuel.name);
    const int chosen =
        choice(ui, "bill.fuel", column.take(touch_px, 4), "Fuel", names, static_cast<int>(now));
    if (chosen >= 0) {
        const house::Fuel& fuel = fuels()[static_cast<std::size_t>(chosen)];
        house::House next = session.house();
        next.fuel = chosen;
        next.running.price_per_kwh = house::usual_price_per_kwh(fuel);
        next.running.efficiency = fuel.efficiency;
        session.edit(std::move(next));
    }
    const Trade trade = trade_of(session.house());
    for (const char* key : {"running.price_per_kwh", "running.efficiency"}) {
        const opening::Case today = session.today();
        const auto moved =
            lever(ui, {field(key), today, "", trade}, column.take(lever_height_px, 2));
        if (!moved) continue;
        session.move(field(key), *moved, Shown::today, ui.gesture.down ? key : "");
        moving_ = ui.gesture.down;
    }
    const house::Fuel& fuel = fuels()[house::fuel_of(session.house())];
    const double price = session.house().running.price_per_kwh * fuel.kwh_per_unit;
    column.sentence("bill.unit_price", "Price of a unit",
                    (fuel.unit == trade.fuel_unit ? std::string()
                                                  : "That is " + cents(price, trade) + " a " +
                                                        std::string(fuel.unit) + ". ") +
                        "A chosen fuel brings its usual price (2023, from memory): enter yours.",
                    ui.theme.soft);
    if (!session.today_result().year) return;
    ButtonStyle style;
    style.role = Role::toggle;
    style.on = cools_;
    style.help = "Counts cooling by electricity";
    if (button(ui, "bill.cools", column.take(touch_px, 8), "This house is cooled in summer",
               style)) {
        cools_ = !cools_;
        revision_ = -1;
        ui.wishes.another_frame = true;
    }
}

void Bill::payback(Ui& ui, const Session& session, Column& column) const {
    const auto remedy = session.priced_remedy();
    if (!remedy) return;
    const Trade trade = trade_of(session.house());
    column.heading("bill.money", remedy->name);
    column.row("bill.price", "Price",
               format_money(assess::price_of(*remedy, session.house().hour), trade), ui.theme.ink,
               {"bill.price"});
    column.sentence("bill.price.of", "Price of", work_words(*remedy, session.house().hour, trade),
                    ui.theme.soft);
    if (!begun_) {
        column.sentence("bill.wait", "Still computing", "Still computing …", ui.theme.soft);
        return;
    }
    const ImU32 ink = ui.theme.ink;
    column.row("bill.saving", "Saves a year", between_money(money_.saving_per_year, trade), ink,
               {"bill.saving"});
    column.row("bill.payback", "Payback, simple (no interest)", between_years(money_.payback_years),
               ink, {"bill.payback"});
    column.row("bill.discounted", "Payback, with 4\u2009% interest",
               between_years(money_.discounted_payback_years), ink, {"bill.payback"});
    column.row("bill.value", "Worth over " + whole(life_years_) + " years",
               between_money(money_.net_value, trade), ink, {"bill.value"});
    column.row("bill.pays", "Chance that it pays by then",
               whole(100 * money_.pays_share) + " in 100", ink, {"bill.value"});
    column.row("bill.kept", "CO₂ kept out a year", between_mass(money_.kg_co2_per_year, ui.units),
               ink, {"bill.carbon"});
    tell_money(ui, session, *remedy);
    column.sentence("bill.verdict", "Payback in a sentence",
                    house::payback_sentence(money_, life_years_), ink);
    column.sentence("bill.reasons", "Other reasons",
                    reasons_words(money_, session.today_result(), session.remedy_result()), ink);
    column.sentence("bill.ranges", "What the ranges are",
                    range_words("weather, leaks, prices and glass") +
                        " Worth: savings less price, fuel 2\u2009% dearer a year, 4\u2009% "
                        "interest. It is taken "
                        "to last " +
                        whole(life_years_) + (life_years_ < 1.5 ? " year." : " years.") +
                        (session.today_result().year ? "" : " Sun is left out: choose a climate."),
                    ui.theme.soft);
}

void Bill::thermostat(Ui& ui, const Session& session, Column& column) const {
    const auto remedy = session.priced_remedy();
    if (!begun_ || !remedy) return;
    if (const std::string cost = warmer_cost(session, *remedy); !cost.empty())
        column.sentence("bill.warmer", "A warmer room",
                        warmer_words(cost, ui.units) + " The saving above counts it.",
                        ui.theme.ink);
    if (lower_k_ < telling_k) return;
    column.heading("bill.thermostat.head", "A lower thermostat", 3);
    const double air_c = session.today().room.air_c;
    std::string words = "With the remedy a room of " +
                        format_temperature(air_c - lower_k_, ui.units) +
                        " is as comfortable at this seat as one of " +
                        format_temperature(air_c, ui.units) + " is today.";
    const opening::Running& running = session.house().running;
    if (lower_kwh_ > 0)
        words += " If the whole house is set lower by that, an ordinary one of " +
                 ordinary_size(ui.units) + " saves about " +
                 format_money(lower_kwh_ / running.efficiency * running.price_per_kwh,
                              trade_of(session.house())) +
                 " a year more, which no figure above counts.";
    column.sentence("bill.thermostat", "A lower thermostat", words, ui.theme.ink);
}

void Bill::list(Ui& ui, const Session& session, Column& column) const {
    column.heading("bill.list", "All measures by price", 3);
    const Trade trade = trade_of(session.house());
    const Fonts& fonts = ui.platform.fonts;
    const bool fine_today = assess::solves(session.today_result().seat.ankle_bare_pct);
    bool marked = fine_today;
    for (std::size_t i = 0; i < measures_.size(); ++i) {
        const Measure& m = measures_[i];
        const bool solves = m.plan.solved && assess::solves(m.plan.bothered_pct);
        const bool cheapest = solves && !marked;
        marked = marked || solves;
        const std::string mark = std::string(m.chosen ? "chosen" : "") +
                                 (m.chosen && cheapest ? ", " : "") +
                                 (cheapest ? "★ cheapest that solves the draft" : "");
        const Box row = column.take(measure_px + (mark.empty() ? 0 : mark_px), 0);
        const std::string price = format_money(m.plan.price, trade);
        const float price_px = text_size(ui, fonts.strong, price).x;
        text_fitted(ui, m.chosen ? fonts.strong : fonts.body, {row.x, row.y + 5},
                    row.w - price_px - 12, ui.theme.ink, m.plan.name);
        text(ui, fonts.strong, {row.right(), row.y + 5}, ui.theme.ink, price, Align::right);
        const std::string value = measure_words(m.plan, m.saving, trade);
        text_fitted(ui, fonts.small, {row.x, row.y + 24}, row.w, ui.theme.soft, value);
        text_fitted(ui, fonts.small, {row.x, row.y + 41}, row.w,
                    cheapest ? ui.theme.better : ui.theme.lever, mark);
        ui.list->AddLine({row.x, row.bottom() - 2}, {row.right(), row.bottom() - 2}, ui.theme.rule);
        note(ui, Role::output, "bill.measure." + std::to_string(i), row, m.plan.name,
             price + ", " + value + (mark.empty() ? "" : ", " + mark));
    }
    const bool done = begun_ && solved_ == measures_.size();
    column.sentence("bill.list.note", "How to read it",
                    !done        ? "Still computing …"
                    : fine_today ? "Today already at most 20 of 100 people are bothered at the "
                                   "ankles: no draft to solve."
                    : marked     ? "Solved: at most 20 of 100 people bothered at the ankles."
                             : "Nothing here brings it to 20 of 100 people bothered at the ankles.",
                    ui.theme.soft);
    if (done && !fine_today)
        column.sentence("bill.list.warmer", "A warmer room",
                        "A higher thermostat costs nothing to buy but something every year, so it "
                        "has no place in this order: choose it as the remedy to see both.",
                        ui.theme.soft);
}

void Bill::draw(Ui& ui, Session& session, Box box) {
    ui.group = "bill";
    fill(ui, box, ui.theme.paper);
    const Purse purse{house::fuel_of(session.house()), cools_};
    if (whole_)
        house_.work(ui, session, purse);
    else
        work_out(ui, session);
    const bool rests = !whole_ && begun_ && !ui.gesture.down && solved_ < measures_.size();
    if (rests) {
        solve_one(session);
        ui.wishes.another_frame = true;
    }
    const float width = std::min(box.w - 2 * margin_px, 1100.0f);
    const bool two = width >= two_columns_from_px;
    const float column_px = two ? (width - between_px) / 2 : width;
    const float left = box.x + (box.w - width) / 2;
    const float top = scroll_.begin(ui, box, content_px_) + 12;
    Column first(ui, {left, top, column_px, 0});
    one_or_all(ui, session, first);
    place(ui, session, first);
    if (whole_)
        house_.totals(ui, session, first);
    else
        energy(ui, session, first);
    if (two) fuel_and_price(ui, session, first);
    Column second(
        ui, {two ? left + column_px + between_px : left, two ? top : first.y + 16, column_px, 0});
    if (whole_) {
        house_.remedies(ui, session, second);
    } else {
        payback(ui, session, second);
        thermostat(ui, session, second);
        list(ui, session, second);
    }
    if (!two) fuel_and_price(ui, session, second);
    const float end = std::max(first.y, second.y) - top + 36;
    if (end != content_px_) ui.wishes.another_frame = true;
    content_px_ = end;
    scroll_.end(ui);
    if (moving_ && !ui.gesture.down) {
        moving_ = false;
        session.settle();
        ui.wishes.another_frame = true;
    }
}

} // namespace shimlight::view
