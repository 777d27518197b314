// SPDX-License-Identifier: MIT
#include "view/lever_groups.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace shimlight::view {
namespace {

using std::string_view;

constexpr std::array<string_view, 10> day{
    "weather.outside_c", "weather.wind_m_s",           "weather.sky", "room.rh",
    "room.air_c",        "room.seat_distance_m",       "room.storey", "room.storeys",
    "room.basement",     "room.height_above_neutral_m"};
constexpr std::array<string_view, 5> joint{"shim.fill", "shim.bead_m", "shim.width_m",
                                           "casing.seal", "pockets"};
constexpr std::array<string_view, 15> glass{"glazing.panes",
                                            "glazing.coating",
                                            "glazing.coating_kind",
                                            "glazing.emissivity",
                                            "glazing.coating_kind_2",
                                            "glazing.emissivity_2",
                                            "glazing.gas",
                                            "glazing.gas_share",
                                            "glazing.gap_m",
                                            "glazing.spacer",
                                            "glazing.tint",
                                            "glazing.storm",
                                            "glazing.panel",
                                            "covering",
                                            "glazing.pane_thickness_m"};
constexpr std::array<string_view, 8> frame{"frame",       "chambers",          "installation",
                                           "sash.fit",    "sash.rated_l_s_m2", "sash.weatherstrip",
                                           "sash.locked", "sash.slipped_m"};
constexpr std::array<string_view, 5> money{"running.climate", "facing",
                                           "running.heating_degree_days_k", "running.price_per_kwh",
                                           "running.efficiency"};

struct Named {
    string_view title;
    std::span<const string_view> keys;
};
constexpr std::array<Named, 5> named{{{"Weather and room", day},
                                      {"Shim space around the frame", joint},
                                      {"Glass", glass},
                                      {"Frame and sash", frame},
                                      {"Money", money}}};

bool is_named(string_view key) {
    for (const Named& group : named)
        if (std::find(group.keys.begin(), group.keys.end(), key) != group.keys.end()) return true;
    return false;
}

} // namespace

std::vector<LeverGroup> lever_groups(const opening::Case& c) {
    std::vector<LeverGroup> groups;
    for (const Named& group : named) {
        LeverGroup filled{group.title, {}};
        for (const string_view key : group.keys)
            if (const auto* field = opening::find_field(key); field && opening::applies(*field, c))
                filled.fields.push_back(field);
        if (!filled.fields.empty()) groups.push_back(std::move(filled));
    }
    LeverGroup rest{"Sizes, wall and room", {}};
    for (const auto& field : opening::fields())
        if (!is_named(field.key) && opening::applies(field, c)) rest.fields.push_back(&field);
    groups.push_back(std::move(rest));
    return groups;
}

} // namespace shimlight::view
