// SPDX-License-Identifier: MIT
// Each caution appears exactly when its facts say so, on both sides of each published number.
#include "house/cautions.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace shimlight;
using namespace shimlight::house;

namespace {

constexpr double in = 0.0254, ft = 0.3048;

/// An opening of which everything is known, and nothing calls for caution.
SiteFacts harmless() {
    SiteFacts f;
    f.bedroom = f.near_door = f.near_bath = f.near_stairs = f.near_wires = Known::no;
    f.year_built = 2010;
    f.ground_m = 0.5;
    f.sill_m = 1.0;
    f.height_m = 1.2;
    f.glass.pane_width_m = 0.6;
    f.glass.pane_high_m = 0.5;
    f.glass.pane_bottom_m = 1.6;
    f.glass.clear_width_m = 0.8;
    f.glass.clear_height_m = 0.8;
    f.glass.clear_bottom_m = 1.0;
    f.today = f.glass;
    return f;
}

const Caution* find(const std::vector<Caution>& all, std::string_view key) {
    for (const Caution& c : all)
        if (c.row->key == key) return &c;
    return nullptr;
}

Known shown(const SiteFacts& f, std::string_view key) {
    const auto all = cautions(f);
    const Caution* c = find(all, key);
    return !c ? Known::no : c->unknown ? Known::unknown : Known::yes;
}

/// Facts on both sides of a row's edge: changed from harmless by `change`.
struct Step {
    const char* row;
    Known expected;
    void (*change)(SiteFacts&);
};

void large_low(SiteFacts& f) {
    f.glass.pane_width_m = 1.0;
    f.glass.pane_high_m = 9 * ft * ft + 0.001;
    f.glass.pane_bottom_m = 18 * in - 0.001;
}
void unit(SiteFacts& f) {
    f.method = Method::insert;
    f.any_work = f.disturbs_paint = true;
}

constexpr Step steps[] = {
    {"lead", Known::yes, [](SiteFacts& f) { unit(f), f.year_built = 1977; }},
    {"lead", Known::no, [](SiteFacts& f) { unit(f), f.year_built = 1978; }},
    {"lead", Known::unknown, [](SiteFacts& f) { unit(f), f.year_built.reset(); }},
    {"lead", Known::no, [](SiteFacts& f) { f.year_built = 1900; }}, // a seat is moved
    {"asbestos", Known::yes, [](SiteFacts& f) { unit(f), f.year_built = 1980; }},
    {"asbestos", Known::no, [](SiteFacts& f) { unit(f), f.year_built = 1981; }},
    {"asbestos", Known::unknown, [](SiteFacts& f) { unit(f), f.year_built.reset(); }},
    {"glass_low", Known::yes, large_low},
    {"glass_low", Known::no,
     [](SiteFacts& f) { large_low(f), f.glass.pane_high_m = 9 * ft * ft - 0.001; }},
    {"glass_low", Known::no, [](SiteFacts& f) { large_low(f), f.glass.pane_bottom_m = 18 * in; }},
    {"glass_low", Known::no, // ends at 36 in
     [](SiteFacts& f) {
         large_low(f), f.glass.pane_width_m = 2, f.glass.pane_high_m = 36 * in,
                       f.glass.pane_bottom_m = 0;
     }},
    {"glass_low", Known::yes,
     [](SiteFacts& f) {
         large_low(f), f.glass.pane_width_m = 2, f.glass.pane_high_m = 36 * in + 0.001,
                       f.glass.pane_bottom_m = 0;
     }},
    {"glass_door", Known::yes,
     [](SiteFacts& f) { f.near_door = Known::yes, f.glass.pane_bottom_m = 60 * in - 0.001; }},
    {"glass_door", Known::no,
     [](SiteFacts& f) { f.near_door = Known::yes, f.glass.pane_bottom_m = 60 * in; }},
    {"glass_door", Known::unknown,
     [](SiteFacts& f) { f.near_door = Known::unknown, f.glass.pane_bottom_m = 1; }},
    {"glass_bath", Known::yes,
     [](SiteFacts& f) { f.near_bath = Known::yes, f.glass.pane_bottom_m = 60 * in - 0.001; }},
    {"glass_bath", Known::no,
     [](SiteFacts& f) { f.near_bath = Known::yes, f.glass.pane_bottom_m = 60 * in; }},
    {"glass_bath", Known::unknown,
     [](SiteFacts& f) { f.near_bath = Known::unknown, f.glass.pane_bottom_m = 1; }},
    {"glass_stairs", Known::yes,
     [](SiteFacts& f) { f.near_stairs = Known::yes, f.glass.pane_bottom_m = 60 * in - 0.001; }},
    {"glass_stairs", Known::no,
     [](SiteFacts& f) { f.near_stairs = Known::yes, f.glass.pane_bottom_m = 60 * in; }},
    {"glass_stairs", Known::unknown,
     [](SiteFacts& f) { f.near_stairs = Known::unknown, f.glass.pane_bottom_m = 1; }},
    {"way_out", Known::yes, [](SiteFacts& f) { f.bedroom = Known::yes; }},
    {"way_out", Known::unknown, [](SiteFacts& f) { f.bedroom = Known::unknown; }},
    {"way_out", Known::unknown, [](SiteFacts& f) { f.basement = true; }},
    {"way_out", Known::yes, [](SiteFacts& f) { f.basement = true, f.bedroom = Known::yes; }},
    {"way_blocked", Known::yes, [](SiteFacts& f) { f.blocks_way = true, f.bedroom = Known::yes; }},
    {"way_blocked", Known::unknown,
     [](SiteFacts& f) { f.blocks_way = true, f.bedroom = Known::unknown; }},
    {"way_blocked", Known::no, [](SiteFacts& f) { f.bedroom = Known::yes; }},
    {"fall_child", Known::yes,
     [](SiteFacts& f) { f.sill_m = 24 * in - 0.001, f.ground_m = 72 * in + 0.001; }},
    {"fall_child", Known::no,
     [](SiteFacts& f) { f.sill_m = 24 * in, f.ground_m = 72 * in + 0.001; }},
    {"fall_child", Known::no,
     [](SiteFacts& f) { f.sill_m = 24 * in - 0.001, f.ground_m = 72 * in; }},
    {"fall_child", Known::unknown,
     [](SiteFacts& f) { f.sill_m = 24 * in - 0.001, f.ground_m.reset(); }},
    {"fall_work", Known::yes,
     [](SiteFacts& f) { unit(f), f.sill_m = 39 * in - 0.001, f.ground_m = 6 * ft; }},
    {"fall_work", Known::no,
     [](SiteFacts& f) { unit(f), f.sill_m = 39 * in, f.ground_m = 6 * ft; }},
    {"fall_work", Known::no,
     [](SiteFacts& f) { unit(f), f.sill_m = 0.5, f.ground_m = 6 * ft - 0.001; }},
    {"fall_work", Known::unknown,
     [](SiteFacts& f) { unit(f), f.sill_m = 0.5, f.ground_m.reset(); }},
    {"fall_work", Known::no, [](SiteFacts& f) { f.sill_m = 0.5, f.ground_m = 9; }},
    {"ladder", Known::yes, [](SiteFacts& f) { f.method = Method::storm, f.ground_m = 0.81; }},
    {"ladder", Known::no, [](SiteFacts& f) { f.method = Method::storm, f.ground_m = 0.79; }},
    {"ladder", Known::unknown, [](SiteFacts& f) { f.method = Method::storm, f.ground_m.reset(); }},
    {"ladder", Known::no, [](SiteFacts& f) { f.method = Method::insert, f.ground_m = 9; }},
    {"wires", Known::yes, [](SiteFacts& f) { f.any_work = true, f.near_wires = Known::yes; }},
    {"wires", Known::unknown,
     [](SiteFacts& f) { f.any_work = true, f.near_wires = Known::unknown; }},
    {"wires", Known::no, [](SiteFacts& f) { f.near_wires = Known::yes; }},
    {"foam", Known::yes, [](SiteFacts& f) { f.foams = true; }},
    {"lift", Known::yes, [](SiteFacts& f) { f.weight_kg = 23.1; }},
    {"lift", Known::no, [](SiteFacts& f) { f.weight_kg = 23; }},
    {"broken", Known::yes, unit},
    {"weights", Known::yes, [](SiteFacts& f) { f.pockets = f.any_work = true; }},
    {"weights", Known::no, [](SiteFacts& f) { f.pockets = true; }},
    {"heater", Known::yes, [](SiteFacts& f) { f.heater = f.any_work = true; }},
    {"heater", Known::yes, [](SiteFacts& f) { f.heater = f.covered = true; }},
    {"heater", Known::no, [](SiteFacts& f) { f.heater = true; }},
    {"fresh_air", Known::yes, [](SiteFacts& f) { f.tightens = true; }},
    {"cords", Known::yes, [](SiteFacts& f) { f.covered = true; }},
};

House with(const char* key) {
    House house = demo_house();
    OpeningRecord& record = house.openings[0];
    record.remedies = {opening::make_remedy(key, today_case(house, record))};
    record.chosen = 0;
    return house;
}

bool has(const House& house, std::string_view key) {
    const auto all = cautions(house, house.openings[0]);
    return find(all, key) != nullptr;
}

} // namespace

