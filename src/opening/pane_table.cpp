// SPDX-License-Identifier: MIT
#include "opening/pane_table.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

// Reflectance of one face of soda-lime glass, refractive index 1.523: what generic clear glass of
// 3 mm (0.834, 0.075) has.
constexpr double face_reflectance = 0.043;
constexpr double table_thickness_m = 0.003; ///< of the coated panes

// Mean of what panes of 3 and 6 mm give. Clear and bronze solar: read in a public library of glass
// data; the others are generic panes from memory.
constexpr TintRow tints[] = {
    {31.0, 6.9, "generic clear float of 3.05 and 5.7 mm: solar 0.834 and 0.771 (read)"},
    {6.4, 2.0, "generic low-iron float of 3 mm: solar 0.899, light 0.913 (from memory)"},
    {112.6, 93.5, "generic bronze of 3.1 and 5.7 mm: solar 0.646 and 0.486 (read)"},
    {122.0, 130.0, "generic gray of 3 and 6 mm: solar 0.626 and 0.455 (from memory)"},
    {113.0, 35.0, "generic green of 3 and 6 mm: solar 0.635 and 0.487 (from memory)"},
};

constexpr CoatingRow coatings[] = {
    {0.16,
     {0.71, 0.105, 0.115},
     {0.82, 0.11, 0.12},
     "hard coat, range 0.69 to 0.74 (from memory); light by GOST 24866-99 (read)"},
    {0.08,
     {0.58, 0.21, 0.26},
     {0.84, 0.055, 0.06},
     "one silver layer: from ASHRAE 2009 Table 10 row 21c (diffuse read, normal from memory)"},
    {0.05,
     {0.43, 0.34, 0.38},
     {0.79, 0.07, 0.06},
     "two silver layers: from ASHRAE 2009 Table 10 row 25a; like the pane of ASHRAE 140 case 660"},
    {0.025,
     {0.29, 0.42, 0.48},
     {0.70, 0.08, 0.06},
     "three silver layers: units of SHGC 0.27 to 0.30 and light 0.62 to 0.65 (from memory)"},
};

double left_after(double per_m, double thickness_m) {
    return std::exp(-per_m * thickness_m);
}

physics::PaneOptics slab(double left) {
    const double r = face_reflectance;
    const double transmittance = (1 - r) * (1 - r) * left / (1 - r * r * left * left);
    const double reflectance = r * (1 + left * transmittance);
    return {transmittance, reflectance, reflectance};
}

/// `more_left`: of what the glass lets through, against the table's 3 mm of clear glass.
physics::PaneOptics coated(const CoatedBand& band, double more_left, bool coat_outdoors) {
    const double seen_through_glass = std::max(0.0, band.glass_side - face_reflectance);
    physics::PaneOptics pane;
    const double glass_side = face_reflectance + seen_through_glass * more_left * more_left;
    pane.reflectance_out = coat_outdoors ? band.coat_side : glass_side;
    pane.reflectance_in = coat_outdoors ? glass_side : band.coat_side;
    pane.transmittance =
        std::min(band.transmittance * more_left, 1 - std::max(glass_side, band.coat_side));
    return pane;
}

} // namespace

const TintRow& tint_row(Tint tint) {
    return tints[static_cast<std::size_t>(tint)];
}

const CoatingRow& coating_row(CoatingKind kind) {
    return coatings[static_cast<std::size_t>(kind)];
}

CoatingKind kind_of(SecondCoating second) {
    return static_cast<CoatingKind>(static_cast<int>(second) - 1);
}

GlassOptics uncoated_pane(Tint tint, double thickness_m) {
    const TintRow& row = tint_row(tint);
    return {slab(left_after(row.solar_per_m, thickness_m)),
            slab(left_after(row.light_per_m, thickness_m))};
}

GlassOptics coated_pane(CoatingKind kind, bool coat_outdoors, Tint tint, double thickness_m) {
    const TintRow &row = tint_row(tint), &clear = tint_row(Tint::clear);
    const CoatingRow& coating = coating_row(kind);
    const auto more_left = [&](double per_m, double clear_per_m) {
        return left_after(per_m, thickness_m) / left_after(clear_per_m, table_thickness_m);
    };
    return {coated(coating.solar, more_left(row.solar_per_m, clear.solar_per_m), coat_outdoors),
            coated(coating.light, more_left(row.light_per_m, clear.light_per_m), coat_outdoors)};
}

GlassOptics film_pane() {
    // Polyester film of index 1.65 that absorbs next to nothing: two faces of 0.06 (from memory).
    constexpr physics::PaneOptics film{0.87, 0.11, 0.11};
    return {film, film};
}

} // namespace shimlight::opening
