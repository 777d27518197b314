// SPDX-License-Identifier: MIT
// Readings of one visit, out of what was written down.
#pragma once

#include "assess/site.hpp"
#include "house/entries.hpp"

namespace shimlight::house {

enum class Visit { before, after }; ///< the work

/// Of glass, its edge, frame and casing; of the air inside and outdoors.
inline constexpr std::size_t visit_entries = 6;
using VisitEntries = std::span<const Entry, visit_entries>;
VisitEntries entries_of(Visit visit);

/// What was not written down is as `today` says.
assess::SiteReadings site_readings(const Entries& site, const opening::Case& today, Visit visit);

} // namespace shimlight::house
