// SPDX-License-Identifier: MIT
#include "view/units.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace shimlight::view {
namespace {

constexpr double inch_m = 0.0254;        // exact
constexpr double foot_m = 0.3048;        // exact
constexpr double mph_m_s = 0.44704;      // exact
constexpr double btu_u_w_m2k = 5.678263; // 1 Btu/(h ft² °F) in W/(m² K)
constexpr double btu_k_w_mk = 0.1442279; // 1 Btu in/(h ft² °F) in W/(m K)
constexpr double sixteenth = 1.0 / 16;   // finest fraction of an inch that is shown
constexpr const char* minus_sign = "\xE2\x88\x92";

/// shown = si * factor + offset
struct Scale {
    double factor = 1, offset = 0;
    const char* sign = "";
};

Scale scale_of(Quantity quantity, Units units) {
    const bool us = units == Units::us;
    switch (quantity) {
    case Quantity::temperature_c:
        return us ? Scale{1.8, 32, "°F"} : Scale{1, 0, "°C"};
    case Quantity::difference_k:
        return us ? Scale{1.8, 0, "°F"} : Scale{1, 0, "K"};
    case Quantity::thin_m:
        return us ? Scale{1 / inch_m, 0, "in"} : Scale{1000, 0, "mm"};
    case Quantity::long_m:
        return us ? Scale{1 / inch_m, 0, "in"} : Scale{100, 0, "cm"};
    case Quantity::height_m:
        return us ? Scale{1 / foot_m, 0, "ft"} : Scale{1, 0, "m"};
    case Quantity::speed_m_s:
        return us ? Scale{1 / mph_m_s, 0, "mph"} : Scale{1, 0, "m/s"};
    case Quantity::angle_deg:
        return {1, 0, "°"};
    case Quantity::fraction:
        return {100, 0, "%"};
    case Quantity::conductivity_w_mk:
        return us ? Scale{1 / btu_k_w_mk, 0, "Btu·in/h·ft²·°F"} : Scale{1, 0, "W/m·K"};
    case Quantity::degree_days_k:
        return us ? Scale{1.8, 0, "°F·day"} : Scale{1, 0, "K·day"};
    case Quantity::price_per_kwh:
        return {1, 0, "per kWh"};
    default:
        return {};
    }
}

int decimals(Quantity quantity, Units units) {
    switch (quantity) {
    case Quantity::emissivity:
        return 2;
    case Quantity::price_per_kwh:
        return 3;
    case Quantity::conductivity_w_mk:
        return units == Units::us ? 2 : 3;
    case Quantity::number:
        return 2;
    case Quantity::difference_k:
        return 1;
    case Quantity::height_m:
        return units == Units::us ? 0 : 1;
    case Quantity::speed_m_s:
        return units == Units::us ? 0 : 1;
    case Quantity::thin_m:
        return units == Units::us ? 3 : 1;
    case Quantity::long_m:
        return units == Units::us ? 2 : 1;
    default:
        return 0;
    }
}

/// "12.50" → "12.5", "12.0" → "12".
std::string fixed(double value, int digits, bool trim) {
    char text[48];
    std::snprintf(text, sizeof text, "%.*f", digits, value);
    std::string result = text;
    if (trim && digits > 0) {
        while (result.back() == '0')
            result.pop_back();
        if (result.back() == '.') result.pop_back();
    }
    if (result == "-0") result = "0";
    return result;
}

/// Inches as a tape shows them, to the sixteenth: "35 1/2", "5/8", "0".
std::string inches(double value) {
    const long parts = std::lround(std::fabs(value) / sixteenth);
    long whole = parts / 16, top = parts % 16, bottom = 16;
    while (top != 0 && top % 2 == 0) {
        top /= 2;
        bottom /= 2;
    }
    char text[48];
    if (top == 0)
        std::snprintf(text, sizeof text, "%ld", whole);
    else if (whole == 0)
        std::snprintf(text, sizeof text, "%ld/%ld", top, bottom);
    else
        std::snprintf(text, sizeof text, "%ld %ld/%ld", whole, top, bottom);
    return (value < -sixteenth / 2 ? "-" : "") + std::string(text);
}

bool is_inches(Quantity quantity, Units units) {
    return units == Units::us && (quantity == Quantity::thin_m || quantity == Quantity::long_m);
}

/// Reads "1 1/2", "3/8", "-4.5"; `end` is left after the number.
std::optional<double> read_number(const char* text, const char** end) {
    char* after = nullptr;
    double value = std::strtod(text, &after);
    if (after == text) return {};
    const char* rest = after;
    char* after_top = nullptr;
    if (*rest == '/') {
        const double bottom = std::strtod(rest + 1, &after_top);
        if (bottom <= 0) return {};
        value /= bottom;
        rest = after_top;
    } else if (*rest == ' ' || *rest == '-') {
        const double top = std::strtod(rest + 1, &after_top);
        if (after_top != rest + 1 && *after_top == '/') {
            const char* below = after_top + 1;
            const double bottom = std::strtod(below, &after_top);
            if (bottom <= 0) return {};
            value += (value < 0 ? -1 : 1) * top / bottom;
            rest = after_top;
        }
    }
    *end = rest;
    return value;
}

/// Thousands as they are shown: "1,391" is more than a thousand to readers of US units, and a
/// little more than one to others, who set them apart by a space.
void ungroup(std::string& text, Units units) {
    const std::string_view apart = thousands_mark(units);
    const auto digit = [&text](std::size_t at) {
        return at < text.size() && text[at] >= '0' && text[at] <= '9';
    };
    for (std::size_t at = text.find(apart); at != std::string::npos;
         at = text.find(apart, at + 1)) {
        const std::size_t next = at + apart.size();
        if (at > 0 && digit(at - 1) && digit(next) && digit(next + 1) && digit(next + 2) &&
            !digit(next + 3))
            text.erase(at, apart.size());
    }
}

std::string plain(std::string text, Units units) {
    ungroup(text, units);
    auto replace = [&text](const char* from, const char* to) {
        for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from))
            text.replace(at, std::strlen(from), to);
    };
    replace(minus_sign, "-");
    replace(thin_space, " ");
    replace("\xC2\xA0", " ");
    replace(",", ".");
    return text;
}

