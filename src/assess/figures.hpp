// SPDX-License-Identifier: MIT
// Every figure of an answer that can be named: in a lesson, in a card that explains it. The name is
// for people; the key is what a lesson's text and the cards use.
#pragma once

#include "assess/assessment.hpp"
#include "opening/opening.hpp"

#include <span>
#include <string_view>

namespace shimlight::assess {

/// What the number is, so that the edge knows how to show it.
enum class FigureKind {
    temperature_c,
    share,     ///< 0…1, shown in per cent
    percent,   ///< 0…100
    humidity,  ///< 0…1; 1 is never wet
    u_w_m2k,   ///< W/m²K
    speed_m_s, ///< of air
    flow_m3_s, ///< positive comes in
    heat_w,
    energy_kwh,
    money, ///< in the house's currency
    pressure_pa,
    ratio,        ///< 0…1, shown as is: SHGC
    difference_k, ///< of two temperatures
    vote          ///< −3…3, PMV
};

/// What must be computed anew for a changed case. From `sections` on cuts: all; those of the unit
/// alone; all in the wall; those in which a part is coldest, or nearly so.
enum class Needs {
    glass,
    storm,
    sun,
    room,
    leak,
    seat,
    sections,
    unit,
    wall,
    coldest_centre,
    coldest_edge,
    coldest_frame,
    coldest_casing,
    coldest_wall
};

struct Figure {
    std::string_view key, name;
    FigureKind kind;
    /// NaN where the figure does not exist in this case.
    double (*read)(const opening::Case&, const Assessment&);
    Needs needs = Needs::sections;
};

/// All of them, in a fixed order.
std::span<const Figure> figures();
inline constexpr std::size_t figure_count = 55;

/// The cuts that a figure which needs some is read from, in a case near the one of `now`.
CutSet cuts_of(const Figure& figure, const Assessment& now);

/// nullptr when there is none of that key.
const Figure* find_figure(std::string_view key);

} // namespace shimlight::assess
