// SPDX-License-Identifier: MIT
// The back of an opening's sheet: the particulars, for who does the work or checks the numbers.
#include "assess/by_tests.hpp"
#include "assess/estimates.hpp"
#include "assess/proof.hpp"
#include "assess/sentences.hpp"
#include "assess/words.hpp"
#include "house/cautions.hpp"
#include "house/sheet.hpp"
#include "view/bill_words.hpp"
#include "view/figure_text.hpp"
#include "view/lever.hpp"
#include "view/lever_groups.hpp"
#include "view/pen.hpp"
#include "view/range_words.hpp"
#include "view/report_words.hpp"
#include "view/share_bar.hpp"
#include "view/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using assess::Assessment;
using assess::fill;

/// "name, today, then" with one or two columns of values.
class Pairs {
  public:
    Pairs(const ReportQuestion& q) : q_(q), two_(q.session.has_remedy()) {}

    void row(std::string name, const std::string& today, const std::string& remedy) {
        Block::Row cells{std::move(name), today};
        if (two_) cells.push_back(remedy);
        rows_.push_back(std::move(cells));
    }
    void figure(const char* key) {
        const assess::Figure& f = *assess::find_figure(key);
        row(std::string(f.name), text(f, q_.session.today(), q_.session.today_result()),
            text(f, q_.session.remedy(), q_.session.remedy_result()));
    }
    void into(Writer& out) {
        Block::Row head{"", "Today"};
        if (two_) head.push_back("Then");
        out.table("", std::move(head), std::move(rows_));
    }

  private:
    const ReportQuestion& q_;
    bool two_;
    std::vector<Block::Row> rows_;

    std::string text(const assess::Figure& f, const opening::Case& c, const Assessment& a) const {
        return figure_text(f, f.read(c, a), q_.units, trade_of(q_.session.house()));
    }
};

/// Changes no other fields than the ready-made one: what is said of that holds for it.
bool is_ready_made(const opening::Remedy& remedy, const opening::Case& today) {
    const opening::Remedy ready = opening::make_remedy(remedy.key, today);
    for (const opening::Change& one : remedy.changes) {
        const bool known =
            std::any_of(ready.changes.begin(), ready.changes.end(),
                        [&one](const opening::Change& c) { return c.field == one.field; });
        if (!known) return false;
    }
    return true;
}

void remedy(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const opening::Remedy* chosen = house::chosen_remedy(s.record());
    if (!chosen) return out.sentence("No remedy is chosen for this opening.");
    out.heading(3, "The remedy: " + chosen->name);
    const opening::Case today = s.today(), then = s.remedy();
    for (const opening::ReadyRemedy& ready : opening::ready_remedies()) {
        if (ready.key != chosen->key || !is_ready_made(*chosen, today)) continue;
        out.sentence(in_units(ready.what, q.units));
        out.sentence(in_units(ready.cannot, q.units));
    }
    std::string words;
    for (const opening::Change& change : chosen->changes) {
        const opening::Field& f = *change.field;
        const std::string from = value_text(f, f.get(today), q.units),
                          to = value_text(f, f.get(then), q.units);
        if (from == to) continue; // it was so before
        words += fill(words.empty() ? "It changes {0}: {1} → {2}" : "; {0}: {1} → {2}",
                      {f.label, from, to});
    }
    if (!words.empty()) out.sentence(words + ".");
}

void money(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const auto chosen = s.priced_remedy();
    if (!chosen) return;
    const Assessment &a = s.today_result(), &b = s.remedy_result();
    const Trade trade = trade_of(s.house());
    out.heading(3, "Price and saving");
    const house::Money m = house::money(report_money_input(s));
    out.sentence(fill("{0} The heat of a year goes from {1} to {2}, its fuel from {3} to {4}.",
                      {work_words(*chosen, s.house().hour, trade), heat_number(a.year_kwh, trade),
                       format_energy(b.year_kwh, trade), format_money(a.year_cost, trade),
                       format_money(b.year_cost, trade)}));
    if (const std::string cost = warmer_cost(s, *chosen); !cost.empty())
        out.sentence(warmer_words(cost, q.units) + " The saving counts it.");
    if (a.year_kwh > 1) out.sentence(share_words(a, b, q.units));
    out.sentence(reasons_words(m, a, b));
    out.sentence(fill(
        "Payback without interest: {0}; with 4\u2009% interest: {1}. CO₂ kept out a year: {2}. "
        "{3} The base is this opening as it is today.",
        {between_years(m.payback_years), between_years(m.discounted_payback_years),
         between_mass(m.kg_co2_per_year, q.units),
         range_words("weather, leaks, prices and glass")}));
}

