// SPDX-License-Identifier: MIT
// The sun's place and strength against textbooks, public tests and the hours of typical years.
// "DB" is Duffie and Beckman, Solar Engineering of Thermal Processes; "pvlib" the published test
// values of that library; "worked apart" was computed from the formulas elsewhere.
#include "deviation.hpp"
#include "physics/sun_day.hpp"
#include "table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>
#include <string>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double mj_per_wh = 0.0036;

/// Hour angle of a time in hours after midnight, solar time.
double hour_rad(double hour) {
    return 15 * (hour - 12) * degree;
}

double angle_deg(double cosine) {
    return std::acos(cosine) / degree;
}

/// Cooper's declination of 1969, which the books' examples use.
double cooper_rad(double day) {
    return 23.45 * degree * std::sin(2 * std::numbers::pi * (284 + day) / 365);
}

double book_day_mj(double latitude_deg, double day) {
    return extraterrestrial_day_wh_m2(latitude_deg * degree, cooper_rad(day), day) * mj_per_wh;
}

} // namespace

TEST_CASE("declination: the almanac") {
    // Solstices at 23.44 degrees, the sun over the equator about 20.4 March and 22.9 September.
    // Leap years move the sun of one and the same day by 0.2 degrees to either side.
    Deviation almanac("declination against the almanac", "degrees", 0.2);
    almanac.add(declination_rad(172) / degree, 23.44, "21 Jun");
    almanac.add(declination_rad(355) / degree, -23.44, "21 Dec");
    almanac.add(declination_rad(79.2) / degree, 0, "20 Mar");
    almanac.add(declination_rad(265.7) / degree, 0, "22 Sep");
}

TEST_CASE("the sun's height and the angle on a surface, from the books' own declinations") {
    // DB 4th ed. Ex. 2.15.1 (read): 40 N, 20 Feb, 9:30, surface 60 degrees to the south.
    Deviation digits("zenith and incidence from a declination", "degrees", 0.01);
    const SunPlace morning = sun_place(40 * degree, -11.58 * degree, hour_rad(9.5));
    digits.add(angle_deg(morning.up), 62.20, "zenith, DB Ex. 2.15.1");
    digits.add(angle_deg(cos_incidence(morning, facing(180, 60))), 36.97, "incidence, the same");
    // 1.7144 is printed, from cosines of three digits (0.17 %).
    CHECK(std::fabs(cos_incidence(morning, facing(180, 60)) / morning.up - 1.7144) <= 0.003);
    // DB 5th ed. Ex. 1.6.1 and 1.8.1 (statement read, values worked apart): Madison 43 N, 13 Feb
    // 10:30, slope 45, 15 degrees west of south.
    const SunPlace madison = sun_place(43 * degree, -14 * degree, hour_rad(10.5));
    const double cosine = cos_incidence(madison, facing(195, 45));
    CHECK(std::fabs(cosine - 0.8174) <= 0.0001);
    CHECK(std::fabs(cosine / madison.up - 1.666) <= 0.0005);
}

TEST_CASE("the sun over Golden, Colorado: pvlib's test against the almanac (read)") {
    // 39.742 N 105.179 W, 17 Oct 2003, 12:30:30 mountain time; 14.6 minutes of equation of time.
    const double day = 290, g = 2 * std::numbers::pi * (day - 1) / 365;
    const double equation_min =
        229.18 * (0.0000075 + 0.001868 * std::cos(g) - 0.032077 * std::sin(g) -
                  0.014615 * std::cos(2 * g) - 0.040849 * std::sin(2 * g));
    const double solar_h = 12 + 30.5 / 60 + (4 * (-105.1786 + 105) + equation_min) / 60;
    // The year 2003 lies 0.1 degrees beside the mean of four.
    Deviation height("height and bearing at Golden", "degrees", 0.2);
    const SunPlace sun = sun_place(39.742476 * degree, declination_rad(day), hour_rad(solar_h));
    height.add(90 - angle_deg(sun.up), 39.872046, "height");
    height.add(std::atan2(sun.east, sun.north) / degree + 360, 194.340241, "bearing");
}

