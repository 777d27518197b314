// SPDX-License-Identifier: MIT
// What every question keeps to: defaults, warnings, faults.
#include "door/door.hpp"
#include "house/house.hpp"
#include "house/json_tree.hpp"
#include "sanitized.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <string>

using namespace shimlight;
using house::Json;

namespace {

/// Longest that any answer of the program as it is used may take. One that watches itself for
/// faults takes some seven times as long.
#ifdef __SANITIZE_ADDRESS__
constexpr double patience_s = 100;
#else
constexpr double patience_s = 10;
#endif

const char* const questions[] = {"glazing", "section",  "comfort",      "room",
                                 "leak",    "moisture", "thermography", "year",
                                 "label",   "words",    "find_out",     "house"};

Json answer(std::string_view question, std::string_view text) {
    const std::string answer = door::ask(question, text);
    const Json tree = Json::parse(answer);
    CHECK(tree.contains("error") == door::is_error(answer));
    return tree;
}

Json refusal(std::string_view question, std::string_view text) {
    const Json tree = answer(question, text);
    REQUIRE(tree.size() == 1);
    REQUIRE(tree.contains("error"));
    CHECK(tree["error"].size() == 2);
    CHECK(tree["error"]["path"].is_string());
    CHECK_FALSE(tree["error"]["message"].get<std::string>().empty());
    return tree["error"];
}

double seconds_for(std::string_view question, const std::string& text) {
    const auto start = std::chrono::steady_clock::now();
    door::ask(question, text);
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

constexpr char moisture[] = R"({"air_c":21,"rh":0.4,"surface_c":6.5,"outside_c":-10})";

/// A section of `count` thin regions, each a grid line of its own.
std::string striped_section(int count) {
    std::string regions;
    for (int i = 0; i < count; ++i) {
        regions += R"({"x0_m":)" + std::to_string(i / (count + 1.0)) + R"(,"y0_m":)" +
                   std::to_string(i / (count + 1.0)) +
                   R"(,"x1_m":1,"y1_m":1,"conductivity_w_mk":)" + std::to_string(1 + i % 7) + "}" +
                   (i + 1 < count ? "," : "");
    }
    return R"({"width_m":1,"height_m":1,"airs":{"in":{"air_c":20,"film_w_m2k":8}},"regions":[)" +
           regions + R"(],"edges":[{"side":"left","from_m":0,"to_m":1,"air":"in"}],)" +
           R"("accuracy":"fine"})";
}

std::string demo_text() {
    return house::to_json(house::demo_house());
}

/// A house of one opening with one remedy, its glass read so before the work and after it.
Json read_house(double before_c, double after_c) {
    Json house = Json::parse(demo_text());
    Json& openings = house["openings"];
    openings = Json::array({openings[0]});
    openings[0]["remedies"] =
        Json::array({openings[0]["remedies"][openings[0]["chosen"].get<std::size_t>()]});
    openings[0]["chosen"] = 0;
    const auto visit = [](double glass_c) {
        return Json{{"glass_c", glass_c}, {"inside_c", 21}, {"outside_c", -12}};
    };
    openings[0]["site"] = {{"instrument", {{"set_emissivity", 0.84}, {"error_k", 1}}},
                           {"before", visit(before_c)},
                           {"after", visit(after_c)}};
    return house;
}

Json read_twice(double before_c, double after_c) {
    return answer("house", read_house(before_c, after_c).dump())["openings"][0];
}

} // namespace

TEST_CASE("An unknown question names those there are") {
    const Json error = refusal("weather", "{}");
    CHECK(error["message"].get<std::string>().find("thermography") != std::string::npos);
}

TEST_CASE("Every question refuses what is no object, each with path and message") {
    const std::string texts[] = {"",
                                 "null",
                                 "[]",
                                 "1",
                                 "\"text\"",
                                 "{",
                                 "{}x",
                                 "\xff",
                                 "{\"a\":",
                                 "{\"a\":1e999}",
                                 "NaN",
                                 std::string(500000, '['),
                                 std::string(house::max_text_bytes + 1, ' '),
                                 "{\"a\":1,\"a\":2}"};
    for (const char* question : questions) {
        CAPTURE(question);
        for (const std::string& text : texts)
            refusal(question, text);
    }
}

TEST_CASE("Every question names an unknown field and what is accepted in its place") {
    for (const char* question : questions) {
        if (question == std::string("house")) continue; // notes it instead
        CAPTURE(question);
        const Json error = refusal(question, R"({"colour":"red"})");
        CHECK((error["path"] == "/colour" || error["path"] == "/method"));
    }
    const Json error = refusal("moisture", R"({"air_c":21,"rh":0.4,"surfaec_c":6.5})");
    CHECK(error["path"] == "/surfaec_c");
    CHECK(error["message"].get<std::string>().find("surface_c") != std::string::npos);
}

TEST_CASE("A missing required field is told with its path") {
    CHECK(refusal("moisture", R"({"air_c":21,"rh":0.4,"surface_c":6.5})")["path"] == "/outside_c");
}

TEST_CASE("Defaults that were used are named with their values") {
    const Json comfort = answer("comfort", R"({"air_c":22})");
    CHECK(comfort["assumed"]["/radiant_c"] == 22);
    CHECK(comfort["assumed"]["/speed_m_s"] == 0.1);
    CHECK(comfort["assumed"].size() == 5);
    CHECK(answer("moisture", moisture)["assumed"].empty());
}

TEST_CASE("Given defaults give the same answer as missing ones") {
    Json bare = answer("comfort", R"({"air_c":22})");
    Json full = answer("comfort", R"({"air_c":22,"radiant_c":22,"speed_m_s":0.1,"rh":0.4,
                                      "met":1.1,"clo":0.9})");
    bare.erase("assumed");
    full.erase("assumed");
    CHECK(bare == full);
}

