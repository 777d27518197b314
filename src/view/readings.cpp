// SPDX-License-Identifier: MIT
#include "view/readings.hpp"

#include "house/site_readings.hpp"
#include "view/entry.hpp"
#include "view/share_bar.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using assess::TestAnswer;
using house::Entry;

constexpr Entry instrument[] = {Entry::set_emissivity, Entry::reflected_c, Entry::error_k};

struct PartWords {
    opening::Part part;
    const char *name, *key;
};
constexpr PartWords part_words[] = {{opening::Part::glass_centre, "Glass", "glass"},
                                    {opening::Part::glass_edge, "Edge of the glass", "edge"},
                                    {opening::Part::frame, "Frame", "frame"},
                                    {opening::Part::casing, "Casing", "casing"}};

const PartWords& words_of(opening::Part part) {
    return *std::find_if(std::begin(part_words), std::end(part_words),
                         [part](const PartWords& w) { return w.part == part; });
}

const char* words_of(assess::Compared c) {
    return c == assess::Compared::colder   ? "colder than computed"
           : c == assess::Compared::warmer ? "warmer than computed"
                                           : "as computed";
}

/// The fields of one visit; its airs are as the levers say until they are written down.
void fields(Ui& ui, Session& session, Column& column, house::VisitEntries entries,
            const assess::SiteReadings& site) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
        std::optional<double> assumed;
        if (i == 4) assumed = site.inside_c;
        if (i == 5) assumed = site.outside_c;
        entry(ui, session, entries[i], column.take(entry_height_px, 0), assumed);
    }
}

/// How a number came about, to its card.
void tell(Ui& ui, std::string_view id, const std::string& formula) {
    if (ui.why && ui.why->asks(id)) ui.why->tell(formula);
}

std::string corrected_formula(const assess::SiteReadings& site, const assess::ComparedPart& part,
                              Units units) {
    const physics::InfraredReading r = *assess::infrared_of(site, part.part, 1);
    const auto c = [&](double celsius) { return format_temperature(celsius, units); };
    const auto plain = [&](double emissivity) {
        return format(Quantity::emissivity, emissivity, units);
    };
    return "shown " + c(r.reading_c) + ", mirrored " + c(r.reflected_c) + ", emissivity set " +
           plain(r.set_emissivity) + ", its own " + plain(r.surface_emissivity) +
           "\nsurface^4 = mirrored^4 + set ÷ own × (shown^4 − mirrored^4), from absolute zero = " +
           c(part.surface_c) + "\nbeside " + c(part.computed_c) + " computed, the same within ±" +
           format(Quantity::difference_k, assess::tolerance_of(part.range_k), units);
}

/// "−9 °F ± 4 °F": a difference with what it may be off.
std::string signed_error(double k, double error_k, Units units) {
    return format(Quantity::difference_k, k, units) + " ± " + format_kelvin(error_k, units);
}

void explanation(Ui& ui, Column& column, const std::string& id, const std::string& name,
                 const assess::SurfaceReading& r, const assess::Explanation& e) {
    const std::string at = id + ".explains." + std::string(e.assumption);
    column.sentence(at, name, e.sentence, ui.theme.ink, {"explains"});
    tell(ui, at,
         "reading − computed with it = " + format(Quantity::difference_k, e.left_k, ui.units) +
             "; it explains within ±" +
             format(Quantity::difference_k, assess::tolerance_of(r.range_k), ui.units));
}

/// What would explain a difference, or what comes nearest. A reading as computed has told all in
/// its rows.
void explained(Ui& ui, Column& column, const std::string& id, const std::string& name,
               const assess::SurfaceReading& r) {
    if (r.compared == assess::Compared::as_computed) return;
    column.sentence(id + ".differs", name + ": against the computation", r.sentence,
                    ui.theme.lever);
    const assess::Explanation* nearest = nullptr;
    for (const assess::Explanation& e : r.explanations) {
        if (e.explains) explanation(ui, column, id, name + ": would explain it", r, e);
        const double least_k = nearest ? nearest->left_k : r.difference_k;
        if (std::fabs(e.left_k) < std::fabs(least_k)) nearest = &e;
    }
    if (nearest && !r.explanations.front().explains)
        explanation(ui, column, id, name + ": comes nearest", r, *nearest);
}

} // namespace

