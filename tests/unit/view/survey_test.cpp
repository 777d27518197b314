// SPDX-License-Identifier: MIT
// Walking through a house on the House page, by its mirror.
#include "view/survey.hpp"

#include "house/openings.hpp"
#include "screens.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight;
using view::MirrorNode;

namespace {

constexpr const char* an_id = "0123456789abcdef";

const house::OpeningRecord& chosen(const stage::Stage& stage) {
    const house::House& h = stage.screen().house();
    return h.openings[static_cast<std::size_t>(h.selected)];
}

house::House with_photo() {
    house::House h = house::demo_house();
    house::add_photo(h.openings[static_cast<std::size_t>(h.selected)], an_id);
    return h;
}

/// The House page with the chosen opening open.
void open_chosen(stage::Stage& stage) {
    stage.press("view.house");
    stage.press("opening." + std::to_string(stage.screen().house().selected));
}

std::string name_of(const stage::Stage& stage, const std::string& id) {
    const MirrorNode* node = stage.node(id);
    REQUIRE_MESSAGE(node, id);
    return node->name;
}

bool has(const std::string& words, const std::string& part) {
    CAPTURE(words);
    return words.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("survey: a copy differs by two things; the next number, the same room, and in sight") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    open_chosen(stage);
    stage.type("survey.room", "Bedroom");
    const house::OpeningRecord first = chosen(stage);
    const std::size_t before = stage.screen().house().openings.size();
    stage.press("survey.copy");
    REQUIRE(stage.screen().house().openings.size() == before + 1);
    CHECK(chosen(stage).room_name == "Bedroom");
    CHECK(chosen(stage).name != first.name);
    CHECK(chosen(stage).today.width_m == first.today.width_m);
    for (const char* id :
         {"survey.name", "survey.width_m", "survey.height_m", "survey.facing", "survey.copy"}) {
        const MirrorNode* node = stage.node(id);
        REQUIRE_MESSAGE(node, id);
        CHECK_MESSAGE((node->reachable && !node->cut), id); // at hand without scrolling
    }
    stage.type("survey.width_m", "24 in");
    stage.set_number("survey.facing", 2);
    CHECK(chosen(stage).today.width_m == doctest::Approx(0.6096));
    CHECK(static_cast<int>(chosen(stage).today.facing) == 2);
    CHECK(has(name_of(stage, "opening." + std::to_string(stage.screen().house().selected)), "24"));
    for (int i = 0; i < 3; ++i)
        stage.press("menu.undo");
    CHECK(stage.screen().house().openings.size() == before);
}

TEST_CASE("survey: openings stand under their rooms, with how far each is in words") {
    stage::Stage stage(screens::wide);
    open_chosen(stage);
    stage.type("survey.room", "Bath");
    const std::string id = std::to_string(stage.screen().house().selected);
    CHECK(name_of(stage, "survey.room." + id) == "Bath");
    CHECK(has(name_of(stage, "opening." + id), "Not measured · not read"));
    stage.set_number("survey.room_list", 3); // the house's own first, then usual ones
    CHECK(chosen(stage).room_name == "Dining room");
    stage.press("survey.new_room");
    stage.type("survey.name", "Window 7");
    CHECK(chosen(stage).room_name.substr(0, 5) == "Room ");
    stage.press("survey.new");
    CHECK(chosen(stage).name == "Window 2");
    CHECK(has(screens::value_of(stage, "survey.tally"), "openings in 2 rooms: 0 measured"));
    stage.press("view.readings");
    stage.type("site.before.glass_c", "40 °F");
    stage.press("view.house");
    CHECK(has(screens::value_of(stage, "survey.tally"), "1 read before"));
    CHECK(has(view::survey_state(chosen(stage)), "read before"));
}

TEST_CASE("survey: moved, deleted, given back") {
    stage::Stage stage(screens::tablet);
    open_chosen(stage);
    const std::string name = chosen(stage).name;
    const std::size_t before = stage.screen().house().openings.size();
    const std::string was = house::to_json(stage.screen().house());
    stage.press("survey.down");
    CHECK(chosen(stage).name == name);
    stage.press("survey.delete");
    CHECK(stage.screen().house().openings.size() == before - 1);
    CHECK(has(screens::value_of(stage, "survey.deleted"), name));
    CHECK_FALSE(stage.node("survey.name"));
    stage.press("menu.undo");
    stage.press("menu.undo");
    CHECK(house::to_json(stage.screen().house()) == was);
}

TEST_CASE("survey: what was seen is yes, no or not looked; a test is answered once") {
    stage::Stage stage(screens::phone);
    open_chosen(stage);
    CHECK(has(name_of(stage, "survey.seen"), "0 of 13"));
    stage.press("seen.frost.yes");
    CHECK(stage.node("seen.frost.yes")->on);
    CHECK(has(screens::value_of(stage, "seen.frost.speaks"), "cold glass"));
    stage.press("seen.frost.no");
    CHECK_FALSE(stage.node("seen.frost.yes")->on);
    CHECK_FALSE(stage.node("seen.frost.speaks"));
    stage.press("seen.light.yes");
    CHECK(has(name_of(stage, "survey.seen"), "2 of 13"));
    stage.press("view.readings");
    CHECK(stage.node("test.light.yes")->on);
    const std::string with = screens::value_of(stage, "readings.share");
    stage.press("test.light.yes");
    CHECK(screens::value_of(stage, "readings.share") != with); // it was reckoned with
    stage.press("view.house");
    CHECK_FALSE(stage.node("seen.light.yes")->on);
    stage.press("seen.frost.no");
    CHECK(has(name_of(stage, "survey.seen"), "0 of 13"));
}

TEST_CASE("survey: a photograph is the page's picture, with words, until it is removed") {
    stage::Stage stage({360, 3000}, with_photo());
    open_chosen(stage);
    const std::string id = std::string("photo.") + an_id;
    const MirrorNode* node = stage.node(id);
    REQUIRE(node);
    CHECK(node->role == view::Role::photo);
    CHECK(node->value == an_id);
    CHECK(node->action == "show-photo");
    CHECK(std::fabs(node->rect.w * 0.75f - node->rect.h) < 1);
    CHECK(stage.node("photo.add")->action == "add-photo");
    stage.type(id + ".words", "stain under the sill");
    CHECK(chosen(stage).photos[0].words == "stain under the sill");
    CHECK(name_of(stage, id) == "stain under the sill");
    CHECK(has(name_of(stage, "opening." + std::to_string(stage.screen().house().selected)),
              "1 photograph"));
    stage.press(id + ".remove");
    CHECK(chosen(stage).photos.empty());
    stage.press("menu.undo");
    CHECK(chosen(stage).photos.size() == 1);
}

TEST_CASE("survey: twelve windows in ten rooms, at every size: words apart, and rest") {
    if (!stage::Stage::has_type()) return;
    house::House h = with_photo();
    h.openings.resize(1);
    h.selected = 0;
    h.openings[0].room_name = "Bedroom";
    for (int i = 0; i < 9; ++i)
        house::new_room(h);
    house::copy_opening(h, 3);
    house::copy_opening(h, 0);
    for (const stage::Size& size : {stage::Size{360, 4200}, stage::Size{1440, 3600}}) {
        stage::Stage stage(size, h);
        open_chosen(stage);
        CHECK(has(screens::value_of(stage, "survey.tally"), "12 openings in 10 rooms"));
        CHECK_FALSE(stage.frame());
        screens::check_apart(stage, size, "survey.", 10);
        screens::check_apart(stage, size, "seen.", 0);
    }
}
