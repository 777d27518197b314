// SPDX-License-Identifier: MIT
// The cut where the two sashes of a hung window meet: the lower sash with its glass below, inside;
// the upper sash with its glass above, outside; their rails one behind the other with lips that
// meet in the middle. Each sash is painted as everywhere else, the lower one turned over.
#include "opening/crack_stream.hpp"
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "physics/channel.hpp"

namespace shimlight::opening {

namespace {

constexpr double cavity_emissivity = 0.9; // ISO 10077-2 default for frame cavities
constexpr double strip_m = 0.005;         // height of a weather strip, common practice
constexpr double into_air_m = 0.015;      // where the line of the air starts and ends

/// The gap between the two rails' lips.
Box play_box(const MeetingRail& r) {
    const double middle_m = (r.upper.unit.sash_inside_m + r.lower.unit.sash_outside_m) / 2;
    return {middle_m - sash_play_m / 2, r.upper.unit.sash_m, middle_m + sash_play_m / 2,
            r.upper.unit.sight_m};
}

/// Outdoors before each glass and behind it the room; the rails are painted over where they meet.
void paint_airs(Painter& painter, const MeetingRail& r, const MeetingAirs& airs) {
    const Box play = play_box(r);
    const double top_m = r.upper.height_m, width_m = r.upper.width_m;
    const auto split = [&](double from_m, double to_m, double u_m) {
        painter.air({0, from_m, u_m, to_m}, Material::outdoor_air, airs.outside);
        painter.air({u_m, from_m, width_m, to_m}, Material::indoor_air, airs.inside);
    };
    split(0, play.v0_m, r.lower.glass.outside_m);
    split(play.v0_m, play.v1_m, (play.u0_m + play.u1_m) / 2);
    split(play.v1_m, top_m, r.upper.glass.outside_m);
}

void paint_storm(Painter& painter, const MeetingRail& r, double conductance_w_m2k) {
    const GlassLayout& g = r.upper.glass;
    const Box play = play_box(r);
    const double top_m = r.upper.height_m, inside_m = g.storm_inside_m;
    const auto space = [&](double from_m, double to_m, double u_m) {
        painter.solid({inside_m, from_m, u_m, to_m}, Material::gas, {"storm air space"},
                      conductance_w_m2k * (u_m - inside_m));
    };
    space(0, play.v0_m, r.lower.glass.outside_m);
    space(play.v0_m, top_m, g.outside_m);
    paint_space_bar(painter, play.v0_m, inside_m, r.lower.glass.outside_m);
    paint_space_bar(painter, play.v1_m, inside_m, g.outside_m);
    painter.solid({g.storm_outside_m, 0, inside_m, top_m}, Material::glass, {"storm panel"});
    const double middle_m = (play.v0_m + play.v1_m) / 2;
    painter.solid({r.upper.unit.outside_m - storm_rail_depth_m, middle_m - storm_rail_m / 2,
                   r.upper.unit.outside_m, middle_m + storm_rail_m / 2},
                  Material::aluminium, {"storm rail"});
}

/// A panel inside passes before both sashes in one piece.
void paint_panel(Painter& painter, const MeetingRail& r, const physics::Pane& pane,
                 double conductance_w_m2k) {
    const GlassLayout& g = r.lower.glass;
    const Box play = play_box(r);
    const double top_m = r.lower.height_m, u0_m = g.panel_outside_m, u1_m = g.panel_inside_m;
    const auto space = [&](double from_m, double to_m, double u_m) {
        painter.solid({u_m, from_m, u0_m, to_m}, Material::gas, {"panel air space"},
                      conductance_w_m2k * (u0_m - u_m));
    };
    space(0, play.v1_m, g.inside_m);
    space(play.v1_m, top_m, r.upper.glass.inside_m);
    paint_space_bar(painter, play.v0_m, g.inside_m, u0_m);
    paint_space_bar(painter, play.v1_m, r.upper.glass.inside_m, u0_m);
    const double w_mk = pane.conductivity_w_mk * (u1_m - u0_m) / pane.thickness_m;
    painter.solid({u0_m, 0, u1_m, top_m}, Material::glass, {"panel", Part::glass_centre}, w_mk);
    painter.solid({u0_m, play.v0_m - edge_band_m, u1_m, play.v1_m + edge_band_m}, Material::glass,
                  {"panel", Part::glass_edge}, w_mk);
}

/// What reaches from one rail towards the other: wood, or a leg of the profile.
void paint_lips(Painter& painter, const MeetingRail& r, const Opening& opening) {
    const Box play = play_box(r);
    const Label label = {"meeting rail", Part::frame};
    const Material material = lip_material(opening.frame);
    painter.solid({r.upper.unit.sash_inside_m, play.v0_m, r.lower.unit.sash_outside_m, play.v1_m},
                  material, label);
    painter.cavity(play, {"play of the sashes", Part::frame}, cavity_emissivity);
    if (is_wood(opening.frame)) return;
    painter.solid({play.u0_m, play.v0_m, play.u1_m, play.v0_m + strip_m}, Material::rubber,
                  {"weather strip", Part::frame});
    painter.solid({play.u0_m, play.v1_m - strip_m, play.u1_m, play.v1_m}, Material::rubber,
                  {"weather strip", Part::frame});
}

void paint_sash(Painter& painter, const Layout& l, const Opening& opening,
                const GapConductances& gaps) {
    if (is_wood(opening.frame))
        paint_wood_sash(painter, l, opening.frame == FrameMaterial::clad_wood);
    else
        paint_hollow_sash(painter, l, opening.frame, opening.chambers);
    paint_panes(painter, l, opening.glazing, gaps);
}

/// Air comes in from below, where it is outdoors, and leaves above.
void lead_stream(Painter& painter, const MeetingRail& r, const CrackStream& stream) {
    if (!stream.flows) return;
    const Box play = play_box(r);
    const double film_w_m2k = physics::channel_film_w_m2k(
        {play.u1_m - play.u0_m, play.v1_m - play.v0_m, stream.flow_m2_s}, stream.air);
    section::Stream air = {std::string(sash_stream_name), stream.inlet_c, stream.capacity_w_mk, {}};
    air.reaches.push_back(
        painter.reach(play, stream.comes_in ? Way::to_glass : Way::to_wall, film_w_m2k));
    painter.cut().painting.streams.push_back(std::move(air));
}

void note_places(Painter& painter, const MeetingRail& r, const Glazing& glazing) {
    const Box play = play_box(r);
    const double middle_m = (play.u0_m + play.u1_m) / 2;
    Cut& cut = painter.cut();
    cut.glass_edge_m = play.v0_m;
    cut.glass_centre_m = 0;
    cut.glass_m = 2 * visible_glass_m;
    cut.frame_back_m = play.v1_m;
    cut.upper_glass_m = r.upper.glass.outside_m;
    cut.sash_path = {{middle_m, play.v0_m - into_air_m},
                     {middle_m, play.v0_m},
                     {middle_m, play.v1_m},
                     {middle_m, play.v1_m + into_air_m}};
    note_faces(cut, r.lower, glazing);
    const GlassLayout& g = r.lower.glass;
    if (!g.panel) return;
    cut.glass_face_x_m.push_back(g.panel_outside_m);
    cut.glass_face_x_m.push_back(g.panel_inside_m);
}

} // namespace

void paint_meeting_rail(Painter& painter, const Case& c, const MeetingRail& r,
                        const physics::GlazingStack& stack, const GapConductances& gaps,
                        const MeetingAirs& airs, const CrackStream& sash) {
    const Opening& opening = c.opening;
    paint_airs(painter, r, airs);
    if (r.upper.glass.storm) paint_storm(painter, r, gaps[0]);
    if (r.lower.glass.panel)
        paint_panel(painter, r, stack.panes[stack.pane_count - 1], gaps[stack.pane_count - 2]);
    paint_sash(painter, r.upper, opening, gaps);
    painter.turn_over();
    paint_sash(painter, r.lower, opening, gaps);
    painter.turn_over();
    paint_lips(painter, r, opening);
    lead_stream(painter, r, sash);
    note_places(painter, r, opening.glazing);
    painter.cut().covering = covering_stroke(painter, r.lower, opening);
}

} // namespace shimlight::opening
