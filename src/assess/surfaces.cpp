// SPDX-License-Identifier: MIT
#include "assess/surfaces.hpp"
#include "physics/moist_air.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Part;

constexpr Part visible_parts[] = {Part::glass_centre, Part::glass_edge, Part::frame, Part::casing,
                                  Part::wall};
constexpr int joint_probes = 12; ///< along the shim space: 10 mm apart

double face_length_m(const section::SurfaceFace& face) {
    return std::hypot(face.to.x_m - face.from.x_m, face.to.y_m - face.from.y_m);
}

std::vector<bool> regions_of(const opening::Cut& cut, Part part) {
    std::vector<bool> wanted;
    for (const opening::Piece& piece : cut.pieces)
        wanted.push_back(piece.part == part);
    return wanted;
}

/// Takes the cut's coldest place of the part if it is colder than `coldest`.
void take_colder(const SolvedCut& solved, Part part, std::optional<PartSurface>& coldest) {
    const auto place = coldest_of_part(solved, part);
    if (!place || (coldest && place->c >= coldest->surface_c)) return;
    coldest.emplace();
    coldest->part = part;
    coldest->position = solved.cut.position;
    coldest->surface_c = place->c;
    coldest->at = place->at;
}

void add_moisture(PartSurface& surface, const opening::Case& c) {
    const physics::SurfaceMoisture moisture =
        physics::surface_moisture(c.room.air_c, c.room.rh, surface.surface_c, c.weather.outside_c);
    surface.max_rh = moisture.max_rh_before_wet;
    surface.wet = moisture.wet;
    surface.frost = moisture.frost;
    // With both airs alike nothing is known of colder weather but that it takes colder weather.
    const bool measurable = std::isfinite(moisture.temperature_factor);
    surface.temperature_factor = measurable ? moisture.temperature_factor : 1;
    surface.wet_below_outside_c = physics::wet_below_outside_c(surface.temperature_factor,
                                                               c.room.air_c, moisture.dew_point_c);
}

} // namespace

std::optional<section::ColdestPoint> coldest_of_part(const SolvedCut& solved, Part part) {
    const std::vector<bool> wanted = regions_of(solved.cut, part);
    std::optional<section::ColdestPoint> coldest;
    for (std::size_t air = 0; air < solved.cut.air_is_inside.size(); ++air) {
        if (!solved.cut.air_is_inside[air]) continue;
        const auto place = solved.field.coldest(static_cast<int>(air), &wanted);
        if (place && (!coldest || place->c < coldest->c)) coldest = place;
    }
    return coldest;
}

double heat_of_part_w_m(const SolvedCut& solved, Part part) {
    double heat_w_m = 0;
    for (const section::SurfaceFace& face : solved.field.faces) {
        const bool inside = solved.cut.air_is_inside[static_cast<std::size_t>(face.air)];
        if (inside && solved.cut.pieces[static_cast<std::size_t>(face.region)].part == part)
            heat_w_m += face.flux_w_m2 * face_length_m(face);
    }
    return heat_w_m;
}

std::vector<PartSurface> part_surfaces(const SolvedCuts& cuts, const opening::Case& c) {
    std::vector<PartSurface> surfaces;
    for (const Part part : visible_parts) {
        std::optional<PartSurface> coldest;
        for (const auto& solved : cuts)
            if (solved) take_colder(*solved, part, coldest);
        if (!coldest) continue;
        coldest->heat_w_m =
            heat_of_part_w_m(*cuts[static_cast<std::size_t>(coldest->position)], part);
        add_moisture(*coldest, c);
        surfaces.push_back(*coldest);
    }
    return surfaces;
}

std::vector<Part> wetting_order(const std::vector<PartSurface>& parts) {
    std::vector<const PartSurface*> wettable;
    for (const PartSurface& surface : parts)
        if (surface.max_rh < 1) wettable.push_back(&surface);
    std::stable_sort(
        wettable.begin(), wettable.end(),
        [](const PartSurface* a, const PartSurface* b) { return a->max_rh < b->max_rh; });
    std::vector<Part> order;
    for (const PartSurface* surface : wettable)
        order.push_back(surface->part);
    return order;
}

double mean_surface_c(const SolvedCuts& cuts, Part part, double otherwise_c) {
    double sum_cm = 0, length_m = 0;
    for (const auto& solved : cuts) {
        if (!solved) continue;
        for (const section::SurfaceFace& face : solved->field.faces) {
            const bool inside = solved->cut.air_is_inside[static_cast<std::size_t>(face.air)];
            const auto& piece = solved->cut.pieces[static_cast<std::size_t>(face.region)];
            if (!inside || piece.part != part) continue;
            sum_cm += face.temperature_c * face_length_m(face);
            length_m += face_length_m(face);
        }
    }
    return length_m > 0 ? sum_cm / length_m : otherwise_c;
}

double mean_joint_c(const SolvedCuts& cuts, double otherwise_c) {
    double sum_c = 0;
    int count = 0;
    for (const auto& solved : cuts) {
        if (!solved || solved->cut.leak_path.size() < 4) continue;
        // The path runs through the shim space between its third and fourth point.
        const section::Point from = solved->cut.leak_path[2], to = solved->cut.leak_path[3];
        for (int i = 0; i < joint_probes; ++i) {
            const double share = (i + 0.5) / joint_probes;
            sum_c += solved->field.probe_c(
                {from.x_m + share * (to.x_m - from.x_m), from.y_m + share * (to.y_m - from.y_m)});
            ++count;
        }
    }
    return count > 0 ? sum_c / count : otherwise_c;
}

} // namespace shimlight::assess
