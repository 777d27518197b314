// SPDX-License-Identifier: MIT
#include "screens.hpp"

#include "physics/downdraft.hpp"
#include "view/room_air.hpp"

#include <cmath>
#include <cstring>

using namespace shimlight;
using namespace shimlight::view;
using namespace shimlight::screens;
using stage::Stage;

namespace {

ImVec2 middle(const MirrorNode& n) {
    return {n.rect.x + n.rect.w / 2, n.rect.y + n.rect.h / 2};
}

double seat_m(const Stage& stage) {
    const house::House& h = stage.screen().house();
    return h.openings[static_cast<std::size_t>(h.selected)].room.seat_distance_m;
}

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("the room says the assessment's numbers") {
    Stage stage(wide);
    stage.press("view.room");
    REQUIRE(stage.rest());
    const physics::SeatResult& seat = today_answer().seat;
    const std::string ankles = value_of(stage, "room.ankles.today");
    CHECK(says(ankles, format_percent(seat.ankle_bare_pct / 100)));
    CHECK(says(ankles, format_speed(seat.ankle_speed_m_s, Units::us)));
    CHECK(says(ankles, format_temperature(seat.ankle_air_c, Units::us)));
    const std::string neck = value_of(stage, "room.neck.today");
    CHECK(says(neck, format_percent(seat.draft_rate_neck_pct / 100)));
    CHECK(says(neck, format_temperature(seat.neck_air_c, Units::us)));
    const std::string causes = value_of(stage, "room.causes.today");
    CHECK(says(causes, "cold glass " + format_percent(seat.share.cold_glass)));
    CHECK(says(causes, "sash " + format_percent(seat.share.sash_leak)));
    CHECK(says(causes, "shim space " + format_percent(seat.share.shim_leak)));
    CHECK(value_of(stage, "room.outdoors.today") ==
          format_temperature(today().weather.outside_c, Units::us));
    const std::string described = value_of(stage, "room.picture.today");
    CHECK(says(described, format_flow(today_answer().leak.sash_m3_s, Units::us)));
    CHECK(says(described, format_speed(seat.downdraft_speed_at_sill_m_s, Units::us)));
}

TEST_CASE("the causes' speeds make up the ankles' speed, and the layer is as thick as computed") {
    const assess::Assessment& answer = today_answer();
    double squares = 0; // momentum adds, see seat.cpp
    for (const Cause cause : causes)
        squares += std::pow(cause_speed_m_s(answer.seat, cause), 2);
    CHECK(std::sqrt(squares) == doctest::Approx(answer.seat.ankle_speed_m_s));
    CHECK(cause_speed_m_s(answer.seat, Cause::glass) ==
          doctest::Approx(answer.seat.downdraft_speed_m_s));
    // Thickness follows from flow and peak speed: both grow with the difference, it does not.
    const double height_m = today().opening.height_m;
    const double at_10_k = physics::falling_layer(height_m, 10).thickness_m;
    CHECK(answer.seat.downdraft_layer_m > 0.5 * at_10_k);
    CHECK(answer.seat.downdraft_layer_m < 2 * at_10_k);
}

TEST_CASE("what the pane takes from the felt temperature is nil without a colder pane") {
    RoomScene scene;
    scene.c = today();
    assess::Assessment even = today_answer();
    scene.result = &even;
    CHECK(felt_loss_k(scene) > 0.1);
    even.seat.mean_radiant_c = scene.c.room.air_c - 1; // as the other surfaces
    even.seat.operative_c = scene.c.room.air_c - 0.5;
    CHECK(felt_loss_k(scene) == doctest::Approx(0));
}

TEST_CASE("what is felt is told with and without the window, apart by what the window takes") {
    Stage stage(wide);
    stage.press("view.room");
    REQUIRE(stage.rest());
    RoomScene scene;
    scene.c = today();
    scene.result = &today_answer();
    const double felt_c = today_answer().seat.operative_c;
    const std::string words = value_of(stage, "room.pane.today");
    CHECK(says(words, "felt " + format_tenths(felt_c, Units::us)));
    CHECK(says(words, "without window " + format_tenths(felt_c + felt_loss_k(scene), Units::us)));
    CHECK(felt_loss_k(scene) > 0.1);
}

TEST_CASE("faster air has more streamlines") {
    RoomScene scene;
    assess::Assessment air;
    scene.result = &air;
    scene.px_per_m = 150;
    air.seat.downdraft_layer_m = 0.1;
    int before = 0;
    for (const double speed_m_s : {0.05, 0.2, 0.35, 0.5}) {
        air.seat.downdraft_speed_at_sill_m_s = speed_m_s;
        CHECK(stream_lines(scene) > before);
        before = stream_lines(scene);
    }
    scene.px_per_m = 40; // too small to tell many apart
    CHECK(stream_lines(scene) < before);
}

TEST_CASE("words on the room's picture lie apart and on the screen") {
    for (const stage::Size size : sizes) {
        Stage stage(size);
        stage.press("view.room");
        CHECK(stage.rest());
        check_apart(stage, size, "room.");
        stage.set_number("lever.room.seat_distance_m", 110);
        check_apart(stage, size, "room.");
    }
}

TEST_CASE("dragging the person moves the seat and lessens the draft") {
    for (const stage::Size size : {phone, wide}) {
        Stage stage(size);
        stage.press("view.room");
        if (stage.node("room.seat.today") == nullptr) stage.press("show.today");
        const MirrorNode* figure = stage.node("room.seat.today");
        REQUIRE(figure);
        CHECK(figure->role == Role::slider);
        CHECK(figure->rect.w >= 40);
        const double before_m = seat_m(stage);
        const std::string before = value_of(stage, "room.ankles.today");
        const ImVec2 from = middle(*figure);
        stage.drag({from, {from.x + 10, from.y}, {from.x + 25, from.y}, {from.x + 40, from.y}});
        CHECK(seat_m(stage) > before_m + 0.2);
        CHECK(value_of(stage, "room.ankles.today") != before);
        CHECK(stage.node("room.seat.today")->rect.x > from.x - figure->rect.w / 2);
        stage.press("menu.undo"); // the whole drag is one step
        CHECK(seat_m(stage) == doctest::Approx(before_m));
    }
}

TEST_CASE("the person is a slider for keys") {
    Stage stage(tablet);
    stage.press("view.room");
    stage.set_number("room.seat.remedy", 60); // inches
    CHECK(seat_m(stage) == doctest::Approx(60 * 0.0254));
    CHECK(value_of(stage, "room.distance.remedy") == value_of(stage, "lever.room.seat_distance_m"));
    stage.set_number("room.seat.remedy", 9999);
    CHECK(seat_m(stage) <= today().room.depth_m - 0.6 + 1e-9);
}

TEST_CASE("air moves for a while after a change and then rests; never with reduced motion") {
    for (const bool still : {false, true}) {
        stage::Size size = phone;
        size.reduced_motion = still;
        Stage stage(size);
        MirrorEvent look;
        look.id = "view.room";
        stage.frame({look});
        int moving = 0;
        for (int i = 0; i < 60; ++i) // longer than the solves take
            moving += stage.frame();
        CHECK((still ? moving < 30 : moving == 60));
        CHECK(stage.rest());
        CHECK_FALSE(stage.frame());
    }
}

TEST_CASE("where warm air meets the draft the room says that there is none") {
    Stage stage(wide);
    stage.press("view.room");
    CHECK(says(value_of(stage, "room.causes.today"), "cold glass"));
    stage.set_number("lever.room.heater", 2);
    CHECK(says(value_of(stage, "room.causes.today"), "No draft at the ankles"));
}

TEST_CASE("air that goes out is told as such") {
    Stage stage(wide);
    stage.press("view.room");
    CHECK(says(value_of(stage, "room.picture.today"), "comes in by the sash"));
    stage.set_number("lever.room.height_above_neutral_m", 20); // feet
    CHECK(says(value_of(stage, "room.picture.today"), "goes out by the sash"));
    CHECK(says(value_of(stage, "room.causes.today"), "sash " + format_percent(0)));
}

TEST_CASE("without a remedy room and air show today alone") {
    house::House h = house::demo_house();
    h.openings[static_cast<std::size_t>(h.selected)].chosen = -1;
    Stage stage(wide, h);
    for (const char* screen : {"room.", "air."}) {
        stage.press("view." + std::string(screen, std::strlen(screen) - 1));
        int today = 0, of_remedy = 0;
        for (const MirrorNode& n : stage.mirror().nodes()) {
            if (n.id.rfind(screen, 0) != 0) continue;
            today += says(n.id, ".today");
            of_remedy += says(n.id, ".remedy");
        }
        CHECK(today > 4);
        CHECK(of_remedy == 0);
    }
    CHECK(stage.rest());
}
