// SPDX-License-Identifier: MIT
// Everything a saved file can be, good or broken.
#include "house/house_json.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace shimlight;
using namespace shimlight::house;
using namespace std::string_literals;

namespace {

/// A house file with `content` after kind and version.
std::string file(const std::string& content) {
    return R"({"kind":"shimlight-house","version":1)" + (content.empty() ? "" : "," + content) +
           "}";
}

std::string one_opening(const std::string& content) {
    return file(R"("openings":[{)" + content + "}]");
}

std::string one_remedy(const std::string& content) {
    return one_opening(R"("remedies":[{)" + content + "}]");
}

Opened opened(const std::string& text) {
    const Result<Opened> result = from_json(text);
    REQUIRE_MESSAGE(ok(result), problem(result).path << ' ' << problem(result).message);
    return value(result);
}

Problem refused(const std::string& text) {
    const Result<Opened> result = from_json(text);
    REQUIRE_FALSE(ok(result));
    CHECK_FALSE(problem(result).message.empty());
    return problem(result);
}

bool noted(const Opened& opened, const std::string& what) {
    return std::any_of(opened.notes.begin(), opened.notes.end(),
                       [&](const auto& note) { return note.find(what) != std::string::npos; });
}

std::string nested(int depth) {
    return std::string(static_cast<std::size_t>(depth), '[');
}

} // namespace

TEST_CASE("Restore: only kind and version gives a usual opening and the defaults") {
    const Opened result = opened(file(""));
    CHECK(result.house.openings.size() == 1);
    CHECK(result.house.openings[0].chosen == -1);
    CHECK(result.house.currency == "$");
    CHECK(result.house.units == Units::us);
    CHECK(noted(result, "/openings"));
}

TEST_CASE("Restore: an empty text") {
    CHECK(refused("").path.empty());
}
TEST_CASE("Restore: null") {
    CHECK(refused("null").path.empty());
}
TEST_CASE("Restore: a number") {
    CHECK(refused("1").path.empty());
}
TEST_CASE("Restore: an array") {
    CHECK(refused("[]").path.empty());
}
TEST_CASE("Restore: an empty object") {
    CHECK(refused("{}").path == "/kind");
}

TEST_CASE("Restore: another kind of file") {
    CHECK(refused(R"({"kind":"shopping-list","version":1})").path == "/kind");
}
TEST_CASE("Restore: a kind that is no text") {
    CHECK(refused(R"({"kind":1,"version":1})").path == "/kind");
}
TEST_CASE("Restore: no version") {
    CHECK(refused(R"({"kind":"shimlight-house"})").path == "/version");
}
TEST_CASE("Restore: a version of the future") {
    const Problem problem = refused(R"({"kind":"shimlight-house","version":2})");
    CHECK(problem.path == "/version");
    CHECK(problem.message.find("newer") != std::string::npos);
}
TEST_CASE("Restore: versions that never were") {
    for (const char* version : {"0", "-1", "1.5", "\"1\"", "null", "true", "1e300"}) {
        CAPTURE(version);
        CHECK(
            refused(std::string(R"({"kind":"shimlight-house","version":)") + version + "}").path ==
            "/version");
    }
}

TEST_CASE("Restore: a syntax error is told with line and column") {
    const Problem problem = refused("{\n  \"kind\": oops\n}");
    CHECK(problem.message.find("line 2, column 11") != std::string::npos);
}
TEST_CASE("Restore: text after the house") {
    CHECK(refused(file("") + "{}").message.find("line 1") != std::string::npos);
}
TEST_CASE("Restore: broken UTF-8") {
    for (const char* bytes : {"\xff", "\xc3", "\xe2\x82", "\xc0\x80", "\xed\xa0\x80", "\xf8"}) {
        refused(file(std::string(R"("name":")") + bytes + "\""));
    }
}
TEST_CASE("Restore: letters of every script and a zero character") {
    const Opened result = opened(file(R"("name":"Größe ½ 窓 \u0000 \ud83c\udf28")"));
    CHECK(result.house.name == "Größe ½ 窓 \0 🌨"s);
    CHECK(opened(to_json(result.house)).house.name == result.house.name);
}
TEST_CASE("Restore: half of a surrogate pair") {
    refused(file(R"("name":"\ud83c")"));
}
TEST_CASE("Restore: a field twice") {
    CHECK(refused(file(R"("name":"a","name":"b")")).path == "/name");
}
TEST_CASE("Restore: nested too deep") {
    const Problem problem = refused(file(R"("openings":)" + nested(100000)));
    CHECK(problem.message.find("deep") != std::string::npos);
}
TEST_CASE("Restore: longer than a house can be") {
    const Problem problem = refused(file("") + std::string(max_text_bytes, ' '));
    CHECK(problem.message.find("bytes") != std::string::npos);
}
TEST_CASE("Restore: too many fields in one object") {
    std::string content;
    for (std::size_t i = 0; i <= max_keys; ++i) {
        content += (i ? ",\"k" : "\"k") + std::to_string(i) + "\":0";
    }
    CHECK(refused("{" + content + "}").path == "/k256");
}
TEST_CASE("Restore: cut off at every byte") {
    const std::string whole = to_json(demo_house());
    for (std::size_t length = 0; length + 2 < whole.size(); length += 7) {
        CHECK_FALSE(ok(from_json(std::string_view(whole).substr(0, length))));
    }
}

