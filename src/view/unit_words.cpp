// SPDX-License-Identifier: MIT
// Sentences of the calculations speak SI; here they learn the reader's units.
#include "view/units.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace shimlight::view {
namespace {

struct Unit {
    std::string_view si;
    double factor;
    const char* us;
    double offset = 0;
};
// The longer before those they begin with.
constexpr Unit units_of_words[] = {{"K", 1.8, "°F"},
                                   {"°C", 1.8, "°F", 32},
                                   {"W/m²K", 1 / 5.678263, "Btu/h·ft²·°F"},
                                   {"W/m2K", 1 / 5.678263, "Btu/h·ft²·°F"},
                                   {"W/m²", 1 / 3.154591, "Btu/h·ft²"},
                                   {"W/mK", 1 / 1.730735, "Btu/h·ft·°F"},
                                   {"m/s", 1 / 0.00508, "ft/min"},
                                   {"mm", 1 / 25.4, "in"},
                                   {"m", 1 / 0.3048, "ft"}};

bool digit(char c) {
    return c >= '0' && c <= '9';
}

/// Two significant digits, as such limits are known.
std::string rounded(double v) {
    if (v >= 100) v = 10 * std::round(v / 10);
    char text[24];
    std::snprintf(text, sizeof text, v >= 100 ? "%.0f" : "%.2g", v);
    return text;
}

std::size_t number_end(std::string_view s, std::size_t at) {
    while (at < s.size() &&
           (digit(s[at]) || (s[at] == '.' && at + 1 < s.size() && digit(s[at + 1]))))
        ++at;
    return at;
}

/// The unit at this place, if a word ends after it; one told in both systems stays.
const Unit* unit_at(std::string_view s, std::size_t at) {
    for (const Unit& unit : units_of_words) {
        if (s.substr(at, unit.si.size()) != unit.si) continue;
        const std::string_view after = s.substr(at + unit.si.size());
        const char next = after.empty() ? '.' : after[0];
        const bool goes_on = (next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z') ||
                             next == '/' || next == '-' || static_cast<unsigned char>(next) > 127;
        const bool in_both = after.size() > 2 && after.substr(0, 2) == " (" && digit(after[2]);
        if (!goes_on && !in_both) return &unit;
    }
    return nullptr;
}

double value(std::string_view s) {
    return std::strtod(std::string(s).c_str(), nullptr);
}

} // namespace

std::string in_units(std::string_view s, Units units) {
    if (units != Units::us) return std::string(s);
    std::string out;
    for (std::size_t i = 0; i < s.size();) {
        if (!digit(s[i])) {
            out += s[i++];
            continue;
        }
        const std::size_t end = number_end(s, i);
        std::size_t last = i, last_end = end; // of "1 to 4 m" the 4
        if (s.substr(end, 4) == " to ") {
            last = end + 4;
            last_end = number_end(s, last);
        }
        const Unit* unit =
            last_end > last && s.substr(last_end, 1) == " " ? unit_at(s, last_end + 1) : nullptr;
        const bool part = i > 0 && (s[i - 1] == '/' || s[i - 1] == '.'); // of a fraction
        if (!unit || part) {
            out += s.substr(i, end - i);
            i = end;
            continue;
        }
        const auto shown = [&](std::size_t from, std::size_t to) {
            return rounded(value(s.substr(from, to - from)) * unit->factor + unit->offset);
        };
        out += shown(i, end);
        if (last != i) out += " to " + shown(last, last_end);
        out += std::string(" ") + unit->us;
        i = last_end + 1 + unit->si.size();
    }
    return out;
}

} // namespace shimlight::view