TEST_CASE("Warnings name a range") {
    const Json comfort = answer("comfort", R"({"air_c":45})");
    CHECK_FALSE(comfort["warnings"].empty());
    CHECK(answer("comfort", R"({"air_c":22})")["warnings"].empty());
}

TEST_CASE("The declared method needs no temperatures and says what it ignores") {
    const Json bare = answer("glazing", R"({"method":"declared","panes":[{"thickness_m":0.004}]})");
    CHECK(bare["warnings"].empty());
    CHECK(bare["assumed"]["/outside/film_w_m2k"] == 25);
    CHECK_FALSE(bare.contains("flux_w_m2"));
    const Json windy = answer("glazing", R"({"method":"declared","panes":[{"thickness_m":0.004}],
                                             "outside":{"air_c":-18,"wind_m_s":9}})");
    CHECK(windy["u_w_m2k"] == bare["u_w_m2k"]);
    CHECK(windy["warnings"].size() == 1);
}

TEST_CASE("The detailed method refuses a film, which belongs to the declared one") {
    const char text[] = R"({"method":"detailed","panes":[{"thickness_m":0.004}],
                            "outside":{"air_c":0,"film_w_m2k":25},"inside":{"air_c":20}})";
    CHECK(refusal("glazing", text)["path"] == "/outside/film_w_m2k");
}

TEST_CASE("Numbers that do not exist are null with a warning, never written as numbers") {
    const Json even = answer("moisture", R"({"air_c":20,"rh":0.4,"surface_c":20,"outside_c":20})");
    CHECK(even["temperature_factor"].is_null());
    CHECK(even["warnings"].size() == 1);
    const Json dry = answer("moisture", R"({"air_c":20,"rh":0,"surface_c":5,"outside_c":-5})");
    CHECK(dry["dew_point_c"].is_null());
    CHECK(dry["wet"] == false);
    CHECK(dry["warnings"].size() == 1);
}

TEST_CASE("The flows of a leak sum up and a driving pressure is taken apart") {
    const Json leak = answer("leak", R"({"cracks":[{"gap_m":0.002,"depth_m":0.1,"length_m":3,
        "bends":2},{"rating_l_s_m2":1.5,"area_m2":1.8}],"drive":{"inside_c":21,"outside_c":-10,
        "wind_m_s":4,"height_above_neutral_m":-2.5,"pressure_coefficient":0.6,"shelter":0.5}})");
    const double a = leak["flows_m3_s"][0].get<double>(), b = leak["flows_m3_s"][1].get<double>();
    CHECK(leak["total_m3_s"].get<double>() == doctest::Approx(a + b).epsilon(1e-12));
    CHECK(leak["pressure_pa"].get<double>() ==
          doctest::Approx(leak["stack_pa"].get<double>() + leak["wind_pa"].get<double>()));
    CHECK(leak["stack_pa"].get<double>() > 0);
}

TEST_CASE("The shares of the draft sum to 1") {
    const Json room = answer("room", R"({"window":{"width_m":1.2,"height_m":1.5,"sill_m":0.6,
        "surface_c":6.5,"frame_c":8},"room":{"air_c":21,"rh":0.4,"width_m":4,"depth_m":4,
        "height_m":2.5,"surfaces_c":20},"person":{"distance_m":1,"posture":"seated","met":1.1,
        "clo":0.9},"leaks":[{"where":"shim_left","flow_m3_s":0.001,"air_c":-5,"gap_m":0.004,
        "length_m":1.5,"height_m":1.3}]})");
    double sum = 0;
    for (const Json& share : room["share"])
        sum += share.get<double>();
    CHECK(sum == doctest::Approx(1).epsilon(1e-12));
    CHECK(room["warnings"].is_array());
    CHECK(room["assumed"].empty());
}

