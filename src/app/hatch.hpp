// SPDX-License-Identifier: MIT
// Which hatch stands for which material. Numbers are the kinds of shaders/hatch.glsl.
#pragma once

#include "opening/cut.hpp"

namespace shimlight::app {

enum class Hatch {
    clear,
    softwood,
    hardwood,
    plastic,
    metal,
    gypsum,
    panel,
    siding,
    insulation,
    stuffing,
    foam,
    backer_rod,
    sealant,
    desiccant
};

/// Glass, gas and air are left clear.
constexpr Hatch hatch_of(opening::Material material) {
    switch (material) {
    case opening::Material::softwood:
        return Hatch::softwood;
    case opening::Material::hardwood:
        return Hatch::hardwood;
    case opening::Material::pvc:
    case opening::Material::fibreglass:
    case opening::Material::composite:
        return Hatch::plastic;
    case opening::Material::aluminium:
    case opening::Material::steel:
    case opening::Material::spacer:
        return Hatch::metal;
    case opening::Material::gypsum:
    case opening::Material::plaster:
        return Hatch::gypsum;
    case opening::Material::brick:
    case opening::Material::concrete:
    case opening::Material::sheathing:
        return Hatch::panel;
    case opening::Material::siding:
        return Hatch::siding;
    case opening::Material::insulation:
        return Hatch::insulation;
    case opening::Material::stuffing:
        return Hatch::stuffing;
    case opening::Material::foam:
        return Hatch::foam;
    case opening::Material::backer_rod:
        return Hatch::backer_rod;
    case opening::Material::sealant:
    case opening::Material::rubber:
    case opening::Material::polyurethane:
        return Hatch::sealant;
    case opening::Material::desiccant:
        return Hatch::desiccant;
    case opening::Material::glass:
    case opening::Material::cavity:
    case opening::Material::gas:
    case opening::Material::outdoor_air:
    case opening::Material::indoor_air:
        return Hatch::clear;
    }
    return Hatch::clear;
}

} // namespace shimlight::app
