// SPDX-License-Identifier: MIT
#include "opening/storey.hpp"

#include "opening/crack_stream.hpp"
#include "opening/field_table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

Case in(Storey storey, int storeys, bool basement = false) {
    Case c;
    c.room.storey = storey;
    c.room.storeys = storeys;
    c.room.basement = basement;
    return c;
}

void set(Case& c, std::string_view key, double value) {
    set_field(c, *find_field(key), value);
}

} // namespace

TEST_CASE("by height counts what was entered, whatever the house") {
    Case c = in(Storey::by_height, 3, true);
    c.room.height_above_neutral_m = 2.2;
    CHECK(height_above_neutral_m(c) == 2.2);
}

TEST_CASE("height follows from storey, sill and window: worked by hand") {
    // Window of 1.5 m on a sill of 0.6 m: its middle lies 1.35 m above the floor.
    struct Row {
        Storey storey;
        int storeys;
        bool basement;
        double height_m;
    };
    const Row rows[] = {
        {Storey::ground, 1, false, -0.05},  // 1.35 - 1.4
        {Storey::ground, 2, false, -1.45},  // 1.35 - 2.8
        {Storey::upstairs, 2, false, 1.35}, // 4.15 - 2.8
        {Storey::ground, 2, true, -0.05},   // 1.35 - 1.4: heated from -2.8 to 5.6
        {Storey::basement, 2, true, -2.85}, // -1.45 - 1.4
        {Storey::attic, 3, true, 4.15},     // 6.95 - 2.8
        {Storey::upstairs, 3, false, -0.05},
    };
    for (const Row& row : rows) {
        const Case c = in(row.storey, row.storeys, row.basement);
        CAPTURE(static_cast<int>(row.storey));
        CAPTURE(row.storeys);
        CHECK(height_above_neutral_m(c) == doctest::Approx(row.height_m));
    }
    Case higher = in(Storey::ground, 2);
    higher.opening.sill_m += 0.3;
    CHECK(height_above_neutral_m(higher) ==
          doctest::Approx(height_above_neutral_m(in(Storey::ground, 2)) + 0.3));
}

TEST_CASE("on a calm winter day air comes in below and goes out above, by the storey's height") {
    Case low = in(Storey::ground, 2), high = in(Storey::attic, 3);
    low.weather.wind_m_s = high.weather.wind_m_s = 0;
    CHECK(driving_pressure_now(low).pressure_pa > 0);
    CHECK(driving_pressure_now(high).pressure_pa < 0);
    Case told = low;
    told.room.storey = Storey::by_height;
    told.room.height_above_neutral_m = height_above_neutral_m(low);
    CHECK(driving_pressure_now(told).pressure_pa == driving_pressure_now(low).pressure_pa);
    // 1.35 Pa/m at -10 °C against 20 °C (hydrostatics worked apart), 21 °C here: 1.39 Pa/m.
    CHECK(driving_pressure_now(low).pressure_pa == doctest::Approx(1.39 * 1.45).epsilon(0.01));
}

TEST_CASE("a storey and its house are made to agree, the field that was set stays") {
    Case c = in(Storey::by_height, 1);
    set(c, "room.storey", static_cast<double>(Storey::attic));
    CHECK(c.room.storeys == 2);
    set(c, "room.storeys", 1);
    CHECK(c.room.storey == Storey::ground);
    set(c, "room.storey", static_cast<double>(Storey::basement));
    CHECK(c.room.basement);
    set(c, "room.basement", 0);
    CHECK(c.room.storey == Storey::ground);
    set(c, "room.storey", static_cast<double>(Storey::by_height));
    set(c, "room.storeys", 1);
    CHECK(c.room.storey == Storey::by_height);
}

TEST_CASE("the height is a lever only where it is asked for") {
    const auto there = [](const Case& c, std::string_view key) {
        return applies(*find_field(key), c);
    };
    const Case told = in(Storey::by_height, 2), known = in(Storey::upstairs, 2);
    CHECK(there(told, "room.height_above_neutral_m"));
    CHECK_FALSE(there(told, "room.storeys"));
    CHECK_FALSE(there(told, "room.basement"));
    CHECK_FALSE(there(known, "room.height_above_neutral_m"));
    CHECK(there(known, "room.storeys"));
    CHECK(there(known, "room.basement"));
}
