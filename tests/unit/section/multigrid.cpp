// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"
#include "paintings.hpp"
#include "section/conjugate_gradient.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

/// A five-point balance with couplings over many powers of ten and a film on a few points.
Multigrid random_multigrid(Random& random, int columns, int rows, double decades = 10) {
    const double most = std::pow(10, 0.5 * decades), least = 1 / most;
    Multigrid multigrid;
    ColumnOperator& a = multigrid.begin(SplitLayout{columns, rows});
    const auto couple = [&](int p, int q, double g) {
        a.centre[p] += g;
        a.centre[q] += g;
    };
    for (int j = 0; j < rows; ++j) {
        for (int i = 0; i < columns; ++i) {
            const int at = a.layout.at(i, j);
            if (i == 0 || random.chance(0.05)) a.centre[at] += random.log_between(1e-2, 1e2);
            if (j > 0) {
                a.south[at] = random.log_between(least, most);
                couple(at, a.layout.at(i, j - 1), a.south[at]);
            }
            if (i == 0) continue;
            const double g = random.log_between(least, most);
            (i % 2 == 1 ? a.left : a.right).straight[a.odd.row(j) + (i - 1) / 2] = g;
            couple(at, a.layout.at(i - 1, j), g);
        }
    }
    multigrid.set_up();
    return multigrid;
}

Values random_values(Random& random, const SplitLayout& layout) {
    Values values(layout.size(), 0.0);
    for (int j = 0; j < layout.rows; ++j) {
        for (int i = 0; i < layout.columns; ++i)
            values[layout.at(i, j)] = random.between(-1, 1);
    }
    return values;
}

double dot(const Values& a, const Values& b) {
    double sum = 0;
    for (std::size_t k = 0; k < a.size(); ++k)
        sum += a[k] * b[k];
    return sum;
}

TEST_CASE("The operator and the cycle are symmetric and positive") {
    constexpr double round_off = 1e-9;
    for (int seed = 1; seed <= 20; ++seed) {
        Random random(seed);
        Multigrid multigrid = random_multigrid(random, 1 + random.below(20), 1 + random.below(20));
        const SplitLayout& layout = multigrid.finest().layout;
        const Values u = random_values(random, layout), v = random_values(random, layout);
        Values au(layout.size()), av(au), mu(au), mv(au);
        apply(multigrid.finest(), u, au);
        apply(multigrid.finest(), v, av);
        CHECK(std::abs(dot(au, v) - dot(av, u)) < round_off * std::sqrt(dot(au, au) * dot(v, v)));
        CHECK(dot(au, u) > 0);
        multigrid.cycle(u, mu);
        multigrid.cycle(v, mv);
        CHECK(std::abs(dot(mu, v) - dot(mv, u)) < round_off * std::sqrt(dot(mu, mu) * dot(v, v)));
        CHECK(dot(mu, u) > 0);
    }
}

TEST_CASE("A single column is solved by one cycle") {
    constexpr double round_off = 1e-6; // couplings differ by 1e10
    Random random(1);
    Multigrid multigrid = random_multigrid(random, 1, 30);
    const SplitLayout& layout = multigrid.finest().layout;
    const Values x = random_values(random, layout);
    Values b(layout.size()), found(layout.size());
    apply(multigrid.finest(), x, b);
    multigrid.cycle(b, found);
    for (std::size_t k = 0; k < x.size(); ++k)
        CHECK(std::abs(found[k] - x[k]) < round_off);
}

TEST_CASE("Few cycles even on couplings that jump from point to point") {
    constexpr int most_cycles = 40;
    constexpr double decades = 4; // in every coupling: rougher than any section
    for (int seed = 1; seed <= 10; ++seed) {
        Random random(seed);
        Multigrid multigrid =
            random_multigrid(random, 60 + random.below(20), 50 + random.below(30), decades);
        const SplitLayout& layout = multigrid.finest().layout;
        const Values wanted = random_values(random, layout);
        Values b(layout.size()), x(layout.size(), 0.0);
        apply(multigrid.finest(), wanted, b);
        IterationVectors vectors;
        const Iteration iteration =
            conjugate_gradient(multigrid, b, 0, x, 1e-8, most_cycles, vectors);
        CAPTURE(iteration.cycles);
        CHECK(iteration.converged);
    }
}

} // namespace
} // namespace shimlight::section
