// SPDX-License-Identifier: MIT
// Opening → painting: the cut at head, jamb and sill, through wall, shim space, frame and glass.
// In every painting x runs from outdoors (0) to indoors; y runs along the wall. At the sill the
// glass is at the top, at the head and the jamb the wall lies on the far side of the frame:
// sill: wall below, glass above; head: glass below, wall above; jamb: wall at small y, glass at
// large y (seen from above, it is drawn turned by the view). At the meeting rail there is no wall:
// the lower sash's glass lies below, inside, the upper one's above, outside.
#pragma once

#include "opening/opening.hpp"
#include "physics/glazing.hpp"
#include "section/painting.hpp"

#include <vector>

namespace shimlight::opening {

enum class Position { head, jamb, sill, meeting_rail };
inline constexpr int position_count = 4;

enum class Material {
    softwood,
    hardwood,
    pvc,
    aluminium,
    steel,
    fibreglass,
    composite,
    polyurethane,
    glass,
    gypsum,
    sheathing,
    siding,
    brick,
    concrete,
    plaster,
    insulation,
    stuffing,
    foam,
    backer_rod,
    sealant,
    spacer,
    desiccant,
    rubber,
    cavity,
    gas,
    outdoor_air,
    indoor_air
};

/// The parts of the inside surface that people point at.
/// `storm` is the inner face of a storm panel, which is no part of a cut.
enum class Part { glass_centre, glass_edge, frame, casing, wall, hidden, storm };

/// One rectangle of the cut, in painting order (same index as Painting::regions).
struct Piece {
    Material material = Material::softwood;
    Part part = Part::hidden;
    std::string_view name; ///< "jack stud", "shim space"
};

/// A blind, shade or curtain as it hangs in the cut. For drawing alone: it acts through the film.
struct CoveringStroke {
    Covering kind = Covering::none; ///< none: nothing hangs
    double x_m = 0;                 ///< of its middle
    double end_m = 0;               ///< y of its edge: hem, rail or side; alike where it has none
    double far_m = 0;               ///< y where the cut ends and it goes on
    double gap_m = 0;               ///< to the innermost glass, as drawn
    double slot_m = 0;              ///< open beyond its edge
    bool hem = false;               ///< the edge is the lower one, where air spills out
};

struct Cut {
    Position position = Position::sill;
    section::Painting painting;
    std::vector<Piece> pieces;
    int outside_air = 0, inside_air = 1; ///< first of the airs on each side
    std::vector<bool> air_is_inside;     ///< per air of the painting
    double glass_edge_m = 0;   ///< y of the sight line, where glass comes out of the frame
    double glass_centre_m = 0; ///< y of the far end of the glass, where it is one-dimensional
    double glass_m = 0;        ///< visible glass along the cut, of both sashes at a meeting rail
    double frame_back_m = 0;   ///< y of the frame's back, towards the shim space
    double upper_glass_m = 0;  ///< x of the upper sash's glass, at a meeting rail
    std::vector<section::Point> leak_path; ///< outdoors → shim space → behind casing → room
    std::vector<section::Point> sash_path; ///< outdoors → play of the sash → room
    std::vector<double> glass_face_x_m;    ///< x of each glass face, outside to inside
    CoveringStroke covering;
};

/// How much of the wall is in the picture.
enum class Surroundings {
    wall, ///< installed: wall, rough opening, shim space, casing
    none  ///< the window alone, its back adiabatic: whole-window U
};

/// Cuts the opening. The glass part uses `glass` (detailed balance at this weather): its films and
/// the equivalent conductivity of each gap. Where air creeps through the joint, the painting has it
/// as a stream.
Cut cut(const Case& c, Position position, const physics::GlazingResult& glass,
        Surroundings surroundings = Surroundings::wall);

/// Heat through the wall drawn in a cut, up to the rough opening, if nothing disturbed it: strips
/// of framing and of insulation side by side, each one-dimensional. W per metre of cut and kelvin.
double undisturbed_wall_w_mk(const Case& c, Position position);

/// Weight pockets exist only beside old wood jambs: an old wood window's, or those of an insert.
bool has_pockets(const Opening& opening);

/// Size of the unit itself: of the opening, or of an insert in its old frame.
struct UnitSize {
    double width_m = 0, height_m = 0;
};
UnitSize unit_size(const Opening& opening);

/// The glazing stack of the opening, storm panel included.
physics::GlazingStack glazing_stack(const Opening& opening);

} // namespace shimlight::opening