TEST_CASE("A stream through a section tells where it ends, and its heat closes the balance") {
    const std::string head = R"({"width_m":0.3,"height_m":0.2,
        "airs":{"outside":{"air_c":0,"film_w_m2k":25},"inside":{"air_c":20,"film_w_m2k":7.7}},
        "regions":[{"x0_m":0,"y0_m":0,"x1_m":0.3,"y1_m":0.2,"conductivity_w_mk":0.13},
        {"x0_m":0,"y0_m":0.095,"x1_m":0.3,"y1_m":0.105,"conductivity_w_mk":0.025}],
        "edges":[{"side":"left","from_m":0,"to_m":0.2,"air":"outside"},
        {"side":"right","from_m":0,"to_m":0.2,"air":"inside"}],"streams":{"joint":{"inlet_c":0,)";
    const std::string path = R"("path":[{"x0_m":0,"y0_m":0.095,"x1_m":0.3,"y1_m":0.105,
        "from":"left","film_w_m2k":12}]}}})";
    const Json section = answer("section", head + R"("capacity_w_mk":1.2,)" + path);
    const double heat = section["streams"]["joint"]["heat_w_m"].get<double>();
    const double outlet_c = section["streams"]["joint"]["outlet_c"].get<double>();
    CHECK(heat < -1);
    CHECK(std::abs(outlet_c + heat / 1.2) < 1e-9);
    CHECK(std::abs(section["heat_w_m"]["inside"].get<double>() +
                   section["heat_w_m"]["outside"].get<double>() + heat) < 1e-9);
    CHECK(refusal("section", head + R"("capacity_w_mk":-1,)" + path)["path"] ==
          "/streams/joint/capacity_w_mk");
    CHECK(refusal("section", head + path)["path"] == "/streams/joint/capacity_w_mk");
}

TEST_CASE("A section answers with the isotherms that are asked for") {
    const std::string head = R"({"width_m":0.1,"height_m":0.2,"airs":{"out":{"surface_c":0},
        "in":{"surface_c":20}},"regions":[{"x0_m":0,"y0_m":0,"x1_m":0.1,"y1_m":0.2,
        "conductivity_w_mk":1}],"edges":[{"side":"left","from_m":0,"to_m":0.2,"air":"out"},
        {"side":"right","from_m":0,"to_m":0.2,"air":"in"}],"isotherms_c":[)";
    const Json lines = answer("section", head + "5, 30]}")["isotherms"];
    REQUIRE(lines.size() == 1);
    CHECK(lines[0]["c"] == 5);
    for (const Json& point : lines[0]["points_m"])
        CHECK(point[0].get<double>() == doctest::Approx(0.025));
    CHECK(refusal("section", head + "5, true]}")["path"] == "/isotherms_c/1");
    CHECK(refusal("section", head + "1e9]}")["path"] == "/isotherms_c/0");
}

TEST_CASE("A section's heat sums to zero and no temperature leaves the airs") {
    const Json section = answer("section", R"({"width_m":0.5,"height_m":0.0475,
        "airs":{"outside":{"air_c":0,"film_w_m2k":25},"inside":{"air_c":20,"film_w_m2k":7.7},
        "ice":{"surface_c":0}},
        "regions":[{"x0_m":0,"y0_m":0,"x1_m":0.5,"y1_m":0.0475,"conductivity_w_mk":0.029},
        {"x0_m":0.1,"y0_m":0.0,"x1_m":0.5,"y1_m":0.01,"air":"inside"},
        {"x0_m":0.2,"y0_m":0.02,"x1_m":0.25,"y1_m":0.04,"cavity":{}}],
        "edges":[{"side":"left","from_m":0,"to_m":0.0475,"air":"outside"}],
        "probes":[[0.25,0.02],[0,0],[0.5,0.0475]]})");
    double sum = 0;
    for (const Json& heat : section["heat_w_m"])
        sum += heat.get<double>();
    CHECK(std::abs(sum) < 1e-9);
    CHECK(section["heat_w_m"].size() == 3);
    CHECK(section["heat_w_m"]["ice"] == 0);
    for (const Json& probe : section["probes_c"]) {
        CHECK(probe.get<double>() >= 0);
        CHECK(probe.get<double>() <= 20);
    }
    CHECK(section["coldest_inside"]["at_m"].size() == 2);
    CHECK(section["assumed"]["/accuracy"] == "normal");
    CHECK(section["assumed"]["/regions/2/cavity/emissivity"] == 0.9);
}

