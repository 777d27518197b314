// SPDX-License-Identifier: MIT
#include "lessons/play.hpp"
#include "stage/stage.hpp"
#include "view/figure_text.hpp"
#include "view/layout.hpp"
#include "view/lesson.hpp"

#include <doctest/doctest.h>

using namespace shimlight;

namespace {

constexpr std::string_view small_file = R"({"kind":"shimlight-lessons","version":1,"lessons":[
{"title":"T","about":"A","screen":"slice","figures":["ankles","u_centre","dew_point"],
"today":{"glazing.panes":2},"remedy_name":"R","steps":[{"ask":"{ankles.today}?",
"guesses":[{"say":"a","right_when":"ankles.today > 1"},{"say":"b","right_when":"ankles.today < 1"}],
"because":"{u_centre.remedy - u_centre.today_was}"}]}]})";

std::string with(std::string_view from, std::string_view to) {
    std::string text(small_file);
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string fault(const std::string& text) {
    const auto read = house::lessons_from_json(text);
    return ok(read) ? "none" : problem(read).path;
}

std::string value_of(const stage::Stage& stage, const std::string& id) {
    const view::MirrorNode* node = stage.node(id);
    return node ? node->value : "(no such node)";
}

/// Nodes of the lesson that can be touched neither overlap nor leave the screen.
void check_places(const stage::Stage& stage, const stage::Size& size) {
    std::vector<const view::MirrorNode*> seen;
    for (const view::MirrorNode& n : stage.mirror().nodes())
        if (n.role == view::Role::button && n.reachable && !n.cut) seen.push_back(&n);
    for (const auto* a : seen) {
        CAPTURE(a->id);
        CHECK(a->rect.x >= 0);
        CHECK(a->rect.x + a->rect.w <= size.width_px + 0.01f);
        CHECK(a->rect.y + a->rect.h <= size.height_px + 0.01f);
        if (a->id.rfind("lesson.", 0) == 0) CHECK(a->rect.h >= view::touch_px - 0.01f);
        for (const auto* b : seen)
            if (a != b)
                CHECK((a->rect.x + a->rect.w <= b->rect.x + 0.01f ||
                       b->rect.x + b->rect.w <= a->rect.x + 0.01f ||
                       a->rect.y + a->rect.h <= b->rect.y + 0.01f ||
                       b->rect.y + b->rect.h <= a->rect.y + 0.01f));
    }
}

} // namespace

TEST_CASE("lessons: our own are read, and each question has exactly one right guess") {
    const auto& all = house::own_lessons();
    REQUIRE(all.size() >= 6);
    for (const house::Lesson& lesson : all) {
        const lessons::Played played = lessons::play(lesson);
        CAPTURE(lesson.title);
        for (const std::string& fault : played.faults)
            FAIL_CHECK(fault);
        for (const lessons::PlayedStep& step : played.steps) {
            CHECK(step.ask.find('{') == std::string::npos);
            CHECK(step.because.find('{') == std::string::npos);
        }
    }
}

TEST_CASE("lessons: no number of an explanation is typed") {
    for (const house::Lesson& lesson : house::own_lessons())
        for (const house::LessonStep& step : lesson.steps) {
            std::string bare;
            bool inside = false;
            for (const char c : step.because) {
                if (c == '{') inside = true;
                if (!inside) bare += c;
                if (c == '}') inside = false;
            }
            for (const char* name : {"face 1", "face 2", "face 3", "face 4"})
                while (bare.find(name) != std::string::npos)
                    bare.erase(bare.find(name), 6);
            CAPTURE(bare);
            CHECK(bare.find_first_of("0123456789") == std::string::npos);
        }
}

