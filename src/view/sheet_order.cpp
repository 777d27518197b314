// SPDX-License-Identifier: MIT
// What is ordered, and what of glass and way out it costs.
#include "view/entry.hpp"
#include "view/sheet.hpp"

#include <cmath>

namespace shimlight::view {
namespace {

using house::Deducts;
using house::Entry;
using house::Method;
using house::OrderSize;

std::string both(const house::Order& o, double OrderSize::*which, Units units) {
    return tape_text(o.wide.*which, units) + " × " + tape_text(o.high.*which, units);
}

std::string size_text(double width_m, double height_m, Units units) {
    return tape_text(width_m, units) + " × " + tape_text(height_m, units);
}

void set_deducts(Session& session, double maker) {
    house::House next = session.house();
    next.openings[static_cast<std::size_t>(next.selected)].site.set(Entry::maker_deducts, maker);
    session.edit(std::move(next));
}

void square(Ui& ui, Column& column, const house::Order& o) {
    if (!o.square) return;
    const house::Square& q = *o.square;
    const auto away = [&](double m) { return tape_text(m, ui.units); };
    std::string words = "Diagonals differ by " + away(q.difference_m) + ": ";
    words += q.level_known
                 ? "sides lean " + away(q.lean_m) + ", head and sill drop " + away(q.drop_m) + "."
                 : "sides lean " + away(q.lean_m) + ", or head and sill drop " + away(q.drop_m) +
                       "; a level tells which.";
    words += q.racked   ? " That is more than 1/4 in (6 mm): racked."
             : q.counts ? " That is more than 1/8 in (3 mm): order by what fits."
                        : " That is square enough.";
    column.sentence("sheet.square", "Square", words, q.counts ? ui.theme.worse : ui.theme.ink);
    if (q.counts)
        column.row("sheet.fits", "Largest that stands plumb in it",
                   size_text(q.fits_width_m, q.fits_height_m, ui.units), ui.theme.ink,
                   {"sheet.fits"});
    if (o.too_racked)
        column.sentence(
            "sheet.too_racked", "Too racked",
            "More than 1/2 in (13 mm) out: an insert would look crooked in it. True the "
            "frame, or take it out for a full-frame unit.",
            ui.theme.worse);
}

/// True when both sizes are told apart by who deducts.
void who_deducts(Ui& ui, Session& session, Column& column, const house::Order& o) {
    column.space(4);
    column.sentence("sheet.who", "Who deducts",
                    "Who takes the clearance off? Both doing so is the classic error.",
                    ui.theme.ink);
    const Box line = column.take(touch_px);
    ButtonStyle style;
    style.role = Role::toggle;
    style.compact = true;
    style.on = o.deducts == Deducts::sheet;
    const float half = (line.w - 8) / 2;
    if (button(ui, "sheet.deducts.sheet", {line.x, line.y, half, line.h}, "We do", style))
        set_deducts(session, 0);
    style.on = o.deducts == Deducts::maker;
    if (button(ui, "sheet.deducts.maker", {line.x + half + 8, line.y, half, line.h}, "The maker",
               style))
        set_deducts(session, 1);
}

/// What is left around the unit when it stands plumb, where the diagonals tell it.
void play(Ui& ui, Column& column, const house::Order& o) {
    if (!o.square) return;
    column.row("sheet.play", "Left around it, set plumb",
               size_text(o.square->fits_width_m - o.wide.unit_m,
                         o.square->fits_height_m - o.high.unit_m, ui.units),
               ui.theme.ink, {"sheet.play"});
}

void ordered(Ui& ui, Session& session, Column& column, const house::Order& o) {
    const house::MethodRow& row = house::method_row(o.method);
    column.space(6);
    column.sentence("sheet.clearance", "Usual clearance",
                    "Usual clearance: " + std::string(row.clearance) +
                        " Common practice; makers differ.",
                    ui.theme.soft);
    const bool film = o.method == Method::film;
    if (!film) who_deducts(ui, session, column, o);
    if (o.deducts == Deducts::sheet && !film) {
        const opening::UnitSize usual = house::usual_clearance(o.method, session.remedy().opening);
        entry(ui, session, Entry::deduct_width_m, column.take(entry_height_px, 0), usual.width_m);
        entry(ui, session, Entry::deduct_height_m, column.take(entry_height_px, 0), usual.height_m);
    }
    if (o.deducts == Deducts::not_asked && !film) return;
    const bool makers = o.deducts == Deducts::maker && !film;
    const std::string name = makers ? "Tell the maker this opening"
                             : film ? "Cut the film to"
                                    : "Order this size";
    column.row("sheet.unit", name + (o.quantity > 1 ? ", twice" : ""),
               both(o, makers ? &OrderSize::opening_m : &OrderSize::unit_m, ui.units),
               ui.theme.lever, {"sheet.unit"});
    if (!makers && !film) play(ui, column, o);
    column.space(6);
    if (o.too_small)
        column.sentence("sheet.too_small", "Too small",
                        "Smaller than units that are usually made: ask the maker first.",
                        ui.theme.worse);
    if (o.shallow)
        column.sentence("sheet.shallow", "Shallow pocket",
                        "Common inserts are 3 1/4 in (83 mm) deep: this one would stand proud.",
                        ui.theme.worse);
}

std::string of_today(double now, double then) {
    if (then <= 0) return "";
    const double change = now / then - 1;
    if (std::fabs(change) < 0.005) return " (as today's)";
    return " (today's " + std::string(change > 0 ? "+" : "") + format_percent(change) + ")";
}

} // namespace

void sheet_order(Ui& ui, Session& session, Column& column, const house::Order& o) {
    column.heading("sheet.order", o.method == Method::none
                                      ? std::string("Sizes; nothing is ordered")
                                      : "Order: " + std::string(house::method_row(o.method).name));
    square(ui, column, o);
    if (!o.measured)
        column.sentence("sheet.estimate", "Estimate only",
                        "Not all measures are there, levers stand in: good for an estimate, not "
                        "for an order.",
                        ui.theme.worse);
    column.row("sheet.estimating", "Estimating size, largest",
               both(o, &OrderSize::estimating_m, ui.units), ui.theme.ink, {"sheet.size"});
    column.row("sheet.united", "Width and height together",
               tape_text(o.wide.estimating_m + o.high.estimating_m, ui.units), ui.theme.ink,
               {"sheet.united"});
    column.row("sheet.opening", "Opening size, smallest", both(o, &OrderSize::opening_m, ui.units),
               ui.theme.ink, {"sheet.size"});
    if (o.method != Method::none) ordered(ui, session, column, o);
    column.space(14);
}

void sheet_glass(Ui& ui, const Session& session, Column& column, const house::Sheet& s) {
    column.heading("sheet.light", "Glass and way out");
    const opening::Daylight &a = s.today, &b = s.remedy;
    column.row("sheet.glass", "Glass that shows, today", format_area(a.glass_m2, ui.units),
               ui.theme.ink, {"sheet.glass"});
    const bool other = session.has_remedy() && std::fabs(a.glass_m2 - b.glass_m2) > 1e-6;
    if (other)
        column.row("sheet.glass_remedy", "With the remedy",
                   format_area(b.glass_m2, ui.units) + of_today(b.glass_m2, a.glass_m2),
                   b.glass_m2 < a.glass_m2 ? ui.theme.worse : ui.theme.ink,
                   {"sheet.glass", Shown::remedy});
    column.row("sheet.clear", "Clear, lower sash up",
               size_text(a.clear_width_m, a.clear_height_m, ui.units), ui.theme.ink,
               {"sheet.clear"});
    if (!other) return column.space(14);
    column.row("sheet.clear_remedy", "With the remedy",
               size_text(b.clear_width_m, b.clear_height_m, ui.units), ui.theme.ink,
               {"sheet.clear", Shown::remedy});
    column.row("sheet.clear_area", "Its area, with the remedy",
               format_area(b.clear_m2(), ui.units) + of_today(b.clear_m2(), a.clear_m2()),
               b.clear_m2() < a.clear_m2() ? ui.theme.worse : ui.theme.ink,
               {"sheet.clear_area", Shown::remedy});
    column.space(14);
}

std::string sheet_formula(std::string_view key, const Session& session, Shown of, Units units) {
    const house::Order o = house::order(session.house(), session.record());
    const auto length = [units](double m) { return tape_text(m, units); };
    const auto less = [&](double a, double b) { return "(" + length(a) + " − " + length(b) + ")"; };
    const OrderSize &w = o.wide, &h = o.high;
    if (key == "sheet.size")
        return "as taken: width " + length(w.smallest_m) + " to " + length(w.estimating_m) +
               ", height " + length(h.smallest_m) + " to " + length(h.estimating_m) +
               "\nrounded to " + length(house::order_step_m(session.house().units));
    if (key == "sheet.united") return length(w.estimating_m) + " + " + length(h.estimating_m);
    if (key == "sheet.unit" && (o.deducts == Deducts::sheet || o.method == Method::film))
        return "opening size − clearance, rounded down\n= " + less(w.opening_m, w.clearance_m) +
               " × " + less(h.opening_m, h.clearance_m);
    if (key == "sheet.unit")
        return "smallest measures, nothing taken off = " + length(w.opening_m) + " × " +
               length(h.opening_m);
    if (o.square && key == "sheet.fits")
        return "(mean width − lean) × (mean height − drop), no more than the ends, less a bow\n"
               "lean " +
               length(o.square->lean_m) + ", drop " + length(o.square->drop_m);
    if (o.square && key == "sheet.play")
        return "what fits plumb − unit = " + less(o.square->fits_width_m, w.unit_m) + " × " +
               less(o.square->fits_height_m, h.unit_m);
    const opening::Case c = session.shown_case(of);
    const opening::Daylight d = opening::daylight(c);
    const opening::UnitSize unit = opening::unit_size(c.opening);
    if (key == "sheet.glass")
        return "two panes of " + size_text(d.pane_width_m, d.pane_high_m, units) +
               " in a unit of " + size_text(unit.width_m, unit.height_m, units);
    if (key == "sheet.clear")
        return "unit " + size_text(unit.width_m, unit.height_m, units) +
               " − frame and the raised sash = " +
               size_text(d.clear_width_m, d.clear_height_m, units);
    if (key == "sheet.clear_area")
        return "width × height = " + size_text(d.clear_width_m, d.clear_height_m, units);
    return {};
}

} // namespace shimlight::view
