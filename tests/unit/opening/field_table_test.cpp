// SPDX-License-Identifier: MIT
#include "opening/field_table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <random>
#include <set>
#include <string>

using namespace shimlight::opening;

namespace {

constexpr double round_off =
    1e-12; // relative to the values of the fields, all of order 1e4 or less

/// A case in which every choice is possible.
Case rich_case() {
    Case c;
    c.opening.glazing.panes = 3;
    return c;
}

const Field& field(std::string_view key) {
    const Field* found = find_field(key);
    REQUIRE_MESSAGE(found != nullptr, std::string(key));
    return *found;
}

} // namespace

TEST_CASE("at least 26 fields, each with a unique key, short label, one sentence, sane limits") {
    CHECK(fields().size() >= 26);
    std::set<std::string_view> keys, labels;
    for (const Field& f : fields()) {
        CAPTURE(f.key);
        CHECK(keys.insert(f.key).second);
        CHECK(labels.insert(f.label).second);
        CHECK(f.label.size() <= 18);
        CHECK(f.help.size() > 10);
        CHECK(f.help.back() == '.');
        CHECK(f.limit_reason.back() == '.');
        CHECK(f.min < f.max);
        CHECK(f.step > 0);
        CHECK(f.step <= f.max - f.min);
    }
}

TEST_CASE("the defaults lie within the limits") {
    const Case c;
    for (const Field& f : fields()) {
        CAPTURE(f.key);
        CHECK(f.get(c) >= f.min);
        CHECK(f.get(c) <= f.max);
    }
}

TEST_CASE("what was set within the limits is read back") {
    std::mt19937 random(20261125);
    for (const Field& f : fields()) {
        for (int i = 0; i < 20; ++i) {
            Case c = rich_case();
            std::uniform_real_distribution<double> value(f.min, f.max);
            double wanted = value(random);
            if (f.key == "room.height_m" || f.key == "room.depth_m") wanted = f.max;
            const bool whole = f.quantity == Quantity::choice || f.quantity == Quantity::count ||
                               f.quantity == Quantity::yes_no;
            if (whole) wanted = std::round(wanted);
            CAPTURE(f.key);
            CAPTURE(wanted);
            CHECK_FALSE(set_field(c, f, wanted));
            CHECK(std::fabs(f.get(c) - wanted) <= round_off * std::fabs(wanted));
        }
    }
}

TEST_CASE("values beyond the limits end at the limit and say so") {
    for (const Field& f : fields()) {
        CAPTURE(f.key);
        Case c = rich_case();
        CHECK(set_field(c, f, f.max + 10));
        CHECK(f.get(c) == f.max);
        c = rich_case();
        CHECK(set_field(c, f, f.min - 10));
        CHECK(f.get(c) >= f.min);
    }
}

TEST_CASE("a value that is no number changes nothing") {
    for (const Field& f : fields()) {
        Case c = rich_case();
        const double before = f.get(c);
        CHECK(set_field(c, f, std::nan("")));
        CHECK(set_field(c, f, std::numeric_limits<double>::infinity()));
        CHECK(f.get(c) == before);
    }
}

TEST_CASE("choices have keys and labels as many as the limits allow") {
    for (const Field& f : fields()) {
        CAPTURE(f.key);
        if (f.quantity != Quantity::choice) {
            CHECK(f.choices.empty());
            continue;
        }
        CHECK(f.choices.size() == static_cast<std::size_t>(f.max - f.min) + 1);
        std::set<std::string_view> keys;
        for (const Choice& choice : f.choices)
            CHECK(keys.insert(choice.key).second);
    }
}

TEST_CASE("fewer panes drop a coating that has lost its face") {
    Case c = rich_case();
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::face5));
    set_field(c, field("glazing.panes"), 2);
    CHECK(c.opening.glazing.coating == Coating::none);
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::face3));
    CHECK(c.opening.glazing.coating == Coating::face3);
    set_field(c, field("glazing.panes"), 3);
    CHECK(c.opening.glazing.coating == Coating::face3);
}

TEST_CASE("an impossible choice is refused") {
    Case c;
    c.opening.glazing.panes = 2;
    CHECK_FALSE(choice_possible(field("glazing.coating"), 4, c));
    CHECK(choice_possible(field("glazing.coating"), 3, c));
    CHECK_FALSE(choice_possible(field("glazing.coating"), 5, c));
    CHECK_FALSE(choice_possible(field("glazing.coating"), 7, c)); // there is none
    CHECK(set_field(c, field("glazing.coating"), static_cast<double>(Coating::face5)));
    CHECK(c.opening.glazing.coating == Coating::none);
}

TEST_CASE("a slipped sash is not locked, a locked one has not slipped") {
    Case c;
    set_field(c, field("sash.slipped_m"), 0.004);
    CHECK_FALSE(c.opening.sash.locked);
    set_field(c, field("sash.locked"), 1);
    CHECK(c.opening.sash.slipped_m == 0);
}

