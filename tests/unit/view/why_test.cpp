// SPDX-License-Identifier: MIT
#include "house/lesson.hpp"
#include "stage/stage.hpp"
#include "view/layout.hpp"
#include "view/why.hpp"

#include <doctest/doctest.h>

#include <cctype>
#include <chrono>
#include <cmath>
#include <regex>

using namespace shimlight;
using view::Shown;
using view::Units;

namespace {

const view::MirrorNode& node(const stage::Stage& stage, const std::string& id) {
    const view::MirrorNode* found = stage.node(id);
    REQUIRE_MESSAGE(found, id);
    return *found;
}

struct Known {
    opening::Case c;
    assess::Assessment a;
};

/// The demo house's first opening, today and with a low-e insulating unit; computed once.
const std::array<Known, 2>& known() {
    static const std::array<Known, 2> cases = [] {
        const house::House h = house::demo_house();
        std::array<Known, 2> made;
        made[0].c = house::today_case(h, h.openings[0]);
        made[1].c = made[0].c;
        for (const auto& [key, value] : {std::pair{"glazing.panes", 2.0}, {"glazing.coating", 2.0}})
            opening::set_field(made[1].c, *opening::find_field(key), value);
        for (Known& one : made)
            one.a = assess::assess(one.c, section::Accuracy::draft);
        return made;
    }();
    return cases;
}

/// Numbers of a text, real minus signs understood.
std::vector<double> numbers(std::string text) {
    for (std::size_t at; (at = text.find("−")) != std::string::npos;)
        text.replace(at, 3, "-");
    for (const std::string apart : {",", "\u2009"})
        for (std::size_t at = text.find(apart); at != std::string::npos;
             at = text.find(apart, at + 1)) {
            const std::size_t next = at + apart.size();
            if (at > 0 && std::isdigit(text[at - 1]) && next < text.size() &&
                std::isdigit(text[next]))
                text.erase(at, apart.size());
        }
    std::vector<double> found;
    const std::regex number(R"(-?\d+(\.\d+)?)");
    for (std::sregex_iterator it(text.begin(), text.end(), number), end; it != end; ++it)
        found.push_back(std::stod(it->str()));
    return found;
}

double figure_value(const Known& one, const char* key) {
    return assess::find_figure(key)->read(one.c, one.a);
}

} // namespace

TEST_CASE("why: every figure has a card with what, method and range") {
    for (const assess::Figure& figure : assess::figures()) {
        const view::CardText& card = view::card_text(figure.key);
        CAPTURE(figure.key);
        CHECK_FALSE(card.what.empty());
        CHECK_FALSE(card.source.empty());
        CHECK_FALSE(card.range.empty());
    }
}

TEST_CASE("why: the formula with its values gives the figure") {
    for (const Known& one : known()) {
        const auto formula = [&](const char* key) {
            return numbers(view::why_formula(key, one.c, one.a, Units::si, {"$"}));
        };
        // Printed digits: a part in a hundred.
        const auto near = [](double value) { return doctest::Approx(value).epsilon(0.01); };
        auto n = formula("glass_inside");
        CHECK(n[0] - n[1] / n[2] ==
              doctest::Approx(figure_value(one, "glass_inside")).epsilon(0.02));
        n = formula("u_centre");
        CHECK(n[0] / n[1] == near(figure_value(one, "u_centre")));
        n = formula("u_window");
        CHECK(n[0] + n[1] / n[2] == near(figure_value(one, "u_window")));
        n = formula("year_cost");
        CHECK(n[0] / n[1] * n[2] == near(figure_value(one, "year_cost")));
        n = formula("ankles");
        const double v = n[n.size() - 3], pmv = n[n.size() - 1];
        const double z = -2.58 + 3.05 * v - 1.06 * pmv;
        CHECK(100 / (1 + std::exp(-z)) == near(figure_value(one, "ankles")));
        n = formula("wet_above");
        CHECK(n[0] / n[1] == near(figure_value(one, "wet_above")));
        n = formula("shim_flow");
        CHECK(n[0] + n[1] == doctest::Approx(n[2]).epsilon(0.02));
        n = formula("stack");
        CHECK((n[1] - n[2]) * n[3] * n[4] ==
              doctest::Approx(figure_value(one, "stack")).epsilon(0.02));
        n = formula("wind");
        CHECK(n[1] * n[2] * n[3] * n[4] * n[4] / 2 == near(figure_value(one, "wind")));
        n = formula("neck");
        const double t = n[n.size() - 3], u = std::max(n[n.size() - 2], 0.05);
        CHECK((34 - t) * std::pow(u - 0.05, 0.62) * (0.37 * u * 40 + 3.14) ==
              doctest::Approx(figure_value(one, "neck")).epsilon(0.05));
        n = formula("ppd");
        const double vote = n.back();
        CHECK(100 - 95 * std::exp(-0.03353 * std::pow(vote, 4) - 0.2179 * vote * vote) ==
              near(figure_value(one, "ppd")));
        n = formula("asymmetry_pct");
        CHECK(n[0] / (n[1] + std::exp(n[2] - n[3] * n[4])) ==
              near(figure_value(one, "asymmetry_pct")));
        n = formula("u_installed");
        CHECK(n[0] / n[1] / n[2] == near(figure_value(one, "u_installed")));
        n = formula("shgc");
        CHECK(n[0] + n[1] == near(figure_value(one, "shgc")));
        n = formula("air_share");
        CHECK(n[0] / n[1] == near(figure_value(one, "air_share")));
        n = formula("heat");
        CHECK(n[0] * n[1] * n[2] == near(figure_value(one, "heat")));
        n = formula("part.frame");
        CHECK(n[0] + n[1] * n[2] == doctest::Approx(figure_value(one, "part.frame")).epsilon(0.02));
    }
}

