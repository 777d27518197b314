// SPDX-License-Identifier: MIT
// Long-wave emissivity of glass faces.
#pragma once

namespace shimlight::physics {

/// Corrected (hemispherical) emissivity from the normal one a label gives, 0…1.
/// EN 673:2011 Annex A Table A.2 (from memory), linear between rows; 0.89 → 0.837.
double corrected_emissivity(double normal_emissivity);

/// Emissivity between two large parallel faces: 1 / (1/e1 + 1/e2 - 1); 0 when either is 0.
double exchange_emissivity(double first, double second);

/// Emissivity of bare glass towards a viewer, 0…1; `angle_deg` from straight on, 0…90. What
/// Fresnel's equations do not reflect, at the real index 1.995 that gives 0.89 straight on.
double glass_emissivity_at(double angle_deg);

/// Inside film for a coated room-side face, W/m²K: 3.6 + 4.1 e / 0.837 (EN 673:2011, from memory).
double declared_inside_film_w_m2k(double emissivity_in);

} // namespace shimlight::physics
