// SPDX-License-Identifier: MIT
#include "section/gmres.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

/// y += factor x
void add(double factor, const Values& x, Values& y) {
    for (std::size_t k = 0; k < y.size(); ++k)
        y[k] += factor * x[k];
}

void scale(double factor, Values& x) {
    for (double& value : x)
        value *= factor;
}

/// The Hessenberg matrix of the iteration, made triangular column by column by plane rotations,
/// and the right-hand side that is rotated along.
class LeastSquares {
  public:
    explicit LeastSquares(double norm) : rhs_{norm} {}

    /// Takes the next column, its subdiagonal element last; answers the residual's norm.
    double add_column(std::vector<double> h) {
        const std::size_t n = columns_.size();
        for (std::size_t k = 0; k < n; ++k) {
            const double upper = h[k];
            h[k] = cosines_[k] * upper + sines_[k] * h[k + 1];
            h[k + 1] = cosines_[k] * h[k + 1] - sines_[k] * upper;
        }
        const double radius = std::hypot(h[n], h[n + 1]);
        cosines_.push_back(radius > 0 ? h[n] / radius : 1.0);
        sines_.push_back(radius > 0 ? h[n + 1] / radius : 0.0);
        h[n] = radius;
        columns_.push_back(std::move(h));
        rhs_.push_back(-sines_[n] * rhs_[n]);
        rhs_[n] *= cosines_[n];
        return std::abs(rhs_[n + 1]);
    }

    /// Coefficients of the basis vectors.
    std::vector<double> solution() const {
        std::vector<double> y(columns_.size());
        for (std::size_t i = y.size(); i-- > 0;) {
            double sum = rhs_[i];
            for (std::size_t k = i + 1; k < y.size(); ++k)
                sum -= columns_[k][i] * y[k];
            y[i] = columns_[i][i] != 0 ? sum / columns_[i][i] : 0.0;
        }
        return y;
    }

  private:
    std::vector<std::vector<double>> columns_;
    std::vector<double> cosines_, sines_, rhs_;
};

/// The next direction: the image of the newest, made orthogonal to all before (modified
/// Gram-Schmidt). Answers the column of the Hessenberg matrix.
std::vector<double> expand(Multigrid& multigrid, const Balance& balance, std::size_t newest,
                           KrylovVectors& v) {
    balance(v.basis[newest], v.work);
    if (v.basis.size() == newest + 1) v.basis.emplace_back();
    Values& next = v.basis[newest + 1];
    next.assign(v.work.size(), 0.0);
    multigrid.cycle(v.work, next);
    std::vector<double> column;
    for (std::size_t k = 0; k <= newest; ++k) {
        column.push_back(dot(next, v.basis[k]));
        add(-column[k], v.basis[k], next);
    }
    column.push_back(std::sqrt(dot(next, next)));
    if (column.back() > 0) scale(1 / column.back(), next);
    return column;
}

/// One run from x, until the residual has fallen to `target` or as far as its cycles, in single
/// precision, can tell. Answers its norm.
double run(Multigrid& multigrid, const Balance& balance, const Residual& residual, Values& x,
           double target, int max_cycles, KrylovVectors& v, Iteration& iteration) {
    constexpr double farthest = 1e-4; // reduction; a cycle's rounding is about 1e-6
    Values& first = v.basis.front();
    residual(x, v.residual);
    first.assign(x.size(), 0.0);
    multigrid.cycle(v.residual, first);
    double norm = std::sqrt(dot(first, first));
    if (!(norm > target)) return norm;
    const double rest = std::max(target, farthest * norm);
    scale(1 / norm, first);
    LeastSquares squares(norm);
    for (std::size_t n = 0; norm > rest && iteration.cycles < max_cycles; ++n) {
        norm = squares.add_column(expand(multigrid, balance, n, v));
        ++iteration.cycles;
    }
    const std::vector<double> y = squares.solution();
    for (std::size_t k = 0; k < y.size(); ++k)
        add(y[k], v.basis[k], x);
    return norm;
}

} // namespace

Iteration gmres(Multigrid& multigrid, const Balance& balance, const Residual& residual,
                const Values& b, Values& x, double tolerance, int max_cycles, KrylovVectors& v) {
    v.residual.assign(b.size(), 0.0);
    v.work.assign(b.size(), 0.0);
    if (v.basis.empty()) v.basis.emplace_back();
    Values& first = v.basis.front();
    first.assign(b.size(), 0.0);
    multigrid.cycle(b, first);
    const double target = tolerance * std::sqrt(dot(first, first));
    Iteration iteration;
    double norm = 0;
    do {
        norm = run(multigrid, balance, residual, x, target, max_cycles, v, iteration);
    } while (norm > target && iteration.cycles < max_cycles);
    iteration.converged = norm <= target;
    return iteration;
}

} // namespace shimlight::section
