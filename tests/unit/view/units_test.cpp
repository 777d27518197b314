// SPDX-License-Identifier: MIT
#include "view/units.hpp"

#include "assess/figures.hpp"
#include "house/fuels.hpp"
#include "view/figure_text.hpp"
#include "view/trade.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace shimlight::view;

namespace {

constexpr double exact = 1e-12;   // conversions are exact factors
constexpr double as_shown = 0.51; // half a unit of the last digit shown, and rounding of the half

/// Shown with thin spaces and a real minus sign.
std::string ascii(std::string text) {
    auto replace = [&text](const std::string& from, const std::string& to) {
        for (auto at = text.find(from); at != std::string::npos; at = text.find(from))
            text.replace(at, from.size(), to);
    };
    replace("\xE2\x80\x89", " ");
    replace("\xE2\x88\x92", "-");
    return text;
}

} // namespace

TEST_CASE("temperatures are shown in the reader's unit with a real minus sign") {
    CHECK(ascii(format(Quantity::temperature_c, -10, Units::us)) == "14 °F");
    CHECK(ascii(format(Quantity::temperature_c, -10, Units::si)) == "-10 °C");
    CHECK(format(Quantity::temperature_c, -10, Units::si).find('-') == std::string::npos);
    CHECK(ascii(format(Quantity::temperature_c, -0.2, Units::si)) == "0 °C");
}

TEST_CASE("air, heat and pressure are shown in the trade's units") {
    CHECK(ascii(format_flow(0.00047194745, Units::us)) == "1.0 cfm"); // 1 ft³/min, exact
    CHECK(ascii(format_flow(-0.01, Units::si)) == "-36.0 m³/h");
    CHECK(ascii(format_watts(1000, Units::us)) == "3,412 Btu/h");
    CHECK(ascii(format_watts(1000, Units::si)) == "1 000 W");
    CHECK(ascii(format_kelvin(2, Units::us)) == "3.6 °F"); // a difference: without the 32
    CHECK(ascii(format_kelvin(12, Units::si)) == "12 K");
    CHECK(ascii(format_pascal(-1.26)) == "-1.3 Pa");
    CHECK(ascii(format_speed(0.254, Units::us)) == "50 ft/min");
}

TEST_CASE("money has two decimals or none, carbon the reader's unit") {
    CHECK(format_money(1.4, {"$"}) == "$1.40");
    CHECK(format_money(9, {"$"}) == "$9");
    CHECK(format_money(8.98, {"$"}) == "$9");
    CHECK(format_money(171.4, {"€"}) == "€171");
    CHECK(ascii(format_money(-2.26, {"$"})) == "-$2.30");
    for (const double amount : {0.04, 1.4, 5.96, 9.97, 10.4, 171.49})
        CHECK(format_money(shown_money(amount), {"$"}) == format_money(amount, {"$"}));
    CHECK(ascii(format_mass(100, Units::us)) == "220 lb"); // 0.45359237 kg, exact
    CHECK(ascii(format_mass(100, Units::si)) == "100 kg");
}

TEST_CASE("thousands are set apart as the reader's units have it, and read back so") {
    const Trade us{"$"}, si{"€", Units::si};
    CHECK(format_money(1391, us) == "$1,391");
    CHECK(format_money(999.4, us) == "$999");
    CHECK(format_money(1234567, us) == "$1,234,567");
    CHECK(ascii(format_money(-1391, si)) == "-€1 391");
    CHECK(grouped("1391.25", Units::us) == "1,391.25");
    CHECK(all_grouped("0.12345 of 2340 Pa, 999, 12345", Units::us) ==
          "0.12345 of 2,340 Pa, 999, 12,345");
    CHECK(format_bare(Quantity::degree_days_k, 3900, Units::us) == "7020"); // to be typed
    CHECK(ascii(format(Quantity::degree_days_k, 3900, Units::us)) == "7,020 °F·day");
    CHECK(*parse(Quantity::number, "1,391", Units::us) == 1391);
    CHECK(*parse(Quantity::number, "1,25", Units::us) == 1.25);
    CHECK(*parse(Quantity::number, "1,391", Units::si) == doctest::Approx(1.391));
    CHECK(*parse(Quantity::number, format(Quantity::count, 1391, Units::si), Units::si) == 1391);
}

