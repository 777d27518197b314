// SPDX-License-Identifier: MIT
#include "section/conjugate_gradient.hpp"

#include <cmath>

namespace shimlight::section {
namespace {

double dot(const Values& a, const Values& b) {
    double sum = 0;
    for (std::size_t k = 0; k < a.size(); ++k)
        sum += a[k] * b[k];
    return sum;
}

/// y += factor x
void add(double factor, const Values& x, Values& y) {
    for (std::size_t k = 0; k < y.size(); ++k)
        y[k] += factor * x[k];
}

/// p = z + factor p
void redirect(const Values& z, double factor, Values& p) {
    for (std::size_t k = 0; k < p.size(); ++k)
        p[k] = z[k] + factor * p[k];
}

} // namespace

Iteration conjugate_gradient(Multigrid& multigrid, const Values& b, Values& x, double tolerance,
                             int max_cycles, IterationVectors& vectors) {
    const ColumnOperator& a = multigrid.finest();
    const std::size_t size = a.layout.size();
    auto& [r, z, p, ap] = vectors;
    for (Values* values : {&r, &z, &p, &ap})
        values->assign(size, 0.0);
    multigrid.cycle(b, z);
    const double target = tolerance * tolerance * dot(b, z);
    apply(a, x, ap);
    for (std::size_t k = 0; k < size; ++k)
        r[k] = b[k] - ap[k];
    Iteration iteration;
    double previous = 0;
    while (true) {
        multigrid.cycle(r, z);
        const double error = dot(r, z);
        if (!(error > target)) {
            iteration.converged = std::isfinite(error);
            return iteration;
        }
        if (iteration.cycles == max_cycles) return iteration;
        redirect(z, iteration.cycles > 0 ? error / previous : 0.0, p);
        apply(a, p, ap);
        const double step = error / dot(p, ap);
        add(step, p, x);
        add(-step, ap, r);
        previous = error;
        ++iteration.cycles;
    }
}

} // namespace shimlight::section
