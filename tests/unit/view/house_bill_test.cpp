// SPDX-License-Identifier: MIT
// The Bill of the whole house by its mirror: its totals are the sums of what the openings print,
// what is chosen by hand or by a budget is one step to undo, and it rests.
#include "house/house_bill.hpp"
#include "screens.hpp"
#include "view/bill_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>

namespace shimlight::screens {
namespace {

using stage::Stage;
using view::MirrorNode;

constexpr int boston = 24;

/// Two openings: each takes a third of a second to solve.
house::House two_openings() {
    house::House h = house::demo_house();
    h.openings.erase(h.openings.begin() + 1);
    return h;
}

/// Also "1,391" and "1 391".
double number_at(const std::string& words, std::size_t at) {
    std::string number = words.substr(at, 12);
    for (const std::string apart : {",", " "})
        if (number.size() > 4 && number.compare(1, apart.size(), apart) == 0 &&
            std::isdigit(number[1 + apart.size()]))
            number.erase(1, apart.size());
    return std::strtod(number.c_str(), nullptr);
}

/// "43 → 25 of 100": both.
struct Two {
    double today = 0, then = 0;
};
Two two_of(const std::string& words) {
    constexpr std::string_view arrow = "→ ";
    const std::size_t at = words.find(arrow);
    REQUIRE_MESSAGE(at != std::string::npos, words);
    std::size_t from = words.rfind(' ', at - 2);
    from = from == std::string::npos ? 0 : from + 1;
    constexpr std::string_view about = "about ";
    std::size_t then = at + arrow.size();
    if (words.compare(then, about.size(), about) == 0) then += about.size();
    return {number_at(words, from), number_at(words, then)};
}

double money_in(const std::string& words) {
    const std::size_t at = words.find('$');
    REQUIRE_MESSAGE(at != std::string::npos, words);
    return number_at(words, at + 1);
}

std::vector<const MirrorNode*> all_of(const Stage& stage, const std::string& start) {
    std::vector<const MirrorNode*> found;
    for (std::size_t n = 0;; ++n) {
        const MirrorNode* node = stage.node(start + std::to_string(n));
        if (!node) return found;
        found.push_back(node);
    }
}

/// The card of a sum has a line an opening, as it is printed.
void check_sum(Stage& stage, const std::string& id, std::size_t openings) {
    CAPTURE(id);
    const Two total = two_of(value_of(stage, id));
    stage.press(id);
    std::string words = value_of(stage, "why.formula");
    stage.press("why.close");
    Two sum;
    std::size_t lines = 0;
    for (std::size_t end; (end = words.find('\n')) != std::string::npos; ++lines) {
        const Two one = two_of(words.substr(0, end));
        sum.today += one.today;
        sum.then += one.then;
        words.erase(0, end + 1);
    }
    CHECK(lines == openings);
    // The lines are told to a tenth and make the sum below them; the row has that sum whole.
    constexpr double whole = 0.5 + 0.05 + 1e-9;
    const Two told = two_of(words);
    CHECK(told.today == doctest::Approx(sum.today).epsilon(1e-9));
    CHECK(told.then == doctest::Approx(sum.then).epsilon(1e-9));
    CHECK(std::fabs(total.today - told.today) <= whole);
    CHECK(std::fabs(total.then - told.then) <= whole);
}

TEST_CASE("whole house: totals are the sums of the openings' own numbers") {
    house::House h = two_openings();
    h.running.climate = boston;
    h.units = house::Units::si; // whole kWh
    Stage stage(wide, h);
    stage.press("view.bill");
    const std::string alone = value_of(stage, "bill.heat");
    stage.press("bill.all");
    CHECK(!stage.node("bill.heat"));
    for (const char* id : {"bill.house.heat", "bill.house.conduction", "bill.house.leakage",
                           "bill.house.useful", "bill.house.cool", "bill.house.people"})
        check_sum(stage, id, h.openings.size());
    // The opening's own page says the same of it.
    stage.press("bill.house.heat");
    const std::string card = value_of(stage, "why.formula");
    const Two here = two_of(card.substr(0, card.find('\n'))), there = two_of(alone);
    CHECK(std::fabs(here.today - there.today) < 0.6); // a tenth beside a whole number
    CHECK(std::fabs(here.then - there.then) < 0.6);
    stage.press("why.close");
    // By the functions: the first opening's part, and the months' bars.
    const Two people = two_of(value_of(stage, "bill.house.people"));
    Two sum;
    for (const MirrorNode* card : all_of(stage, "bill.house.opening.")) {
        const Two one = two_of(card->name);
        sum.today += one.today;
        sum.then += one.then;
    }
    CHECK(std::fabs(people.today - sum.today) <= 1.5);
    CHECK(std::fabs(people.then - sum.then) <= 1.5);
    const std::string bars = value_of(stage, "bill.house.heating");
    double january = 0, year = 0;
    for (std::size_t at = 0, n = 0; n < 12; ++n) {
        at = bars.find(" to ", bars.find(": ") + (n == 0 ? 0 : at - bars.find(": ") + 4));
        const double v = number_at(bars, bars.rfind(' ', at - 1) + 1);
        if (n == 0) january = v;
        year += v;
    }
    CHECK(january > 100);
    CHECK(std::fabs(year - two_of(value_of(stage, "bill.house.heat")).today) <= 7);
    // Ranges hold the value between them, and no figure stands without its base.
    CHECK(value_of(stage, "bill.house.saving").find("between") == 0);
    CHECK(value_of(stage, "bill.house.share").find("of these openings' heat") != std::string::npos);
    CHECK(value_of(stage, "bill.house.share").find("with these windows in it") !=
          std::string::npos);
    CHECK(value_of(stage, "bill.house.reasons").find("comfort, ") != std::string::npos);
}

/// The price of what is chosen now, and of the whole, in the mirror.
void check_chosen(const Stage& stage) {
    const house::House& now = stage.screen().house();
    double price = 0;
    const auto cards = all_of(stage, "bill.house.opening.");
    REQUIRE(cards.size() == now.openings.size());
    for (std::size_t n = 0; n < cards.size(); ++n) {
        const opening::Remedy* chosen = house::chosen_remedy(now.openings[n]);
        CHECK(cards[n]->name.find(chosen ? chosen->name + ", $" : "As it is") != std::string::npos);
        if (chosen) price += view::shown_money(assess::price_of(*chosen, now.hour));
    }
    const MirrorNode* told = stage.node("bill.house.price");
    CHECK((told ? money_in(told->value) : 0) == doctest::Approx(std::round(price)).epsilon(1e-3));
}

TEST_CASE("whole house: by hand and by a budget, each one step to undo") {
    Stage stage(phone, two_openings());
    stage.press("view.bill");
    stage.press("bill.all");
    CHECK(stage.rest()); // and asks for no frames
    check_chosen(stage);
    const std::string before = house::to_json(stage.screen().house());

    stage.press("bill.house.opening.1");
    const auto& own = stage.screen().house().openings[1].remedies;
    REQUIRE(stage.node("bill.house.choice.0"));
    CHECK(stage.node("bill.house.choice.0")->name.find(own[0].name) == 0);
    stage.press("bill.house.choice.none");
    CHECK(stage.screen().house().openings[1].chosen == -1);
    check_chosen(stage);
    stage.press("bill.house.choice.0");
    CHECK(stage.screen().house().openings[1].chosen == 0);
    check_chosen(stage);
    stage.press("menu.undo");
    stage.press("menu.undo");
    CHECK(house::to_json(stage.screen().house()) == before);

    stage.type("lever.bill.budget.typed", "300");
    const auto set = all_of(stage, "bill.house.set.");
    REQUIRE(set.size() == 2);
    double price = 0;
    std::vector<std::string> names;
    for (const MirrorNode* one : set) {
        price += money_in(one->value);
        names.push_back(one->name.substr(one->name.find(": ") + 2));
    }
    CHECK(price <= 301);
    CHECK(std::fabs(money_in(value_of(stage, "bill.house.set.price")) - price) <= 1);
    const Two people = two_of(value_of(stage, "bill.house.set.people"));
    CHECK(people.then < people.today);
    CHECK(value_of(stage, "bill.house.next").find("With $") == 0);
    CHECK(value_of(stage, "bill.house.chart.sets").find("now") != std::string::npos);
    // More money never leaves more people bothered.
    stage.type("lever.bill.budget.typed", "900");
    CHECK(two_of(value_of(stage, "bill.house.set.people")).then <= people.then);
    stage.type("lever.bill.budget.typed", "300");

    stage.press("bill.house.take");
    const house::House& taken = stage.screen().house();
    for (std::size_t n = 0; n < names.size(); ++n) {
        const opening::Remedy* chosen = house::chosen_remedy(taken.openings[n]);
        CHECK((chosen ? chosen->name : "as it is") == names[n]);
    }
    check_chosen(stage);
    CHECK(!stage.node("bill.house.take")->enabled);
    CHECK(two_of(value_of(stage, "bill.house.people")).then == people.then);
    stage.press("menu.undo");
    CHECK(house::to_json(stage.screen().house()) == before);
    check_chosen(stage);
}

TEST_CASE("whole house: ranked by people fewer for the money, within the screen at three sizes") {
    house::House h = two_openings();
    for (const stage::Size size : {phone, tablet, wide}) {
        Stage stage(size, h);
        for (const char* id : {"view.bill", "bill.all"})
            stage.frame({{id, view::MirrorEvent::Kind::press, 0, ""}});
        CHECK(stage.node("bill.house.wait")); // says how far it is
        if (size.width_px == wide.width_px) {
            CHECK(stage.rest());
            const auto first = all_of(stage, "bill.house.rank.");
            stage.press("bill.house.all");
            const auto all = all_of(stage, "bill.house.rank.");
            CHECK(all.size() > 12);
            double before = 1e9;
            for (const MirrorNode* one : all) {
                const Two people = two_of(one->value);
                const double price = money_in(one->value);
                const std::size_t at = one->value.find(" fewer for $100");
                REQUIRE(at != std::string::npos);
                const double per = number_at(one->value, one->value.rfind(' ', at - 1) + 1);
                CHECK(per <= before);
                // As printed: both numbers of people to one, the quotient to a tenth.
                CHECK(std::fabs(per * price / 100 - (people.today - people.then)) <=
                      1.1 + 0.0006 * price);
                before = per;
            }
        }
        check_apart(stage, size, "bill.", 0);
    }
    h.openings.resize(1); // a house of one opening is that opening
    Stage one(phone, h);
    one.frame({{"view.bill", view::MirrorEvent::Kind::press, 0, ""}});
    one.frame({{"bill.all", view::MirrorEvent::Kind::press, 0, ""}});
    one.frame();
    CHECK(!one.node("bill.all")->enabled);
    CHECK(one.node("bill.heat"));
}

} // namespace
} // namespace shimlight::screens
