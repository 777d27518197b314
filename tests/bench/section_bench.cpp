// SPDX-License-Identifier: MIT
// What a section costs, beside general-purpose solvers on the same matrix.
//   bench_section_bench [--long] [JSON]
// Prints a table, writes its rows as JSON and fails when a ratio that must hold anywhere does not.
// The long form runs every peer at every size: minutes, and gigabytes.
//
// Times are of the processor, the least of several: load of the machine only adds. An unknown is
// the temperature of a solid cell. A work unit is one application of our finest operator,
// timed where the iteration makes it: after a cycle. By itself, one after the other, it may run
// from a cache that the hierarchy does not fit into; that is told too.
#include "peers/comparison.hpp"
#include "peers/memory.hpp"
#include "peers/report.hpp"
#include "peers/sections.hpp"
#include "section/kept_section.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <malloc.h>

namespace shimlight::bench {
namespace {

using namespace section;

/// Milliseconds per megabyte to pass once over as much memory as the row takes: what the caches
/// make of size.
double pass_ms_per_mb(const Row& row) {
    const double bytes = row.bytes_per_unknown * row.unknowns;
    std::vector<double> a(static_cast<std::size_t>(bytes / 16), 1.0), b(a.size(), 2.0);
    const int often = std::max(4, static_cast<int>(2e8 / bytes));
    double best = 0;
    for (int k = 0; k < 5; ++k) {
        const double start = processor_ms();
        for (int n = 0; n < often; ++n)
            for (std::size_t i = 0; i < a.size(); ++i)
                a[i] += 0.5 * b[i];
        const double taken = (processor_ms() - start) / often;
        best = k == 0 ? taken : std::min(best, taken);
    }
    return best / (bytes / 1e6);
}

double ns_per_unknown(const Row& row) {
    return 1e6 * row.total_ms() / row.unknowns;
}

int solid_cells(const Field& field) {
    return static_cast<int>(std::count_if(field.conductivity_w_mk.begin(),
                                          field.conductivity_w_mk.end(),
                                          [](double w_mk) { return w_mk > 0; }));
}

/// The whole way from the painting to the field.
Row end_to_end(const char* section, const Painting& painting, Accuracy accuracy, double& error_k) {
    const char* names[] = {"end to end, draft", "end to end, normal", "end to end, fine"};
    Row row = least([&] {
        const std::size_t before = held_bytes();
        forget_peak();
        Row one;
        const double start = processor_ms();
        const Result<Field> result = solve(painting, accuracy);
        one.solve_ms = processor_ms() - start;
        if (!ok(result)) return one;
        const Field& field = value(result);
        one.cycles = field.cycles;
        one.unknowns = solid_cells(field);
        one.bytes_per_unknown = static_cast<double>(peak_bytes() - before) / one.unknowns;
        error_k = field.error_estimate_k;
        return one;
    });
    row.section = section;
    row.solver = names[static_cast<int>(accuracy)];
    print(row);
    return row;
}

/// A lever's movement: to and fro between two paintings.
Row moved(const char* what, const Painting& painting, Accuracy accuracy, const Painting& other) {
    KeptSection kept;
    if (!ok(kept.solve(painting, accuracy))) return {};
    bool there = false;
    Row row = least([&] {
        there = !there;
        Row one;
        const double start = processor_ms();
        const Result<Field> result = kept.solve(there ? other : painting, accuracy);
        one.solve_ms = processor_ms() - start;
        if (!ok(result) || !kept.followed()) return one;
        one.cycles = value(result).cycles;
        one.unknowns = solid_cells(value(result));
        return one;
    });
    row.section = "window";
    row.solver = what;
    print(row);
    return row;
}

class Bench {
  public:
    explicit Bench(bool all) : all_(all) {}

    bool run(const std::string& json) {
        print_heading();
        const double fine_error_k = whole_ways();
        windows(fine_error_k);
        metal();
        const bool written = json.empty() || write_json(rows_, json);
        return targets_.all_met() && written;
    }

