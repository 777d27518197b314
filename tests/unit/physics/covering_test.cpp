// SPDX-License-Identifier: MIT
#include "physics/constants.hpp"
#include "physics/covering.hpp"
#include "physics/gas.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

namespace {

// Relaxed until a step changes 1e-10 K; heat flows of some 100 W/m² then close to 1e-6.
constexpr double closed_w_m2 = 1e-5;

CoveredFace winter_glass() {
    return {2, 0.84, 21, 0.9, 1.5};
}

} // namespace

TEST_CASE("behind a covering heat and air balance") {
    Draw draw(31);
    for (int i = 0; i < 300; ++i) {
        const Covering c{draw.between(0, 0.2), draw.between(0.1, 0.95), draw.between(0.015, 0.3),
                         draw.between(0, 0.1), draw.between(0, 0.1),    draw.between(0, 0.05),
                         draw.between(0, 0.1)};
        const CoveredFace face{draw.between(-20, 20), 0.84, 21, draw.between(0.4, 1.8),
                               draw.between(0.6, 2.4)};
        const CoveringResult r = covering(c, face);
        CHECK(r.converged);
        CHECK(r.back_c <= r.front_c + 1e-9);
        CHECK(r.front_c < face.room_c);
        CHECK(r.back_c > face.surface_c);
        CHECK(r.gap_c > face.surface_c);
        CHECK(r.spill_c <= face.room_c);
        CHECK(r.speed_m_s > 0);
        // What the air brings into the gap is what glass takes of it less what the covering gives.
        const double walls_c = (face.surface_c + r.back_c) / 2;
        const GasProperties air = gas_properties(GasMixture{}, walls_c + kelvin_offset_k);
        const double brought_w_m2 = air.density_kg_m3 * air.specific_heat_j_kgk * c.gap_m *
                                    r.speed_m_s * (face.room_c - r.spill_c) / face.height_m;
        const double taken_w_m2 = 2 * r.convective_w_m2k * (r.gap_c - walls_c);
        CHECK(brought_w_m2 == doctest::Approx(taken_w_m2).epsilon(1e-6).scale(closed_w_m2));
    }
}

TEST_CASE("a resistance and tighter slots leave less for the glass") {
    const CoveredFace face = winter_glass();
    const auto heat_w_m2 = [&](const Covering& c) {
        const CoveringResult r = covering(c, face);
        return r.convective_w_m2k * (r.gap_c - face.surface_c) +
               r.radiative_w_m2k * (r.back_c - face.surface_c);
    };
    double before = 1e9;
    for (const double slot_m : {0.02, 0.01, 0.005, 0.002, 0.0}) {
        const double heat = heat_w_m2({0.05, 0.85, 0.08, slot_m, slot_m, slot_m, 0});
        CHECK(heat < before);
        before = heat;
    }
    CHECK(heat_w_m2({0.2, 0.85, 0.08, 0.02, 0.02, 0.02, 0}) <
          heat_w_m2({0, 0.85, 0.08, 0.02, 0.02, 0.02, 0}));
}

TEST_CASE("with glass as warm as the room nothing moves") {
    CoveredFace face = winter_glass();
    face.surface_c = face.room_c;
    const CoveringResult r = covering({}, face);
    CHECK(r.speed_m_s == doctest::Approx(0));
    CHECK(r.gap_c == doctest::Approx(face.room_c));
    CHECK(r.front_c == doctest::Approx(face.room_c));
}
