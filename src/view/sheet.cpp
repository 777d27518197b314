// SPDX-License-Identifier: MIT
#include "view/sheet.hpp"

#include "view/entry.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

using house::Deducts;
using house::Entry;

std::string length(double m, Units units) {
    return format(Quantity::long_m, m, units);
}

std::string way(double m, Units units) {
    return format(Quantity::height_m, m, units);
}

std::string both(const house::OrderSize& w, const house::OrderSize& h,
                 double house::OrderSize::*which, Units units) {
    return length(w.*which, units) + " × " + length(h.*which, units);
}

void set_deducts(Session& session, double maker) {
    house::House next = session.house();
    next.openings[static_cast<std::size_t>(next.selected)].site.set(Entry::maker_deducts, maker);
    session.edit(std::move(next));
}

std::string number(double v) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%g", v);
    return buffer;
}

void set_hour(Session& session, const std::string& typed) {
    const auto price = parse(Quantity::number, typed, Units::si);
    if (!price || *price < 0 || *price > house::max_hour) return;
    house::House next = session.house();
    next.hour = *price;
    session.edit(std::move(next));
}

std::string plural(int count, const char* what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

} // namespace

void SheetPage::tape(Ui& ui, Session& session, Column& column, const house::Sheet& s) const {
    column.heading("sheet.tape", "Measures as taken");
    column.sentence("sheet.how", "How to measure",
                    "Frame to frame, not to the trim; width first. Three places each, to the "
                    "nearest 1/8 in (3 mm); both diagonals.",
                    ui.theme.soft);
    for (int e = static_cast<int>(Entry::width_top_m);
         e <= static_cast<int>(Entry::diagonal_falling_m); ++e)
        entry(ui, session, static_cast<Entry>(e), column.take(entry_height_px, 0));
    column.space(6);
    if (s.width.uneven || s.height.uneven)
        column.sentence("sheet.uneven", "Uneven",
                        "The three measures differ by more than 1/8 in (3 mm): measure again; if "
                        "they still do, the opening is bowed or tapered.",
                        ui.theme.worse);
    if (!s.square) return;
    column.sentence("sheet.square", "Square",
                    "The diagonals differ by " + length(s.square->difference_m, ui.units) +
                        ": a side leans about " + length(s.square->lean_m, ui.units) +
                        (s.square->racked ? ". That is more than 1/4 in (6 mm): give up that much "
                                            "width, or true the opening."
                                          : ". That is square enough."),
                    s.square->racked ? ui.theme.worse : ui.theme.ink);
}

void SheetPage::order(Ui& ui, Session& session, Column& column, const house::Sheet& s) const {
    column.heading("sheet.order", "Order, width × height");
    if (!s.measured)
        column.sentence("sheet.estimate", "Estimate only",
                        "Not all measures are there: good for an estimate, not for an order.",
                        ui.theme.worse);
    column.row("sheet.estimating", "Estimating size, largest",
               both(s.order_width, s.order_height, &house::OrderSize::estimating_m, ui.units),
               ui.theme.ink, {"sheet.size"});
    column.row("sheet.opening", "Opening size, smallest",
               both(s.order_width, s.order_height, &house::OrderSize::opening_m, ui.units),
               ui.theme.ink, {"sheet.size"});
    column.space(4);
    column.sentence("sheet.who", "Who deducts",
                    "Who takes the clearance off? Both doing so is the classic error.",
                    ui.theme.ink);
    const Box line = column.take(touch_px);
    ButtonStyle style;
    style.role = Role::toggle;
    style.compact = true;
    style.on = s.deducts == Deducts::sheet;
    const float half = (line.w - 8) / 2;
    if (button(ui, "sheet.deducts.sheet", {line.x, line.y, half, line.h}, "We do", style))
        set_deducts(session, 0);
    style.on = s.deducts == Deducts::maker;
    if (button(ui, "sheet.deducts.maker", {line.x + half + 8, line.y, half, line.h}, "The maker",
               style))
        set_deducts(session, 1);
    if (s.deducts == Deducts::sheet)
        for (const Entry e : {Entry::deduct_width_m, Entry::deduct_height_m})
            entry(ui, session, e, column.take(entry_height_px, 0), house::usual_deduction_m);
    if (s.deducts == Deducts::not_asked) return;
    const bool ours = s.deducts == Deducts::sheet;
    column.row("sheet.unit", ours ? "Order this unit size" : "Tell the maker this opening size",
               both(s.order_width, s.order_height,
                    ours ? &house::OrderSize::unit_m : &house::OrderSize::opening_m, ui.units),
               ui.theme.lever, {"sheet.unit"});
    column.space(8);
}

