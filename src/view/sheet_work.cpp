// SPDX-License-Identifier: MIT
// What the work takes: of this opening, and of the house.
#include "view/entry.hpp"
#include "view/put.hpp"
#include "view/sheet.hpp"
#include "view/why.hpp"

#include <cmath>

namespace shimlight::view {
namespace {

using house::MaterialLine;
using house::Measure;

/// A plain number of the house that is typed.
void house_number(Ui& ui, Session& session, Column& column, const char* id, const TypedField& field,
                  double house::House::*which, double least, double most) {
    const auto typed = typed_field(ui, id, column.take(entry_height_px, 0), field);
    const auto value = typed ? parse(Quantity::number, *typed, Units::si) : std::nullopt;
    if (!value || *value < least || *value > most) return;
    house::House next = session.house();
    next.*which = *value;
    session.edit(std::move(next));
}

/// To be bought by length: rounded up, never short.
std::string length_up(double m, Units units) {
    return units == Units::us ? put("%.0f ft", std::ceil(m / 0.3048 - 1e-9))
                              : put("%.1f m", std::ceil(m * 10 - 1e-9) / 10);
}

std::string volume(double litres, Units units) {
    return units == Units::us ? put("%.1f ft³", litres / 28.316847) : put("%.0f l", litres);
}

std::string plural(int count, std::string_view what) {
    return std::to_string(count) + " " + std::string(what) + (count == 1 ? "" : "s");
}

std::string need_words(const MaterialLine& line, double can_l) {
    const bool litres = line.row->measure == Measure::litres;
    const int packs = house::packs(line, can_l);
    const double without = line.need / (1 + line.row->waste);
    std::string words = std::string(line.row->formula) + "\n= " + put("%.3g", without);
    const std::string unit = litres ? " l" : line.row->measure == Measure::length ? " m" : "";
    words += unit + " × " + put("%.1f for waste", 1 + line.row->waste) + " = " +
             put("%.3g", line.need) + unit;
    if (packs && litres)
        words += " ÷ " + put("%g", line.row->pack_name == "can" ? can_l : line.row->pack) +
                 " l a " + std::string(line.row->pack_name);
    return words;
}

std::string sum_words(const MaterialLine& line, double can_l) {
    const bool litres = line.row->measure == Measure::litres;
    std::string words = "needs of all openings with a remedy, added, then rounded up once\n= " +
                        put("%.3g", line.need) +
                        (litres                                 ? " l"
                         : line.row->measure == Measure::length ? " m"
                                                                : "");
    if (litres && line.row->pack > 0)
        words += " ÷ " + put("%g", line.row->pack_name == "can" ? can_l : line.row->pack) + " l";
    return words;
}

void lines(Ui& ui, const Session& session, Column& column, const std::vector<MaterialLine>& all,
           bool house) {
    const double can_l = session.house().can_l;
    for (const MaterialLine& line : all) {
        std::string id = (house ? "sheet.all." : "sheet.need.") + std::string(line.row->key);
        if (house && line.size_m > 0) id += put(".%.0f", 1000 * line.size_m);
        column.row(id, material_name(line, ui.units), material_amount(line, can_l, house, ui.units),
                   ui.theme.ink,
                   {house ? "sheet.all" : "sheet.need", Shown::today, house ? "House: " : ""});
        if (ui.why && ui.why->asks(id))
            ui.why->tell(house ? sum_words(line, can_l)
                               : in_units(need_words(line, can_l), ui.units));
    }
}

} // namespace

std::string material_amount(const MaterialLine& line, double can_l, bool all, Units units) {
    const house::MaterialRow& row = *line.row;
    const int packs = house::packs(line, can_l);
    const bool can = row.pack_name == "can";
    if (packs && !all && row.measure == Measure::litres)
        return put("%.1f ", line.need / (can ? can_l : row.pack)) + std::string(row.pack_name) +
               "s";
    if (packs) return plural(packs, row.pack_name);
    return row.measure == Measure::litres ? volume(line.need, units) : length_up(line.need, units);
}

std::string material_name(const MaterialLine& line, Units units) {
    std::string name(line.row->name);
    if (line.size_m > 0) name += ", " + format(Quantity::thin_m, line.size_m, units);
    return name;
}

void sheet_work(Ui& ui, Session& session, Column& column, const house::Sheet& s) {
    column.heading("sheet.work", "Work: " + session.remedy_name());
    lines(ui, session, column, s.materials, false);
    if (s.materials.empty())
        column.sentence("sheet.nothing", "Material", "It takes no material that is measured out.",
                        ui.theme.soft);
    const std::string& currency = session.house().currency;
    column.row("sheet.labour", put("Labor, %.1f hours", s.hours), format_money(s.labour, currency),
               ui.theme.ink, {"sheet.work"});
    column.row("sheet.material", "Material", format_money(s.material_cost, currency), ui.theme.ink,
               {"sheet.work"});
    column.row("sheet.total", "Together, an estimate", format_money(s.total(), currency),
               ui.theme.lever, {"sheet.work"});
    column.space(14);
}

void sheet_house(Ui& ui, Session& session, Column& column) {
    const house::House& h = session.house();
    const house::HouseTotal t = house::house_total(h);
    column.heading("sheet.house", "House: " + plural(t.openings, "opening") + " with a remedy");
    if (t.measured < t.openings)
        column.sentence("sheet.house.measured", "Measured",
                        "All measures are there for " + std::to_string(t.measured) + " of " +
                            std::to_string(t.openings) + ".",
                        ui.theme.worse);
    lines(ui, session, column, t.lines, true);
    column.row("sheet.house.labour", put("Labor, %.1f hours", t.hours),
               format_money(t.labour, h.currency), ui.theme.ink,
               {"sheet.house", Shown::today, "House: "});
    column.row("sheet.house.material", "Material", format_money(t.material_cost, h.currency),
               ui.theme.ink, {"sheet.house", Shown::today, "House: "});
    column.row("sheet.house.total", "Together, an estimate", format_money(t.total(), h.currency),
               ui.theme.lever, {"sheet.house", Shown::today, "House: "});
    if (ui.why)
        for (const char* id : {"sheet.house.labour", "sheet.house.material", "sheet.house.total"})
            if (ui.why->asks(id))
                ui.why->tell(put("all openings: %.1f hours × ", t.hours) +
                             format_money(h.hour, h.currency) + " + material " +
                             format_money(t.material_cost, h.currency));
    column.space(6);
    house_number(ui, session, column, "house.hour",
                 {"Price of an hour of work", put("%g", h.hour), h.currency, ""},
                 &house::House::hour, 0, house::max_hour);
    house_number(ui, session, column, "house.can_l",
                 {"A can of foam fills", put("%g", session.house().can_l), "l", ""},
                 &house::House::can_l, house::least_can_l, house::most_can_l);
    column.space(14);
    const auto save = [&](const char* id, const char* label, house::Separator separator) {
        if (!button(ui, id, column.take(touch_px), label)) return;
        ui.wishes.save_name = session.house().name + ".csv";
        ui.wishes.save_content = house::sheet_csv(session.house(), separator);
    };
    save("sheet.csv", "All openings as a table (CSV)", house::Separator::comma);
    save("sheet.csv.semicolon", "The same, for a comma as decimal sign",
         house::Separator::semicolon);
    column.space(14);
}

} // namespace shimlight::view
