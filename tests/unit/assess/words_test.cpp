// SPDX-License-Identifier: MIT
#include "assess/words.hpp"

#include <doctest/doctest.h>

using namespace shimlight::assess;

TEST_CASE("shares become the nearest plain fraction") {
    const std::pair<double, const char*> cases[] = {
        {1, "nearly all"},     {0.95, "nearly all"},     {0.9, "nine tenths"},
        {0.82, "four fifths"}, {0.74, "three quarters"}, {0.66, "two thirds"},
        {0.6, "three fifths"}, {0.48, "half"},           {0.41, "two fifths"},
        {0.34, "a third"},     {0.24, "a quarter"},      {0.19, "a fifth"},
        {0.11, "a tenth"},     {0.04, "hardly any"},     {0, "hardly any"}};
    for (const auto& [share, words] : cases)
        CHECK(share_in_words(share) == words);
}

TEST_CASE("temperatures are whole degrees with a real minus") {
    CHECK(temperature_in_words(14.2, false) == "14\u00a0°C");
    CHECK(temperature_in_words(0, true) == "32\u00a0°F");
    CHECK(temperature_in_words(-12.2, false) == "\u221212\u00a0°C");
    CHECK(temperature_in_words(-0.3, false) == "0\u00a0°C");
}

TEST_CASE("people are whole, sentences begin with a capital") {
    CHECK(people_in_words(34.6) == "35 of 100 people");
    CHECK(capitalised("two fifths") == "Two fifths");
    CHECK(capitalised("").empty());
}

TEST_CASE("a name within a sentence has no capital article") {
    CHECK(within_sentence("A low-e storm, all sealed") == "a low-e storm, all sealed");
    CHECK(within_sentence("The old sash") == "the old sash");
    CHECK(within_sentence("Anderson's unit") == "Anderson's unit");
    CHECK(within_sentence("A") == "A");
    CHECK(within_sentence("").empty());
}

TEST_CASE("phrases are filled by number; what has no value stays") {
    CHECK(fill("{1} and {0}", {"a", "b"}) == "b and a");
    CHECK(fill("{0}{0}", {"x"}) == "xx");
    CHECK(fill("{2} {a} {", {"x"}) == "{2} {a} {");
    CHECK(fill("", {}).empty());
}

TEST_CASE("names in a list, money, speed, shares, differences") {
    CHECK(listed({"Push home and lock", "Foam the shim space"}) ==
          "Push home and lock plus foam the shim space");
    CHECK(listed({}).empty());
    CHECK(money_in_words(819.6, "€") == "€820");
    CHECK(speed_in_words(4, true) == "9\u00a0mph");
    CHECK(speed_in_words(4, false) == "4\u00a0m/s");
    CHECK(percent_in_words(0.354) == "35\u00a0%");
    CHECK(difference_in_words(3, true) == "5\u00a0°F");
}