assess::SiteReadings site_readings(const Session& session, bool after) {
    return house::site_readings(session.record().site, session.today(),
                                after ? house::Visit::after : house::Visit::before);
}

/// What to compute with; what is known of it stays.
void Readings::ask(const Session& session, Units units) {
    const bool us = units == Units::us;
    before_.ask(session.today(), site_readings(session, false), us);
    after_.ask(session.has_remedy() ? session.remedy() : session.today(),
               site_readings(session, true), us);
    undone_.ask(session.today(), session.remedy(), after_.site());
    const assess::SiteReadings& site = before_.site();
    const auto reading =
        assess::infrared_of(site, opening::Part::glass_centre, session.today().opening.height_m);
    said_.range.reset();
    if (!reading || physics::infrared_problem(*reading)) return;
    said_.range = physics::infrared_range(*reading);
    said_.likeness = physics::likenesses(*reading);
}

/// One section a frame, once what is on the other screens is solved.
void Readings::compute(Ui& ui, const Session& session) {
    const bool complete = session.today_result().complete;
    if (said_.revision != session.revision() || said_.units != ui.units) {
        ask(session, ui.units);
        said_.compared = false;
    }
    if (complete && session.remedy_result().complete) {
        if (before_.done() && after_.done())
            undone_.step();
        else
            (before_.done() ? after_ : before_).step();
        if (!before_.done() || !known()) ui.wishes.another_frame = true;
    }
    const bool compared = before_.compared() && after_.compared();
    if (said_.revision == session.revision() && said_.units == ui.units &&
        said_.complete == complete && said_.compared == compared && said_.explained == known())
        return;
    said_.explained = known();
    said_.complete = complete;
    said_.compared = compared;
    said_.revision = session.revision();
    said_.units = ui.units;
    said_.predicted = session.today_result().seat.share;
    const bool us = ui.units == Units::us;
    said_.proof = assess::prove(before_, after_, undone_, session.today_result().parts,
                                session.today(), session.remedy(), us);
    auto answers = session.record().answers;
    for (const TestAnswer& a : assess::answers_of(before_.parts()))
        answers.push_back(a);
    said_.found = assess::find_out(said_.predicted, answers, before_.site().any());
}

/// One test: its question, its answers side by side, what the answer means.
void Readings::test(Ui& ui, Session& session, Column& column, std::size_t index) {
    const assess::TestRow& row = assess::test_rows()[index];
    const auto& answers = session.record().answers;
    const auto given = std::find_if(answers.begin(), answers.end(),
                                    [index](const TestAnswer& a) { return a.test == index; });
    const int now = given == answers.end() ? -1 : static_cast<int>(given->answer);
    const std::string id = "test." + std::string(row.key);
    const bool next = said_.found.next == &row;
    column.sentence(id + ".question", next ? "Best next test" : "Test",
                    (next ? "Next: " : "") + std::string(row.question),
                    next ? ui.theme.lever : ui.theme.ink);
    if (next || now >= 0) column.sentence(id + ".caution", "Caution", row.caution, ui.theme.worse);
    const std::size_t count = row.scale == assess::Scale::two ? 2 : 3;
    const Box line = column.take(touch_px);
    const float width = (line.w - 8 * static_cast<float>(count - 1)) / static_cast<float>(count);
    ButtonStyle style;
    style.role = Role::toggle;
    style.compact = true;
    for (std::size_t i = 0; i < count; ++i) {
        std::string word(row.answers[i]);
        style.on = now == static_cast<int>(i);
        style.spoken = std::string(row.said[i]);
        word[0] = static_cast<char>(word[0] - 'a' + 'A');
        const Box place{line.x + (width + 8) * static_cast<float>(i), line.y, width, line.h};
        if (!button(ui, id + "." + std::string(row.answers[i]), place, word, style)) continue;
        house::House changed = session.house();
        auto& list = changed.openings[static_cast<std::size_t>(changed.selected)].answers;
        std::erase_if(list, [index](const TestAnswer& a) { return a.test == index; });
        if (!style.on) list.push_back({index, i}); // pressed again: taken back
        return session.edit(std::move(changed));
    }
    if (now >= 0) column.sentence(id + ".because", "Why", row.because, ui.theme.soft);
    column.space(6);
}

