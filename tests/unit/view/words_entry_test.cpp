// SPDX-License-Identifier: MIT
#include "opening/words.hpp"
#include "stage/stage.hpp"

#include <doctest/doctest.h>

using namespace shimlight;

TEST_CASE("a window told in words becomes an opening, and undo takes it away") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({360, 640});
    stage.press("view.house");
    const std::size_t before = stage.screen().house().openings.size();
    stage.type("words.text", "old wood hung window, single glass, storm, loose, zebra");
    REQUIRE(stage.node("words.understood"));
    CHECK(stage.node("words.understood")->value.find("Panes") != std::string::npos);
    REQUIRE(stage.node("words.unknown"));
    CHECK(stage.node("words.unknown")->value.find("zebra") != std::string::npos);
    stage.press("words.add");
    const house::House& house = stage.screen().house();
    REQUIRE(house.openings.size() == before + 1);
    const opening::Case heard = opening::from_words("old wood hung window, single glass, storm, "
                                                    "loose")
                                    .described;
    CHECK(house.openings.back().today.glazing.panes == heard.opening.glazing.panes);
    CHECK(house.openings.back().today.glazing.storm == heard.opening.glazing.storm);
    CHECK(house.openings.back().today.sash.fit == heard.opening.sash.fit);
    CHECK(house.selected == static_cast<int>(before));
    stage.press("menu.undo");
    CHECK(stage.screen().house().openings.size() == before);
}
