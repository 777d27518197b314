// SPDX-License-Identifier: MIT
#include "stage/stage.hpp"
#include "view/theme.hpp"

#include <doctest/doctest.h>

using namespace shimlight;

namespace {

view::Shelf two_and_one_gone() {
    return {{{"k1", "Harbour Lane 4", "Rivermouth · 2 openings · saved Nov 28", false},
             {"k2", "Mill Row 12", "1 opening · saved Nov 3", false},
             {"k3", "Station Street 77", "3 openings · deleted Nov 20", true}},
            "The browser has promised not to clear the houses away by itself.",
            true,
            false};
}

/// What the frame after a press asks of the page; the press comes to rest only afterwards.
view::Wishes asked(stage::Stage& stage, const std::string& id) {
    REQUIRE(stage.node(id));
    stage.frame({{id, view::MirrorEvent::Kind::press, 0, ""}});
    view::Wishes wishes = stage.wishes();
    stage.rest();
    return wishes;
}

std::string act(const view::Wishes& wishes) {
    return wishes.act ? wishes.act : "";
}

house::House read(const std::string& text) {
    const auto opened = house::from_json(text);
    REQUIRE(ok(opened));
    CHECK(value(opened).notes.empty());
    return value(opened).house;
}

} // namespace

TEST_CASE("the other houses stand in the list, those in the trash apart") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.shelf = two_and_one_gone();
    stage.press("view.house");
    for (const auto& one : stage.shelf.houses) {
        const auto* node = stage.node((one.trashed ? "shelf.gone." : "shelf.") + one.id);
        REQUIRE(node);
        CHECK((node->name + node->value).find(one.name) != std::string::npos);
        CHECK((node->name + node->value).find(one.words) != std::string::npos);
    }
    CHECK(!stage.node("shelf.k3"));
    REQUIRE(stage.node("library.promise"));
    CHECK(stage.node("library.promise")->value == stage.shelf.promise);
    CHECK(!stage.node("library.take"));
    CHECK(!stage.wishes().another_frame);
}

TEST_CASE("what is pressed in the list is asked of the page, once") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({1440, 900});
    stage.shelf = two_and_one_gone();
    stage.press("view.house");
    const auto open = asked(stage, "shelf.k2");
    CHECK(act(open) == "open");
    CHECK(open.act_text == "k2");
    CHECK(act(stage.wishes()).empty());
    const auto back = asked(stage, "shelf.back.k3");
    CHECK(act(back) == "restore");
    CHECK(back.act_text == "k3");
    const auto save = asked(stage, "library.save");
    CHECK(act(save) == "save");
    CHECK(save.act_text == house::to_json(stage.screen().house()));
}

TEST_CASE("the trash is emptied only when asked twice") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.shelf = two_and_one_gone();
    stage.press("view.house");
    CHECK(!stage.node("library.erase"));
    CHECK(act(asked(stage, "library.empty")).empty());
    CHECK(act(asked(stage, "library.spare")).empty());
    CHECK(!stage.node("library.erase"));
    asked(stage, "library.empty");
    CHECK(act(asked(stage, "library.erase")) == "empty");
    stage.shelf.houses.pop_back();
    stage.rest();
    CHECK(!stage.node("library.empty"));
    CHECK(!stage.node("library.erase"));
}

TEST_CASE("a duplicate is the house under a name of its own, a new house is empty") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({768, 1024});
    stage.shelf = two_and_one_gone();
    stage.press("view.house");
    const auto copied = asked(stage, "library.duplicate");
    CHECK(act(copied) == "duplicate");
    house::House copy = read(copied.act_text);
    const house::House& now = stage.screen().house();
    CHECK(copy.name == now.name + ", copy");
    copy.name = now.name;
    CHECK(house::to_json(copy) == house::to_json(now));

    const auto begun = asked(stage, "library.new");
    CHECK(act(begun) == "add");
    const house::House empty = read(begun.act_text);
    CHECK(empty.openings.size() == 1);
    CHECK(empty.openings[0].remedies.empty());
    CHECK(empty.currency == now.currency);
    CHECK(empty.weather.outside_c == doctest::Approx(now.weather.outside_c));

    const auto demo = asked(stage, "library.demo");
    CHECK(demo.act_text == house::to_json(house::demo_house()));
}

