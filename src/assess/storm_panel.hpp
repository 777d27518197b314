// SPDX-License-Identifier: MIT
// Water on the inside of a storm panel: room air that leaks out through the sash reaches it.
#pragma once

#include "assess/assessment.hpp"

#include <optional>

namespace shimlight::assess {

/// The centre of the panel's inner face as a part of its own; empty without a storm panel. Its
/// limits are those of the room's humidity with the air between sash and panel mixed as it leaks
/// now.
std::optional<PartSurface> storm_surface(const opening::Case& c,
                                         const physics::GlazingResult& glass);

inline constexpr std::string_view storm_estimate =
    "Water on the storm panel is an estimate: outdoor air is taken at 85 % humidity, both cracks "
    "as "
    "spread evenly.";

} // namespace shimlight::assess
