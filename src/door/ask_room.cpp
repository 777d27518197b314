// SPDX-License-Identifier: MIT
// Question `room`: one window, one person.
#include "door/question.hpp"
#include "physics/seat.hpp"

#include <array>

namespace shimlight::door {

using physics::RoomLeak;
using physics::SeatPerson;
using physics::SeatRoom;
using physics::SeatWindow;

namespace {

constexpr std::array<std::string_view, 2> postures{"seated", "standing"};
constexpr std::size_t max_leaks = 1000;
constexpr std::size_t max_place_bytes = 40;

// Accepted ranges.
constexpr Range sill_m{0, 100};
constexpr Range distance_m{0.05, 100};
constexpr Range flow_m3_s{-1, 1};
constexpr Range leak_gap_m{1e-5, 0.1};
constexpr Range leak_height_m{0, 100};

// Defaults: a living room with a person sitting near the window (common practice).
constexpr double usual_rh = 0.4;
constexpr double usual_width_m = 4, usual_depth_m = 4, usual_height_m = 2.5;
constexpr double usual_distance_m = 1.0;
constexpr double usual_met = 1.1, usual_clo = 0.9;

SeatWindow read_window(ObjectReader window) {
    SeatWindow result;
    result.width_m = window.number("width_m", length_range_m);
    result.height_m = window.number("height_m", length_range_m);
    result.sill_m = window.number("sill_m", sill_m);
    result.surface_c = window.number("surface_c", air_range_c);
    result.frame_c = window.number("frame_c", air_range_c, result.surface_c);
    window.finish();
    return result;
}

SeatRoom read_room(ObjectReader room) {
    SeatRoom result;
    result.air_c = room.number("air_c", air_range_c);
    result.rh = room.number("rh", fraction_range, usual_rh);
    result.width_m = room.number("width_m", length_range_m, usual_width_m);
    result.depth_m = room.number("depth_m", length_range_m, usual_depth_m);
    result.height_m = room.number("height_m", length_range_m, usual_height_m);
    result.surfaces_c = room.number("surfaces_c", air_range_c, result.air_c);
    room.finish();
    return result;
}

SeatPerson read_person(ObjectReader person) {
    SeatPerson result;
    result.distance_m = person.number("distance_m", distance_m, usual_distance_m);
    result.posture =
        static_cast<physics::Posture>(person.choice("posture", postures, std::size_t{0}));
    result.met = person.number("met", met_range, usual_met);
    result.clo = person.number("clo", clo_range, usual_clo);
    person.finish();
    return result;
}

/// "shim_left" → shim: the word before the first "_" decides, the rest says where.
physics::LeakPlace read_place(ObjectReader& leak) {
    constexpr std::string_view accepted =
        "\"shim\" or \"sash\", alone or with a place such as \"shim_left\" or \"sash_bottom\"";
    const std::string where = leak.text("where", max_place_bytes, "");
    const std::string kind = where.substr(0, where.find('_'));
    if (!leak.has("where")) leak.reading().miss(leak.path("where"), accepted);
    if (leak.has("where") && kind != "shim" && kind != "sash") {
        leak.reading().fail(leak.path("where"),
                            "is not a place of a leak; accepted is " + std::string(accepted));
    }
    return kind == "sash" ? physics::LeakPlace::sash : physics::LeakPlace::shim;
}

RoomLeak read_leak(ObjectReader leak) {
    RoomLeak result;
    result.place = read_place(leak);
    result.flow_m3_s = leak.number("flow_m3_s", flow_m3_s);
    result.air_c = leak.number("air_c", air_range_c);
    result.gap_m = leak.number("gap_m", leak_gap_m);
    result.length_m = leak.number("length_m", length_range_m);
    result.height_m = leak.number("height_m", leak_height_m);
    leak.finish();
    return result;
}

/// What does not fit into the room.
void check_fit(house::Reading& reading, const SeatWindow& window, const SeatRoom& room,
               const SeatPerson& person, const std::vector<RoomLeak>& leaks) {
    if (window.sill_m + window.height_m > room.height_m) {
        reading.fail("/window/height_m", "reaches above the ceiling; accepted is sill_m plus "
                                         "height_m up to the room's height_m");
    }
    if (window.width_m > room.width_m) {
        reading.fail("/window/width_m",
                     "is wider than the room; accepted is up to the room's width_m");
    }
    if (person.distance_m > room.depth_m) {
        reading.fail("/person/distance_m",
                     "is deeper than the room; accepted is up to the room's depth_m");
    }
    for (std::size_t i = 0; i < leaks.size(); ++i) {
        if (leaks[i].height_m <= room.height_m) continue;
        reading.fail(house::path_of("/leaks", i) + "/height_m",
                     "lies above the ceiling; accepted is up to the room's height_m");
    }
}

} // namespace

Answer ask_room(ObjectReader& question) {
    const SeatWindow window = read_window(question.object("window"));
    const SeatRoom room = read_room(question.object("room"));
    const SeatPerson person = read_person(question.object_or_empty("person"));
    std::vector<RoomLeak> leaks;
    const ArrayReader list = question.array_or_empty("leaks", max_leaks);
    for (std::size_t i = 0; i < list.size(); ++i)
        leaks.push_back(read_leak(list.object(i)));
    if (!question.reading().problem()) {
        check_fit(question.reading(), window, room, person, leaks);
    }
    if (auto fault = settle(question)) return *fault;
    return seat_answer(physics::seat(window, room, person, leaks));
}

} // namespace shimlight::door
