// SPDX-License-Identifier: MIT
#include "view/figure_text.hpp"

#include <cmath>
#include <cstdio>

namespace shimlight::view {
namespace {

using Kind = assess::FigureKind;

constexpr double btu_u_w_m2k = 5.678263;    // Btu/(h·ft²·°F)
constexpr const char* gap = "\xE2\x80\x89"; // thin space

/// `digits` after the point, with a unit.
std::string number(double value, int digits, const char* unit) {
    char text[40];
    std::snprintf(text, sizeof text, "%.*f", digits, value);
    return typeset(text) + gap + unit;
}

std::string plain(Kind kind, double value, Units units, const Trade& trade) {
    switch (kind) {
    case Kind::share:
    case Kind::humidity:
        return format_percent(value);
    case Kind::percent:
        return format_percent(value / 100);
    case Kind::u_w_m2k:
        return format_u(value, units) + gap + u_unit(units);
    case Kind::speed_m_s:
        return format_speed(value, units);
    case Kind::flow_m3_s:
        return format_flow(std::fabs(value), units);
    case Kind::heat_w:
        return format_watts(value, units);
    case Kind::energy_kwh:
        return format_energy(value, trade);
    case Kind::money:
        return format_money(value, trade);
    case Kind::pressure_pa:
        return number(value, 1, "Pa");
    case Kind::ratio:
        return number(value, 2, "").substr(0, 4);
    case Kind::difference_k:
        return format_kelvin(value, units);
    case Kind::vote:
        return format(Quantity::number, std::round(value * 100) / 100, units);
    default:
        return format_temperature(value, units);
    }
}

} // namespace

std::string figure_text(const assess::Figure& figure, double value, Units units,
                        const Trade& trade) {
    if (!std::isfinite(value)) return "–";
    if (figure.kind == Kind::humidity && value >= 1) return "never";
    std::string text = plain(figure.kind, value, units, trade);
    if (figure.kind == Kind::flow_m3_s && value != 0) text += value > 0 ? " in" : " out";
    return text;
}

std::string figure_difference(const assess::Figure& figure, double difference, Units units,
                              const Trade& trade) {
    const double size = std::fabs(difference);
    if (!std::isfinite(size)) return "–";
    const bool us = units == Units::us;
    switch (figure.kind) { // a digit more than values have
    case Kind::difference_k:
    case Kind::temperature_c: {
        const double k = us ? size * 1.8 : size;
        return number(k, k < 9.95 ? 1 : 0, us ? "°F" : "°C");
    }
    case Kind::share:
    case Kind::humidity:
        return format_percent(size, size < 0.0995 ? 1 : 0);
    case Kind::percent:
        return format_percent(size / 100, size < 9.95 ? 1 : 0);
    case Kind::u_w_m2k:
        return number(us ? size / btu_u_w_m2k : size, 3, u_unit(units));
    case Kind::ratio:
        return number(size, 3, "").substr(0, 5);
    default:
        return plain(figure.kind, size, units, trade);
    }
}

} // namespace shimlight::view