TEST_CASE("extraterrestrial radiation: books and typical years") {
    Deviation normal("square to the sun outside the air", "W/m²", 10); // pvlib's own tolerance
    normal.add(extraterrestrial_w_m2(300), 1383.636, "26 Oct 2016, pvlib (read)");
    normal.add(extraterrestrial_w_m2(175), 1321.1656, "24 Jun 2014, pvlib (read)");
    // Klein's days with Cooper's declination, as the books have them.
    const int days[] = {17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344};
    Deviation day("a horizontal day outside the air (worked apart)", "%", 0.1); // four digits
    const double at_40[] = {15.21, 20.54, 27.44, 34.63, 39.69, 41.76,
                            40.67, 36.53, 29.99, 22.53, 16.44, 13.76};
    const double at_45[] = {12.13, 17.63, 25.05, 33.16, 39.19, 41.75,
                            40.43, 35.46, 27.95, 19.78, 13.40, 10.68};
    for (int n = 0; n < 12; ++n) {
        const std::string month = "month " + std::to_string(n + 1);
        day.add_relative_pct(book_day_mj(40, days[n]), at_40[n], "40 N, " + month);
        day.add_relative_pct(book_day_mj(45, days[n]), at_45[n], "45 N, " + month);
    }
    day.add_relative_pct(book_day_mj(43, 105), 33.77, "43 N, 15 Apr, DB Ex. 1.10.1: 33.8");
    Deviation sunset("sunset", "degrees", 0.01);
    sunset.add(sunset_rad(43 * degree, cooper_rad(105)) / degree, 98.90,
               "DB Ex. 1.10.1 (from memory)");
    sunset.add(sunset_rad(-38 * degree, cooper_rad(17)) / degree, 107.37,
               "Melbourne, DB Ex. 2.13.1 (worked apart)");
}

TEST_CASE("the mean day stands for its month: hours of typical years, below 60 degrees") {
    // The days are chosen to within 1.2 %; the years' own hours see the sun lifted by the air,
    // which adds a few tenths where it stands low: more than that above 50 degrees.
    Deviation day("the month's mean outside the air, TMY3", "%", 1.5);
    Deviation high("the same, 50 to 60 degrees", "%", 4);
    for (const Row& row : table("typical_years.csv")) {
        const double latitude = row.number("latitude_deg");
        if (latitude > 60) continue;
        const int month = static_cast<int>(row.number("month")) - 1;
        const double date = mean_day(month);
        const double found =
            extraterrestrial_day_wh_m2(latitude * degree, declination_rad(date), date) / 1000;
        (latitude > 50 ? high : day)
            .add_relative_pct(found, row.number("outside_air_kwh"),
                              row.text("place") + " " + row.text("month"));
    }
}

TEST_CASE("hours of a day and the sky's share") {
    Deviation share("an hour's share of the day", "", 0.0002); // four digits, Cooper's declination
    const double melbourne = 107.37 * degree, madison = 100.49 * degree;
    share.add(hour_share_total(hour_rad(8.5), melbourne), 0.0759, "DB Ex. 2.13.1, total");
    share.add(hour_share_diffuse(hour_rad(8.5), melbourne), 0.0785, "DB Ex. 2.13.1, diffuse");
    share.add(hour_share_total(hour_rad(13.5), madison), 0.1177, "DB Ex. 2.13.2 (from memory)");
    CHECK(31.4 * hour_share_total(hour_rad(13.5), madison) == doctest::Approx(3.7).epsilon(0.005));

    Deviation sky("sky's share of an hour, pvlib (read)", "", 0.0001);
    sky.add(hourly_diffuse_share(0.4057), 41.57 / 50, "kt 0.4057");
    sky.add(hourly_diffuse_share(0.7181), 217.86 / 1000, "kt 0.7181");
    sky.add(hourly_diffuse_share(0.7682), 170.79 / 1000, "kt 0.7682");
    sky.add(hourly_diffuse_share(0.4454), 0.7655, "DB Ex. 2.15.1");
}

TEST_CASE("sun on a sloping surface: sky, ground and beam") {
    Deviation part("sky and ground on a slope, pvlib (read)", "W/m²", 0.0001);
    SunHour hour;
    const double diffuse[] = {40.4615, 118.4583, 62.0338, 100};
    const double sky[] = {35.728402, 104.601328, 54.777191, 88.30222216};
    for (int n = 0; n < 4; ++n) {
        hour.diffuse_w_m2 = diffuse[n];
        part.add(sun_on(hour, facing(180, 40), 0).sky_w_m2, sky[n], "sky, tilt 40");
    }
    hour.horizontal_w_m2 = 900;
    part.add(sun_on(hour, facing(180, 40), 0.25).ground_w_m2, 26.32000015, "ground, tilt 40");

    // DB Ex. 2.15.1 (read): 1.04 MJ/m² in the hour, ground 0.6, sum 1.171 MJ/m².
    hour.sun = sun_place(40 * degree, -11.58 * degree, -37.5 * degree);
    hour.horizontal_w_m2 = 1.04 / mj_per_wh;
    hour.diffuse_w_m2 = hour.horizontal_w_m2 * hourly_diffuse_share(0.4454);
    hour.beam_w_m2 = (hour.horizontal_w_m2 - hour.diffuse_w_m2) / hour.sun.up;
    Deviation slope("sun on a slope, DB Ex. 2.15.1 (read)", "MJ/m²", 0.001);
    const SurfaceSun sun = sun_on(hour, facing(180, 60), 0.6);
    slope.add(sun.beam_w_m2 * mj_per_wh, 0.418, "beam");
    slope.add(sun.sky_w_m2 * mj_per_wh, 0.597, "sky");
    slope.add(sun.ground_w_m2 * mj_per_wh, 0.156, "ground");
    slope.add(sun.total_w_m2() * mj_per_wh, 1.171, "sum");
}
