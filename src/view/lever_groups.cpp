// SPDX-License-Identifier: MIT
#include "view/lever_groups.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace shimlight::view {
namespace {

using std::string_view;

constexpr std::array<string_view, 5> day{"weather.outside_c", "weather.wind_m_s", "room.rh",
                                         "room.air_c", "room.seat_distance_m"};
constexpr std::array<string_view, 3> joint{"shim.fill", "shim.width_m", "casing.seal"};
constexpr std::array<string_view, 9> glass{
    "glazing.panes",  "glazing.coating",          "glazing.emissivity",
    "glazing.gas",    "glazing.gas_share",        "glazing.gap_m",
    "glazing.spacer", "glazing.pane_thickness_m", "glazing.storm"};
constexpr std::array<string_view, 6> frame{
    "frame", "installation", "sash.fit", "sash.weatherstrip", "sash.locked", "sash.slipped_m"};
constexpr std::array<string_view, 3> money{"running.heating_degree_days_k", "running.price_per_kwh",
                                           "running.efficiency"};

struct Named {
    string_view title;
    std::span<const string_view> keys;
};
constexpr std::array<Named, 5> named{{{"Weather and room", day},
                                      {"Joint around the frame", joint},
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
