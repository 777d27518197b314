// SPDX-License-Identifier: MIT
// Paintings for the tests: a few by hand, many from a seed.
#pragma once

#include "section/field.hpp"

#include <cstdint>
#include <vector>

namespace shimlight::section::tests {

/// Own generator, so that a seed means the same painting with every library.
class Random {
  public:
    explicit Random(std::uint64_t seed) : state_(seed * 2654435761u + 88172645463325252u) {}

    double unit();                           ///< 0…1
    double between(double low, double high); ///< evenly
    double log_between(double low, double high);
    int below(int count);
    bool chance(double share);

  private:
    std::uint64_t state_;
};

/// A section in millimetres with two airs: 0 outside, 1 inside.
Painting two_airs(double width_mm, double height_mm);
void add_rect(Painting& painting, double x0_mm, double y0_mm, double x1_mm, double y1_mm,
              decltype(Region::fill) fill);
void add_edge(Painting& painting, Side side, double from_mm, double to_mm, int air);

/// A cut through a window in its wall: studs, insulation, shim space, frame and sash of thin walls
/// with cavities, one to three panes, spacers, casing, air on many faces.
Painting random_window(std::uint64_t seed);

/// Up to 28 rectangles of conductivities from 0.001 to 400 W/mK, slivers, cavities and air regions
/// thrown into a section of any proportions, edges with and without airs.
Painting random_jumble(std::uint64_t seed);

/// The painting seen in a mirror: x → width - x.
Painting mirrored(const Painting& painting);

Field solved(const Painting& painting, Accuracy accuracy = Accuracy::normal);

} // namespace shimlight::section::tests
