// SPDX-License-Identifier: MIT
#include "assess/declared_window.hpp"
#include "opening/layout.hpp"
#include "physics/glazing.hpp"
#include "section/field.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

using opening::Cut;
using opening::Position;
using opening::position_count;

// ISO 10077-2: airs, surface resistances, panel.
constexpr double outside_c = 0, inside_c = 20;
constexpr double outside_m2k_w = 0.04, inside_m2k_w = 0.13;
constexpr double panel_w_mk = 0.035;

bool is_glazing(const opening::Piece& piece) {
    const std::string_view parts[] = {"glass", "glass edge", "gas space", "edge seal", "spacer"};
    return std::find(std::begin(parts), std::end(parts), piece.name) != std::end(parts);
}

void set_standard_films(Cut& cut) {
    for (std::size_t i = 0; i < cut.painting.airs.size(); ++i)
        cut.painting.airs[i].film_w_m2k = 1 / (cut.air_is_inside[i] ? inside_m2k_w : outside_m2k_w);
}

void set_panel(Cut& cut) {
    for (std::size_t i = 0; i < cut.pieces.size(); ++i)
        if (is_glazing(cut.pieces[i])) cut.painting.regions[i].fill = section::Solid{panel_w_mk};
}

/// Heat through the cut per metre and kelvin; negative when it cannot be solved.
double conductance_w_mk(const Cut& cut, section::Accuracy accuracy) {
    const Result<section::Field> solved = section::solve(cut.painting, accuracy);
    if (!ok(solved)) return -1;
    double heat_w_m = 0;
    for (std::size_t i = 0; i < cut.air_is_inside.size(); ++i)
        if (cut.air_is_inside[i]) heat_w_m += value(solved).heat_w_m[i];
    return heat_w_m / (inside_c - outside_c);
}

/// Four sides with mitred corners and the meeting rail.
double whole_w_k(const opening::UnitSize& size, const DeclaredWindow& w) {
    const auto at = [](Position position) { return static_cast<std::size_t>(position); };
    const std::size_t head = at(Position::head), jamb = at(Position::jamb),
                      sill = at(Position::sill), rail = at(Position::meeting_rail);
    const double clear_width_m = size.width_m - 2 * w.frame_m[jamb];
    const double clear_height_m =
        size.height_m - w.frame_m[head] - w.frame_m[sill] - w.frame_m[rail];
    const double across_m = size.width_m - w.frame_m[jamb];
    const double along_m = 2 * size.height_m - w.frame_m[head] - w.frame_m[sill];
    const double frame_m[] = {across_m, along_m, across_m, clear_width_m};
    const double edge_m[] = {clear_width_m, 2 * clear_height_m, clear_width_m, clear_width_m};
    double w_k = w.u_glass_w_m2k * clear_width_m * clear_height_m;
    for (std::size_t i = 0; i < position_count; ++i)
        w_k += w.u_frame_w_m2k[i] * w.frame_m[i] * frame_m[i] + w.psi_w_mk[i] * edge_m[i];
    return w_k;
}

} // namespace

DeclaredWindow declared_window(const opening::Opening& opening, section::Accuracy accuracy) {
    opening::Case c;
    c.opening = opening;
    c.opening.tilt_deg = 90;
    c.opening.glazing.storm = opening::Storm::none;
    c.opening.glazing.panel = opening::Panel::none;
    c.weather.outside_c = outside_c;
    c.room.air_c = inside_c;
    const physics::GlazingStack stack = opening::glazing_stack(c.opening);
    const physics::GlazingResult glass =
        physics::glazing_declared(stack, 1 / outside_m2k_w, 1 / inside_m2k_w);
    const double pack_m = opening::glass_pack_m(c.opening.glazing);
    const double panel_w_m2k = 1 / (outside_m2k_w + pack_m / panel_w_mk + inside_m2k_w);

    DeclaredWindow w;
    w.u_glass_w_m2k = glass.u_w_m2k;
    for (std::size_t i = 0; i < position_count; ++i) {
        Cut cut = opening::cut(c, static_cast<Position>(i), glass, opening::Surroundings::none);
        set_standard_films(cut);
        w.frame_m[i] = cut.painting.height_m - cut.glass_m;
        const double with_glass_w_mk = conductance_w_mk(cut, accuracy);
        set_panel(cut);
        const double with_panel_w_mk = conductance_w_mk(cut, accuracy);
        if (with_glass_w_mk < 0 || with_panel_w_mk < 0) return {};
        w.u_frame_w_m2k[i] = (with_panel_w_mk - panel_w_m2k * cut.glass_m) / w.frame_m[i];
        w.psi_w_mk[i] =
            with_glass_w_mk - w.u_frame_w_m2k[i] * w.frame_m[i] - w.u_glass_w_m2k * cut.glass_m;
    }
    // At the meeting rail psi is that of both edges together.
    const opening::UnitSize size = opening::unit_size(c.opening);
    w.u_window_w_m2k = whole_w_k(size, w) / (size.width_m * size.height_m);
    return w;
}

} // namespace shimlight::assess
