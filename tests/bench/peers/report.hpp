// SPDX-License-Identifier: MIT
// The benchmark's table, its rows as JSON, and its targets.
#pragma once

#include "peers.hpp"

namespace shimlight::bench {

void print_heading();
void print(const Row& row);

/// False when the file cannot be written.
bool write_json(const std::vector<Row>& rows, const std::string& path);

/// What a ratio of two times may be off because of what else the machine does: the least of several
/// runs of one and the same solver have differed by as much.
inline constexpr double timing_noise = 1.3;

/// Ratios that must hold on any machine. Prints each with what was measured; what misses by less
/// than `noise` is said to be near and does not fail.
class Targets {
  public:
    void at_least(const std::string& what, double measured, double limit, double noise = 1);
    void at_most(const std::string& what, double measured, double limit, double noise = 1);

    /// Prints "N passed, N failed"; whether none failed.
    bool all_met() const;

  private:
    void note(bool met, bool near, const std::string& what, double measured, const char* relation,
              double limit);

    int passed_ = 0, failed_ = 0;
};

} // namespace shimlight::bench
