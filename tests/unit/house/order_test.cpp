// SPDX-License-Identifier: MIT
// What is ordered: against tapes held to random quadrilaterals, and against the polygon itself.
#include "house/order.hpp"
#include "opening/dimensions.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace shimlight;
using namespace shimlight::house;

namespace {

constexpr double inch = 0.0254;

struct Point {
    double x = 0, y = 0;
};
double apart(Point a, Point b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// As it stands: bottom left, bottom right, top right, top left.
using Corners = std::array<Point, 4>;

/// Whether an upright rectangle lies somewhere in the polygon: the polygon is cut by each of its
/// own sides moved inwards by what the rectangle reaches towards it, and something must be left for
/// the rectangle's corner.
bool holds(const Corners& polygon, double w, double h) {
    std::vector<Point> left(polygon.begin(), polygon.end());
    for (std::size_t i = 0; i < 4 && !left.empty(); ++i) {
        const Point a = polygon[i], b = polygon[(i + 1) % 4];
        const double nx = -(b.y - a.y), ny = b.x - a.x; // inwards, counter-clockwise
        const double reach = std::min(0.0, nx * w) + std::min(0.0, ny * h);
        const auto inside = [&](Point p) { return nx * (p.x - a.x) + ny * (p.y - a.y) + reach; };
        std::vector<Point> cut;
        for (std::size_t j = 0; j < left.size(); ++j) {
            const Point p = left[j], q = left[(j + 1) % left.size()];
            const double at_p = inside(p), at_q = inside(q);
            if (at_p >= 0) cut.push_back(p);
            if ((at_p < 0) != (at_q < 0)) {
                const double share = at_p / (at_p - at_q);
                cut.push_back({p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)});
            }
        }
        left = cut;
    }
    return !left.empty();
}

/// Where a level (or plumb) line at a share of the way up (across) meets the sides, apart.
double level_m(const Corners& c, double share) {
    const auto at = [share](Point low, Point high) {
        return Point{low.x + share * (high.x - low.x), low.y + share * (high.y - low.y)};
    };
    return apart(at(c[0], c[3]), at(c[1], c[2]));
}
double plumb_m(const Corners& c, double share) {
    const auto at = [share](Point left, Point right) {
        return Point{left.x + share * (right.x - left.x), left.y + share * (right.y - left.y)};
    };
    return apart(at(c[0], c[1]), at(c[3], c[2]));
}

/// What the tape shows of it.
struct Tape {
    TapeSize width, height;
    double rising_m, falling_m, rise_m;
};
Tape held_to(const Corners& c, double jamb_bow_m = 0) {
    Entries site;
    const double shares_up[] = {1, 0.5, 0}, shares_across[] = {0, 0.5, 1};
    for (int i = 0; i < 3; ++i) {
        site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i),
                 level_m(c, shares_up[i]) - (i == 1 ? jamb_bow_m : 0));
        site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                 plumb_m(c, shares_across[i]));
    }
    return {tape_size(site, Entry::width_top_m), tape_size(site, Entry::height_left_m),
            apart(c[0], c[2]), apart(c[1], c[3]), c[1].y - c[0].y};
}

/// Sides that lean and drop by up to `off_m`, each corner by itself.
Corners crooked(physics::Draw& draw, double off_m) {
    const double w = draw.between(0.5, 1.6), h = draw.between(0.6, 2.0);
    Corners c{Point{0, 0}, Point{w, 0}, Point{w, h}, Point{0, h}};
    for (Point& p : c) {
        p.x += draw.between(-off_m, off_m);
        p.y += draw.between(-off_m, off_m);
    }
    return c;
}

House with(const std::string& key) {
    House house = demo_house();
    OpeningRecord& record = house.openings[0];
    record.remedies = {opening::make_remedy(key, today_case(house, record))};
    record.chosen = 0;
    return house;
}

void set_all(House& house, double width_m, double height_m) {
    Entries& site = house.openings[0].site;
    for (int i = 0; i < 3; ++i) {
        site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i), width_m);
        site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i), height_m);
    }
}

Order of(const House& house) {
    return order(house, house.openings[0]);
}

} // namespace

TEST_CASE("order: the containment check itself knows a rectangle and a parallelogram") {
    const Corners square{Point{0, 0}, Point{1, 0}, Point{1, 2}, Point{0, 2}};
    CHECK(holds(square, 0.999, 1.999));
    CHECK_FALSE(holds(square, 1.001, 1.5));
    CHECK_FALSE(holds(square, 0.5, 2.001));
    const Corners leaning{Point{0, 0}, Point{1, 0}, Point{1.1, 2}, Point{0.1, 2}};
    CHECK(holds(leaning, 0.899, 1.999));
    CHECK_FALSE(holds(leaning, 0.901, 1.999));
    CHECK(holds(leaning, 0.949, 0.999)); // half as high, half the lean
}