TEST_CASE("lessons: a hand-written file is refused with the path of its fault") {
    CHECK(fault(std::string(small_file)) == "none");
    CHECK(fault(with("\"about\":\"A\"", "\"about\":\"A\",\"hint\":1")) == "/lessons/0/hint");
    CHECK(fault(with("glazing.panes", "glazing.pains")) == "/lessons/0/today/glazing.pains");
    CHECK(fault(with("panes\":2", "panes\":9")) == "/lessons/0/today/glazing.panes");
    CHECK(fault(with("panes\":2", "panes\":\"two\"")) == "/lessons/0/today/glazing.panes");
    CHECK(fault(with("{ankles.today}?", "{ankle.today}?")) == "/lessons/0/steps/0/ask");
    CHECK(fault(with("{ankles.today}?", "{ankles.now}?")) == "/lessons/0/steps/0/ask");
    CHECK(fault(with("{ankles.today}?", "{ankles.today")) == "/lessons/0/steps/0/ask");
    CHECK(fault(with("- u_centre.today_was", "- ankles.today")) == "/lessons/0/steps/0/because");
    CHECK(fault(with("ankles.today < 1", "ankles.today = 1")) ==
          "/lessons/0/steps/0/guesses/1/right_when");
    CHECK(fault(with("\"screen\":\"slice\"", "\"screen\":\"bill\"")) == "/lessons/0/screen");
    CHECK(fault(with("\"dew_point\"]", "\"dew\"]")) == "/lessons/0/figures");
    CHECK(fault(with("\"remedy_name\"", "\"remedy\":{\"weather.outside_c\":0},\"remedy_name\"")) ==
          "/lessons/0/remedy/weather.outside_c");
    // A coating on face 3 before there is a second pane does not stay.
    CHECK(fault(with("\"glazing.panes\":2", "\"glazing.coating\":\"face3\"")) ==
          "/lessons/0/today/glazing.coating");
    CHECK(fault(with("\"version\":1", "\"version\":2")) == "/version");
    CHECK(fault("{") != "none");
}

TEST_CASE("lessons: what is given holds from its question on, and is checked like every setting") {
    const std::string ask = "\"ask\":\"{ankles.today}?\"";
    const auto given = [&](const char* settings) {
        return with(ask, "\"given\":{" + std::string(settings) + "}," + ask);
    };
    CHECK(fault(given("\"glazing.pains\":1")) == "/lessons/0/steps/0/given/glazing.pains");
    CHECK(fault(given("\"glazing.panes\":1,\"glazing.coating\":\"face3\"")) ==
          "/lessons/0/steps/0/given/glazing.coating");
    const auto read = house::lessons_from_json(given("\"glazing.panes\":3"));
    REQUIRE(ok(read));
    const auto panes = [&](std::size_t far) {
        const house::House h = house::lesson_house(value(read)[0], far, house::Units::us);
        return house::today_case(h, h.openings[0]).opening.glazing.panes;
    };
    CHECK(panes(house::lesson_begun) == 2);
    CHECK(panes(house::asked(0)) == 3);
    CHECK(panes(house::answered(0)) == 3);
}

TEST_CASE("lessons: the hidden leaks can be told from the numbers that are shown") {
    const house::Lesson& quiz = house::own_lessons()[6];
    const lessons::Played played = lessons::play(quiz);
    const std::size_t right[] = {1, 0, 2, 1}; // joint, sash, none; it was not tight
    for (std::size_t i = 0; i < quiz.steps.size(); ++i)
        CHECK(played.steps[i].right[right[i]]);
    const auto all = assess::figures();
    const auto grows = [&](std::size_t step, const char* key) {
        const auto index = static_cast<std::size_t>(assess::find_figure(key) - all.data());
        const house::FigureSet& set = played.asked[step];
        return set.of[1][index] - set.of[0][index];
    };
    for (const std::size_t leaking : {0, 1})
        CHECK(grows(leaking, "ankle_speed") > 0.05);
    CHECK(grows(2, "ankle_speed") < 0.01);
    // A leaking joint takes far more from the casing than any other.
    for (const std::size_t other : {1, 2})
        CHECK(grows(0, "part.casing") < 3 * grows(other, "part.casing"));
}

TEST_CASE("lessons: every cut of a file is refused or read, never worse") {
    for (std::size_t n = 0; n < small_file.size(); ++n)
        CHECK(fault(std::string(small_file.substr(0, n))) != "none");
}

TEST_CASE("lessons: conditions") {
    house::FigureSet now, was;
    const auto index =
        static_cast<std::size_t>(assess::find_figure("ankles") - assess::figures().data());
    now.of[0][index] = 30;
    now.of[1][index] = 10;
    was.of[1][index] = 25;
    const house::Stand stand{now, was};
    CHECK(house::holds("ankles.remedy < 0.5 * ankles.today", stand) == true);
    CHECK(house::holds("ankles.remedy > 0.5 * ankles.today", stand) == false);
    CHECK(house::holds("ankles.remedy < 20 and ankles.remedy_was > 20", stand) == true);
    CHECK(house::holds("ankles.remedy < 20 and ankles.remedy_was < 20", stand) == false);
    CHECK(house::holds("ankles.today - ankles.remedy > 19", stand) == true);
    CHECK_FALSE(house::holds("ankles.today", stand).has_value());
    CHECK_FALSE(house::holds("ankles.today > x", stand).has_value());
    CHECK_FALSE(house::holds("", stand).has_value());
}

