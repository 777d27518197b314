// SPDX-License-Identifier: MIT
#include "view/readings.hpp"

#include "view/entry.hpp"
#include "view/share_bar.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

using assess::TestAnswer;
using house::Entry;

constexpr Entry instrument[] = {Entry::set_emissivity, Entry::reflected_c, Entry::error_k};
constexpr Entry before_entries[] = {Entry::before_glass_c, Entry::before_frame_c,
                                    Entry::before_casing_c, Entry::before_inside_c,
                                    Entry::before_outside_c};
constexpr Entry after_entries[] = {Entry::after_glass_c, Entry::after_frame_c,
                                   Entry::after_casing_c, Entry::after_inside_c,
                                   Entry::after_outside_c};

/// Readings of one visit; what was not written down is as the levers say.
assess::SiteReadings site_of(const Session& session, std::span<const Entry, 5> entries) {
    const house::Entries& site = session.record().site;
    const opening::Case c = session.today();
    const auto maybe = [&site](Entry e) {
        return site.has(e) ? std::optional<double>(site.of(e)) : std::nullopt;
    };
    assess::SiteReadings r;
    r.glass_c = maybe(entries[0]);
    r.frame_c = maybe(entries[1]);
    r.casing_c = maybe(entries[2]);
    r.inside_c = site.of(entries[3], c.room.air_c);
    r.outside_c = site.of(entries[4], c.weather.outside_c);
    r.set_emissivity = site.of(Entry::set_emissivity, r.set_emissivity);
    r.reflected_c = site.of(Entry::reflected_c, r.inside_c);
    r.error_k = site.of(Entry::error_k, r.error_k);
    return r;
}

std::vector<assess::PartReading> compared(const opening::Case& c,
                                          const assess::SiteReadings& site) {
    if (!site.any()) return {};
    return assess::compare_site(site,
                                assess::assess(assess::at_site(c, site), section::Accuracy::draft));
}

const char* part_name(opening::Part part) {
    return part == opening::Part::glass_centre ? "Glass"
           : part == opening::Part::frame      ? "Frame"
                                               : "Casing";
}

const char* words_of(assess::Compared c) {
    return c == assess::Compared::colder   ? "colder than computed"
           : c == assess::Compared::warmer ? "warmer than computed"
                                           : "as computed";
}

/// The fields of one visit; its airs are as the levers say until they are written down.
void fields(Ui& ui, Session& session, Column& column, std::span<const Entry, 5> entries,
            const assess::SiteReadings& site) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
        std::optional<double> assumed;
        if (i == 3) assumed = site.inside_c;
        if (i == 4) assumed = site.outside_c;
        entry(ui, session, entries[i], column.take(entry_height_px, 0), assumed);
    }
}

void rows(Ui& ui, Column& column, const std::string& id,
          const std::vector<assess::PartReading>& all) {
    for (const assess::PartReading& r : all) {
        const std::string name = part_name(r.part);
        column.sentence(id + "." + name, name,
                        name + ": " + format_temperature(r.surface_c, ui.units) +
                            " corrected, computed " + format_temperature(r.computed_c, ui.units) +
                            " (±" + format(Quantity::difference_k, r.range_k, ui.units) +
                            "): " + words_of(r.compared) + ".",
                        r.compared == assess::Compared::as_computed ? ui.theme.ink : ui.theme.lever,
                        {"reading"});
    }
}

} // namespace

