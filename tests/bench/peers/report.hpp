// SPDX-License-Identifier: MIT
// The benchmark's table, its rows as JSON, and its targets.
#pragma once

#include "peers.hpp"

namespace shimlight::bench {

void print_heading();
void print(const Row& row);

/// False when the file cannot be written.
bool write_json(const std::vector<Row>& rows, const std::string& path);

/// Ratios that must hold on any machine. Prints each with what was measured.
class Targets {
  public:
    void at_least(const std::string& what, double measured, double limit);
    void at_most(const std::string& what, double measured, double limit);

    /// Prints "N passed, N failed"; whether none failed.
    bool all_met() const;

  private:
    void note(bool met, const std::string& what, double measured, const char* relation,
              double limit);

    int passed_ = 0, failed_ = 0;
};

} // namespace shimlight::bench