TEST_CASE("lessons: one is played on the screen to its end, and leaves the house alone") {
    stage::Stage stage({360, 640});
    REQUIRE(stage.rest());
    const std::string before = house::to_json(stage.screen().house());
    stage.press("view.lesson");
    stage.press("lesson.3");
    const house::Lesson& lesson = house::own_lessons()[3];
    const lessons::Played played = lessons::play(lesson);
    CHECK(stage.node("lever.weather.outside_c") == nullptr);
    CHECK(stage.node("verdict") == nullptr);
    for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
        CHECK(stage.node("lesson.answer") == nullptr);
        int right = 0;
        for (std::size_t g = 0; g < lesson.steps[i].guesses.size(); ++g)
            if (played.steps[i].right[g]) right = static_cast<int>(g);
        // Once a wrong guess, else the right one.
        const bool wrong = i == 1;
        const int guess = wrong ? (right == 0 ? 1 : 0) : right;
        stage.press("lesson.guess" + std::to_string(guess));
        CHECK(stage.rest());
        REQUIRE(stage.node("lesson.answer"));
        const view::MirrorNode& answer = *stage.node("lesson.answer");
        CHECK((answer.name.rfind("Right", 0) == 0) == !wrong);
        CHECK(answer.name.find(lesson.steps[i].guesses[static_cast<std::size_t>(right)].words) !=
              std::string::npos);
        stage.press("lesson.next");
        CHECK(stage.rest());
    }
    CHECK(stage.node("lesson.free"));
    CHECK(stage.node("lever.weather.outside_c"));
    stage.set_number("lever.weather.outside_c", 5);
    CHECK(house::to_json(stage.screen().house()) == before);
    stage.press("lesson.leave");
    CHECK(stage.node("lesson.free") == nullptr);
    CHECK(house::to_json(stage.screen().house()) == before);
    stage.press("view.lesson");
    CHECK(value_of(stage, "lesson.3.about").find("Done") != std::string::npos);
}

TEST_CASE("lessons: which were done is kept between visits, by their place in the list") {
    // Kept bits mean these: a new lesson goes to the end.
    const char* const titles[] = {"Why a tight window feels drafty",
                                  "What low-e does, winter and summer",
                                  "What argon adds",
                                  "What the shim space does",
                                  "Why upstairs windows frost",
                                  "What a label says",
                                  "Where is the leak?",
                                  "When the infrared picture misleads"};
    const auto& all = house::own_lessons();
    REQUIRE(all.size() >= std::size(titles));
    CHECK(all.size() <= view::kept_lessons);
    for (std::size_t i = 0; i < std::size(titles); ++i)
        CHECK(all[i].title == titles[i]);
    stage::Size size;
    size.lessons_done = 1 << 4;
    stage::Stage stage(size);
    stage.press("view.lesson");
    const auto is_done = [&](int i) {
        const std::string id = "lesson." + std::to_string(i);
        const bool told = value_of(stage, id + ".about").find("Done") != std::string::npos;
        CHECK((stage.node(id)->name.rfind("Again", 0) == 0) == told);
        return told;
    };
    for (int i = 0; i < static_cast<int>(all.size()); ++i)
        CHECK(is_done(i) == (i == 4));
    stage.press("lesson.1");
    for (std::size_t k = 0; k + 1 < 2 * all[1].steps.size(); ++k) {
        stage.press("lesson.next");
        CHECK(stage.wishes().lessons == 0);
    }
    stage.frame({{"lesson.next", view::MirrorEvent::Kind::press, 0, ""}});
    stage.frame();
    CHECK(stage.wishes().lessons == (1 << 4 | 1 << 1));
    stage.frame();
    CHECK(stage.wishes().lessons == 0); // told once
    stage.press("lesson.leave");
    stage.press("view.lesson");
    CHECK(is_done(1));
    CHECK(is_done(4));
    CHECK_FALSE(is_done(0));
}

TEST_CASE("lessons: the explanation tells the computed numbers in the reader's units") {
    stage::Stage stage({1440, 900});
    stage.press("view.lesson");
    stage.press("lesson.0");
    stage.press("lesson.guess2");
    const house::FigureSet figures =
        lessons::Player().figures_at(house::own_lessons()[0], house::answered(0));
    const auto all = assess::figures();
    for (const char* key : {"ankles", "glass_inside", "falling_speed", "draft_glass"}) {
        const assess::Figure& figure = *assess::find_figure(key);
        const double value = figures.of[0][static_cast<std::size_t>(&figure - all.data())];
        CHECK(value_of(stage, "lesson.answer")
                  .find(view::figure_text(figure, value, view::Units::us, {"$"})) !=
              std::string::npos);
    }
}