TEST_CASE("order: diagonals give lean and drop of any quadrilateral") {
    physics::Draw draw(71);
    double worst_m = 0;
    for (int i = 0; i < 2000; ++i) {
        const Corners c = crooked(draw, 0.012);
        const Tape t = held_to(c);
        const auto q = squareness(t.rising_m, t.falling_m, t.width, t.height, t.rise_m);
        REQUIRE(q);
        const double lean_m = (c[3].x - c[0].x + c[2].x - c[1].x) / 2;
        const double drop_m = (c[1].y - c[0].y + c[2].y - c[3].y) / 2;
        worst_m = std::max({worst_m, std::fabs(q->lean_m - std::fabs(lean_m)),
                            std::fabs(q->drop_m - std::fabs(drop_m))});
    }
    MESSAGE("largest deviation of lean and drop, mm: ", 1000 * worst_m);
    // The tape lies along the sides, not level: a second-order difference.
    CHECK(worst_m < 0.0006);
}

TEST_CASE("order: what is said to fit fits, in random quadrilaterals, level known or not") {
    physics::Draw draw(72);
    double tightest_m = 1;
    for (int i = 0; i < 4000; ++i) {
        const Corners c = crooked(draw, 0.012);
        const Tape t = held_to(c);
        const auto known = squareness(t.rising_m, t.falling_m, t.width, t.height, t.rise_m);
        REQUIRE(known);
        // 1 mm for the tape that lies along crooked sides; the least clearance is 3 mm.
        constexpr double spared_m = 0.001;
        CHECK(holds(c, known->fits_width_m - spared_m, known->fits_height_m - spared_m));
        if (holds(c, known->fits_width_m + 0.004, known->fits_height_m)) continue;
        tightest_m = std::min(tightest_m, known->fits_width_m);
    }
    CHECK(tightest_m < 1); // it is not safe by being far too small
    // Level not known: safe where sides lean or head and sill drop, or both to one side.
    for (int i = 0; i < 2000; ++i) {
        const double w = draw.between(0.5, 1.6), h = draw.between(0.6, 2.0);
        const double lean_m = draw.between(0, 0.02), drop_m = draw.between(0, 0.02);
        const double way = draw.whole(0, 1) ? 1 : -1;
        const Corners c{Point{0, 0}, Point{w, way * drop_m},
                        Point{w + way * lean_m, h + way * drop_m}, Point{way * lean_m, h}};
        const Tape t = held_to(c);
        const auto q = squareness(t.rising_m, t.falling_m, t.width, t.height, {});
        REQUIRE(q);
        CHECK(holds(c, q->fits_width_m - 0.001, q->fits_height_m - 0.001));
    }
}

TEST_CASE("order: of a parallelogram nothing wider fits") {
    physics::Draw draw(73);
    for (int i = 0; i < 1000; ++i) {
        const double w = draw.between(0.5, 1.6), h = draw.between(0.6, 2.0);
        const double lean_m = draw.between(-0.03, 0.03);
        const Corners c{Point{0, 0}, Point{w, 0}, Point{w + lean_m, h}, Point{lean_m, h}};
        const Tape t = held_to(c);
        const auto q = squareness(t.rising_m, t.falling_m, t.width, t.height, 0.0);
        REQUIRE(q);
        CHECK(q->lean_m == doctest::Approx(std::fabs(lean_m)).epsilon(0.001));
        CHECK(holds(c, q->fits_width_m - 0.0003, h - 0.0003));
        CHECK_FALSE(holds(c, q->fits_width_m + 0.0006, h - 0.0003));
    }
}

TEST_CASE("order: a frame tilted as a whole has even diagonals, and only a level shows it") {
    const double lean_m = 0.015, w = 0.9, h = 1.5, drop_m = -lean_m * w / h;
    const Corners c{Point{0, 0}, Point{w, drop_m}, Point{w + lean_m, h + drop_m}, Point{lean_m, h}};
    const Tape t = held_to(c);
    const auto blind = squareness(t.rising_m, t.falling_m, t.width, t.height, {});
    CHECK_FALSE(blind->counts);
    const auto seen = squareness(t.rising_m, t.falling_m, t.width, t.height, t.rise_m);
    CHECK(seen->counts);
    CHECK(seen->lean_m == doctest::Approx(lean_m).epsilon(0.01));
    CHECK_FALSE(holds(c, blind->fits_width_m - 0.001, blind->fits_height_m - 0.001));
    CHECK(holds(c, seen->fits_width_m - 0.001, seen->fits_height_m - 0.001));
}

