// SPDX-License-Identifier: MIT
#include "view/sheet.hpp"

#include "house/cautions.hpp"
#include "view/entry.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using house::Entry;

constexpr float answer_px = 52; ///< width of "yes" and of "no"

void set_fact(Session& session, Entry which, bool on, double value) {
    house::House next = session.house();
    house::Entries& site = next.openings[static_cast<std::size_t>(next.selected)].site;
    if (on)
        site.clear(which);
    else
        site.set(which, value);
    session.edit(std::move(next));
}

/// A question with yes and no; neither pressed: not known. Pressed again an answer is taken back.
void fact(Ui& ui, Session& session, Column& column, Entry which) {
    const house::EntryRow& row = house::entry_rows()[static_cast<std::size_t>(which)];
    const bool known = session.record().site.has(which);
    const bool is = session.record().site.of(which, 0) > 0.5;
    const Box line = column.take(touch_px, 4);
    const float words_px = line.w - 2 * answer_px - 14;
    ImFont* font = ui.platform.fonts.small;
    const float high = paragraph(ui, font, {}, words_px, ui.theme.ink, row.label, false);
    paragraph(ui, font, {line.x, line.y + (line.h - high) / 2}, words_px, ui.theme.ink, row.label);
    for (int yes = 1; yes >= 0; --yes) {
        ButtonStyle style;
        style.role = Role::toggle;
        style.compact = true;
        style.on = known && is == (yes == 1);
        style.spoken = std::string(row.label) + (yes ? " Yes" : " No");
        const float x = line.right() - answer_px - static_cast<float>(yes) * (answer_px + 6);
        const std::string id = "site." + std::string(row.key) + (yes ? ".yes" : ".no");
        if (button(ui, id, {x, line.y, answer_px, line.h}, yes ? "Yes" : "No", style))
            set_fact(session, which, style.on, yes);
    }
}

std::string count_of(const house::TapeSize& t) {
    constexpr const char* words[] = {"none of three", "one of three", "two of three", "all three"};
    return words[t.count];
}

} // namespace

std::string tape_text(double m, Units units) {
    return format(Quantity::long_m, m, units);
}

void sheet_tape(Ui& ui, Session& session, Column& column, const house::Order& order) {
    column.heading("sheet.tape", "Measures as taken");
    column.sentence("sheet.how", "How to measure",
                    std::string(house::method_row(order.method).measured) +
                        " Width first; three places each, to the nearest 1/16 in (1 mm); both "
                        "diagonals; a level on the sill.",
                    ui.theme.soft);
    const int last = static_cast<int>(order.method == house::Method::insert ? Entry::pocket_depth_m
                                                                            : Entry::sill_rise_m);
    for (int e = static_cast<int>(Entry::width_top_m); e <= last; ++e)
        entry(ui, session, static_cast<Entry>(e), column.take(entry_height_px, 0));
    column.space(6);
    if (order.width.count + order.height.count > 0 && !order.measured)
        column.sentence("sheet.missing", "Still missing",
                        "Measured: width " + count_of(order.width) + ", height " +
                            count_of(order.height) + ".",
                        ui.theme.worse);
    const auto away = [&](double m) { return tape_text(m, ui.units); };
    const auto bow = [&](const char* id, const house::TapeSize& t, const char* which) {
        const double off_m = std::fabs(t.bow_m);
        if (off_m > house::straight_m + 1e-9)
            column.sentence(id, "Bowed",
                            std::string(which) + (t.bow_m < 0 ? " inwards by " : " outwards by ") +
                                away(off_m) + " in the middle.",
                            ui.theme.worse);
    };
    bow("sheet.bow.width", order.width, "The jambs bow");
    bow("sheet.bow.height", order.height, "Head and sill bow");
    if (order.width.uneven || order.height.uneven)
        column.sentence("sheet.uneven", "Uneven",
                        "Three measures differ by more than 1/8 in (3 mm): measure again.",
                        ui.theme.worse);
    if (order.elsewhere)
        column.sentence("sheet.elsewhere", "Far from the drawing",
                        "The tape is more than 1 in (25 mm) from what the levers say: measured "
                        "somewhere else, or levers not set yet.",
                        ui.theme.worse);
}

void sheet_cautions(Ui& ui, Session& session, Column& column) {
    column.heading("sheet.safety", "Take care");
    column.sentence("sheet.facts", "What this place is like",
                    "What is not known keeps its caution.", ui.theme.soft);
    for (const Entry e : {Entry::bedroom, Entry::near_door, Entry::near_bath, Entry::near_stairs,
                          Entry::near_wires})
        fact(ui, session, column, e);
    for (const Entry e : {Entry::ground_m, Entry::year_built})
        entry(ui, session, e, column.take(entry_height_px, 0));
    column.space(8);
    const auto all = house::cautions(session.house(), session.record());
    for (const house::Caution& c : all) {
        const std::string id = "sheet.care." + std::string(c.row->key);
        const std::string name = std::string(c.row->name) + (c.unknown ? " (not known yet)" : "");
        column.heading(id + ".name", name, 3);
        column.sentence(id, "Caution", c.words, ui.theme.ink);
        column.sentence(id + ".rule", "Rule", house::rule_in_print(*c.row) + ".", ui.theme.soft);
        column.space(4);
    }
    if (all.empty())
        column.sentence("sheet.care.none", "Caution",
                        "None of the cautions known here applies. " +
                            std::string("Check your local code; licensed practice decides."),
                        ui.theme.soft);
}

void SheetPage::draw(Ui& ui, Session& session, Box box) {
    ui.group = "sheet";
    const house::Sheet s = house::sheet(session.house(), session.record());
    fill(ui, box, ui.theme.paper);
    const Columns columns(box);
    const float top = scroll_.begin(ui, box, content_px_) + 12;
    Column left(ui, columns.first(top));
    sheet_tape(ui, session, left, s.order);
    left.space(8);
    if (columns.two) sheet_cautions(ui, session, left);
    Column right(ui, columns.two ? columns.second(top) : columns.first(left.y));
    sheet_order(ui, session, right, s.order);
    sheet_glass(ui, session, right, s);
    sheet_work(ui, session, right, s);
    sheet_house(ui, session, right);
    if (!columns.two) sheet_cautions(ui, session, right);
    content_px_ = std::max(left.y, right.y) - top + 24;
    scroll_.end(ui);
}

} // namespace shimlight::view
