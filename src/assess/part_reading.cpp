// SPDX-License-Identifier: MIT
#include "assess/part_reading.hpp"

#include "assess/phrases.hpp"
#include "assess/solve_memory.hpp"
#include "assess/surfaces.hpp"
#include "opening/covered_glass.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::CasingSeal;
using opening::Coating;
using opening::FrameMaterial;
using opening::Part;
using opening::Pockets;
using opening::Position;
using opening::SashFit;
using opening::ShimFill;
using opening::SpacerKind;
using opening::WallCavity;

/// What is possible, as for the glass (reading.cpp): estimates.
constexpr double outdoor_step_k = 6, curtain_k = 8, heater_k = 12, most_wind_m_s = 15;
constexpr double soft_coating = 0.05; // emissivity of what is sold most, common practice
constexpr double least_effect_k = 0.1, near_enough_k = 0.1; // a draft's own error
constexpr int most_steps = 2;                               // of the false position, past the ends

/// One assumption of the computation.
struct Candidate {
    std::string_view name;
    std::string_view word; ///< begins the sentence
    Kind kind;
    bool (*matters)(const Case&, Part);
    double (*get)(const Case&);
    void (*set)(Case&, double);
};

bool everywhere(const Case&, Part) {
    return true;
}
bool in_joint(const Case&, Part part) {
    return part != Part::glass_edge;
}
bool at_edge(const Case& c, Part part) {
    return part == Part::glass_edge && c.opening.glazing.panes > 1;
}
bool is_empty_cavity(const Case& c) {
    return c.opening.wall.cavity == WallCavity::empty;
}

constexpr Candidate candidates[] = {
    {"outdoor air", phrases::outdoor_air_there, Kind::temperature, everywhere,
     [](const Case& c) { return c.weather.outside_c; },
     [](Case& c, double v) { c.weather.outside_c = v; }},
    {"air before the part", phrases::air_before_part, Kind::temperature, everywhere,
     [](const Case& c) { return c.room.air_c; }, [](Case& c, double v) { c.room.air_c = v; }},
    {"wind", phrases::wind_in_cracks, Kind::speed, everywhere,
     [](const Case& c) { return c.weather.wind_m_s; },
     [](Case& c, double v) { c.weather.wind_m_s = v; }},
    {"shim filling", phrases::shim_filling, Kind::yes_no, in_joint,
     [](const Case& c) { return c.opening.shim.fill != ShimFill::open ? 1.0 : 0.0; },
     [](Case& c, double v) { c.opening.shim.fill = v < 0.5 ? ShimFill::open : ShimFill::foamed; }},
    {"casing caulk", phrases::casing_caulk, Kind::yes_no, in_joint,
     [](const Case& c) { return c.opening.casing.seal == CasingSeal::caulked ? 1.0 : 0.0; },
     [](Case& c, double v) {
         c.opening.casing.seal = v < 0.5 ? CasingSeal::unsealed : CasingSeal::caulked;
     }},
    {"sash play", phrases::sash_play, Kind::yes_no, everywhere,
     [](const Case& c) { return c.opening.sash.fit == SashFit::loose ? 1.0 : 0.0; },
     [](Case& c, double v) { c.opening.sash.fit = v < 0.5 ? SashFit::tight : SashFit::loose; }},
    {"wall insulation", phrases::wall_insulation, Kind::yes_no, in_joint,
     [](const Case& c) { return is_empty_cavity(c) ? 0.0 : 1.0; },
     [](Case& c, double v) {
         c.opening.wall.cavity = v < 0.5 ? WallCavity::empty : WallCavity::filled;
     }},
    {"weight pockets", phrases::weight_pockets, Kind::yes_no,
     [](const Case& c, Part part) {
         return in_joint(c, part) && (is_wood(c.opening.frame) ||
                                      c.opening.installation == opening::Installation::insert);
     },
     [](const Case& c) { return c.opening.pockets != Pockets::none ? 1.0 : 0.0; },
     [](Case& c, double v) { c.opening.pockets = v < 0.5 ? Pockets::none : Pockets::empty; }},
    // Frames that look alike from the room.
    {"frame steel", phrases::frame_steel, Kind::yes_no,
     [](const Case& c, Part) {
         return c.opening.frame == FrameMaterial::vinyl ||
                c.opening.frame == FrameMaterial::vinyl_steel;
     },
     [](const Case& c) { return c.opening.frame == FrameMaterial::vinyl_steel ? 1.0 : 0.0; },
     [](Case& c, double v) {
         c.opening.frame = v < 0.5 ? FrameMaterial::vinyl : FrameMaterial::vinyl_steel;
     }},
    {"thermal break", phrases::frame_break, Kind::yes_no,
     [](const Case& c, Part) { return is_metal(c.opening.frame); },
     [](const Case& c) { return c.opening.frame == FrameMaterial::aluminium_break ? 1.0 : 0.0; },
     [](Case& c, double v) {
         c.opening.frame = v < 0.5 ? FrameMaterial::aluminium : FrameMaterial::aluminium_break;
     }},
    {"frame cladding", phrases::frame_cladding, Kind::yes_no,
     [](const Case& c, Part) { return is_wood(c.opening.frame); },
     [](const Case& c) { return c.opening.frame == FrameMaterial::clad_wood ? 1.0 : 0.0; },
     [](Case& c, double v) {
         c.opening.frame = v < 0.5 ? FrameMaterial::wood : FrameMaterial::clad_wood;
     }},
    {"spacer", phrases::better_spacer, Kind::yes_no, at_edge,
     [](const Case& c) { return c.opening.glazing.spacer != SpacerKind::aluminium ? 1.0 : 0.0; },
     [](Case& c, double v) {
         c.opening.glazing.spacer = v < 0.5 ? SpacerKind::aluminium : SpacerKind::foam;
     }},
    {"coating", phrases::coating, Kind::yes_no, at_edge,
     [](const Case& c) { return c.opening.glazing.coating != Coating::none ? 1.0 : 0.0; },
     [](Case& c, double v) {
         auto& g = c.opening.glazing;
         g.emissivity = soft_coating;
         g.coating = v < 0.5 ? Coating::none : g.panes == 3 ? Coating::faces2and5 : Coating::face3;
     }},
};