TEST_CASE("Restore: a number too large for a double") {
    CHECK(refused(file(R"("weather":{"wind_m_s":1e999})")).path == "/weather/wind_m_s");
}
TEST_CASE("Restore: not a number") {
    refused(file(R"("weather":{"wind_m_s":NaN})"));
    refused(file(R"("weather":{"wind_m_s":Infinity})"));
}
TEST_CASE("Restore: a huge number") {
    CHECK(refused(file(R"("weather":{"wind_m_s":1e308})")).path == "/weather/wind_m_s");
    CHECK(refused(file(R"("weather":{"wind_m_s":99999999999999999999})")).path ==
          "/weather/wind_m_s");
}
TEST_CASE("Restore: a number just outside its limit names the limits") {
    const Problem problem = refused(one_opening(R"("today":{"shim":{"width_m":-0.01}})"));
    CHECK(problem.path == "/openings/0/today/shim/width_m");
    CHECK(problem.message.find("0.003 to 0.038") != std::string::npos);
}
TEST_CASE("Restore: numbers at their limits") {
    const Opened result = opened(file(R"("weather":{"outside_c":-45,"wind_m_s":0})"));
    CHECK(result.house.weather.outside_c == -45);
    CHECK(result.house.weather.wind_m_s == 0);
}
TEST_CASE("Restore: null in place of a number") {
    CHECK(refused(file(R"("running":{"efficiency":null})")).path == "/running/efficiency");
}
TEST_CASE("Restore: wrong types") {
    CHECK(refused(file(R"("name":5)")).path == "/name");
    CHECK(refused(file(R"("weather":[])")).path == "/weather");
    CHECK(refused(file(R"("openings":{})")).path == "/openings");
    CHECK(refused(file(R"("openings":[7])")).path == "/openings/0");
    CHECK(refused(file(R"("selected":"first")")).path == "/selected");
    CHECK(refused(file(R"("units":1)")).path == "/units");
    CHECK(refused(one_opening(R"("today":{"sash":{"locked":1}})")).path ==
          "/openings/0/today/sash/locked");
    CHECK(refused(one_opening(R"("today":{"glazing":"double"})")).path ==
          "/openings/0/today/glazing");
}
TEST_CASE("Restore: a count that is not whole") {
    CHECK(refused(one_opening(R"("today":{"glazing":{"panes":1.5}})")).path ==
          "/openings/0/today/glazing/panes");
}
TEST_CASE("Restore: a choice that does not exist") {
    const Problem problem = refused(one_opening(R"("today":{"shim":{"fill":"straw"}})"));
    CHECK(problem.path == "/openings/0/today/shim/fill");
    CHECK(problem.message.find("\"backer_rod\"") != std::string::npos);
}
TEST_CASE("Restore: unknown units") {
    CHECK(refused(file(R"("units":"imperial")")).path == "/units");
}
TEST_CASE("Restore: a name that is too long") {
    CHECK(refused(file(R"("name":")" + std::string(max_name_bytes + 1, 'x') + '"')).path ==
          "/name");
}
TEST_CASE("Restore: a currency that is too long") {
    CHECK(refused(file(R"("currency":"doubloons")")).path == "/currency");
}

TEST_CASE("Restore: unknown fields are named and left out") {
    const Opened result = opened(file(
        R"("colour":"blue","weather":{"moon":1},"openings":[{"ghost":0,"today":{"shim":{"x":1}}}])"));
    CHECK(noted(result, "/colour"));
    CHECK(noted(result, "/weather/moon"));
    CHECK(noted(result, "/openings/0/ghost"));
    CHECK(noted(result, "/openings/0/today/shim/x"));
    CHECK(result.notes.size() == 4);
}
TEST_CASE("Restore: thousands of unknown fields give a hundred notes") {
    std::string openings;
    for (std::size_t i = 0; i < max_openings; ++i) {
        openings +=
            (i ? R"(,{"name":")" : R"({"name":")") + std::to_string(i) + R"(","x":1,"y":2})";
    }
    const Opened result = opened(file(R"("openings":[)" + openings + "]"));
    CHECK(result.notes.size() == 101);
    CHECK(noted(result, "and more"));
}
TEST_CASE("Restore: an unknown field's path is a JSON pointer") {
    CHECK(noted(opened(file(R"("a/b~c":1)")), "/a~1b~0c"));
}
TEST_CASE("Restore: missing parts take their defaults") {
    const Opened result = opened(one_opening(R"("name":"bath","today":{"glazing":{"panes":2}})"));
    const OpeningRecord usual;
    const OpeningRecord& record = result.house.openings.at(0);
    CHECK(record.name == "bath");
    CHECK(record.today.glazing.panes == 2);
    CHECK(record.today.shim.width_m == usual.today.shim.width_m);
    CHECK(record.room.rh == usual.room.rh);
    CHECK(record.chosen == -1);
    CHECK(result.notes.empty());
}
TEST_CASE("Restore: two openings of one name are kept and told") {
    const Opened result = opened(file(R"("openings":[{"name":"a"},{"name":"a"},{"name":"b"}])"));
    CHECK(result.house.openings.size() == 3);
    CHECK(noted(result, "/openings/1"));
    CHECK(result.notes.size() == 1);
}
TEST_CASE("Restore: too many openings") {
    std::string list = "{}";
    for (std::size_t i = 0; i < max_openings; ++i)
        list += ",{}";
    CHECK(refused(file(R"("openings":[)" + list + "]")).path == "/openings");
}
TEST_CASE("Restore: an opening selected that is not there") {
    CHECK(refused(file(R"("openings":[{}],"selected":1)")).path == "/selected");
    CHECK(refused(file(R"("openings":[{}],"selected":-1)")).path == "/selected");
    CHECK(refused(file(R"("openings":[{}],"selected":0.5)")).path == "/selected");
}

