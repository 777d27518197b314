// SPDX-License-Identifier: MIT
// How hands, eyes and keys get at things: text sizes, a lever's card, the list of keys, callouts.
#include "view/keys.hpp"
#include "view/theme.hpp"

#include "screens.hpp"
#include "stage/drawn_text.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>
#include <iterator>
#include <string>

using namespace shimlight;
using screens::value_of;
using view::MirrorNode;

namespace {

constexpr const char* outside = "lever.weather.outside_c";

ImVec2 centre(const MirrorNode& n) {
    return {n.rect.x + n.rect.w / 2, n.rect.y + n.rect.h / 2};
}

double now_of(const stage::Stage& stage, const char* id) {
    REQUIRE(stage.node(id));
    return stage.node(id)->now;
}

/// A finger that lies still for so long; lifted at the end.
void hold(stage::Stage& stage, ImVec2 at, double seconds, ImVec2 by = {0, 0}) {
    ImGuiIO& io = ImGui::GetIO();
    stage.touch = true;
    io.AddMousePosEvent(at.x, at.y);
    stage.frame();
    io.AddMouseButtonEvent(0, true);
    stage.frame();
    io.AddMousePosEvent(at.x + by.x, at.y + by.y);
    for (const double end = stage.time_s() + seconds; stage.time_s() < end;)
        stage.frame();
    io.AddMouseButtonEvent(0, false);
    stage.frame();
    io.AddMousePosEvent(-1, -1);
    CHECK(stage.rest());
}

std::string told(const stage::Stage& stage) {
    std::string all;
    for (const MirrorNode& n : stage.mirror().nodes())
        all += n.id + n.value + std::to_string(n.now) + (n.on ? "+" : "-");
    return all;
}

} // namespace

TEST_CASE("a lever's card: back, in one step that undo takes back; the press moves nothing") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    stage.rest();
    const double opened = now_of(stage, outside);
    const ImVec2 at = centre(*stage.node(outside));
    hold(stage, at, 0.7);
    REQUIRE(stage.node("lever_card.back"));
    CHECK_FALSE(stage.node("lever_card.back")->enabled);
    CHECK(stage.node("lever_card.back")->modal);
    CHECK(now_of(stage, outside) == opened);
    stage.press("lever_card.close");
    CHECK(stage.node("lever_card.back") == nullptr);
    CHECK(now_of(stage, outside) == opened);

    stage.set_number(outside, opened - 10);
    hold(stage, at, 0.7);
    REQUIRE(stage.node("lever_card.back"));
    CHECK(stage.node("lever_card.back")->name.find("as opened") != std::string::npos);
    CHECK(stage.node("lever_card.copy")->value == value_of(stage, outside));
    stage.tap(centre(*stage.node("lever_card.back")));
    CHECK(stage.node("lever_card.back") == nullptr);
    CHECK(now_of(stage, outside) == doctest::Approx(opened));
    stage.press("menu.undo");
    CHECK(now_of(stage, outside) == doctest::Approx(opened - 10));
    stage.press(std::string(outside) + ".back"); // Delete
    CHECK(now_of(stage, outside) == doctest::Approx(opened));
    stage.press(std::string(outside) + ".card"); // Shift+F10
    CHECK(stage.node("lever_card.back"));
    stage.press("menu.escape");
    CHECK(stage.node("lever_card.back") == nullptr);
}

TEST_CASE("a short touch, or a finger that moves, opens no lever's card") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    stage.rest();
    const ImVec2 at = centre(*stage.node(outside));
    hold(stage, at, 0.2);
    CHECK(stage.node("lever_card.back") == nullptr);
    hold(stage, at, 1, {0, 7}); // not yet scrolling, no longer still
    CHECK(stage.node("lever_card.back") == nullptr);
    hold(stage, at, 1, {0, -30});
    CHECK(stage.node("lever_card.back") == nullptr);
}

