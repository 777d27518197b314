// SPDX-License-Identifier: MIT
#include "opening/field_table.hpp"
#include "opening/field_rows.hpp"
#include "opening/pane_table.hpp"
#include "opening/sash_glass.hpp"
#include "opening/storey.hpp"
#include "opening/wall_build.hpp"
#include "physics/glazing.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

constexpr double clear_below_ceiling_m = 0.05; ///< room for the head casing; common practice
constexpr double behind_seat_m = 0.4;          ///< room for the chair's back; common practice

int faces(const Opening& opening) {
    return 2 * opening.glazing.panes;
}

/// Highest face a coating needs; 0 for none. The face to the room (2 of single glass) stays bare:
/// soft coatings do not last there and single glass is not sold coated (common practice).
int needed_faces(Coating coating) {
    switch (coating) {
    case Coating::none:
        return 0;
    case Coating::face2:
    case Coating::face3:
    case Coating::face4:
    case Coating::faces2and4:
        return 4;
    case Coating::face5:
    case Coating::faces2and5:
        return 6;
    }
    return 0;
}

double lowest_ceiling_m(const Opening& opening) {
    return opening.sill_m + opening.height_m + clear_below_ceiling_m;
}

double least_depth_m(const Room& room) {
    return room.seat_distance_m + behind_seat_m;
}

/// The lower limit of a field in this case: a room must hold its window and its person.
double least(const Field& field, const Case& c) {
    if (field.key == "room.height_m") return std::max(field.min, lowest_ceiling_m(c.opening));
    if (field.key == "room.depth_m") return std::max(field.min, least_depth_m(c.room));
    return field.min;
}

/// Panes one behind the other, storm panel and inside panel included.
int panes_in_all(const Glazing& glazing) {
    return glazing.panes + (glazing.storm != Storm::none) + (glazing.panel != Panel::none);
}

/// Whether a panel more would be one pane too many.
bool panel_fits(const Glazing& glazing, bool has_it) {
    return has_it || panes_in_all(glazing) < static_cast<int>(physics::max_panes);
}

/// A room upstairs needs a house of two storeys, one in the basement a heated basement.
void agree_on_storey(Room& room, std::string_view set) {
    const bool lost = room.storeys < least_storeys(room.storey) ||
                      (room.storey == Storey::basement && !room.basement);
    if (!lost) return;
    if (set == "room.storeys" || set == "room.basement") {
        room.storey = Storey::ground;
    } else {
        room.storeys = std::max(room.storeys, least_storeys(room.storey));
        room.basement = room.basement || room.storey == Storey::basement;
    }
}

/// What follows from the field just set: the others give way, never the field itself.
void make_consistent(Case& c, const Field& set, const Glazing& before) {
    Glazing& glazing = c.opening.glazing;
    if (glazing.coating_kind != before.coating_kind)
        glazing.emissivity = coating_row(glazing.coating_kind).emissivity;
    // What the room can touch is a hard coat in the trade: silver does not last there.
    const bool to_room = glazing.coating == Coating::faces2and4 && glazing.panes == 2;
    if (to_room && set.key == "glazing.coating" && glazing.coating != before.coating)
        glazing.coating_kind_2 = SecondCoating::hard;
    if (glazing.coating_kind_2 != before.coating_kind_2 &&
        glazing.coating_kind_2 != SecondCoating::same)
        glazing.emissivity_2 = coating_row(kind_of(glazing.coating_kind_2)).emissivity;
    if (panes_in_all(glazing) > static_cast<int>(physics::max_panes)) glazing.panel = Panel::none;
    if (needed_faces(glazing.coating) > faces(c.opening)) glazing.coating = Coating::none;
    Sash& sash = c.opening.sash;
    if (set.key == "sash.locked" && sash.locked) sash.slipped_m = 0;
    if (sash.slipped_m > 0) sash.locked = false;
    agree_on_storey(c.room, set.key);
    c.room.height_m = std::max(c.room.height_m, lowest_ceiling_m(c.opening));
    c.room.depth_m = std::max(c.room.depth_m, least_depth_m(c.room));
}

} // namespace

std::span<const Field> fields() {
    return field_rows();
}

const Field* find_field(std::string_view key) {
    for (const Field& field : fields())
        if (field.key == key) return &field;
    return nullptr;
}

bool applies(const Field& field, const Case& c) {
    const Glazing& glazing = c.opening.glazing;
    const bool has_gap = glazing.panes > 1;
    if (field.key == "glazing.gap_m" || field.key == "glazing.gas" ||
        field.key == "glazing.spacer" || field.key == "glazing.coating")
        return has_gap;
    if (field.key == "glazing.gas_share") return has_gap && glazing.gas != physics::Gas::air;
    const bool by_height = c.room.storey == Storey::by_height;
    if (field.key == "room.height_above_neutral_m") return by_height;
    if (field.key == "room.storeys" || field.key == "room.basement") return !by_height;
    if (field.key == "facing") return c.running.climate > 0;
    if (field.key == "running.heating_degree_days_k") return c.running.climate == 0;
    if (field.key == "chambers") return !is_wood(c.opening.frame) && !is_metal(c.opening.frame);
    if (field.key == "glazing.emissivity" || field.key == "glazing.coating_kind")
        return glazing.coating != Coating::none;
    if (field.key == "glazing.coating_kind_2") return two_coatings(glazing.coating);
    if (field.key == "glazing.emissivity_2")
        return two_coatings(glazing.coating) && glazing.coating_kind_2 != SecondCoating::same;
    if (field.key == "sash.rated_l_s_m2") return c.opening.sash.fit == SashFit::tight;
    const Wall& wall = c.opening.wall;
    if (field.key == "wall.cladding") return !is_masonry(wall);
    if (field.key == "wall.cavity") return wall.build != WallBuild::solid_masonry;
    if (field.key == "wall.insulation_w_mk")
        return wall.build != WallBuild::solid_masonry && wall.cavity == WallCavity::filled;
    if (field.key == "shim.bead_m") return c.opening.shim.fill == ShimFill::partly_foamed;
    if (field.key == "pockets")
        return c.opening.installation == Installation::insert || is_wood(c.opening.frame);
    if (field.key == "sash.weatherstrip") return c.opening.sash.fit != SashFit::tight;
    return true;
}

bool choice_possible(const Field& field, std::size_t index, const Case& c) {
    if (index >= field.choices.size()) return false;
    if (field.key == "glazing.coating")
        return needed_faces(static_cast<Coating>(index)) <= faces(c.opening);
    const Glazing& glazing = c.opening.glazing;
    if (index > 0 && field.key == "glazing.storm")
        return panel_fits(glazing, glazing.storm != Storm::none);
    if (index > 0 && field.key == "glazing.panel")
        return panel_fits(glazing, glazing.panel != Panel::none);
    return true;
}

bool set_field(Case& c, const Field& field, double value) {
    double limited =
        std::isfinite(value) ? std::clamp(value, least(field, c), field.max) : field.get(c);
    const bool whole = field.quantity == Quantity::choice || field.quantity == Quantity::count ||
                       field.quantity == Quantity::yes_no;
    if (whole) limited = std::round(limited);
    const bool impossible = field.quantity == Quantity::choice &&
                            !choice_possible(field, static_cast<std::size_t>(limited), c);
    if (!impossible) {
        const Glazing before = c.opening.glazing;
        field.set(c, limited);
        make_consistent(c, field, before);
    }
    constexpr double rounding = 0.5; // a choice moved by rounding alone was not limited
    return impossible || !std::isfinite(value) ||
           std::fabs(value - limited) > (whole ? rounding : 0);
}

} // namespace shimlight::opening
