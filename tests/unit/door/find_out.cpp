// SPDX-License-Identifier: MIT
// Question `find_out`: what it accepts, and that a case brings advice.
#include "door/door.hpp"
#include "house/json_tree.hpp"

#include <doctest/doctest.h>
#include <string>

using namespace shimlight;
using house::Json;

namespace {

Json find_out(const std::string& text) {
    return Json::parse(door::ask("find_out", text));
}

std::string refused_at(const std::string& text) {
    const Json answer = find_out(text);
    REQUIRE(answer.contains("error"));
    return answer["error"]["path"];
}

constexpr char prediction[] = R"("prediction":{"cold_glass":0.5,"sash_leak":0.3,"shim_leak":0.2})";

} // namespace

TEST_CASE("find_out names what is wrong with a question") {
    CHECK(refused_at("{}") == "/prediction");
    CHECK(refused_at(R"({"prediction":{"cold_glass":0.5,"sash_leak":0.3}})") ==
          "/prediction/shim_leak");
    CHECK(refused_at(std::string("{") + prediction + R"(,"answers":{"wind":"maybe"}})") ==
          "/answers/wind");
    CHECK(refused_at(std::string("{") + prediction + R"(,"answers":{"candle":"yes"}})") ==
          "/answers/candle");
    CHECK(refused_at(std::string("{") + prediction + R"(,"case":{}})") == "/prediction");
    CHECK(refused_at(std::string("{") + prediction + R"(,"readings":{"glass_c":3}})") ==
          "/readings");
    CHECK(refused_at(std::string("{") + prediction + R"(,"remedy":"foam_joint"})") == "/remedy");
    CHECK(refused_at(R"({"case":{},"remedy":"magic"})") == "/remedy");
    CHECK(refused_at(R"({"case":{"today":{"glazing":{"panes":9}}}})") ==
          "/case/today/glazing/panes");
}

TEST_CASE("find_out tells every test with its likelihoods and reason") {
    const Json answer = find_out(std::string("{") + prediction + "}");
    CHECK(answer["tests"].size() >= 12);
    for (const Json& test : answer["tests"]) {
        CHECK(test["because"].get<std::string>().size() > 20);
        CHECK(test["yes"]["cold_glass"].get<double>() > 0);
        CHECK(test["answers"].size() >= 2);
    }
    CHECK_FALSE(answer.contains("advice"));
}

TEST_CASE("find_out takes the whole way from a case: readings become answers, advice follows") {
    const Json answer = find_out(R"({"case":{},"remedy":"full_vinyl",
        "readings":{"glass_c":-2,"casing_c":0,"error_k":1}})");
    const Json without = find_out(R"({"case":{}})");
    CHECK(answer["share"]["shim_leak"].get<double>() > without["share"]["shim_leak"]);
    CHECK(answer["advice"]["from"].get<std::string>().find("By 2 tests on site") == 0);
    CHECK(answer["advice"]["left"].get<std::string>().find("Full-frame unit, vinyl: ") == 0);
    CHECK(answer["advice"]["cheapest"].get<std::string>().find("Cheapest with 20 of 100") == 0);
    CHECK(without["advice"]["left"] == "");
    CHECK(without["next"]["test"] == "lock_home");
}
