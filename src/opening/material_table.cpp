// SPDX-License-Identifier: MIT
#include "opening/material_table.hpp"

#include <array>

namespace shimlight::opening {

namespace {

constexpr std::string_view iso_10077_2 = "EN ISO 10077-2:2003 Annex A";
constexpr std::string_view ashrae_2021 = "ASHRAE Handbook Fundamentals 2021 ch. 26 Table 1";

constexpr std::array rows = {
    MaterialRow{Material::softwood, 0.13, iso_10077_2},
    MaterialRow{Material::hardwood, 0.18, iso_10077_2},
    MaterialRow{Material::pvc, 0.17, iso_10077_2},
    MaterialRow{Material::aluminium, 160, iso_10077_2},
    MaterialRow{Material::steel, 50, iso_10077_2},
    MaterialRow{Material::fibreglass, 0.40, iso_10077_2},
    // Wood-plastic composite lies between its wood and its plastic.
    MaterialRow{Material::composite, 0.20, "common practice"},
    MaterialRow{Material::polyurethane, 0.25, iso_10077_2},
    MaterialRow{Material::glass, 1.0, iso_10077_2},
    MaterialRow{Material::gypsum, 0.16, ashrae_2021},
    // 12.7 mm oriented strand board, R = 0.12 m²K/W.
    MaterialRow{Material::sheathing, 0.106, ashrae_2021},
    // Lapped wood siding, 13 mm, R = 0.14 m²K/W.
    MaterialRow{Material::siding, 0.093, ashrae_2021},
    // Outer leaf; fired clay of 1600 to 1920 kg/m³ has 0.61 to 0.98 in ASHRAE's table.
    MaterialRow{Material::brick, 0.77, "usual U-value tables, exposed brickwork"},
    MaterialRow{Material::concrete, 1.35, "EN 12524:2000, 2000 kg/m³"},
    MaterialRow{Material::plaster, 0.57, "usual U-value tables, dense plaster"},
    // Glass-fibre batt of 9.8 to 12 kg/m³; the case may say otherwise.
    MaterialRow{Material::insulation, 0.042, ashrae_2021},
    // Loosely stuffed batt, 7.5 to 8.2 kg/m³.
    MaterialRow{Material::stuffing, 0.047, ashrae_2021},
    // One-component foam: data sheets 0.035 to 0.040, from memory; EN 12524 gives 0.05.
    MaterialRow{Material::foam, 0.036, "common practice"},
    MaterialRow{Material::backer_rod, 0.05, "EN 12524:2000, polyethylene foam"},
    MaterialRow{Material::sealant, 0.35, "EN ISO 10077-2:2003 Annex A, silicone"},
    MaterialRow{Material::desiccant, 0.13, "EN ISO 10077-2:2003 Annex A, silica gel"},
    MaterialRow{Material::rubber, 0.25, "EN ISO 10077-2:2003 Annex A, EPDM"},
};

constexpr MaterialRow still_air = {Material::cavity, 0.025, "EN 12524:2000, air at 10 °C"};

// Wall thicknesses of the hollow bars: common practice.
constexpr double bar_height_m = 0.007;
constexpr double aluminium_wall_m = 0.0004, stainless_wall_m = 0.00018;
constexpr double foil_m = 0.0001, plastic_wall_m = 0.001; // of a hybrid bar
constexpr double aluminium_w_mk = 160, stainless_w_mk = 17, desiccant_w_mk = 0.13;
constexpr double polypropylene_w_mk = 0.25; // with 25 % glass fibre, EN ISO 10077-2:2003 Annex A

/// Two walls and the desiccant between them, side by side from pane to pane.
constexpr double hollow_bar_w_mk(double wall_m, double wall_w_mk) {
    return (2 * wall_m * wall_w_mk + (bar_height_m - 2 * wall_m) * desiccant_w_mk) / bar_height_m;
}

/// Two plastic walls, one with a steel foil on it against gas loss.
constexpr double hybrid_bar_w_mk() {
    return (foil_m * stainless_w_mk + 2 * plastic_wall_m * polypropylene_w_mk +
            (bar_height_m - foil_m - 2 * plastic_wall_m) * desiccant_w_mk) /
           bar_height_m;
}

constexpr std::array spacers = {
    SpacerRow{SpacerKind::aluminium, hollow_bar_w_mk(aluminium_wall_m, aluminium_w_mk),
              "bar of 0.4 mm walls filled with desiccant; EN ISO 10077-2:2003 Annex A"},
    SpacerRow{SpacerKind::stainless, hollow_bar_w_mk(stainless_wall_m, stainless_w_mk),
              "bar of 0.18 mm walls filled with desiccant; EN ISO 10077-2:2003 Annex A"},
    SpacerRow{SpacerKind::foam, 0.17,
              "silicone foam of medium density; EN ISO 10077-2:2003 Annex A"},
    SpacerRow{SpacerKind::hybrid, hybrid_bar_w_mk(),
              "bar of 1 mm polypropylene with a foil of 0.1 mm stainless steel; "
              "EN ISO 10077-2:2003 Annex A"},
};

} // namespace

const MaterialRow& material_row(Material material) {
    for (const MaterialRow& row : rows)
        if (row.material == material) return row;
    return still_air;
}

const SpacerRow& spacer_row(SpacerKind kind) {
    for (const SpacerRow& row : spacers)
        if (row.kind == kind) return row;
    return spacers[0];
}

} // namespace shimlight::opening
