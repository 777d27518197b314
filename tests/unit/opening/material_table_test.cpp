// SPDX-License-Identifier: MIT
#include "opening/material_table.hpp"

#include <doctest/doctest.h>

using namespace shimlight::opening;

TEST_CASE("every solid has a conductivity with its source") {
    for (const Material material :
         {Material::softwood, Material::hardwood, Material::pvc, Material::aluminium,
          Material::steel, Material::glass, Material::gypsum, Material::sheathing, Material::siding,
          Material::brick, Material::concrete, Material::plaster, Material::insulation,
          Material::stuffing, Material::foam, Material::backer_rod, Material::sealant,
          Material::desiccant, Material::rubber}) {
        const MaterialRow& row = material_row(material);
        CHECK(row.material == material);
        CHECK(row.conductivity_w_mk > 0);
        CHECK_FALSE(row.source.empty());
    }
}

TEST_CASE("spacers: aluminium conducts more than stainless steel, that more than foam") {
    CHECK(spacer_row(SpacerKind::aluminium).conductivity_w_mk >
          10 * spacer_row(SpacerKind::stainless).conductivity_w_mk);
    CHECK(spacer_row(SpacerKind::stainless).conductivity_w_mk >
          spacer_row(SpacerKind::foam).conductivity_w_mk);
}
