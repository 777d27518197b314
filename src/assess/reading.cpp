// SPDX-License-Identifier: MIT
#include "assess/reading.hpp"

#include "assess/phrases.hpp"
#include "assess/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::Coating;
using opening::Storm;

constexpr double computation_error_k = 1; // estimate, see the header
constexpr int halvings = 40;              // of a span of tens of kelvin: to 1e-10
constexpr double soft_coating = 0.05;     // emissivity of what is sold most, common practice

/// What is possible, as steps from the assumed value or as ends. Estimates: a thermometer in the
/// yard or a forecast is within 6 K of the air at the pane; a drawn curtain holds air up to 8 K
/// colder before the glass, a heater below it up to 12 K warmer.
constexpr double outdoor_step_k = 6, curtain_k = 8, heater_k = 12;
constexpr double most_wind_m_s = 15;
// Sun of 800 W/m² leaves about so much in the room-side pane at most.
constexpr double most_sun_w_m2 = 150;

enum class Kind { temperature, speed, share, emissivity, heat, yes_no };

struct Span {
    double low, high;
};

/// A case with the sun on its glass, which no case has.
struct Situation : Case {
    double sun_w_m2 = 0; ///< taken up by the room-side pane
};

/// One assumption of the computation.
struct Assumption {
    std::string_view name;
    std::string_view word; ///< begins the sentence
    Kind kind;
    bool (*matters)(const Situation&);
    double (*get)(const Situation&);
    void (*set)(Situation&, double);
    Span (*possible)(double assumed);
};

bool always(const Situation&) {
    return true;
}
bool has_gas(const Situation& c) {
    const auto& g = c.opening.glazing;
    return g.panes > 1 && g.gas != physics::Gas::air;
}
bool is_coated(const Situation& c) {
    return c.opening.glazing.coating != Coating::none;
}
Span no_or_yes(double assumed) {
    return {1 - assumed, 1 - assumed};
}

constexpr Assumption assumptions[] = {
    {"outdoor air", phrases::outdoor_air, Kind::temperature, always,
     [](const Situation& c) { return c.weather.outside_c; },
     [](Situation& c, double v) { c.weather.outside_c = v; },
     [](double at) {
         return Span{at - outdoor_step_k, at + outdoor_step_k};
     }},
    {"wind", phrases::wind, Kind::speed, always,
     [](const Situation& c) { return c.weather.wind_m_s; },
     [](Situation& c, double v) { c.weather.wind_m_s = v; },
     [](double at) {
         return Span{0, std::max(at, most_wind_m_s)};
     }},
    {"air before the glass", phrases::air_before, Kind::temperature, always,
     [](const Situation& c) { return c.room.air_c; },
     [](Situation& c, double v) { c.room.air_c = v; },
     [](double at) {
         return Span{at - curtain_k, at + heater_k};
     }},
    {"sun", phrases::sun, Kind::heat, always, [](const Situation& c) { return c.sun_w_m2; },
     [](Situation& c, double v) { c.sun_w_m2 = v; },
     [](double) {
         return Span{0, most_sun_w_m2};
     }},
    {"gas", phrases::gas, Kind::share, has_gas,
     [](const Situation& c) { return c.opening.glazing.gas_share; },
     [](Situation& c, double v) { c.opening.glazing.gas_share = v; },
     [](double) {
         return Span{0, 1};
     }},
    {"coating", phrases::coating, Kind::yes_no,
     [](const Situation& c) { return c.opening.glazing.panes > 1; },
     [](const Situation& c) { return is_coated(c) ? 1.0 : 0.0; },
     [](Situation& c, double v) {
         auto& g = c.opening.glazing;
         g.emissivity = soft_coating;
         g.coating = v < 0.5 ? Coating::none : g.panes == 3 ? Coating::faces2and5 : Coating::face3;
     },
     no_or_yes},
    {"storm panel", phrases::storm_panel, Kind::yes_no, always,
     [](const Situation& c) { return c.opening.glazing.storm != Storm::none ? 1.0 : 0.0; },
     [](Situation& c, double v) { c.opening.glazing.storm = v < 0.5 ? Storm::none : Storm::clear; },
     no_or_yes},
};

double computed_glass_c(const Situation& c) {
    physics::GlazingSide outside, inside;
    outside.air_c = c.weather.outside_c;
    outside.wind_m_s = c.weather.wind_m_s;
    inside.air_c = c.room.air_c;
    const physics::GlazingStack stack = opening::glazing_stack(c.opening);
    physics::AbsorbedSun sun{};
    sun[stack.pane_count - 1] = c.sun_w_m2;
    return physics::glazing_detailed(stack, outside, inside, sun).faces_c[2 * stack.pane_count - 1];
}

std::string value_in_words(Kind kind, double value, bool fahrenheit) {
    switch (kind) {
    case Kind::temperature:
        return temperature_in_words(value, fahrenheit);
    case Kind::speed:
        return speed_in_words(value, fahrenheit);
    case Kind::share:
        return percent_in_words(value);
    case Kind::emissivity:
        return "0." + std::to_string(100 + std::lround(100 * value)).substr(1);
    case Kind::heat:
        return std::to_string(std::lround(value)) + "\u00a0W/m²";
    case Kind::yes_no:
        break;
    }
    return "";
}

/// Where f, which rises or falls over the span, meets `target`; its nearest end when it does not.
template <class F> double meet(Span span, double target, F&& f) {
    const double at_low = f(span.low), at_high = f(span.high);
    const bool rises = at_high > at_low;
    if ((rises ? at_low : at_high) >= target) return rises ? span.low : span.high;
    if ((rises ? at_high : at_low) <= target) return rises ? span.high : span.low;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (span.low + span.high) / 2;
        ((f(middle) < target) == rises ? span.low : span.high) = middle;
    }
    return (span.low + span.high) / 2;
}