TEST_CASE("a right click opens the card of a remedy's lever, which goes back to today's value") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::wide);
    stage.rest();
    const char* lever = "lever.glazing.panes";
    REQUIRE(stage.node(lever));
    stage.frame({{lever, view::MirrorEvent::Kind::focus, 0, ""}}); // brings it into sight
    stage.rest();
    REQUIRE(stage.node(lever)->reachable);
    stage.press("show.today");
    const double today = now_of(stage, lever), changed = today + 1;
    stage.press("show.remedy");
    stage.set_number(lever, changed);
    ImGuiIO& io = ImGui::GetIO();
    const ImVec2 at = centre(*stage.node(lever));
    io.AddMousePosEvent(at.x, at.y);
    stage.frame();
    io.AddMouseButtonEvent(1, true);
    stage.frame();
    io.AddMouseButtonEvent(1, false);
    stage.rest();
    REQUIRE(stage.node("lever_card.back"));
    CHECK(stage.node("lever_card.back")->name.find("as today") != std::string::npos);
    stage.press("lever_card.back");
    CHECK(now_of(stage, lever) == today);
    stage.press("menu.undo");
    CHECK(now_of(stage, lever) == changed);
}

TEST_CASE("each key of the list does something, and the page sends no others") {
    if (!stage::Stage::has_type()) return;
    std::ifstream file(SHIMLIGHT_REFERENCE_DIR "/../../web/keyboard.js");
    const std::string script((std::istreambuf_iterator<char>(file)),
                             std::istreambuf_iterator<char>());
    REQUIRE(!script.empty());
    std::size_t sent = 0;
    for (const char* start : {"\"menu.", "\"lesson.", "\"keys.", "\".back", "\".card"})
        for (auto at = script.find(start); at != std::string::npos;
             at = script.find(start, at + 1)) {
            const std::string id = script.substr(at + 1, script.find('"', at + 1) - at - 1);
            const bool listed =
                std::any_of(std::begin(view::all_keys), std::end(view::all_keys),
                            [&id](const view::Key& key) { return id == key.sends; });
            CHECK_MESSAGE(listed, id);
            ++sent;
        }
    CHECK(sent >= 9);
    stage::Stage stage(screens::wide);
    stage.rest();
    stage.set_number(outside, 10);
    stage.set_number(outside, 20);
    stage.press("menu.undo"); // so that there is something to undo and to redo
    for (const view::Key& key : view::all_keys) {
        const std::string id = key.sends;
        CAPTURE(id);
        CHECK((id.empty() || script.find('"' + id + '"') != std::string::npos));
        if (id.empty() || id == "menu.open") continue; // a file dialog is the page's own
        const bool lesson = id.compare(0, 7, "lesson.") == 0;
        if (lesson && !stage.node("lesson.next")) {
            stage.press("view.lesson");
            REQUIRE(stage.node("lesson.0"));
            stage.press("lesson.0");
        }
        if (id == "menu.escape") stage.press("keys.open");
        const std::string before = told(stage);
        if (id == "menu.save") {
            stage.frame({{id, view::MirrorEvent::Kind::press, 0, ""}});
            CHECK_FALSE(stage.wishes().save_name.empty());
            continue;
        }
        stage.press(id[0] == '.' ? outside + id : id);
        CHECK(told(stage) != before);
        if (id == ".card") stage.press("lever_card.close");
        if (id == ".back") stage.set_number(outside, 10);
    }
    CHECK(stage.node("card.title")); // by "?", last of all
}

TEST_CASE("a callout opens at its figure's whole touch area; between two the nearer one does") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    stage.rest();
    std::vector<MirrorNode> callouts;
    for (const MirrorNode& n : stage.mirror().nodes())
        if (n.id.compare(0, 13, "slice.remedy.") == 0 && n.role == view::Role::figure)
            callouts.push_back(n);
    REQUIRE(callouts.size() >= 3);
    const auto away = [](const MirrorNode& n, ImVec2 at) {
        return std::hypot(at.x - std::clamp(at.x, n.rect.x, n.rect.x + n.rect.w),
                          at.y - std::clamp(at.y, n.rect.y, n.rect.y + n.rect.h));
    };
    const MirrorNode* chips = stage.node("show.today");
    for (const MirrorNode& n : callouts)
        for (const float dy : {-20.0f, 0.0f, 20.0f}) {
            const ImVec2 at{centre(n).x, centre(n).y + dy};
            const MirrorNode* nearest = &n;
            for (const MirrorNode& other : callouts)
                if (away(other, at) < away(*nearest, at)) nearest = &other;
            if (at.y < chips->rect.y + chips->rect.h + 3) continue;
            stage.tap(at);
            CAPTURE(n.id);
            REQUIRE(stage.node("why.value"));
            CHECK(value_of(stage, "why.title").size() > 0);
            CHECK(value_of(stage, "why.value").size() > 0);
            CHECK(stage.node("why.title")->modal);
            stage.press("why.close");
            stage.press(nearest->id);
            stage.press("why.close");
        }
}

