// SPDX-License-Identifier: MIT
#include "house/cautions.hpp"
#include "house/sheet.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

namespace shimlight::house {
namespace {

/// After these a spreadsheet that splits elsewhere may see a cell begin: separators, and quotes in
/// what it does not take for a quoted cell.
constexpr std::string_view breaks[] = {
    ",",
    ";",
    "|",
    "\"",
    "\xEF\xBC\x8C", // full-width comma
    "\xEF\xBC\x9B", // full-width semicolon
};
/// Skipped before a cell's first sign.
constexpr std::string_view blanks[] = {
    " ",
    "'",
    "\xC2\xA0",     // no-break space
    "\xE2\x80\x8B", // zero-width space
    "\xE2\x80\xAF", // narrow no-break space
    "\xE3\x80\x80", // full-width space
    "\xEF\xBB\xBF", // byte order mark
};
constexpr std::string_view signs[] = {
    "=",
    "+",
    "-",
    "@",
    "\xEF\xBC\x9D", // full-width forms of them
    "\xEF\xBC\x8B",
    "\xEF\xBC\x8D",
    "\xEF\xBC\xA0",
    "\xE2\x88\x92", // minus sign
};

/// Length of the one that stands at this place; 0 for none.
std::size_t one_of(std::span<const std::string_view> all, std::string_view text, std::size_t at) {
    for (const std::string_view one : all)
        if (text.substr(at, one.size()) == one) return one.size();
    return 0;
}

/// Figures and signs alone would become a number or a date.
bool like_a_number(std::string_view text) {
    bool digit = false;
    for (const char c : text) {
        if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) > 127)
            return false;
        digit = digit || (c >= '0' && c <= '9');
    }
    return digit;
}

/// A cell that every spreadsheet takes as words: in quotes, an apostrophe before whatever could
/// begin a formula in it, line ends and other control characters as spaces.
std::string words(std::string_view text) {
    std::string out = "\"";
    if (like_a_number(text)) out += '\'';
    bool begins = true;
    for (std::size_t i = 0; i < text.size();) {
        const auto c = static_cast<unsigned char>(text[i]);
        const bool control = c < ' ' || c == 127;
        if (begins && one_of(signs, text, i)) out += '\'';
        const std::size_t breaking = one_of(breaks, text, i), blank = one_of(blanks, text, i);
        begins = control || breaking > 0 || (begins && blank > 0);
        if (c == '"') out += '"';
        const std::size_t length = std::max({breaking, blank, std::size_t{1}});
        out += control ? std::string_view(" ") : text.substr(i, length);
        i += length;
    }
    return out + "\"";
}

std::string whole(double v) {
    return std::to_string(std::lround(v));
}

std::string millimetres(double m) {
    return whole(m * 1000);
}

/// One line of the table as it grows.
struct Line {
    char separator;
    std::string text;
    bool first = true;

    void put(const std::string& cell) {
        if (!first) text += separator;
        first = false;
        text += cell;
    }
};

struct Row {
    const House* house;
    const OpeningRecord* record; ///< null in the last row, of the house
    Sheet sheet;
    const HouseTotal* total; ///< of the last row, else null
};

constexpr std::pair<Entry, std::string_view> raw[] = {
    {Entry::width_top_m, "width top mm"},
    {Entry::width_middle_m, "width middle mm"},
    {Entry::width_bottom_m, "width bottom mm"},
    {Entry::height_left_m, "height left mm"},
    {Entry::height_middle_m, "height middle mm"},
    {Entry::height_right_m, "height right mm"},
    {Entry::diagonal_rising_m, "diagonal rising mm"},
    {Entry::diagonal_falling_m, "diagonal falling mm"},
    {Entry::sill_rise_m, "sill right end higher mm"},
    {Entry::pocket_depth_m, "depth between stops mm"},
};

struct Column {
    std::string_view head;
    std::string (*cell)(const Row&); ///< of an opening
};

std::string who_deducts(const Row& r) {
    switch (r.sheet.order.deducts) {
    case Deducts::sheet:
        return words("this sheet");
    case Deducts::maker:
        return words("the maker");
    default:
        return words("not asked yet");
    }
}

