// SPDX-License-Identifier: MIT
// What the work takes: of this opening, and of the house.
#include "view/adding_up.hpp"
#include "view/bill_words.hpp"
#include "view/entry.hpp"
#include "view/put.hpp"
#include "view/sheet.hpp"
#include "view/why.hpp"

#include <cmath>
#include <numeric>

namespace shimlight::view {
namespace {

using house::MaterialLine;
using house::Measure;

/// A plain number of the house that is typed.
void house_number(Ui& ui, Session& session, Column& column, const char* id, const TypedField& field,
                  double house::House::*which, double least, double most) {
    const auto typed = typed_field(ui, id, column.take(entry_height_px, 0), field);
    const auto value = typed ? parse(Quantity::number, *typed, ui.units) : std::nullopt;
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

std::string counted(int count, std::string_view what) {
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

/// Of what a price is told: "can", "ft", "m", "ft³"; and how many of what the file has are in it.
struct Sold {
    std::string_view unit;
    double size = 1;
};

Sold sold(const house::MaterialRow& row, Units units) {
    if (row.pack > 0) return {row.pack_name};
    const bool us = units == Units::us;
    if (row.measure == Measure::litres) return us ? Sold{"ft³", 28.316847} : Sold{"l"};
    return us ? Sold{"ft", 0.3048} : Sold{"m"};
}

/// "0.6 can × $8 = $4.80"
std::string price_words(const house::House& house, const MaterialLine& line) {
    const Sold unit = sold(*line.row, house.units);
    const double price = house::unit_price(house, *line.row) * unit.size;
    return "\n" + put("%.3g ", house::bought(line, house.can_l) / unit.size) +
           std::string(unit.unit) + " × " + house.currency + put("%.4g", price) + " = " +
           cents(house::line_price(house, line), trade_of(house));
}

/// The house's own price of a material; emptied, the usual one counts again.
void unit_price(Ui& ui, Session& session, Column& column, const house::MaterialRow& row) {
    const house::House& h = session.house();
    const Sold unit = sold(row, ui.units);
    const std::string usual = put("%.2f", row.price * unit.size);
    const double price = house::unit_price(h, row);
    const std::string own = price == row.price ? "" : put("%.2f", price * unit.size);
    const auto typed = typed_field(
        ui, "sheet.price." + std::string(row.key), column.take(entry_height_px, 0),
        {std::string(row.name) + ", a " + std::string(unit.unit), own, h.currency, usual});
    if (!typed || *typed == own) return;
    const bool none = typed->find_first_not_of(' ') == std::string::npos;
    const auto value =
        none ? std::optional(row.price * unit.size) : parse(Quantity::number, *typed, ui.units);
    if (!value || *value < 0 || *value / unit.size > house::max_unit_price) return;
    house::House next = h;
    house::set_unit_price(next, row, none ? row.price : *value / unit.size);
    session.edit(std::move(next));
}

/// Amounts with their money; for the house also the prices they are reckoned with.
void lines(Ui& ui, Session& session, Column& column, const std::vector<MaterialLine>& all,
           const ShownCosts& costs, bool house) {
    const house::House h = session.house(); // a typed price changes it
    for (std::size_t i = 0; i < all.size(); ++i) {
        const MaterialLine& line = all[i];
        std::string id = (house ? "sheet.all." : "sheet.need.") + std::string(line.row->key);
        if (house && line.size_m > 0) id += put(".%.0f", 1000 * line.size_m);
        column.row(id, material_name(line, ui.units),
                   material_words(h, line, costs.lines[i], house), ui.theme.ink,
                   {house ? "sheet.all" : "sheet.need", Shown::today, house ? "House: " : ""});
        if (ui.why && ui.why->asks(id))
            ui.why->tell(
                (house ? sum_words(line, h.can_l) : in_units(need_words(line, h.can_l), ui.units)) +
                price_words(h, line));
        const bool first = i == 0 || all[i - 1].row != line.row;
        if (house && first) unit_price(ui, session, column, *line.row);
    }
}

/// What the remedy's estimate holds beyond what is measured out.
void rest_price(Ui& ui, Session& session, Column& column, const house::MaterialCost& cost) {
    const std::string shown = put("%.0f", cost.rest);
    const auto typed = typed_field(ui, "sheet.rest", column.take(entry_height_px, 0),
                                   {rest_of_material, shown, session.house().currency, ""});
    const auto value =
        typed && *typed != shown ? parse(Quantity::number, *typed, ui.units) : std::nullopt;
    if (!value || *value < 0 || cost.usual + *value > house::max_material_cost) return;
    house::House next = session.house();
    house::OpeningRecord& record = next.openings[static_cast<std::size_t>(next.selected)];
    record.remedies[static_cast<std::size_t>(record.chosen)].material_cost = cost.usual + *value;
    session.edit(std::move(next));
}

} // namespace

std::string material_amount(const MaterialLine& line, double can_l, bool all, Units units) {
    const house::MaterialRow& row = *line.row;
    const int packs = house::packs(line, can_l);
    const bool can = row.pack_name == "can";
    if (packs && !all && row.measure == Measure::litres)
        return put("%.1f ", line.need / (can ? can_l : row.pack)) + std::string(row.pack_name) +
               "s";
    if (packs) return counted(packs, row.pack_name);
    return row.measure == Measure::litres ? volume(line.need, units) : length_up(line.need, units);
}

std::string material_name(const MaterialLine& line, Units units) {
    std::string name(line.row->name);
    if (line.size_m > 0) name += ", " + format(Quantity::thin_m, line.size_m, units);
    return name;
}

double ShownCosts::material() const {
    return std::accumulate(lines.begin(), lines.end(), rest);
}

ShownCosts shown_costs(const house::House& house, const std::vector<MaterialLine>& lines,
                       double rest, double labour) {
    ShownCosts shown;
    for (const MaterialLine& line : lines)
        shown.lines.push_back(house::line_price(house, line));
    shown.lines.insert(shown.lines.end(), {rest, labour});
    const double sum = std::accumulate(shown.lines.begin(), shown.lines.end(), 0.0);
    shown.lines = adding_up(std::move(shown.lines), shown_money(sum) < 10 ? 0.1 : 1);
    shown.labour = shown.lines.back();
    shown.lines.pop_back();
    shown.rest = shown.lines.back();
    shown.lines.pop_back();
    return shown;
}

std::string material_words(const house::House& house, const MaterialLine& line, double shown,
                           bool all) {
    const bool little = shown <= 0 && house::line_price(house, line) > 0;
    const Trade trade = trade_of(house);
    return material_amount(line, house.can_l, all, house.units) + ", " +
           (little ? "under " + format_money(1, trade) : format_money(shown, trade));
}

void sheet_work(Ui& ui, Session& session, Column& column, const house::Sheet& s) {
    column.heading("sheet.work", "Work: " + session.remedy_name());
    const Trade trade = trade_of(session.house());
    const ShownCosts costs = shown_costs(session.house(), s.materials, s.cost.rest, s.labour);
    lines(ui, session, column, s.materials, costs, false);
    if (s.materials.empty())
        column.sentence("sheet.nothing", "Material", "It takes no material that is measured out.",
                        ui.theme.soft);
    if (session.has_remedy()) rest_price(ui, session, column, s.cost);
    column.row("sheet.material", "Material", format_money(costs.material(), trade), ui.theme.ink,
               {"sheet.work"});
    column.row("sheet.labour", put("Labor, %.1f hours", s.hours), format_money(costs.labour, trade),
               ui.theme.ink, {"sheet.work"});
    column.row("sheet.total", "Together, an estimate", format_money(s.total(), trade),
               ui.theme.lever, {"sheet.work"});
    column.space(14);
}

void sheet_house(Ui& ui, Session& session, Column& column) {
    const house::House h = session.house(); // a typed price changes it
    const house::HouseTotal t = house::house_total(h);
    const Trade trade = trade_of(h);
    const ShownCosts costs = shown_costs(h, t.lines, t.rest, t.labour);
    column.heading("sheet.house", "House: " + counted(t.openings, "opening") + " with a remedy");
    if (t.measured < t.openings)
        column.sentence("sheet.house.measured", "Measured",
                        "All measures are there for " + std::to_string(t.measured) + " of " +
                            std::to_string(t.openings) + ".",
                        ui.theme.worse);
    lines(ui, session, column, t.lines, costs, true);
    const About about{"sheet.house", Shown::today, "House: "};
    const auto row = [&](const char* id, const std::string& name, double amount, ImU32 ink) {
        column.row(id, name, format_money(amount, trade), ink, about);
    };
    row("sheet.house.rest", rest_of_material, costs.rest, ui.theme.ink);
    row("sheet.house.material", "Material", costs.material(), ui.theme.ink);
    row("sheet.house.labour", put("Labor, %.1f hours", t.hours), costs.labour, ui.theme.ink);
    row("sheet.house.total", "Together, an estimate", t.total(), ui.theme.lever);
    column.sentence("sheet.house.prices", "What it is reckoned with",
                    "Money by what is used; cans and cartridges are bought whole. Faint prices "
                    "are usual ones in the United States, estimates: type yours.",
                    ui.theme.soft);
    if (ui.why)
        for (const char* id : {"sheet.house.rest", "sheet.house.labour", "sheet.house.material",
                               "sheet.house.total"})
            if (ui.why->asks(id))
                ui.why->tell(put("all openings: %.1f hours × ", t.hours) +
                             format_money(h.hour, trade) + " + material " +
                             format_money(t.material_cost, trade));
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