/// The SI value when the text names a unit of this quantity, whatever the reader's.
std::optional<double> with_typed_unit(Quantity quantity, double value, const std::string& sign) {
    if (quantity == Quantity::temperature_c) {
        if (sign.find('F') != std::string::npos || sign.find('f') != std::string::npos)
            return (value - 32) / 1.8;
        if (sign.find('C') != std::string::npos || sign.find('c') != std::string::npos)
            return value;
    }
    if (quantity == Quantity::thin_m || quantity == Quantity::long_m) {
        if (sign.find("mm") != std::string::npos) return value / 1000;
        if (sign.find("cm") != std::string::npos) return value / 100;
        if (sign.find("in") != std::string::npos || sign.find('"') != std::string::npos)
            return value * inch_m;
        if (sign.find('m') != std::string::npos) return value;
    }
    if (quantity == Quantity::height_m) {
        if (sign.find("ft") != std::string::npos || sign.find('\'') != std::string::npos)
            return value * foot_m;
        if (sign.find('m') != std::string::npos) return value;
    }
    if (quantity == Quantity::speed_m_s) {
        if (sign.find("mph") != std::string::npos) return value * mph_m_s;
        if (sign.find("m/s") != std::string::npos) return value;
    }
    return {};
}

} // namespace

double to_display(Quantity quantity, double si, Units units) {
    const Scale scale = scale_of(quantity, units);
    return si * scale.factor + scale.offset;
}

double from_display(Quantity quantity, double shown, Units units) {
    const Scale scale = scale_of(quantity, units);
    return (shown - scale.offset) / scale.factor;
}

const char* unit_sign(Quantity quantity, Units units) {
    return scale_of(quantity, units).sign;
}

std::string format_bare(Quantity quantity, double si, Units units) {
    const double shown = to_display(quantity, si, units);
    if (is_inches(quantity, units)) return inches(shown);
    const bool trim = quantity == Quantity::thin_m || quantity == Quantity::long_m ||
                      quantity == Quantity::number || quantity == Quantity::difference_k;
    return fixed(shown, decimals(quantity, units), trim);
}

std::string format(Quantity quantity, double si, Units units) {
    const std::string bare = grouped(format_bare(quantity, si, units), units);
    const char* sign = unit_sign(quantity, units);
    return *sign ? bare + thin_space + sign : bare;
}

std::optional<double> parse(Quantity quantity, const std::string& typed, Units units) {
    const std::string text = plain(typed, units);
    const char* rest = nullptr;
    const std::size_t start = text.find_first_not_of(' ');
    if (start == std::string::npos) return {};
    const std::optional<double> value = read_number(text.c_str() + start, &rest);
    if (!value || !std::isfinite(*value)) return {};
    if (const auto si = with_typed_unit(quantity, *value, rest)) return si;
    return from_display(quantity, *value, units);
}

double step_si(const opening::Field& field, Units units) {
    if (units == Units::si) return field.step;
    switch (field.quantity) {
    case Quantity::temperature_c:
        return 1 / 1.8;
    case Quantity::thin_m:
        return inch_m / 16;
    case Quantity::long_m:
        return inch_m;
    case Quantity::height_m:
        return foot_m;
    case Quantity::speed_m_s:
        return mph_m_s;
    case Quantity::degree_days_k:
        return 100 / 1.8;
    default:
        return field.step;
    }
}

