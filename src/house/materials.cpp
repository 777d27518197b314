// SPDX-License-Identifier: MIT
#include "house/materials.hpp"

#include "opening/dimensions.hpp"
#include "opening/leakage.hpp"
#include "opening/wall_build.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::house {
namespace {

using namespace opening;

constexpr double bead_m2 = 0.5 * 0.006 * 0.010; // 6 mm wide, 10 mm deep, tooled hollow
constexpr double litres_m3 = 1000;
constexpr double rod_over_joint = 1.25;
constexpr double rod_sizes_m[] = {0.006, 0.010, 0.013, 0.016, 0.019,
                                  0.022, 0.025, 0.032, 0.038, 0.050};
constexpr double shims_every_m = 0.4;       // 16 in
constexpr double tape_past_corner_m = 0.15; // flashing tape runs 6 in past each corner

const Opening& now(const Job& w) {
    return w.remedy.opening;
}

double around_m(double width_m, double height_m) {
    return 2 * (width_m + height_m);
}

/// The shim space: around the frame in the rough opening.
double joint_m(const Job& w) {
    return around_m(now(w).width_m, now(w).height_m);
}

double unit_m(const Job& w) {
    const UnitSize unit = unit_size(now(w));
    return around_m(unit.width_m, unit.height_m);
}

bool newly_filled(const Job& w, ShimFill fill) {
    return now(w).shim.fill == fill &&
           (w.method == Method::full_frame || w.today.opening.shim.fill != fill);
}

bool sets_unit(const Job& w) {
    return w.method == Method::insert || w.method == Method::full_frame;
}

double foam_l(const Job& w) {
    const bool partly = newly_filled(w, ShimFill::partly_foamed);
    if (!partly && !newly_filled(w, ShimFill::foamed)) return 0;
    const double depth_m = partly ? now(w).shim.bead_m : wood_depth_m;
    return litres_m3 * joint_m(w) * now(w).shim.width_m * depth_m;
}

/// In the joint where the remedy fills it so; behind the outside seal of a full frame.
double rod_m(const Job& w) {
    const bool outside = w.method == Method::full_frame;
    return (newly_filled(w, ShimFill::backer_rod) + outside) * joint_m(w);
}

double rod_size_m(const Job& w) {
    const double wanted_m = now(w).shim.width_m * rod_over_joint;
    return *std::find_if(std::begin(rod_sizes_m), std::end(rod_sizes_m) - 1,
                         [wanted_m](double m) { return m >= wanted_m - 1e-9; });
}

/// Metres of bead: on the rod; along the outer edge of casing newly caulked; an insert's bed
/// against the old stops and its inside edge; a full frame's outside seal and, with rod, its inside
/// one; a storm panel's head and sides, the sill stays open to drain; both faces of new glass.
double bead_m(const Job& w) {
    const Opening& o = now(w);
    double m = newly_filled(w, ShimFill::backer_rod) ? joint_m(w) : 0;
    const bool caulked =
        o.casing.seal == CasingSeal::caulked &&
        (w.method == Method::full_frame || w.today.opening.casing.seal != CasingSeal::caulked);
    if (caulked) m += joint_m(w) + 8 * o.casing.width_m;
    if (w.method == Method::insert) m += 2 * unit_m(w);
    if (w.method == Method::full_frame) m += joint_m(w);
    const bool storm =
        o.glazing.storm != Storm::none && w.today.opening.glazing.storm == Storm::none;
    if (storm) m += 2 * o.height_m + o.width_m;
    if (w.method == Method::glass) {
        const UnitSize rebate = drawn_size(Method::glass, w.today, o);
        m += 2 * 2 * around_m(rebate.width_m, rebate.height_m);
    }
    return m;
}

double sealant_l(const Job& w) {
    return litres_m3 * bead_m(w) * bead_m2;
}

/// Two legs and a head with two mitres each, and an apron as long as the head.
double casing_m(const Job& w) {
    if (w.method != Method::full_frame) return 0;
    return 2 * now(w).height_m + 2 * now(w).width_m + 6 * now(w).casing.width_m;
}

double casing_wide_m(const Job& w) {
    return now(w).casing.width_m;
}

double stool_m(const Job& w) {
    if (w.method != Method::full_frame) return 0;
    return now(w).width_m + 2 * (now(w).casing.width_m + stool_beyond_casing_m);
}

/// Boards from the unit's depth to the inside face of the wall: head and sides; a stool closes the
/// sill.
double extension_m(const Job& w) {
    const bool deep_enough = is_wood(now(w).frame) && joint_depth_m(now(w).wall) <= wood_depth_m;
    if (w.method != Method::full_frame || deep_enough) return 0;
    return 2 * now(w).height_m + now(w).width_m;
}

/// Outside: head and sides, mitred; masonry covers the joint by itself. An insert leaves the old.
double outside_trim_m(const Job& w) {
    if (w.method != Method::full_frame || is_masonry(now(w).wall)) return 0;
    return 2 * now(w).height_m + now(w).width_m + 4 * mould_width_m;
}

double stops_m(const Job& w) {
    return w.method == Method::insert ? 2 * now(w).height_m + now(w).width_m : 0;
}

double flashing_m(const Job& w) {
    return w.method == Method::full_frame ? joint_m(w) + 4 * tape_past_corner_m : 0;
}

double shims(const Job& w) {
    return sets_unit(w) ? unit_m(w) / shims_every_m : 0;
}

double strip_m(const Job& w) {
    const bool fresh = now(w).sash.weatherstrip && !w.today.opening.sash.weatherstrip;
    return fresh && !sets_unit(w) ? sash_leakage(now(w)).length_m : 0;
}

/// Both boxes beside the jambs, as deep as the frame.
double pockets_l(const Job& w) {
    const bool fresh =
        now(w).pockets == Pockets::insulated && w.today.opening.pockets != Pockets::insulated;
    return fresh ? litres_m3 * 2 * now(w).height_m * (pocket_m - pocket_board_m) * wood_depth_m : 0;
}

double film_tape_m(const Job& w) {
    return w.method == Method::film ? joint_m(w) : 0;
}

// Prices: of a store in the United States, from memory, good within a half or so either way.
constexpr MaterialRow rows[] = {
    {"foam", "Window foam, low-pressure", Measure::litres, 0.2, usual_can_l, "can",
     "shim space × its width × depth of the filling", 8, foam_l},
    {"rod", "Backer rod", Measure::length, 0.1, 0, "",
     "shim space; its diameter a quarter more than that is wide", 0.8, rod_m, rod_size_m},
    {"sealant", "Sealant", Measure::litres, 0.2, 0.3, "cartridge",
     "beads of 6 × 10 mm (1/4 × 3/8 in), tooled hollow: half of that × their length", 7, sealant_l},
    {"casing", "Casing inside", Measure::length, 0.1, 0, "",
     "2 × height + 2 × width + 6 × its width for mitres", 6.5, casing_m, casing_wide_m},
    {"stool", "Stool", Measure::length, 0.1, 0, "",
     "width + casing and 28 mm (1 1/8 in) beyond it on both sides", 13, stool_m},
    {"extension", "Jamb extension", Measure::length, 0.1, 0, "", "2 × height + width", 8,
     extension_m},
    {"trim_outside", "Trim outside", Measure::length, 0.1, 0, "",
     "2 × height + width + 4 × its width for mitres", 8, outside_trim_m},
    {"stops", "Inside stops, if the old ones break", Measure::length, 0.1, 0, "",
     "2 × height + width", 3.3, stops_m},
    {"flashing", "Flashing tape, sill first", Measure::length, 0.1, 0, "",
     "around + 150 mm (6 in) past each corner", 2.6, flashing_m},
    {"shims", "Shims", Measure::pieces, 0.1, 1, "pair", "around the unit ÷ 0.4 m (16 in)", 0.3,
     shims},
    {"strip", "Weather strip", Measure::length, 0.1, 0, "",
     "both sashes' cracks: 2 × height + 3 × width", 2.5, strip_m},
    {"pockets", "Filling of the weight pockets", Measure::litres, 0.1, 0, "",
     "2 × height × 51 mm (2 in) × depth of the frame", 0.05, pockets_l},
    {"film_tape", "Tape for the film", Measure::length, 0.1, 0, "", "around", 0.5, film_tape_m},
};

void add(std::vector<MaterialLine>& lines, const MaterialLine& line) {
    for (MaterialLine& l : lines)
        if (l.row == line.row && std::fabs(l.size_m - line.size_m) < 1e-6) {
            l.need += line.need;
            return;
        }
    lines.push_back(line);
}

} // namespace

