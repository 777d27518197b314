// SPDX-License-Identifier: MIT
// Question `find_out`: which cause the draft has, from a prediction and from tests on site.
//   "prediction":{"cold_glass":0.5,"sash_leak":0.3,"shim_leak":0.2}, or
//   "case":{"today":{…},"room":{…},"weather":{…},"running":{…}} as in a house file, computed here;
//   "answers":{"lock_home":"same","wind":"yes",…}; all tests and their answers come back in
//   `tests`.
// With a case there may be `readings` of its surfaces and a `remedy` thought of; then the answer
// has `advice`, and in `readings` what would explain those of frame and casing.
#include "assess/advice.hpp"
#include "assess/part_reading.hpp"
#include "assess/reading.hpp"
#include "door/answer.hpp"
#include "door/reading_answer.hpp"
#include "house/field_reader.hpp"

#include <algorithm>

namespace shimlight::door {

using opening::Scope;

namespace {

// Accepted ranges.
constexpr Range surface_c{-60, 60};
constexpr Range error_k{0, 20};
constexpr Range hour{0, 10000}; ///< in any currency

constexpr double usual_error_k = 2;

/// What is told of the window, besides answers.
struct Window {
    std::optional<opening::Case> today;
    assess::Assessment now;
    physics::DraftShare predicted;
    std::string remedy;
    double hour = assess::usual_hour;
};

physics::DraftShare read_prediction(ObjectReader object) {
    physics::DraftShare share;
    share.cold_glass = object.number("cold_glass", fraction_range);
    share.sash_leak = object.number("sash_leak", fraction_range);
    share.shim_leak = object.number("shim_leak", fraction_range);
    object.finish();
    return share;
}

opening::Case read_case(ObjectReader object) {
    opening::Case c;
    house::read_scope(object.object_or_empty("today"), Scope::opening, c);
    house::read_scope(object.object_or_empty("room"), Scope::room, c);
    house::read_scope(object.object_or_empty("weather"), Scope::weather, c);
    house::read_scope(object.object_or_empty("running"), Scope::running, c);
    house::make_consistent(c);
    object.finish();
    return c;
}

Window read_window(ObjectReader& question) {
    Window window;
    if (question.has("case")) {
        window.today = read_case(question.object("case"));
        if (question.has("prediction"))
            question.reading().fail("/prediction",
                                    "is given together with case; accepted is one of the two");
        question.find("prediction");
        window.remedy = question.text("remedy", 100, "");
        window.hour = question.number("hour", hour, assess::usual_hour);
        const auto ready = opening::ready_remedies();
        if (!window.remedy.empty() && std::none_of(ready.begin(), ready.end(), [&](const auto& r) {
                return r.key == window.remedy;
            }))
            question.reading().fail("/remedy", "is not the key of a ready-made remedy");
    } else {
        question.find("case");
        window.predicted = read_prediction(question.object("prediction"));
    }
    return window;
}

/// Temperatures measured at glass, frame and casing; each becomes the answer to its test.
struct Readings {
    std::optional<double> glass_c, frame_c, casing_c;
    double error_k = usual_error_k;
    bool any() const { return glass_c || frame_c || casing_c; }
};

Readings read_readings(ObjectReader object) {
    Readings readings;
    readings.glass_c = object.optional_number("glass_c", surface_c);
    readings.frame_c = object.optional_number("frame_c", surface_c);
    readings.casing_c = object.optional_number("casing_c", surface_c);
    readings.error_k = object.optional_number("error_k", error_k).value_or(usual_error_k);
    object.finish();
    return readings;
}

void answer_by_reading(std::string_view test, std::optional<double> measured_c, double error_k,
                       std::optional<double> computed_c, std::vector<assess::TestAnswer>& answers) {
    if (!measured_c || !computed_c) return;
    const auto index =
        static_cast<std::size_t>(assess::find_test(test) - assess::test_rows().data());
    const auto compared = assess::compare_reading(*measured_c, error_k, *computed_c);
    answers.push_back({index, static_cast<std::size_t>(compared)});
}

void add_readings(const Readings& readings, const assess::Assessment& now,
                  std::vector<assess::TestAnswer>& answers) {
    using opening::Part;
    const double error = readings.error_k;
    answer_by_reading("glass_reading", readings.glass_c, error,
                      assess::computed_part_c(now, Part::glass_centre), answers);
    answer_by_reading("frame_reading", readings.frame_c, error,
                      assess::computed_part_c(now, Part::frame), answers);
    answer_by_reading("casing_reading", readings.casing_c, error,
                      assess::computed_part_c(now, Part::casing), answers);
}

/// What would explain readings of frame and casing.
Json write(const Readings& readings, const opening::Case& today) {
    Json answer = Json::object();
    const auto explain = [&](const char* key, opening::Part part, std::optional<double> c) {
        if (!c) return;
        const assess::Measured measured{*c, *c - readings.error_k, *c + readings.error_k};
        answer[key] = reading_answer(assess::read_part(today, part, measured, nullptr, false));
    };
    explain("frame", opening::Part::frame, readings.frame_c);
    explain("casing", opening::Part::casing, readings.casing_c);
    return answer;
}

/// A test with its likelihoods, so that every number can be looked up.
Json write(const assess::TestRow& row) {
    Json answers = Json::array();
    for (const std::string_view key : row.answers)
        if (!key.empty()) answers.push_back(std::string(key));
    return object({{"test", std::string(row.key)},
                   {"question", std::string(row.question)},
                   {"answers", std::move(answers)},
                   {"minutes", row.minutes},
                   {"yes", share_answer({row.yes[0], row.yes[1], row.yes[2]})},
                   {"because", std::string(row.because)},
                   {"caution", std::string(row.caution)}});
}

Json write(const assess::FindOut& found) {
    Json tests = Json::array();
    for (const assess::TestRow& row : assess::test_rows())
        tests.push_back(write(row));
    Json answer = found_answer(found);
    answer["next"] = nullptr;
    answer["tests"] = std::move(tests);
    if (found.next) {
        answer["next"] = write(*found.next);
        answer["next"]["gain_nats"] = found.next_gain;
    }
    return answer;
}

Json write_advice(const Window& window, const assess::FindOut& found, std::size_t answers) {
    const opening::Case& today = *window.today;
    const assess::PlanQuestion question{
        today, window.now, {}, window.hour, answers > 0 ? &found.share : nullptr};
    const assess::Cheapest cheapest = assess::cheapest_plan(question, assess::plans(question));
    const opening::Remedy remedy = opening::make_remedy(window.remedy, today);
    assess::Assessment then;
    if (!window.remedy.empty())
        then = assess::assess(opening::apply(remedy, today), section::Accuracy::draft);
    const assess::Chosen chosen{remedy.name, assess::price_of(remedy, window.hour), &then};
    const assess::Advice text =
        assess::advice(window.now, window.remedy.empty() ? nullptr : &chosen, &cheapest, found,
                       answers, {false, "$"});
    return object({{"from", text.from},
                   {"left", text.left},
                   {"cheapest", text.cheapest},
                   {"still_cold", text.still_cold},
                   {"next_test", text.next_test}});
}

} // namespace

Answer ask_find_out(ObjectReader& question) {
    Window window = read_window(question);
    auto answers = house::read_answers(question.object_or_empty("answers"));
    const Readings readings = read_readings(question.object_or_empty("readings"));
    const bool thermometer = question.yes_no("thermometer", false);
    if (readings.any() && !window.today)
        question.reading().fail("/readings", "need a case to be compared with");
    if (auto fault = settle(question)) return *fault;

    if (window.today) {
        window.now = assess::assess(*window.today, section::Accuracy::draft);
        window.predicted = window.now.seat.share;
        add_readings(readings, window.now, answers);
    }
    const assess::FindOut found =
        assess::find_out(window.predicted, answers, thermometer || readings.any());
    Json answer = write(found);
    answer["prediction"] = share_answer(window.predicted);
    if (window.today) answer["readings"] = write(readings, *window.today);
    if (window.today) answer["advice"] = write_advice(window, found, answers.size());
    return answer;
}

} // namespace shimlight::door
