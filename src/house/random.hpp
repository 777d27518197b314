// SPDX-License-Identifier: MIT
// Seeded draws, the same numbers in every build.
#pragma once

#include <cstdint>

namespace shimlight::house {

class SeededDraws {
  public:
    explicit SeededDraws(std::uint64_t seed) : state_(seed) {}

    /// From 0 to below 1, evenly. A counter whose bits are mixed by multiplications and shifts
    /// (splitmix64: Steele, Lea and Flood 2014).
    double unit() {
        state_ += 0x9e3779b97f4a7c15u;
        std::uint64_t bits = state_;
        bits = (bits ^ (bits >> 30)) * 0xbf58476d1ce4e5b9u;
        bits = (bits ^ (bits >> 27)) * 0x94d049bb133111ebu;
        bits ^= bits >> 31;
        return static_cast<double>(bits >> 11) * 0x1p-53;
    }

    /// Between -1 and 1, most often near 0: a triangle.
    double triangle() {
        const double first = unit();
        return first + unit() - 1;
    }

  private:
    std::uint64_t state_;
};

} // namespace shimlight::house
