// SPDX-License-Identifier: MIT
#include "opening/word_rows.hpp"
#include "opening/words.hpp"

#include <doctest/doctest.h>
#include <set>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

Opening heard(std::string_view text) {
    return from_words(text).described.opening;
}

} // namespace

TEST_CASE("an old hung window in words") {
    const WordsAnswer answer = from_words("Old wood hung window, single glass, storm, loose.");
    const Opening& o = answer.described.opening;
    CHECK(o.frame == FrameMaterial::wood);
    CHECK(o.glazing.panes == 1);
    CHECK(o.glazing.storm == Storm::clear);
    CHECK(o.sash.fit == SashFit::loose);
    CHECK(answer.unknown.empty());
    CHECK(answer.doubts.empty());
    CHECK_FALSE(answer.assumed.empty()); // the joint, the casing, the lock
}

TEST_CASE("order and case do not matter") {
    const std::string_view ways[] = {"double low-e argon vinyl insert, foamed",
                                     "INSERT, foamed; argon. LOW-E / vinyl & Double!"};
    for (const std::string_view text : ways) {
        CAPTURE(std::string(text));
        const WordsAnswer answer = from_words(text);
        const Opening& o = answer.described.opening;
        CHECK(o.frame == FrameMaterial::vinyl);
        CHECK(o.glazing.panes == 2);
        CHECK(o.glazing.coating == Coating::face3);
        CHECK(o.glazing.gas == physics::Gas::argon);
        CHECK(o.installation == Installation::insert);
        CHECK(o.shim.fill == ShimFill::foamed);
        CHECK(answer.unknown.empty());
    }
}

TEST_CASE("double hung is no double glass, and no turns a word round") {
    CHECK(heard("double hung, single glass").glazing.panes == 1);
    CHECK(heard("double-hung triple").glazing.panes == 3);
    CHECK(heard("wood, no storm").glazing.storm == Storm::none);
    CHECK_FALSE(heard("without lock").sash.locked);
    CHECK(heard("not loose").sash.fit == SashFit::worn);
    CHECK(from_words("no wood").unknown.size() == 1);
}

TEST_CASE("what one word needs is assumed and said; a coating has two panes") {
    const WordsAnswer answer = from_words("low-e");
    CHECK(answer.described.opening.glazing.panes == 2);
    bool said = false;
    for (const Heard& one : answer.assumed)
        said = said || one.field->key == "glazing.panes";
    CHECK(said);
    const WordsAnswer single = from_words("single glass low-e");
    CHECK_FALSE(single.doubts.empty());
    CHECK(single.described.opening.glazing.coating == Coating::none);
}

TEST_CASE("frames that a build lacks are unknown or the nearest, never another by accident") {
    for (const Choice& choice : find_field("frame")->choices) {
        CAPTURE(std::string(choice.key));
        if (choice.key.find('_') != std::string_view::npos) continue;
        const WordsAnswer answer = from_words(choice.key);
        REQUIRE(answer.understood.size() == 1);
        CHECK(find_field("frame")
                  ->choices[static_cast<std::size_t>(answer.understood[0].value)]
                  .key == choice.key);
    }
    CHECK(heard("vinyl with steel").frame != FrameMaterial::wood);
    CHECK(heard("clad wood").frame != FrameMaterial::vinyl);
    CHECK(from_words("thermally broken aluminium").described.opening.frame != FrameMaterial::vinyl);
}

TEST_CASE("age gives way to what is said") {
    const Opening o = heard("old aluminium double tight");
    CHECK(o.frame == FrameMaterial::aluminium);
    CHECK(o.glazing.panes == 2);
    CHECK(o.sash.fit == SashFit::tight);
    CHECK(heard("ropes and weights").frame == FrameMaterial::wood);
    CHECK(heard("new").sash.fit == SashFit::tight);
    CHECK(heard("painted shut").sash.fit == SashFit::tight);
}

TEST_CASE("unknown words and contradictions are told, sizes are taken") {
    const WordsAnswer answer = from_words("wood vinyl zebra 36 x 60 in");
    CHECK(answer.unknown == std::vector<std::string>{"zebra"});
    CHECK(answer.doubts.size() == 1);
    CHECK(answer.described.opening.frame == FrameMaterial::vinyl);
    CHECK(answer.described.opening.width_m == doctest::Approx(0.9144));
    CHECK(answer.described.opening.height_m == doctest::Approx(1.524));
    CHECK(heard("90 by 150cm").height_m == doctest::Approx(1.5));
    CHECK_FALSE(from_words("900 x 900 ft").doubts.empty());
    CHECK(from_words("").understood.empty());
    CHECK(from_words("\xff\xfe x \x80 no").doubts.empty());
    CHECK(from_words(std::string(100000, 'a')).unknown.size() == 1);
}

TEST_CASE("every phrase of the vocabulary is there once and sets what exists") {
    std::set<std::string_view> phrases;
    for (const WordRow& row : word_rows()) {
        CAPTURE(std::string(row.phrase));
        CHECK(phrases.insert(row.phrase).second);
        for (const WordSet& set : row.sets)
            if (!set.key.empty()) CHECK(find_field(set.key) != nullptr);
    }
}

TEST_CASE("people say the storey, not a height above the neutral level") {
    const WordsAnswer heard = from_words("old wood window upstairs, loose");
    CHECK(heard.described.room.storey == Storey::upstairs);
    CHECK(heard.described.opening.sash.fit == SashFit::loose);
    CHECK(heard.unknown.empty());
    CHECK(from_words("vinyl, basement").described.room.basement);
    CHECK(from_words("vinyl").described.room.storey == Storey::by_height);
}

TEST_CASE("a coat on the room side comes beside the usual one, and is hard") {
    const Glazing g = heard("double pane, argon, room side coat").glazing;
    CHECK(g.coating == Coating::faces2and4);
    CHECK(g.coating_kind_2 == SecondCoating::hard);
    CHECK(g.emissivity_2 == 0.16);
}