TEST_CASE("Restore: a remedy chosen that is not there") {
    CHECK(refused(one_opening(R"("remedies":[{}],"chosen":1)")).path == "/openings/0/chosen");
    CHECK(refused(one_opening(R"("chosen":0)")).path == "/openings/0/chosen");
    CHECK(opened(one_opening(R"("remedies":[{}],"chosen":-1)")).house.openings[0].chosen == -1);
    CHECK(opened(one_opening(R"("remedies":[{}])")).house.openings[0].chosen == 0);
}
TEST_CASE("Restore: a remedy with an unknown change") {
    const Opened result = opened(one_remedy(R"("changes":{"shim.fill":"foamed","roof":1})"));
    CHECK(result.house.openings[0].remedies[0].changes.size() == 1);
    CHECK(noted(result, "/openings/0/remedies/0/changes/roof"));
}
TEST_CASE("Restore: a remedy cannot change the weather") {
    CHECK(refused(one_remedy(R"("changes":{"weather.outside_c":20})")).path ==
          "/openings/0/remedies/0/changes/weather.outside_c");
}
TEST_CASE("Restore: a remedy's change out of range or of a wrong type") {
    CHECK(refused(one_remedy(R"("changes":{"room.rh":35})")).path ==
          "/openings/0/remedies/0/changes/room.rh");
    CHECK(refused(one_remedy(R"("changes":{"shim.fill":3})")).path ==
          "/openings/0/remedies/0/changes/shim.fill");
    CHECK(refused(one_remedy(R"("changes":["shim.fill"])")).path ==
          "/openings/0/remedies/0/changes");
}
TEST_CASE("Restore: negative hours or cost") {
    CHECK(refused(one_remedy(R"("hours":-1)")).path == "/openings/0/remedies/0/hours");
    CHECK(refused(one_remedy(R"("material_cost":-1)")).path ==
          "/openings/0/remedies/0/material_cost");
}
TEST_CASE("Restore: a remedy's changes keep their order") {
    const Opened result =
        opened(one_remedy(R"("changes":{"glazing.coating":"face5","glazing.panes":3})"));
    const auto& changes = result.house.openings[0].remedies[0].changes;
    CHECK(changes.at(0).field->key == "glazing.coating");
    CHECK(changes.at(1).field->key == "glazing.panes");
}

