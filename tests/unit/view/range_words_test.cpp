// SPDX-License-Identifier: MIT
// Ranges of validity with where the case lies; numbers beside their sum.
#include "view/adding_up.hpp"
#include "view/range_words.hpp"

#include "physics/comfort.hpp"
#include "physics/downdraft.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

using namespace shimlight;
using namespace shimlight::view;

namespace {

bool says(const std::string& text, std::string_view words) {
    return text.find(words) != std::string::npos;
}

/// Thin spaces and plain ones are alike.
std::string plain(std::string text) {
    for (std::size_t at = text.find("\u2009"); at != std::string::npos; at = text.find("\u2009"))
        text.replace(at, 3, " ");
    return text;
}

} // namespace

TEST_CASE("every range that the seat warns of is told as outside, in the reader's units") {
    physics::Draw draw(5);
    int told = 0;
    for (int i = 0; i < 200; ++i) {
        opening::Case c;
        c.opening.height_m = draw.between(0.5, 6);
        c.opening.sill_m = draw.between(-0.1, 1.5);
        c.room.seat_distance_m = draw.between(0.3, 3);
        c.room.air_c = draw.between(5, 35);
        assess::Assessment a;
        a.seat.ankle_air_c = draw.between(5, 30);
        a.seat.ankle_speed_m_s = draw.between(0, 1);
        a.seat.mean_radiant_c = draw.between(0, 45);
        a.seat.pmv = draw.between(-3, 3);
        physics::ThermalState state;
        state.air_c = c.room.air_c;
        state.radiant_c = a.seat.mean_radiant_c;
        physics::warn_thermal_state(state, a.seat.pmv, a.seat.warnings);
        a.seat.neck_air_c = a.seat.ankle_air_c;
        physics::warn_draught_rate(a.seat.ankle_air_c, a.seat.ankle_speed_m_s, 40, a.seat.warnings);
        physics::warn_ankle_draft({a.seat.ankle_air_c, a.seat.ankle_speed_m_s}, state,
                                  a.seat.warnings);
        const double way_m = std::max(c.opening.sill_m, 0.0) + c.room.seat_distance_m;
        warn_once(a.seat.warnings,
                  physics::floor_stream_warnings(c.opening.height_m, 25, way_m, c.opening.sill_m));
        for (const std::string_view warning : a.seat.warnings) {
            const std::string words = told_warning(warning, c, a, Units::us);
            CAPTURE(words);
            CHECK((says(words, "outside that range") || says(words, "above a sill")));
            CHECK_FALSE(says(words, "°C"));
            CHECK_FALSE(says(words, " m/s"));
            ++told;
        }
    }
    CHECK(told > 500);
}

TEST_CASE("the number told beside a range is the case's own") {
    const opening::Case c;
    assess::Assessment a;
    a.seat.ankle_air_c = 14.4;
    CHECK(plain(told_warning("Ankle draft was studied with ankle air of 16.5 to 22.5 °C.", c, a,
                             Units::us)) ==
          "Ankle draft was studied with ankle air of 62 to 72 °F. This case: 57.9 °F, outside that "
          "range.");
    CHECK(plain(told_warning("Ankle draft was studied with ankle air of 16.5 to 22.5 °C.", c, a,
                             Units::si)) ==
          "Ankle draft was studied with ankle air of 16.5 to 22.5 °C. This case: 14.4 °C, outside "
          "that range.");
    // An estimate has no range to lie outside of; what says so itself is not told twice.
    for (const char* other :
         {"Drafts from leaks are an engineering estimate.",
          "Crack formulas are tested from about 0.05 to 100 Pa; this pressure is outside."})
        CHECK(told_warning(other, c, a, Units::si) == other);
}

TEST_CASE("a number inside the range is never told as outside") {
    opening::Case c;
    c.room.air_c = 20;
    assess::Assessment a;
    a.glass.faces_c[1] = a.glass.faces_c[3] = 2; // 18 K; the frame alone made the warning
    const std::string words = told_warning("The floor stream below cold glass is known for glass "
                                           "up to about 20 K colder than the room.",
                                           c, a, Units::si);
    CHECK(says(words, "This case lies outside that range."));
    CHECK_FALSE(says(words, "18"));
}

TEST_CASE("a card says whether the case is inside its range") {
    assess::Assessment a;
    a.seat.ankle_speed_m_s = 0.3;
    CHECK(plain(card_case("ankles", a, Units::si)) == " This case: 0.30 m/s, inside that range.");
    a.seat.ankle_speed_m_s = 0.7;
    CHECK(plain(card_case("ankles", a, Units::us)) ==
          " This case: 138 ft/min, outside that range.");
    a.seat.neck_air_c = 19;
    a.seat.neck_speed_m_s = 0.1;
    CHECK(plain(card_case("neck", a, Units::si)) ==
          " This case: 19.0 °C, outside that range; 0.10 m/s, inside.");
    CHECK(card_case("heat", a, Units::si).empty());
}

TEST_CASE("parts are shown so that they add up to the sum that is shown") {
    // 89.4 + 38.4 + 43.4 = 171.2: rounded each for itself they make 170.
    const std::vector<double> told = adding_up({89.4, 38.4, 43.4}, 1);
    CHECK(std::accumulate(told.begin(), told.end(), 0.0) == 171);
    physics::Draw draw(17);
    for (int i = 0; i < 500; ++i) {
        std::vector<double> parts;
        for (int n = 0; n < 1 + i % 12; ++n)
            parts.push_back(draw.between(-50, 200));
        for (const double unit : {1.0, 0.1, 0.01}) {
            const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
            const std::vector<double> shown = adding_up(parts, unit);
            CHECK(std::accumulate(shown.begin(), shown.end(), 0.0) ==
                  doctest::Approx(std::round(sum / unit) * unit).epsilon(1e-9));
            for (std::size_t n = 0; n < parts.size(); ++n)
                CHECK(std::fabs(shown[n] - parts[n]) < unit);
        }
    }
    CHECK(adding_up({}, 1).empty());
}