TEST_CASE("deleting brings another house, and says where the first one is") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.shelf = two_and_one_gone();
    stage.press("view.house");
    const std::string name = stage.screen().house().name;
    const auto gone = asked(stage, "library.delete");
    CHECK(act(gone) == "remove");
    CHECK(read(gone.act_text).name == name);
    CHECK(read(gone.act_other).openings.size() == 1);
    REQUIRE(stage.node("library.gone"));
    CHECK(stage.node("library.gone")->value == name + " is in the trash.");
    asked(stage, "shelf.back.k3");
    CHECK(!stage.node("library.gone"));
}

TEST_CASE("name and place are typed, and undo takes them back") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.press("view.house");
    const std::string before = stage.screen().house().name;
    stage.type("house.name", "Harbour Lane 4");
    CHECK(stage.screen().house().name == "Harbour Lane 4");
    stage.type("house.place", "Rivermouth");
    CHECK(stage.screen().house().place == "Rivermouth");
    stage.type("house.name", std::string(house::max_name_bytes + 1, 'x'));
    CHECK(stage.screen().house().name == "Harbour Lane 4");
    CHECK(stage.node("message"));
    stage.press("message.close");
    stage.press("menu.undo");
    stage.press("menu.undo");
    CHECK(stage.screen().house().name == before);
}

TEST_CASE(
    "where nothing is kept a new house comes in the place of the old, and undo brings it back") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.press("view.house");
    CHECK(!stage.node("library.duplicate"));
    CHECK(!stage.node("library.delete"));
    const std::string before = house::to_json(stage.screen().house());
    CHECK(act(asked(stage, "library.new")).empty());
    CHECK(stage.screen().house().name == "New house");
    stage.press("menu.undo");
    CHECK(house::to_json(stage.screen().house()) == before);
}

TEST_CASE("a house that another tab has is not deleted here, and can be taken over") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.shelf = two_and_one_gone();
    stage.shelf.lent = true;
    stage.press("view.house");
    CHECK(stage.node("library.lent"));
    REQUIRE(stage.node("library.delete"));
    CHECK(!stage.node("library.delete")->enabled);
    CHECK(act(asked(stage, "library.delete")).empty());
    CHECK(act(asked(stage, "library.take")) == "take");
}

TEST_CASE("the list has room for every finger and nothing lies on anything else") {
    if (!stage::Stage::has_type()) return;
    for (const float width_px : {360.0f, 768.0f, 1440.0f}) {
        const stage::Size size{width_px, 2600}; // so high that nothing is scrolled out of sight
        stage::Stage stage(size);
        stage.shelf = two_and_one_gone();
        stage.press("view.house");
        std::vector<view::MirrorRect> seen;
        for (const auto& node : stage.mirror().nodes()) {
            const bool ours = node.id.rfind("library.", 0) == 0 || node.id.rfind("shelf.", 0) == 0;
            if (!ours) continue;
            CHECK(node.reachable);
            const bool pressed = node.role == view::Role::button || node.role == view::Role::toggle;
            if (pressed) CHECK(node.rect.h >= view::touch_px);
            CHECK(node.rect.x >= 0);
            CHECK(node.rect.x + node.rect.w <= size.width_px + 0.5f);
            for (const auto& other : seen) {
                const bool apart = node.rect.x >= other.x + other.w - 0.5f ||
                                   other.x >= node.rect.x + node.rect.w - 0.5f ||
                                   node.rect.y >= other.y + other.h - 0.5f ||
                                   other.y >= node.rect.y + node.rect.h - 0.5f;
                CHECK_MESSAGE(apart, node.id << " at " << size.width_px);
            }
            seen.push_back(node.rect);
        }
        CHECK(seen.size() > 8);
    }
}

TEST_CASE("a house kept elsewhere comes with a history of its own") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.press("view.house");
    stage.type("house.name", "Harbour Lane 4");
    REQUIRE(stage.node("menu.undo")->enabled);
    stage.load(house::demo_house());
    stage.rest();
    CHECK(!stage.node("menu.undo")->enabled);
    CHECK(stage.screen().house().name == house::demo_house().name);
}
