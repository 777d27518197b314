// SPDX-License-Identifier: MIT
// A reading beside the computation: by how much it differs, and single assumptions that would
// explain it, each in a sentence. Shared by readings of the glass and of other parts.
#pragma once

#include "opening/cut.hpp"
#include "physics/thermography.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace shimlight::assess {

/// In the order of the answers of the reading tests (see find_out_rows.hpp).
enum class Compared { colder, as_computed, warmer };

/// One assumption, and what it would have to be for the computed surface to be as the reading.
struct Explanation {
    std::string_view assumption;    ///< "outdoor air", "wind", "gas", …
    bool explains = false;          ///< within what is possible; else `needed` is its nearest limit
    double assumed = 0, needed = 0; ///< °C, m/s, W/m², share or emissivity; 0 and 1: no, yes
    double left_k = 0;              ///< difference that would stay
    std::string sentence;
};

struct SurfaceReading {
    double computed_c = 0;   ///< room side: centre of glass, or the coldest place of a part
    double difference_k = 0; ///< reading minus computed
    double range_k = 0;      ///< of the reading, on the side of the difference
    Compared compared = Compared::as_computed;
    /// Nothing is accused when the reading is as computed: then it is empty. Otherwise every single
    /// assumption that could matter in this case, those that explain first.
    std::vector<Explanation> explanations;
    std::string sentence; ///< how much it differs, and how many assumptions would explain it
};

/// What was measured: °C and the ends of its range.
struct Measured {
    double c = 0, low_c = 0, high_c = 0;
};
Measured measured(const physics::InfraredReading& reading);

/// `range_k`: how far the reading may be off. The computation may be off by 1 K besides, an
/// estimate (inner film, height of the glass, wind at the pane); both combine as root of squares.
Compared compare_reading(double measured_c, double range_k, double computed_c);
double tolerance_of(double range_k);

/// A difference that a search has left, K; nil where it is no more than the search's rounding.
double left_over_k(double difference_k);

/// A reading compared; its explanations are to be added.
SurfaceReading compared(const Measured& measured, double computed_c);

/// What kind of value an assumption has.
enum class Kind { temperature, speed, share, emissivity, heat, yes_no };

/// Writes the sentence. `difference_k` is what is to be explained.
void tell(Explanation& e, Kind kind, std::string_view word, double difference_k, bool fahrenheit);

/// The surface's emissivity that would make the reading show the computed surface. A reading at the
/// temperature of what mirrors says the same whatever the emissivity.
Explanation explain_emissivity(const physics::InfraredReading& reading, double computed_c,
                               double tolerance_k, bool fahrenheit);

/// Those that explain first, each kind in the order in which they come.
void add(SurfaceReading& reading, Explanation e);

/// The sentence of the whole, once all explanations are there.
void summarise(SurfaceReading& reading, opening::Part part, bool fahrenheit);

struct Span {
    double low, high;
};

/// Where f, which rises or falls over the span, meets `target`; its nearest end when it does not.
template <class F> double meet(Span span, double target, F&& f) {
    constexpr int halvings = 40; // of a span of tens of kelvin: to 1e-10
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

} // namespace shimlight::assess
