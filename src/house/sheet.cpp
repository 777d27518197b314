// SPDX-License-Identifier: MIT
#include "house/sheet.hpp"

#include "house/json_reader.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::house {
namespace {

// Materials: common practice in the trade; the waste is included in each.
constexpr double foam_per_can_l = 12, foam_waste = 1.2;
constexpr double rod_waste = 1.1, rod_over_joint = 1.25;
constexpr double bead_m2 = 0.5 * 0.006 * 0.010; // 6 mm wide, 10 mm deep, tooled hollow
constexpr double cartridge_ml = 300, sealant_waste = 1.2;
constexpr double trim_waste = 1.1, shims_every_m = 0.4;
constexpr double rod_sizes_mm[] = {6, 10, 13, 16, 19, 22, 25, 32, 38, 50};

TapeSize tape(const Entries& site, Entry first) {
    TapeSize t;
    for (int i = 0; i < 3; ++i) {
        const auto e = static_cast<Entry>(static_cast<int>(first) + i);
        if (!site.has(e)) continue;
        const double m = site.of(e);
        t.least_m = t.count ? std::min(t.least_m, m) : m;
        t.most_m = t.count ? std::max(t.most_m, m) : m;
        ++t.count;
    }
    t.uneven = t.most_m - t.least_m > even_m + 1e-9;
    return t;
}

/// A parallelogram of sides w, h leaning by s has d1² − d2² = 4 w s.
Square squareness(double a_m, double b_m, double width_m) {
    Square q;
    q.difference_m = std::fabs(a_m - b_m);
    q.lean_m = q.difference_m * (a_m + b_m) / (4 * width_m);
    q.racked = q.difference_m > square_m + 1e-9;
    return q;
}

OrderSize order(const TapeSize& t, double lever_m, double deduct_m) {
    OrderSize o;
    o.estimating_m = t.count ? t.most_m : lever_m;
    o.opening_m = t.count ? t.least_m : lever_m;
    o.unit_m = o.opening_m - deduct_m;
    return o;
}

Materials materials(const opening::Opening& o) {
    Materials m;
    m.joint_m = 2 * (o.width_m + o.height_m);
    m.foam_l = 1000 * m.joint_m * o.shim.width_m * opening::wood_depth_m * foam_waste;
    m.foam_cans = static_cast<int>(std::ceil(m.foam_l / foam_per_can_l));
    m.rod_m = m.joint_m * rod_waste;
    const double wanted_mm = 1000 * o.shim.width_m * rod_over_joint;
    m.rod_mm = *std::find_if(std::begin(rod_sizes_mm), std::end(rod_sizes_mm) - 1,
                             [wanted_mm](double mm) { return mm >= wanted_mm - 1e-9; });
    m.sealant_ml = 1e6 * 2 * m.joint_m * bead_m2 * sealant_waste;
    m.cartridges = static_cast<int>(std::ceil(m.sealant_ml / cartridge_ml));
    // Two legs and a head with two mitres each, and an apron as long as the head.
    m.casing_m = (2 * o.height_m + 2 * o.width_m + 6 * o.casing.width_m) * trim_waste;
    m.shim_pairs = static_cast<int>(std::ceil(m.joint_m / shims_every_m));
    return m;
}

/// A cell that a spreadsheet takes as words: quoted, and never begun as a formula.
std::string cell(std::string text) {
    if (!text.empty() && std::string_view("=+-@\t\r\n").find(text.front()) != std::string::npos)
        text.insert(0, 1, '\'');
    std::string out = "\"";
    for (const char c : text)
        out += c == '"' ? std::string("\"\"") : std::string(1, c == '\n' || c == '\r' ? ' ' : c);
    return out + "\"";
}

std::string millimetres(double m) {
    return std::to_string(std::lround(m * 1000));
}

} // namespace

