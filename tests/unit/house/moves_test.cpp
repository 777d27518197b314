// SPDX-License-Identifier: MIT
#include "house/moves.hpp"

#include "house/random.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::house;

namespace {

/// As Session::move does it.
void move(House& house, const opening::Field& field, double value, bool of_remedy) {
    auto& record = house.openings[static_cast<std::size_t>(house.selected)];
    opening::Case today = today_case(house, record);
    if (of_remedy && record.chosen >= 0) {
        auto& remedy = record.remedies[static_cast<std::size_t>(record.chosen)];
        opening::set_change(remedy, today, field, value);
        return;
    }
    opening::set_field(today, field, value);
    record.today = today.opening;
    record.room = today.room;
    house.weather = today.weather;
    house.running = today.running;
}

} // namespace

TEST_CASE("Moves of levers come back as they were") {
    SeededDraws draws(7);
    const auto fields = opening::fields();
    for (int round = 0; round < 300; ++round) {
        const House from = demo_house();
        House to = from;
        auto& record = to.openings[static_cast<std::size_t>(to.selected)];
        const int count = static_cast<int>(draws.unit() * 12);
        for (int i = 0; i < count; ++i) {
            const auto at = static_cast<std::size_t>(draws.unit() * double(fields.size()));
            const opening::Field& field = fields[at];
            move(to, field, field.min + draws.unit() * (field.max - field.min), draws.unit() < 0.5);
            if (draws.unit() < 0.3)
                record.chosen = static_cast<int>(draws.unit() * double(record.remedies.size()));
        }
        const std::string told = moves(from, to);
        REQUIRE_MESSAGE(to_json(moved(from, told)) == to_json(to), told);
    }
}

TEST_CASE("A house that nobody touched has no moves") {
    CHECK(moves(demo_house(), demo_house()).empty());
    House other = demo_house();
    other.openings[0].remedies[0].changes.clear();
    CHECK_FALSE(moves(demo_house(), other).empty());
    CHECK(moved(demo_house(), moves(demo_house(), other)).openings[0].remedies[0].changes.empty());
}

TEST_CASE("Lines that mean nothing change nothing, and what is out of range is limited") {
    const House house = demo_house();
    for (const char* text :
         {"x", "\n\n", "-1", "-1 nothing 3", "99 weather.outside_c 3", "-1 weather.outside_c nan",
          "-1 weather.outside_c inf", "-1 chosen 1e9", "-1 chosen -5", " ", "-1  3", "0 nothing 3"})
        CHECK_MESSAGE(to_json(moved(house, text)) == to_json(house), text);
    const opening::Field& field = *opening::find_field("weather.outside_c");
    CHECK(moved(house, "-1 weather.outside_c 1e6").weather.outside_c == field.max);
    CHECK(moved(house, "-1 weather.outside_c -3.5\n").weather.outside_c == -3.5);
    const House wild =
        moved(house, "0 weather.outside_c 5\n0 shim.width_m 1e9\n0 shim.width_m 0\n");
    CHECK(ok(from_json(to_json(wild))));
}