std::span<const MaterialRow> material_rows() {
    return rows;
}

Job job_of(const House& house, const OpeningRecord& record) {
    return {method_of(house, record), today_case(house, record), remedy_case(house, record)};
}

std::vector<MaterialLine> materials(const Job& work) {
    std::vector<MaterialLine> lines;
    for (const MaterialRow& row : rows) {
        const double need = row.need(work);
        if (need > 0)
            lines.push_back({&row, need * (1 + row.waste), row.size_m ? row.size_m(work) : 0});
    }
    return lines;
}

double bought(const MaterialLine& line, double can_l) {
    const double pack = line.row->pack_name == "can" ? can_l : line.row->pack;
    return pack > 0 ? line.need / pack : line.need;
}

int packs(const MaterialLine& line, double can_l) {
    return line.row->pack > 0 ? static_cast<int>(std::ceil(bought(line, can_l) - 1e-9)) : 0;
}

double unit_price(const House& house, const MaterialRow& row) {
    for (const UnitPrice& own : house.unit_prices)
        if (own.key == row.key) return own.price;
    return row.price;
}

void set_unit_price(House& house, const MaterialRow& row, double price) {
    auto& own = house.unit_prices;
    own.erase(std::remove_if(own.begin(), own.end(),
                             [&row](const UnitPrice& one) { return one.key == row.key; }),
              own.end());
    if (price != row.price) own.push_back({row.key, price});
}

