// SPDX-License-Identifier: MIT
// The screen Sheet by its mirror: its numbers are the model's, facts are asked and taken back, the
// table it saves is the house's.
#include "house/cautions.hpp"
#include "house/sheet.hpp"
#include "screens.hpp"
#include "view/trade.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

using namespace shimlight;
using house::Entry;
using view::Quantity;
using view::Units;

namespace {

constexpr double inch = 0.0254;

/// The demo house's bedroom with an insert, measured and crooked.
house::House measured(const char* key = "insert_foamed") {
    house::House h = house::demo_house();
    h.selected = 0;
    house::OpeningRecord& record = h.openings[0];
    record.remedies = {opening::make_remedy(key, house::today_case(h, record))};
    record.chosen = 0;
    const double widths_in[] = {30.5, 30.25, 30.5}, heights_in[] = {58, 58.25, 58};
    for (int i = 0; i < 3; ++i) {
        record.site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i),
                        widths_in[i] * inch);
        record.site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                        heights_in[i] * inch);
    }
    record.site.set(Entry::diagonal_rising_m, 65.75 * inch);
    record.site.set(Entry::diagonal_falling_m, 65.375 * inch);
    return h;
}

std::string size_of(double w, double h, Units units) {
    return view::format(Quantity::long_m, w, units) + " × " +
           view::format(Quantity::long_m, h, units);
}

} // namespace

TEST_CASE("sheet: order, glass and money are the model's, in both units") {
    for (const Units units : {Units::us, Units::si}) {
        house::House h = measured();
        h.units = units;
        stage::Stage stage(screens::wide, h);
        stage.press("view.sheet");
        stage.press("sheet.deducts.sheet");
        h.openings[0].site.set(Entry::maker_deducts, 0);
        const house::Sheet s = house::sheet(h, h.openings[0]);
        const house::Order& o = s.order;
        REQUIRE(o.square);
        CHECK(o.square->counts);
        const auto value = [&](const char* id) { return screens::value_of(stage, id); };
        CHECK(value("sheet.estimating") ==
              size_of(o.wide.estimating_m, o.high.estimating_m, units));
        CHECK(value("sheet.opening") == size_of(o.wide.opening_m, o.high.opening_m, units));
        CHECK(value("sheet.unit") == size_of(o.wide.unit_m, o.high.unit_m, units));
        CHECK(value("sheet.fits") ==
              size_of(o.square->fits_width_m, o.square->fits_height_m, units));
        CHECK(value("sheet.clear") ==
              size_of(s.today.clear_width_m, s.today.clear_height_m, units));
        CHECK(value("sheet.clear_remedy") ==
              size_of(s.remedy.clear_width_m, s.remedy.clear_height_m, units));
        CHECK(value("sheet.glass") == view::format_area(s.today.glass_m2, units));
        CHECK(value("sheet.glass_remedy") ==
              view::format_area(s.remedy.glass_m2, units) + " (today's " +
                  view::format_percent(s.remedy.glass_m2 / s.today.glass_m2 - 1) + ")");
        CHECK(value("sheet.total") == view::format_money(s.total(), view::trade_of(h)));
        const house::HouseTotal t = house::house_total(h);
        CHECK(value("sheet.house.total") == view::format_money(t.total(), view::trade_of(h)));
        for (const house::MaterialLine& line : s.materials) {
            const view::MirrorNode* node = stage.node("sheet.need." + std::string(line.row->key));
            REQUIRE(node);
            if (line.row->key == "foam") {
                char cans[24];
                std::snprintf(cans, sizeof cans, "%.1f cans", line.need / h.can_l);
                CHECK(node->value.find(cans + std::string(", $")) == 0);
            }
        }
        for (const house::MaterialLine& line : t.lines)
            if (line.row->key == "foam") {
                const int n = house::packs(line, h.can_l);
                CHECK(value("sheet.all.foam")
                          .find(std::to_string(n) + (n == 1 ? " can, $" : " cans, $")) == 0);
            }
    }
}

