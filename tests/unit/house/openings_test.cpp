// SPDX-License-Identifier: MIT
#include "house/openings.hpp"

#include "house/house_json.hpp"
#include "house/link.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::house;

namespace {

House three_rooms() {
    House h = demo_house();
    h.openings.resize(1);
    h.openings[0].name = "Window 1";
    h.openings[0].room_name = "Kitchen";
    for (const char* room : {"Kitchen", "Bedroom", "Bath"}) {
        CHECK(copy_opening(h, h.openings.size() - 1));
        set_room(h, h.openings.size() - 1, room);
    }
    return h;
}

std::string order(const House& h) {
    std::string all;
    for (const OpeningRecord& o : h.openings)
        all += o.room_name.substr(0, 2) + o.name.substr(o.name.size() - 1) + " ";
    return all;
}

OpeningRecord written_on() {
    OpeningRecord o = demo_house().openings[0];
    o.name = "Window";
    o.room_name = "Bedroom";
    o.complaint = "cold at the bed";
    o.notes = "ladder";
    o.today.width_m = 0.91;
    for (std::size_t e = 0; e < entry_count; ++e)
        o.site.set(static_cast<Entry>(e), entry_rows()[e].min);
    for (std::size_t row = 0; row < observation_count; ++row)
        set_seen(o, row, Seen::yes);
    add_photo(o, "0123456789abcdef");
    return o;
}

} // namespace

TEST_CASE("a copy is the same window; what belongs to the one place stays there") {
    House h = demo_house();
    h.openings = {written_on()};
    REQUIRE(copy_opening(h, 0));
    const OpeningRecord &was = h.openings[0], &copy = h.openings[1];
    CHECK(h.selected == 1);
    CHECK(copy.name == "Window 2");
    CHECK(copy.room_name == "Bedroom");
    CHECK(copy.today.width_m == 0.91);
    CHECK(copy.remedies.size() == was.remedies.size());
    CHECK(copy.chosen == was.chosen);
    CHECK(copy.complaint.empty());
    CHECK(copy.notes.empty());
    CHECK(copy.photos.empty());
    CHECK(copy.answers.empty());
    for (std::size_t row = 0; row < observation_count; ++row)
        CHECK(seen(copy, row) == Seen::not_looked);
    for (const Entry e : {Entry::before_glass_c, Entry::after_casing_c, Entry::width_top_m,
                          Entry::diagonal_falling_m, Entry::reflected_c})
        CHECK_FALSE(copy.site.has(e));
    for (const Entry e : {Entry::error_k, Entry::deduct_width_m, Entry::year_built})
        CHECK(copy.site.has(e));
}

TEST_CASE("names go on counting and never meet") {
    House h = demo_house();
    h.openings.resize(1);
    h.openings[0].name = "Window 9";
    CHECK(next_name(h, "Window 9") == "Window 2");
    CHECK(next_name(h, "Window") == "Window 2");
    CHECK(next_name(h, "") == "Window 2");
    CHECK(next_name(h, "9") == "9 2");
    CHECK(next_name(h, "Bay7") == "Bay7 2");
    const std::string longest(max_name_bytes, 'w');
    CHECK(next_name(h, longest) == longest);
    for (int i = 0; i < 20; ++i)
        copy_opening(h, static_cast<std::size_t>(h.selected));
    for (const OpeningRecord& a : h.openings) {
        int same = 0;
        for (const OpeningRecord& b : h.openings)
            same += a.name == b.name;
        CHECK(same == 1);
    }
}

TEST_CASE("rooms stand together whatever is moved") {
    House h = three_rooms();
    CHECK(order(h) == "Ki1 Ki2 Be3 Ba4 ");
    CHECK(step_of(h, 0, -1) == Step::none);
    CHECK(step_of(h, 0, 1) == Step::opening);
    CHECK(step_of(h, 1, 1) == Step::room);
    move_opening(h, 0, 1);
    CHECK(order(h) == "Ki2 Ki1 Be3 Ba4 ");
    CHECK(h.selected == 1);
    move_opening(h, 1, 1); // past its end: the kitchen goes behind the bedroom
    CHECK(order(h) == "Be3 Ki2 Ki1 Ba4 ");
    CHECK(h.selected == 2);
    move_opening(h, 3, -1);
    CHECK(order(h) == "Be3 Ba4 Ki2 Ki1 ");
    CHECK(h.selected == 1);
    set_room(h, 3, "Bedroom");
    CHECK(order(h) == "Be3 Be1 Ba4 Ki2 ");
    CHECK(h.selected == 1);
    set_room(h, 0, "Hall");
    CHECK(order(h) == "Be1 Ha3 Ba4 Ki2 ");
    CHECK(rooms_of(h) == std::vector<std::string>{"Bedroom", "Hall", "Bath", "Kitchen"});
}

TEST_CASE("a new room is like the last opening and has a name of its own") {
    House h = three_rooms();
    REQUIRE(new_room(h));
    CHECK(h.openings.back().room_name == "Room 4");
    CHECK(h.openings.back().name == "Window 5");
    REQUIRE(new_room(h));
    CHECK(h.openings.back().room_name == "Room 5");
    while (new_room(h)) {
    }
    CHECK(h.openings.size() == max_openings);
    CHECK_FALSE(copy_opening(h, 0));
}

TEST_CASE("an opening goes, the last one stays") {
    House h = three_rooms();
    CHECK(delete_opening(h, 3));
    CHECK(h.selected == 2);
    CHECK(delete_opening(h, 0));
    CHECK(h.selected == 0);
    CHECK(delete_opening(h, 0));
    CHECK_FALSE(delete_opening(h, 0));
    CHECK(order(h) == "Be3 ");
}

TEST_CASE("what is a test on site too is asked once") {
    OpeningRecord o;
    std::size_t tests = 0;
    for (std::size_t row = 0; row < observation_count; ++row) {
        const ObservationRow& r = observation_rows()[row];
        CAPTURE(std::string(r.key));
        CHECK_FALSE(r.label.empty());
        const assess::TestRow* test = assess::find_test(r.key);
        CHECK((test != nullptr) == r.is_test());
        if (!test) continue;
        ++tests;
        CHECK(test->answers[0] == "yes");
        CHECK(test->scale == assess::Scale::two);
        set_seen(o, row, Seen::yes);
        CHECK(o.answers.size() == tests);
        CHECK(seen(o, row) == Seen::yes);
        set_seen(o, row, Seen::no);
        CHECK(o.answers.size() == tests);
        CHECK(o.answers.back().answer == 1);
        CHECK(o.observations == Observations{});
    }
    CHECK(tests == 7);
    set_seen(o, 0, Seen::not_looked);
    CHECK(o.answers.size() == tests - 1);
}

TEST_CASE("what a survey writes down comes back from the file exactly; a link has no photographs") {
    House h = demo_house();
    h.openings = {written_on()};
    h.openings[0].photos[0].words = "stain \"under\" the sill";
    set_seen(h.openings[0], observation_count - 1, Seen::no);
    const auto read = from_json(to_json(h));
    REQUIRE(ok(read));
    CHECK(value(read).notes.empty());
    CHECK(to_json(value(read).house) == to_json(h));
    const OpeningRecord& o = value(read).house.openings[0];
    CHECK(o.room_name == "Bedroom");
    CHECK(o.notes == "ladder");
    CHECK(o.observations == h.openings[0].observations);
    REQUIRE(o.photos.size() == 1);
    CHECK(o.photos[0].id == "0123456789abcdef");
    CHECK(o.photos[0].words == "stain \"under\" the sill");
    CHECK(house_to_link(h).openings[0].photos.empty());
}
