// SPDX-License-Identifier: MIT
// The rows of the field table. Limits are those of the builds and climates the model is made for;
// where no source is named they are common practice.
#include "opening/field_rows.hpp"
#include "opening/climate_rows.hpp"
#include "opening/join.hpp"

#include <array>

namespace shimlight::opening {

namespace {

using Q = Quantity;
using S = Scope;

constexpr Choice shim_fills[] = {{"open", "open"},
                                 {"stuffed", "stuffed with fiber"},
                                 {"backer_rod", "backer rod and sealant"},
                                 {"foamed", "foamed"},
                                 {"partly_foamed", "foam bead, air behind"}};
constexpr Choice casing_seals[] = {{"unsealed", "unsealed"}, {"caulked", "caulked"}};
constexpr Choice gases[] = {
    {"air", "air"}, {"argon", "argon"}, {"krypton", "krypton"}, {"xenon", "xenon"}};
constexpr Choice coatings[] = {{"none", "none"},
                               {"face2", "face 2"},
                               {"face3", "face 3"},
                               {"face4", "face 4"},
                               {"face5", "face 5"},
                               {"faces2and5", "faces 2 and 5"},
                               {"faces2and4", "faces 2 and 4"}};
constexpr Choice spacers[] = {{"aluminium", "aluminum"},
                              {"stainless", "stainless steel"},
                              {"foam", "foam"},
                              {"hybrid", "plastic and steel foil"}};
constexpr Choice storms[] = {{"none", "none"}, {"clear", "clear"}, {"low_e", "low-e"}};
constexpr Choice frames[] = {{"wood", "wood"},
                             {"vinyl", "vinyl"},
                             {"aluminium", "aluminum"},
                             {"clad_wood", "wood, clad outside"},
                             {"vinyl_steel", "vinyl with steel"},
                             {"fibreglass", "fiberglass"},
                             {"composite", "composite"},
                             {"aluminium_break", "aluminum, thermal break"}};
constexpr Choice panels[] = {
    {"none", "none"}, {"clear", "clear"}, {"low_e", "low-e"}, {"film", "plastic film"}};
constexpr Choice coating_kinds[] = {{"hard", "hard coat"},
                                    {"one_silver", "soft, 1 silver"},
                                    {"two_silvers", "soft, 2 silvers"},
                                    {"three_silvers", "soft, 3 silvers"}};
constexpr Choice second_kinds[] = {{"same", "same as the other"},
                                   {"hard", "hard coat"},
                                   {"one_silver", "soft, 1 silver"},
                                   {"two_silvers", "soft, 2 silvers"},
                                   {"three_silvers", "soft, 3 silvers"}};
constexpr Choice tints[] = {{"clear", "not tinted"},
                            {"low_iron", "low iron"},
                            {"bronze", "bronze"},
                            {"grey", "gray"},
                            {"green", "green"}};
constexpr Choice skies[] = {{"cloudy", "cloudy"}, {"clear_night", "clear night"}};
constexpr Choice coverings[] = {{"none", "none"},
                                {"blind", "blind with slats"},
                                {"shade", "roller shade"},
                                {"curtain", "lined curtain"}};
constexpr Choice installations[] = {{"full_frame", "rough opening"}, {"insert", "old wood frame"}};
constexpr Choice sash_fits[] = {{"tight", "tight"}, {"worn", "worn"}, {"loose", "loose"}};
constexpr Choice walls[] = {{"frame_2x4", "2×4 studs"},
                            {"frame_2x6", "2×6 studs"},
                            {"balloon", "old balloon frame"},
                            {"brick_cavity", "brick with cavity"},
                            {"solid_masonry", "solid brick"}};
constexpr Choice cavities[] = {{"filled", "filled"}, {"empty", "empty"}};
constexpr Choice claddings[] = {
    {"wood", "wood siding"}, {"brick_veneer", "brick veneer"}, {"stucco", "stucco"}};
constexpr Choice linings[] = {{"board", "board"}, {"plaster", "plaster"}};
constexpr Choice pocket_states[] = {
    {"none", "none"}, {"empty", "empty"}, {"insulated", "closed and filled"}};

constexpr Choice heaters[] = {{"none", "none"},
                              {"radiator", "radiator"},
                              {"baseboard", "baseboard"},
                              {"register", "warm-air register"}};
constexpr Choice storey_choices[] = {{"by_height", "by height"},
                                     {"basement", "basement"},
                                     {"ground", "ground floor"},
                                     {"upstairs", "upstairs"},
                                     {"attic", "attic"}};
constexpr Choice facings[] = {
    {"north", "north"}, {"north_east", "northeast"}, {"east", "east"}, {"south_east", "southeast"},
    {"south", "south"}, {"south_west", "southwest"}, {"west", "west"}, {"north_west", "northwest"}};
constexpr Choice facades[] = {{"windward", "into the wind"}, {"side", "along it"}, {"lee", "lee"}};

constexpr std::string_view no_limit = "There are no other choices.";
constexpr std::string_view four_panes = "At most four panes stand one behind the other.";

constexpr std::array weather_rows = {
    at<&Case::weather, &Weather::outside_c>(
        {"weather.outside_c", "Outdoors", "Temperature of the outdoor air.", Q::temperature_c,
         S::weather, -45, 20, 1, "Made for heating weather; colder than this is rare."}),
    at<&Case::weather, &Weather::wind_m_s>(
        {"weather.wind_m_s", "Wind",
         "Wind at the house: it drives air through cracks and cools the outer glass.", Q::speed_m_s,
         S::weather, 0, 20, 0.5, "Stronger than this is a storm."}),
    at<&Case::weather, &Weather::sky>(
        {"weather.sky", "Sky", "A clear night sky takes heat from glass and frame by radiation.",
         Q::choice, S::weather, 0, 1, 1, no_limit, skies}),
    at<&Case::weather, &Weather::altitude_m>(
        {"weather.altitude_m", "Altitude", "Above the sea: thinner air leaks with less heat.",
         Q::height_m, S::weather, 0, 4000, 100, "From the sea to where hardly anyone lives."}),
};

constexpr std::array room_rows = {
    at<&Case::room, &Room::air_c>({"room.air_c", "Room", "Temperature of the room air.",
                                   Q::temperature_c, S::room, 10, 28, 0.5,
                                   "Rooms people sit in lie within this range."}),
    at<&Case::room, &Room::rh>(
        {"room.rh", "Humidity", "Relative humidity of the room air: more of it wets warmer glass.",
         Q::fraction, S::room, 0.1, 0.9, 0.05, "Heated rooms lie within this range."}),
    at<&Case::room, &Room::seat_distance_m>(
        {"room.seat_distance_m", "Seat distance", "From the wall with the window to the person.",
         Q::long_m, S::room, 0.3, 4, 0.1,
         "Nearer one leans on the wall; farther off the formulas are not tested."}),
    at<&Case::room, &Room::storeys>(
        {"room.storeys", "Heated stories", "From the ground floor up; an attic lived in counts.",
         Q::count, S::room, 1, 3, 1, "Made for houses of up to three stories and a basement."}),
    at<&Case::room, &Room::basement>(
        {"room.basement", "Heated basement",
         "Whether the house is heated below the ground floor: its air rises to the top as well.",
         Q::yes_no, S::room, 0, 1, 1, no_limit}),
    at<&Case::room, &Room::storey>(
        {"room.storey", "Story",
         "Where in the house the room is: cold air comes in low, warm air goes out high.",
         Q::choice, S::room, 0, 4, 1, no_limit, storey_choices}),
    at<&Case::room, &Room::height_above_neutral_m>(
        {"room.height_above_neutral_m", "Height in house",
         "From the house's neutral level to the window: below it cold air comes in, above it warm "
         "air goes out.",
         Q::height_m, S::room, -8, 8, 0.5, "Made for houses of up to about four stories."}),
    // Wind coefficients of shielding classes 1 to 5 over that of class 1, ASHRAE 1989: 0.000319,
    // 0.000246, 0.000174, 0.000104, 0.000032 (read).
    at<&Case::room, &Room::shelter>(
        {"room.shelter", "Wind exposure", "Share of the wind's pressure that reaches this wall.",
         Q::fraction, S::room, 0, 1, 0.05,
         "Shelter classes: open land 100 %, a few trees 77 %, houses about 55 %, close by 33 %, "
         "dense town 10 %."}),
    at<&Case::room, &Room::facade>({"room.facade", "Wall to the wind",
                                    "Into the wind air is pressed in, elsewhere sucked out.",
                                    Q::choice, S::room, 0, 2, 1, no_limit, facades}),
    at<&Case::room, &Room::heater>({"room.heater", "Heater below",
                                    "Its warm air rises against what falls from the window.",
                                    Q::choice, S::room, 0, 3, 1, no_limit, heaters}),
    at<&Case::room, &Room::sill_depth_m>({"room.sill_depth_m", "Sill depth",
                                          "Of the inside sill: cold air has to run over it.",
                                          Q::long_m, S::room, 0, 0.5, 0.05, "Deeper is a seat."}),
    at<&Case::room, &Room::width_m>({"room.width_m", "Room width",
                                     "Along the wall with the window.", Q::long_m, S::room, 2, 12,
                                     0.1, "Made for rooms of dwellings."}),
    at<&Case::room, &Room::depth_m>({"room.depth_m", "Room depth",
                                     "From the window to the wall opposite.", Q::long_m, S::room, 2,
                                     12, 0.1, "Made for rooms of dwellings."}),
    at<&Case::room, &Room::height_m>({"room.height_m", "Ceiling height", "From floor to ceiling.",
                                      Q::long_m, S::room, 2, 5, 0.1,
                                      "The ceiling lies above the window."}),
};

constexpr std::array joint_rows = {
    at<&Case::opening, &Opening::shim, &ShimSpace::fill>(
        {"shim.fill", "Shim space",
         "What is in the space between window frame and rough opening, behind the casing.",
         Q::choice, S::opening, 0, 4, 1, no_limit, shim_fills}),
    at<&Case::opening, &Opening::shim, &ShimSpace::bead_m>(
        {"shim.bead_m", "Foam bead", "Depth of the foam at the room's side of the shim space.",
         Q::thin_m, S::opening, 0.012, 0.075, 0.005,
         "Thinner does not hold; deeper is nearly a full filling."}),
    at<&Case::opening, &Opening::shim, &ShimSpace::width_m>(
        {"shim.width_m", "Shim width", "Width of the space between frame and rough opening.",
         Q::thin_m, S::opening, 0.003, 0.038, 0.001,
         "Narrower cannot be shimmed; wider needs more wood."}),
    at<&Case::opening, &Opening::casing, &Casing::seal>(
        {"casing.seal", "Casing edge", "Whether the inside casing is caulked to the wall.",
         Q::choice, S::opening, 0, 1, 1, no_limit, casing_seals}),
    at<&Case::opening, &Opening::casing, &Casing::width_m>(
        {"casing.width_m", "Casing width", "Width of the inside trim.", Q::thin_m, S::opening, 0.05,
         0.14, 0.005, "Usual trim is 2 to 5 1/2 inches (50 to 140 mm) wide."}),
    at<&Case::opening, &Opening::casing, &Casing::thickness_m>(
        {"casing.thickness_m", "Casing thickness", "Thickness of the inside trim.", Q::thin_m,
         S::opening, 0.01, 0.025, 0.001, "Usual trim is 3/8 to 1 inch (10 to 25 mm) thick."}),
};

constexpr std::array glass_rows = {
    at<&Case::opening, &Opening::glazing, &Glazing::panes>(
        {"glazing.panes", "Panes", "Sheets of glass in the sash, without a storm panel.", Q::count,
         S::opening, 1, 3, 1, "The sashes drawn here hold one to three panes."}),
    at<&Case::opening, &Opening::glazing, &Glazing::coating>(
        {"glazing.coating", "Low-e coating",
         "Which face of the glass it lies on. Face 1 is the outdoor face of the outermost pane, "
         "counted on inward: 2 and 3 line the first space. A storm panel is not counted.",
         Q::choice, S::opening, 0, 6, 1, "The face must exist: each pane has two.", coatings}),
    at<&Case::opening, &Opening::glazing, &Glazing::coating_kind>(
        {"glazing.coating_kind", "Coating kind",
         "What the low-e coating is made of: it decides the sun and sets the usual emissivity.",
         Q::choice, S::opening, 0, 3, 1, no_limit, coating_kinds}),
    at<&Case::opening, &Opening::glazing, &Glazing::emissivity>(
        {"glazing.emissivity", "Emissivity",
         "How much heat the coated face radiates; bare glass has 0.84.", Q::emissivity, S::opening,
         0.02, 0.84, 0.01, "Below are no known coatings, above is bare glass."}),
    at<&Case::opening, &Opening::glazing, &Glazing::coating_kind_2>(
        {"glazing.coating_kind_2", "Second coating",
         "What the coating nearer the room is made of, where two faces have one.", Q::choice,
         S::opening, 0, 4, 1, no_limit, second_kinds}),
    at<&Case::opening, &Opening::glazing, &Glazing::emissivity_2>(
        {"glazing.emissivity_2", "Second emissivity",
         "How much heat the coated face nearer the room radiates.", Q::emissivity, S::opening, 0.02,
         0.84, 0.01, "Below are no known coatings, above is bare glass."}),
    at<&Case::opening, &Opening::glazing, &Glazing::gas>({"glazing.gas", "Gas",
                                                          "Gas between the panes.", Q::choice,
                                                          S::opening, 0, 3, 1, no_limit, gases}),
    at<&Case::opening, &Opening::glazing, &Glazing::gas_share>(
        {"glazing.gas_share", "Gas left", "Share of the gas between the panes; the rest is air.",
         Q::fraction, S::opening, 0, 1, 0.05, "A share lies between nothing and all."}),
    at<&Case::opening, &Opening::glazing, &Glazing::gap_m>(
        {"glazing.gap_m", "Gap", "Space between two panes.", Q::thin_m, S::opening, 0.004, 0.02,
         0.001, "The sashes drawn here hold gaps of 4 to 20 mm."}),
    at<&Case::opening, &Opening::glazing, &Glazing::pane_thickness_m>(
        {"glazing.pane_thickness_m", "Glass thickness", "Thickness of one pane.", Q::thin_m,
         S::opening, 0.002, 0.006, 0.001, "House windows have glass of 2 to 6 mm."}),
    at<&Case::opening, &Opening::glazing, &Glazing::spacer>(
        {"glazing.spacer", "Spacer", "The bar that holds the panes apart at their edge.", Q::choice,
         S::opening, 0, 3, 1, no_limit, spacers}),
    at<&Case::opening, &Opening::glazing, &Glazing::storm>(
        {"glazing.storm", "Storm panel", "A second window hung outside the sashes.", Q::choice,
         S::opening, 0, 2, 1, four_panes, storms}),
    at<&Case::opening, &Opening::glazing, &Glazing::panel>(
        {"glazing.panel", "Panel inside", "A second window set inside the sashes.", Q::choice,
         S::opening, 0, 3, 1, four_panes, panels}),
    at<&Case::opening, &Opening::glazing, &Glazing::tint>(
        {"glazing.tint", "Outer glass", "Color of the outermost pane of the sash.", Q::choice,
         S::opening, 0, 4, 1, no_limit, tints}),
    at<&Case::opening, &Opening::covering>(
        {"covering", "Blind or curtain",
         "What hangs closed before the window: warmer to sit at, colder and wetter behind. For the "
         "year it counts half the time.",
         Q::choice, S::opening, 0, 3, 1, no_limit, coverings}),
};

constexpr std::array unit_rows = {
    at<&Case::opening, &Opening::frame>({"frame", "Frame", "What frame and sash are made of.",
                                         Q::choice, S::opening, 0, 7, 1, no_limit, frames}),
    at<&Case::opening, &Opening::chambers>(
        {"chambers", "Chambers",
         "Air chambers of the frame profile, one behind the other from outdoors to the room.",
         Q::count, S::opening, 1, 7, 1, "Profiles of this depth have 1 to 7 chambers."}),
    at<&Case::opening, &Opening::installation>(
        {"installation", "Set in",
         "What holds the unit: the rough opening, or an old wood frame that was kept.", Q::choice,
         S::opening, 0, 1, 1, no_limit, installations}),
    at<&Case::opening, &Opening::pockets>(
        {"pockets", "Weight pockets",
         "Boxes beside an old jamb where the sash weights hang: cold, and open at the pulleys.",
         Q::choice, S::opening, 0, 2, 1, no_limit, pocket_states}),
    at<&Case::opening, &Opening::sash, &Sash::fit>(
        {"sash.fit", "Sash fit", "How well the sashes sit in the frame.", Q::choice, S::opening, 0,
         2, 1, no_limit, sash_fits}),
    at<&Case::opening, &Opening::sash, &Sash::rated_l_s_m2>(
        {"sash.rated_l_s_m2", "Rated leakage",
         "Air leakage printed on the label, L/(s·m²) at 75 Pa; 0 stands for not known.", Q::number,
         S::opening, 0, 5, 0.1, "New windows are sold with 1.5 at most (0.3 cfm/ft²)."}),
    at<&Case::opening, &Opening::sash, &Sash::weatherstrip>(
        {"sash.weatherstrip", "Weather strip", "Whether the sashes have been weather-stripped.",
         Q::yes_no, S::opening, 0, 1, 1, no_limit}),
    at<&Case::opening, &Opening::sash, &Sash::locked>(
        {"sash.locked", "Lock", "Whether the lock is engaged and pulls the sashes together.",
         Q::yes_no, S::opening, 0, 1, 1, no_limit}),
    at<&Case::opening, &Opening::sash, &Sash::slipped_m>(
        {"sash.slipped_m", "Upper sash down",
         "How far the upper sash has slipped down; then the lock cannot engage.", Q::thin_m,
         S::opening, 0, 0.02, 0.001, "More than this would be seen at once."}),
    at<&Case::opening, &Opening::width_m>({"width_m", "Width", "Width of the window frame.",
                                           Q::long_m, S::opening, 0.4, 1.8, 0.05,
                                           "Hung windows lie within this range."}),
    at<&Case::opening, &Opening::height_m>({"height_m", "Height", "Height of the window frame.",
                                            Q::long_m, S::opening, 0.6, 2.4, 0.05,
                                            "Hung windows lie within this range."}),
    at<&Case::opening, &Opening::facing>(
        {"facing", "Faces", "Which way the window looks out: it decides on the sun of the year.",
         Q::choice, S::opening, 0, 7, 1, no_limit, facings}),
    at<&Case::opening, &Opening::tilt_deg>(
        {"tilt_deg", "Tilt",
         "Of the glass: 90° stands upright, less leans back as in a roof. Its U, sky and sun "
         "follow; the cut is drawn upright.",
         Q::angle_deg, S::opening, 15, 90, 5, "Flatter roof windows are domes of another kind."}),
    at<&Case::opening, &Opening::sill_m>(
        {"sill_m", "Sill height", "From the floor to the foot of the window.", Q::long_m,
         S::opening, 0, 1.6, 0.05, "A window begins at the floor or above it."}),
    at<&Case::opening, &Opening::wall, &Wall::build>(
        {"wall.build", "Wall", "How the wall around the window is built.", Q::choice, S::opening, 0,
         4, 1, no_limit, walls}),
    at<&Case::opening, &Opening::wall, &Wall::cavity>(
        {"wall.cavity", "Wall cavity", "Whether the space between studs or leaves is insulated.",
         Q::choice, S::opening, 0, 1, 1, no_limit, cavities}),
    at<&Case::opening, &Opening::wall, &Wall::cladding>(
        {"wall.cladding", "Wall outside", "What covers a framed wall outside.", Q::choice,
         S::opening, 0, 2, 1, no_limit, claddings}),
    at<&Case::opening, &Opening::wall, &Wall::lining>({"wall.lining", "Wall inside",
                                                       "What lines the wall inside.", Q::choice,
                                                       S::opening, 0, 1, 1, no_limit, linings}),
    at<&Case::opening, &Opening::wall, &Wall::insulation_w_mk>(
        {"wall.insulation_w_mk", "Wall insulation",
         "Conductivity of what fills the space between studs or leaves.", Q::conductivity_w_mk,
         S::opening, 0.02, 0.5, 0.005, "From the best foam to an empty space."}),
};

constexpr std::array running_rows = {
    at<&Case::running, &Running::climate>(
        {"running.climate", "Climate",
         "The place whose typical year is computed month by month, sun included; or degree days "
         "alone.",
         Q::choice, S::running, 0, static_cast<double>(climate_row_count), 1,
         "The table has no other places; degree days serve anywhere.", climate_choices.list}),
    at<&Case::running, &Running::heating_degree_days_k>(
        {"running.heating_degree_days_k", "Degree days",
         "How long and how cold the winter is: heating degree days below 18.3 °C.",
         Q::degree_days_k, S::running, 500, 8000, 100, "From mild coasts to the far north."}),
    at<&Case::running, &Running::price_per_kwh>(
        {"running.price_per_kwh", "Fuel price", "Price of fuel or electricity by the unit named.",
         Q::price_per_kwh, S::running, 0.005, 2, 0.005,
         "Beyond this range a unit was probably mistaken."}),
    at<&Case::running, &Running::efficiency>(
        {"running.efficiency", "Heater efficiency",
         "Heat delivered per unit of fuel or electricity; above 1 for a heat pump.", Q::number,
         S::running, 0.4, 5, 0.05, "From an old furnace to the best heat pump."}),
};

constexpr auto all_rows =
    join(weather_rows, joint_rows, glass_rows, unit_rows, room_rows, running_rows);

} // namespace

std::span<const Field> field_rows() {
    return all_rows;
}

} // namespace shimlight::opening
