// SPDX-License-Identifier: MIT
#include "section/conjugate_gradient.hpp"
#include "section/independent.hpp"

#include <cmath>

namespace shimlight::section {
namespace {

// Correction z, direction p and its image are those of the scaled residual.

/// p = z + factor p, of a row.
void redirect(const Singles& z, const SplitLayout& layout, int j, Stretch s, float factor,
              float* p) {
    const float *even = &z[layout.even_row(j)], *odd = &z[layout.odd_row(j)];
    float* __restrict to = p;
    const int end = s.end / 2;
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin / 2; I < end; ++I) {
        to[2 * I] = even[I] + factor * to[2 * I];
        to[2 * I + 1] = odd[I] + factor * to[2 * I + 1];
    }
    if (s.end % 2 == 1) to[2 * end] = even[end] + factor * to[2 * end];
}

/// p = z, of a row: zero where there is nothing to solve, too.
void direct(const Singles& z, const SplitLayout& layout, int j, float* p) {
    const float *even = &z[layout.even_row(j)], *odd = &z[layout.odd_row(j)];
    float* __restrict to = p;
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < layout.odd(); ++I) {
        to[2 * I] = even[I];
        to[2 * I + 1] = odd[I];
    }
    if (const int last = layout.even() - 1; last == layout.odd()) to[2 * last] = even[last];
}

/// p = z + factor p, p = z if that is zero; answers p A p. `image` gives where row j of A p goes.
template <class Rows>
double redirect(const Multigrid& multigrid, const FivePoint& a, float factor, Singles& p,
                const Rows& image) {
    const SplitLayout& layout = multigrid.finest().layout;
    double product = 0;
    for (int j = 0; j <= a.rows(); ++j) {
        if (j < a.rows()) {
            if (factor == 0)
                direct(multigrid.correction(), layout, j, &p[a.row(j)]);
            else
                redirect(multigrid.correction(), layout, j, a.solid(j), factor, &p[a.row(j)]);
        }
        if (j > 0) product += a.apply_row(p, j - 1, image(j - 1));
    }
    return product;
}

/// x += step p, r -= step A p, of a stretch.
void advance(double step, const float* p, const double* image, Stretch s, double* x, double* r) {
    double* __restrict to = x;
    double* __restrict rest = r;
    SHIMLIGHT_INDEPENDENT
    for (int i = s.begin; i < s.end; ++i) {
        to[i] += step * static_cast<double>(p[i]);
        rest[i] -= step * image[i];
    }
}

/// x += step p, of a stretch.
void advance(double step, const float* p, Stretch s, double* x) {
    double* __restrict to = x;
    SHIMLIGHT_INDEPENDENT
    for (int i = s.begin; i < s.end; ++i)
        to[i] += step * static_cast<double>(p[i]);
}

/// The last step, after which nobody asks for the residual.
void finish(const Multigrid& multigrid, const FivePoint& a, float factor, double product,
            double scale, Singles& p, Values& x) {
    Values row(static_cast<std::size_t>(a.columns()));
    const double curvature = redirect(multigrid, a, factor, p, [&row](int) { return row.data(); });
    if (!(curvature > 0)) return; // nothing is left to correct
    for (int j = 0; j < a.rows(); ++j)
        advance(product / curvature / scale, &p[a.row(j)], a.solid(j), &x[a.row(j)]);
}

} // namespace

Iteration conjugate_gradient(Multigrid& multigrid, const FivePoint& a, double energy, Values& x,
                             double tolerance, int max_cycles, ConjugateVectors& v) {
    Values& r = v.residual;
    Singles& direction = v.direction;
    direction.resize(a.size());
    v.image.resize(a.size());
    const auto image = [&a, &v](int j) { return &v.image[a.row(j)]; };
    const SplitLayout& layout = multigrid.finest().layout;
    const double scale = scale_for_cycle(r);
    for (int j = 0; j < a.rows(); ++j)
        split_row(&r[a.row(j)], scale, layout, j, multigrid.residual());
    Iteration iteration;
    double previous = 0;
    while (true) {
        multigrid.cycle();
        const double scaled = dot(multigrid.residual(), multigrid.correction());
        const double error = scaled / (scale * scale);
        if (!(error >= 0)) return iteration; // beyond what single precision can tell apart
        const float factor = iteration.cycles > 0 ? static_cast<float>(error / previous) : 0.0F;
        if (error <= tolerance * tolerance * energy) {
            // The last correction is there already, and a step never makes the error larger.
            finish(multigrid, a, factor, scaled, scale, direction, x);
            iteration.converged = std::isfinite(error);
            return iteration;
        }
        if (iteration.cycles == max_cycles) return iteration;
        const double step = scaled / redirect(multigrid, a, factor, direction, image);
        for (int j = 0; j < a.rows(); ++j) {
            const std::size_t row = a.row(j);
            advance(step / scale, &direction[row], image(j), a.solid(j), &x[row], &r[row]);
            split_row(&r[row], scale, layout, j, multigrid.residual());
        }
        energy += step * error;
        previous = error;
        ++iteration.cycles;
    }
}

} // namespace shimlight::section
