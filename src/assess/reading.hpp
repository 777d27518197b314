// SPDX-License-Identifier: MIT
// A temperature measured on the window beside the computed one, and what would explain a
// difference.
#pragma once

#include "assess/assessment.hpp"
#include "physics/thermography.hpp"

#include <optional>
#include <string>
#include <vector>

namespace shimlight::assess {

/// In the order of the answers of the reading tests (see find_out_rows.hpp).
enum class Compared { colder, as_computed, warmer };

/// `range_k`: how far the reading may be off. The computation may be off by 1 K besides, an
/// estimate (inner film, height of the glass, wind at the pane); both combine as root of squares.
Compared compare_reading(double measured_c, double range_k, double computed_c);

/// One assumption, and what it would have to be for the computed glass to be as the reading.
struct Explanation {
    std::string_view assumption;    ///< "outdoor air", "wind", "gas", …
    bool explains = false;          ///< within what is possible; else `needed` is its nearest limit
    double assumed = 0, needed = 0; ///< °C, m/s, W/m², share or emissivity; 0 and 1: no, yes
    double left_k = 0;              ///< difference that would stay
    std::string sentence;
};

struct GlassReading {
    double computed_c = 0;   ///< centre of glass, room side
    double difference_k = 0; ///< reading minus computed
    double range_k = 0;      ///< of the reading, on the side of the difference
    Compared compared = Compared::as_computed;
    /// Nothing is accused when the reading is as computed: then it is empty. Otherwise every single
    /// assumption that could matter in this case, those that explain first.
    std::vector<Explanation> explanations;
    std::string sentence; ///< how much it differs, and how many assumptions would explain it
};

/// A reading of the room-side glass. `reading` has its own airs; the computation takes the case's.
GlassReading read_glass(const opening::Case& c, const physics::InfraredReading& reading,
                        bool fahrenheit);

/// Coldest place computed for a part, °C; nothing until a cut is solved.
std::optional<double> computed_part_c(const Assessment& result, opening::Part part);

} // namespace shimlight::assess
