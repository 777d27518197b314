// SPDX-License-Identifier: MIT
#include "physics/sunlight.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {

namespace {

/// Reflectances that differ by less are those of one and the same face.
constexpr double alike = 0.005;

/// Clear float glass of 3 mm (generic: tests/reference/physics/solar_gains.csv).
constexpr PaneOptics clear_glass{0.834, 0.075, 0.075};

bool is_uncoated(const PaneOptics& pane) {
    return std::abs(pane.reflectance_out - pane.reflectance_in) < alike;
}

/// A slab of glass: refractive index, and the share of light left after one crossing straight on.
struct Slab {
    double index = 1, crossing = 1;
};

/// From rho = r (1 + a tau) and tau = (1 - r)² a / (1 - r² a²), r of one face, a of a crossing.
Slab slab_of(double transmittance, double reflectance) {
    const double tau = transmittance, rho = reflectance;
    if (rho <= 0 || tau <= 0) return {1, tau};
    const double beta = tau * tau - rho * rho + 2 * rho + 1;
    const double r = (beta - std::sqrt(beta * beta - 4 * (2 - rho) * rho)) / (2 * (2 - rho));
    const double root = std::sqrt(r);
    return {(1 + root) / (1 - root), std::clamp((rho - r) / (r * tau), 0.0, 1.0)};
}

struct Share {
    double transmittance, reflectance;
};

Share slab_with(double face, double crossing) {
    const double away = 1 - face * face * crossing * crossing;
    if (away <= 0) return {0, 1}; // grazing: all is reflected
    const double transmittance = (1 - face) * (1 - face) * crossing / away;
    return {transmittance, face * (1 + crossing * transmittance)};
}

/// Both polarisations of a slab.
std::array<Share, 2> slab_at(const Slab& slab, double cosine) {
    const double sine = std::sqrt(1 - cosine * cosine) / slab.index;
    const double within = std::sqrt(1 - sine * sine), n = slab.index;
    const double s = (cosine - n * within) / (cosine + n * within);
    const double p = (n * cosine - within) / (n * cosine + within);
    const double crossing = std::pow(slab.crossing, 1 / within);
    return {slab_with(s * s, crossing), slab_with(p * p, crossing)};
}

PaneOptics like_clear_glass(const PaneOptics& pane, const std::array<Share, 2>& clear) {
    const double tau = (clear[0].transmittance + clear[1].transmittance) / 2;
    const double rho = (clear[0].reflectance + clear[1].reflectance) / 2;
    const double risen =
        (rho - clear_glass.reflectance_out) / (1 - clear_glass.reflectance_out); // 0 … 1
    const auto reflectance = [risen](double normal) { return normal + (1 - normal) * risen; };
    PaneOptics at;
    at.reflectance_out = reflectance(pane.reflectance_out);
    at.reflectance_in = reflectance(pane.reflectance_in);
    const double most = 1 - std::max(at.reflectance_out, at.reflectance_in);
    at.transmittance = std::min(pane.transmittance * tau / clear_glass.transmittance, most);
    return at;
}

/// The panes for one polarisation, 0 across the plane of incidence or 1 in it.
PanesOptics panes_at(const PanesOptics& panes, std::size_t count, double cosine, std::size_t of) {
    PanesOptics at;
    for (std::size_t k = 0; k < count; ++k) {
        const PaneOptics& pane = panes[k];
        if (is_uncoated(pane)) {
            const double reflectance = (pane.reflectance_out + pane.reflectance_in) / 2;
            const Share share = slab_at(slab_of(pane.transmittance, reflectance), cosine)[of];
            at[k] = {share.transmittance, share.reflectance, share.reflectance};
        } else {
            const Slab clear = slab_of(clear_glass.transmittance, clear_glass.reflectance_out);
            at[k] = like_clear_glass(pane, slab_at(clear, cosine));
        }
    }
    return at;
}

void add(const StackOptics& part, double weight, StackOptics& sum) {
    sum.transmittance += weight * part.transmittance;
    sum.reflectance += weight * part.reflectance;
    for (std::size_t k = 0; k < max_panes; ++k)
        sum.absorbed[k] += weight * part.absorbed[k];
}

StackOptics through_panes_with(const PanesOptics& panes, std::size_t count, double cosine) {
    StackOptics mean;
    for (const std::size_t polarisation : {0, 1})
        add(through_panes(panes_at(panes, count, cosine, polarisation), count), 0.5, mean);
    return mean;
}

} // namespace

StackOptics through_panes(const PanesOptics& panes, std::size_t count) {
    std::array<double, max_panes + 1> from_here{}; // reflectance of this pane and all behind it
    for (std::size_t k = count; k-- > 0;) {
        const PaneOptics& pane = panes[k];
        const double again = 1 - pane.reflectance_in * from_here[k + 1];
        from_here[k] = pane.reflectance_out +
                       pane.transmittance * pane.transmittance * from_here[k + 1] / again;
    }
    StackOptics stack;
    stack.reflectance = from_here[0];
    double falling = 1;
    for (std::size_t k = 0; k < count; ++k) {
        const PaneOptics& pane = panes[k];
        const double passed =
            falling * pane.transmittance / (1 - pane.reflectance_in * from_here[k + 1]);
        const double back = passed * from_here[k + 1];
        stack.absorbed[k] = falling * (1 - pane.transmittance - pane.reflectance_out) +
                            back * (1 - pane.transmittance - pane.reflectance_in);
        falling = passed;
    }
    stack.transmittance = falling;
    return stack;
}

StackOptics through_panes_at(const PanesOptics& panes, std::size_t count, double angle_deg) {
    const double cosine = std::cos(angle_deg * std::numbers::pi / 180);
    constexpr double grazing = 1e-6; // at the very edge nothing enters and the formulas are 0 / 0
    return through_panes_with(panes, count, std::max(cosine, grazing));
}

StackOptics diffuse_through_panes(const PanesOptics& panes, std::size_t count) {
    // The integral of X(c) d(c²) over c = cos θ from 0 to 1, by midpoints of c²: X falls to that of
    // grazing light without a kink.
    constexpr int parts = 64;
    StackOptics sum;
    for (int n = 0; n < parts; ++n) {
        const double cosine = std::sqrt((n + 0.5) / parts);
        add(through_panes_with(panes, count, cosine), 1.0 / parts, sum);
    }
    return sum;
}

} // namespace shimlight::physics