TEST_CASE("sheet: what a material costs is explained in the reader's units") {
    for (const Units units : {Units::us, Units::si}) {
        house::House h = measured();
        h.units = units;
        stage::Stage stage(screens::wide, h);
        stage.press("view.sheet");
        const house::House& now = stage.screen().house();
        std::size_t explained = 0;
        for (const house::MaterialLine& line : house::sheet(now, now.openings[0]).materials) {
            stage.press("sheet.need." + std::string(line.row->key));
            const std::string card = screens::value_of(stage, "why.formula");
            stage.press("why.close");
            const bool us = units == Units::us,
                       length = line.row->measure == house::Measure::length;
            if (line.row->pack > 0 || !length) continue;
            ++explained;
            // "2.5 ft × $1.2 = $3.00"
            const std::string unit = us ? " ft × $" : " m × $";
            const std::size_t at = card.rfind(unit), start = card.rfind('\n', at) + 1;
            REQUIRE(at != std::string::npos);
            CHECK(card.find(us ? " m × $" : " ft × $") == std::string::npos);
            const double size_m = us ? 0.3048 : 1;
            const double amount = std::strtod(card.c_str() + start, nullptr);
            const double price = std::strtod(card.c_str() + at + unit.size(), nullptr);
            CHECK(amount * size_m ==
                  doctest::Approx(house::bought(line, now.can_l)).epsilon(0.005));
            CHECK(price / size_m == doctest::Approx(line.row->price).epsilon(0.001));
        }
        CHECK(explained > 0);
    }
}

TEST_CASE(
    "sheet: lines, all else and labor add up as printed; own prices change them and are kept") {
    for (const Units units : {Units::us, Units::si}) {
        house::House h = measured();
        h.units = units;
        stage::Stage stage(screens::wide, h);
        stage.press("view.sheet");
        const auto money = [&](const std::string& id) {
            std::string words = screens::value_of(stage, id.c_str());
            words.erase(0, words.rfind('$') + 1);
            words.erase(std::remove(words.begin(), words.end(), ','), words.end()); // "1,391"
            if (const std::size_t at = words.find("\u2009"); at != std::string::npos)
                words.erase(at, 3);
            return std::strtod(words.c_str(), nullptr);
        };
        const auto check_sums = [&] {
            const house::House& now = stage.screen().house();
            const house::Sheet s = house::sheet(now, now.openings[0]);
            double lines = std::strtod(screens::value_of(stage, "sheet.rest").c_str(), nullptr);
            for (const house::MaterialLine& line : s.materials)
                lines += money("sheet.need." + std::string(line.row->key));
            CHECK(std::fabs(money("sheet.material") - lines) <= 1); // typed: rounded for itself
            CHECK(money("sheet.total") == money("sheet.material") + money("sheet.labour"));
            CHECK(money("sheet.house.total") ==
                  money("sheet.house.material") + money("sheet.house.labour"));
            return s;
        };
        const house::Sheet before = check_sums();
        CHECK(before.material_cost == doctest::Approx(h.openings[0].remedies[0].material_cost));
        double foam_cans = 0;
        for (const house::MaterialLine& line : before.materials)
            if (line.row->key == "foam") foam_cans = house::bought(line, h.can_l);
        REQUIRE(foam_cans > 0);
        stage.type("sheet.price.foam", "28");
        const house::Sheet dearer = check_sums();
        CHECK(dearer.material_cost == doctest::Approx(before.material_cost + 20 * foam_cans));
        CHECK(dearer.cost.rest == doctest::Approx(before.cost.rest));
        stage.type("sheet.price.foam", ""); // back to the usual one
        CHECK(check_sums().material_cost == doctest::Approx(before.material_cost));
        stage.type("sheet.rest", "500");
        CHECK(check_sums().cost.rest == doctest::Approx(500));
        // The Bill reckons with the same.
        stage.press("view.bill");
        const house::House& now = stage.screen().house();
        const double total = house::sheet(now, now.openings[0]).total();
        CHECK(screens::value_of(stage, "bill.price") ==
              view::format_money(total, view::trade_of(now)));
    }
}

TEST_CASE("sheet: the glass that shows is what the solved cuts leave of the unit") {
    for (const char* key : {"insert_foamed", "full_wood"}) {
        const house::House h = measured(key);
        const house::Sheet s = house::sheet(h, h.openings[0]);
        const auto check = [](const opening::Case& c, double glass_m2) {
            const opening::UnitSize unit = opening::unit_size(c.opening);
            const assess::Assessment a = assess::assess(c);
            CHECK(glass_m2 ==
                  doctest::Approx(unit.width_m * unit.height_m - a.frame_m2).epsilon(1e-6));
        };
        check(house::today_case(h, h.openings[0]), s.today.glass_m2);
        check(house::remedy_case(h, h.openings[0]), s.remedy.glass_m2);
    }
}

