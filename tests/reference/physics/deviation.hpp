// SPDX-License-Identifier: MIT
// Compares computed with published values and prints one line with the largest deviation.
#pragma once

#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <string>

namespace shimlight::reference {

class Deviation {
  public:
    /// `tolerance` in `unit`; deviations are absolute.
    Deviation(std::string quantity, std::string unit, double tolerance)
        : quantity_(std::move(quantity)), unit_(std::move(unit)), tolerance_(tolerance) {}
    Deviation(const Deviation&) = delete;
    Deviation& operator=(const Deviation&) = delete;
    ~Deviation() {
        std::printf("%-52s %4d values, largest deviation %.4g of %.4g %s (%s)\n", quantity_.c_str(),
                    count_, largest_, tolerance_, unit_.c_str(), where_.c_str());
    }

    void add(double computed, double published, const std::string& where) {
        compare(computed - published, where, computed, published);
    }
    /// The same for a tolerance that is a share of the published value, in %.
    void add_relative_pct(double computed, double published, const std::string& where) {
        compare(100 * (computed / published - 1), where, computed, published);
    }

  private:
    void compare(double difference, const std::string& where, double computed, double published) {
        ++count_;
        CAPTURE(quantity_);
        CAPTURE(where);
        CAPTURE(computed);
        CAPTURE(published);
        CHECK(std::fabs(difference) <= tolerance_);
        if (std::fabs(difference) < largest_ && count_ > 1) return;
        largest_ = std::fabs(difference);
        where_ = where;
    }

    std::string quantity_, unit_;
    double tolerance_;
    int count_ = 0;
    double largest_ = 0;
    std::string where_;
};

} // namespace shimlight::reference