TEST_CASE("fuel and heat are told in the trade's units, in SI by the kWh") {
    shimlight::house::House house;
    for (const shimlight::house::Fuel& fuel : shimlight::house::fuels()) {
        house.fuel = static_cast<int>(&fuel - shimlight::house::fuels().data());
        house.units = Units::us;
        const Trade us = trade_of(house);
        CHECK(us.fuel_unit == fuel.unit);
        CHECK(us.fuel_kwh == fuel.kwh_per_unit);
        CHECK(us.heat_unit == (fuel.unit == "kWh" ? "kWh" : "million Btu"));
        house.units = Units::si;
        CHECK(trade_of(house).fuel_unit == "kWh");
        CHECK(trade_of(house).heat_unit == "kWh");
    }
    house.units = Units::us;
    house.fuel = 0;
    const Trade gas = trade_of(house);
    CHECK(ascii(format_price(0.06, gas)) == "$1.76 per therm"); // 29.31 kWh each
    CHECK(price_number(0.06, gas) == "1.76");
    // 3412 Btu a kWh, and 0.1 million Btu a therm.
    CHECK(ascii(format_energy(1182, gas)) == "4.03 million Btu");
    CHECK(gas.fuel_kwh / gas.heat_kwh == doctest::Approx(0.1));
    house.fuel = 1;
    CHECK(ascii(format_price(0.1, trade_of(house))) == "$2.68 per gallon");
    house.fuel = 3;
    CHECK(ascii(format_price(0.16, trade_of(house))) == "$0.160 per kWh");
    CHECK(ascii(format_energy(1182, trade_of(house))) == "1,182 kWh");
    house.units = Units::si;
    CHECK(ascii(format_price(0.06, trade_of(house))) == "$0.060 per kWh");
}

TEST_CASE("lengths are shown as a tape shows them") {
    CHECK(ascii(format(Quantity::thin_m, 0.0127, Units::us)) == "1/2 in");
    CHECK(ascii(format(Quantity::thin_m, 0.0254 * 0.625, Units::us)) == "5/8 in");
    CHECK(ascii(format(Quantity::long_m, 0.0254 * 35.5, Units::us)) == "35 1/2 in");
    CHECK(ascii(format(Quantity::thin_m, 0.0127, Units::si)) == "12.7 mm");
    CHECK(ascii(format(Quantity::long_m, 1.5, Units::si)) == "150 cm");
    CHECK(ascii(format(Quantity::long_m, 0.0254 * 35.999, Units::us)) == "36 in");
}

TEST_CASE("typed values are read in either unit") {
    CHECK(*parse(Quantity::temperature_c, "10", Units::us) ==
          doctest::Approx(-12.2222).epsilon(1e-5));
    CHECK(*parse(Quantity::temperature_c, "-5 °C", Units::us) ==
          doctest::Approx(-5).epsilon(exact));
    CHECK(*parse(Quantity::temperature_c,
                 "\xE2\x88\x92"
                 "5",
                 Units::si) == doctest::Approx(-5));
    CHECK(*parse(Quantity::thin_m, "1 1/2", Units::us) == doctest::Approx(0.0381).epsilon(exact));
    CHECK(*parse(Quantity::thin_m, "3/8 in", Units::si) ==
          doctest::Approx(0.009525).epsilon(exact));
    CHECK(*parse(Quantity::long_m, "900 mm", Units::us) == doctest::Approx(0.9).epsilon(exact));
    CHECK(*parse(Quantity::fraction, "38 %", Units::us) == doctest::Approx(0.38).epsilon(exact));
    CHECK(*parse(Quantity::emissivity, "0,05", Units::si) == doctest::Approx(0.05).epsilon(exact));
}

TEST_CASE("what cannot be read is refused") {
    for (const char* typed : {"", "  ", "warm", "1/0", "nan", "inf", "-"})
        CHECK_FALSE(parse(Quantity::temperature_c, typed, Units::us).has_value());
}

TEST_CASE("what is shown can be typed back") {
    std::mt19937 random(7);
    for (const auto& field : shimlight::opening::fields()) {
        if (field.quantity == Quantity::choice || field.quantity == Quantity::yes_no) continue;
        std::uniform_real_distribution<double> between(field.min, field.max);
        for (const Units units : {Units::us, Units::si})
            for (int i = 0; i < 20; ++i) {
                const double value = between(random);
                const auto back =
                    parse(field.quantity, format(field.quantity, value, units), units);
                REQUIRE(back.has_value());
                const double unit = 1 / (to_display(field.quantity, 1, units) -
                                         to_display(field.quantity, 0, units));
                INFO(field.key << " " << value);
                CHECK(std::abs(*back - value) <= as_shown * std::abs(unit));
            }
    }
}

TEST_CASE("a step is a round number in the reader's unit") {
    const auto* outdoors = shimlight::opening::find_field("weather.outside_c");
    REQUIRE(outdoors != nullptr);
    CHECK(step_si(*outdoors, Units::us) == doctest::Approx(1 / 1.8).epsilon(exact));
    const auto* shim = shimlight::opening::find_field("shim.width_m");
    REQUIRE(shim != nullptr);
    CHECK(step_si(*shim, Units::us) == doctest::Approx(0.0254 / 16).epsilon(exact));
}

TEST_CASE("units: a figure of air is told in the unit of the Air screen") {
    for (const char* key : {"shim_flow", "sash_flow"})
        for (const Units units : {Units::us, Units::si}) {
            const shimlight::assess::Figure& figure = *shimlight::assess::find_figure(key);
            CHECK(figure_text(figure, 0.001, units, {}).find(format_flow(0.001, units)) !=
                  std::string::npos);
        }
}
