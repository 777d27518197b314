// SPDX-License-Identifier: MIT
// Rules of the drawn pictures: lines that tell what they are, words that have room.
#include "screens.hpp"
#include "stage/drawn_text.hpp"
#include "view/room_air.hpp"
#include "view/verdict_words.hpp"

#include <algorithm>
#include <random>

using namespace shimlight;
using namespace shimlight::view;
using namespace shimlight::screens;
using stage::Stage;

namespace {

/// A room on the screen whose leaks are worth drawing.
RoomScene leaky_scene(assess::Assessment& air, float px_per_m, double sill_m) {
    RoomScene s;
    s.c = today();
    s.c.opening.sill_m = sill_m;
    s.px_per_m = px_per_m;
    s.foot = {100, 20 + 2.6f * px_per_m};
    s.wall_m = 0.2;
    air = today_answer();
    s.result = &air;
    return s;
}

bool is_painted(const std::vector<stage::DrawnText>& texts, const std::string& words) {
    return std::any_of(texts.begin(), texts.end(), [&](const stage::DrawnText& t) {
        return t.words.find(words) != std::string::npos;
    });
}

} // namespace

TEST_CASE("drawn: a leak with a share of the draft has its line, however small its flow is") {
    assess::Assessment air;
    const RoomScene s = leaky_scene(air, 100, 0.8);
    air.leak.shim_m3_s = 9e-5;
    air.seat.ankle_speed_m_s = 0.2;
    air.seat.share = {0.63, 0.3, 0.07};
    CHECK(leak_drawn(s, Cause::shim));
    air.seat.share = {0.7, 0.3, 0.001}; // told as 0 %
    CHECK_FALSE(leak_drawn(s, Cause::shim));
    air.leak.shim_m3_s = -4e-4; // goes out: no draft, and still to be seen
    CHECK(leak_drawn(s, Cause::shim));
}

TEST_CASE("drawn: leaks are dashes, the way back is dots, the film is a whole line") {
    CHECK(cause_dash(Cause::glass).off_px == 0);
    const Dash sash = cause_dash(Cause::sash), shim = cause_dash(Cause::shim);
    for (const Dash& dash : {sash, shim})
        CHECK(dash.on_px >= 2 * 2.4f); // longer than a dot is wide
    CHECK(shim.on_px >= 2 * sash.on_px);
    CHECK(return_dash.on_px == 0);
    CHECK(return_dash.off_px > 0);
}

TEST_CASE("drawn: outdoors no leak's line runs through what is written there") {
    constexpr float height_px = 35;
    assess::Assessment air;
    int clear = 0;
    for (const float px_per_m : {45.0f, 70.0f, 110.0f, 160.0f})
        for (const double sill_m : {0.1, 0.5, 0.9})
            for (const bool roomy : {false, true}) {
                const RoomScene s = leaky_scene(air, px_per_m, sill_m);
                const std::vector<float> lines = leaks_outdoors(s, roomy);
                CHECK(lines.size() == (roomy ? 4 : 2));
                const float from = s.at(0, 2.6).y, to = s.foot.y;
                float widest = 0;
                std::vector<float> all = lines;
                all.insert(all.end(), {from - 8, to + 8});
                std::sort(all.begin(), all.end());
                for (std::size_t i = 0; i + 1 < all.size(); ++i)
                    widest = std::max(widest, all[i + 1] - all[i] - 16);
                const float y = clear_of_lines(from, to, height_px, lines, from);
                if (widest < height_px) continue; // a small picture
                ++clear;
                CHECK((y >= from && y + height_px <= to));
                for (const float line : lines)
                    CHECK((line <= y - 7.9f || line >= y + height_px + 7.9f));
            }
    CHECK(clear >= 16);
}

TEST_CASE("drawn: a shorter verdict is a whole sentence where one fits") {
    const std::string words = "One two three. Four five; six seven. Eight.";
    const auto fits = [](std::size_t most) {
        return [most](const std::string& w) { return w.size() <= most; };
    };
    CHECK(shorter_verdict(words, fits(99)) == words);
    CHECK(shorter_verdict(words, fits(40)) == "One two three. Four five; six seven.");
    CHECK(shorter_verdict(words, fits(30)) == "One two three. Four five.");
    CHECK(shorter_verdict(words, fits(20)) == "One two three.");
    CHECK(shorter_verdict(words, fits(12)) == "One two …");
}

TEST_CASE("drawn: on a phone the verdict ends with a sentence, and says that there is more") {
    if (!Stage::has_type()) return;
    for (const int opening : {0, 1, 2}) {
        house::House h = house::demo_house();
        h.selected = opening;
        Stage stage(phone, h);
        stage.rest();
        CAPTURE(opening);
        const MirrorRect& box = stage.node("verdict")->rect;
        const std::string whole = value_of(stage, "verdict");
        std::string painted;
        bool more = false;
        for (const stage::DrawnText& t : stage::drawn_texts(*ImGui::GetDrawData())) {
            if (t.y0_px < box.y || t.y1_px > box.y + box.h) continue;
            if (t.words == "More")
                more = true;
            else
                painted += (painted.empty() ? "" : " ") + t.words;
        }
        REQUIRE(!painted.empty());
        CHECK(painted.back() == '.');
        painted.pop_back();
        CHECK(whole.substr(0, painted.size()) == painted);
        CHECK(more == (painted.size() + 1 < whole.size()));
        CHECK(more == (stage.node("verdict.whole") != nullptr));
    }
}

TEST_CASE("drawn: the three U-factors are in sight from a tablet on") {
    if (!Stage::has_type()) return;
    for (const stage::Size size : {tablet, wide}) {
        Stage stage(size);
        stage.press("view.panes");
        stage.rest();
        CAPTURE(size.width_px);
        for (const char* id :
             {"panes.remedy.u_centre", "panes.remedy.u_window", "panes.remedy.u_installed"}) {
            const MirrorNode* node = stage.node(id);
            REQUIRE(node);
            CHECK_MESSAGE((node->reachable && !node->cut), id);
        }
    }
}

TEST_CASE("drawn: a chart says what its axes are and what their 0 is") {
    if (!Stage::has_type()) return;
    for (const stage::Size size : {stage::Size{768, 1600}, {1440, 2000}}) {
        Stage stage(size);
        stage.press("view.air");
        stage.rest();
        const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
        CHECK(is_painted(texts, "wind, mph (0: still air outdoors)"));
        CHECK(is_painted(texts, "air speed, ft/min (0: no draft)"));
        CHECK(is_painted(texts, "(0: the neutral level)"));
    }
}
