// SPDX-License-Identifier: MIT
#include "house/json_reader.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::house;

namespace {

Json tree(const char* text) {
    Result<Json> result = parse_tree(text);
    REQUIRE(ok(result));
    return value(result);
}

} // namespace

TEST_CASE("The first fault is kept") {
    const Json json = tree(R"({"a":"x","b":"y"})");
    Reading reading;
    ObjectReader object(&json, "/o", reading);
    CHECK(object.number("a", {1, 2}) == 1);
    object.number("b", {1, 2});
    REQUIRE(reading.problem());
    CHECK(reading.problem()->path == "/o/a");
    CHECK(reading.problem()->message == "is a string; accepted is a number");
}

TEST_CASE("A wrong value is told rather than a missing one") {
    const Json json = tree(R"({"b":5})");
    Reading reading;
    ObjectReader object(&json, "", reading);
    object.number("a", {1, 2});
    CHECK(reading.problem()->path == "/a");
    object.number("b", {1, 2});
    CHECK(reading.problem()->path == "/b");
    CHECK(reading.problem()->message == "is 5; accepted is 1 to 2");
}

TEST_CASE("Used defaults are named with their path and value") {
    const Json json = tree(R"({"a":1})");
    Reading reading;
    ObjectReader object(&json, "/o", reading);
    CHECK(object.number("a", {0, 9}, 3) == 1);
    CHECK(object.number("b", {0, 9}, 3) == 3);
    CHECK(object.yes_no("c", true));
    CHECK_FALSE(object.optional_number("d", {0, 9}));
    CHECK(reading.assumed() == tree(R"({"/o/b":3.0,"/o/c":true})"));
    CHECK_FALSE(reading.problem());
}

TEST_CASE("Only what nobody asked for is unknown") {
    const Json json = tree(R"({"a":1,"b":2,"c":3})");
    Reading reading;
    ObjectReader object(&json, "", reading);
    object.number("b", {0, 9});
    object.finish();
    REQUIRE(reading.unknown_fields().size() == 2);
    CHECK(reading.unknown_fields()[0].path == "/a");
    CHECK(reading.unknown_fields()[1].path == "/c");
    CHECK(reading.unknown_fields()[1].accepted == "b");
}

TEST_CASE("Arrays of wrong sizes and wrong entries") {
    const Json json = tree(R"({"short":[],"pairs":[[1,2],[1],[1,"x"],[1,9]],"no":{}})");
    const Range range{0, 5};
    const auto fault = [&](auto&& read) {
        Reading reading;
        ObjectReader object(&json, "", reading);
        read(object);
        return reading.problem() ? reading.problem()->path : "";
    };
    CHECK(fault([](auto& o) { o.array("short", 1, 4); }) == "/short");
    CHECK(fault([](auto& o) { o.array("no", 1, 4); }) == "/no");
    CHECK(fault([](auto& o) { o.array("absent", 1, 4); }) == "/absent");
    CHECK(fault([&](auto& o) { o.array("pairs", 1, 4).numbers(0, 2, range); }) == "");
    CHECK(fault([&](auto& o) { o.array("pairs", 1, 4).numbers(1, 2, range); }) == "/pairs/1");
    CHECK(fault([&](auto& o) { o.array("pairs", 1, 4).numbers(2, 2, range); }) == "/pairs/2/1");
    CHECK(fault([&](auto& o) { o.array("pairs", 1, 4).numbers(3, 2, range); }) == "/pairs/3/1");
}

TEST_CASE("Where a fault lies in nested JSON") {
    const auto fault = [](const char* text) {
        const Result<Json> result = parse_tree(text);
        REQUIRE_FALSE(ok(result));
        return problem(result).path;
    };
    CHECK(fault(R"({"a":[0,{"b":1e999}]})") == "/a/1/b");
    CHECK(fault(R"({"a":[[1,2],[3,-1e999]]})") == "/a/1/1");
    CHECK(fault(R"({"a":[{"x":1},{"x":1,"x":2}]})") == "/a/1/x");
    CHECK(fault("[1e400]") == "/0");
}
