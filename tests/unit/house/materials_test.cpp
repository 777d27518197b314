// SPDX-License-Identifier: MIT
#include "house/materials.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight;
using namespace shimlight::house;

namespace {

/// 1 × 1.5 m of old wood in a joint of 10 mm, with one ready-made remedy.
House with(const std::string& key) {
    House house = demo_house();
    house.openings.resize(1);
    OpeningRecord& record = house.openings[0];
    record.today = opening::Opening{};
    record.today.width_m = 1;
    record.today.height_m = 1.5;
    record.today.shim.width_m = 0.01;
    record.today.casing.width_m = 0.09;
    record.remedies = {opening::make_remedy(key, today_case(house, record))};
    record.chosen = 0;
    return house;
}

std::vector<MaterialLine> lines(const House& house) {
    return materials(job_of(house, house.openings[0]));
}

double need(const std::vector<MaterialLine>& all, std::string_view key) {
    for (const MaterialLine& l : all)
        if (l.row->key == key) return l.need;
    return 0;
}

} // namespace

TEST_CASE("materials: sealing the joint, worked by hand") {
    const auto foam = lines(with("foam_joint"));
    CHECK(need(foam, "foam") == doctest::Approx(1000 * 5 * 0.01 * 0.1144 * 1.2)); // 6.9 l
    CHECK(need(foam, "rod") == 0);
    CHECK(need(foam, "casing") == 0);
    CHECK(need(foam, "shims") == 0);
    const auto rod = lines(with("rod_joint"));
    CHECK(need(rod, "foam") == 0);
    CHECK(need(rod, "rod") == doctest::Approx(5.5));
    for (const MaterialLine& l : rod)
        if (l.row->key == "rod") CHECK(l.size_m == 0.013); // a quarter more than 10 mm
    // On the rod and along the casing's outer edge: 5 + 5.72 m of 30 mm².
    CHECK(need(rod, "sealant") == doctest::Approx(1000 * 10.72 * 30e-6 * 1.2));
    const auto caulk = lines(with("caulk_casing"));
    CHECK(need(caulk, "sealant") == doctest::Approx(1000 * 5.72 * 30e-6 * 1.2));
}

TEST_CASE("materials: an insert has no new trim, a full frame has all of it") {
    const auto insert = lines(with("insert_open")), full = lines(with("full_vinyl"));
    for (const char* key : {"casing", "stool", "extension", "trim_outside", "flashing", "foam"}) {
        CAPTURE(key);
        CHECK(need(insert, key) == 0);
        CHECK(need(full, key) > 0);
    }
    CHECK(need(insert, "stops") == doctest::Approx(1.1 * 4));
    CHECK(need(full, "stops") == 0);
    CHECK(need(full, "casing") == doctest::Approx(1.1 * (2 * 1.5 + 2 * 1 + 6 * 0.09)));
    CHECK(need(full, "stool") == doctest::Approx(1.1 * (1 + 2 * (0.09 + 0.028))));
    CHECK(need(full, "flashing") == doctest::Approx(1.1 * (5 + 0.6)));
    CHECK(need(full, "trim_outside") == doctest::Approx(1.1 * (4 + 4 * 0.045)));
    CHECK(need(full, "shims") == doctest::Approx(1.1 * 5 / 0.4));
    CHECK(need(lines(with("insert_foamed")), "foam") == doctest::Approx(6.864));
    House brick = with("full_vinyl");
    brick.openings[0].today.wall.build = opening::WallBuild::solid_masonry;
    CHECK(need(lines(brick), "trim_outside") == 0);
}

TEST_CASE("materials: seals of sashes, film and pockets") {
    CHECK(need(lines(with("weatherstrip")), "strip") == doctest::Approx(1.1 * (2 * 1.5 + 3 * 1)));
    CHECK(need(lines(with("film_inside")), "film_tape") == doctest::Approx(1.1 * 5));
    House house = with("weatherstrip");
    house.openings[0].chosen = -1;
    CHECK(lines(house).empty());
}

