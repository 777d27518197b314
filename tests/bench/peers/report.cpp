// SPDX-License-Identifier: MIT
#include "report.hpp"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <fstream>

namespace shimlight::bench {

void print_heading() {
    std::printf("%-18s %9s %-26s %9s %9s %6s %8s %8s %8s %9s\n", "section", "unknowns", "solver",
                "setup ms", "solve ms", "cycles", "ns/unkn", "units", "B/unkn", "residual");
}

void print(const Row& row) {
    std::printf("%-18s %9d %-26s %9.2f %9.2f %6d %8.0f %8.1f %8.0f %9.1e\n", row.section.c_str(),
                row.unknowns, row.solver.c_str(), row.setup_ms, row.solve_ms, row.cycles,
                1e6 * row.total_ms() / row.unknowns, row.work_units, row.bytes_per_unknown,
                row.residual);
    std::fflush(stdout);
}

bool write_json(const std::vector<Row>& rows, const std::string& path) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const Row& row : rows) {
        list.push_back({{"case", row.section},
                        {"unknowns", row.unknowns},
                        {"solver", row.solver},
                        {"setup_ms", row.setup_ms},
                        {"solve_ms", row.solve_ms},
                        {"cycles", row.cycles},
                        {"work_units", row.work_units},
                        {"bytes_per_unknown", row.bytes_per_unknown},
                        {"residual", row.residual}});
    }
    std::ofstream file(path);
    file << list.dump(1) << '\n';
    return static_cast<bool>(file);
}

void Targets::at_least(const std::string& what, double measured, double limit, double noise) {
    note(measured >= limit, measured * noise >= limit, what, measured, ">=", limit);
}

void Targets::at_most(const std::string& what, double measured, double limit, double noise) {
    note(measured <= limit, measured <= limit * noise, what, measured, "<=", limit);
}

bool Targets::all_met() const {
    std::printf("%d passed, %d failed\n", passed_, failed_);
    return failed_ == 0;
}

void Targets::note(bool met, bool near, const std::string& what, double measured,
                   const char* relation, double limit) {
    std::printf("%-6s %s: %.3g, wanted %s %.3g\n",
                met    ? "ok"
                : near ? "near"
                       : "MISSED",
                what.c_str(), measured, relation, limit);
    (near ? passed_ : failed_) += 1;
}

} // namespace shimlight::bench
