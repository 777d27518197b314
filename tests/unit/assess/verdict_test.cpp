// SPDX-License-Identifier: MIT
// A table of windows fixes what the verdict says of them.
#include "assess/assessment.hpp"
#include "opening/remedy.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using section::Accuracy;

namespace {

struct Setting {
    const char* key;
    double value;
};

Case with(std::initializer_list<Setting> settings) {
    Case c;
    for (const Setting& setting : settings)
        opening::set_field(c, *opening::find_field(setting.key), setting.value);
    return c;
}

std::string say(const Case& today, std::string_view remedy_key, bool fahrenheit = true) {
    const opening::Remedy remedy = opening::make_remedy(remedy_key, today);
    const Case then = opening::apply(remedy, today);
    return verdict(today, assess::assess(today, Accuracy::draft), remedy.name, then,
                   assess::assess(then, Accuracy::draft), {fahrenheit});
}

bool says(const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
}

/// A tight, tall single-glazed window on a still cold day.
Case tight_single() {
    return with({{"sash.fit", 0}, {"shim.fill", 3}, {"weather.wind_m_s", 0}, {"height_m", 1.8}});
}

/// Good glass in a joint that was never sealed.
Case new_but_open() {
    return with({{"glazing.panes", 2},
                 {"glazing.coating", 2},
                 {"glazing.gas", 1},
                 {"frame", 1},
                 {"sash.fit", 0},
                 {"weather.wind_m_s", 9}});
}

} // namespace

TEST_CASE("a tight single-glazed window drafts by its cold glass") {
    const std::string text = say(tight_single(), "storm_low_e");
    CAPTURE(text);
    CHECK(says(text, "of the draft here is cold glass"));
    CHECK(says(text, "Storm panel, low-e:"));
    CHECK(says(text, "the glass goes from"));
    CHECK_FALSE(says(text, "alone"));
}

TEST_CASE("good glass in an open joint drafts by the joint, and foam alone mends it") {
    const std::string text = say(new_but_open(), "full_vinyl");
    CAPTURE(text);
    CHECK(says(text, "of the draft here is the shim space behind the casing"));
    CHECK(says(text, "foam in the shim space alone:"));
}

TEST_CASE("a slipped sash is mended by pushing it home, which equals a new unit's relief") {
    const Case today = with({{"sash.slipped_m", 0.006}, {"shim.fill", 3}, {"weather.wind_m_s", 5}});
    const std::string text = say(today, "storm_clear");
    CAPTURE(text);
    CHECK(says(text, "of the draft here is the sash"));
    CHECK(says(text, "pushing home and locking alone:"));
    CHECK(says(say(today, "lock_home"), "instead of"));
}

TEST_CASE("where air goes out, sealing is not praised") {
    const Case today = with({{"room.height_above_neutral_m", 3}, {"weather.wind_m_s", 0}});
    const std::string text = say(today, "foam_joint");
    CAPTURE(text);
    CHECK(says(text, "Air leaks outward here"));
    CHECK(says(text, "the draft stays"));
}

TEST_CASE("room air that goes out wets a storm panel, which has its words") {
    const Case today = with({{"room.height_above_neutral_m", 6},
                             {"weather.wind_m_s", 0},
                             {"weather.outside_c", -15},
                             {"room.rh", 0.35}});
    const std::string text = say(today, "storm_low_e");
    CAPTURE(text);
    CHECK(says(text, "on the storm panel"));
    CHECK_FALSE(says(text, "{"));
}

TEST_CASE("a mild day and a good window: hardly any draft") {
    const Case today = with({{"weather.outside_c", 12},
                             {"weather.wind_m_s", 0},
                             {"glazing.panes", 3},
                             {"sash.fit", 0},
                             {"shim.fill", 3},
                             {"room.air_c", 22}});
    const std::string text = say(today, "caulk_casing");
    CAPTURE(text);
    CHECK(says(text, "Hardly any draft reaches this seat."));
    CHECK(says(text, "the draft stays"));
}

TEST_CASE("a remedy that makes it worse is told so") {
    const Case today = with({{"sash.fit", 0}, {"shim.fill", 3}});
    const Case worse = with({{"sash.fit", 2}, {"shim.fill", 0}});
    const std::string text = verdict(today, assess::assess(today, Accuracy::draft), "Opposite",
                                     worse, assess::assess(worse, Accuracy::draft), {});
    CAPTURE(text);
    CHECK(says(text, "Opposite: a worse draft"));
}

TEST_CASE("drier air bothers more, but is no worse draft") {
    const Case today = with({{"room.rh", 0.6}, {"sash.fit", 0}, {"shim.fill", 3}});
    const Case dry = with({{"room.rh", 0.2}, {"sash.fit", 0}, {"shim.fill", 3}});
    const std::string text = verdict(today, assess::assess(today, Accuracy::draft), "Drier air",
                                     dry, assess::assess(dry, Accuracy::draft), {});
    CAPTURE(text);
    CHECK(says(text, ", not "));
    CHECK_FALSE(says(text, "worse"));
}

TEST_CASE("water and frost are told: where they stay, and where glass dries") {
    const Case humid = with({{"room.rh", 0.45}, {"sash.fit", 0}, {"weather.outside_c", -3}});
    CHECK(says(say(humid, "foam_joint"), "with water on it"));
    const Case frosty = with({{"room.rh", 0.45}, {"sash.fit", 0}, {"weather.outside_c", -15}});
    CHECK(says(say(frosty, "foam_joint"), "with frost on it"));
    const Case moderate = with({{"room.rh", 0.30}, {"sash.fit", 0}, {"shim.fill", 3}});
    CHECK(says(say(moderate, "full_triple"), "and dries"));
}

TEST_CASE("temperatures are in the reader's unit") {
    CHECK(says(say(tight_single(), "storm_low_e", true), "°F"));
    CHECK(says(say(tight_single(), "storm_low_e", false), "°C"));
}

TEST_CASE("without a remedy one sentence; a long name of a remedy does not burst the second") {
    const Case today = tight_single();
    const Assessment result = assess::assess(today, Accuracy::draft);
    const std::string alone = verdict(today, result, "", today, result, {});
    CHECK(std::count(alone.begin(), alone.end(), '.') == 1);
    const std::string long_name(60, 'x');
    CHECK(says(verdict(today, result, long_name, today, result, {}), "This remedy:"));
}

TEST_CASE("never more than two sentences, short enough for a phone") {
    constexpr std::size_t longest_bytes = 230; // 220 characters and a few of two or three bytes
    for (const Case& today :
         {Case{}, tight_single(), new_but_open(), with({{"sash.slipped_m", 0.006}})}) {
        for (const opening::ReadyRemedy& ready : opening::ready_remedies()) {
            const std::string text = say(today, ready.key);
            CAPTURE(text);
            CHECK(std::count(text.begin(), text.end(), '.') <= 2);
            CHECK(text.size() <= longest_bytes);
        }
    }
}