/// Where the draft comes from, by computation and, where there were tests, by both.
void draft(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const physics::SeatResult &a = s.today_result().seat, &b = s.remedy_result().seat;
    out.heading(3, "Draft at the ankles, and air");
    Pairs pairs(q);
    for (const Cause cause : causes)
        pairs.row(assess::capitalised(cause_word(cause)), format_percent(share_of(a.share, cause)),
                  format_percent(share_of(b.share, cause)));
    for (const char* key : {"ankle_speed", "ankle_air", "sash_flow", "shim_flow", "pressure"})
        pairs.figure(key);
    pairs.into(out);
    auto answers = s.record().answers;
    for (const assess::TestAnswer& read : assess::answers_of(q.before.parts()))
        answers.push_back(read);
    if (answers.empty()) return;
    const assess::FindOut f = assess::find_out(a.share, answers);
    std::vector<Block::Row> rows;
    for (const Cause cause : causes)
        rows.push_back({assess::capitalised(cause_word(cause)),
                        format_percent(share_of(f.share, cause)),
                        fill("{0} to {1}", {format_percent(share_of(f.low, cause)),
                                            format_percent(share_of(f.high, cause))})});
    out.table("Today by computation and tests on site", {"", "Share", "Range"}, std::move(rows));
}

const assess::PartSurface* part_of(const Assessment& a, opening::Part part) {
    for (const assess::PartSurface& p : a.parts)
        if (p.part == part) return &p;
    return nullptr;
}

/// The coldest of all cuts, with the cut where it is.
std::string coldest(const assess::PartSurface& p, Units units) {
    const bool alike = p.part == opening::Part::glass_centre || p.part == opening::Part::storm;
    return format_temperature(p.surface_c, units) +
           (alike ? std::string() : ", " + std::string(assess::cut_word(p.position)));
}

std::string wet_above(const assess::PartSurface& p) {
    return (p.max_rh >= 1 ? std::string("never") : format_percent(p.max_rh)) +
           (p.frost ? ", frost now"
            : p.wet ? ", wet now"
                    : "");
}

void surfaces(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const bool two = s.has_remedy();
    out.heading(3, "Inside surfaces, and the humidity that wets them");
    std::vector<Block::Row> rows;
    for (const assess::PartSurface& p : s.today_result().parts) {
        std::string_view place = assess::place_of(p.part);
        if (place.substr(0, 4) == "the ") place.remove_prefix(4);
        Block::Row cells{assess::capitalised(std::string(place)), coldest(p, q.units),
                         wet_above(p)};
        const assess::PartSurface* then = part_of(s.remedy_result(), p.part);
        if (two) cells.push_back(then ? coldest(*then, q.units) : "–");
        if (two) cells.push_back(then ? wet_above(*then) : "–");
        rows.push_back(std::move(cells));
    }
    Block::Row head{"Coldest place", "Today", "wet above"};
    if (two) head.insert(head.end(), {"Then", "wet above"});
    out.table("", std::move(head), std::move(rows));
    out.sentence(
        "Each is the coldest of all cuts, which is named; the picture shows one cut. Glass: "
        "its coldest spot away from the edge, not its center.",
        "small");
}

/// The unit stands above, so that the columns stay narrow.
void factors(Writer& out, const ReportQuestion& q) {
    out.heading(3, fill("U-factors at this weather, {0}", {u_unit(q.units)}));
    const Assessment &a = q.session.today_result(), &b = q.session.remedy_result();
    const std::pair<const char*, double Assessment::*> rows[] = {
        {"Center of glass", &Assessment::u_centre_w_m2k},
        {"Whole window", &Assessment::u_window_w_m2k},
        {"Installed, with shim space and leak", &Assessment::u_installed_w_m2k}};
    Pairs pairs(q);
    for (const auto& row : rows)
        pairs.row(row.first, format_u(a.*row.second, q.units), format_u(b.*row.second, q.units));
    for (const char* key : {"shgc", "light", "heat", "year_air"})
        pairs.figure(key);
    pairs.into(out);
}

void order(Writer& out, const ReportQuestion& q) {
    const house::House& house = q.session.house();
    const house::Sheet sheet = house::sheet(house, q.session.record());
    const house::Order& o = sheet.order;
    const auto size = [&](double house::OrderSize::*which) {
        return fill("{0} × {1}",
                    {tape_text(o.wide.*which, q.units), tape_text(o.high.*which, q.units)});
    };
    out.heading(3, "Order, width × height, and material");
    std::string caption;
    if (o.deducts == house::Deducts::not_asked)
        caption = "Ask who takes the clearance off: both doing so is the classic error.";
    if (!o.measured)
        caption = "Not all measures were taken: good for an estimate, not for an order.";
    std::vector<Block::Row> rows;
    if (o.method != house::Method::none) {
        rows = {{"What is ordered", std::string(house::method_row(o.method).name)},
                {"Estimating size, largest", size(&house::OrderSize::estimating_m)},
                {"Opening size, smallest", size(&house::OrderSize::opening_m)}};
        if (o.deducts == house::Deducts::sheet)
            rows.push_back({"Order this unit size", size(&house::OrderSize::unit_m)});
        if (o.deducts == house::Deducts::maker)
            rows.push_back({"Tell the maker", size(&house::OrderSize::opening_m)});
    }
    const ShownCosts costs = shown_costs(house, sheet.materials, sheet.cost.rest, sheet.labour);
    for (std::size_t i = 0; i < sheet.materials.size(); ++i)
        rows.push_back({material_name(sheet.materials[i], q.units),
                        material_words(house, sheet.materials[i], costs.lines[i], false)});
    if (rows.empty()) return;
    const Trade trade = trade_of(house);
    rows.push_back({rest_of_material, format_money(costs.rest, trade)});
    rows.push_back({"Material, an estimate", format_money(costs.material(), trade)});
    out.table(o.method == house::Method::none ? "" : std::move(caption), {}, std::move(rows),
              "plain");
}

