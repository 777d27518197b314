// SPDX-License-Identifier: MIT
// From what is printed on a label or a quote to a build whose computed ratings are the same.
#pragma once

#include "assess/rated.hpp"
#include "opening/remedy.hpp"

#include <optional>
#include <string>
#include <vector>

namespace shimlight::assess {

/// How near a build must come: W/m²K, share of the sun, share of the light (which no maker's glass
/// of the same SHGC shares).
inline constexpr double label_u_w_m2k = 0.005, label_shgc = 0.01, label_light = 0.03;

inline constexpr double btu_w_m2k = 5.678263; ///< one Btu/(h·ft²·°F)
inline constexpr double cfm_l_s_m2 = 5.08;    ///< one cfm/ft²

/// Whole-window values. `u` in W/m²K or Btu/(h·ft²·°F), `air` in L/(s·m²) or cfm/ft² at 75 Pa.
struct Label {
    bool us_units = false;
    std::optional<double> u, shgc, light, air;
    std::optional<opening::FrameMaterial> frame; ///< when one sees what it is made of
    std::optional<int> panes;                    ///< 1 to 3
};

struct LabelBuild {
    opening::Opening opening; ///< of the rating's size; frame, glazing and sash are meant
    Rated rated;
    double unusual = 0; ///< less is more likely
};

enum class LabelStanding {
    refused, ///< cannot be, or says nothing; `reason` tells why
    nearest, ///< possible, but no generic build has all of it; the nearest are given
    matched
};

struct LabelAnswer {
    LabelStanding standing = LabelStanding::refused;
    std::string reason;
    std::vector<LabelBuild> builds; ///< likeliest first, of different frames and glass
    int alike = 0;                  ///< combinations that would match as well
    double centre_u_low_w_m2k = 0, centre_u_high_w_m2k = 0; ///< over all of them
};

/// `most_builds` 1 to 12 are worked out at `normal`.
LabelAnswer read_label(const Label& label, int most_builds = 4);

/// What a label decides of an opening, in the order of the field table: frame, glass, how tight the
/// sashes are. Size, wall and joint are none of it.
std::vector<opening::Change> label_changes(const opening::Opening& build);

/// The unit bought for this opening, with its joint foamed: `insert` set into the old wood frame,
/// else into the rough opening. What it costs is the nearest ready-made unit's estimate. No name.
opening::Remedy label_remedy(const opening::Opening& build, const opening::Case& today,
                             bool insert);

/// Sets what a label decides of the window that is there; panels before and behind it stay.
void set_label_build(opening::Case& today, const opening::Opening& build);

} // namespace shimlight::assess
