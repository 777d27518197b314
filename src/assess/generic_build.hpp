// SPDX-License-Identifier: MIT
// The builds a label is sought among: frame, panes, spacer, gas, kind and place of the coating,
// tint. Two knobs tune each: one sets the U-factor, the glass's thickness the sun.
#pragma once

#include "opening/opening.hpp"

#include <vector>

namespace shimlight::assess {

/// The glass of a build.
struct GlassChoice {
    int panes = 2;
    opening::Coating coating = opening::Coating::none;
    opening::CoatingKind kind = opening::CoatingKind::two_silvers;
    physics::Gas gas = physics::Gas::air;
    opening::Tint tint = opening::Tint::clear;
};

/// All of them with the given number of panes: 1 to 3.
std::vector<GlassChoice> glass_choices(int panes);

/// The U knob runs from `lowest_knob` to `highest_knob`: first more of the gas, then emissivity
/// over its kind's range, then a narrower gap, then gas lost. `usual_knob` is what is sold most.
inline constexpr double lowest_knob = -1, highest_knob = 3;
double usual_knob(const GlassChoice& glass);
inline constexpr double thinnest_m = 0.002, usual_glass_m = 0.003, thickest_m = 0.006;

/// Sets the opening's glass. A higher knob never lowers the U-factor.
void set_glass(opening::Opening& opening, const GlassChoice& glass, double knob,
               double thickness_m);

/// How unusual it is, 0 for the most sold; what is not decided by a label is decided by it.
/// Engineering judgement.
double unusual(const GlassChoice& glass, double knob, double thickness_m);

} // namespace shimlight::assess