TEST_CASE("what a lever did is told by how much and which way is better, on every screen") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    stage.rest();
    CHECK(stage.node("strip.moved") == nullptr);
    const std::string before = value_of(stage, "strip.glass.remedy");
    for (const char* view : {"view.slice", "view.room", "view.panes", "view.air"}) {
        stage.press(view);
        stage.set_number(outside, -10); // °F: colder
        REQUIRE(stage.node("strip.moved"));
        CHECK(value_of(stage, "strip.moved").find("Glass, inside face −") == 0);
        CHECK(value_of(stage, "strip.moved").find("worse") != std::string::npos);
        stage.set_number(outside, 10);
        CHECK(value_of(stage, "strip.moved").find("Glass, inside face +") == 0);
        CHECK(value_of(stage, "strip.moved").find("better") != std::string::npos);
        CHECK(value_of(stage, "strip.glass.remedy") == before);
    }
    for (int i = 0; i < 60 * 5; ++i)
        stage.frame();
    CHECK(stage.node("strip.moved") == nullptr);
}

TEST_CASE("another remedy is no lever: nothing is told of it, whatever changed just before") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::tablet);
    stage.rest();
    for (const char* id : {"view.house", "units.si", "view.slice", "remedies.open",
                           "remedies.add.full_triple", "remedies.done"})
        stage.press(id);
    CHECK(stage.node("strip.moved") == nullptr);
    stage.set_number(outside, -20);
    CHECK(stage.node("strip.moved"));
}

TEST_CASE("a phone has strip, verdict and a lever in sight at every size of its text") {
    if (!stage::Stage::has_type()) return;
    for (const int text : {0, 1, 2}) {
        CAPTURE(text);
        stage::Size size = screens::phone;
        size.text = text;
        const float high_px = size.height_px / view::text_scales[text];
        stage::Stage stage(size);
        stage.rest();
        for (const char* view : {"view.slice", "view.room", "view.panes", "view.air"}) {
            CAPTURE(view);
            stage.press(view);
            const MirrorNode* verdict = stage.node("verdict");
            REQUIRE(verdict);
            std::string first = verdict->value.substr(0, 12); // drawn, as far as it has room
            bool drawn = false;
            for (const stage::DrawnText& t : stage::drawn_texts(*ImGui::GetDrawData()))
                drawn = drawn || t.words.find(first) != std::string::npos;
            CHECK(drawn);
            const view::MirrorRect& v = stage.node("verdict.whole")->rect;
            CHECK(v.h >= 44);
            for (const char* id : {"strip.glass.today", "strip.cost.remedy", "verdict.whole"}) {
                const view::MirrorRect& r = stage.node(id)->rect;
                CHECK(r.y > 100); // below the picture
                CHECK(r.y + r.h <= high_px);
            }
            CHECK(stage.node("strip.cost.remedy")->rect.y + 20 <= v.y);
            const MirrorNode* lever = stage.node("lever.weather.outside_c");
            REQUIRE(lever);
            CHECK_FALSE(lever->cut);
            CHECK(lever->rect.y >= v.y + v.h);
            CHECK(lever->rect.y + lever->rect.h <= stage.node(view)->rect.y);
        }
    }
}

TEST_CASE("on a phone the Slice has room, and a cut verdict is told whole at a touch") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::phone);
    stage.rest();
    CHECK(stage.node("slice.remedy")->rect.h >= 260);
    REQUIRE(stage.node("verdict.whole"));
    const std::string whole = value_of(stage, "verdict");
    stage.tap(centre(*stage.node("verdict.whole")));
    CHECK(value_of(stage, "card.line0") == whole);
    CHECK(stage.node("card.close")->modal);
    stage.press("card.close");
    CHECK(stage.node("card.line0") == nullptr);
}
