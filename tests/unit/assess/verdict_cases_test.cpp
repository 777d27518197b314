// SPDX-License-Identifier: MIT
// A table of numbers and the very words that verdict and advice make of them. The numbers are made
// by hand, so that only a change of words changes this table.
#include "assess/advice.hpp"
#include "assess/assessment.hpp"
#include "assess/sentences.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;

namespace {

struct Numbers {
    double glass = 0.5, sash = 0.3, joint = 0.2; ///< shares
    double bothered_pct = 34, speed_m_s = 0.28;
    double glass_c = -2;
    double edge_c = 5; ///< of the glass, its coldest place
    bool wet = false;
    bool outward = false;
};

Assessment made_of(const Numbers& n) {
    Assessment a;
    a.seat.share = {n.glass, n.sash, n.joint};
    a.seat.ankle_bare_pct = n.bothered_pct;
    a.seat.ankle_speed_m_s = n.speed_m_s;
    a.seat.draft_rate_ankle_pct = n.speed_m_s > 0.1 ? 30 : 5;
    a.leak.sash_m3_s = a.leak.shim_m3_s = n.outward ? -1e-3 : 1e-3;
    a.glass.faces_c[1] = n.glass_c; // single pane
    a.dew_point_c = 6;
    PartSurface edge;
    edge.part = Part::glass_edge;
    edge.position = opening::Position::sill;
    edge.surface_c = n.edge_c;
    edge.wet = n.wet;
    edge.frost = n.wet && n.edge_c < 0;
    PartSurface casing;
    casing.part = Part::casing;
    casing.position = opening::Position::sill;
    casing.surface_c = 12;
    a.parts = {edge, casing};
    return a;
}

struct VerdictRow {
    const char* name;
    Numbers today;
    const char* remedy;
    Numbers then;
    const char* words;
};

const VerdictRow verdict_rows[] = {
    {"mostly glass", {0.96, 0.02, 0.02}, "", {}, "Nearly all of the draft here is cold glass."},
    {"three causes",
     {0.44, 0.32, 0.24},
     "",
     {},
     "Two fifths of the draft here is cold glass, a third the sash, the rest the shim space."},
    {"two causes",
     {0.1, 0.2, 0.7},
     "",
     {},
     "Two thirds of the draft here is the shim space behind the casing, a fifth the sash."},
    {"one leak", {0.06, 0.9, 0.04}, "", {}, "Nine tenths of the draft here is the sash."},
    {"equal thirds",
     {0.34, 0.33, 0.33},
     "",
     {},
     "A third of the draft here is cold glass, a third the sash, the rest the shim space."},
    {"no draft", {0.5, 0.3, 0.2, 12, 0.05}, "", {}, "Hardly any draft reaches this seat."},
    {"air goes out",
     {1, 0, 0, 26, 0.2, -2, 5, false, true},
     "",
     {},
     "Air leaks outward here, so the draft is cold glass."},
    {"relief",
     {0.44, 0.32, 0.24},
     "Foam the shim space",
     {0.6, 0.4, 0, 24},
     "Two fifths of the draft here is cold glass, a third the sash, the rest the shim space. Foam "
     "the "
     "shim space: 24 of 100 people bothered instead of 34."},
    {"no relief",
     {0.9, 0.05, 0.05},
     "Caulk the casing edge",
     {0.9, 0.1, 0, 33},
     "Nine tenths of the draft here is cold glass. Caulk the casing edge: the draft stays, 33 of "
     "100 people bothered."},
    {"worse by faster air",
     {0.9, 0.05, 0.05},
     "Opposite",
     {0.2, 0.4, 0.4, 50, 0.5},
     "Nine tenths of the draft here is cold glass. Opposite: a worse draft, 50 of 100 people "
     "bothered, not 34."},
    {"more bothered by the same air",
     {0.9, 0.05, 0.05},
     "Cooler room",
     {0.9, 0.05, 0.05, 40},
     "Nine tenths of the draft here is cold glass. Cooler room: 40 of 100 people bothered, not "
     "34."},
    {"glass warmer",
     {0.9, 0.05, 0.05},
     "Heater below",
     {0.9, 0.05, 0.05, 25, 0.2, 7},
     "Nine tenths of the draft here is cold glass. Heater below: 25 of 100 people bothered "
     "instead of 34; the glass goes from −2 °C to 7 °C."},
    {"glass stays wet",
     {0.9, 0.05, 0.05, 34, 0.28, -2, 3, true},
     "Foam the shim space",
     {0.9, 0.1, 0, 33, 0.27, -2, 3, true},
     "Nine tenths of the draft here is cold glass. Foam the shim space: the draft stays, 33 of "
     "100 people bothered; the glass stays at −2 °C, with water on its edge (sill)."},
    {"frost stays",
     {0.9, 0.05, 0.05, 34, 0.28, -2, -4, true},
     "Foam the shim space",
     {0.9, 0.1, 0, 33, 0.27, -2, -4, true},
     "Nine tenths of the draft here is cold glass. Foam the shim space: the draft stays, 33 of "
     "100 people bothered; the glass stays at −2 °C, with frost on its edge (sill)."},
    {"glass dries",
     {0.9, 0.05, 0.05, 34, 0.28, -2, 3, true},
     "Heater below",
     {0.9, 0.05, 0.05, 25, 0.2, 9, 8, false},
     "Nine tenths of the draft here is cold glass. Heater below: 25 of 100 people bothered "
     "instead of 34; the glass goes from −2 °C to 9 °C and dries."},
    {"drier air",
     {0.9, 0.05, 0.05, 34, 0.28, -2, 3, true},
     "Less humidity",
     {0.9, 0.05, 0.05, 34, 0.28, -2, 3, false},
     "Nine tenths of the draft here is cold glass. Less humidity: the draft stays, 34 of 100 "
     "people bothered; the edge of the glass at the sill dries."},
};

Plan plan(const char* name, double price, double pct) {
    Plan p;
    p.name = name;
    p.price = price;
    p.bothered_pct = pct;
    p.solved = true;
    return p;
}

struct CheapestRow {
    const char* name;
    Numbers today;
    Plan cheapest, nearly; ///< without name: none
    bool solves;
    const char* chosen;
    double chosen_price, chosen_pct;
    const char* words;
};

const CheapestRow cheapest_rows[] = {
    {"today within the limit",
     {0.5, 0.3, 0.2, 18},
     {},
     {},
     false,
     "New unit",
     1143,
     15,
     "Today already 20 or fewer of 100 are bothered at the ankles, as the standard wants it."},
    {"no draft at all",
     {0.5, 0.3, 0.2, 24, 0.04},
     plan("Foam", 148, 18),
     {},
     true,
     "",
     0,
     0,
     "Today already 20 or fewer of 100 are bothered at the ankles, as the standard wants it."},
    {"foam solves, nothing chosen",
     {},
     plan("Foam", 148, 18),
     {},
     true,
     "",
     0,
     0,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Foam, for $148 (18 bothered)."},
    {"foam solves, foam chosen",
     {},
     plan("Foam", 148, 18),
     {},
     true,
     "Foam",
     148,
     18,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Foam, for $148 (18 bothered)."},
    {"a dear unit equals foam",
     {},
     plan("Foam", 148, 18),
     {},
     true,
     "New unit",
     1143,
     17,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Foam, for $148 (18 bothered). New "
     "unit costs $995 more and leaves hardly fewer."},
    {"a dear unit is better",
     {},
     plan("Foam", 148, 19),
     {},
     true,
     "Triple",
     1437,
     11,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Foam, for $148 (19 bothered). "
     "Triple costs $1289 more and leaves 11."},
    {"the chosen does not reach it",
     {},
     plan("Foam", 148, 19),
     {},
     true,
     "Caulk",
     54,
     31,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Foam, for $148 (19 bothered). "
     "Caulk leaves 31."},
    {"a cheaper one all but reaches it",
     {},
     plan("Triple", 1437, 19.6),
     plan("Insert", 820, 20.8),
     true,
     "New unit",
     1500,
     19.7,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Triple, for $1437 (20 bothered). "
     "Insert, for $820, leaves 21: hardly to be told apart. New unit costs $63 more and leaves "
     "hardly fewer."},
    {"that cheaper one is chosen",
     {},
     plan("Triple", 1437, 19.6),
     plan("Insert", 820, 20.8),
     true,
     "Insert",
     820,
     20.8,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Triple, for $1437 (20 bothered). "
     "Insert, for $820, leaves 21: hardly to be told apart."},
    {"a cheaper one is told apart",
     {},
     plan("Triple", 1437, 14),
     plan("Insert", 820, 21),
     true,
     "",
     0,
     0,
     "Cheapest with 20 of 100 or fewer bothered at the ankles: Triple, for $1437 (14 bothered)."},
    {"nothing solves",
     {},
     plan("Triple", 1437, 26),
     {},
     false,
     "New unit",
     1143,
     30,
     "Nothing here leaves 20 of 100 or fewer bothered at the ankles. Of those that leave the "
     "fewest the cheapest is Triple, for $1437 (26 bothered). New unit leaves 30."},
};

struct ColdRow {
    Numbers numbers;
    const char* words;
};

const ColdRow cold_rows[] = {
    {{0.1, 0.6, 0.3, 34, 0.28, -2, 8},
     "Today: the coldest place is the edge of the glass at the sill, 8 °C; nothing that room air "
     "touches gets wet."},
    {{0.1, 0.6, 0.3, 34, 0.28, -2, 4, true},
     "Today: the coldest place is the edge of the glass at the sill, 4 °C, and wet: water stands "
     "where it is colder than 6 °C."},
    {{0.1, 0.6, 0.3, 34, 0.28, -2, -3, true},
     "Today: the coldest place is the edge of the glass at the sill, −3 °C, with frost."},
    {{0.1, 0.6, 0.3, 34, 0.28, -2, 14},
     "Today: the coldest place is the casing at the sill, 12 °C; nothing that room air touches "
     "gets wet."},
};

/// The table is written with plain spaces.
std::string plain(std::string text) {
    for (std::size_t at; (at = text.find("\u00a0")) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

} // namespace

TEST_CASE("the verdict's very words") {
    const Case c;
    for (const VerdictRow& row : verdict_rows) {
        CAPTURE(row.name);
        CHECK(plain(verdict(c, made_of(row.today), row.remedy, c, made_of(row.then), {false})) ==
              row.words);
    }
}

TEST_CASE(
    "the very words about the cheapest that solves: a dear one is never praised for nothing") {
    for (const CheapestRow& row : cheapest_rows) {
        CAPTURE(row.name);
        Cheapest cheapest;
        if (row.solves)
            cheapest.plan = row.cheapest;
        else
            cheapest.best = row.cheapest;
        if (!row.nearly.name.empty()) cheapest.nearly = row.nearly;
        Numbers then;
        then.bothered_pct = row.chosen_pct;
        const Assessment left = made_of(then);
        const Chosen chosen{row.chosen, row.chosen_price, &left};
        const Advice text = advice(made_of(row.today), *row.chosen ? &chosen : nullptr, &cheapest,
                                   find_out({}, {}), 0, {});
        CHECK(plain(text.cheapest) == row.words);
        CHECK(text.left.empty() == (*row.chosen == '\0'));
    }
}

TEST_CASE("the very words about what the chosen remedy leaves, and of which causes") {
    const Assessment then = made_of({0.6, 0.4, 0, 24, 0.2});
    const Chosen foam{"Foam", 148, &then};
    CHECK(advice(made_of({}), &foam, nullptr, find_out({}, {}), 0, {}).left ==
          "Foam: 24 of 100 people bothered instead of 34. Of what is left three fifths is cold "
          "glass, "
          "two fifths the sash.");
    const Assessment calm = made_of({0.6, 0.4, 0, 14, 0.04});
    const Chosen unit{"New unit", 1143, &calm};
    CHECK(advice(made_of({}), &unit, nullptr, find_out({}, {}), 0, {}).left ==
          "New unit: 14 of 100 people bothered instead of 34.");
}

TEST_CASE("property: a dearer remedy is never praised for what a cheaper one does") {
    physics::Draw draw(9);
    for (int i = 0; i < 300; ++i) {
        Cheapest cheapest;
        cheapest.plan = plan("Cheap", draw.between(10, 1000), draw.between(5, 20));
        Numbers then;
        then.bothered_pct = draw.between(5, 20);
        const Assessment left = made_of(then);
        const Chosen chosen{"Dear", draw.between(10, 3000), &left};
        const std::string words =
            advice(made_of({}), &chosen, &cheapest, find_out({}, {}), 0, {}).cheapest;
        const bool dearer = chosen.price > cheapest.plan->price;
        const bool better = then.bothered_pct <= cheapest.plan->bothered_pct - noticed_pct;
        CHECK((words.find("leaves hardly fewer") != std::string::npos) == (dearer && !better));
        CHECK((words.find("Dear costs") != std::string::npos) == dearer);
    }
}

TEST_CASE("the very words about what stays cold") {
    for (const ColdRow& row : cold_rows)
        CHECK(plain(advice(made_of(row.numbers), nullptr, nullptr, find_out({}, {}), 0, {false})
                        .still_cold) == row.words);
    Assessment slow = made_of({0.9, 0.05, 0.05, 34, 0.28, -2, 8});
    slow.seat.downdraft_speed_m_s = 0.26;
    slow.seat.pmv = -1;
    CHECK(plain(advice(slow, nullptr, nullptr, find_out({}, {}), 0, {false}).still_cold) ==
          "Today: the coldest place is the edge of the glass at the sill, 8 °C; nothing that room "
          "air touches gets wet. Falling air alone, without any leak, would bother 33 of 100.");
    CHECK(advice({}, nullptr, nullptr, find_out({}, {}), 0, {}).still_cold.empty());
}

TEST_CASE("what is decided is what is shown: 20.4 is told as 20 and counts as 20") {
    physics::Draw draw(11);
    for (int i = 0; i < 500; ++i) {
        const double pct = draw.between(15, 25);
        CAPTURE(pct);
        CHECK(solves(pct) == (std::lround(pct) <= std::lround(solved_pct)));
        Numbers then;
        then.bothered_pct = pct;
        const Assessment left = made_of(then);
        const Chosen chosen{"Chosen", 10, &left};
        Cheapest cheapest;
        cheapest.plan = plan("Other", 1000, 12);
        const Advice of_chosen = advice(made_of({}), &chosen, &cheapest, find_out({}, {}), 0, {});
        const bool told_short = of_chosen.cheapest.find("Chosen leaves") != std::string::npos;
        const bool reads_above =
            of_chosen.left.find("20 of 100") == std::string::npos && pct > solved_pct;
        CHECK(told_short == reads_above);
        const Advice today = advice(left, nullptr, &cheapest, find_out({}, {}), 0, {});
        CHECK((today.cheapest.find("Today already") == 0) == !reads_above);
    }
}

TEST_CASE("a storm panel colder than all is never told as dry beside what is wet") {
    const auto say = [](bool wet_inside, bool wet_storm, double storm_c) {
        Assessment a = made_of({0.5, 0.3, 0.2, 34, 0.28, -2, wet_inside ? 4.0 : 8.0, wet_inside});
        PartSurface storm;
        storm.part = Part::storm;
        storm.surface_c = storm_c;
        storm.wet = wet_storm;
        storm.frost = wet_storm && storm_c < 0;
        a.parts.push_back(storm);
        return plain(advice(a, nullptr, nullptr, find_out({}, {}), 0, {false}).still_cold);
    };
    CHECK(say(false, false, -9) ==
          "Today: the coldest place is the edge of the glass at the sill, 8 °C; nothing that room "
          "air touches gets wet. The storm panel, −9 °C, stays dry: the air behind it is drier "
          "(estimate).");
    CHECK(say(true, false, -9).find("and wet: water stands") != std::string::npos);
    CHECK(say(false, true, -9).find("inner face, −9 °C, gets frost") != std::string::npos);
    CHECK(say(false, true, 3).find("inner face, 3 °C, gets wet") != std::string::npos);
}

TEST_CASE("a coldest place is told with its cut, the middle of the glass without") {
    PartSurface place;
    place.part = Part::glass_edge;
    place.position = opening::Position::meeting_rail;
    CHECK(place_and_cut(place) == "the edge of the glass at the meeting rail");
    place.part = Part::glass_centre;
    CHECK(place_and_cut(place) == "the glass");
}

TEST_CASE("the very words by tests on site, and what to test next") {
    const auto answer = [](const char* key, std::size_t which) {
        return TestAnswer{static_cast<std::size_t>(find_test(key) - test_rows().data()), which};
    };
    const auto say = [&](std::initializer_list<TestAnswer> answers) {
        const std::vector<TestAnswer> all(answers);
        return advice(made_of({}), nullptr, nullptr, find_out({0.5, 0.3, 0.2}, all), all.size(),
                      {});
    };
    CHECK(say({}).from == "Half of the draft here is cold glass, a third the sash, the rest the "
                          "shim space.");
    CHECK(say({}).next_test == "Test next, on the window as it is today: Push the upper sash up "
                               "and the lower one down, engage the lock: is the draft "
                               "gone, weaker or the same?");
    CHECK(plain(say({answer("lock_home", 2)}).from) ==
          "By one test on site half of the draft is cold glass (17 % to 88 %), a quarter the sash, "
          "the "
          "rest the shim space.");
    const Advice both = say({answer("tape_sash", 0), answer("tape_casing", 0)});
    CHECK(both.from.find("By 2 tests on site") == 0);
    const Assessment foamed = made_of({0.5, 0.3, 0.2, 24, 0.2});
    const Chosen foam{"Foam", 148, &foamed};
    const std::vector<TestAnswer> one{answer("lock_home", 2)};
    CHECK(advice(made_of({}), &foam, nullptr, find_out({0.5, 0.3, 0.2}, one), one.size(), {})
              .left.find(", by these tests. Of what is left") != std::string::npos);
    CHECK(both.from.find("no mix of causes fits both; repeat the two.") != std::string::npos);
}