TEST_CASE("order: a bow inwards takes room, one outwards none; half a bow is no taper") {
    const Corners c{Point{0, 0}, Point{0.9, 0}, Point{0.9, 1.5}, Point{0, 1.5}};
    const Tape in = held_to(c, 0.005), out = held_to(c, -0.005);
    CHECK(in.width.bow_m == doctest::Approx(-0.005));
    CHECK(in.width.taper_m == doctest::Approx(0));
    CHECK(squareness(in.rising_m, in.falling_m, in.width, in.height, 0.0)->fits_width_m ==
          doctest::Approx(0.895));
    CHECK(squareness(out.rising_m, out.falling_m, out.width, out.height, 0.0)->fits_width_m ==
          doctest::Approx(0.9));
    CHECK(in.width.uneven);
}

TEST_CASE("order: diagonals that differ by 1/8, 1/4, 1/2 in") {
    // 36 × 60 in: 0.12, 0.24, 0.49 in out of plumb (worked by the parallelogram law).
    const double difference_in[] = {0.125, 0.25, 0.5}, lean_in[] = {0.12, 0.24, 0.49};
    for (int i = 0; i < 3; ++i) {
        TapeSize width, height;
        width = {1, 36 * inch, 36 * inch, false, 36 * inch, 36 * inch, 0, 0};
        const double straight_m = std::hypot(36, 60) * inch;
        const auto q = squareness(straight_m + difference_in[i] / 2 * inch,
                                  straight_m - difference_in[i] / 2 * inch, width, height, {});
        REQUIRE(q);
        CHECK(q->lean_m / inch == doctest::Approx(lean_in[i]).epsilon(0.02));
        CHECK(q->racked == (difference_in[i] > 0.25));
        CHECK(q->counts == (difference_in[i] > 0.13));
        CHECK(q->fits_width_m == doctest::Approx(36 * inch - q->lean_m));
    }
}

TEST_CASE("order: largest for the estimate and up, smallest for the order and down") {
    House house = with("insert_open");
    Entries& site = house.openings[0].site;
    const double widths_in[] = {35.5, 35.3, 35.45}, heights_in[] = {60, 60.15, 60};
    for (int i = 0; i < 3; ++i) {
        site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i), widths_in[i] * inch);
        site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                 heights_in[i] * inch);
    }
    Order o = of(house);
    CHECK(o.measured);
    CHECK(o.wide.estimating_m == doctest::Approx(35.5 * inch));
    CHECK(o.high.estimating_m == doctest::Approx(60.25 * inch));
    CHECK(o.wide.smallest_m == doctest::Approx(35.3 * inch));
    CHECK(o.wide.opening_m == doctest::Approx(35.25 * inch));
    house.units = Units::si;
    o = of(house);
    CHECK(o.wide.opening_m == doctest::Approx(0.896));    // 896.6 mm
    CHECK(o.high.estimating_m == doctest::Approx(1.528)); // 1527.8 mm
}

TEST_CASE("order: a measure on a step stays on it") {
    for (int eighths = 1; eighths < 800; ++eighths) {
        const double m = eighths / 8.0 * inch;
        CHECK(rounded_down_m(m, Units::us) == doctest::Approx(m));
        CHECK(rounded_up_m(m, Units::us) == doctest::Approx(m));
        CHECK(rounded_down_m(m + 0.0005, Units::us) == doctest::Approx(m));
        CHECK(rounded_up_m(m - 0.0005, Units::us) == doctest::Approx(m));
        CHECK(rounded_down_m(eighths / 1000.0, Units::si) == doctest::Approx(eighths / 1000.0));
    }
}

TEST_CASE("order: nobody deducts until it was asked, and never two") {
    House house = with("insert_open");
    set_all(house, 35.25 * inch, 60 * inch);
    Entries& site = house.openings[0].site;
    CHECK(of(house).deducts == Deducts::not_asked);
    CHECK(of(house).wide.unit_m == of(house).wide.opening_m);
    site.set(Entry::maker_deducts, 1);
    CHECK(of(house).wide.unit_m == of(house).wide.opening_m);
    site.set(Entry::maker_deducts, 0);
    CHECK(of(house).wide.unit_m == doctest::Approx(35 * inch));
    site.set(Entry::deduct_width_m, 0.5 * inch);
    CHECK(of(house).wide.unit_m == doctest::Approx(34.75 * inch));
    CHECK(of(house).high.unit_m == doctest::Approx(59.75 * inch));
}