TEST_CASE("The largest questions are answered in time") {
    std::string cracks, leaks;
    for (int i = 0; i < 9000; ++i) {
        cracks += std::string(i ? "," : "") + R"({"gap_m":0.002,"depth_m":0.1,"length_m":3})";
        if (i >= 999) continue;
        leaks += std::string(i ? "," : "") +
                 R"({"where":"sash","flow_m3_s":0.001,"air_c":-5,"gap_m":0.004,"length_m":1.5,)" +
                 R"("height_m":1.3})";
    }
    CHECK(seconds_for("leak", R"({"pressure_pa":4,"cracks":[)" + cracks + "]}") < patience_s);
    CHECK(seconds_for("room", R"({"window":{"width_m":1,"height_m":1,"sill_m":1,"surface_c":5},
        "room":{"air_c":21},"leaks":[)" +
                                  leaks + "]}") < patience_s);
    CHECK(seconds_for("glazing", std::string(house::max_text_bytes / 2, '[')) < patience_s);
    CHECK(seconds_for("comfort", "[" + std::string(house::max_text_bytes - 2, '1')) < patience_s);
}

TEST_CASE("Sections with very many regions are answered or refused in time") {
    for (const int count : {50, 400, 5000}) {
        CAPTURE(count);
        CHECK(seconds_for("section", striped_section(count)) < patience_s);
    }
}

TEST_CASE("A house full of readings is answered in time") {
    Json house = read_house(5, 8);
    Json& openings = house["openings"];
    for (const char* part : {"edge_c", "frame_c", "casing_c"})
        openings[0]["site"]["before"][part] = openings[0]["site"]["after"][part] = 3;
    const auto with = [&](int count) {
        openings = Json(Json::array_t(static_cast<std::size_t>(count), openings[0]));
        return house.dump();
    };
    CHECK(seconds_for("house", with(some_of(6))) < patience_s);
    const std::string too_many = with(7);
    CHECK(seconds_for("house", too_many) < patience_s);
    const Json many = answer("house", too_many);
    CHECK(many["warnings"].size() == 1);
    CHECK(many["openings"][6]["after"]["parts"][2]["explained"].is_null());
    CHECK(many["openings"][6]["proof"]["parts"].size() == 4);
}

TEST_CASE("Houses with very many openings are answered at draft accuracy or refused") {
    const auto house_of = [](int count) {
        std::string openings;
        for (int i = 0; i < count; ++i) {
            openings += (i ? R"(,{"name":")" : R"({"name":")") + std::to_string(i) + "\"}";
        }
        return R"({"kind":"shimlight-house","version":1,"openings":[)" + openings + "]}";
    };
    const Json one = answer("house", house_of(1));
    CHECK(one["openings"][0]["today"]["accuracy"] == "normal");
    CHECK(one["warnings"].empty());
    const Json many = answer("house", house_of(31));
    CHECK(many["openings"].size() == 31);
    CHECK(many["openings"][30]["today"]["accuracy"] == "draft");
    CHECK(many["warnings"].size() == 1);
    CHECK(refusal("house", house_of(151))["path"] == "/openings");
}

TEST_CASE("A house tells its readings beside what is computed, and whether the work did it") {
    const Json first = read_twice(5, 5);
    const double today_c = first["before"]["parts"][0]["computed_c"].get<double>();
    const double remedy_c = first["after"]["parts"][0]["computed_c"].get<double>();
    REQUIRE(remedy_c > today_c + 5);
    CHECK(first["proof"]["parts"][0]["predicted_c"] == remedy_c);

    const Json worked = read_twice(today_c, remedy_c);
    CHECK(worked["before"]["parts"][0]["compared"] == "as_computed");
    CHECK(worked["before"]["parts"][0]["explained"]["explanations"].empty());
    CHECK(worked["proof"]["standing"] == "worked");
    const Json& glass = worked["proof"]["parts"][0];
    CHECK(glass["part"] == "glass_centre");
    constexpr double shown_k =
        0.05; ///< a reading whose emissivity is the surface's shows the surface
    CHECK(std::fabs(glass["difference_k"].get<double>()) < shown_k);
    CHECK(glass["gain_k"].get<double>() == doctest::Approx(remedy_c - today_c).epsilon(0.01));

    const Json untouched = read_twice(today_c, today_c);
    CHECK(untouched["proof"]["standing"] == "not_worked");
    CHECK(untouched["proof"]["suspect"] != "");

    CHECK(answer("house", demo_text())["openings"][0]["proof"].is_null());
}