void Readings::compute(const Ui& ui, const Session& session) {
    const bool complete = session.today_result().complete;
    if (said_.revision == session.revision() && said_.units == ui.units &&
        said_.complete == complete)
        return;
    said_ = {};
    said_.complete = complete;
    said_.revision = session.revision();
    said_.units = ui.units;
    said_.predicted = session.today_result().seat.share;
    said_.before_site = site_of(session, before_entries);
    said_.after_site = site_of(session, after_entries);
    said_.before = compared(session.today(), said_.before_site);
    said_.after =
        compared(session.has_remedy() ? session.remedy() : session.today(), said_.after_site);
    said_.proof = assess::proof_sentence(said_.before, said_.after);
    auto answers = session.record().answers;
    for (const TestAnswer& a : assess::answers_of(said_.before))
        answers.push_back(a);
    said_.found = assess::find_out(said_.predicted, answers, said_.before_site.any());
    if (!said_.before_site.glass_c) return;
    const auto reading = assess::glass_reading(said_.before_site, session.today().opening.height_m);
    if (physics::infrared_problem(reading)) return;
    said_.range = physics::infrared_range(reading);
    said_.likeness = physics::likenesses(reading);
    said_.glass = assess::read_glass(assess::at_site(session.today(), said_.before_site), reading,
                                     ui.units == Units::us);
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
    const bool any = !session.record().answers.empty() || !said_.before.empty();
    const assess::FindOut& f = said_.found;
    share_bar(ui, "readings.share", column.take(share_bar_px),
              any ? "Draft by computation and tests" : "Draft by computation alone",
              any ? f.share : said_.predicted, any ? &f.low : nullptr, any ? &f.high : nullptr);
    for (const assess::Contradiction& c : f.contradictions)
        column.sentence("readings.contradiction", "Contradiction", c.sentence, ui.theme.worse);
    column.sentence("readings.against", "Against the computation", f.against_prediction,
                    ui.theme.lever);
    column.space(4);
    const auto all = assess::test_rows();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!all[i].instrument) test(ui, session, column, i);
}

void Readings::glass(Ui& ui, Column& column) {
    if (!said_.glass || !said_.range) return;
    column.sentence("readings.u", "U-factor that the glass reading implies",
                    "With this reading the glass passes " +
                        format_u(said_.range->u_low_w_m2k, ui.units) + " to " +
                        format_u(said_.range->u_high_w_m2k, ui.units) + " " + u_unit(ui.units) +
                        ", centre of glass.",
                    ui.theme.ink, {"glass_u"});
    std::string like;
    for (const physics::Likeness& l : said_.likeness)
        if (l.within_range) like += (like.empty() ? "" : ", ") + std::string(l.build);
    column.sentence("readings.like", "What it resembles",
                    like.empty() ? "No usual glass is within that range: read again."
                                 : "It resembles: " + like + ".",
                    ui.theme.ink);
    column.sentence("readings.differs", "Against the computation", said_.glass->sentence,
                    ui.theme.ink);
    for (const assess::Explanation& e : said_.glass->explanations)
        if (e.explains)
            column.sentence("readings.explains." + std::string(e.assumption), "Would explain it",
                            e.sentence, ui.theme.soft, {"reading"});
}

void Readings::before(Ui& ui, Session& session, Column& column) {
    column.heading("readings.before", "Read before the work");
    column.sentence("readings.how", "How to read",
                    "Infrared, straight on, away from sun and lamps; bare metal only with tape on "
                    "it. Coated glass on the room side fools the instrument.",
                    ui.theme.soft);
    fields(ui, session, column, before_entries, said_.before_site);
    for (const Entry e : instrument)
        entry(ui, session, e, column.take(entry_height_px, 0),
              e == Entry::set_emissivity ? said_.before_site.set_emissivity
              : e == Entry::error_k      ? said_.before_site.error_k
                                         : said_.before_site.reflected_c);
    column.space(8);
    rows(ui, column, "readings.before", said_.before);
    glass(ui, column);
    column.space(10);
}

void Readings::after(Ui& ui, Session& session, Column& column) {
    column.heading("readings.after", "Read after the work");
    column.sentence("readings.against_what", "Compared with",
                    session.has_remedy()
                        ? "Beside what is computed for: " + session.remedy_name() + "."
                        : "Beside today, since no remedy is chosen.",
                    ui.theme.soft);
    fields(ui, session, column, after_entries, said_.after_site);
    column.space(8);
    rows(ui, column, "readings.after", said_.after);
    column.sentence("readings.proof", "Did it work", said_.proof, ui.theme.ink);
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