TEST_CASE("cautions: where nothing is wrong and all is known, none is shown") {
    CHECK(cautions(harmless()).empty());
}

TEST_CASE("cautions: each appears exactly when its facts say so") {
    std::set<std::string_view> tried;
    for (const Step& s : steps) {
        CAPTURE(s.row);
        CAPTURE(&s - steps);
        SiteFacts f = harmless();
        s.change(f);
        CHECK(shown(f, s.row) == s.expected);
        tried.insert(s.row);
    }
    for (const CautionRow& row : caution_rows())
        CHECK_MESSAGE(tried.count(row.key) == 1, std::string(row.key));
}

TEST_CASE("cautions: with nothing known all that could be are shown, and ask") {
    SiteFacts f = harmless();
    f.bedroom = f.near_door = f.near_bath = f.near_stairs = f.near_wires = Known::unknown;
    f.year_built.reset();
    f.ground_m.reset();
    f.sill_m = 0.5;
    f.glass.pane_bottom_m = 0.6;
    f.method = Method::full_frame;
    f.any_work = f.disturbs_paint = true;
    for (const Caution& c : cautions(f)) {
        CAPTURE(std::string(c.row->key));
        CHECK(c.unknown == c.row->asks.has_value());
    }
    CHECK(cautions(f).size() >= 10);
}

