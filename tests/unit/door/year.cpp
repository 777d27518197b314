// SPDX-License-Identifier: MIT
// The question `year`: faults with their paths, and a remedy against today.
#include "door/door.hpp"
#include "house/json_tree.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace shimlight;
using house::Json;

namespace {

Json good_question() {
    return Json::parse(R"({"climate":"Minneapolis MN","window":{"conduction_w_k":5,
        "facing_deg":180,"glass":{"area_m2":1,"shgc":0.7},
        "leak":{"coefficient_m3_s_pan":0.0005,"height_above_neutral_m":-1.5}}})");
}

Json own_climate(int months) {
    Json climate{{"latitude_deg", 45}, {"months", Json::array()}};
    for (int n = 0; n < months; ++n)
        climate["months"].push_back({{"mean_c", 5}, {"sun_wh_m2", 1000}});
    return climate;
}

Json ask(const Json& question) {
    return Json::parse(door::ask("year", question.dump()));
}

std::string fault_path(const Json& question) {
    const Json answer = ask(question);
    REQUIRE(answer.contains("error"));
    return answer["error"]["path"].get<std::string>();
}

} // namespace

TEST_CASE("year: faults name their place") {
    Json q = good_question();
    q["climate"] = "Atlantis";
    CHECK(fault_path(q) == "/climate");
    q.erase("climate");
    CHECK(fault_path(q) == "/climate");
    q["climate"] = own_climate(11);
    CHECK(fault_path(q) == "/climate/months");
    q["climate"] = own_climate(12);
    q["climate"]["months"][0]["sun_wh_m2"] = 3600; // 3.4 kWh reach the edge of the air
    CHECK(fault_path(q) == "/climate/months/0/sun_wh_m2");
    q = good_question();
    q["window"]["glass"]["by_angle"] = {1, 1};
    CHECK(fault_path(q) == "/window/glass/by_angle");
    q = good_question();
    q["house"] = {{"heating_c", 22}, {"cooling_c", 21}};
    CHECK(fault_path(q) == "/house/cooling_c");
    q = good_question();
    q["money"] = {{"fuel", "coal"}, {"price_per_unit", 1}};
    CHECK(fault_path(q) == "/money/fuel");
    q["money"] = {{"fuel", "propane"}, {"price_per_unit", 3}, {"hours", 2}};
    CHECK(fault_path(q) == "/money/hours"); // nothing is bought without a remedy
    q = good_question();
    q["day_of_month"] = 13;
    CHECK(fault_path(q) == "/day_of_month");
}

TEST_CASE("year: a remedy like today saves nothing, and says so") {
    Json q = good_question();
    q["remedy"] = Json::object();
    q["money"] = {{"fuel", "propane"},
                  {"price_per_unit", 3},
                  {"hours", 2},
                  {"rate_per_h", 60},
                  {"material", 50}};
    const Json answer = ask(q);
    REQUIRE(!answer.contains("error"));
    CHECK(answer["saving"]["heating_kwh"] == 0);
    CHECK(answer["remedy"]["year"] == answer["year"]);
    CHECK(answer["money"]["payback_years"]["value"].is_null());
    CHECK(answer["money"]["sentence"] == "It saves no money; other reasons must carry it.");
    CHECK(answer["assumed"]["/remedy/conduction_w_k"] == 5);
    CHECK(answer["assumed"]["/house/air_elsewhere"] == 0.5);
}

TEST_CASE("year: a lower thermostat is told apart from the remedy's saving") {
    Json q = good_question();
    q["remedy"] = {{"conduction_w_k", 2}};
    const Json before = ask(q);
    q["thermostat_lower_k"] = 1;
    Json answer = ask(q);
    // A house in Minneapolis, 255 W/K: a kelvin less over some 5300 heated hours.
    CHECK(answer["saving"]["thermostat_kwh"].get<double>() ==
          doctest::Approx(0.252 * 5300).epsilon(0.1));
    CHECK(answer["saving"]["heating_kwh"] == before["saving"]["heating_kwh"]);
    q.erase("remedy");
    CHECK(fault_path(q) == "/thermostat_lower_k");
}

TEST_CASE("year: places of the table and beyond its latitudes") {
    Json q = good_question();
    q["climate"] = "Montreal QC";
    const Json montreal = ask(q);
    CHECK(montreal["climate_note"].get<std::string>().find("Massena") != std::string::npos);
    CHECK(montreal["warnings"].empty());
    q["climate"] = "Fairbanks AK";
    CHECK(ask(q)["warnings"].size() == 1);
    q["day_of_month"] = 12;
    CHECK(ask(q)["day"].size() == 24);
}