TEST_CASE("lessons: two keys run a lesson while presenting, forward and back") {
    stage::Stage stage({1440, 900, true});
    stage.press("view.lesson");
    stage.press("lesson.present");
    for (const std::size_t i : {1, 4}) {
        stage.press("lesson." + std::to_string(i));
        const std::size_t steps = house::own_lessons()[i].steps.size();
        for (std::size_t k = 0; k + 1 < 2 * steps; ++k) {
            CHECK(stage.node("lesson.number2"));
            CHECK(stage.node("strip.glass.today") == nullptr);
            stage.press("lesson.next");
            CHECK(stage.rest());
        }
        const std::string last = value_of(stage, "lesson.answer");
        stage.press("lesson.next");
        CHECK(stage.node("lesson.free"));
        stage.press("lesson.back");
        CHECK(value_of(stage, "lesson.answer") == last);
        for (std::size_t k = 0; k + 1 < 2 * steps; ++k)
            stage.press("lesson.back");
        REQUIRE(stage.node("lesson.back"));
        CHECK_FALSE(stage.node("lesson.back")->enabled);
        stage.press("view.lesson"); // no row of views while presenting: nothing happens
        CHECK(stage.node("lesson.question"));
        stage.press("lesson.stop");
        stage.press("lesson.leave");
        stage.press("view.lesson");
        stage.press("lesson.present");
    }
}

TEST_CASE("lessons: nothing overlaps at any size") {
    for (const auto& [w, h] : {std::pair{360.0f, 640.0f}, {768.0f, 1024.0f}, {1440.0f, 900.0f}}) {
        const stage::Size size{w, h};
        stage::Stage stage(size);
        CAPTURE(w);
        stage.press("view.lesson");
        check_places(stage, size);
        stage.press("lesson.4");
        check_places(stage, size);
        stage.press("lesson.next");
        check_places(stage, size);
    }
}

TEST_CASE("lessons: what is asked for cannot be read off the strip") {
    stage::Stage stage({360, 640});
    stage.press("view.lesson");
    stage.press("lesson.5"); // asks for U of the whole window without changing anything
    CHECK(value_of(stage, "strip.u") == "asked for");
    CHECK(stage.node("strip.u.today") == nullptr);
    CHECK(stage.node("strip.glass.today"));
    stage.press("lesson.next");
    REQUIRE(stage.node("strip.u.today"));
    const std::string number = value_of(stage, "strip.u.today").substr(0, 4);
    CHECK(value_of(stage, "lesson.answer").find(number) != std::string::npos);
}

TEST_CASE("lessons: presented on a phone and a desktop, every question and answer can be read") {
    for (const auto& [w, h] : {std::pair{360.0f, 640.0f}, {1440.0f, 900.0f}}) {
        stage::Stage stage({w, h});
        stage.press("view.lesson");
        stage.press("lesson.present");
        for (std::size_t i = 0; i < house::own_lessons().size(); ++i) {
            stage.press("lesson." + std::to_string(i));
            std::size_t scrolled = 0;
            for (std::size_t k = 0; k < house::own_lessons()[i].steps.size(); ++k) {
                for (const bool answered : {false, true}) {
                    CAPTURE(i);
                    CAPTURE(k);
                    CAPTURE(answered);
                    stage.rest();
                    float lowest = 0;
                    for (const view::MirrorNode& n : stage.mirror().nodes()) {
                        if (n.group != "lesson" && n.group != "results") continue;
                        CHECK_MESSAGE(n.rect.x >= -0.5f, n.id);
                        CHECK_MESSAGE(n.rect.x + n.rect.w <= w + 0.5f, n.id);
                        CHECK_MESSAGE(n.rect.y + n.rect.h <= h + 0.5f, n.id);
                        if (n.id.rfind("lesson.guess", 0) == 0 && n.cut) ++scrolled;
                        if (n.id == "lesson.answer" && n.cut) ++scrolled;
                        if (n.id == "lesson.question") CHECK_MESSAGE(!n.cut, n.value);
                        lowest = std::max(lowest, n.rect.y + n.rect.h);
                    }
                    CHECK(lowest > h / 2);
                    if (k + 1 < house::own_lessons()[i].steps.size() || !answered)
                        stage.press("lesson.next");
                }
            }
            CHECK_MESSAGE(scrolled == 0, w, " px, lesson ", i);
            stage.press("lesson.stop");
            stage.press("lesson.leave");
            stage.press("view.lesson");
            stage.press("lesson.present");
        }
    }
}
