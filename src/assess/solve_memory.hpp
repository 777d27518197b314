// SPDX-License-Identifier: MIT
// The cuts of one case with their solutions. What a lever did not touch is recognised by its
// painting: the same painting has the same field.
#pragma once

#include "assess/assessment.hpp"

#include <array>
#include <memory>

namespace shimlight::assess {

bool same_painting(const section::Painting& a, const section::Painting& b);

/// One cut: what is wanted, what is solved, and from it the heat beyond the centre of the glass.
struct Slot {
    opening::Position position = opening::Position::sill;
    opening::Surroundings surroundings = opening::Surroundings::wall;
    opening::Cut wanted;
    double glass_u_w_m2k = 0;    ///< centre of glass that `wanted` was painted with
    double undisturbed_w_mk = 0; ///< of the wall in `wanted`; 0 without wall

    std::shared_ptr<const SolvedCut> solved;
    section::Accuracy accuracy = section::Accuracy::draft;
    bool failed = false; ///< the solver refused `wanted`
    double sight_m = 0;  ///< from the cut's wall end to the sight line
    /// Heat per metre and kelvin beyond that of the visible glass and of the undisturbed wall.
    double excess_w_mk = 0;

    /// Solved as painted now, at `least` or better.
    bool fresh(section::Accuracy least) const;
    void solve(section::Accuracy wanted_accuracy);
};

} // namespace shimlight::assess
