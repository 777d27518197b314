// SPDX-License-Identifier: MIT
#include "house/order.hpp"

#include "opening/daylight.hpp"
#include "opening/dimensions.hpp"
#include "opening/sash_glass.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::house {
namespace {

constexpr double inch_m = 0.0254;

// Measures and deductions as published by sellers and trade papers (1/4 in each way, 3/8 in; 1/2 in
// to 1 in in a rough opening); glass, storm, panel, film and the smallest units from memory.
constexpr MethodRow rows[method_count] = {
    {"none", "Nothing is ordered", "Frame to frame, for the lengths of shim space and trim.",
     "nothing."},
    {"glass", "New sash or glass", "Each sash's rebate, edge to edge, glass and putty out.",
     "1/8 in (3 mm) each way; sash makers ask for the opening and deduct themselves.", inch_m / 8,
     inch_m / 8},
    {"insert", "Insert unit", "Jamb to jamb inside the stops, head to sill; not to trim or stops.",
     "1/4 in (6 mm) each way; makers ask 1/4 to 3/8 in (6 to 10 mm), 3/4 in (19 mm) of the height "
     "with an expander at the head.",
     inch_m / 4, inch_m / 4, 16 * inch_m, 24 * inch_m},
    {"full_frame", "Full-frame unit",
     "The rough opening, casing off: framing to framing, header to rough sill.",
     "the shim space on both sides; 1/2 to 1 in (13 to 25 mm) in all is usual.", inch_m, inch_m,
     14 * inch_m, 24 * inch_m},
    {"storm", "Storm panel", "Outdoors, between the faces of the frame where it will sit.",
     "1/8 in (3 mm) each way.", inch_m / 8, inch_m / 8},
    {"panel", "Panel inside", "Between the faces of the frame inside the sashes.",
     "1/8 in (3 mm) each way, taken up by the gasket.", inch_m / 8, inch_m / 8},
    {"film", "Film", "Outer edge to outer edge of what the tape will hold to.",
     "nothing off, 1 in (25 mm) over on every side, trimmed when it is up.", -2 * inch_m,
     -2 * inch_m},
};

bool other_glass(const opening::Glazing& a, const opening::Glazing& b) {
    return a.panes != b.panes || a.pane_thickness_m != b.pane_thickness_m || a.gap_m != b.gap_m ||
           a.gas != b.gas || a.gas_share != b.gas_share || a.coating != b.coating ||
           a.coating_kind != b.coating_kind || a.emissivity != b.emissivity || a.tint != b.tint ||
           a.spacer != b.spacer;
}

bool begins(std::string_view key, std::string_view with) {
    return key.substr(0, with.size()) == with;
}

double floor_to(double m, double step_m) {
    // A measure on a step stays on it, whatever its last binary digit.
    return std::floor(m / step_m + 1e-6) * step_m;
}

/// The other side of a parallelogram: d1² + d2² = 2 (a² + b²).
double other_side_m(double rising_m, double falling_m, double side_m) {
    const double squared = (rising_m * rising_m + falling_m * falling_m) / 2 - side_m * side_m;
    return squared > 0 ? std::sqrt(squared) : 0;
}

/// Room between two sides that lean or drop together by `off_m`, and may bow.
double fitting_m(const TapeSize& t, double mean_m, double off_m) {
    const double straight_m = t.count ? std::min(t.least_end_m, mean_m - off_m) : mean_m - off_m;
    return std::max(0.0, straight_m - std::max(0.0, -t.bow_m));
}

OrderSize order_size(const TapeSize& t, double drawn_m, double fits_m, double clearance_m,
                     bool deducts, Units units) {
    OrderSize o;
    o.smallest_m = t.count ? t.least_m : drawn_m;
    o.estimating_m = rounded_up_m(t.count ? t.most_m : drawn_m, units);
    o.opening_m = rounded_down_m(std::min(o.smallest_m, fits_m), units);
    o.clearance_m = clearance_m;
    o.unit_m = deducts ? rounded_down_m(o.opening_m - clearance_m, units) : o.opening_m;
    return o;
}

std::optional<Square> measured_square(const Order& o, const Entries& site) {
    if (!site.has(Entry::diagonal_rising_m) || !site.has(Entry::diagonal_falling_m)) return {};
    std::optional<double> rise_m;
    if (site.has(Entry::sill_rise_m)) rise_m = site.of(Entry::sill_rise_m);
    return squareness(site.of(Entry::diagonal_rising_m), site.of(Entry::diagonal_falling_m),
                      o.width, o.height, rise_m);
}

void judge(Order& o, const Entries& site, const opening::UnitSize& drawn) {
    const MethodRow& row = method_row(o.method);
    o.too_small = o.wide.unit_m < row.least_width_m || o.high.unit_m < row.least_height_m;
    if (o.square)
        o.too_racked = o.method == Method::insert &&
                       std::max(o.square->lean_m, o.square->drop_m) > too_racked_m;
    o.shallow = o.method == Method::insert && site.of(Entry::pocket_depth_m, 1) < pocket_depth_m;
    const auto off = [](const TapeSize& t, double drawn_m) {
        return t.count && std::fabs(t.least_m - drawn_m) > far_off_m;
    };
    o.elsewhere = off(o.width, drawn.width_m) || off(o.height, drawn.height_m);
}

} // namespace

