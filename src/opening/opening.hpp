// SPDX-License-Identifier: MIT
// What a window in a wall is, in the room it makes cold, on the day it does so.
#pragma once

#include "physics/gas.hpp"

namespace shimlight::opening {

enum class FrameMaterial {
    wood,
    vinyl,
    aluminium,
    clad_wood, ///< with an aluminium skin outdoors
    vinyl_steel,
    fibreglass,
    composite, ///< of wood and plastic
    aluminium_break
};
constexpr bool is_wood(FrameMaterial frame) {
    return frame == FrameMaterial::wood || frame == FrameMaterial::clad_wood;
}
constexpr bool is_metal(FrameMaterial frame) {
    return frame == FrameMaterial::aluminium || frame == FrameMaterial::aluminium_break;
}
enum class SpacerKind { aluminium, stainless, foam, hybrid };
enum class WallBuild { frame_2x4, frame_2x6, balloon, brick_cavity, solid_masonry };
/// Outside of a framed wall; masonry is its own outside.
enum class Cladding { wood, brick_veneer, stucco };
enum class Lining { board, plaster };
enum class WallCavity { filled, empty };
enum class ShimFill { open, stuffed, backer_rod, foamed, partly_foamed };
/// Boxes beside an old wood jamb in which the sash weights hang. `insulated`: weights out, holes
/// closed, filled.
enum class Pockets { none, empty, insulated };
enum class CasingSeal { unsealed, caulked };
enum class SashFit { tight, worn, loose };
enum class Storm { none, clear, low_e };
/// `full_frame`: the unit stands in the rough opening. `insert`: it stands in an old wood frame
/// that was left in the rough opening and keeps its shim space.
enum class Installation { full_frame, insert };
/// Closed before the window at night.
enum class Covering { none, blind, shade, curtain };
/// Below the window.
enum class Heater { none, radiator, baseboard, register_ };
/// Where in the house the room is; `by_height` is told by its height above the neutral level.
enum class Storey { by_height, basement, ground, upstairs, attic };
/// Which way the window looks when the wind blows.
enum class Facade { windward, side, lee };
enum class Coating { none, face2, face3, face4, face5, faces2and5, faces2and4 };
/// `hard` is fired onto the glass; the soft ones have layers of silver: more of them let in less
/// sun.
enum class CoatingKind { hard, one_silver, two_silvers, three_silvers };
/// Of the coated face nearer the room, where two are: `same` as the other's, or a kind of its own.
enum class SecondCoating { same, hard, one_silver, two_silvers, three_silvers };
enum class Tint { clear, low_iron, bronze, grey, green }; ///< of the outermost pane of the sash
/// A second window on the room side of the sashes.
enum class Panel { none, clear, low_e, film };
/// What the sky radiates: `cloudy` like air, `clear_night` much less.
enum class Sky { cloudy, clear_night };

struct Wall {
    WallBuild build = WallBuild::frame_2x4;
    double insulation_w_mk = 0.042; ///< of what fills the cavity of the wall beside the window
    WallCavity cavity = WallCavity::filled;
    Cladding cladding = Cladding::wood;
    Lining lining = Lining::board;
};

/// The space between window frame and rough opening, behind the casing.
struct ShimSpace {
    double width_m = 0.0127;
    ShimFill fill = ShimFill::open;
    double bead_m = 0.025; ///< depth of a partial foam filling, at the room's side
};

struct Casing {
    double width_m = 0.07;
    double thickness_m = 0.018;
    CasingSeal seal = CasingSeal::unsealed;
};

struct Sash {
    SashFit fit = SashFit::worn;
    bool weatherstrip = false;
    double rated_l_s_m2 = 0; ///< of a tight unit's label at 75 Pa, per area; 0 when not known
    bool locked = true;
    double slipped_m = 0; ///< how far the upper sash has come down; a locked one cannot have
};

struct Glazing {
    int panes = 1;
    double pane_thickness_m = 0.003;
    double gap_m = 0.0127;
    physics::Gas gas = physics::Gas::air;
    double gas_share = 0.9; ///< of the gap; the rest is air
    Coating coating = Coating::none;
    CoatingKind coating_kind = CoatingKind::two_silvers;
    double emissivity = 0.05; ///< of the coated face(s)
    SecondCoating coating_kind_2 = SecondCoating::same;
    double emissivity_2 = 0.16; ///< of the second coated face, unless it is the same
    Tint tint = Tint::clear;
    SpacerKind spacer = SpacerKind::aluminium;
    Storm storm = Storm::none; ///< a storm panel outside
    Panel panel = Panel::none; ///< a panel inside
};

/// Which way the window looks out.
enum class Facing { north, north_east, east, south_east, south, south_west, west, north_west };

/// One hung window in a framed wall. Width and height are those of the window frame in the rough
/// opening: of the unit itself, or of the old frame around an insert.
struct Opening {
    double width_m = 0.90;
    double height_m = 1.50;
    double sill_m = 0.60;          ///< floor to the inside sill
    double tilt_deg = 90;          ///< of the glass: 90 upright, less in a roof
    Facing facing = Facing::north; ///< the least sun, where it is not known
    Wall wall;
    ShimSpace shim;
    Casing casing;
    FrameMaterial frame = FrameMaterial::wood;
    int chambers = 3; ///< of a plastic frame, from outdoors to the room
    Installation installation = Installation::full_frame;
    Pockets pockets = Pockets::none;
    Sash sash;
    Glazing glazing;
    Covering covering = Covering::none;
};

struct Weather {
    double outside_c = -10;
    double wind_m_s = 4;
    Sky sky = Sky::cloudy;
    double altitude_m = 0; ///< thinner air carries less
};

inline constexpr double usual_sill_depth_m = 0.05; ///< stool beyond the wall, common practice

struct Room {
    double air_c = 21;
    double rh = 0.35;
    double seat_distance_m = 1.0;
    Storey storey = Storey::by_height;
    int storeys = 2;       ///< heated, from the ground floor up; an attic lived in counts
    bool basement = false; ///< heated
    double height_above_neutral_m = -1.5; ///< window centre above the house's neutral level
    Facade facade = Facade::windward;
    Heater heater = Heater::none;
    double sill_depth_m = usual_sill_depth_m; ///< of the inside sill board
    double shelter = 0.5;                     ///< of wind pressure that reaches the façade, 0…1
    double width_m = 4, depth_m = 4, height_m = 2.5;
};

/// What a year of heat costs here.
struct Running {
    int climate = 0; ///< 0: the degree days below; else the place of the table, one less
    double heating_degree_days_k = 3300; ///< K·day, base 18 °C
    double price_per_kwh = 0.06;         ///< of fuel or electricity, in the house's currency
    double efficiency = 0.85;            ///< of the heater; a heat pump's is above 1
};

/// Everything one answer depends on.
struct Case {
    Opening opening;
    Weather weather;
    Room room;
    Running running;
};

} // namespace shimlight::opening