double line_price(const House& house, const MaterialLine& line) {
    return bought(line, house.can_l) * unit_price(house, *line.row);
}

MaterialCost material_cost(const House& house, const OpeningRecord& record,
                           const opening::Remedy& remedy) {
    OpeningRecord one;
    one.today = record.today;
    one.room = record.room;
    one.remedies = {remedy};
    one.chosen = 0;
    MaterialCost cost;
    for (const MaterialLine& line : materials(job_of(house, one))) {
        cost.lines += line_price(house, line);
        cost.usual += bought(line, house.can_l) * line.row->price;
    }
    cost.rest = std::max(0.0, remedy.material_cost - cost.usual);
    return cost;
}

opening::Remedy priced(const House& house, const OpeningRecord& record, opening::Remedy remedy) {
    if (remedy.hours > 0 || remedy.material_cost > 0)
        remedy.material_cost = material_cost(house, record, remedy).sum();
    return remedy;
}

std::vector<assess::Plan> plans(const House& house, const OpeningRecord& record,
                                const assess::PlanQuestion& question) {
    std::vector<assess::Plan> all = assess::plans(question);
    for (assess::Plan& plan : all)
        plan.price = assess::price_of(priced(house, record, plan.remedy), question.hour);
    std::stable_sort(all.begin(), all.end(), [](const assess::Plan& a, const assess::Plan& b) {
        return a.price < b.price;
    });
    return all;
}

HouseTotal house_total(const House& house) {
    HouseTotal t;
    for (const OpeningRecord& record : house.openings) {
        const opening::Remedy* chosen = chosen_remedy(record);
        if (!chosen) continue;
        ++t.openings;
        t.measured += order(house, record).measured;
        t.hours += chosen->hours;
        t.labour += chosen->hours * house.hour;
        const MaterialCost cost = material_cost(house, record, *chosen);
        t.material_cost += cost.sum();
        t.rest += cost.rest;
        for (const MaterialLine& line : materials(job_of(house, record)))
            add(t.lines, line);
    }
    // In the table's order, thin before thick.
    std::stable_sort(t.lines.begin(), t.lines.end(),
                     [](const MaterialLine& a, const MaterialLine& b) {
                         return a.row != b.row ? a.row < b.row : a.size_m < b.size_m;
                     });
    return t;
}

} // namespace shimlight::house