  private:
    /// Answers the error estimate of the window at fine accuracy, K.
    double whole_ways() {
        double error_k = 0;
        for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
            rows_.push_back(end_to_end("window", window_painting(), accuracy, error_k));
            fine_unknowns_ = rows_.back().unknowns;
            targets_.at_most("bytes per unknown, " + rows_.back().solver,
                             rows_.back().bytes_per_unknown, most_bytes);
        }
        Painting colder = window_painting(), windier = colder;
        colder.airs[0].temperature_c -= 1;
        windier.airs[0].film_w_m2k *= 1.05;
        for (Region& region : windier.regions) {
            if (Solid* solid = std::get_if<Solid>(&region.fill)) solid->conductivity_w_mk *= 1.01;
        }
        const Painting& still = window_painting();
        rows_.push_back(moved("moved, temperatures, draft", still, Accuracy::draft, colder));
        rows_.push_back(moved("moved, films, draft", still, Accuracy::draft, windier));
        rows_.push_back(moved("moved, temperatures, normal", still, Accuracy::normal, colder));
        rows_.push_back(moved("moved, films, normal", still, Accuracy::normal, windier));
        double unused = 0;
        rows_.push_back(end_to_end("ISO 10211 case 2", metal_profile(), Accuracy::fine, unused));
        return error_k;
    }

    /// The discretisation error falls with the width of the cells.
    void windows(double fine_error_k) {
        std::vector<Row> same;
        for (const int unknowns : {10000, 40000, 160000, 640000, 1000000}) {
            const Solution section = section_of(window_painting(), unknowns);
            const double error_k =
                fine_error_k * std::sqrt(static_cast<double>(fine_unknowns_) / unknowns);
            Comparison comparison("window", section, error_k);
            compare(comparison, unknowns);
            same.push_back(comparison.same_residual());
        }
        const double growth = ns_per_unknown(same.back()) / ns_per_unknown(same.front());
        const double caches = pass_ms_per_mb(same.back()) / pass_ms_per_mb(same.front());
        std::printf("From 10 thousand to 1 million unknowns the time per unknown grows %.2f times, "
                    "that of one pass over as much memory %.2f times.\n",
                    growth, caches);
        targets_.at_most("growth of time per unknown, caches aside", growth / caches, 1.5,
                         timing_noise);
    }

    void metal() {
        constexpr double printed_k = 0.005; // case 2 is printed to 0.01 K
        constexpr int unknowns = 40000;
        Comparison comparison("ISO 10211 case 2", section_of(metal_profile(), unknowns), printed_k);
        compare(comparison, unknowns);
    }

    void compare(Comparison& c, int unknowns) {
        constexpr int ldlt_limit = 700000, amg_limit = 200000, cg_limit = 50000; // short form
        if (all_ || unknowns < ldlt_limit) c.add_peer(eigen_ldlt);
        if (all_ || unknowns < cg_limit)
            c.add_peer([](const LinearSystem& s) { return eigen_cg(s, Comparison::reduction); });
        if (all_ || unknowns < amg_limit) {
            c.add_peer([](const LinearSystem& s) {
                return algebraic_multigrid(s, Comparison::reduction);
            });
        }
        for (const std::vector<Row>* rows : {&c.units(), &c.rows()})
            rows_.insert(rows_.end(), rows->begin(), rows->end());
        const std::string at =
            " at " + std::to_string(unknowns) + " unknowns, " + c.same_residual().section;
        if (unknowns == 40000)
            targets_.at_least("times Eigen" + at, c.times_eigen(), 10, timing_noise);
        if (unknowns == 640000)
            targets_.at_least("times Eigen" + at, c.times_eigen(), 20, timing_noise);
        targets_.at_most("work units" + at, c.as_the_grid().work_units, 60, timing_noise);
        targets_.at_most("bytes per unknown" + at, c.same_residual().bytes_per_unknown, most_bytes);
    }

    static constexpr double most_bytes = 250;

    bool all_;
    int fine_unknowns_ = 0;
    std::vector<Row> rows_;
    Targets targets_;
};

} // namespace
} // namespace shimlight::bench

int main(int argc, char** argv) {
    // Memory once given out is kept: fresh pages cost as much as a solution, and a page in a
    // browser keeps its memory too.
    mallopt(M_MMAP_MAX, 0);
    mallopt(M_TRIM_THRESHOLD, 2000000000);
    bool all = false;
    std::string json;
    for (int n = 1; n < argc; ++n) {
        if (std::string(argv[n]) == "--long")
            all = true;
        else
            json = argv[n];
    }
    return shimlight::bench::Bench(all).run(json) ? 0 : 1;
}
