// SPDX-License-Identifier: MIT
// What is painted and what the mirror says are the same, on every screen.
#include "house/lesson.hpp"
#include "screens.hpp"
#include "stage/drawn_text.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace shimlight::screens {
namespace {

using stage::DrawnText;
using stage::Stage;
using view::MirrorNode;
using view::Role;

using Numbers = std::set<std::string>;

/// "−5", "0.33", "1,200": the numbers in a text, as they are written.
void add_numbers(const std::string& text, Numbers& numbers) {
    constexpr std::string_view minus = "−";
    const auto digit = [&](std::size_t i) {
        return i < text.size() && text[i] >= '0' && text[i] <= '9';
    };
    for (std::size_t i = 0; i < text.size();) {
        if (!digit(i)) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (digit(end) ||
               (end < text.size() && (text[end] == '.' || text[end] == ',') && digit(end + 1)))
            ++end;
        const bool below = i >= minus.size() &&
                           text.compare(i - minus.size(), minus.size(), minus) == 0 &&
                           !(i > minus.size() && digit(i - minus.size() - 1));
        numbers.insert((below ? "−" : "") + text.substr(i, end - i));
        i = end;
    }
}

/// A bare number within a chart: a mark of its scale, which the mirror tells by the curves'
/// ends or month by month.
bool is_mark(const DrawnText& text, const view::Mirror& mirror) {
    if (text.words.find_first_not_of("−0123456789.,") != std::string::npos) return false;
    for (const MirrorNode& n : mirror.nodes()) {
        const bool months = n.role == Role::image && (n.id.find(".heating") != std::string::npos ||
                                                      n.id.find(".cooling") != std::string::npos);
        const bool chart = months || n.id.find(".chart.") != std::string::npos;
        const view::MirrorRect& r = n.rect;
        if (chart && text.x0_px >= r.x && text.x1_px <= r.x + r.w && text.y0_px >= r.y &&
            text.y1_px <= r.y + r.h)
            return true;
    }
    return false;
}

Numbers painted_numbers(const std::vector<DrawnText>& texts, const view::Mirror& mirror) {
    Numbers numbers;
    for (const DrawnText& text : texts)
        if (!is_mark(text, mirror)) add_numbers(text.words, numbers);
    return numbers;
}

Numbers told_numbers(const view::Mirror& mirror) {
    Numbers numbers;
    for (const MirrorNode& n : mirror.nodes()) {
        for (const std::string* text : {&n.name, &n.value, &n.help})
            add_numbers(*text, numbers);
        for (const std::string& option : n.options)
            add_numbers(option, numbers);
    }
    return numbers;
}

std::string without(const Numbers& some, const Numbers& others) {
    std::string words;
    for (const std::string& number : some)
        if (!others.count(number)) words += number + " ";
    return words;
}

/// What is told after a comma is told in addition: "$21 a year, 24 % by air, better".
std::string first_of(const std::string& value) {
    return value.substr(0, value.find(", "));
}

/// `roomy`: the usual text at the usual sizes. With larger text, or on a phone that lies, a value
/// may find no room; the mirror tells it all the same.
void check_words(const Stage& stage, bool roomy = true) {
    const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
    const Numbers painted = painted_numbers(texts, stage.mirror());
    if (roomy) CHECK(painted.size() > 2);
    CHECK(without(painted, told_numbers(stage.mirror())) == "");
    for (const MirrorNode& n : stage.mirror().nodes()) {
        if (!roomy) break;
        const bool value =
            n.role == Role::output || n.role == Role::figure || n.role == Role::slider;
        if (!value || !n.reachable || n.cut) continue;
        Numbers own;
        add_numbers(first_of(n.value), own);
        if (without(own, painted) != "") FAIL_CHECK(n.id << " is not painted: " << n.value);
    }
}

/// Letters may touch, not lie on one another. `touch` below 0: so far they stay apart on a line.
void check_apart(const std::vector<DrawnText>& texts, float touch = 1.5f) {
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const DrawnText &a = texts[i], &b = texts[j];
            const bool meet = a.x0_px < b.x1_px - touch && b.x0_px < a.x1_px - touch &&
                              a.y0_px < b.y1_px - 1.5f && b.y0_px < a.y1_px - 1.5f;
            if (meet) FAIL_CHECK(a.words << " on " << b.words);
        }
}

