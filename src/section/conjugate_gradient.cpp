// SPDX-License-Identifier: MIT
#include "section/conjugate_gradient.hpp"

#include <cmath>

namespace shimlight::section {
namespace {

/// Four sums side by side, so that no addition waits for the one before; in the same order
/// everywhere.
double dot(const Values& a, const Values& b) {
    double sums[4] = {};
    const std::size_t fours = a.size() / 4 * 4;
    for (std::size_t k = 0; k < fours; k += 4) {
        for (std::size_t n = 0; n < 4; ++n)
            sums[n] += a[k + n] * b[k + n];
    }
    for (std::size_t k = fours; k < a.size(); ++k)
        sums[0] += a[k] * b[k];
    return (sums[0] + sums[1]) + (sums[2] + sums[3]);
}

void add(const Values& z, Values& x) {
    for (std::size_t k = 0; k < x.size(); ++k)
        x[k] += z[k];
}

/// p = z + factor p
void redirect(const Values& z, double factor, Values& p) {
    const double* from = z.data();
    double* __restrict to = p.data();
    for (std::size_t k = 0; k < p.size(); ++k)
        to[k] = from[k] + factor * to[k];
}

/// x += step p, r -= step ap
void advance(double step, const Values& p, const Values& ap, Values& x, Values& r) {
    const double *direction = p.data(), *image = ap.data();
    double* __restrict to = x.data(), * __restrict rest = r.data();
    for (std::size_t k = 0; k < x.size(); ++k) {
        to[k] += step * direction[k];
        rest[k] -= step * image[k];
    }
}

} // namespace

Iteration conjugate_gradient(Multigrid& multigrid, Values& r, double energy, Values& x,
                             double tolerance, int max_cycles, IterationVectors& vectors) {
    const ColumnOperator& a = multigrid.finest();
    auto& [z, p, ap] = vectors;
    for (Values* values : {&z, &p, &ap})
        values->assign(a.layout.size(), 0.0);
    Iteration iteration;
    double previous = 0;
    while (true) {
        multigrid.cycle(r, z);
        const double error = dot(r, z);
        if (!(error > tolerance * tolerance * energy) || error == 0) {
            // The last correction is there already, and a cycle never makes the error larger.
            add(z, x);
            iteration.converged = std::isfinite(error);
            return iteration;
        }
        if (iteration.cycles == max_cycles) return iteration;
        redirect(z, iteration.cycles > 0 ? error / previous : 0.0, p);
        apply(a, p, ap);
        const double step = error / dot(p, ap);
        advance(step, p, ap, x, r);
        energy += step * error;
        previous = error;
        ++iteration.cycles;
    }
}

} // namespace shimlight::section
