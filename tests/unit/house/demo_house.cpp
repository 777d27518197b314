// SPDX-License-Identifier: MIT
#include "house/embedded.hpp"
#include "house/house.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace shimlight;
using namespace shimlight::house;

TEST_CASE("The demo house is a good file without anything unknown in it") {
    const Result<Opened> result = from_json(demo_house_text);
    REQUIRE_MESSAGE(ok(result), problem(result).path << ' ' << problem(result).message);
    for (const std::string& note : value(result).notes)
        FAIL_CHECK(note);
}

TEST_CASE("The demo house has three openings with different troubles, each with remedies") {
    const House house = demo_house();
    REQUIRE(house.openings.size() == 3);
    for (const OpeningRecord& record : house.openings) {
        CAPTURE(record.name);
        CHECK_FALSE(record.complaint.empty());
        CHECK(record.remedies.size() >= 3);
        CHECK(record.remedies.size() <= 5);
        CHECK(chosen_remedy(record) != nullptr);
    }
    CHECK(house.openings[0].today.frame == opening::FrameMaterial::wood);
    CHECK(house.openings[0].today.glazing.panes == 1);
    CHECK(house.openings[1].today.frame == opening::FrameMaterial::aluminium);
    CHECK(house.openings[1].room.height_above_neutral_m > 0);
    CHECK(house.openings[2].today.installation == opening::Installation::insert);
    CHECK(house.openings[2].today.shim.fill == opening::ShimFill::open);
}

TEST_CASE("Every change of a demo remedy changes something") {
    const House house = demo_house();
    for (const OpeningRecord& record : house.openings) {
        const opening::Case today = today_case(house, record);
        for (const opening::Remedy& remedy : record.remedies) {
            const opening::Case after = opening::apply(remedy, today);
            bool differs = false;
            for (const opening::Field& field : opening::fields()) {
                differs = differs || field.get(today) != field.get(after);
            }
            CAPTURE(remedy.name);
            CHECK(differs);
        }
    }
}

TEST_CASE("Without a chosen remedy the case is that of today") {
    const House house = demo_house();
    OpeningRecord record = house.openings[0];
    for (const int chosen : {-1, 99}) {
        record.chosen = chosen;
        CHECK(chosen_remedy(record) == nullptr);
        CHECK(remedy_case(house, record).opening.shim.fill == opening::ShimFill::open);
    }
}

TEST_CASE("The ready-made remedies that the demo names exist") {
    const House house = demo_house(); // outlives the loop
    for (const OpeningRecord& record : house.openings) {
        for (const opening::Remedy& remedy : record.remedies) {
            CAPTURE(remedy.key);
            const auto& ready = opening::ready_remedies();
            const bool found = std::any_of(ready.begin(), ready.end(),
                                           [&](const auto& row) { return row.key == remedy.key; });
            CHECK((remedy.key.empty() || found));
        }
    }
}