/// Whether one run of letters on one line is these words, or has them in it.
bool paints(const std::vector<DrawnText>& texts, const std::string& words) {
    return std::any_of(texts.begin(), texts.end(), [&](const DrawnText& t) {
        return t.words.find(words) != std::string::npos;
    });
}

TEST_CASE("canvas: letters are found again") {
    if (!Stage::has_type()) return;
    Stage stage(wide);
    stage.rest();
    const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
    const auto painted = [&](const std::string& words) {
        return std::any_of(texts.begin(), texts.end(), [&](const DrawnText& t) {
            return t.words.find(words) != std::string::npos;
        });
    };
    CHECK(painted("Outdoors"));
    CHECK(painted(stage.screen().house().openings.front().name));
    CHECK_FALSE(painted("nobody paints this"));
}

TEST_CASE("canvas: painted numbers are in the mirror, values in sight are painted, apart") {
    if (!Stage::has_type()) return;
    constexpr stage::Size largest{360, 640, true, true, 1, 2};
    for (const stage::Size size : {phone, tablet, wide, largest}) {
        CAPTURE(size.width_px);
        CAPTURE(size.text);
        Stage stage(size);
        stage.rest();
        for (const char* const view : views) {
            const std::string name = view;
            CAPTURE(name);
            stage.press(name);
            check_words(stage, size.text == 0);
            check_apart(stage::drawn_texts(*ImGui::GetDrawData()));
        }
    }
}

TEST_CASE("canvas: letters lie apart in every cut of each opening") {
    if (!Stage::has_type()) return;
    constexpr float ground_px = -4; // around each callout
    for (const stage::Size size : {phone, tablet, wide}) {
        Stage stage(size);
        const std::size_t openings = stage.screen().house().openings.size();
        for (std::size_t i = 0; i < openings; ++i) {
            stage.press("view.house");
            stage.press("opening." + std::to_string(i));
            stage.press("view.slice");
            for (const char* const id : {"cut.Head", "cut.Jamb", "cut.Sill", "cut.Rail"})
                for (const char* const shown : {"show.today", "show.remedy"}) {
                    stage.press(id);
                    stage.press(shown);
                    stage.rest();
                    CAPTURE(size.width_px);
                    CAPTURE(i);
                    CAPTURE(std::string(id));
                    CAPTURE(std::string(shown));
                    check_apart(stage::drawn_texts(*ImGui::GetDrawData()), ground_px);
                }
        }
    }
}

TEST_CASE("canvas: the sign that there is more has ground of its own") {
    if (!Stage::has_type()) return;
    constexpr stage::Size largest{360, 640, true, true, 1, 2}, larger{768, 1024, false, true, 1, 2};
    for (const stage::Size size : {phone, tablet, wide, lying, lying_small, largest, larger})
        for (const char* const view : {"view.panes", "view.air"}) {
            Stage stage(size);
            stage.rest();
            stage.press(view);
            CAPTURE(size.width_px);
            CAPTURE(size.text);
            CAPTURE(view);
            for (const char* const shown : {"show.today", "show.remedy"}) {
                stage.press(shown);
                const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
                const auto sign = std::find_if(texts.begin(), texts.end(), [](const DrawnText& t) {
                    return t.words == "more below ▼";
                });
                REQUIRE(sign != texts.end());
                for (const DrawnText& t : texts) {
                    const bool meet = t.x0_px < sign->x1_px && sign->x0_px < t.x1_px &&
                                      t.y0_px < sign->y1_px && sign->y0_px < t.y1_px;
                    if (meet && &t != &*sign) FAIL_CHECK(t.words << " under the sign");
                }
            }
        }
}

TEST_CASE("canvas: a star beside a coated face's number is explained, in sight") {
    if (!Stage::has_type()) return;
    house::House h = house::demo_house();
    opening::Opening& today = h.openings.front().today;
    today.glazing.panes = 3;
    today.glazing.coating = opening::Coating::faces2and5;
    for (const int text : {0, 1}) {
        CAPTURE(text);
        Stage stage({360, 640, false, true, 1, text}, h);
        stage.press("view.panes");
        stage.press("show.today");
        const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
        CHECK(paints(texts, "2*"));
        CHECK(paints(texts, "5*"));
        CHECK(paints(texts, "* low-e"));
        check_apart(texts);
    }
    Stage stage(wide, h);
    stage.press("view.panes");
    const MirrorNode* told = stage.node("panes.today.paths");
    REQUIRE(told);
    CHECK(told->value.find("faces 2 and 5.") != std::string::npos);
}

