// SPDX-License-Identifier: MIT
#include "physics/channel.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <vector>

using namespace shimlight::physics;

namespace {

constexpr double prandtl = 0.71, air_w_mk = 0.025;

/// The mean Nusselt number of fully developed laminar flow that enters plates of another
/// temperature, computed straight from its equation: u(y) dT/dx = a d²T/dy², marched implicitly on
/// half the gap (y from the middle, 0…1), walls at 0, inlet at 1. x* = x / (Dh Re Pr).
double marched_nusselt(double x_star) {
    constexpr int points = 400, steps = 4000;
    std::vector<double> t(points, 1.0), upper(points), right(points);
    const double dy = 1.0 / points;
    // In units of the half gap a: Dh = 4 a; 1.5 (1 - y²) dT/dX = d²T/dy², X = 16 x*.
    double x = 0;
    const double end = 16 * x_star;
    for (int n = 0; n < steps; ++n) {
        const double next = end * std::pow(double(n + 1) / steps, 3); // fine at the entrance
        const double dx = next - x;
        x = next;
        for (int i = 0; i < points; ++i) {
            const double y = (i + 0.5) * dy;
            const double carried = 1.5 * (1 - y * y) / dx;
            const double down = i > 0 ? 1 / (dy * dy) : 0;
            const double up = i + 1 < points ? 1 / (dy * dy) : 2 / (dy * dy); // to the wall, at 0
            const double before = i > 0 ? upper[i - 1] : 0;
            const double pivot = carried + down + up - down * before;
            upper[i] = (i + 1 < points ? up : 0) / pivot;
            right[i] = (carried * t[i] + (i > 0 ? down * right[i - 1] : 0)) / pivot;
        }
        for (int i = points - 1; i >= 0; --i)
            t[i] = right[i] + (i + 1 < points ? upper[i] * t[i + 1] : 0);
    }
    double mixed = 0;
    for (int i = 0; i < points; ++i) {
        const double y = (i + 0.5) * dy;
        mixed += 1.5 * (1 - y * y) * t[i] * dy;
    }
    return -std::log(mixed) / (4 * x_star); // 1 - e^(-NTU) with NTU = 4 Nu x*
}

/// Flow of a channel at a Reynolds number on the hydraulic diameter.
Channel at_reynolds(double reynolds, double gap_m, double length_m) {
    const AirState air;
    return {gap_m, length_m, reynolds * air.viscosity_pa_s / (2 * air.density_kg_m3)};
}

double nusselt(const Channel& channel) {
    return channel_film_w_m2k(channel) * 2 * channel.gap_m / air_w_mk;
}

} // namespace

TEST_CASE("a long channel has the Nusselt number of Graetz's problem, 7.541") {
    // Shah and London 1978: 7.5407 for parallel plates of one temperature.
    CHECK(nusselt(at_reynolds(1, 0.01, 1)) == doctest::Approx(7.541).epsilon(1e-3));
    // There too: the mean is 7.541 + 0.0235 / x* away from the entrance (from memory).
    CHECK(marched_nusselt(0.3) == doctest::Approx(7.541 + 0.0235 / 0.3).epsilon(5e-3));
}

TEST_CASE("at the entrance the correlation follows the marched solution within a tenth") {
    for (const double x_star : {0.003, 0.01, 0.03, 0.1, 0.5}) {
        CAPTURE(x_star);
        // x* = L / (Dh Re Pr) with Dh = 2 gap
        const double gap_m = 0.01, reynolds = 500;
        const double length_m = x_star * 2 * gap_m * reynolds * prandtl;
        CHECK(nusselt(at_reynolds(reynolds, gap_m, length_m)) ==
              doctest::Approx(marched_nusselt(x_star)).epsilon(0.1));
    }
}

TEST_CASE("a narrower channel and more flow exchange more, without steps") {
    CHECK(channel_film_w_m2k(at_reynolds(100, 0.002, 0.1)) >
          channel_film_w_m2k(at_reynolds(100, 0.01, 0.1)));
    double before = 0;
    for (double reynolds = 1; reynolds < 2e4; reynolds *= 1.01) {
        const double now = nusselt(at_reynolds(reynolds, 0.01, 0.1));
        CHECK(now >= before * (1 - 1e-12));
        if (before > 0) CHECK(now < before * 1.06);
        before = now;
    }
    // Direction does not matter.
    Channel back = at_reynolds(300, 0.01, 0.1);
    back.flow_m2_s = -back.flow_m2_s;
    CHECK(nusselt(back) == nusselt(at_reynolds(300, 0.01, 0.1)));
}
