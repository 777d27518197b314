// SPDX-License-Identifier: MIT
// Opening → stack for the centre-of-glass balance; its gaps as conductances for the cut.
#include "opening/cut.hpp"
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/pane_table.hpp"
#include "opening/sash_glass.hpp"
#include "physics/constants.hpp"
#include "physics/emissivity.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

// Shrink film as a pane: polyester of 0.025 mm (common practice). It lets heat radiation through,
// and is taken as if it stopped it: the space it makes insulates up to a tenth less than computed.
constexpr double film_m = 25e-6, film_w_mk = 0.2;
constexpr double rails_m = 0.17; ///< sill, head and rails of a hung window together
constexpr double least_glass_m = 0.2;
// Below this difference a gap's conductance cannot be told from its heat flow, K.
constexpr double telling_difference_k = 1e-3;

/// 0 for none.
struct CoatedFaces {
    int first = 0, second = 0;
};

CoatedFaces coated_faces(Coating coating) {
    constexpr CoatedFaces faces[] = {{}, {2}, {3}, {4}, {5}, {2, 5}, {2, 4}};
    return faces[static_cast<std::size_t>(coating)];
}

physics::Pane pane(const Glazing& glazing, int number) {
    physics::Pane p;
    p.thickness_m = glazing.pane_thickness_m;
    if (const auto out = coating_on(glazing, 2 * number + 1)) p.emissivity_out = out->emissivity;
    if (const auto in = coating_on(glazing, 2 * number + 2)) p.emissivity_in = in->emissivity;
    return p;
}

physics::Pane storm_pane(Storm storm) {
    physics::Pane p;
    p.thickness_m = storm_pane_m;
    if (storm == Storm::low_e) p.emissivity_in = coating_row(CoatingKind::hard).emissivity;
    return p;
}

/// Its coated face looks at the sash, where no hand wears it.
physics::Pane inside_panel(Panel panel) {
    physics::Pane p;
    p.thickness_m = storm_pane_m;
    if (panel == Panel::low_e) p.emissivity_out = coating_row(CoatingKind::hard).emissivity;
    if (panel == Panel::film) p.thickness_m = film_m, p.conductivity_w_mk = film_w_mk;
    return p;
}

/// Still gas and radiation between two faces of the same temperature.
double still_conductance_w_m2k(const physics::GlazingStack& stack, std::size_t gap, double c) {
    const double kelvin = c + physics::kelvin_offset_k;
    const physics::GasProperties gas = physics::gas_properties(stack.gaps[gap].gas, kelvin);
    const double exchange = physics::exchange_emissivity(stack.panes[gap].emissivity_in,
                                                         stack.panes[gap + 1].emissivity_out);
    return gas.conductivity_w_mk / stack.gaps[gap].width_m +
           4 * exchange * physics::stefan_boltzmann_w_m2k4 * std::pow(kelvin, 3);
}

} // namespace

std::optional<FaceCoating> coating_on(const Glazing& glazing, int face) {
    const CoatedFaces faces = coated_faces(glazing.coating);
    if (face != faces.first && face != faces.second) return {};
    if (face == faces.first || glazing.coating_kind_2 == SecondCoating::same)
        return FaceCoating{glazing.coating_kind, glazing.emissivity};
    return FaceCoating{kind_of(glazing.coating_kind_2), glazing.emissivity_2};
}

bool two_coatings(Coating coating) {
    return coated_faces(coating).second > 0;
}

Panel panel_inside(const Glazing& glazing) {
    const int before = glazing.panes + (glazing.storm != Storm::none);
    return before < static_cast<int>(physics::max_panes) ? glazing.panel : Panel::none;
}

physics::GlazingStack glazing_stack(const Opening& opening) {
    const Glazing& glazing = opening.glazing;
    physics::GlazingStack stack;
    stack.height_m = std::max(least_glass_m, (opening.height_m - rails_m) / 2);
    stack.tilt_deg = opening.tilt_deg;
    stack.pane_count = 0;
    if (glazing.storm != Storm::none) {
        stack.panes[0] = storm_pane(glazing.storm);
        stack.gaps[0] = {storm_gap_m, physics::GasMixture::pure(physics::Gas::air)};
        stack.pane_count = 1;
    }
    for (int i = 0; i < glazing.panes; ++i) {
        if (i > 0)
            stack.gaps[stack.pane_count - 1] = {
                glazing.gap_m, physics::GasMixture::with_air(glazing.gas, glazing.gas_share)};
        stack.panes[stack.pane_count++] = pane(glazing, i);
    }
    const Panel panel = panel_inside(glazing);
    if (panel != Panel::none) {
        stack.gaps[stack.pane_count - 1] = {panel_gap_m,
                                            physics::GasMixture::pure(physics::Gas::air)};
        stack.panes[stack.pane_count++] = inside_panel(panel);
    }
    return stack;
}

GapConductances gap_conductances(const physics::GlazingStack& stack,
                                 const physics::GlazingResult& result) {
    GapConductances conductances{};
    for (std::size_t gap = 0; gap + 1 < stack.pane_count; ++gap) {
        const double outer_c = result.faces_c[2 * gap + 1], inner_c = result.faces_c[2 * gap + 2];
        const double heat_w_m2 = result.gaps[gap].convection_w_m2 + result.gaps[gap].radiation_w_m2;
        const double difference_k = inner_c - outer_c;
        if (result.gaps[gap].equivalent_w_m2k > 0) {
            conductances[gap] = result.gaps[gap].equivalent_w_m2k;
            continue;
        }
        conductances[gap] = std::fabs(difference_k) > telling_difference_k
                                ? heat_w_m2 / difference_k
                                : still_conductance_w_m2k(stack, gap, outer_c);
    }
    return conductances;
}

UnitSize unit_size(const Opening& opening) {
    if (opening.installation == Installation::full_frame)
        return {opening.width_m, opening.height_m};
    return {opening.width_m - 2 * (wood_jamb_m + bed_m),
            opening.height_m - wood_jamb_m - wood_sill_m - 2 * bed_m};
}

} // namespace shimlight::opening
