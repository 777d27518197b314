// SPDX-License-Identifier: MIT
#include "opening/films.hpp"
#include "physics/film.hpp"

namespace shimlight::opening {

namespace {
// Building materials, ASHRAE Handbook Fundamentals 2021 ch. 26 Table 2.
constexpr double wall_emissivity = 0.90;
} // namespace

double outside_film_w_m2k(const Weather& weather) {
    return physics::outside_convection_w_m2k(weather.wind_m_s) +
           physics::radiation_w_m2k(wall_emissivity, weather.outside_c, weather.outside_c);
}

} // namespace shimlight::opening
