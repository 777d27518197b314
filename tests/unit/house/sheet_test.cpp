// SPDX-License-Identifier: MIT
#include "house/sheet.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight::house;

namespace {

constexpr double inch_m = 0.0254;

House measured() {
    House house = demo_house();
    Entries& site = house.openings[0].site;
    const double widths_in[] = {35.5, 35.25, 35.5}, heights_in[] = {60, 60.125, 60};
    for (int i = 0; i < 3; ++i) {
        site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i),
                 widths_in[i] * inch_m);
        site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                 heights_in[i] * inch_m);
    }
    return house;
}

Sheet of(const House& house) {
    return sheet(house, house.openings[0], {}, {});
}

} // namespace

TEST_CASE("the largest measure is for the estimate, the smallest for the order") {
    const Sheet s = of(measured());
    CHECK(s.measured);
    CHECK(s.order_width.estimating_m == doctest::Approx(35.5 * inch_m));
    CHECK(s.order_width.opening_m == doctest::Approx(35.25 * inch_m));
    CHECK(s.width.uneven); // by 1/4 in
    CHECK_FALSE(s.height.uneven);
}

TEST_CASE("nobody deducts until it was asked, and never two") {
    House house = measured();
    CHECK(of(house).deducts == Deducts::not_asked);
    CHECK(of(house).order_width.unit_m == of(house).order_width.opening_m);
    house.openings[0].site.set(Entry::maker_deducts, 1);
    CHECK(of(house).order_width.unit_m == of(house).order_width.opening_m);
    house.openings[0].site.set(Entry::maker_deducts, 0);
    CHECK(of(house).order_width.unit_m == doctest::Approx(35 * inch_m));
    house.openings[0].site.set(Entry::deduct_width_m, 0.5 * inch_m);
    CHECK(of(house).order_width.unit_m == doctest::Approx(34.75 * inch_m));
}

TEST_CASE("diagonals give the lean of a side") {
    // 36 × 60 in whose diagonals differ by 1/8, 1/4, 1/2 in: 0.12, 0.24, 0.49 in out of plumb
    // (worked by the parallelogram law).
    const double difference_in[] = {0.125, 0.25, 0.5}, lean_in[] = {0.12, 0.24, 0.49};
    for (int i = 0; i < 3; ++i) {
        House house = demo_house();
        Entries& site = house.openings[0].site;
        const double straight_m = std::hypot(36, 60) * inch_m;
        site.set(Entry::width_top_m, 36 * inch_m);
        site.set(Entry::diagonal_rising_m, straight_m + difference_in[i] / 2 * inch_m);
        site.set(Entry::diagonal_falling_m, straight_m - difference_in[i] / 2 * inch_m);
        const Sheet s = of(house);
        REQUIRE(s.square);
        CHECK(s.square->lean_m / inch_m == doctest::Approx(lean_in[i]).epsilon(0.02));
        CHECK(s.square->racked == (difference_in[i] > 0.25));
    }
}

TEST_CASE("lengths and volumes follow from the geometry") {
    House house = demo_house();
    house.openings[0].today.width_m = 1;
    house.openings[0].today.height_m = 1.5;
    house.openings[0].today.shim.width_m = 0.01;
    house.openings[0].chosen = -1;
    const Materials m = of(house).materials;
    CHECK(m.joint_m == doctest::Approx(5));
    CHECK(m.foam_l == doctest::Approx(5 * 0.01 * 0.1144 * 1000 * 1.2));
    CHECK(m.rod_mm == 13); // a quarter more than 10 mm
    CHECK(m.casing_m > 2 * 1.5 + 2 * 1);
}

TEST_CASE("a table cannot carry formulas") {
    House house = demo_house();
    house.openings[0].name = "=1+1";
    house.openings[0].complaint = "says \"cold\", he said\nand @home";
    const std::string csv = sheet_csv(house);
    CHECK(csv.find("\"'=1+1\"") != std::string::npos);
    CHECK(csv.find("\"says \"\"cold\"\", he said and @home\"") != std::string::npos);
    std::size_t lines = 0;
    for (const char c : csv)
        lines += c == '\n';
    CHECK(lines == house.openings.size() + 1);
}

TEST_CASE("what was written down on site comes back from the file") {
    House house = measured();
    auto& record = house.openings[0];
    record.site.set(Entry::before_glass_c, -1.5);
    record.site.set(Entry::year_built, 1924);
    record.answers = {{1, 0}, {0, 2}};
    house.hour = 75;
    const auto opened = from_json(to_json(house));
    REQUIRE(shimlight::ok(opened));
    const House& back = shimlight::value(opened).house;
    CHECK(shimlight::value(opened).notes.empty());
    CHECK(to_json(back) == to_json(house));
    CHECK(back.hour == 75);
    CHECK(back.openings[0].site.of(Entry::before_glass_c) == -1.5);
    CHECK(back.openings[0].site.of(Entry::year_built) == 1924);
    CHECK_FALSE(back.openings[0].site.has(Entry::after_glass_c));
    CHECK(back.openings[0].answers.size() == 2);
}

TEST_CASE("every key of the site table stands once, parts together") {
    const auto rows = entry_rows();
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            CHECK(rows[i].key != rows[j].key);
            const auto part = [&](std::size_t k) {
                return rows[k].key.substr(0, rows[k].key.find('.'));
            };
            if (part(i) == part(j)) CHECK(part(j + 1) == part(j));
        }
}

TEST_CASE("safety: an unknown year counts as old, and each note names its rule") {
    House house = demo_house();
    auto& record = house.openings[0];
    const auto lead = [&] {
        for (const SafetyNote& n : safety_notes(record))
            if (n.words.find("lead") != std::string::npos) return true;
        return false;
    };
    CHECK(lead());
    record.site.set(Entry::year_built, 1999);
    CHECK_FALSE(lead());
    for (const SafetyNote& n : safety_notes(record)) {
        CHECK(n.words.find("local code") != std::string::npos);
        CHECK_FALSE(n.rule.empty());
    }
}
