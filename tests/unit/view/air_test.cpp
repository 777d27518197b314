// SPDX-License-Identifier: MIT
#include "screens.hpp"

#include "assess/leak.hpp"
#include "opening/remedy.hpp"
#include "view/air.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

using namespace shimlight;
using namespace shimlight::view;
using namespace shimlight::screens;
using stage::Stage;

namespace {

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// A session and what a chart needs of the page.
struct Desk {
    Session session{house::demo_house()};
    Platform platform;
    Wishes wishes;
    Mirror mirror;
    Gesture gesture;
    Overlay overlay;
    Ui ui{platform, wishes, theme(false), mirror, nullptr, gesture, overlay, Units::si, "", {}};
    Desk() {
        assess::Budget once;
        once.accuracy = section::Accuracy::draft;
        session.assess(once, true);
    }
};

} // namespace

TEST_CASE("the air's numbers are the assessment's") {
    Stage stage(wide);
    stage.press("view.air");
    REQUIRE(stage.rest());
    const assess::LeakResult& leak = today_answer().leak;
    CHECK(says(value_of(stage, "air.stack.today"), format_pascal(std::fabs(leak.drive.stack_pa))));
    CHECK(says(value_of(stage, "air.wind.today"), format_pascal(leak.drive.wind_pa)));
    CHECK(says(value_of(stage, "air.total.today"), format_pascal(leak.drive.pressure_pa)));
    CHECK(value_of(stage, "air.sash.today") == format_flow(leak.sash_m3_s, Units::us) +
                                                   " comes in at " +
                                                   format_temperature(leak.sash_air_c, Units::us));
    CHECK(value_of(stage, "air.shim.today") == format_flow(leak.shim_m3_s, Units::us) +
                                                   " comes in at " +
                                                   format_temperature(leak.shim_air_c, Units::us));
    CHECK(says(value_of(stage, "air.heat.today"), format_watts(leak.heat_w, Units::us)));
    CHECK(says(value_of(stage, "air.heat.today"), format_percent(today_answer().air_share)));
}

TEST_CASE("parts of the leak and of its drive add up as they are printed") {
    house::House h = house::demo_house();
    for (const double wind_m_s : {2.0, 4.1, 6.3, 9.7}) {
        h.weather.wind_m_s = wind_m_s;
        Stage stage(wide, h);
        stage.press("view.air");
        REQUIRE(stage.rest());
        const auto number = [&](const char* id, const char* after = "") {
            const std::string words = value_of(stage, id);
            const std::size_t at = words.find(after);
            REQUIRE(at != std::string::npos);
            return std::strtod(words.c_str() + at + std::string(after).size(), nullptr);
        };
        const double sash = number("air.sash.today"), shim = number("air.shim.today");
        CHECK(number("air.left.today.0") == doctest::Approx(sash + shim).epsilon(1e-9));
        CHECK(number("air.left.today.0", "sash ") == sash);
        CHECK(number("air.left.today.0", "shim space ") == shim);
        const auto pa = [&](const char* id) {
            const bool out = value_of(stage, id).find("outwards") != std::string::npos;
            return (out ? -1 : 1) * number(id);
        };
        CHECK(pa("air.total.today") ==
              doctest::Approx(pa("air.stack.today") + pa("air.wind.today")).epsilon(1e-9));
    }
}

TEST_CASE("what is left of the leak is each measure's own leak") {
    Desk desk;
    const auto left = leaks_left(desk.session);
    REQUIRE(left.size() == 5);
    CHECK(left[0].name == "Today");
    CHECK(left[4].name == desk.session.remedy_name());
    for (std::size_t i = 1; i < left.size(); ++i)
        CHECK(left[i].sash_m3_s + left[i].shim_m3_s < left[0].sash_m3_s + left[0].shim_m3_s);
    CHECK(left[1].sash_m3_s == doctest::Approx(left[0].sash_m3_s)); // foam leaves the sash alone
    CHECK(left[3].shim_m3_s == doctest::Approx(left[0].shim_m3_s)); // weather strip the joint
    const auto remedy = assess::leak(screens::remedy());
    CHECK(left[4].sash_m3_s == doctest::Approx(remedy.sash_m3_s));
    CHECK(left[4].shim_m3_s == doctest::Approx(remedy.shim_m3_s));
}

TEST_CASE(
    "leaks grow with wind into the wall and cold glass far less; behind the house they fade") {
    Desk desk;
    const Chart into = wind_chart(desk.ui, desk.session, Shown::today);
    const auto grown = [](const Series& s) { return s.y.back() - s.y.front(); };
    CHECK(grown(into.series[1]) > 4 * grown(into.series[0]));
    CHECK(std::is_sorted(into.series[1].y.begin(), into.series[1].y.end()));
    const opening::Field& facade = *opening::find_field("room.facade");
    desk.session.move(facade, static_cast<double>(opening::Facade::lee), Shown::today, "");
    const Chart behind = wind_chart(desk.ui, desk.session, Shown::today);
    CHECK(grown(behind.series[1]) < 0);
    CHECK(behind.series[1].y.back() == doctest::Approx(0));
}

TEST_CASE("over the height air comes in below and goes out above") {
    Desk desk;
    desk.session.move(*opening::find_field("weather.wind_m_s"), 0, Shown::today, "");
    const Chart chart = height_chart(desk.ui, desk.session, Shown::today);
    for (const Series& s : chart.series)
        for (std::size_t i = 0; i < chart.x.size(); ++i) {
            if (chart.x[i] < -0.01) CHECK(s.y[i] > 0); // below the neutral level, no wind
            if (chart.x[i] > 0.01) CHECK(s.y[i] < 0);
        }
}

TEST_CASE("the curves are drawn within a frame's time") {
    Desk desk;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 20; ++i) {
        wind_chart(desk.ui, desk.session, Shown::today);
        height_chart(desk.ui, desk.session, Shown::today);
        leaks_left(desk.session);
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    MESSAGE("ms for all curves of one: ", took.count() / 20);
    CHECK(took.count() / 20 < 25); // five are meant; a shared machine may be slow
}

TEST_CASE("words of the air's screen lie apart; it scrolls to its last sentence") {
    for (const stage::Size size : sizes) {
        Stage stage(size);
        stage.press("view.air");
        CHECK(stage.rest());
        // On a phone lying on its side little is seen at once.
        const bool low = size.height_px < 500;
        const MirrorNode* house = stage.node("air.house.remedy");
        REQUIRE(house);
        CHECK((house->reachable || low));
        const bool small = size.height_px < 700;
        check_apart(stage, size, "air.", small ? 0 : 3);
        CHECK(stage.node("air.height_words.remedy"));
    }
}

TEST_CASE("above the neutral level the same window leaks outwards") {
    Stage stage(tablet);
    stage.press("view.air");
    CHECK(says(value_of(stage, "air.total.remedy"), "inwards"));
    stage.set_number("lever.room.height_above_neutral_m", 20); // feet
    CHECK(says(value_of(stage, "air.total.remedy"), "outwards"));
    CHECK(says(value_of(stage, "air.sash.remedy"), "goes out"));
    CHECK(says(value_of(stage, "air.house.remedy"), "above the neutral level"));
}