TEST_CASE("why: the quick figures of the case itself are the figures") {
    const Known& one = known()[0];
    int quick = 0;
    for (const assess::Figure& figure : assess::figures()) {
        const auto value = view::quick_figure(figure, one.c, one.c, one.a);
        if (!value) continue;
        ++quick;
        CAPTURE(figure.key);
        const double full = figure.read(one.c, one.a);
        CHECK(std::isnan(*value) == std::isnan(full)); // no storm panel here
        if (!std::isnan(full)) CHECK(*value == doctest::Approx(full).epsilon(0.001));
    }
    CHECK(quick >= 14);
}

TEST_CASE("why: a step outdoors does to the glass what the full answer says, within a frame") {
    const Known& one = known()[0];
    const assess::Figure& glass = *assess::find_figure("glass_inside");
    const opening::Field& outside = *opening::find_field("weather.outside_c");
    opening::Case warmer = one.c;
    opening::set_field(warmer, outside,
                       one.c.weather.outside_c + view::try_step(outside, Units::us));
    const auto started = std::chrono::steady_clock::now();
    const double quick = *view::quick_figure(glass, warmer, one.c, one.a);
    const double ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - started)
            .count();
    const double full = glass.read(warmer, assess::assess(warmer, section::Accuracy::draft));
    CHECK(quick == doctest::Approx(full).epsilon(1e-6));
    MESSAGE("a quick figure takes ", ms, " ms");
}

TEST_CASE("why: strip figures open their card by key, by finger and close again") {
    for (const auto& [w, h] : {std::pair{360.0f, 640.0f}, {768.0f, 1024.0f}, {1440.0f, 900.0f}}) {
        stage::Stage stage({w, h});
        REQUIRE(stage.rest());
        CAPTURE(w);
        for (const char* id : {"glass", "ankles", "rh", "u", "cost"}) {
            const std::string name = "strip." + std::string(id) + ".today";
            CHECK(node(stage, name).role == view::Role::figure);
        }
        stage.press("strip.glass.today");
        CHECK(stage.rest());
        const view::MirrorNode strip = node(stage, "strip.glass.today");
        CHECK(node(stage, "why.value").value == strip.value);
        CHECK(node(stage, "why.copy").value.find(strip.value) != std::string::npos);
        CHECK(node(stage, "why.copy").action == "copy");
        CHECK(node(stage, "why.effect0").value.find("°F") != std::string::npos);
        for (const char* id : {"why.close", "why.copy"}) {
            const view::MirrorRect& r = node(stage, id).rect;
            CHECK(r.h >= view::touch_px);
            CHECK(r.x >= 0);
            CHECK(r.x + r.w <= w);
            CHECK(r.y + r.h <= h);
        }
        const view::MirrorRect close = node(stage, "why.close").rect;
        stage.tap({close.x + close.w / 2, close.y + close.h / 2});
        CHECK(stage.node("why.value") == nullptr);
        // The same by finger; outside the card it closes.
        const view::MirrorRect figure = node(stage, "strip.ankles.remedy").rect;
        stage.tap({figure.x + figure.w / 2, figure.y + figure.h / 2});
        REQUIRE(stage.node("why.value"));
        CHECK(node(stage, "why.title").name.find("remedy") != std::string::npos);
        stage.press("why.other");
        CHECK(node(stage, "why.title").name.find("today") != std::string::npos);
        stage.tap({2, 2});
        CHECK(stage.node("why.value") == nullptr);
        stage.press("strip.u.today");
        REQUIRE(stage.node("why.value"));
        stage.press("menu.escape");
        CHECK(stage.node("why.value") == nullptr);
    }
}

TEST_CASE("why: nothing beneath the card listens, and it follows a changed lever") {
    stage::Stage stage({1440, 900});
    REQUIRE(stage.rest());
    stage.press("strip.glass.today");
    const std::string before = node(stage, "why.value").value;
    const view::MirrorRect tab = node(stage, "view.bill").rect;
    stage.tap({tab.x + tab.w / 2, tab.y + tab.h / 2}); // closes the card, opens no screen
    CHECK(stage.node("slice.today"));
    stage.press("strip.glass.today");
    stage.set_number("lever.weather.outside_c", 5);
    CHECK(node(stage, "why.value").value != before);
    CHECK(node(stage, "why.value").value == node(stage, "strip.glass.today").value);
}

