// SPDX-License-Identifier: MIT
#include "house/house_json.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace shimlight;
using namespace shimlight::house;

namespace {

constexpr int random_houses = 60;

class Dice {
  public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967295.0);
    }
    int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }

  private:
    std::mt19937 engine_;
};

OpeningRecord random_record(const House& house, Dice& dice) {
    OpeningRecord record;
    record.name = "opening " + std::to_string(dice.below(1000000));
    opening::Case c = today_case(house, record);
    for (const opening::Field& field : opening::fields()) {
        opening::set_field(c, field, dice.between(field.min, field.max));
    }
    record.today = c.opening;
    record.room = c.room;
    for (int i = dice.below(4); i > 0; --i) {
        opening::Remedy remedy;
        remedy.name = "remedy \"" + std::to_string(i) + "\"\n";
        remedy.hours = dice.between(0, 9);
        remedy.changes.push_back({opening::find_field("room.rh"), dice.between(0.1, 0.9)});
        remedy.changes.push_back({opening::find_field("shim.fill"), 1.0 * dice.below(4)});
        remedy.changes.push_back({opening::find_field("sash.locked"), 1.0 * dice.below(2)});
        record.remedies.push_back(remedy);
    }
    record.chosen =
        record.remedies.empty() ? -1 : dice.below(static_cast<int>(record.remedies.size()));
    return record;
}

House random_house(unsigned seed) {
    Dice dice(seed);
    House house;
    house.name = "Haus Nr. " + std::to_string(seed);
    house.units = dice.below(2) ? Units::si : Units::us;
    opening::Case c;
    for (const opening::Field& field : opening::fields()) {
        opening::set_field(c, field, dice.between(field.min, field.max));
    }
    house.weather = c.weather;
    house.running = c.running;
    for (int i = 1 + dice.below(5); i > 0; --i) {
        house.openings.push_back(random_record(house, dice));
    }
    house.selected = dice.below(static_cast<int>(house.openings.size()));
    return house;
}

void check_same_case(const opening::Case& a, const opening::Case& b) {
    for (const opening::Field& field : opening::fields()) {
        CAPTURE(field.key);
        CHECK(field.get(a) == field.get(b)); // exactly
    }
}

void check_same_remedies(const OpeningRecord& a, const OpeningRecord& b) {
    REQUIRE(a.remedies.size() == b.remedies.size());
    for (std::size_t i = 0; i < a.remedies.size(); ++i) {
        CHECK(a.remedies[i].name == b.remedies[i].name);
        CHECK(a.remedies[i].hours == b.remedies[i].hours);
        REQUIRE(a.remedies[i].changes.size() == b.remedies[i].changes.size());
        for (std::size_t k = 0; k < a.remedies[i].changes.size(); ++k) {
            CHECK(a.remedies[i].changes[k].field == b.remedies[i].changes[k].field);
            CHECK(a.remedies[i].changes[k].value == b.remedies[i].changes[k].value);
        }
    }
}

} // namespace

TEST_CASE("A house comes back from its file exactly") {
    for (unsigned seed = 1; seed <= random_houses; ++seed) {
        const House house = random_house(seed);
        const std::string text = to_json(house);
        const Result<Opened> result = from_json(text);
        REQUIRE_MESSAGE(ok(result), problem(result).path << ' ' << problem(result).message);
        const House& back = value(result).house;
        CHECK(value(result).notes.empty());
        CHECK(to_json(back) == text);
        CHECK(back.selected == house.selected);
        REQUIRE(back.openings.size() == house.openings.size());
        for (std::size_t i = 0; i < house.openings.size(); ++i) {
            check_same_case(today_case(house, house.openings[i]),
                            today_case(back, back.openings[i]));
            check_same_remedies(house.openings[i], back.openings[i]);
        }
    }
}

TEST_CASE("A fuel and own prices are in the file once somebody has said them") {
    House house = demo_house();
    CHECK(to_json(house).find("fuel\"") == std::string::npos);
    house.fuel = 2;
    house.unit_prices = {{"sealant", 9.25}};
    const Result<Opened> back = from_json(to_json(house));
    REQUIRE(ok(back));
    CHECK(value(back).house.fuel == 2);
    REQUIRE(value(back).house.unit_prices.size() == 1);
    CHECK(value(back).house.unit_prices[0].price == 9.25);
    CHECK(!ok(from_json(R"({"kind":"shimlight-house","version":1,"fuel":"peat"})")));
    CHECK(!ok(from_json(R"({"kind":"shimlight-house","version":1,"unit_prices":{"foam":-1}})")));
}

TEST_CASE("The file has every field of the field table once, under its scope") {
    const Result<Json> tree = parse_tree(to_json(demo_house()));
    REQUIRE(ok(tree));
    const Json& house = value(tree);
    CHECK(house["kind"] == "shimlight-house");
    CHECK(house["version"] == 1);
    CHECK(house["weather"].size() + house["running"].size() == 8);
    std::size_t written = house["openings"][0]["room"].size();
    for (const auto& group : house["openings"][0]["today"]) {
        written += group.is_object() ? group.size() : 1;
    }
    CHECK(written + 8 == opening::fields().size());
}

TEST_CASE("A chosen remedy that does not exist is written as none") {
    House house;
    house.openings.emplace_back(); // chosen 0, no remedies
    const Result<Json> tree = parse_tree(to_json(house));
    REQUIRE(ok(tree));
    CHECK(value(tree)["openings"][0]["chosen"] == -1);
}

TEST_CASE("Migrations are taken one after the other from the file's version on") {
    const Migration steps[] = {{1, [](Json& tree) { tree["trace"].push_back("a"); }},
                               {2, [](Json& tree) { tree["trace"].push_back("b"); }},
                               {3, [](Json& tree) { tree["trace"].push_back("c"); }}};
    Json tree{{"version", 2}, {"trace", Json::array()}};
    migrate(tree, 2, steps);
    CHECK(tree["version"] == 4);
    CHECK(tree["trace"] == Json::array({"b", "c"}));
}

TEST_CASE("The migrations there are lead to the version that is written") {
    int version = 1;
    for (const Migration& step : migrations()) {
        CHECK(step.from == version);
        ++version;
    }
    CHECK(version == format_version);
}