TEST_CASE("the room always holds its window and its person") {
    Case c;
    set_field(c, field("sill_m"), 1.6);
    set_field(c, field("height_m"), 2.4);
    CHECK(c.room.height_m > c.opening.sill_m + c.opening.height_m);
    CHECK(set_field(c, field("room.height_m"), 2.2));
    CHECK(c.room.height_m > c.opening.sill_m + c.opening.height_m);
    set_field(c, field("room.depth_m"), 2);
    set_field(c, field("room.seat_distance_m"), 4);
    CHECK(c.room.depth_m > c.room.seat_distance_m);
}

TEST_CASE("fields that do nothing here say so") {
    Case c;
    CHECK_FALSE(applies(field("glazing.gap_m"), c));
    CHECK_FALSE(applies(field("glazing.gas_share"), c));
    CHECK_FALSE(applies(field("glazing.emissivity"), c));
    CHECK(applies(field("shim.fill"), c));
    c.opening.glazing.panes = 2;
    CHECK(applies(field("glazing.gap_m"), c));
    CHECK_FALSE(applies(field("glazing.gas_share"), c));
    c.opening.glazing.gas = shimlight::physics::Gas::argon;
    c.opening.glazing.coating = Coating::face3;
    CHECK(applies(field("glazing.gas_share"), c));
    CHECK(applies(field("glazing.emissivity"), c));
}

TEST_CASE("an unknown key has no field") {
    CHECK(find_field("glazing.colour") == nullptr);
}

TEST_CASE("at most four panes stand one behind the other") {
    Case c = rich_case();
    CHECK_FALSE(set_field(c, field("glazing.storm"), 1));
    CHECK_FALSE(choice_possible(field("glazing.panel"), 1, c));
    CHECK(set_field(c, field("glazing.panel"), 1));
    CHECK(c.opening.glazing.panel == Panel::none);
    set_field(c, field("glazing.panes"), 2);
    CHECK_FALSE(set_field(c, field("glazing.panel"), 3));
    CHECK(choice_possible(field("glazing.panel"), 1, c)); // another in its place
    CHECK_FALSE(set_field(c, field("glazing.panes"), 3));
    CHECK(c.opening.glazing.panel == Panel::none);
    CHECK(c.opening.glazing.storm == Storm::clear);
}

TEST_CASE("a coating's kind brings its emissivity, which then can be moved") {
    Case c;
    c.opening.glazing.panes = 2;
    c.opening.glazing.coating = Coating::face3;
    set_field(c, field("glazing.coating_kind"), static_cast<double>(CoatingKind::hard));
    CHECK(c.opening.glazing.emissivity == 0.16);
    set_field(c, field("glazing.emissivity"), 0.2);
    set_field(c, field("glazing.coating_kind"), static_cast<double>(CoatingKind::hard));
    CHECK(c.opening.glazing.emissivity == 0.2);
    CHECK(applies(field("glazing.coating_kind"), c));
    c.opening.glazing.coating = Coating::none;
    CHECK_FALSE(applies(field("glazing.coating_kind"), c));
}

TEST_CASE("read in the order of the table, a case comes out as it was written") {
    std::mt19937 random(20261128);
    for (int i = 0; i < 200; ++i) {
        Case before;
        for (const Field& f : fields())
            set_field(before, f, std::uniform_real_distribution<double>(f.min, f.max)(random));
        Case read = before;
        for (const Field& f : fields())
            set_field(read, f, f.get(before));
        for (const Field& f : fields()) {
            CAPTURE(f.key);
            CHECK(f.get(read) == f.get(before));
        }
    }
}

TEST_CASE("the second coating has its own kind and emissivity where two faces are coated") {
    Case c;
    Glazing& g = c.opening.glazing;
    const Field &kind = field("glazing.coating_kind_2"), &dull = field("glazing.emissivity_2");
    g.panes = 3;
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::face2));
    CHECK_FALSE(applies(kind, c));
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::faces2and5));
    CHECK(applies(kind, c));
    CHECK_FALSE(applies(dull, c)); // the same as the first
    set_field(c, kind, static_cast<double>(SecondCoating::one_silver));
    CHECK(applies(dull, c));
    CHECK(g.emissivity_2 == 0.08);
    CHECK(g.emissivity == Glazing{}.emissivity);
    set_field(c, field("glazing.panes"), 2);
    CHECK(g.coating == Coating::none);
    CHECK_FALSE(choice_possible(field("glazing.coating"), 5, c));
    CHECK(choice_possible(field("glazing.coating"), 6, c));
}

TEST_CASE("a coating that the room can touch begins as a hard one") {
    Case c;
    Glazing& g = c.opening.glazing;
    g.panes = 2;
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::faces2and4));
    CHECK(g.coating_kind_2 == SecondCoating::hard);
    CHECK(g.emissivity_2 == 0.16);
    set_field(c, field("glazing.emissivity_2"), 0.2);
    set_field(c, field("glazing.coating"), static_cast<double>(Coating::faces2and4));
    CHECK(g.emissivity_2 == 0.2); // set again it stays
    set_field(c, field("glazing.panes"), 3);
    CHECK(g.coating == Coating::faces2and4); // faces 2 and 4 of three panes are in its spaces
}