TEST_CASE("why: a figure of sections comes to rest with its levers ranked") {
    stage::Stage stage({360, 640});
    REQUIRE(stage.rest()); // before that it is not told
    stage.press("strip.u.remedy");
    CHECK(stage.rest());
    CHECK(stage.node("why.effect0"));
    CHECK(stage.node("why.effect1"));
}

TEST_CASE("why: callouts of the Slice open cards") {
    stage::Stage stage({1440, 900});
    REQUIRE(stage.rest());
    int seen = 0;
    std::vector<std::string> ids;
    for (const view::MirrorNode& n : stage.mirror().nodes())
        if (n.role == view::Role::figure && n.id.rfind("slice.", 0) == 0) ids.push_back(n.id);
    CHECK(ids.size() >= 4);
    ids.resize(3); // one press is like another
    for (const std::string& id : ids) {
        stage.press(id);
        if (stage.node("why.value")) ++seen;
        stage.press("why.close");
    }
    CHECK(seen == static_cast<int>(ids.size()));
}

TEST_CASE("why: a figure that hangs on estimates tells its range") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage({1440, 900});
    stage.rest();
    stage.press("strip.ankles.today");
    const view::MirrorNode* range = stage.node("why.range");
    REQUIRE(range != nullptr);
    CHECK(range->value.find("between their ends") != std::string::npos);
}

namespace {

/// Numbers of the line of a formula that begins so.
std::vector<double> numbers_after(const std::string& formula, const std::string& start) {
    const std::size_t at = formula.find(start);
    REQUIRE_MESSAGE(at != std::string::npos, formula);
    return numbers(formula.substr(at + start.size(), formula.find('\n', at) - at - start.size()));
}

/// What a pressed row of the Bill tells of how it came about.
std::string formula_of(stage::Stage& stage, const std::string& id) {
    // Not to rest: the levers that the card tries take time and tell nothing of this.
    stage.frame({{id, view::MirrorEvent::Kind::press, 0, ""}});
    stage.frame();
    stage.frame();
    const std::string formula = node(stage, "why.formula").value;
    stage.frame({{"why.close", view::MirrorEvent::Kind::press, 0, ""}});
    stage.frame();
    return formula;
}

} // namespace

TEST_CASE("why: a sum of months on the Bill is the sum of its printed months") {
    house::House h = house::demo_house();
    h.running.climate = 24; // any place
    const auto& record = h.openings[0];
    const assess::Assessment answers[] = {assess::assess(house::today_case(h, record)),
                                          assess::assess(house::remedy_case(h, record))};
    const double unit_kwh = view::trade_of(h).heat_kwh;
    CHECK(unit_kwh == doctest::Approx(293.08).epsilon(1e-4)); // a million Btu
    stage::Stage stage({1440, 900}, h);
    stage.press("view.bill");
    using assess::MonthHeat;
    for (const auto& [id, of] : {std::pair{"bill.conduction", &MonthHeat::conduction_kwh},
                                 {"bill.leakage", &MonthHeat::leakage_kwh},
                                 {"bill.gain", &MonthHeat::gain_kwh},
                                 {"bill.useful", &MonthHeat::useful_gain_kwh},
                                 {"bill.heat", &MonthHeat::heating_kwh},
                                 {"bill.cool", &MonthHeat::cooling_kwh}}) {
        CAPTURE(id);
        const std::string formula = formula_of(stage, id);
        const auto row = numbers(node(stage, id).value); // today → remedy
        for (const int whose : {0, 1}) {
            CAPTURE(whose);
            const auto n = numbers_after(formula, whose ? "Remedy: " : "Today: ");
            REQUIRE(n.size() == 13);
            constexpr double digit = 0.01; // a month gives way by less, so that all add up
            double sum = 0;
            for (std::size_t month = 0; month < 12; ++month) {
                CHECK(std::fabs(n[month] - answers[whose].year->months[month].*of / unit_kwh) <
                      digit);
                sum += n[month];
            }
            CHECK(std::fabs(sum - n[12]) < 1e-6);
            CHECK(std::fabs(n[12] - row[static_cast<std::size_t>(whose)]) < 1e-9);
        }
    }
}

TEST_CASE("why: by degree days the Bill's heat and its part by air have formulas too") {
    stage::Stage stage({1440, 900}, [] {
        house::House h = house::demo_house();
        h.running.climate = 0;
        return h;
    }());
    stage.press("view.bill");
    for (const int whose : {0, 1}) {
        const std::string start = whose ? "Remedy: " : "Today: ";
        const auto heat = numbers_after(formula_of(stage, "bill.heat"), start);
        CHECK(heat[0] * heat[1] * heat[2] / heat[3] / heat[4] ==
              doctest::Approx(numbers(node(stage, "bill.heat").value)[whose]).epsilon(0.01));
        const auto air = numbers_after(formula_of(stage, "bill.leakage"), start);
        CHECK(air[0] * air[1] ==
              doctest::Approx(numbers(node(stage, "bill.leakage").value)[whose]).epsilon(0.01));
    }
}
