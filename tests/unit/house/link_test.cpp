// SPDX-License-Identifier: MIT
#include "house/house_json.hpp"
#include "house/link.hpp"

#include <doctest/doctest.h>

using namespace shimlight;

TEST_CASE("a link carries the opening and its remedy, and nothing else of the house") {
    house::House mine = house::demo_house();
    mine.selected = 1;
    mine.notes = "key under the mat";
    const house::House link = house::house_to_link(mine);
    REQUIRE(link.openings.size() == 1);
    CHECK(link.openings[0].name == mine.openings[1].name);
    REQUIRE(link.openings[0].remedies.size() == 1);
    CHECK(link.openings[0].remedies[0].name == house::chosen_remedy(mine.openings[1])->name);
    const std::string text = house::to_json(link);
    for (const std::string& private_words : {mine.notes, mine.place, mine.openings[0].name})
        CHECK(text.find(private_words) == std::string::npos);
}

TEST_CASE("what came joins the house: same case, same remedy, all else stays") {
    const house::House theirs = house::demo_house();
    const auto read = house::from_json(house::to_json(house::house_to_link(theirs)));
    REQUIRE(ok(read));
    house::House mine = house::demo_house();
    mine.weather.outside_c = -20;
    const auto both = house::joined(mine, value(read).house);
    REQUIRE(ok(both));
    const house::House& now = value(both);
    REQUIRE(now.openings.size() == mine.openings.size() + 1);
    CHECK(now.selected == static_cast<int>(mine.openings.size()));
    CHECK(now.weather.outside_c == -20);
    CHECK(house::to_json(house::house_to_link(now)) == [&] {
        house::House expected = house::house_to_link(theirs);
        expected.weather = mine.weather;
        return house::to_json(expected);
    }());
    house::House full = mine;
    full.openings.resize(house::max_openings, mine.openings[0]);
    CHECK(!ok(house::joined(full, value(read).house)));
    CHECK(!ok(house::joined(mine, house::House{})));
}
