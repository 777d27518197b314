// SPDX-License-Identifier: MIT
#include "assess/solve_memory.hpp"

namespace shimlight::assess {

namespace {

bool same_film(const section::Ambient& a, const section::Ambient& b) {
    return a.name == b.name && a.film_w_m2k == b.film_w_m2k && a.fixed_surface == b.fixed_surface;
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

bool same_airs(const std::vector<section::Ambient>& a, const std::vector<section::Ambient>& b,
               int except_air) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (!same_film(a[i], b[i])) return false;
        const bool counts = static_cast<int>(i) != except_air;
        if (counts && a[i].temperature_c != b[i].temperature_c) return false;
    }
    return true;
}

} // namespace

bool same_painting(const section::Painting& a, const section::Painting& b, int except_air) {
    return a.width_m == b.width_m && a.height_m == b.height_m &&
           same_airs(a.airs, b.airs, except_air) && same_all(a.regions, b.regions) &&
           same_all(a.edges, b.edges);
}

} // namespace shimlight::assess
