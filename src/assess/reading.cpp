// SPDX-License-Identifier: MIT
#include "assess/reading.hpp"

#include "assess/phrases.hpp"
#include "opening/covered_glass.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::Coating;
using opening::Storm;

constexpr double soft_coating = 0.05; // emissivity of what is sold most, common practice

/// What is possible, as steps from the assumed value or as ends. Estimates: a thermometer in the
/// yard or a forecast is within 6 K of the air at the pane; a drawn curtain holds air up to 8 K
/// colder before the glass, a heater below it up to 12 K warmer.
constexpr double outdoor_step_k = 6, curtain_k = 8, heater_k = 12;
constexpr double most_wind_m_s = 15;
// Sun of 800 W/m² leaves about so much in the room-side pane at most.
constexpr double most_sun_w_m2 = 150;

/// A case with the sun on its glass, which no case has.
struct Situation : Case {
    double sun_w_m2 = 0; ///< taken up by the room-side pane
    /// By the window's own balance, with covering, sky and what leaks behind panels; else that of
    /// the panes alone, panels taken for tight. One and the same for all that is tried.
    bool whole = false;
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
/// By night there is none.
bool may_shine(const Situation& c) {
    return c.weather.sky == opening::Sky::cloudy;
}
bool is_covered(const Situation& c) {
    return c.opening.covering != opening::Covering::none;
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
    {"sun", phrases::sun, Kind::heat, may_shine, [](const Situation& c) { return c.sun_w_m2; },
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
    {"covering", phrases::covering, Kind::yes_no, is_covered, [](const Situation&) { return 1.0; },
     [](Situation& c, double) { c.opening.covering = opening::Covering::none; }, no_or_yes},
    {"clear sky", phrases::clear_sky, Kind::yes_no,
     [](const Situation& c) { return !may_shine(c); }, [](const Situation&) { return 1.0; },
     [](Situation& c, double) { c.weather.sky = opening::Sky::cloudy; }, no_or_yes},
};

double computed_glass_c(const Situation& c) {
    const physics::GlazingStack stack = opening::glazing_stack(c.opening);
    const std::size_t pane = stack.pane_count - 1;
    physics::AbsorbedSun sun{};
    sun[pane] = c.sun_w_m2;
    if (c.whole) return opening::covered_glass(c, 1, sun).glass.faces_c[2 * pane + 1];
    physics::GlazingSide outside, inside;
    outside.air_c = c.weather.outside_c;
    outside.wind_m_s = c.weather.wind_m_s;
    inside.air_c = c.room.air_c;
    return physics::glazing_detailed(stack, outside, inside, sun).faces_c[2 * pane + 1];
}

/// As meet(), for what costs a search of its own: false position, the end that stays halved each
/// time (Illinois). The surface's temperature is nearly straight in what is tried.
template <class F> double meet_costly(Span span, double target, F&& f) {
    constexpr double near_k = 1e-6;
    constexpr int most_steps = 20;
    if (span.low == span.high) return span.low;
    double low_k = f(span.low) - target, high_k = f(span.high) - target;
    if (low_k * high_k >= 0) return std::fabs(low_k) < std::fabs(high_k) ? span.low : span.high;
    double value = span.low, kept = 0; // which end stayed: below or above 0
    for (int i = 0; i < most_steps; ++i) {
        value = span.low + (span.high - span.low) * low_k / (low_k - high_k);
        const double now_k = f(value) - target;
        if (std::fabs(now_k) < near_k) break;
        const bool at_low = (now_k < 0) == (low_k < 0);
        (at_low ? span.low : span.high) = value;
        (at_low ? low_k : high_k) = now_k;
        const double stays = at_low ? 1 : -1;
        if (kept == stays) (at_low ? high_k : low_k) /= 2;
        kept = stays;
    }
    return value;
}

Explanation explain(const Assumption& a, const Situation& c, const SurfaceReading& reading,
                    double measured_c, bool fahrenheit) {
    const auto with = [&](double value) {
        Situation changed = c;
        a.set(changed, value);
        return computed_glass_c(changed);
    };
    Explanation e;
    e.assumption = a.name;
    e.assumed = a.get(c);
    const Span possible = a.possible(e.assumed);
    e.needed = c.whole ? meet_costly(possible, measured_c, with) : meet(possible, measured_c, with);
    e.left_k = left_over_k(measured_c - with(e.needed));
    e.explains = std::fabs(e.left_k) <= tolerance_of(reading.range_k);
    tell(e, a.kind, a.word, reading.difference_k, fahrenheit);
    return e;
}

} // namespace

SurfaceReading read_glass(const Case& as_told, const physics::InfraredReading& reading,
                          bool fahrenheit) {
    const Measured seen = measured(reading);
    Situation c{as_told};
    c.whole = is_covered(c) || !may_shine(c);
    SurfaceReading result = compared(seen, computed_glass_c(c));
    if (result.compared != Compared::as_computed) {
        const double tolerance_k = tolerance_of(result.range_k);
        for (const Assumption& a : assumptions)
            if (a.matters(c)) add(result, explain(a, c, result, seen.c, fahrenheit));
        add(result, explain_emissivity(reading, result.computed_c, tolerance_k, fahrenheit));
    }
    summarise(result, opening::Part::glass_centre, fahrenheit);
    return result;
}

std::optional<double> computed_part_c(const Assessment& result, opening::Part part) {
    for (const PartSurface& surface : result.parts)
        if (surface.part == part) return surface.surface_c;
    return std::nullopt;
}

} // namespace shimlight::assess
