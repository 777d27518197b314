// SPDX-License-Identifier: MIT
#include "view/solid_map.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

/// The stretch between two grid lines that a place lies in, -1 outside the grid.
int stretch_of(const std::vector<double>& lines, double place_m) {
    const auto above = std::upper_bound(lines.begin(), lines.end(), place_m);
    return above == lines.end() ? -1 : static_cast<int>(above - lines.begin()) - 1;
}

} // namespace

SolidMap::SolidMap(const section::Field& field, const Placement& placement, Box area)
    : field_(&field), area_(area), turned_(placement.turned) {
    const int wide = std::max(static_cast<int>(std::ceil(area.w)), 0),
              high = std::max(static_cast<int>(std::ceil(area.h)), 0);
    for (int i = 0; i < wide; ++i) {
        const section::Point p =
            placement.to_section({area.x + static_cast<float>(i) + 0.5f, area.y});
        across_.push_back(turned_ ? stretch_of(field.y_m, p.y_m) : stretch_of(field.x_m, p.x_m));
    }
    for (int i = 0; i < high; ++i) {
        const section::Point p =
            placement.to_section({area.x, area.y + static_cast<float>(i) + 0.5f});
        down_.push_back(turned_ ? stretch_of(field.x_m, p.x_m) : stretch_of(field.y_m, p.y_m));
    }
}

bool SolidMap::operator()(ImVec2 screen) const {
    if (!area_.contains(screen)) return false;
    const int a = across_[static_cast<std::size_t>(screen.x - area_.x)];
    const int d = down_[static_cast<std::size_t>(screen.y - area_.y)];
    if (a < 0 || d < 0) return false;
    const int column = turned_ ? d : a, row = turned_ ? a : d;
    return field_->conductivity_w_mk[static_cast<std::size_t>(row * field_->columns() + column)] >
           0;
}

} // namespace shimlight::view
