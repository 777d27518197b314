// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"
#include "paintings.hpp"
#include "section/conjugate_gradient.hpp"
#include "section/grid.hpp"
#include "section/solution.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

/// A balance and the cycle for it.
struct Section {
    Operator op;
    Cells cells;
    Multigrid multigrid;

    FivePoint balance() const { return {op, cells}; }
};

/// Couplings over many powers of ten and a film on a few points.
Section random_section(Random& random, int columns, int rows, double decades = 10) {
    const double most = std::pow(10, 0.5 * decades), least = 1 / most;
    Section p;
    const std::size_t count = static_cast<std::size_t>(columns) * rows;
    p.cells.air.assign(count, no_air);
    p.op.columns = columns;
    p.op.rows = rows;
    for (std::vector<double>* values : {&p.op.west, &p.op.south, &p.op.diagonal})
        values->assign(count, 0.0);
    const auto couple = [&](std::vector<double>& side, int cell, int neighbour) {
        side[cell] = random.log_between(least, most);
        p.op.diagonal[cell] += side[cell];
        p.op.diagonal[neighbour] += side[cell];
    };
    for (int k = 0; k < columns * rows; ++k) {
        const bool first = k % columns == 0;
        if (first || random.chance(0.05)) p.op.diagonal[k] += random.log_between(1e-2, 1e2);
        if (k >= columns) couple(p.op.south, k, k - columns);
        if (!first) couple(p.op.west, k, k - 1);
    }
    p.multigrid.set_up(column_operator(p.op, p.cells));
    return p;
}

Values random_values(Random& random, std::size_t count) {
    Values values;
    for (std::size_t k = 0; k < count; ++k)
        values.push_back(random.between(-1, 1));
    return values;
}

TEST_CASE("The operator is symmetric and positive") {
    constexpr double round_off = 1e-9;
    for (int seed = 1; seed <= 20; ++seed) {
        Random random(seed);
        const Section p = random_section(random, 1 + random.below(20), 1 + random.below(20));
        const FivePoint a = p.balance();
        const Values u = random_values(random, a.size()), v = random_values(random, a.size());
        Values au(a.size()), av(au);
        a.apply(u, au);
        a.apply(v, av);
        CHECK(std::abs(dot(au, v) - dot(av, u)) < round_off * std::sqrt(dot(au, au) * dot(v, v)));
        CHECK(dot(au, u) > 0);
    }
}

TEST_CASE("The cycle is symmetric and positive") {
    constexpr double round_off = 1e-5; // of single precision, some hundred times over
    for (int seed = 1; seed <= 20; ++seed) {
        Random random(seed);
        Section p = random_section(random, 1 + random.below(20), 1 + random.below(20));
        const std::size_t count = p.balance().size();
        const Values u = random_values(random, count), v = random_values(random, count);
        Values mu(count), mv(count);
        p.multigrid.cycle(u, mu);
        p.multigrid.cycle(v, mv);
        CHECK(std::abs(dot(mu, v) - dot(mv, u)) < round_off * std::sqrt(dot(mu, mu) * dot(v, v)));
        CHECK(dot(mu, u) > 0);
    }
}

TEST_CASE("A few columns are solved by one cycle") {
    constexpr double round_off = 1e-4; // of single precision, a thousand times over
    for (int columns = 1; columns <= RowBlocks::width; ++columns) {
        Random random(columns);
        Section p = random_section(random, columns, 30, 2);
        const FivePoint a = p.balance();
        const Values x = random_values(random, a.size());
        Values b(a.size()), found(a.size());
        a.apply(x, b);
        p.multigrid.cycle(b, found);
        double off = 0;
        for (std::size_t k = 0; k < x.size(); ++k)
            off = std::max(off, std::abs(found[k] - x[k]));
        CAPTURE(columns);
        CHECK(off < round_off);
    }
}

TEST_CASE("Few cycles even on couplings that jump from point to point") {
    constexpr int most_cycles = 40;
    constexpr double decades = 4; // in every coupling: rougher than any section
    for (int seed = 1; seed <= 10; ++seed) {
        Random random(seed);
        Section p = random_section(random, 60 + random.below(20), 50 + random.below(30), decades);
        const FivePoint a = p.balance();
        const Values wanted = random_values(random, a.size());
        ConjugateVectors vectors;
        Values x(a.size(), 0.0);
        vectors.residual.resize(a.size());
        a.apply(wanted, vectors.residual);
        const Iteration iteration =
            conjugate_gradient(p.multigrid, a, 0, x, 1e-8, most_cycles, vectors);
        CAPTURE(iteration.cycles);
        CHECK(iteration.converged);
    }
}

TEST_CASE("The last step leaves nothing to gain along its direction") {
    constexpr double round_off = 1e-5; // of single precision, some hundred times over
    for (int seed = 1; seed <= 20; ++seed) {
        Random random(seed);
        Section p = random_section(random, 9 + random.below(30), 1 + random.below(30), 4);
        const FivePoint a = p.balance();
        const Values b = random_values(random, a.size());
        ConjugateVectors vectors;
        vectors.residual = b;
        Values x(a.size(), 0.0), image(a.size());
        const Iteration iteration = conjugate_gradient(p.multigrid, a, 1, x, 1e30, 40, vectors);
        CHECK(iteration.converged);
        CHECK(iteration.cycles == 0);
        a.apply(x, image);
        const double sent = dot(b, x);
        CHECK(sent > 0);
        CHECK(std::abs(sent - dot(image, x)) < round_off * sent);
    }
}

TEST_CASE("A solution starts where the section gives off as much heat as it takes") {
    constexpr double round_off = 1e-12;
    for (int seed = 1; seed <= 20; ++seed) {
        const Painting painting = random_window(seed);
        const Result<Grid> base = base_grid(painting);
        REQUIRE(ok(base));
        const Result<Solution> prepared = prepare(painting, value(base));
        REQUIRE(ok(prepared));
        const Solution& solution = value(prepared);
        double heat = 0, largest = 0;
        for (const Contact& contact : solution.op.contacts) {
            const double taken = contact.total_w_mk * (solution.air_excess_k[contact.air] -
                                                       solution.excess_k[contact.cell]);
            heat += taken;
            largest += std::abs(taken);
        }
        CHECK(largest > 0);
        CHECK(std::abs(heat) < round_off * largest);
    }
}

} // namespace
} // namespace shimlight::section