const Column columns[] = {
    {"opening", [](const Row& r) { return words(r.record->name); }},
    {"complaint", [](const Row& r) { return words(r.record->complaint); }},
    {"remedy",
     [](const Row& r) {
         const opening::Remedy* chosen = chosen_remedy(*r.record);
         return words(chosen ? chosen->name : "");
     }},
    {"method", [](const Row& r) { return words(method_row(r.sheet.order.method).name); }},
    {"measured between",
     [](const Row& r) { return words(method_row(r.sheet.order.method).measured); }},
    {"all measured", [](const Row& r) { return words(r.sheet.order.measured ? "yes" : "no"); }},
    {"quantity",
     [](const Row& r) {
         const Order& o = r.sheet.order;
         return whole(o.method == Method::none ? 0 : o.quantity);
     }},
    {"who deducts", who_deducts},
    {"glass today cm2", [](const Row& r) { return whole(r.sheet.today.glass_m2 * 1e4); }},
    {"glass with remedy cm2", [](const Row& r) { return whole(r.sheet.remedy.glass_m2 * 1e4); }},
    {"clear width today mm", [](const Row& r) { return millimetres(r.sheet.today.clear_width_m); }},
    {"clear height today mm",
     [](const Row& r) { return millimetres(r.sheet.today.clear_height_m); }},
    {"clear width with remedy mm",
     [](const Row& r) { return millimetres(r.sheet.remedy.clear_width_m); }},
    {"clear height with remedy mm",
     [](const Row& r) { return millimetres(r.sheet.remedy.clear_height_m); }},
};

constexpr std::pair<double OrderSize::*, std::string_view> sizes[] = {
    {&OrderSize::estimating_m, "estimating"}, {&OrderSize::smallest_m, "smallest"},
    {&OrderSize::opening_m, "opening"},       {&OrderSize::clearance_m, "clearance"},
    {&OrderSize::unit_m, "ordering"},
};

void put_heads(Line& line) {
    for (const Column& c : columns)
        line.put(words(c.head));
    for (const auto& [entry, head] : raw)
        line.put(words(head));
    for (const auto& [size, head] : sizes)
        for (const char* which : {" width mm", " width in", " height mm", " height in"})
            line.put(words(std::string(head) + which));
    for (const MaterialRow& row : material_rows())
        line.put(words(std::string(row.name) + (row.measure == Measure::litres   ? " ml"
                                                : row.measure == Measure::length ? " mm"
                                                                                 : "")));
    for (const MaterialRow& row : material_rows())
        line.put(words(std::string(row.name) + " cost, hundredths"));
    for (const char* head :
         {"all other material, hundredths", "backer rod diameter mm", "to buy", "work minutes",
          "labor", "material", "together", "currency", "cautions"})
        line.put(words(head));
}

/// Nobody has said yet from what a unit is to be ordered, or nothing is.
bool unit_told(const Order& o) {
    return o.method == Method::film ||
           (o.method != Method::none && o.deducts != Deducts::not_asked);
}

void put_sizes(Line& line, const Row& r) {
    const Order& o = r.sheet.order;
    for (const auto& [size, head] : sizes)
        for (const OrderSize* way : {&o.wide, &o.high}) {
            const bool told = !r.total && (size != &OrderSize::unit_m || unit_told(o));
            line.put(told ? millimetres(way->*size) : "");
            line.put(told ? words(inch_text(way->*size)) : "");
        }
}

double need_of(const std::vector<MaterialLine>& lines, const MaterialRow& row) {
    double need = 0;
    for (const MaterialLine& l : lines)
        if (l.row == &row) need += l.need;
    return need;
}

/// "2 cans of window foam; backer rod 16 mm 12.4 m" in words, for the last row.
std::string to_buy(const HouseTotal& total, double can_l) {
    std::string all;
    for (const MaterialLine& l : total.lines) {
        const int n = packs(l, can_l);
        all += (all.empty() ? "" : " / ") + std::string(l.row->name);
        if (l.size_m > 0) all += " " + millimetres(l.size_m) + " mm";
        all += ": " +
               (n ? std::to_string(n) + " " + std::string(l.row->pack_name) + (n == 1 ? "" : "s")
                : l.row->measure == Measure::litres ? whole(std::ceil(l.need)) + " l"
                                                    : millimetres(l.need) + " mm");
    }
    return all;
}

