// SPDX-License-Identifier: MIT
#include "view/range_words.hpp"

#include "assess/words.hpp"
#include "opening/cut.hpp"

#include <algorithm>
#include <array>

namespace shimlight::view {
namespace {

using assess::Assessment;
using assess::fill;
using opening::Case;

enum class As { temperature, difference, speed, length, vote };

std::string text(As as, double value, Units units) {
    switch (as) {
    case As::temperature:
        return format_tenths(value, units);
    case As::difference:
        return format_kelvin(value, units);
    case As::speed:
        return format_speed(value, units);
    case As::length:
        return format(Quantity::long_m, value, units);
    case As::vote:
        break;
    }
    return format(Quantity::number, value, units);
}

/// Of two places the one that lies farther from the middle of the range.
double farther(double a, double b, double low, double high) {
    const double middle = (low + high) / 2;
    return std::max(a - middle, middle - a) > std::max(b - middle, middle - b) ? a : b;
}

double glass_colder_k(const Case& c, const Assessment& a) {
    const double face_c =
        a.covering.covered ? a.covering.front_c
                           : a.glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
    return c.room.air_c - face_c;
}

struct Told {
    std::string_view part; ///< of the warning, by which it is known
    As as;
    double low, high; ///< of the range, SI
    double (*of)(const Case&, const Assessment&);
};

constexpr Told tolds[] = {
    {"Ankle draft was studied at ankle air speeds", As::speed, 0.1, 0.65,
     [](const Case&, const Assessment& a) { return a.seat.ankle_speed_m_s; }},
    {"Ankle draft was studied with ankle air", As::temperature, 16.5, 22.5,
     [](const Case&, const Assessment& a) { return a.seat.ankle_air_c; }},
    {"draft rate is for local air of 20", As::temperature, 20, 26,
     [](const Case&, const Assessment& a) {
         return farther(a.seat.ankle_air_c, a.seat.neck_air_c, 20, 26);
     }},
    {"draft rate is for local air speeds", As::speed, 0, 0.5,
     [](const Case&, const Assessment& a) {
         return std::max(a.seat.ankle_speed_m_s, a.seat.neck_speed_m_s);
     }},
    {"PMV is for air of", As::temperature, 10, 30,
     [](const Case& c, const Assessment&) { return c.room.air_c; }},
    {"PMV is for mean radiant", As::temperature, 10, 40,
     [](const Case&, const Assessment& a) { return a.seat.mean_radiant_c; }},
    {"PMV is meant for votes", As::vote, -2, 2,
     [](const Case&, const Assessment& a) { return a.seat.pmv; }},
    {"Radiant asymmetry toward a cool wall", As::difference, -15, 15,
     [](const Case&, const Assessment& a) { return a.seat.asymmetry_k; }},
    {"known for glass of about 1 to 4 m", As::length, 1, 4,
     [](const Case& c, const Assessment&) { return c.opening.height_m; }},
    {"known for glass up to about 20 K", As::difference, -1e9, 20, glass_colder_k},
    {"known to about 2 m", As::length, 0, 2,
     [](const Case& c, const Assessment&) {
         return std::max(c.opening.sill_m, 0.0) + c.room.seat_distance_m;
     }},
};

/// Words by which a sentence tells of a range; "outside": it says so itself.
constexpr std::string_view of_ranges[] = {"is for ",    "is meant for ", "was studied ",
                                          "known for ", "known to ",     "is tested ",
                                          "are for ",   "the upper end", "the lower end"};
constexpr std::string_view says_so[] = {"is outside", "here it is less", "above a sill",
                                        "leaning glass is"};

bool has_any(std::string_view sentence, auto&& words) {
    return std::any_of(std::begin(words), std::end(words), [sentence](std::string_view one) {
        return sentence.find(one) != std::string_view::npos;
    });
}

} // namespace

std::string told_warning(std::string_view warning, const Case& c, const Assessment& a,
                         Units units) {
    std::string words = in_units(warning, units);
    if (!has_any(warning, of_ranges) || has_any(warning, says_so)) return words;
    for (const Told& one : tolds) {
        if (warning.find(one.part) == std::string_view::npos) continue;
        const double value = one.of(c, a);
        // The frame may be what lies outside: then the glass's number would say the contrary.
        if (value >= one.low && value <= one.high) break;
        return words + fill(" This case: {0}, outside that range.", {text(one.as, value, units)});
    }
    return words + " This case lies outside that range.";
}

std::string card_case(std::string_view key, const Assessment& a, Units units) {
    const physics::SeatResult& s = a.seat;
    struct Span {
        As as;
        double value, low, high;
    };
    std::array<Span, 2> spans{};
    std::size_t count = 0;
    if (key == "ankles") spans[count++] = {As::speed, s.ankle_speed_m_s, 0.1, 0.6};
    if (key == "neck") {
        spans[count++] = {As::temperature, s.neck_air_c, 20, 26};
        spans[count++] = {As::speed, s.neck_speed_m_s, 0, 0.5};
    }
    if (key == "asymmetry_pct") spans[count++] = {As::difference, s.asymmetry_k, -15, 15};
    std::string words;
    for (std::size_t i = 0; i < count; ++i) {
        const Span& one = spans[i];
        const bool inside = one.value >= one.low && one.value <= one.high;
        words += fill(words.empty() ? " This case: {0}, {1} that range" : "; {0}, {1}",
                      {text(one.as, one.value, units), inside ? "inside" : "outside"});
    }
    return words.empty() ? words : words + ".";
}

} // namespace shimlight::view