TEST_CASE("sheet: what is missing, bowed or elsewhere is told") {
    house::House h = measured();
    h.openings[0].site.clear(Entry::width_middle_m);
    h.openings[0].site.set(Entry::height_left_m, 40 * inch);
    stage::Stage stage(screens::wide, h);
    stage.press("view.sheet");
    CHECK(screens::value_of(stage, "sheet.missing").find("width two of three") !=
          std::string::npos);
    CHECK(stage.node("sheet.estimate"));
    CHECK(stage.node("sheet.elsewhere"));
    CHECK_FALSE(stage.node("sheet.bow.width"));
}

TEST_CASE("sheet: what is there, straight and in its place is not") {
    stage::Stage stage(screens::wide, measured());
    stage.press("view.sheet");
    CHECK_FALSE(stage.node("sheet.missing"));
    CHECK_FALSE(stage.node("sheet.estimate"));
    CHECK_FALSE(stage.node("sheet.elsewhere"));
    // But for the jambs' 1/4 in.
    CHECK(screens::value_of(stage, "sheet.bow.width").find("inwards by 1/4") != std::string::npos);
}

TEST_CASE("sheet: nothing is ordered where the joint is sealed, and nobody asks who deducts") {
    stage::Stage stage(screens::wide, measured("foam_joint"));
    stage.press("view.sheet");
    CHECK_FALSE(stage.node("sheet.deducts.sheet"));
    CHECK_FALSE(stage.node("sheet.unit"));
    CHECK_FALSE(stage.node("sheet.glass_remedy"));
    CHECK(stage.node("sheet.need.foam"));
    CHECK_FALSE(stage.node("sheet.need.casing"));
}

TEST_CASE("sheet: cautions are the model's; a fact told takes its caution away, and comes back") {
    const house::House h = measured();
    stage::Stage stage(screens::wide, h);
    stage.press("view.sheet");
    for (const house::Caution& c : house::cautions(h, h.openings[0])) {
        const std::string id = "sheet.care." + std::string(c.row->key);
        CHECK(screens::value_of(stage, id) == c.words);
        CHECK(screens::value_of(stage, id + ".rule") == house::rule_in_print(*c.row) + ".");
        const std::string name = stage.node(id + ".name")->name;
        CHECK((name.find("(not known yet)") != std::string::npos) == c.unknown);
    }
    REQUIRE(stage.node("sheet.care.way_out"));
    stage.press("site.facts.bedroom.no");
    CHECK_FALSE(stage.node("sheet.care.way_out"));
    stage.press("site.facts.bedroom.yes");
    REQUIRE(stage.node("sheet.care.way_out"));
    CHECK(stage.node("sheet.care.way_out.name")->name == "Escape window");
    stage.press("site.facts.bedroom.yes"); // taken back
    CHECK(stage.node("sheet.care.way_out.name")->name == "Escape window (not known yet)");
    stage.type("site.year_built", "1995");
    CHECK_FALSE(stage.node("sheet.care.lead"));
}

TEST_CASE("sheet: the saved table is the house's, with either separator") {
    const house::House h = measured();
    stage::Stage stage(screens::wide, h);
    stage.press("view.sheet");
    stage.frame({{"sheet.csv", view::MirrorEvent::Kind::press, 0, ""}});
    CHECK(stage.wishes().save_content == house::sheet_csv(h));
    stage.frame({{"sheet.csv.semicolon", view::MirrorEvent::Kind::press, 0, ""}});
    CHECK(stage.wishes().save_content == house::sheet_csv(h, house::Separator::semicolon));
}

TEST_CASE("sheet: price and can are typed, within limits") {
    stage::Stage stage(screens::wide, measured());
    stage.press("view.sheet");
    const std::string before = screens::value_of(stage, "sheet.all.foam");
    stage.type("house.can_l", "1");
    CHECK(screens::value_of(stage, "sheet.all.foam") != before);
    stage.type("house.can_l", "0.5");
    CHECK(screens::value_of(stage, "house.can_l") == "1");
}

TEST_CASE("sheet: lies on the screen and apart at every size, and rests") {
    for (const stage::Size& size : screens::sizes) {
        house::House h = measured();
        h.openings[0].site.set(Entry::maker_deducts, 0);
        stage::Stage stage(size, h);
        stage.press("view.sheet");
        CHECK(stage.rest());
        screens::check_apart(stage, size, "sheet.", 1);
    }
}