/// Both ends of what is possible; the same one twice for yes and no.
Span possible(const Candidate& a, double assumed) {
    if (a.kind == Kind::yes_no) return {1 - assumed, 1 - assumed};
    if (a.kind == Kind::speed) return {0, std::max(assumed, most_wind_m_s)};
    const bool outdoors = a.word == phrases::outdoor_air_there;
    return outdoors ? Span{assumed - outdoor_step_k, assumed + outdoor_step_k}
                    : Span{assumed - curtain_k, assumed + heater_k};
}

/// The coldest place of the part in one cut of a case, counted.
class Solver {
  public:
    explicit Solver(Part part) : part_(part) {}

    /// Nothing where the cut has no such part or cannot be solved.
    std::optional<double> coldest_c(const Case& c, Position position) {
        Slot slot(position, opening::Surroundings::wall);
        slot.want(c, opening::covered_glass(c).glass);
        slot.solve(section::Accuracy::draft, Pace::resting);
        ++solves_;
        if (!slot.solved()) return std::nullopt;
        SolvedCuts cuts;
        cuts[static_cast<std::size_t>(position)] = slot.solved();
        for (const PartSurface& surface : part_surfaces(cuts, c))
            if (surface.part == part_) return surface.surface_c;
        return std::nullopt;
    }
    int solves() const { return solves_; }

  private:
    Part part_;
    int solves_ = 0;
};

struct Point {
    double value, c;
};

/// From `known` on one side of `target` and `end` on the other towards where it is met.
template <class F> Point false_position(Point known, Point end, double target, F&& f) {
    Point best = end;
    for (int i = 0; i < most_steps; ++i) {
        const double share = (target - known.c) / (end.c - known.c);
        best.value = known.value + share * (end.value - known.value);
        best.c = f(best.value);
        if (std::fabs(best.c - target) < near_enough_k) break;
        ((best.c < target) == (known.c < target) ? known : end) = best;
    }
    return best;
}

/// Where a candidate brings the part nearest to `target`: at `likely`, the end that should move it
/// there, at the other end if that one moves it away, or between where it is met on the way.
template <class F> Point nearest(Point assumed, double likely, double other, double target, F&& f) {
    const auto apart_k = [&](const Point& p) { return std::fabs(p.c - target); };
    Point end{likely, f(likely)};
    if (likely != other && apart_k(end) >= apart_k(assumed) &&
        (end.c < target) == (assumed.c < target)) {
        const Point far{other, f(other)};
        if (apart_k(far) < apart_k(end)) end = far;
    }
    const bool passed = (end.c < target) != (assumed.c < target);
    return passed && likely != other ? false_position(assumed, end, target, f) : end;
}

Explanation explain(const Candidate& a, const Case& c, Point nearest, double computed_c,
                    double measured_c, double tolerance_k, bool fahrenheit) {
    Explanation e;
    e.assumption = a.name;
    e.assumed = a.get(c);
    e.needed = nearest.value;
    e.left_k = left_over_k(measured_c - nearest.c);
    e.explains = std::fabs(e.left_k) <= tolerance_k;
    tell(e, a.kind, a.word, measured_c - computed_c, fahrenheit);
    return e;
}

void explain_all(PartReading& reading, const Case& c, Part part, double measured_c, Solver& solver,
                 bool fahrenheit) {
    const double tolerance_k = tolerance_of(reading.range_k);
    for (const Candidate& a : candidates) {
        if (!a.matters(c, part)) continue;
        const double assumed = a.get(c);
        const auto with = [&](double value) {
            Case changed = c;
            a.set(changed, value);
            return solver.coldest_c(changed, reading.position).value_or(reading.computed_c);
        };
        const Span span = possible(a, assumed);
        // Wind cools, warmer air warms.
        const bool up = (measured_c > reading.computed_c) == (a.kind == Kind::temperature);
        const Point found = nearest({assumed, reading.computed_c}, up ? span.high : span.low,
                                    up ? span.low : span.high, measured_c, with);
        if (std::fabs(found.c - reading.computed_c) < least_effect_k) continue;
        add(reading, explain(a, c, found, reading.computed_c, measured_c, tolerance_k, fahrenheit));
    }
}

} // namespace

PartReading read_part(const Case& c, Part part, const Measured& measured,
                      const physics::InfraredReading* infrared, bool fahrenheit) {
    Solver solver(part);
    PartReading reading;
    std::optional<double> coldest_c;
    for (int i = 0; i < opening::position_count; ++i) {
        const auto position = static_cast<Position>(i);
        const std::optional<double> here_c = solver.coldest_c(c, position);
        if (!here_c || (coldest_c && *here_c >= *coldest_c)) continue;
        coldest_c = here_c;
        reading.position = position;
    }
    static_cast<SurfaceReading&>(reading) = compared(measured, coldest_c.value_or(measured.c));
    if (reading.compared != Compared::as_computed) {
        explain_all(reading, c, part, measured.c, solver, fahrenheit);
        if (infrared)
            add(reading, explain_emissivity(*infrared, reading.computed_c,
                                            tolerance_of(reading.range_k), fahrenheit));
    }
    summarise(reading, part, fahrenheit);
    reading.solves = solver.solves();
    return reading;
}

} // namespace shimlight::assess