const char* said(assess::Compared c) {
    return c == assess::Compared::colder   ? "colder than computed"
           : c == assess::Compared::warmer ? "warmer than computed"
                                           : "as computed";
}

void readings(Writer& out, const ReportQuestion& q) {
    if (!q.before.site().any() && !q.after.site().any()) return;
    out.heading(3, "Readings, corrected, beside what is computed");
    std::vector<Block::Row> rows;
    for (const assess::SiteVisit* visit : {&q.before, &q.after})
        for (const assess::ComparedPart& p : visit->parts())
            rows.push_back({fill("{0} the work: {1}", {visit == &q.before ? "Before" : "After",
                                                       assess::place_of(p.part)}),
                            fill("{0} ± {1}", {format_temperature(p.surface_c, q.units),
                                               format_kelvin(p.range_k, q.units)}),
                            format_temperature(p.computed_c, q.units), said(p.compared)});
    out.table("", {"", "Read", "Computed", ""}, std::move(rows));
    assess::LeftUndone undone;
    undone.ask(q.session.today(), q.session.remedy(), q.after.site());
    while (!undone.step()) {
    }
    out.sentence(assess::prove(q.before, q.after, undone, q.session.today_result().parts,
                               q.session.today(), q.session.remedy(), q.units == Units::us)
                     .sentence);
}

/// All that was entered, as today is.
void assumed(Writer& out, const ReportQuestion& q) {
    out.heading(3, "What it is reckoned with");
    const opening::Case c = q.session.today();
    const Trade trade = trade_of(q.session.house());
    for (const LeverGroup& group : lever_groups(c)) {
        std::string words = std::string(group.title) + ":";
        for (const opening::Field* f : group.fields)
            words += fill(f == group.fields.front() ? " {0} {1}" : "; {0} {1}",
                          {f->label, value_text(*f, f->get(c), q.units, trade)});
        out.sentence(words + ".", "small");
    }
}

void sure(Writer& out, const ReportQuestion& q) {
    const Session& s = q.session;
    const Assessment& a = s.today_result();
    out.heading(3, "How sure this is");
    const assess::EstimateRanges ranges = assess::estimate_ranges(s.today(), a);
    std::vector<Block::Row> rows;
    for (const assess::EstimateRange& one : ranges.inputs)
        rows.push_back({in_units(one.sentence, q.units)});
    Warnings warnings = a.warnings;
    Warnings of_remedy; // what is not said of today
    for (const std::string_view w : s.has_remedy() ? s.remedy_result().warnings : Warnings{})
        if (std::find(warnings.begin(), warnings.end(), w) == warnings.end())
            of_remedy.push_back(w);
    for (const std::string_view w : warnings)
        rows.push_back({told_warning(w, s.today(), a, q.units)});
    for (const std::string_view w : of_remedy)
        rows.push_back(
            {"With the remedy: " + told_warning(w, s.remedy(), s.remedy_result(), q.units)});
    rows.push_back({in_units("Temperatures within a cut are solved to 0.1 K; an old frame may "
                             "differ from the drawn one by 1 to 2 K.",
                             q.units)});
    out.list(std::move(rows));
}

void care(Writer& out, const ReportQuestion& q) {
    out.heading(3, "Take care");
    const house::OpeningRecord& record = q.session.record();
    std::vector<Block::Row> rows;
    const opening::Remedy* chosen = house::chosen_remedy(record);
    for (const opening::ReadyRemedy& ready : opening::ready_remedies())
        if (chosen && ready.key == chosen->key && !ready.caution.empty())
            rows.push_back({in_units(ready.caution, q.units), "common practice"});
    for (const house::Caution& one : house::cautions(q.session.house(), record))
        rows.push_back({one.words.substr(0, one.words.size() - house::whose_word.size()) +
                            std::string(house::check_word),
                        house::rule_in_print(*one.row)});
    out.sentence("None of this is a ruling: licensed practice decides.", "warning");
    out.list(std::move(rows), "care");
}

} // namespace

void write_particulars(Writer& out, const ReportQuestion& q) {
    out.page("back");
    out.heading(2, name_of(q.session.record()) + ": particulars");
    remedy(out, q);
    money(out, q);
    draft(out, q);
    surfaces(out, q);
    factors(out, q);
    order(out, q);
    readings(out, q);
    assumed(out, q);
    sure(out, q);
    care(out, q);
    out.signatures();
}

} // namespace shimlight::view