TEST_CASE("Restore: a coating on a face that is not there is dropped and told") {
    const Opened result = opened(one_opening(R"("today":{"glazing":{"coating":"face5"}})"));
    CHECK(result.house.openings[0].today.glazing.coating == opening::Coating::none);
    CHECK(noted(result, "glazing.coating"));
}
TEST_CASE("Restore: a coating may stand before its panes") {
    const Opened result =
        opened(one_opening(R"("today":{"glazing":{"coating":"face5","panes":3}})"));
    CHECK(result.house.openings[0].today.glazing.coating == opening::Coating::face5);
    CHECK(result.notes.empty());
}
TEST_CASE("Restore: a sash that is locked and has slipped") {
    const Opened result =
        opened(one_opening(R"("today":{"sash":{"locked":true,"slipped_m":0.01}})"));
    const opening::Sash& sash = result.house.openings[0].today.sash;
    CHECK_FALSE((sash.locked && sash.slipped_m > 0));
    CHECK_FALSE(result.notes.empty());
}
TEST_CASE("Restore: a window higher than its room") {
    const Opened result =
        opened(one_opening(R"("today":{"sill_m":1.5,"height_m":2.4},"room":{"height_m":2.0})"));
    const OpeningRecord& record = result.house.openings[0];
    CHECK(record.room.height_m > record.today.sill_m + record.today.height_m);
    CHECK(noted(result, "room.height_m"));
}

TEST_CASE("Restore: a file from before glass could lean or have two kinds of coating") {
    const Opened result = opened(one_opening(
        R"("today":{"glazing":{"panes":3,"coating":"faces2and5","coating_kind":"one_silver",
           "emissivity":0.09}})"));
    const opening::Opening& today = result.house.openings[0].today;
    CHECK(today.tilt_deg == 90);
    CHECK(today.glazing.coating == opening::Coating::faces2and5);
    CHECK(today.glazing.coating_kind_2 == opening::SecondCoating::same);
    CHECK(today.glazing.emissivity == 0.09);
    CHECK(result.notes.empty());
}

TEST_CASE("Restore: two soft coatings on faces 2 and 4 of two panes are kept as written") {
    const Opened result = opened(one_opening(
        R"("today":{"tilt_deg":45,"glazing":{"panes":2,"coating":"faces2and4",
           "coating_kind_2":"one_silver","emissivity_2":0.07}})"));
    const opening::Opening& today = result.house.openings[0].today;
    CHECK(today.tilt_deg == 45);
    CHECK(today.glazing.coating_kind_2 == opening::SecondCoating::one_silver);
    CHECK(today.glazing.emissivity_2 == 0.07);
    CHECK(result.notes.empty());
    CHECK(refused(one_opening(R"("today":{"tilt_deg":5})")).path == "/openings/0/today/tilt_deg");
}

TEST_CASE("Restore: a survey's fields have defaults") {
    const OpeningRecord record = opened(one_opening("")).house.openings[0];
    CHECK(record.room_name.empty());
    CHECK(record.notes.empty());
    CHECK(record.observations == Observations{});
    CHECK(record.photos.empty());
}

TEST_CASE("Restore: an observation of another word") {
    const Problem fault = refused(one_opening(R"("observations":{"frost":"some"})"));
    CHECK(fault.path == "/openings/0/observations/frost");
    CHECK(fault.message.find("\"yes\"") != std::string::npos);
}

TEST_CASE("Restore: an observation nobody knows is named and left out") {
    const Opened result = opened(one_opening(R"("observations":{"ghosts":"yes","fog":"no"})"));
    CHECK(noted(result, "/openings/0/observations/ghosts"));
    CHECK(seen(result.house.openings[0], 8) == Seen::no);
}

TEST_CASE("Restore: photographs with a broken name") {
    for (const char* id : {"", "0123456789abcde", "0123456789abcdeF", "../../../etc/pas"})
        CHECK(refused(one_opening(R"("photos":[{"id":")" + std::string(id) + R"("}])")).path ==
              "/openings/0/photos/0/id");
    CHECK(refused(one_opening(R"("photos":[7])")).path == "/openings/0/photos/0");
    CHECK(refused(one_opening(R"("photos":{})")).path == "/openings/0/photos");
}

TEST_CASE("Restore: a photograph twice counts once; more than there is room for are refused") {
    const std::string one = R"({"id":"0123456789abcdef","words":"sill"})";
    const Opened twice = opened(one_opening(R"("photos":[)" + one + "," + one + "]"));
    CHECK(twice.house.openings[0].photos.size() == 1);
    CHECK(noted(twice, "/openings/0/photos/1"));
    std::string many;
    for (int i = 0; i < 13; ++i)
        many += (i ? "," : "") + one;
    CHECK(refused(one_opening(R"("photos":[)" + many + "]")).path == "/openings/0/photos");
}

TEST_CASE("Restore: pictures beside the house are the page's") {
    CHECK(opened(file(R"("pictures":{"0123456789abcdef":"data:image/jpeg;base64,AA=="})"))
              .notes.size() == 1); // of the opening that was put in
}

TEST_CASE("Restore: the same name in two rooms is no double") {
    const Opened result = opened(
        file(R"("openings":[{"name":"W","room_name":"Bath"},{"name":"W","room_name":"Attic"}])"));
    CHECK(result.notes.empty());
}
