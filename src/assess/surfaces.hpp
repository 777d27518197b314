// SPDX-License-Identifier: MIT
// What is read off the solved cuts along the inside surface.
#pragma once

#include "assess/assessment.hpp"

namespace shimlight::assess {

using SolvedCuts = std::array<std::shared_ptr<const SolvedCut>, opening::position_count>;

/// Coldest place of a part's inside faces in this cut, their ends and joints included: what may get
/// wet first is the lowest temperature of the surface (ISO 13788:2012, ISO 10211:2017). Empty where
/// the cut has none of it.
std::optional<section::ColdestPoint> coldest_of_part(const SolvedCut& solved, opening::Part part);

/// Heat that enters a part's inside faces in this cut, W per metre.
double heat_of_part_w_m(const SolvedCut& solved, opening::Part part);

/// Coldest place of each part over all cuts there are, with what it means for water.
std::vector<PartSurface> part_surfaces(const SolvedCuts& cuts, const opening::Case& c);

/// Parts by the room humidity that wets them, lowest first; those that none wets are left out.
std::vector<opening::Part> wetting_order(const std::vector<PartSurface>& parts);

/// Mean temperature of a part's inside faces over all cuts; `otherwise_c` when there are none.
double mean_surface_c(const SolvedCuts& cuts, opening::Part part, double otherwise_c);

/// Mean temperature along the shim space over all cuts, with no air moving; `otherwise_c` when
/// there are none.
double mean_joint_c(const SolvedCuts& cuts, double otherwise_c);

} // namespace shimlight::assess