TEST_CASE("canvas: the picture of the panes is whole, whatever the size of the text") {
    for (const stage::Size size : {phone,
                                   tablet,
                                   wide,
                                   stage::Size{360, 640, false, true, 1, 1},
                                   {360, 640, false, true, 1, 2}}) {
        CAPTURE(size.width_px);
        CAPTURE(size.text);
        Stage stage(size);
        stage.press("view.panes");
        for (const std::string shown : {"today", "remedy"}) {
            CAPTURE(shown);
            stage.press("show." + shown);
            for (const std::string what : {".picture", ".face.1", ".face.2", ".gas.1"}) {
                const MirrorNode* node = stage.node("panes." + shown + what);
                REQUIRE(node);
                CHECK_FALSE(node->cut);
            }
        }
    }
}

std::string without_spaces(std::string words) {
    for (const std::string_view space : {" ", "\u2009"})
        for (std::size_t at; (at = words.find(space)) != std::string::npos;)
            words.erase(at, space.size());
    return words;
}

/// What stands on the lowest line within a box, without its spaces: in large type a gap parts runs.
std::string lowest_line(std::vector<DrawnText> texts, const view::MirrorRect& box) {
    const auto outside = [&](const DrawnText& t) {
        return t.x0_px < box.x - 1 || t.x1_px > box.x + box.w + 1 || t.y0_px < box.y ||
               t.y1_px > box.y + box.h;
    };
    texts.erase(std::remove_if(texts.begin(), texts.end(), outside), texts.end());
    std::sort(texts.begin(), texts.end(),
              [](const DrawnText& a, const DrawnText& b) { return a.x0_px < b.x0_px; });
    float lowest = 0;
    for (const DrawnText& t : texts)
        lowest = std::max(lowest, t.y1_px);
    std::string line;
    for (const DrawnText& t : texts)
        if (t.y1_px > lowest - 14) line += t.words;
    return without_spaces(line);
}

TEST_CASE("canvas: before a class each number stands on one line") {
    if (!Stage::has_type()) return;
    for (const stage::Size size : {tablet, wide}) {
        Stage stage(size);
        for (std::size_t lesson = 0; lesson < house::own_lessons().size(); ++lesson) {
            stage.press("view.lesson");
            stage.press("lesson.present");
            stage.press("lesson." + std::to_string(lesson));
            stage.press("lesson.next");
            stage.rest();
            const auto texts = stage::drawn_texts(*ImGui::GetDrawData());
            for (const char* const id : {"lesson.number0", "lesson.number1", "lesson.number2"}) {
                const MirrorNode* node = stage.node(id);
                REQUIRE(node);
                CAPTURE(size.width_px);
                CAPTURE(node->name);
                CHECK(lowest_line(texts, node->rect) == without_spaces(node->value));
            }
            check_apart(texts);
            stage.press("lesson.stop");
            stage.press("lesson.leave");
        }
    }
}

TEST_CASE("canvas: the same in other units, with remedies in sight and after a lever moved") {
    if (!Stage::has_type()) return;
    for (const stage::Size size : {phone, wide}) {
        Stage stage(size);
        stage.rest();
        stage.press("view.house");
        stage.press("units.si");
        for (const char* const id : {"view.slice", "cut.Jamb", "remedies.open", "view.room"}) {
            const std::string name = id;
            CAPTURE(name);
            stage.press(name);
            check_words(stage);
            check_apart(stage::drawn_texts(*ImGui::GetDrawData()));
        }
        stage.set_number("lever.weather.outside_c", -31);
        check_words(stage);
    }
}

TEST_CASE("canvas: the bill of the whole house, all of it in sight") {
    if (!Stage::has_type()) return;
    house::House h = house::demo_house();
    h.openings.erase(h.openings.begin() + 1);
    h.running.climate = 24;
    for (const stage::Size size : {stage::Size{360, 4400}, {360, 6000, true, true, 1, 2}}) {
        CAPTURE(size.text);
        Stage stage(size, h);
        stage.press("view.bill");
        stage.press("bill.all");
        stage.press("bill.house.opening.0");
        check_words(stage, size.text == 0);
        check_apart(stage::drawn_texts(*ImGui::GetDrawData()));
    }
}

} // namespace
} // namespace shimlight::screens
