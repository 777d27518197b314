// SPDX-License-Identifier: MIT
// Where lines end: words stay whole as long as a line holds them, and no line begins with what
// closes the one before.
#include "screens.hpp"
#include "stage/drawn_text.hpp"
#include "view/ui.hpp"

#include <string>
#include <string_view>

using namespace shimlight;
using namespace shimlight::screens;
using stage::Stage;

namespace {

constexpr std::string_view closing[] = {"”", "’", ")", ",", ".", ";", ":", "!", "?", "…"};

bool begins_closing(std::string_view line) {
    for (const std::string_view sign : closing)
        if (line.substr(0, sign.size()) == sign) return true;
    return false;
}

std::vector<std::string> lines_of(const std::string& words, float width) {
    const ImFont* font = ImGui::GetIO().Fonts->Fonts[0];
    std::vector<std::string> lines;
    const char* const end = words.data() + words.size();
    for (const char* from = words.data(); from < end;) {
        const char* const to = view::line_end(font, 1, from, end, width);
        REQUIRE(to > from);
        REQUIRE(to <= end);
        lines.emplace_back(from, to);
        for (from = to; from < end && (*from == ' ' || *from == '\n');)
            ++from;
    }
    return lines;
}

const std::string examples[] = {
    "“The new window went in last spring, and I still sit here in a blanket.”",
    "He said (so it is told, at 0.33 or 12.5): “Is it cold?”, and left … then came back!",
    "“Ice!”; “water?” (both.) ‘None.’ One two …",
};

} // namespace

TEST_CASE("lines: none begins with closing punctuation, at any width, and no word is lost") {
    if (!Stage::has_type()) return;
    Stage stage(phone);
    stage.rest();
    int broken = 0;
    for (const std::string& words : examples)
        for (float width = 90; width <= 620; width += 1) {
            CAPTURE(width);
            std::string joined;
            for (const std::string& line : lines_of(words, width)) {
                CHECK_FALSE_MESSAGE(begins_closing(line), line);
                joined += (joined.empty() ? "" : " ") + line;
                broken += joined != line;
            }
            CHECK(joined == words); // broken at blanks alone
        }
    CHECK(broken > 1000);
}

TEST_CASE("lines: a word longer than its line is broken, not before its last sign") {
    if (!Stage::has_type()) return;
    Stage stage(phone);
    stage.rest();
    const std::string word = "Überlandleitungsmastbesteigung.”)";
    for (float width = 1; width <= 300; width += 1) {
        CAPTURE(width);
        std::string joined;
        for (const std::string& line : lines_of(word, width)) {
            CHECK((width < 40 || !begins_closing(line)));
            CHECK((static_cast<unsigned char>(line[0]) & 0xC0) != 0x80); // not within a letter
            joined += line;
        }
        CHECK(joined == word);
    }
}

TEST_CASE("lines: so it is on the house page at every width of a phone") {
    if (!Stage::has_type()) return;
    int quotes = 0;
    for (float width = 300; width <= 430; width += 10) {
        CAPTURE(width);
        Stage stage({width, 900});
        stage.rest();
        stage.press("view.house");
        for (const stage::DrawnText& t : stage::drawn_texts(*ImGui::GetDrawData())) {
            CHECK_FALSE_MESSAGE(begins_closing(t.words), t.words);
            quotes += t.words.find("”") != std::string::npos;
        }
    }
    CHECK(quotes >= 28);
}
