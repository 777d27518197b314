// SPDX-License-Identifier: MIT
#include "opening/films.hpp"
#include "physics/film.hpp"
#include "physics/sky.hpp"

namespace shimlight::opening {

namespace {
// Building materials, ASHRAE Handbook Fundamentals 2021 ch. 26 Table 2.
constexpr double wall_emissivity = 0.90;

physics::FilmHeat wall_film(const Weather& weather) {
    return {
        physics::outside_convection_w_m2k(weather.wind_m_s),
        physics::radiation_w_m2k(wall_emissivity, weather.outside_c, outside_radiant_c(weather))};
}
} // namespace

double outside_radiant_c(const Weather& weather, double tilt_deg) {
    return weather.sky == Sky::clear_night
               ? physics::clear_night_radiant_c(weather.outside_c, tilt_deg)
               : weather.outside_c;
}

double outside_environment_c(const Weather& weather, const physics::FilmHeat& film,
                             double tilt_deg) {
    const double share = film.radiative_w_m2k / (film.convective_w_m2k + film.radiative_w_m2k);
    return weather.outside_c + share * (outside_radiant_c(weather, tilt_deg) - weather.outside_c);
}

double outside_environment_c(const Weather& weather) {
    return outside_environment_c(weather, wall_film(weather));
}

double outside_film_w_m2k(const Weather& weather) {
    const physics::FilmHeat film = wall_film(weather);
    return film.convective_w_m2k + film.radiative_w_m2k;
}

} // namespace shimlight::opening