void SheetPage::work(Ui& ui, Session& session, Column& column, const house::Sheet& s) const {
    column.heading("sheet.work", "Work: " + session.remedy_name());
    const std::string& currency = session.house().currency;
    const house::Materials& m = s.materials;
    column.row("sheet.glass", "Glass that shows, today", format_area(s.glass_today_m2, ui.units),
               ui.theme.ink, {"sheet.glass"});
    if (session.has_remedy() && s.glass_today_m2 > 0) {
        const double change = s.glass_remedy_m2 / s.glass_today_m2 - 1;
        column.row("sheet.glass_remedy", "With the remedy",
                   format_area(s.glass_remedy_m2, ui.units) + " (" + format_percent(change) + ")",
                   change < -0.005 ? ui.theme.worse : ui.theme.ink);
    }
    column.row("sheet.joint", "Joint around the frame", way(m.joint_m, ui.units), ui.theme.ink,
               {"sheet.joint"});
    column.row("sheet.foam", "Foam, if the joint is foamed", plural(m.foam_cans, "can"),
               ui.theme.ink, {"sheet.foam"});
    char rod[48];
    std::snprintf(rod, sizeof rod, ", %.0f mm (%s)", m.rod_mm,
                  format(Quantity::thin_m, m.rod_mm / 1000, Units::us).c_str());
    column.row("sheet.rod", "Backer rod, if it is sealed", way(m.rod_m, ui.units) + rod,
               ui.theme.ink, {"sheet.rod"});
    column.row("sheet.sealant", "Sealant, inside and out", plural(m.cartridges, "cartridge"),
               ui.theme.ink, {"sheet.sealant"});
    column.row("sheet.casing", "New casing, if it is replaced", way(m.casing_m, ui.units),
               ui.theme.ink, {"sheet.casing"});
    column.row("sheet.shims", "Shims, for a new unit", plural(m.shim_pairs, "pair"), ui.theme.ink,
               {"sheet.shims"});
    column.space(6);
    const auto hour =
        typed_field(ui, "house.hour", column.take(entry_height_px, 0),
                    {"Price of an hour of work", number(session.house().hour), currency, ""});
    if (hour) set_hour(session, *hour);
    char labour[64];
    std::snprintf(labour, sizeof labour, "Labour, %.1f hours", s.hours);
    column.row("sheet.labour", labour, format_money(s.labour, currency), ui.theme.ink,
               {"sheet.work"});
    column.row("sheet.material", "Material", format_money(s.material_cost, currency), ui.theme.ink,
               {"sheet.work"});
    column.row("sheet.total", "Together, an estimate", format_money(s.total(), currency),
               ui.theme.lever, {"sheet.work"});
    column.space(8);
    if (button(ui, "sheet.csv", column.take(touch_px), "All openings as a table (CSV)")) {
        ui.wishes.save_name = session.house().name + ".csv";
        ui.wishes.save_content = house::sheet_csv(session.house());
    }
    column.space(8);
}

void SheetPage::safety(Ui& ui, Session& session, Column& column) const {
    column.heading("sheet.safety", "Take care");
    entry(ui, session, Entry::year_built, column.take(entry_height_px, 0));
    int i = 0;
    for (const house::SafetyNote& note : house::safety_notes(session.record())) {
        const std::string id = "sheet.care." + std::to_string(i++);
        column.sentence(id, "Caution", note.words, ui.theme.worse);
        column.sentence(id + ".rule", "Rule", note.rule + ".", ui.theme.soft);
    }
}

void SheetPage::draw(Ui& ui, Session& session, Box box) {
    ui.group = "sheet";
    const house::Sheet s = house::sheet(session.house(), session.record(), session.today_result(),
                                        session.remedy_result());
    fill(ui, box, ui.theme.paper);
    const Columns columns(box);
    const float top = scroll_.begin(ui, box, content_px_) + 12;
    Column left(ui, columns.first(top));
    tape(ui, session, left, s);
    left.space(8);
    if (columns.two) safety(ui, session, left);
    Column right(ui, columns.two ? columns.second(top) : columns.first(left.y));
    order(ui, session, right, s);
    work(ui, session, right, s);
    if (!columns.two) safety(ui, session, right);
    content_px_ = std::max(left.y, right.y) - top + 24;
    scroll_.end(ui);
}

} // namespace shimlight::view