const MethodRow& method_row(Method method) {
    return rows[static_cast<std::size_t>(method)];
}

Method method_of(const House& house, const OpeningRecord& record) {
    using opening::Installation;
    const opening::Remedy* chosen = chosen_remedy(record);
    if (!chosen) return Method::none;
    const opening::Opening &was = record.today, now = remedy_case(house, record).opening;
    const bool glass = other_glass(was.glazing, now.glazing);
    const bool sash = was.sash.fit != now.sash.fit;
    // The facts decide; where they leave it open (a wood unit for a wood unit), the ready-made
    // remedy it began as.
    if (now.installation != was.installation)
        return now.installation == Installation::insert ? Method::insert : Method::full_frame;
    const bool insert = now.installation == Installation::insert || begins(chosen->key, "insert_");
    const bool as_unit = begins(chosen->key, "full_") || begins(chosen->key, "insert_");
    if (now.frame != was.frame || ((glass || sash) && as_unit))
        return insert ? Method::insert : Method::full_frame;
    if (glass) return Method::glass;
    const opening::Panel panel = now.glazing.panel;
    if (panel != was.glazing.panel && panel != opening::Panel::none)
        return panel == opening::Panel::film ? Method::film : Method::panel;
    if (now.glazing.storm != was.glazing.storm && now.glazing.storm != opening::Storm::none)
        return Method::storm;
    return Method::none;
}

opening::UnitSize usual_clearance(Method method, const opening::Opening& remedy) {
    const MethodRow& row = method_row(method);
    if (method != Method::full_frame) return {row.width_m, row.height_m};
    return {2 * remedy.shim.width_m, 2 * remedy.shim.width_m};
}

double order_step_m(Units units) {
    return units == Units::us ? inch_m / 8 : 0.001;
}

double rounded_down_m(double m, Units units) {
    return floor_to(m, order_step_m(units));
}

double rounded_up_m(double m, Units units) {
    return -floor_to(-m, order_step_m(units));
}

opening::UnitSize drawn_size(Method method, const opening::Case& today,
                             const opening::Opening& remedy) {
    const opening::Opening& o = today.opening;
    switch (method) {
    case Method::glass: {
        const opening::Daylight d = opening::daylight(today);
        return {d.rebate_width_m, d.rebate_height_m};
    }
    case Method::insert: {
        opening::Opening in_old_frame = remedy;
        in_old_frame.installation = opening::Installation::insert;
        const opening::UnitSize unit = opening::unit_size(in_old_frame);
        return {unit.width_m + 2 * opening::bed_m, unit.height_m + 2 * opening::bed_m};
    }
    case Method::full_frame: {
        const double pocket_m = opening::has_pockets(o) ? opening::pocket_m : 0;
        return {o.width_m + 2 * (o.shim.width_m + pocket_m), o.height_m + 2 * o.shim.width_m};
    }
    case Method::storm:
    case Method::panel:
        return opening::between_faces(today);
    default:
        return {o.width_m, o.height_m};
    }
}