void Readings::find_out(Ui& ui, Session& session, Column& column) {
    column.heading("readings.find", "Find out");
    const bool any = !session.record().answers.empty() || !before_.parts().empty();
    const assess::FindOut& f = said_.found;
    share_bar(ui, "readings.share", column.take(share_bar_px),
              any ? "Draft by computation and tests" : "Draft by computation alone",
              any ? f.share : said_.predicted, any ? &f.low : nullptr, any ? &f.high : nullptr);
    for (const assess::Contradiction& c : f.contradictions)
        column.sentence("readings.contradiction", "Contradiction", c.sentence, ui.theme.worse);
    column.sentence("readings.against", "Against the computation", f.against_prediction,
                    ui.theme.lever);
    const auto seen = house::observation_rows();
    for (std::size_t i = 0; i < seen.size(); ++i)
        if (!seen[i].is_test() && house::seen(session.record(), i) == house::Seen::yes)
            column.sentence("readings.seen." + std::string(seen[i].key), "Seen on site",
                            std::string(seen[i].label) + ". " + std::string(seen[i].speaks),
                            ui.theme.ink);
    column.space(4);
    const auto all = assess::test_rows();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!all[i].instrument) test(ui, session, column, i);
}

/// The U-factor that the reading of the glass implies.
void Readings::glass(Ui& ui, Column& column) {
    if (!said_.range) return;
    const auto u = [&](double w_m2k) { return format_u(w_m2k, ui.units); };
    const assess::SiteReadings& site = before_.site();
    const auto c = [&](double celsius) { return format_temperature(celsius, ui.units); };
    column.sentence("readings.u", "U-factor that the glass reading implies",
                    "With this reading the glass passes " + u(said_.range->u_low_w_m2k) + " to " +
                        u(said_.range->u_high_w_m2k) + " " + u_unit(ui.units) +
                        ", center of glass.",
                    ui.theme.ink, {"glass_u"});
    tell(ui, "readings.u",
         "film × (room − glass) ÷ (room − outdoors)\nglass " + c(said_.range->surface_low_c) +
             " to " + c(said_.range->surface_high_c) + ", room " + c(site.inside_c) +
             ", outdoors " + c(site.outside_c));
    std::string like;
    for (const physics::Likeness& l : said_.likeness)
        if (l.within_range) like += (like.empty() ? "" : ", ") + std::string(l.build);
    column.sentence("readings.like", "What it resembles",
                    like.empty() ? "No usual glass is within that range: read again."
                                 : "It resembles: " + like + ".",
                    ui.theme.ink);
}

/// Warmer than before the work by so much, were it in the same airs.
void Readings::gain(Ui& ui, Column& column, const std::string& id, opening::Part part) const {
    for (const assess::ProvedPart& p : said_.proof.parts)
        if (p.part == part && p.has_gain)
            column.row(id + ".gain", "More than before, same airs",
                       signed_error(p.gain_k, p.gain_error_k, ui.units), ui.theme.ink);
}

