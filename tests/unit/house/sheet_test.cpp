// SPDX-License-Identifier: MIT
#include "house/sheet.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::house;

namespace {

constexpr double inch_m = 0.0254;

House measured() {
    House house = demo_house();
    Entries& site = house.openings[0].site;
    const double widths_in[] = {35.5, 35.25, 35.5}, heights_in[] = {60, 60.125, 60};
    for (int i = 0; i < 3; ++i) {
        site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i),
                 widths_in[i] * inch_m);
        site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                 heights_in[i] * inch_m);
    }
    return house;
}

} // namespace

TEST_CASE("sheet: hours and money are the chosen remedy's") {
    House house = measured();
    house.hour = 70;
    const Sheet s = sheet(house, house.openings[0]);
    const opening::Remedy& chosen = *chosen_remedy(house.openings[0]);
    CHECK(s.hours == chosen.hours);
    CHECK(s.total() == doctest::Approx(70 * chosen.hours + chosen.material_cost));
    CHECK(s.order.measured);
    house.openings[0].chosen = -1;
    CHECK(sheet(house, house.openings[0]).total() == 0);
    CHECK(sheet(house, house.openings[0]).remedy.glass_m2 ==
          sheet(house, house.openings[0]).today.glass_m2);
}

TEST_CASE("what was written down on site comes back from the file") {
    House house = measured();
    auto& record = house.openings[0];
    record.site.set(Entry::before_glass_c, -1.5);
    record.site.set(Entry::year_built, 1924);
    record.answers = {{1, 0}, {0, 2}};
    record.site.set(Entry::bedroom, 1);
    record.site.set(Entry::ground_m, 3.5);
    record.site.set(Entry::sill_rise_m, -0.004);
    house.hour = 75;
    house.can_l = 30;
    const auto opened = from_json(to_json(house));
    REQUIRE(shimlight::ok(opened));
    const House& back = shimlight::value(opened).house;
    CHECK(shimlight::value(opened).notes.empty());
    CHECK(to_json(back) == to_json(house));
    CHECK(back.hour == 75);
    CHECK(back.can_l == 30);
    CHECK(back.openings[0].site.of(Entry::bedroom) == 1);
    CHECK(back.openings[0].site.of(Entry::ground_m) == 3.5);
    CHECK(back.openings[0].site.of(Entry::sill_rise_m) == -0.004);
    CHECK_FALSE(back.openings[0].site.has(Entry::near_door));
    CHECK(back.openings[0].site.of(Entry::before_glass_c) == -1.5);
    CHECK(back.openings[0].site.of(Entry::year_built) == 1924);
    CHECK_FALSE(back.openings[0].site.has(Entry::after_glass_c));
    CHECK(back.openings[0].answers.size() == 2);
}

TEST_CASE("every key of the site table stands once, parts together") {
    const auto rows = entry_rows();
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            CHECK(rows[i].key != rows[j].key);
            const auto part = [&](std::size_t k) {
                return rows[k].key.substr(0, rows[k].key.find('.'));
            };
            if (part(i) == part(j)) CHECK(part(j + 1) == part(j));
        }
}