TapeSize tape_size(const Entries& site, Entry first) {
    TapeSize t;
    double m[3] = {};
    for (int i = 0; i < 3; ++i) {
        const auto e = static_cast<Entry>(static_cast<int>(first) + i);
        if (!site.has(e)) continue;
        m[i] = site.of(e);
        t.least_m = t.count ? std::min(t.least_m, m[i]) : m[i];
        t.most_m = t.count ? std::max(t.most_m, m[i]) : m[i];
        ++t.count;
    }
    t.uneven = t.most_m - t.least_m > even_m + 1e-9;
    t.ends_m = t.least_end_m = t.least_m;
    if (t.count < 3) return t;
    t.ends_m = (m[0] + m[2]) / 2;
    t.least_end_m = std::min(m[0], m[2]);
    t.bow_m = m[1] - t.ends_m;
    t.taper_m = m[2] - m[0];
    return t;
}

std::optional<Square> squareness(double rising_m, double falling_m, const TapeSize& width,
                                 const TapeSize& height, std::optional<double> rise_m) {
    if (!width.count && !height.count) return {};
    const double w = width.count ? width.ends_m : other_side_m(rising_m, falling_m, height.ends_m);
    const double h = height.count ? height.ends_m : other_side_m(rising_m, falling_m, width.ends_m);
    if (w <= 0 || h <= 0) return {};
    const double both_m2 = (rising_m * rising_m - falling_m * falling_m) / 4;
    // The head rises as the sill does, and by what the right is higher than the left.
    const double drop_m = rise_m.value_or(0) + height.taper_m / 2;
    Square q;
    q.level_known = rise_m.has_value();
    q.difference_m = std::fabs(rising_m - falling_m);
    q.lean_m = std::fabs((both_m2 - h * drop_m) / w);
    q.drop_m = std::fabs(q.level_known ? drop_m : both_m2 / h);
    q.racked = q.difference_m > square_m + 1e-9;
    const double most_off_m = std::max(q.level_known ? q.lean_m : 0, q.level_known ? q.drop_m : 0);
    q.counts = std::max(q.difference_m, most_off_m) > strict_square_m + 1e-9;
    q.fits_width_m = fitting_m(width, w, q.lean_m);
    q.fits_height_m = fitting_m(height, h, q.drop_m);
    return q;
}

Order order(const House& house, const OpeningRecord& record) {
    const Entries& site = record.site;
    const opening::Opening remedy = remedy_case(house, record).opening;
    Order o;
    o.method = method_of(house, record);
    o.width = tape_size(site, Entry::width_top_m);
    o.height = tape_size(site, Entry::height_left_m);
    o.measured = o.width.count == 3 && o.height.count == 3;
    o.quantity = o.method == Method::glass ? 2 : 1;
    o.square = measured_square(o, site);
    if (site.has(Entry::maker_deducts))
        o.deducts = site.of(Entry::maker_deducts) > 0.5 ? Deducts::maker : Deducts::sheet;
    const opening::UnitSize usual = usual_clearance(o.method, remedy);
    const opening::UnitSize drawn = drawn_size(o.method, today_case(house, record), remedy);
    const bool counts = o.square && o.square->counts, ours = o.deducts == Deducts::sheet;
    constexpr double any_m = 1e9;
    o.wide = order_size(o.width, drawn.width_m, counts ? o.square->fits_width_m : any_m,
                        site.of(Entry::deduct_width_m, usual.width_m), ours, house.units);
    o.high = order_size(o.height, drawn.height_m, counts ? o.square->fits_height_m : any_m,
                        site.of(Entry::deduct_height_m, usual.height_m), ours, house.units);
    judge(o, site, drawn);
    return o;
}

} // namespace shimlight::house