/// At the house's prices, in hundredths of its currency.
void put_costs(Line& line, const Row& r) {
    constexpr double hundredths = 100;
    const std::vector<MaterialLine>& lines = r.total ? r.total->lines : r.sheet.materials;
    for (const MaterialRow& row : material_rows()) {
        double cost = 0;
        for (const MaterialLine& l : lines)
            if (l.row == &row) cost += line_price(*r.house, l);
        line.put(whole(hundredths * cost));
    }
    line.put(whole(hundredths * (r.total ? r.total->rest : r.sheet.cost.rest)));
}

void put_needs(Line& line, const Row& r) {
    const std::vector<MaterialLine>& lines = r.total ? r.total->lines : r.sheet.materials;
    std::optional<double> rod_m;
    for (const MaterialRow& row : material_rows())
        line.put(whole(need_of(lines, row) * (row.measure == Measure::pieces ? 1 : 1000)));
    put_costs(line, r);
    for (const MaterialLine& l : r.sheet.materials)
        if (l.row->key == "rod") rod_m = l.size_m;
    line.put(rod_m && !r.total ? millimetres(*rod_m) : "");
    line.put(r.total ? words(to_buy(*r.total, r.house->can_l)) : "");
}

void put_money(Line& line, const Row& r) {
    const HouseTotal t = r.total ? *r.total : HouseTotal{};
    const bool last = r.total != nullptr;
    line.put(whole(60 * (last ? t.hours : r.sheet.hours)));
    line.put(whole(last ? t.labour : r.sheet.labour));
    line.put(whole(last ? t.material_cost : r.sheet.material_cost));
    line.put(whole(last ? t.total() : r.sheet.total()));
    line.put(words(r.house->currency));
}

std::string brief_cautions(const House& house, const OpeningRecord& record) {
    std::string all;
    for (const Caution& c : cautions(house, record))
        all += (all.empty() ? "" : " / ") + std::string(c.row->name) + (c.unknown ? " (?)" : "");
    return all.empty() ? all : all + " / check your local code";
}

void put_row(Line& line, const Row& r) {
    if (r.total) {
        const int n = r.total->openings;
        line.put(words("House: " + std::to_string(n) + (n == 1 ? " opening" : " openings") +
                       " with a remedy"));
        for (std::size_t i = 1; i < std::size(columns) + std::size(raw); ++i)
            line.put("");
    } else {
        for (const Column& c : columns)
            line.put(c.cell(r));
        for (const auto& [entry, head] : raw) {
            const Entries& site = r.record->site;
            line.put(site.has(entry) ? millimetres(site.of(entry)) : "");
        }
    }
    put_sizes(line, r);
    put_needs(line, r);
    put_money(line, r);
    line.put(r.total ? "" : words(brief_cautions(*r.house, *r.record)));
    line.text += "\r\n";
    line.first = true;
}

} // namespace

std::string inch_text(double m) {
    const long parts = std::lround(std::fabs(m) / 0.0254 * 16), whole_in = parts / 16;
    long top = parts % 16, bottom = 16;
    for (; top != 0 && top % 2 == 0; top /= 2)
        bottom /= 2;
    std::string text = whole_in || !top ? std::to_string(whole_in) : "";
    if (top) text += (text.empty() ? "" : " ") + std::to_string(top) + "/" + std::to_string(bottom);
    return (m < 0 && parts ? "minus " : "") + text + " in";
}

std::string sheet_csv(const House& house, Separator separator) {
    Line line{static_cast<char>(separator), "\xEF\xBB\xBF"};
    put_heads(line);
    line.text += "\r\n";
    line.first = true;
    for (const OpeningRecord& record : house.openings)
        put_row(line, {&house, &record, sheet(house, record), nullptr});
    const HouseTotal total = house_total(house);
    put_row(line, {&house, nullptr, {}, &total});
    return line.text;
}

} // namespace shimlight::house
