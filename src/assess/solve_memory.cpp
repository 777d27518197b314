// SPDX-License-Identifier: MIT
#include "assess/solve_memory.hpp"

#include <cmath>

namespace shimlight::assess {

namespace {

// Airs nearer than this give no heat flow to measure a conductance by, K.
constexpr double measurable_k = 0.5;

bool same(const section::Ambient& a, const section::Ambient& b) {
    return a.name == b.name && a.temperature_c == b.temperature_c && a.film_w_m2k == b.film_w_m2k &&
           a.fixed_surface == b.fixed_surface;
}

bool same(const section::Rect& a, const section::Rect& b) {
    return a.x0_m == b.x0_m && a.y0_m == b.y0_m && a.x1_m == b.x1_m && a.y1_m == b.y1_m;
}

bool same(const section::Solid& a, const section::Solid& b) {
    return a.conductivity_w_mk == b.conductivity_w_mk;
}

bool same(const section::Cavity& a, const section::Cavity& b) {
    return a.emissivity == b.emissivity && a.ventilation == b.ventilation && a.flow == b.flow;
}

bool same(const section::AirRef& a, const section::AirRef& b) {
    return a.air == b.air;
}

template <class Fill> bool same_fill(const section::Region& a, const section::Region& b) {
    const Fill* first = std::get_if<Fill>(&a.fill);
    const Fill* second = std::get_if<Fill>(&b.fill);
    return !first || (second && same(*first, *second));
}

bool same(const section::Region& a, const section::Region& b) {
    return same(a.rect, b.rect) && a.fill.index() == b.fill.index() &&
           same_fill<section::Solid>(a, b) && same_fill<section::Cavity>(a, b) &&
           same_fill<section::AirRef>(a, b);
}

bool same(const section::Edge& a, const section::Edge& b) {
    return a.side == b.side && a.from_m == b.from_m && a.to_m == b.to_m && a.air == b.air;
}

template <class Item> bool same_all(const std::vector<Item>& a, const std::vector<Item>& b) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if (!same(a[i], b[i])) return false;
    return true;
}

double inside_heat_w_m(const SolvedCut& solved) {
    double heat_w_m = 0;
    for (std::size_t air = 0; air < solved.field.heat_w_m.size(); ++air)
        if (solved.cut.air_is_inside[air]) heat_w_m += solved.field.heat_w_m[air];
    return heat_w_m;
}

double difference_k(const opening::Cut& cut) {
    const auto& airs = cut.painting.airs;
    return airs[static_cast<std::size_t>(cut.inside_air)].temperature_c -
           airs[static_cast<std::size_t>(cut.outside_air)].temperature_c;
}

} // namespace

bool same_painting(const section::Painting& a, const section::Painting& b) {
    return a.width_m == b.width_m && a.height_m == b.height_m && same_all(a.airs, b.airs) &&
           same_all(a.regions, b.regions) && same_all(a.edges, b.edges);
}

bool Slot::fresh(section::Accuracy least) const {
    if (!solved || accuracy < least) return failed;
    return failed || same_painting(solved->cut.painting, wanted.painting);
}

void Slot::solve(section::Accuracy wanted_accuracy) {
    const section::Field* warm = solved ? &solved->field : nullptr;
    Result<section::Field> result = section::solve(wanted.painting, wanted_accuracy, warm);
    failed = !ok(result);
    if (failed) return;
    auto next = std::make_shared<SolvedCut>();
    next->cut = wanted;
    next->field = std::move(value(result));
    const double glass_m = std::fabs(wanted.glass_centre_m - wanted.glass_edge_m);
    sight_m = wanted.painting.height_m - glass_m;
    const double between_k = difference_k(wanted);
    if (std::fabs(between_k) >= measurable_k)
        excess_w_mk =
            inside_heat_w_m(*next) / between_k - glass_u_w_m2k * glass_m - undisturbed_w_mk;
    solved = std::move(next);
    accuracy = wanted_accuracy;
}

} // namespace shimlight::assess
