// SPDX-License-Identifier: MIT
// The words of the cards. Sources as in the bibliography of the contributors' guide.
#include "view/why.hpp"

namespace shimlight::view {
namespace {

using card_words::balance;
constexpr std::string_view
    sections = "Two-dimensional heat flow in head, jamb, sill and meeting "
               "rail, by a solver checked with ISO 10211 and finite "
               "elements; conductivities by ISO 10456 and 10077-2.",
    pressure = "Stack and wind (Swami and Chandra 1987); cracks after Baker, "
               "Sharples and Ward 1987, shim spaces after Proskiw 1995.",
    section_range = "The solution is within 0.1 K of its painting; an old "
                    "frame may differ from the drawn one by 1 to 2 K.",
    leak_range = "Cracks of old windows differ by a factor of two and more.",
    gusts = "Wind pressure varies by half from gust to gust and with what stands "
            "around.",
    floor = "Falling air by Eckert and Jackson 1950, along the floor by "
            "Heiselberg 1994; jets of leaks by Hagström 1999.",
    floor_range = "Speeds within some 25 %; the floor stream is an estimate.",
    moisture = "ISO 13788:2012, saturation over water and ice.",
    year = "Degree days and the present U-factors, or a place's typical year "
           "(TMY3) by ISO 13790.",
    radiation = "Gray surface and mirrored room by fourth powers of temperature; skin by ISO 7730.",
    radiation_range = "Within some 2 K, the error of usual cameras; more for coated faces.",
    year_range = "An estimate: within some 15 % for conduction, a factor of "
                 "two for leakage.";

constexpr CardText cards[] = {
    {"glass_inside", "The pane's face toward the room, at the center of the glass.", balance,
     "U of published glazings is met within 0.05 W/m²K; wind and sky change it by the hour."},
    {"ankles",
     "Of 100 people with bare ankles at this seat, so many would find the draft a bother.",
     "ASHRAE 55-2020 ankle draft (Liu and others 2017); PMV by ISO 7730:2005.",
     "Made for seated people and 0.1 to 0.6 m/s; people differ. 20 or fewer is the standard's "
     "limit.",
     "ankle_speed ankle_air falling_speed leak_speed pmv"},
    {"wet_above", "Above this indoor humidity water stands on the coldest place of the glass.",
     moisture, "Follows the coldest temperature: 1 K more is about 3 % more humidity."},
    {"u_window", "Heat through the unit for each degree, by area of center, edge and frame.",
     "Areas weighted as in ISO 10077-1; center by ISO 15099, frame and edge from the sections.",
     "Published windows are met within 10 %. At this weather; labels are rated at 0 °F and wind.",
     "u_centre u_edge u_frame"},
    {"year_cost", card_words::year_cost, year, year_range},
    {"u_centre", "Heat through the middle of the glass for each degree between the airs.", balance,
     "Published glazings are met within 0.05 W/m²K. At this weather."},
    {"u_installed", "The same for the whole opening, with the shim space around it and its leak.",
     "Sections with and without the wall; the leak's heat by its flow.", leak_range},
    {"u_frame", "Of frame and sashes as they show from inside.", sections,
     "Published frames lie within their ranges."},
    {"u_edge", "Of the glass within 65 mm (2 1/2 in) of frame and sashes.", sections,
     "Psi of published edges is met within 0.03 W/mK."},
    {"year_kwh", card_words::year_heat, year, year_range},
    {"year_air", "Of the year's heat, what moving air carries.", year, leak_range},
    {"heat", "Heat that leaves through window, shim space and leaks now.", sections, leak_range},
    {"air_share", "Of the heat lost now, what moving air carries.", pressure, leak_range},
    {"dew_point", "Whatever is colder than this gets wet.", moisture,
     "Published tables are met within 0.1 K; a cheap hygrometer is off by 5 %, some 2 K."},
    {"shim_flow", "Air through the space between frame and rough opening.", pressure, leak_range},
    {"sash_flow", "Air between the sashes and their frame.", pressure, leak_range},
    {"shim_air", "Outdoor air, warmed by wood and wall on its way.", sections,
     "As uncertain as the flow: slower air arrives warmer."},
    {"sash_air", "Outdoor air, warmed by the sash on its way.", sections,
     "As uncertain as the flow: slower air arrives warmer."},
    {"leak_heat", "To warm the air that comes in, or carried out by what leaves.", pressure,
     leak_range},
    {"pressure", "Outdoors minus indoors at the window; positive presses air in.", pressure, gusts,
     "stack wind"},
    {"stack", "Cold air outdoors is heavier: low in a house it presses in, high up air goes out.",
     "Hydrostatics; air as an ideal gas.",
     "The neutral level is a guess of half the height; open flues and fans move it by a story."},
    {"wind", "What the wind adds on this wall.", "Pressure coefficients by Swami and Chandra 1987.",
     gusts},
    {"neck", "Of 100 people at this seat, so many would find the draft at the neck a bother.",
     "Draft rate of ISO 7730:2005, gusts of 40 %.",
     "Made for 20 to 26 °C, below 0.5 m/s and light work; people differ.", "neck_speed neck_air"},
    {"neck_speed", "Of the air at a seated neck.", floor, floor_range},
    {"neck_air", "Of the air at a seated neck.", floor, "Within some 1 K."},
    {"radiant", "One temperature of all surfaces around that would radiate the same to this seat.",
     "ISO 7726; window by its view factor, the rest as warm as the room's surfaces.",
     "Within some 0.5 K."},
    {"asymmetry", "How much colder the side of the window radiates than the other side.",
     "Plane radiant temperatures of ISO 7726.", "Within some 0.5 K."},
    {"asymmetry_pct", "Of 100 people, so many are bothered by one cold side.",
     "ISO 7730:2005, cool wall.", "Studied below 15 K; people differ."},
    {"pmv", "How a group would vote on its warmth: 0 is neutral, −1 slightly cool.",
     "ISO 7730:2005 (Fanger), clothing and activity by the levers.",
     "The standard's worked examples are met within 0.1; groups differ by some 0.3."},
    {"ppd", "Of 100 people, so many are too cool or too warm over all.", "ISO 7730:2005.",
     "5 at the least, even at a vote of 0."},
    {"ankle_speed", "All causes together, 0.1 m above the floor at the seat.", floor, floor_range},
    {"ankle_air", "Of the stream at the ankles, mixed with room air on its way.", floor,
     "Within some 1 K."},
    {"falling_speed", "Air that has run down the glass, as it passes the sill.", floor,
     "The film's speed is known within some 10 %."},
    {"leak_speed", "The jets of sash and shim space, as they reach the ankles.", floor,
     "An estimate; jets that cling to wall and floor are hard to know."},
    {"draft_glass", "What cold glass adds to the draft at the ankles.", floor, floor_range,
     "draft_sash draft_shim"},
    {"draft_sash", "What the sash leak adds to the draft at the ankles.", floor, leak_range},
    {"draft_shim", "What the shim space adds to the draft at the ankles.", floor, leak_range},
    {"operative", "Air and radiation together, as a person at the seat feels them.", "ISO 7726.",
     "Within some 0.5 K; the other surfaces of the room are taken from the room's air.",
     "radiant asymmetry asymmetry_pct pmv ppd"},
    {"shgc", "Share of the sun's heat that comes in, at the center of the glass.",
     "ISO 15099 balance at summer rating; generic panes.", "Published units within 0.05."},
    {"light", "Share of visible light that comes in.", "ISO 9050, generic panes.",
     "Published units within 0.02."},
    {"wet.storm", "Above this indoor humidity water stands on the storm panel's inner face.",
     "Mixture of room and outdoor air behind the panel, ISO 13788.",
     "An estimate: whose air it is depends on both cracks."},
    {"part.storm", "The panel's face toward the sashes.", balance, "Within some 2 K."},
    {"infrared.glass", "What an infrared camera set to 0.95 shows of the glass, straight on.",
     radiation, radiation_range, "glass_inside emissivity"},
    {"infrared.mirror", "The same where a person's bare skin mirrors in it.", radiation,
     radiation_range, "infrared.glass emissivity"},
    {"infrared.casing", "What such a camera shows of the coldest place of the casing.", radiation,
     "As the casing's temperature: painted wood mirrors little."},
    {"emissivity", "Heat that the face toward the room radiates; the rest of 1 it mirrors.",
     "Bare glass by EN 673; generic coatings.", "Coatings of a kind differ by some 0.05."},
    {"wet.casing", "Above this indoor humidity water stands on the coldest place of the casing.",
     moisture, section_range},
};
constexpr CardText of_parts{"part.", "The coldest place of this part over all cuts.", sections,
                            section_range};
constexpr CardText entered{"", "Entered with a lever.", "Yours.",
                           "As good as the instrument it was read from."};

} // namespace

const CardText& card_text(std::string_view key) {
    for (const CardText& card : cards)
        if (card.key == key) return card;
    for (const CardText& card : page_cards())
        if (card.key == key) return card;
    return key.substr(0, 5) == "part." ? of_parts : entered;
}

} // namespace shimlight::view
