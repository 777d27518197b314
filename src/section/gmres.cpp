// SPDX-License-Identifier: MIT
#include "section/gmres.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

/// y += factor x
void add(double factor, const Singles& x, Values& y) {
    for (std::size_t k = 0; k < y.size(); ++k)
        y[k] += factor * static_cast<double>(x[k]);
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

/// Takes the newest vector, of length 1, into the basis.
void keep(KrylovVectors& v, std::size_t at) {
    if (v.basis.size() == at) v.basis.emplace_back();
    v.basis[at].assign(v.newest.begin(), v.newest.end());
}

/// The next direction: the image of the newest, made orthogonal to all before (modified
/// Gram-Schmidt). Answers the column of the Hessenberg matrix.
std::vector<double> expand(Multigrid& multigrid, const Balance& balance, std::size_t newest,
                           KrylovVectors& v) {
    balance(v.newest, v.work);
    multigrid.cycle(v.work, v.newest);
    std::vector<double> column;
    for (std::size_t k = 0; k <= newest; ++k) {
        column.push_back(dot(v.newest, v.basis[k]));
        add(-column[k], v.basis[k], v.newest);
    }
    column.push_back(std::sqrt(dot(v.newest, v.newest)));
    if (column.back() > 0) scale(1 / column.back(), v.newest);
    keep(v, newest + 1);
    return column;
}

/// One run from x, until the residual has fallen to `target` or as far as its cycles, in single
/// precision, can tell. Answers its norm.
double run(Multigrid& multigrid, const Balance& balance, const Residual& residual, Values& x,
           double target, int max_cycles, KrylovVectors& v, Iteration& iteration) {
    constexpr double farthest = 1e-4; // reduction; a cycle's rounding is about 1e-6
    residual(x, v.work);
    multigrid.cycle(v.work, v.newest);
    double norm = std::sqrt(dot(v.newest, v.newest));
    if (!(norm > target)) return norm;
    const double rest = std::max(target, farthest * norm);
    scale(1 / norm, v.newest);
    keep(v, 0);
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

Iteration gmres(Multigrid& multigrid, const Balance& balance, const Residual& residual, Values& x,
                double tolerance, int max_cycles, KrylovVectors& v) {
    v.newest.assign(v.work.size(), 0.0);
    multigrid.cycle(v.work, v.newest);
    const double target = tolerance * std::sqrt(dot(v.newest, v.newest));
    Iteration iteration;
    double norm = 0;
    do {
        norm = run(multigrid, balance, residual, x, target, max_cycles, v, iteration);
    } while (norm > target && iteration.cycles < max_cycles);
    iteration.converged = norm <= target;
    return iteration;
}

} // namespace shimlight::section
