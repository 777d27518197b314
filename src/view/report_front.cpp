// SPDX-License-Identifier: MIT
// The front of an opening's sheet: for who sits at the kitchen table.
#include "assess/advice.hpp"
#include "assess/estimates.hpp"
#include "assess/sentences.hpp"
#include "assess/surfaces.hpp"
#include "assess/words.hpp"
#include "view/bill_words.hpp"
#include "view/figure_text.hpp"
#include "view/report_words.hpp"
#include "view/section_reading.hpp"

#include <algorithm>

namespace shimlight::view {

namespace {

using assess::Assessment;
using assess::fill;
using opening::Part;
using opening::Position;

constexpr double noticeable_k = 0.5; ///< else the sill, where water stands

std::string both(const std::string& today, const std::string& remedy) {
    return today == remedy ? today : fill("today {0}, then {1}", {today, remedy});
}

std::string from_to(const assess::ResultRange& range) {
    const std::string low = whole(range.low), high = whole(range.high);
    return low == high ? format_percent(range.low / 100)
                       : fill("{0} to {1}", {low, format_percent(range.high / 100)});
}

/// By the spread that the Bill draws from: conduction within 15 %, leaks by a factor of two.
std::string cost_range(const Assessment& a, const Trade& trade) {
    constexpr double conduction = 0.15, leakage = 2;
    const double air = a.year_cost * a.year_air_share, rest = a.year_cost - air;
    return fill("{0} to {1}", {format_money(rest * (1 - conduction) + air / leakage, trade),
                               format_money(rest * (1 + conduction) + air * leakage, trade)});
}

/// Where on the glass it is coldest, in which cut, and what it is there.
std::string coldest_glass(const Assessment& today, const Assessment* remedy, Units units) {
    const assess::PartSurface* now = assess::coldest_glass(today);
    const assess::PartSurface* then = remedy ? assess::coldest_glass(*remedy) : nullptr;
    if (!now || (remedy && !then))
        return "Where the glass is coldest is unknown: no cut is solved.";
    const auto place = [](const assess::PartSurface& at) { return assess::place_and_cut(at); };
    const std::string c = format_temperature(now->surface_c, units);
    if (!then) return fill("Coldest of the glass: {0}, {1}.", {place(*now), c});
    const std::string then_c = format_temperature(then->surface_c, units);
    if (place(*now) == place(*then))
        return fill("Coldest of the glass: {0}, {1} today, {2} then.", {place(*now), c, then_c});
    return fill("Coldest of the glass: today {0}, {1}; then {2}, {3}.",
                {place(*now), c, place(*then), then_c});
}

/// The strip: the five figures that are always in sight, with how sure each is.
void figures(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const Assessment &a = s.today_result(), &b = s.remedy_result();
    const Trade trade = trade_of(s.house());
    const auto bothered = [](const opening::Case& c, const Assessment& result) {
        return from_to(assess::estimate_ranges(c, result).together.bothered_pct);
    };
    const bool two = s.has_remedy();
    const auto sure = [&](const std::string& today, const std::string& then) {
        return two ? both(today, then) : today;
    };
    const opening::Case today = s.today(), remedy = s.remedy();
    const std::pair<const char*, std::string> rows[] = {
        {"glass_inside", fill("within {0}", {format_kelvin(1, q.units)})},
        {"ankles", sure(bothered(today, a), bothered(remedy, b))},
        {"wet_above", "within 3 % of humidity"},
        {"u_window", "within 10 %"},
        {"year_cost", sure(cost_range(a, trade), cost_range(b, trade))}};
    std::vector<Block::Row> table;
    for (const auto& row : rows) {
        const assess::Figure& figure = *assess::find_figure(row.first);
        const auto text = [&](const opening::Case& c, const Assessment& result) {
            return figure_text(figure, figure.read(c, result), q.units, trade);
        };
        Block::Row cells{std::string(figure.name), text(today, a)};
        if (two) cells.push_back(text(remedy, b));
        cells.push_back(row.second);
        table.push_back(std::move(cells));
    }
    Block::Row head{"At this opening", "Today"};
    if (two) head.push_back("Then");
    head.push_back("How sure");
    out.table(two ? "Today, and then: with " + assess::within_sentence(s.remedy_name())
                  : "As it is today",
              std::move(head), std::move(table), "figures");
    out.sentence(coldest_glass(a, two ? &b : nullptr, q.units), "small");
}

void money(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const auto remedy = s.priced_remedy();
    if (!remedy) return;
    const Trade trade = trade_of(s.house());
    const house::MoneyInput in = report_money_input(s);
    const house::Money m = house::money(in);
    out.table("What it costs and brings",
              {"Price", "Saves a year", "Payback, no interest",
               "Worth over " + whole(in.life_years) + " years"},
              {{format_money(assess::price_of(*remedy, s.house().hour), trade),
                between_money(m.saving_per_year, trade), between_years(m.payback_years),
                between_money(m.net_value, trade)}},
              "across");
    out.sentence(house::payback_sentence(m, in.life_years));
}

std::string slice_caption(const ReportQuestion& q, const char* place) {
    const Session& s = q.session;
    return fill(
        "Cut through the {0}, outdoors on the {1}{2}. The heaviest line is the dew point, "
        "{3}: what is on its colder, outdoor side can be wet. The finer lines lie {4} apart. The "
        "numbers are of this cut alone.",
        {place, coldest_cut(s.today_result()) == Position::jamb ? "far side (top)" : "left",
         s.has_remedy() ? ": today, and with " + assess::within_sentence(s.remedy_name())
                        : std::string(),
         format_temperature(s.today_result().dew_point_c, q.units),
         q.units == Units::us ? "5\u2009°F" : "2\u2009°C"});
}

const char* room_caption =
    "The room from the side; the bar tells where the draft at the ankles comes from. Whole "
    "lines: air that falls from the cold pane. Broken lines: air that leaks, by the sash and by "
    "the shim space. Dotted: the way back.";

const char* place_word(Position p) {
    return p == Position::head           ? "head"
           : p == Position::jamb         ? "jamb, seen from above"
           : p == Position::meeting_rail ? "meeting rail"
                                         : "sill";
}

/// What the cheapest sufficient measure is; by tests where there were some.
assess::Advice advice_of(const ReportQuestion& q) {
    const Session& s = q.session;
    const house::OpeningRecord& record = s.record();
    const assess::FindOut found = assess::find_out(s.today_result().seat.share, record.answers);
    assess::Chosen chosen;
    if (const auto remedy = s.priced_remedy())
        chosen = {remedy->name, assess::price_of(*remedy, s.house().hour), &s.remedy_result()};
    return assess::advice(s.today_result(), chosen.result ? &chosen : nullptr, &q.cheapest, found,
                          record.answers.size(), advice_style(s.house()));
}

} // namespace

std::string name_of(const house::OpeningRecord& record) {
    return record.name.empty() ? "An opening" : record.name;
}

house::MoneyInput report_money_input(const Session& s) {
    const opening::Running& running = s.house().running;
    const opening::Remedy remedy = *s.priced_remedy();
    return house::bill_input({running, house::fuel_of(s.house()), s.today_result(),
                              s.remedy_result(), remedy, s.house().hour, false,
                              s.warmer_k(remedy)});
}

Position coldest_cut(const Assessment& today) {
    Position found = Position::sill;
    double least_c = 1e9;
    for (const Position p : {Position::sill, Position::jamb, Position::head}) {
        const auto& cut = today.cuts[static_cast<std::size_t>(p)];
        const auto cold = cut ? assess::coldest_of_part(*cut, Part::frame) : std::nullopt;
        if (!cold || cold->c > least_c - noticeable_k) continue;
        least_c = cold->c;
        found = p;
    }
    return found;
}

OpeningSum sum_of(const Session& s) {
    OpeningSum sum;
    sum.name = name_of(s.record());
    sum.complaint = s.record().complaint;
    sum.bothered_before_pct = s.today_result().seat.ankle_bare_pct;
    sum.bothered_after_pct = s.remedy_result().seat.ankle_bare_pct;
    const auto remedy = s.priced_remedy();
    if (!remedy) return sum;
    sum.remedy = remedy->name;
    sum.price = assess::price_of(*remedy, s.house().hour);
    sum.saving = house::money(report_money_input(s)).saving_per_year;
    return sum;
}

void write_opening(Writer& out, const ReportQuestion& q, int picture, const std::string& title) {
    const Session& s = q.session;
    const house::OpeningRecord& record = s.record();
    out.page("front");
    if (!title.empty()) out.heading(1, title);
    out.heading(2, name_of(record));
    if (!record.complaint.empty()) out.sentence("“" + record.complaint + "”", "quote");
    out.sentence(assess::verdict(s.today(), s.today_result(),
                                 s.has_remedy() ? s.remedy_name() : std::string(), s.remedy(),
                                 s.remedy_result(), {q.units == Units::us}),
                 "verdict");
    const assess::Advice advice = advice_of(q);
    out.sentence(advice.cheapest);
    if (!record.answers.empty()) out.sentence(advice.from);
    out.figure(picture, slice_caption(q, place_word(coldest_cut(s.today_result()))));
    out.figure(picture + 1, room_caption);
    figures(out, q);
    money(out, q);
    write_particulars(out, q);
}

} // namespace shimlight::view
