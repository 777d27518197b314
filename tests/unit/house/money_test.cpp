// SPDX-License-Identifier: MIT
#include "house/fuels.hpp"
#include "house/money.hpp"
#include "house/random.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::house;

namespace {

MoneyInput some_input(physics::Draw& draw) {
    MoneyInput in;
    in.saved = {draw.between(-200, 900), draw.between(0, 600), draw.between(-300, 300),
                draw.between(-100, 200)};
    in.heat = {draw.between(0.02, 0.3), draw.between(0.6, 3), draw.between(0, 0.5)};
    in.cools = draw.whole(0, 1) == 1;
    in.work = {draw.between(0.5, 20), draw.between(20, 150), draw.between(10, 2000)};
    in.life_years = draw.between(5, 40);
    in.discount = draw.between(0, 0.1);
    in.escalation = draw.between(-0.02, 0.08);
    in.seed = static_cast<std::uint64_t>(draw.whole(0, 1000000));
    return in;
}

/// Year by year, as one would on paper.
double value_on_paper(const MoneyInput& in, double saving, int years) {
    double worth = 0, price = saving;
    for (int year = 1; year <= years; ++year) {
        price *= 1 + in.escalation;
        worth += price / std::pow(1 + in.discount, year);
    }
    return worth - in.work.price();
}

} // namespace

TEST_CASE("the generator's published first numbers, and its triangle") {
    // splitmix64 from seed 1234567, as its reference program prints them (from memory).
    SeededDraws draws(1234567);
    const std::uint64_t first[] = {6457827717110365317u, 3203168211198807973u,
                                   9817491932198370423u};
    for (const std::uint64_t bits : first)
        CHECK(draws.unit() == static_cast<double>(bits >> 11) * 0x1p-53);
    double mean = 0, square = 0, most = 0;
    for (int n = 0; n < 100000; ++n) {
        const double t = draws.triangle();
        mean += t / 100000;
        square += t * t / 100000;
        most = std::max(most, std::fabs(t));
    }
    CHECK(std::fabs(mean) < 0.005);
    CHECK(square == doctest::Approx(1.0 / 6).epsilon(0.02)); // of a triangle from -1 to 1
    CHECK(most < 1);
}

TEST_CASE("money worked on paper: 100 a year at 4 %, prices up 2 %") {
    MoneyInput in;
    in.saved.conduction_kwh = 1700;
    in.heat = {0.05, 0.85, 0.18};
    in.work = {6, 75, 550}; // 1000
    in.life_years = 25;
    const Money m = money(in);
    CHECK(m.price == doctest::Approx(1000));
    CHECK(m.saving_per_year.value == doctest::Approx(100));
    CHECK(m.kg_co2_per_year.value == doctest::Approx(360));
    CHECK(m.payback_years.value == doctest::Approx(10));
    CHECK(m.net_value.value == doctest::Approx(value_on_paper(in, 100, 25)));
    // Where the paper's sum turns positive.
    const double years = m.discounted_payback_years.value;
    CHECK(value_on_paper(in, 100, static_cast<int>(std::floor(years))) < 0);
    CHECK(value_on_paper(in, 100, static_cast<int>(std::ceil(years))) > 0);
    CHECK_FALSE(m.outlasts);
    in.discount = in.escalation; // both cancel
    CHECK(money(in).net_value.value == doctest::Approx(25 * 100 - 1000));
    CHECK(money(in).discounted_payback_years.value == doctest::Approx(10));
}

TEST_CASE("ranges contain what the inputs give, and grow with what is uncertain") {
    physics::Draw draw(41);
    for (int i = 0; i < 300; ++i) {
        MoneyInput in = some_input(draw);
        const Money m = money(in);
        for (const Ranged& r : {m.heat_kwh_per_year, m.saving_per_year, m.kg_co2_per_year,
                                m.payback_years, m.net_value}) {
            CHECK(r.low <= r.value);
            CHECK(r.value <= r.high);
        }
        CHECK(m.discounted_payback_years.low <= m.discounted_payback_years.value);
        CHECK(m.discounted_payback_years.value <= m.discounted_payback_years.high);
        in.spread = {0, 0, 0, 1, 0, 0, 0, 0};
        const Money sure = money(in);
        CHECK(sure.net_value.low == doctest::Approx(m.net_value.value));
        CHECK(sure.net_value.high == doctest::Approx(m.net_value.value));
        CHECK((sure.pays_share == 0 || sure.pays_share == 1));
    }
}

