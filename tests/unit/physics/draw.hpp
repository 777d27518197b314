// SPDX-License-Identifier: MIT
// Seeded random inputs: the same on every run, so that a failure can be found again.
#pragma once

#include <random>

namespace shimlight::physics {

class Draw {
  public:
    explicit Draw(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        // std::uniform_real_distribution may differ between libraries; this does not.
        const double share = static_cast<double>(engine_()) / static_cast<double>(engine_.max());
        return low + share * (high - low);
    }
    int whole(int low, int high) {
        return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
    }

  private:
    std::mt19937 engine_;
};

} // namespace shimlight::physics
