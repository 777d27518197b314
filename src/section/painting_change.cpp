// SPDX-License-Identifier: MIT
#include "section/painting_change.hpp"

#include "section/cavity.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

double factor(double a, double b) {
    if (a == b) return 1;
    return a > 0 && b > 0 ? std::max(a / b, b / a) : HUGE_VAL;
}

double change(const Ambient& a, const Ambient& b) {
    if (a.fixed_surface != b.fixed_surface) return HUGE_VAL;
    return a.fixed_surface ? 1 : factor(a.film_w_m2k, b.film_w_m2k);
}

double change(const Region& a, const Region& b) {
    if (!(a.rect == b.rect) || a.fill.index() != b.fill.index()) return HUGE_VAL;
    if (const Solid* solid = std::get_if<Solid>(&a.fill))
        return factor(solid->conductivity_w_mk, std::get_if<Solid>(&b.fill)->conductivity_w_mk);
    if (const Cavity* cavity = std::get_if<Cavity>(&a.fill)) {
        const Cavity& other = *std::get_if<Cavity>(&b.fill);
        if (cavity->follows != other.follows) return HUGE_VAL;
        return factor(equivalent_conductivity_w_mk(*cavity, a.rect),
                      equivalent_conductivity_w_mk(other, b.rect));
    }
    return a == b ? 1 : HUGE_VAL;
}

double change(const Reach& a, const Reach& b) {
    if (!(a.rect == b.rect) || a.from != b.from) return HUGE_VAL;
    return factor(a.film_w_m2k, b.film_w_m2k);
}

double change(const Stream& a, const Stream& b);

/// The largest change from one list to the other, element by element.
template <class Element>
double change(const std::vector<Element>& a, const std::vector<Element>& b) {
    if (a.size() != b.size()) return HUGE_VAL;
    double largest = 1;
    for (std::size_t k = 0; k < a.size(); ++k)
        largest = std::max(largest, change(a[k], b[k]));
    return largest;
}

double change(const Stream& a, const Stream& b) {
    return std::max(factor(a.capacity_w_mk, b.capacity_w_mk), change(a.reaches, b.reaches));
}

} // namespace

double largest_change(const Painting& a, const Painting& b) {
    if (a.width_m != b.width_m || a.height_m != b.height_m || a.edges != b.edges) return HUGE_VAL;
    return std::max(
        {change(a.airs, b.airs), change(a.regions, b.regions), change(a.streams, b.streams)});
}

void take_up_cavities(const Painting& from, Painting& to) {
    const std::size_t count = std::min(from.regions.size(), to.regions.size());
    for (std::size_t r = 0; r < count; ++r) {
        const Cavity* known = std::get_if<Cavity>(&from.regions[r].fill);
        Cavity* cavity = std::get_if<Cavity>(&to.regions[r].fill);
        if (!known || !cavity || !cavity->follows) continue;
        if (!(from.regions[r].rect == to.regions[r].rect)) continue;
        cavity->mean_c = known->mean_c;
        cavity->across_k = known->across_k;
    }
}

} // namespace shimlight::section