TEST_CASE("materials: the house is rounded up once, not opening by opening") {
    House house = with("foam_joint"); // 6.9 l each
    const OpeningRecord one = house.openings[0];
    house.openings.assign(5, one);
    house.openings[4].chosen = -1;
    const HouseTotal t = house_total(house);
    CHECK(t.openings == 4);
    REQUIRE(!t.lines.empty());
    CHECK(t.lines[0].row->key == "foam");
    CHECK(t.lines[0].need == doctest::Approx(4 * 6.864));
    CHECK(packs(t.lines[0], 12) == 3); // 27.5 l; each by itself would be 4 cans
    CHECK(packs(t.lines[0], 28) == 1);
    CHECK(packs({t.lines[0].row, 24, 0}, 12) == 2);
    CHECK(packs({t.lines[0].row, 24.01, 0}, 12) == 3);
    CHECK(t.hours == doctest::Approx(4 * one.remedies[0].hours));
    CHECK(t.total() == doctest::Approx(4 * (one.remedies[0].hours * house.hour +
                                            one.remedies[0].material_cost)));
}

TEST_CASE("materials: rod is summed by its diameter") {
    House house = with("rod_joint");
    house.openings.assign(3, house.openings[0]);
    house.openings[1].today.shim.width_m = 0.018;
    std::vector<double> sizes, needs;
    const HouseTotal t = house_total(house);
    for (const MaterialLine& l : t.lines)
        if (l.row->key == "rod") {
            sizes.push_back(l.size_m);
            needs.push_back(l.need);
        }
    REQUIRE(sizes.size() == 2);
    CHECK(sizes[0] == 0.013);
    CHECK(needs[0] == doctest::Approx(11));
    CHECK(sizes[1] == 0.025);
    CHECK(needs[1] == doctest::Approx(5.5));
}

TEST_CASE("materials: each row stands once, with words for its formula") {
    const auto rows = material_rows();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK_FALSE(rows[i].formula.empty());
        CHECK(rows[i].waste > 0);
        CHECK(rows[i].waste <= 0.2);
        CHECK((rows[i].pack > 0) != rows[i].pack_name.empty());
        for (std::size_t j = 0; j < i; ++j)
            CHECK(rows[i].key != rows[j].key);
    }
}

TEST_CASE("materials: usual prices leave what the remedies' estimates say") {
    for (const opening::ReadyRemedy& ready : opening::ready_remedies()) {
        CAPTURE(ready.key);
        for (const double size : {0.6, 1.0, 1.6}) {
            House house = with(std::string(ready.key));
            OpeningRecord& record = house.openings[0];
            record.today.width_m *= size;
            record.today.height_m *= size;
            record.remedies = {opening::make_remedy(ready.key, today_case(house, record))};
            const MaterialCost cost = material_cost(house, record, record.remedies[0]);
            CHECK(cost.sum() == doctest::Approx(record.remedies[0].material_cost));
            CHECK(cost.lines == cost.usual);
            CHECK(priced(house, record, record.remedies[0]).material_cost ==
                  doctest::Approx(record.remedies[0].material_cost));
        }
    }
}

TEST_CASE("materials: the house's own prices count in lines, remedies, plans and sums") {
    House house = with("weatherstrip");
    const MaterialRow* strip = nullptr;
    for (const MaterialRow& row : material_rows())
        if (row.key == "strip") strip = &row;
    REQUIRE(strip);
    const OpeningRecord& record = house.openings[0];
    const opening::Remedy& remedy = record.remedies[0];
    const double before = house_total(house).material_cost;
    set_unit_price(house, *strip, strip->price + 10);
    const double more = 10 * need(lines(house), "strip");
    CHECK(more > 50);
    CHECK(priced(house, record, remedy).material_cost ==
          doctest::Approx(remedy.material_cost + more));
    CHECK(house_total(house).material_cost == doctest::Approx(before + more));
    const Result<Opened> back = from_json(to_json(house));
    REQUIRE(ok(back));
    CHECK(value(back).notes.empty());
    CHECK(unit_price(value(back).house, *strip) == strip->price + 10);
    // No price yet is not a price of material alone.
    opening::Remedy unpriced = remedy;
    unpriced.hours = unpriced.material_cost = 0;
    CHECK(priced(house, record, unpriced).material_cost == 0);
    const opening::Case today = today_case(house, record);
    const assess::Assessment now = assess::assess(today, section::Accuracy::draft);
    double last = 0;
    for (const assess::Plan& plan : plans(house, record, {today, now})) {
        CHECK(plan.price >= last);
        last = plan.price;
        if (plan.remedy.key == "weatherstrip" &&
            plan.remedy.changes.size() == remedy.changes.size())
            CHECK(plan.price > assess::price_of(plan.remedy, assess::usual_hour) + 50);
    }
    set_unit_price(house, *strip, strip->price);
    CHECK(house.unit_prices.empty());
}