TEST_CASE("order: the method follows from the remedy") {
    const std::pair<const char*, Method> all[] = {
        {"lock_home", Method::none},        {"move_seat", Method::none},
        {"caulk_casing", Method::none},     {"weatherstrip", Method::none},
        {"foam_joint", Method::none},       {"rod_joint", Method::none},
        {"fill_pockets", Method::none},     {"curtain", Method::none},
        {"film_inside", Method::film},      {"panel_inside", Method::panel},
        {"storm_clear", Method::storm},     {"storm_low_e", Method::storm},
        {"insert_open", Method::insert},    {"insert_foamed", Method::insert},
        {"full_vinyl", Method::full_frame}, {"full_wood", Method::full_frame},
        {"full_triple", Method::full_frame}};
    CHECK(std::size(all) + 1 == opening::ready_remedies().size()); // and a warmer room
    for (const auto& [key, method] : all) {
        CAPTURE(key);
        const House house = with(key);
        CHECK(method_of(house, house.openings[0]) == method);
    }
    // An insert for an insert: neither frame nor installation changes.
    House vinyl = demo_house();
    OpeningRecord& record = vinyl.openings[0];
    record.today.frame = opening::FrameMaterial::vinyl;
    record.today.installation = opening::Installation::insert;
    record.remedies = {opening::make_remedy("insert_open", today_case(vinyl, record))};
    record.chosen = 0;
    CHECK(method_of(vinyl, record) == Method::insert);
    House house = with("lock_home");
    opening::Remedy& own = house.openings[0].remedies[0];
    own.key.clear();
    opening::set_change(own, today_case(house, house.openings[0]),
                        *opening::find_field("glazing.panes"), 2);
    CHECK(method_of(house, house.openings[0]) == Method::glass);
    CHECK(of(house).quantity == 2);
    house.openings[0].chosen = -1;
    CHECK(method_of(house, house.openings[0]) == Method::none);
}

TEST_CASE("order: the levers stand in for a tape that was not there") {
    House house = with("insert_open");
    const opening::Opening o = house.openings[0].today;
    Order insert = of(house);
    CHECK_FALSE(insert.measured);
    CHECK(insert.wide.smallest_m == doctest::Approx(o.width_m - 2 * opening::wood_jamb_m));
    house = with("full_vinyl");
    house.openings[0].site.set(Entry::maker_deducts, 0);
    const Order full = of(house);
    CHECK(full.wide.smallest_m == doctest::Approx(o.width_m + 2 * o.shim.width_m));
    // The joint of the remedy is what is left around the unit.
    CHECK(full.wide.clearance_m ==
          doctest::Approx(2 * remedy_case(house, house.openings[0]).opening.shim.width_m));
    CHECK(full.wide.unit_m <= o.width_m + 1e-9);
    CHECK(full.wide.unit_m > o.width_m - 0.0033);
}

TEST_CASE("order: too small, too racked, too shallow, measured elsewhere") {
    House house = with("insert_open");
    Entries& site = house.openings[0].site;
    site.set(Entry::maker_deducts, 0);
    const auto width = [&](double m) { set_all(house, m, 58 * inch); };
    width(16.25 * inch);
    CHECK_FALSE(of(house).too_small); // 16 in
    width(16.125 * inch);
    CHECK(of(house).too_small);
    const double drawn_m = house.openings[0].today.width_m - 2 * opening::wood_jamb_m;
    width(drawn_m + 0.025);
    CHECK_FALSE(of(house).elsewhere);
    width(drawn_m + 0.026);
    CHECK(of(house).elsewhere);
    site.set(Entry::pocket_depth_m, 3.25 * inch);
    CHECK_FALSE(of(house).shallow);
    site.set(Entry::pocket_depth_m, 0.08);
    CHECK(of(house).shallow);
    width(0.75);
    site.set(Entry::sill_rise_m, 0);
    const double w = 0.75, h = 58 * inch;
    for (const double lean_m : {0.012, 0.0135}) {
        site.set(Entry::diagonal_rising_m, std::hypot(w + lean_m, h));
        site.set(Entry::diagonal_falling_m, std::hypot(w - lean_m, h));
        CHECK(of(house).too_racked == (lean_m > 0.0127));
        CHECK(of(house).wide.opening_m <= w - lean_m + 1e-6);
    }
}