Sheet sheet(const House& house, const OpeningRecord& record, const assess::Assessment& today,
            const assess::Assessment& remedy) {
    const Entries& site = record.site;
    const opening::Opening& o = record.today;
    Sheet s;
    s.width = tape(site, Entry::width_top_m);
    s.height = tape(site, Entry::height_left_m);
    s.measured = s.width.count == 3 && s.height.count == 3;
    if (site.has(Entry::maker_deducts))
        s.deducts = site.of(Entry::maker_deducts) > 0.5 ? Deducts::maker : Deducts::sheet;
    const double off = s.deducts == Deducts::sheet ? 1 : 0;
    s.order_width =
        order(s.width, o.width_m, off * site.of(Entry::deduct_width_m, usual_deduction_m));
    s.order_height =
        order(s.height, o.height_m, off * site.of(Entry::deduct_height_m, usual_deduction_m));
    if (site.has(Entry::diagonal_rising_m) && site.has(Entry::diagonal_falling_m))
        s.square = squareness(site.of(Entry::diagonal_rising_m), site.of(Entry::diagonal_falling_m),
                              s.order_width.opening_m);
    s.materials = materials(remedy_case(house, record).opening);
    const double whole_m2 = o.width_m * o.height_m;
    s.glass_today_m2 = whole_m2 - today.frame_m2;
    s.glass_remedy_m2 = whole_m2 - remedy.frame_m2;
    if (const opening::Remedy* chosen = chosen_remedy(record)) {
        s.hours = chosen->hours;
        s.labour = chosen->hours * house.hour;
        s.material_cost = chosen->material_cost;
    }
    return s;
}

std::vector<SafetyNote> safety_notes(const OpeningRecord& record) {
    constexpr double lead_until = 1978; // use in dwellings ended: US 16 CFR 1303, from memory
    constexpr double low_glass_m = 0.46, large_pane_m2 = 0.84; // 18 in, 9 ft²
    constexpr double low_sill_m = 0.61;                        // 24 in
    const opening::Opening& o = record.today;
    std::vector<SafetyNote> notes;
    const std::string ends = " Check your local code; licensed practice decides.";
    if (record.site.of(Entry::year_built, lead_until - 1) < lead_until)
        notes.push_back({"Paint from before 1978 may hold lead: no dry sanding, keep chips and "
                         "dust in, keep children away." +
                             ends,
                         "US 40 CFR 745 subpart E (from memory)"});
    if (o.sill_m < low_glass_m && o.width_m * o.height_m / 2 > large_pane_m2)
        notes.push_back({"Large glass this near the floor may have to be safety glass." + ends,
                         "International Residential Code R308.4.3 (from memory)"});
    if (o.sill_m < low_sill_m)
        notes.push_back(
            {"A sill this low above a drop wants a guard or a limiter against falls." + ends,
             "International Residential Code R312.2 (from memory)"});
    notes.push_back({"If this is a bedroom the window may be the way out of a fire: an insert or a "
                     "panel must leave the clear opening it needs." +
                         ends,
                     "International Residential Code R310 (from memory)"});
    notes.push_back({"Foam: gloves, goggles, fresh air, no flame; little at a time, it can bow a "
                     "frame. Outdoors upstairs: no ladder work alone. Look for wires before "
                     "drilling." +
                         ends,
                     "common practice"});
    return notes;
}

std::string sheet_csv(const House& house) {
    std::string csv = "opening,complaint,remedy,width estimating mm,height estimating mm,"
                      "width opening mm,height opening mm,width unit mm,height unit mm,"
                      "who deducts,hours,labour,material,currency\r\n";
    const assess::Assessment none;
    for (const OpeningRecord& record : house.openings) {
        const Sheet s = sheet(house, record, none, none);
        const opening::Remedy* chosen = chosen_remedy(record);
        const char* who = s.deducts == Deducts::sheet   ? "this sheet"
                          : s.deducts == Deducts::maker ? "the maker"
                                                        : "not asked yet";
        const std::string cells[] = {cell(record.name),
                                     cell(record.complaint),
                                     cell(chosen ? chosen->name : ""),
                                     millimetres(s.order_width.estimating_m),
                                     millimetres(s.order_height.estimating_m),
                                     millimetres(s.order_width.opening_m),
                                     millimetres(s.order_height.opening_m),
                                     millimetres(s.order_width.unit_m),
                                     millimetres(s.order_height.unit_m),
                                     cell(who),
                                     number_text(s.hours),
                                     number_text(s.labour),
                                     number_text(s.material_cost),
                                     cell(house.currency)};
        for (const std::string& c : cells)
            csv += (&c == cells ? "" : ",") + c;
        csv += "\r\n";
    }
    return csv;
}

} // namespace shimlight::house
