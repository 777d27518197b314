// SPDX-License-Identifier: MIT
// Every worked example beside this file: <question>.json holds questions and what the answer must
// be, each figure with its source, its tolerance and the reason for it.
#include "door/door.hpp"
#include "house/json_tree.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

using namespace shimlight;
using house::Json;

namespace {

Json read_examples(const std::string& question) {
    const std::string path = SHIMLIGHT_REFERENCE_DIR "/door/" + question + ".json";
    std::ifstream file(path);
    REQUIRE_MESSAGE(file.good(), path);
    std::stringstream text;
    text << file.rdbuf();
    return Json::parse(text.str());
}

void check_value(const Json& found, const Json& expected) {
    const Json& value = expected["value"];
    if (!value.is_number()) {
        CHECK(found == value);
        return;
    }
    REQUIRE(found.is_number());
    CHECK(std::abs(found.get<double>() - value.get<double>()) <= expected["within"].get<double>());
}

void check_example(const std::string& question, const Json& example) {
    const Json answer = Json::parse(door::ask(question, example["ask"].dump()));
    for (const Json& expected : example["expected"]) {
        const Json::json_pointer at(expected["at"].get<std::string>());
        const std::string shown = answer.dump().substr(0, 300);
        INFO(question << ": " << example["name"] << ' ' << expected["at"] << ' '
                      << expected["value"] << " in " << shown);
        REQUIRE(answer.contains(at));
        check_value(answer[at], expected);
    }
}

void check_all(const std::string& question) {
    const Json examples = read_examples(question);
    REQUIRE(examples["question"] == question);
    for (const Json& example : examples["cases"])
        check_example(question, example);
}

} // namespace

TEST_CASE("Worked examples: glazing") {
    check_all("glazing");
}
TEST_CASE("Worked examples: section") {
    check_all("section");
}
TEST_CASE("Worked examples: comfort") {
    check_all("comfort");
}
TEST_CASE("Worked examples: room") {
    check_all("room");
}
TEST_CASE("Worked examples: leak") {
    check_all("leak");
}
TEST_CASE("Worked examples: moisture") {
    check_all("moisture");
}
TEST_CASE("Worked examples: thermography") {
    check_all("thermography");
}
TEST_CASE("Worked examples: year") {
    check_all("year");
}
TEST_CASE("Worked examples: label") {
    check_all("label");
}
TEST_CASE("Worked examples: words") {
    check_all("words");
}
TEST_CASE("Worked examples: find_out") {
    check_all("find_out");
}
TEST_CASE("Worked examples: house") {
    check_all("house");
}
