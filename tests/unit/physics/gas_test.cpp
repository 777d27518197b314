// SPDX-License-Identifier: MIT
#include "physics/gas.hpp"

#include "physics/constants.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

namespace {

constexpr double round_off = 1e-12;      // relative
constexpr double standards_apart = 0.03; // EN 673 and ISO 15099 took other sources; relative
constexpr Gas detailed[] = {Gas::air, Gas::argon, Gas::krypton, Gas::xenon};

void check_near(const GasProperties& a, const GasProperties& b, double relative) {
    CHECK(a.conductivity_w_mk == doctest::Approx(b.conductivity_w_mk).epsilon(relative));
    CHECK(a.viscosity_pa_s == doctest::Approx(b.viscosity_pa_s).epsilon(relative));
    CHECK(a.specific_heat_j_kgk == doctest::Approx(b.specific_heat_j_kgk).epsilon(relative));
    CHECK(a.density_kg_m3 == doctest::Approx(b.density_kg_m3).epsilon(relative));
}

} // namespace

TEST_CASE("air at 0 °C by ISO 15099:2003 Annex B, hand-worked") {
    // 0.002873 + 7.76e-5 T; 3.723e-6 + 4.94e-8 T; 1002.737 + 0.012324 T; p M / (R T).
    const GasProperties air = gas_properties(GasMixture{}, kelvin_offset_k);
    CHECK(air.conductivity_w_mk == doctest::Approx(0.02406944));
    CHECK(air.viscosity_pa_s == doctest::Approx(1.721661e-5));
    CHECK(air.specific_heat_j_kgk == doctest::Approx(1006.1033));
    CHECK(air.density_kg_m3 == doctest::Approx(1.29250).epsilon(1e-4));
}

TEST_CASE("EN 673:2011 Table 1 at its rows and between them") {
    const GasProperties air = gas_properties_declared(GasMixture{}, 10);
    check_near(air, {0.02496, 1.761e-5, 1008, 1.232}, round_off);
    const GasProperties argon = gas_properties_declared(GasMixture::pure(Gas::argon), 10);
    check_near(argon, {0.01684, 2.164e-5, 519, 1.699}, round_off);
    const GasProperties between = gas_properties_declared(GasMixture{}, 5);
    check_near(between, {0.02456, 1.736e-5, 1008, 1.2545}, round_off);
    // 90 % argon by volume, as worked by hand: 1.6523 kg/m³, 2.1237e-5, 0.017652, 567.9.
    const GasProperties mixed = gas_properties_declared(GasMixture::with_air(Gas::argon, 0.9), 10);
    check_near(mixed, {0.017652, 2.1237e-5, 567.9, 1.6523}, 1e-5);
}

TEST_CASE("both standards describe the same gases") {
    for (const Gas gas : detailed) {
        CAPTURE(static_cast<int>(gas));
        check_near(gas_properties(GasMixture::pure(gas), kelvin_offset_k + 10),
                   gas_properties_declared(GasMixture::pure(gas), 10), standards_apart);
    }
}

TEST_CASE("a mixture that is pure has the pure gas's properties") {
    for (const Gas gas : detailed) {
        GasMixture nearly = GasMixture::with_air(gas, 1 - 1e-9);
        check_near(gas_properties(nearly, 283), gas_properties(GasMixture::pure(gas), 283), 1e-7);
    }
}

TEST_CASE("property: density and conductivity of a mixture lie between its gases'") {
    Draw draw(2);
    for (int i = 0; i < 300; ++i) {
        const Gas gas = detailed[draw.whole(1, 3)];
        const double share = draw.between(0, 1), t = draw.between(240, 320);
        const GasProperties air = gas_properties(GasMixture{}, t);
        const GasProperties pure = gas_properties(GasMixture::pure(gas), t);
        const GasProperties mixed = gas_properties(GasMixture::with_air(gas, share), t);
        CHECK(mixed.density_kg_m3 ==
              doctest::Approx((1 - share) * air.density_kg_m3 + share * pure.density_kg_m3));
        CHECK(mixed.conductivity_w_mk <= air.conductivity_w_mk * (1 + round_off));
        CHECK(mixed.conductivity_w_mk >= pure.conductivity_w_mk * (1 - round_off));
    }
}
