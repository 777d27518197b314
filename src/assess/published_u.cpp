// SPDX-License-Identifier: MIT
#include "assess/published_u.hpp"

namespace shimlight::assess {
namespace {

enum class Kind { not_metal, metal_break, metal };

struct Row {
    Kind kind;
    int panes;
    bool low_e, argon;
    PublishedU u;
};

// UK SAP 2012 Table 6e (from memory): wood or PVC-U and metal with a 4 mm break; gaps from 6 to 16
// mm, emissivities from 0.05 to 0.2. US code defaults IECC R303.1.3(1) (from memory): 0.95, 0.55
// non-metal, 1.10, 0.65 with a break, 1.20, 0.80 metal, all in Btu/(h·ft²·°F).
constexpr Row rows[] = {
    {Kind::not_metal, 1, false, false, {4.8, 5.39}},
    {Kind::not_metal, 2, false, false, {2.7, 3.12}},
    {Kind::not_metal, 2, false, true, {2.6, 2.9}},
    {Kind::not_metal, 2, true, false, {1.8, 2.7}},
    {Kind::not_metal, 2, true, true, {1.7, 2.5}},
    {Kind::not_metal, 3, false, false, {2.0, 2.4}},
    {Kind::not_metal, 3, false, true, {1.9, 2.2}},
    {Kind::not_metal, 3, true, false, {1.4, 2.1}},
    {Kind::not_metal, 3, true, true, {1.3, 1.9}},
    {Kind::metal_break, 1, false, false, {5.7, 6.25}},
    {Kind::metal_break, 2, false, false, {3.3, 3.7}},
    {Kind::metal_break, 2, false, true, {3.2, 3.5}},
    {Kind::metal_break, 2, true, false, {2.3, 3.3}},
    {Kind::metal_break, 2, true, true, {2.1, 3.0}},
    {Kind::metal_break, 3, false, false, {2.5, 2.9}},
    {Kind::metal, 1, false, false, {5.7, 6.81}},
    {Kind::metal, 2, false, false, {4.54, 4.54}},
};

} // namespace

std::optional<PublishedU> published_u(const opening::Opening& o) {
    using opening::FrameMaterial;
    const opening::Glazing& g = o.glazing;
    if (g.storm != opening::Storm::none || g.panel != opening::Panel::none) return std::nullopt;
    const bool low_e = g.coating != opening::Coating::none, argon = g.gas == physics::Gas::argon;
    if (g.panes > 1 && !argon && g.gas != physics::Gas::air) return std::nullopt;
    const Kind kind = o.frame == FrameMaterial::aluminium         ? Kind::metal
                      : o.frame == FrameMaterial::aluminium_break ? Kind::metal_break
                                                                  : Kind::not_metal;
    for (const Row& row : rows)
        if (row.kind == kind && row.panes == g.panes && row.low_e == low_e &&
            row.argon == (argon && g.panes > 1))
            return row.u;
    return std::nullopt;
}

} // namespace shimlight::assess