TEST_CASE("cautions: each names its rule, defers to local code, and rules nothing") {
    std::set<std::string_view> keys;
    for (const CautionRow& row : caution_rows()) {
        CHECK(keys.insert(row.key).second);
        CHECK_FALSE(row.name.empty());
        const bool known = row.rule.find("read") != std::string_view::npos ||
                           row.rule.find("from memory") != std::string_view::npos ||
                           row.rule.find("Common practice") != std::string_view::npos;
        CHECK_MESSAGE(known, std::string(row.rule));
        const std::string printed = rule_in_print(row);
        CHECK(printed.find("read)") == std::string::npos);
        CHECK((printed.find("from memory") == std::string::npos) ==
              (row.rule.find("from memory") == std::string_view::npos));
    }
    SiteFacts f = harmless();
    for (const Step& s : steps)
        if (s.expected != Known::no) s.change(f);
    for (const Caution& c : cautions(f)) {
        const std::string end = "Check your local code; licensed practice decides.";
        CHECK(c.words.size() > end.size());
        CHECK(c.words.substr(c.words.size() - end.size()) == end);
        for (const char* ruling : {"must be", "is required", "illegal", "complies"})
            CHECK_MESSAGE(c.words.find(ruling) == std::string::npos, c.words);
    }
}

TEST_CASE("cautions: the way out beside the published figures") {
    SiteFacts f = harmless();
    f.ground_m = 3;
    f.bedroom = Known::yes;
    const auto size = [&](double w, double h) {
        f.glass.clear_width_m = w, f.glass.clear_height_m = h;
        return short_of_way_out(f);
    };
    // Both least measures together are 3.3 ft² only.
    CHECK(size(20 * in, 24 * in) == "area");
    CHECK(size(20 * in, 5.7 * ft * ft / (20 * in) + 1e-6).empty());
    CHECK(size(20 * in - 1e-4, 1.2) == "width");
    CHECK(size(1.5, 24 * in - 1e-4) == "height");
    CHECK(size(1.5, 24 * in).empty());
    const double between_m = 5.3 * ft * ft / 0.7;
    CHECK(size(0.7, between_m) == "area");
    f.ground_m = 44 * in; // at grade
    CHECK(size(0.7, between_m).empty());
    f.ground_m = 44 * in + 1e-4;
    CHECK(size(0.7, between_m) == "area");
    f.ground_m.reset(); // not known: the larger figure
    CHECK(size(0.7, between_m) == "area");
    f.glass.clear_bottom_m = 44 * in + 1e-4;
    CHECK(size(1.2, 1.2) == "sill too high");
    const auto all = cautions(f);
    const Caution* c = find(all, "way_out");
    REQUIRE(c);
    CHECK(c->words.find("Not met as drawn: sill too high") != std::string::npos);
    CHECK(c->words.find("15.5 ft² (1.44 m²)") != std::string::npos);
}

TEST_CASE("cautions: an opening's own facts reach them") {
    House house = with("full_wood");
    Entries& site = house.openings[0].site;
    for (const char* key :
         {"lead", "asbestos", "way_out", "wires", "foam", "broken", "fresh_air", "ladder"}) {
        CAPTURE(key);
        CHECK(has(house, key));
    }
    CHECK_FALSE(has(house, "way_blocked"));
    CHECK_FALSE(has(house, "cords"));
    site.set(Entry::year_built, 1999);
    site.set(Entry::near_wires, 0);
    site.set(Entry::bedroom, 0);
    site.set(Entry::ground_m, 0);
    for (const char* key : {"lead", "asbestos", "way_out", "wires", "fall_child", "fall_work"}) {
        CAPTURE(key);
        CHECK_FALSE(has(house, key));
    }
    CHECK(has(with("film_inside"), "way_blocked"));
    CHECK_FALSE(has(with("film_inside"), "foam"));
    CHECK(has(with("curtain"), "cords"));
    CHECK(has(with("foam_joint"), "foam"));
    CHECK_FALSE(has(with("rod_joint"), "foam"));
    CHECK(cautions(with("move_seat"), with("move_seat").openings[0]).size() <
          cautions(with("foam_joint"), with("foam_joint").openings[0]).size());
    // 1.1 × 2 m of triple glass is more than one person lifts.
    house = with("full_triple");
    house.openings[0].today.width_m = 1.1;
    house.openings[0].today.height_m = 2;
    CHECK(has(house, "lift"));
    CHECK_FALSE(has(with("storm_clear"), "lift"));
}