/// `difference_k` is what is to be explained.
void tell(Explanation& e, Kind kind, std::string_view word, double difference_k, bool fahrenheit) {
    using namespace phrases;
    const std::string needed = value_in_words(kind, e.needed, fahrenheit);
    const std::string assumed = value_in_words(kind, e.assumed, fahrenheit);
    const std::string left = difference_in_words(std::fabs(e.left_k), fahrenheit);
    if (!e.explains && std::fabs(e.left_k) >= std::fabs(difference_k))
        e.sentence = fill(wrong_way, {word});
    else if (kind == Kind::yes_no)
        e.sentence = fill(e.explains ? there_explains : there_leaves,
                          {word, e.needed < 0.5 ? missing : unseen, left});
    else
        e.sentence = fill(e.explains ? explains : leaves, {word, needed, assumed, left});
}

Explanation explain(const Assumption& a, const Situation& c, double measured_c, double tolerance_k,
                    bool fahrenheit) {
    const auto with = [&](double value) {
        Situation changed = c;
        a.set(changed, value);
        return computed_glass_c(changed);
    };
    Explanation e;
    e.assumption = a.name;
    e.assumed = a.get(c);
    e.needed = meet(a.possible(e.assumed), measured_c, with);
    e.left_k = measured_c - with(e.needed);
    e.explains = std::fabs(e.left_k) <= tolerance_k;
    tell(e, a.kind, a.word, measured_c - computed_glass_c(c), fahrenheit);
    return e;
}

/// The surface's emissivity that would make the reading show the computed glass. A reading at the
/// temperature of what mirrors says the same whatever the emissivity.
Explanation explain_emissivity(const physics::InfraredReading& reading, double computed_c,
                               double tolerance_k, bool fahrenheit) {
    constexpr Span possible{0.1, 0.97}; // a coated face … dirt, water or tape on glass
    const auto shown = [&](double emissivity) {
        physics::InfraredReading r = reading;
        r.surface_emissivity = emissivity;
        return physics::infrared_surface_c(r.reading_c, r);
    };
    Explanation e;
    e.assumption = "emissivity";
    e.assumed = reading.surface_emissivity;
    e.needed = meet(possible, computed_c, shown);
    e.left_k = shown(e.needed) - computed_c;
    e.explains = std::fabs(e.left_k) <= tolerance_k;
    tell(e, Kind::emissivity, phrases::emissivity, shown(e.assumed) - computed_c, fahrenheit);
    return e;
}

std::string summary(const GlassReading& glass, bool fahrenheit) {
    const std::string range = difference_in_words(glass.range_k, fahrenheit);
    if (glass.compared == Compared::as_computed) return fill(phrases::as_computed, {range});
    std::size_t explaining = 0;
    for (const Explanation& e : glass.explanations)
        explaining += e.explains ? 1 : 0;
    return fill(glass.compared == Compared::colder ? phrases::reads_colder : phrases::reads_warmer,
                {difference_in_words(std::fabs(glass.difference_k), fahrenheit), range}) +
           fill(explaining == 0   ? phrases::no_assumption
                : explaining == 1 ? phrases::one_assumption
                                  : phrases::some_assumptions,
                {std::to_string(explaining)});
}

double tolerance_of(double range_k) {
    return std::hypot(range_k, computation_error_k);
}

} // namespace

Compared compare_reading(double measured_c, double range_k, double computed_c) {
    const double difference_k = measured_c - computed_c, tolerance_k = tolerance_of(range_k);
    return difference_k < -tolerance_k  ? Compared::colder
           : difference_k > tolerance_k ? Compared::warmer
                                        : Compared::as_computed;
}

GlassReading read_glass(const Case& as_told, const physics::InfraredReading& reading,
                        bool fahrenheit) {
    const double measured_c = physics::infrared_surface_c(reading.reading_c, reading);
    const physics::InfraredRange range = physics::infrared_range(reading);
    const Situation c{as_told};
    GlassReading result;
    result.computed_c = computed_glass_c(c);
    result.difference_k = measured_c - result.computed_c;
    result.range_k = result.difference_k > 0 ? measured_c - range.surface_low_c
                                             : range.surface_high_c - measured_c;
    result.compared = compare_reading(measured_c, result.range_k, result.computed_c);
    if (result.compared == Compared::as_computed) {
        result.sentence = summary(result, fahrenheit);
        return result;
    }
    const double tolerance_k = tolerance_of(result.range_k);
    // Those that explain first, each kind in the order of the table.
    std::size_t explaining = 0;
    const auto add = [&](Explanation e) {
        const std::size_t place = e.explains ? explaining++ : result.explanations.size();
        result.explanations.insert(result.explanations.begin() + static_cast<std::ptrdiff_t>(place),
                                   std::move(e));
    };
    for (const Assumption& a : assumptions)
        if (a.matters(c)) add(explain(a, c, measured_c, tolerance_k, fahrenheit));
    add(explain_emissivity(reading, result.computed_c, tolerance_k, fahrenheit));
    result.sentence = summary(result, fahrenheit);
    return result;
}

std::optional<double> computed_part_c(const Assessment& result, opening::Part part) {
    for (const PartSurface& surface : result.parts)
        if (surface.part == part) return surface.surface_c;
    return std::nullopt;
}

} // namespace shimlight::assess
