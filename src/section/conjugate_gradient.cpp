// SPDX-License-Identifier: MIT
#include "section/conjugate_gradient.hpp"

#include <cmath>

namespace shimlight::section {
namespace {

double dot(const Layout& l, const Values& a, const Values& b) {
    double sum = 0;
    for (int j = 0; j < l.rows; ++j) {
        double row_sum = 0;
        for (int k = l.at(0, j), end = k + l.columns; k < end; ++k)
            row_sum += a[k] * b[k];
        sum += row_sum;
    }
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
                             int max_cycles) {
    const Stencil& a = multigrid.finest();
    const Layout& l = a.layout;
    Values r(l.size(), 0.0), z(l.size(), 0.0), p(l.size(), 0.0), ap(l.size(), 0.0);
    multigrid.cycle(b, z);
    const double target = tolerance * tolerance * dot(l, b, z);
    residual(a, b, x, r);
    Iteration iteration;
    double previous = 0;
    while (true) {
        multigrid.cycle(r, z);
        const double error = dot(l, r, z);
        if (!(error > target)) {
            iteration.converged = std::isfinite(error);
            return iteration;
        }
        if (iteration.cycles == max_cycles) return iteration;
        redirect(z, iteration.cycles > 0 ? error / previous : 0.0, p);
        apply(a, p, ap);
        const double step = error / dot(l, p, ap);
        add(step, p, x);
        add(-step, ap, r);
        previous = error;
        ++iteration.cycles;
    }
}

} // namespace shimlight::section
