// SPDX-License-Identifier: MIT
#include "section/corner_modes.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

constexpr double quarter_turn = 1.57079632679489661923;
// Exponents are looked for between these. Below the least a temperature jumps for all that a grid
// can show; the second lies below 2, or so near it that it may be missed.
constexpr double least_exponent = 1e-3, most_exponent = 2.5;
// In steps of that share, and at most that wide: two exponents below 1 are farther apart.
constexpr double exponent_share = 0.2, widest_step = 0.02;
constexpr double nearly_linear = 0.98;
constexpr int halvings = 50; // of an exponent's interval: to the last digit

bool solid(double quarter) {
    return quarter > 0;
}

/// Temperature and flux behind some quarters from those before them.
struct Turn {
    double tt = 1, tf = 0, ft = 0, ff = 1;

    void through(double conductivity, double c, double s) {
        const double a = s / conductivity, b = -conductivity * s;
        *this = {c * tt + a * ft, c * tf + a * ff, b * tt + c * ft, b * tf + c * ff};
    }
};

/// Solid quarters that follow each other, and what is beyond the first and the last.
struct Sector {
    int first = 0, count = 0;
    bool ring = false, fixed_before = false, fixed_after = false;
};

/// The largest one: in a single quarter no exponent is below 1.
Sector largest_sector(const Quarters& quarters) {
    if (std::all_of(quarters.begin(), quarters.end(), solid)) return {0, 4, true};
    Sector largest;
    for (int first = 0; first < 4; ++first) {
        const double before = quarters[(first + 3) % 4];
        if (solid(before)) continue;
        int count = 0;
        while (solid(quarters[(first + count) % 4]))
            ++count;
        const double after = quarters[(first + count) % 4];
        if (count > largest.count) {
            largest = {first, count, false, before == fixed_surface, after == fixed_surface};
        }
    }
    return largest;
}

class Corner {
  public:
    explicit Corner(const Quarters& quarters)
        : quarters_(quarters), sector_(largest_sector(quarters)) {}

    bool is_single() const { return sector_.count < 2; }

    /// Nil where the exponent is one of the corner's.
    double miss(double exponent) const {
        const Turn m = turn(exponent);
        if (sector_.ring) return m.tt + m.ff - 2;
        if (sector_.fixed_before) return sector_.fixed_after ? m.tf : m.ff;
        return sector_.fixed_after ? m.tt : m.ft;
    }

    /// The exponent between two at which miss() has different signs.
    double exponent_between(double low, double high) const {
        const bool negative = miss(low) < 0;
        for (int n = 0; n < halvings; ++n) {
            const double middle = 0.5 * (low + high);
            ((miss(middle) < 0) == negative ? low : high) = middle;
        }
        return 0.5 * (low + high);
    }

    CornerMode mode(double exponent) const {
        const double c = std::cos(exponent * quarter_turn), s = std::sin(exponent * quarter_turn);
        CornerMode mode{exponent, quarters_};
        auto [t, f] = start(exponent);
        double largest = 0;
        for (int n = 0; n < sector_.count; ++n) {
            const int quarter = (sector_.first + n) % 4;
            const double conductivity = quarters_[quarter];
            mode.t[quarter] = t;
            mode.f[quarter] = f;
            largest = std::max(largest, std::hypot(t, f / conductivity));
            const double after = c * t + s / conductivity * f;
            f = c * f - conductivity * s * t;
            t = after;
        }
        for (int quarter = 0; quarter < 4; ++quarter) {
            mode.t[quarter] /= largest;
            mode.f[quarter] /= largest;
        }
        return mode;
    }

  private:
    struct Ray {
        double t, f;
    };

    Turn turn(double exponent) const {
        const double c = std::cos(exponent * quarter_turn), s = std::sin(exponent * quarter_turn);
        Turn turn;
        for (int n = 0; n < sector_.count; ++n)
            turn.through(quarters_[(sector_.first + n) % 4], c, s);
        return turn;
    }

    /// Temperature and flux at the first ray, up to a factor.
    Ray start(double exponent) const {
        if (!sector_.ring) return sector_.fixed_before ? Ray{0, 1} : Ray{1, 0};
        // One turn changes neither: both rows of (turn - 1) say so, the larger one more exactly.
        const Turn m = turn(exponent);
        const double k = quarters_[0]; // makes a temperature of a flux
        const bool by_temperature = std::hypot(m.tt - 1, m.tf * k) > std::hypot(m.ft / k, m.ff - 1);
        return by_temperature ? Ray{m.tf, 1 - m.tt} : Ray{1 - m.ff, m.ft};
    }

    Quarters quarters_;
    Sector sector_;
};

struct Polar {
    double power, c, s; ///< r^λ, cos λθ, sin λθ
};

Polar polar(double exponent, Away at) {
    const double angle = exponent * std::atan2(at.aside, at.along);
    const double squared = at.along * at.along + at.aside * at.aside;
    return {std::pow(squared, 0.5 * exponent), std::cos(angle), std::sin(angle)};
}

} // namespace

Away seen_from(int quarter, double dx, double dy) {
    switch (quarter) {
    case 0:
        return {dx, dy};
    case 1:
        return {dy, -dx};
    case 2:
        return {-dx, -dy};
    default:
        return {-dy, dx};
    }
}

double CornerMode::temperature(int quarter, Away at) const {
    const Polar p = polar(exponent, at);
    return p.power * (t[quarter] * p.c + f[quarter] / conductivity_w_mk[quarter] * p.s);
}

double CornerMode::heat(int quarter, Away at) const {
    const Polar p = polar(exponent, at);
    return p.power * (conductivity_w_mk[quarter] * t[quarter] * p.s - f[quarter] * p.c);
}

std::optional<CornerModes> corner_modes(const Quarters& quarters) {
    const Corner corner(quarters);
    if (corner.is_single()) return {};
    const CornerMode nil{1, quarters};
    CornerModes modes{nil, nil};
    std::size_t found = 0;
    double low = least_exponent;
    bool was_negative = corner.miss(low) < 0;
    while (low < most_exponent) {
        const double high = low + std::min(exponent_share * low, widest_step);
        const bool negative = corner.miss(high) < 0;
        if (negative != was_negative) {
            modes[found] = corner.mode(corner.exponent_between(low, high));
            if (modes[0].exponent > nearly_linear) return {};
            if (++found == modes.size()) return modes;
        }
        was_negative = negative;
        low = high;
    }
    if (found == 0) return {};
    return modes;
}

} // namespace shimlight::section