std::string format_temperature(double c, Units units) {
    return format(Quantity::temperature_c, c, units);
}

std::string format_tenths(double c, Units units) {
    const double shown = to_display(Quantity::temperature_c, c, units);
    return typeset(fixed(shown, 1, false)) + thin_space + unit_sign(Quantity::temperature_c, units);
}

double shown_u(double u_w_m2k, Units units) {
    return units == Units::us ? u_w_m2k / btu_u_w_m2k : u_w_m2k;
}

std::string format_u(double u_w_m2k, Units units) {
    return fixed(shown_u(u_w_m2k, units), 2, false);
}

const char* u_unit(Units units) {
    return units == Units::us ? "Btu/h·ft²·°F" : "W/m²·K";
}

std::string format_flux(double w_m2, Units units) {
    constexpr double btu_h_ft2 = btu_u_w_m2k / 1.8; // W/m² in 1 Btu/h·ft²
    return units == Units::us ? typeset(fixed(w_m2 / btu_h_ft2, 1, false))
                              : typeset(fixed(w_m2, std::fabs(w_m2) < 9.95 ? 1 : 0, false));
}

const char* flux_unit(Units units) {
    return units == Units::us ? "Btu/h·ft²" : "W/m²";
}

std::string format_heat(double w, Units units) {
    constexpr double btu_h_w = 0.2930711; // W in 1 Btu/h
    return units == Units::us ? grouped(fixed(w / btu_h_w, 0, false), units) + thin_space + "Btu/h"
                              : grouped(fixed(w, 0, false), units) + thin_space + "W";
}

std::string format_area(double m2, Units units) {
    return units == Units::us ? fixed(m2 / (foot_m * foot_m), 1, false) + thin_space + "ft²"
                              : fixed(m2, 2, false) + thin_space + "m²";
}

std::string format_percent(double share, int digits) {
    return typeset(fixed(share * 100, digits, false)) + thin_space + "%";
}

double speed_display(double m_s, Units units) {
    constexpr double foot_per_minute_m_s = 0.00508; // exact
    return units == Units::us ? m_s / foot_per_minute_m_s : m_s;
}

const char* speed_unit(Units units) {
    return units == Units::us ? "ft/min" : "m/s";
}

std::string format_speed(double m_s, Units units) {
    return fixed(speed_display(m_s, units), units == Units::us ? 0 : 2, false) + thin_space +
           speed_unit(units);
}

std::string format_kelvin(double k, Units units) {
    const double shown = units == Units::us ? k * 1.8 : k;
    return typeset(fixed(shown, std::fabs(shown) < 9.95 ? 1 : 0, false)) + thin_space +
           (units == Units::us ? "°F" : "K");
}

double flow_display(double m3_s, Units units) {
    constexpr double cfm_m3_s = foot_m * foot_m * foot_m / 60; // exact
    return units == Units::us ? m3_s / cfm_m3_s : m3_s * 3600;
}

std::string format_flow(double m3_s, Units units) {
    const double shown = flow_display(m3_s, units);
    return grouped(fixed(shown, 1, false), units) + thin_space + flow_unit(units);
}

const char* flow_unit(Units units) {
    return units == Units::us ? "cfm" : "m³/h";
}

std::string format_watts(double w, Units units) {
    constexpr double btu_h_w = 0.29307107; // 1 Btu/h in W
    return units == Units::us ? grouped(fixed(w / btu_h_w, 0, false), units) + thin_space + "Btu/h"
                              : grouped(fixed(w, 0, false), units) + thin_space + "W";
}

std::string format_pascal(double pa) {
    return typeset(fixed(pa, 1, false)) + thin_space + "Pa";
}

std::string format_mass(double kg, Units units) {
    constexpr double pound_kg = 0.45359237; // exact
    const double shown = units == Units::us ? kg / pound_kg : kg;
    return grouped(fixed(shown, 0, false), units) + thin_space + (units == Units::us ? "lb" : "kg");
}

std::string all_grouped(std::string_view words, Units units) {
    constexpr std::size_t group = 3;
    const std::string_view apart = thousands_mark(units);
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    std::string out;
    for (std::size_t i = 0; i < words.size();) {
        std::size_t end = i;
        while (end < words.size() && digit(words[end]))
            ++end;
        const bool decimals = i > 0 && (words[i - 1] == '.' || words[i - 1] == ',');
        for (std::size_t at = i; at < end; ++at) {
            if (at > i && (end - at) % group == 0 && !decimals) out += apart;
            out += words[at];
        }
        if (end == i) out += words[end++];
        i = end;
    }
    return out;
}

std::string grouped(std::string number, Units units) {
    return typeset(all_grouped(number, units));
}

std::string typeset(std::string text) {
    if (!text.empty() && text.front() == '-') text.replace(0, 1, minus_sign);
    return text;
}

} // namespace shimlight::view