TEST_CASE("one seed, one answer; another seed, nearly the same") {
    physics::Draw draw(42);
    for (int i = 0; i < 20; ++i) {
        MoneyInput in = some_input(draw);
        const Money a = money(in), b = money(in);
        CHECK(a.net_value.low == b.net_value.low);
        CHECK(a.payback_years.high == b.payback_years.high);
        CHECK(a.pays_share == b.pays_share);
        in.seed += 1;
        const double width = a.net_value.high - a.net_value.low;
        CHECK(std::fabs(money(in).net_value.low - a.net_value.low) < 0.15 * width);
    }
}

TEST_CASE("the sentence says never, longer than it lasts, and the range") {
    MoneyInput in;
    in.work = {10, 80, 1200};
    in.saved.conduction_kwh = -10;
    CHECK(payback_sentence(money(in), 25).find("saves no money") != std::string::npos);
    in.saved.conduction_kwh = 100;
    const Money slow = money(in);
    CHECK(slow.outlasts);
    CHECK(payback_sentence(slow, 25).find("more than the 25 years it will last") !=
          std::string::npos);
    in.saved.conduction_kwh = 0;
    in.saved.leakage_kwh = 2000;
    in.work = {1, 60, 30};
    const Money quick = money(in);
    CHECK_FALSE(quick.outlasts);
    CHECK(payback_sentence(quick, 25).find("most likely") != std::string::npos);
    CHECK(quick.pays_share == 1);
}

TEST_CASE("whoever reads of payback reads of the interest it is reckoned with") {
    MoneyInput in;
    in.saved.leakage_kwh = 500;
    in.work = {1, 60, 30};
    for (const double discount : {0.04, 0.025, 0.1}) {
        in.discount = discount;
        for (const double kwh : {20.0, 60.0, 500.0, 3000.0}) {
            in.saved.leakage_kwh = kwh;
            const std::string words = payback_sentence(money(in), 12);
            CAPTURE(words);
            CHECK(words.find(discount == 0.04    ? "With 4\u2009% interest"
                             : discount == 0.025 ? "With 2.5\u2009% interest"
                                                 : "With 10\u2009% interest") == 0);
            CHECK(words.find("fuel 2\u2009% dearer a year") != std::string::npos);
            CHECK(words.find("draws") == std::string::npos);
        }
    }
}

TEST_CASE("fuels: heat contents and carbon as published") {
    const auto fuel = [](std::string_view name) {
        for (const Fuel& f : fuels())
            if (f.name == name) return f;
        return Fuel{};
    };
    // EIA: Btu a unit over 3412; 40 CFR 98 table C-1: natural gas 53.06, propane 62.87 (from
    // memory), distillate oil 73.96 (from memory) kg a million Btu.
    CHECK(fuel("natural gas").kwh_per_unit == doctest::Approx(29.31).epsilon(0.0005));
    CHECK(fuel("heating oil").kwh_per_unit == doctest::Approx(40.65).epsilon(0.0005));
    CHECK(fuel("propane").kwh_per_unit == doctest::Approx(26.77).epsilon(0.0005));
    const auto kg_per_million_btu = [](const Fuel& f) {
        return f.kg_co2_per_unit / (f.kwh_per_unit * 3412) * 1e6;
    };
    CHECK(kg_per_million_btu(fuel("natural gas")) == doctest::Approx(53.06).epsilon(0.0005));
    CHECK(kg_per_million_btu(fuel("propane")) == doctest::Approx(62.87).epsilon(0.01));
    CHECK(kg_per_million_btu(fuel("heating oil")) == doctest::Approx(73.96).epsilon(0.01));
    CHECK(kg_per_million_btu(fuel("wood")) == doctest::Approx(93.8).epsilon(0.0005));
    for (const Fuel& f : fuels()) {
        CHECK(f.efficiency > 0.5);
        CHECK_FALSE(f.source.empty());
    }
}