/// Each part that was read: beside what is computed, and what would explain a difference.
void Readings::said_of(Ui& ui, Column& column, const std::string& when,
                       const assess::SiteVisit& visit) {
    const bool is_before = &visit == &before_;
    if (!visit.compared()) {
        column.sentence(when + ".wait", "Comparing", "Computing what they should read …",
                        ui.theme.soft);
        if (is_before) glass(ui, column); // known at once
    }
    for (const assess::ComparedPart& r : visit.parts()) {
        const PartWords& words = words_of(r.part);
        const std::string id = when + "." + words.key;
        const std::string name = words.name;
        column.heading(id + ".part", name + ": " + words_of(r.compared), 3);
        column.row(id, name + ", corrected",
                   format_temperature(r.surface_c, ui.units) + " ± " +
                       format_kelvin(r.range_k, ui.units),
                   ui.theme.ink, {"reading"});
        tell(ui, id, corrected_formula(visit.site(), r, ui.units));
        column.row(id + ".computed", name + ", computed",
                   format_temperature(r.computed_c, ui.units), ui.theme.ink);
        column.row(
            id + ".difference", "Read less computed",
            signed_error(r.surface_c - r.computed_c, assess::tolerance_of(r.range_k), ui.units),
            ui.theme.ink);
        if (!is_before) gain(ui, column, id, r.part);
        column.space(4);
        const bool centre = r.part == opening::Part::glass_centre;
        if (centre && is_before) glass(ui, column);
        const assess::SurfaceReading* why = !centre         ? visit.explained(r.part)
                                            : visit.glass() ? &*visit.glass()
                                                            : nullptr;
        // The row's is the coldest place of the sections: at the edge of what counts as different
        // the two may part.
        if (why && why->compared == r.compared)
            explained(ui, column, id, name, *why);
        else if (!why && !centre && !visit.done())
            column.sentence(id + ".wait", name + ": looking for causes",
                            "Looking for what would explain it …", ui.theme.soft);
        column.space(10);
    }
}

void Readings::before(Ui& ui, Session& session, Column& column) {
    column.heading("readings.before", "Read before the work");
    column.sentence("readings.how", "How to read",
                    "Infrared, straight on, away from sun and lamps; bare metal only with tape on "
                    "it. Coated glass on the room side fools the instrument. Enter the emissivity "
                    "it is set to, often 0.95.",
                    ui.theme.soft);
    fields(ui, session, column, house::entries_of(house::Visit::before), before_.site());
    for (const Entry e : instrument)
        entry(ui, session, e, column.take(entry_height_px, 0),
              e == Entry::set_emissivity ? before_.site().set_emissivity
              : e == Entry::error_k      ? before_.site().error_k
                                         : before_.site().reflected_c);
    column.space(8);
    said_of(ui, column, "readings.before", before_);
    column.space(10);
}

/// The plain answer, before the numbers it comes from.
void Readings::proof(Ui& ui, Column& column) {
    const assess::Proof& p = said_.proof;
    if (p.sentence.empty()) return;
    constexpr float pad_px = 12;
    ImFont* font = ui.platform.fonts.strong;
    const float w = column.width() - 2 * pad_px;
    const Box box = column.take(paragraph(ui, font, {}, w, 0, p.sentence, false) + 2 * pad_px);
    const bool worked = p.standing == assess::Standing::worked;
    const bool nothing = p.standing == assess::Standing::too_small;
    fill(ui, box, ui.theme.quote, radius_px);
    fill(ui, {box.x, box.y, 4, box.h},
         worked    ? ui.theme.better
         : nothing ? ui.theme.soft
                   : ui.theme.worse,
         2);
    paragraph(ui, font, {box.x + pad_px, box.y + pad_px}, w, ui.theme.ink, p.sentence);
    note(ui, Role::status, "readings.proof", box, "Did it work", p.sentence);
}

void Readings::after(Ui& ui, Session& session, Column& column) {
    column.heading("readings.after", "Read after the work");
    column.sentence("readings.against_what", "Compared with",
                    session.has_remedy()
                        ? "Beside what is computed for: " + session.remedy_name() + "."
                        : "Beside today, since no remedy is chosen.",
                    ui.theme.soft);
    fields(ui, session, column, house::entries_of(house::Visit::after), after_.site());
    column.space(8);
    proof(ui, column);
    said_of(ui, column, "readings.after", after_);
}

void Readings::draw(Ui& ui, Session& session, Box box) {
    ui.group = "readings";
    compute(ui, session);
    fill(ui, box, ui.theme.paper);
    const Columns columns(box);
    const float top = scroll_.begin(ui, box, content_px_) + 12;
    Column left(ui, columns.first(top)), right(ui, columns.first(top));
    find_out(ui, session, left);
    if (columns.two)
        right = Column(ui, columns.second(top));
    else
        right = Column(ui, columns.first(left.y + 16));
    before(ui, session, right);
    after(ui, session, right);
    content_px_ = std::max(left.y, right.y) - top + 24;
    scroll_.end(ui);
}

} // namespace shimlight::view
