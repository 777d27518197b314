// SPDX-License-Identifier: MIT
// Cheapest first. Values of new units: what the trade sells most, common practice.
#include "opening/remedy_rows.hpp"
#include "opening/join.hpp"

#include <array>

namespace shimlight::opening {

namespace {

/// Choices are set by their index in the field table, which is the enumerator's value.
template <class Choice> constexpr RowChange choose(std::string_view key, Choice choice) {
    return {key, static_cast<double>(choice)};
}

constexpr double soft_coating = 0.05;   // emissivity
constexpr double half_inch_m = 0.0127;  // gap between new panes, shim space of a new unit
constexpr double eighth_inch_m = 0.003; // new pane
constexpr double argon_when_new = 0.9;  // share
constexpr double a_chair_m = 0.6;       // depth of a chair
constexpr double a_click_k = 1;         // of the thermostat, about 2 °F

constexpr std::array lock = {RowChange{"sash.locked", 1}};
constexpr std::array seat = {RowChange{"room.seat_distance_m", a_chair_m, true}};
constexpr std::array warmer = {RowChange{"room.air_c", a_click_k, true}};
constexpr std::array weatherstrip = {RowChange{"sash.weatherstrip", 1},
                                     RowChange{"sash.locked", 1}};
constexpr std::array caulk = {choose("casing.seal", CasingSeal::caulked)};
constexpr std::array foam = {choose("shim.fill", ShimFill::foamed)};
constexpr std::array pockets = {choose("pockets", Pockets::insulated)};
constexpr std::array rod = {choose("shim.fill", ShimFill::backer_rod),
                            choose("casing.seal", CasingSeal::caulked)};
constexpr std::array curtain = {choose("covering", Covering::curtain)};
constexpr std::array clear_storm = {choose("glazing.storm", Storm::clear)};
constexpr std::array low_e_storm = {choose("glazing.storm", Storm::low_e)};
constexpr std::array film_inside = {choose("glazing.panel", Panel::film)};
constexpr std::array panel_inside = {choose("glazing.panel", Panel::clear)};

/// What every new unit brings: tight sashes with a lock, insulating glass, no storm panel.
constexpr std::array new_unit = {
    choose("sash.fit", SashFit::tight),
    RowChange{"sash.locked", 1},
    choose("glazing.storm", Storm::none),
    choose("glazing.panel", Panel::none),
    choose("glazing.gas", physics::Gas::argon),
    RowChange{"glazing.gas_share", argon_when_new},
    RowChange{"glazing.gap_m", half_inch_m},
    RowChange{"glazing.pane_thickness_m", eighth_inch_m},
    RowChange{"glazing.emissivity", soft_coating},
    choose("glazing.coating_kind_2", SecondCoating::same),
};
constexpr std::array double_glass = {
    RowChange{"glazing.panes", 2},
    choose("glazing.coating", Coating::face3),
    choose("glazing.spacer", SpacerKind::stainless),
};
constexpr std::array triple_glass = {
    RowChange{"glazing.panes", 3},
    choose("glazing.coating", Coating::faces2and5),
    choose("glazing.spacer", SpacerKind::foam),
};
constexpr std::array vinyl = {choose("frame", FrameMaterial::vinyl)};
constexpr std::array wood = {choose("frame", FrameMaterial::wood)};
constexpr std::array into_old_frame = {choose("installation", Installation::insert)};
constexpr std::array into_rough_opening = {
    choose("installation", Installation::full_frame), choose("shim.fill", ShimFill::foamed),
    RowChange{"shim.width_m", half_inch_m},           choose("pockets", Pockets::none),
    choose("casing.seal", CasingSeal::caulked),
};

constexpr auto insert_open = join(double_glass, new_unit, vinyl, into_old_frame);
constexpr auto insert_foamed = join(double_glass, new_unit, vinyl, into_old_frame, foam);
constexpr auto full_vinyl = join(double_glass, new_unit, vinyl, into_rough_opening);
constexpr auto full_wood = join(double_glass, new_unit, wood, into_rough_opening);
constexpr auto full_triple = join(triple_glass, new_unit, vinyl, into_rough_opening);

constexpr std::string_view lead_caution =
    "Paint from before 1978 may hold lead: keep chips and dust in; check local code, licensed "
    "practice decides.";
constexpr std::string_view foam_caution =
    "Wet foam harms eyes, skin and lungs and its propellant burns: goggles, gloves, fresh air, no "
    "flame; paint from before 1978 may hold lead; check local code, licensed practice decides.";
constexpr std::string_view storm_caution =
    "Working at an open window or on a ladder one can fall, and an escape window must stay one; "
    "check local code, licensed practice decides.";
constexpr std::string_view inside_caution =
    "An escape window must stay one, and unvented heaters want fresh air; check local code, "
    "licensed practice decides.";
constexpr std::string_view unit_caution =
    "Lead-safe work in a house from before 1978, safety glass near floor or door, an escape "
    "opening in bedrooms, no fall from it: check local code, licensed practice decides.";

constexpr std::array rows = {
    RemedyRow{{"lock_home", "Push home and lock",
               "Push the upper sash up, the lower one down, and engage the lock.",
               "It does not mend worn sashes, the shim space behind the casing or cold glass.", ""},
              lock,
              {0.1}},
    RemedyRow{{"move_seat", "Move the seat", "Move the seat one chair's depth into the room.",
               "It changes nothing about heat loss, leaks or wet glass.", ""},
              seat,
              {0.1}},
    RemedyRow{{"warmer_room", "Raise the thermostat", "Keep the room one degree (2 °F) warmer.",
               "It costs fuel in the whole house and leaves every leak and cold surface.", ""},
              warmer,
              {}},
    RemedyRow{{"caulk_casing", "Caulk the casing edge",
               "Run a bead of caulk along the edge of the inside casing.",
               "Air still finds its way between casing and window and at the stool.", lead_caution},
              caulk,
              {0.3, 0.1, 2, 1}},
    RemedyRow{{"weatherstrip", "Weather-strip the sashes",
               "Fit weather strip along the sashes and the meeting rail, and lock them.",
               "It does nothing for the shim space behind the casing or for cold glass.",
               lead_caution},
              weatherstrip,
              {0.5, 0.25, 5, 4}},
    RemedyRow{{"foam_joint", "Foam the shim space",
               "Fill the shim space with low-pressure window foam, by needle behind the stop or "
               "with the casing lifted.",
               "It warms neither the glass nor a leaking sash.", foam_caution},
              foam,
              {1, 0.25, 6, 2}},
    RemedyRow{{"rod_joint", "Backer rod and sealant",
               "Lift the casing, press backer rod into the shim space, seal it, refit and caulk.",
               "It warms neither the glass nor a leaking sash.", lead_caution},
              rod,
              {1.5, 0.35, 6, 3}},
    RemedyRow{{"film_inside", "Clear film inside",
               "Tape shrink film to the inside trim around the sashes for the winter.",
               "The window cannot be opened, and the shim space behind the casing stays as it is.",
               inside_caution},
              film_inside,
              {0.4, 0.05, 2, 0.5, 2}},
    RemedyRow{
        {"panel_inside", "Panel inside", "Set a clear panel with a gasket inside the sashes.",
         "The shim space behind the casing stays as it is, and room air that gets behind it can "
         "wet the old glass.",
         inside_caution},
        panel_inside,
        {0.8, 0.1, 20, 8, 80}},
    RemedyRow{{"fill_pockets", "Fill the weight pockets",
               "Take the weights out, close the pulley holes and fill the pockets with insulation; "
               "the sashes then need other balances.",
               "It leaves the sashes' own leaks, and rot where filling keeps jamb and sill wet.",
               lead_caution},
              pockets,
              {2, 0.3, 40, 4},
              false,
              true},
    RemedyRow{
        {"curtain", "Shade or lined curtain",
         "Hang a lined curtain before the window and draw it at night.",
         "Behind it the glass gets colder and wet sooner, and cold air still spills out below.",
         "Keep it clear of heaters and its cords out of children's reach; check local code, "
         "licensed practice decides."},
        curtain,
        {1, 0.05, 20, 0, 40}},
    RemedyRow{
        {"storm_clear", "Storm panel, clear", "Hang a clear storm panel outside the sashes.",
         "The shim space behind the casing stays as it is, and a leaking inner sash can wet the "
         "storm panel.",
         storm_caution},
        clear_storm,
        {1, 0.1, 40, 10, 70}},
    RemedyRow{
        {"storm_low_e", "Storm panel, low-e",
         "Hang a storm panel with a hard low-e coating outside the sashes.",
         "The shim space behind the casing stays as it is, and a leaking inner sash can wet the "
         "storm panel.",
         storm_caution},
        low_e_storm,
        {1, 0.1, 50, 10, 110}},
    RemedyRow{{"insert_open", "Insert unit, not foamed",
               "Set a vinyl unit with low-e argon double glass into the old wood frame.",
               "The old shim space stays as it is, and some glass area is lost.", unit_caution},
              insert_open,
              {2.5, 0.2, 120, 10, 220},
              true},
    RemedyRow{{"insert_foamed", "Insert unit, foamed",
               "Set a vinyl unit with low-e argon double glass into the old wood frame and foam "
               "the old shim space.",
               "Some glass area is lost, and rot in the old frame stays hidden.", unit_caution},
              insert_foamed,
              {3.5, 0.45, 126, 12, 220},
              true},
    RemedyRow{{"full_vinyl", "Full-frame unit, vinyl",
               "Take the old frame out, set a vinyl unit with low-e argon double glass, foam the "
               "shim space, new casing.",
               "It costs far more than sealing the shim space, and the wall around stays as it is.",
               unit_caution},
              full_vinyl,
              {6, 0.6, 180, 25, 230}},
    RemedyRow{{"full_wood", "Full-frame unit, wood",
               "Take the old frame out, set a wood unit with low-e argon double glass, foam the "
               "shim space, new casing.",
               "It costs more than vinyl and wants painting.", unit_caution},
              full_wood,
              {6.5, 0.6, 300, 35, 480}},
    RemedyRow{{"full_triple", "Full-frame unit, triple",
               "Take the old frame out, set a vinyl unit with coated triple glass, foam the shim "
               "space, new casing.",
               "Over double glass it adds comfort more than savings, and weight.", unit_caution},
              full_triple,
              {7, 0.65, 240, 30, 330}},
};

} // namespace

std::span<const RemedyRow> remedy_rows() {
    return rows;
}

} // namespace shimlight::opening
