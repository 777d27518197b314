// SPDX-License-Identifier: MIT
// Cards of the numbers that are no named figures: sums of pages, ribbons, readings.
#include "house/sheet.hpp"
#include "opening/layout.hpp"
#include "view/put.hpp"
#include "view/sheet.hpp"
#include "view/why.hpp"

namespace shimlight::view {
namespace {

using opening::Case;

using card_words::balance;
constexpr std::string_view practice = "Common practice of the trade; waste is counted in.",
                           waste = "An estimate for buying, within one package.",
                           tape = "The tape's three measures each way.",
                           tape_range = "As good as the measures; within 3 mm is usual.",
                           drawn_range = "An estimate, some 5 %: makers' frames differ, and sashes "
                                         "may not go all the way up.",
                           draws = "Worked out a thousand times with weather, leaks, prices "
                                   "and glass each time a little different.",
                           draws_range = "8 of 10 results lie within; engineering estimates.",
                           year = "Monthly balance of ISO 13790, or degree days.",
                           year_range = "Within some 15 % for conduction, 25 % for the sun, a "
                                        "factor of two for leakage.",
                           areas = "Center, edge and frame by their areas (ISO 10077-1).",
                           tables = "UK SAP 2012 Table 6e; defaults of the US energy code IECC "
                                    "R303.1.3(1); both from memory.";

constexpr CardText cards[] = {
    {"ribbon", "Heat that crosses this place, by radiation or carried by gas.", balance,
     "U of published glazings is met within 0.05 W/m²K; the split between both ways is an "
     "estimate."},
    {"face", "The temperature of this face of the glass, at its center.", balance,
     "An estimate, some 1 K; wind and sky change the outer ones by the hour."},
    {"sun", "Its share of 100 W of sun that falls straight on.",
     "Spectra of generic panes, ISO 9050 and ISO 15099.", "Published units within 0.05."},
    {"path.glass", "Heat through glass away from its edges.", areas, "An estimate, some 5 %."},
    {"path.edge", "Heat through the glass within 65 mm (2 1/2 in) of frame and sashes.", areas,
     "An estimate: spacers of a kind differ by some 20 %."},
    {"path.frame", "Heat through frame and sashes.", areas,
     "An estimate: frames of a kind differ by some 20 %."},
    {"path.unrated", "What the opening loses beyond the unit: shim space, wall beside it, leaks.",
     areas, "Cracks of old windows differ by a factor of two and more."},
    {"published", "What tables give for a window of this frame and glass.", tables,
     "The tables differ by some 10 % for one window: other weather, frames and rounding. The "
     "computed U is at this weather."},
    {"coated", "The center's U and SHGC with the coating on that face.", balance,
     "Within 0.05 W/m²K and 0.05."},
    {"left", "The air that would move through the shim space and past the sashes after that work.",
     "Cracks after Baker, Sharples and Ward 1987, shim spaces after Proskiw 1995.",
     "Work differs: a factor of two."},
    {"reading", "The reading, corrected for emissivity and mirrored heat, beside what is computed.",
     "Radiometric equation of infrared thermometry; computed as on the other screens.",
     "Both ranges together must part before a difference counts."},
    {"explains", "What that alone would have to be for the computation to meet the reading.",
     "The same computation with that one thing changed; frame, casing and edge by sections.",
     "Whatever leaves less than both errors explains; it need not be what is so: look there."},
    {"glass_u", "The U-factor that would make the glass as cold as it was read.",
     "Indoor film of ISO 15099 at the reading.", "As wide as the instrument's error makes it."},
    {"bill.heat", card_words::year_heat, year, year_range},
    {"bill.loss", "Its part of the year's heat.", year, year_range},
    {"bill.cool", "Heat that must be cooled away in a year because of this window.", year,
     "A monthly balance is a quarter off it; blinds and open windows change it by half."},
    {"bill.fuel", "Fuel that gives that heat.", "Heat contents published with the fuel.",
     "As the heat; the heater's efficiency is yours to enter."},
    {"bill.cost", card_words::year_cost, year, year_range},
    {"bill.carbon", "Carbon dioxide of that fuel.", "Emission factors published with the fuel.",
     "As the heat; for electricity they differ by the grid."},
    {"bill.price", "Labor and material of the remedy.", "Hours and material of the remedy's list.",
     "An estimate, ± 15 %: a quote decides."},
    {"bill.saving", "Fuel that need not be bought in a year.", draws, draws_range},
    {"bill.payback",
     "Years until the savings have paid the price, without interest or with it as named.", draws,
     draws_range},
    {"bill.value", "Savings over its life less the price, in today's money.", draws, draws_range},
    {"house.sum", "The openings' own numbers, added up.", year, year_range},
    {"house.price", "Labor and material of the remedies, added up.",
     "Hours and material of each remedy's list.", "An estimate, ± 15 %: a quote decides."},
    {"house.saving", "Fuel that all openings together need not have in a year.", draws,
     "8 of 10 results lie within. What is off for all openings alike adds; what is each one's own "
     "goes by the root of the squares."},
    {"house.mix", "People bothered at the ankles, of 100 at each opening, added up.",
     "Undominated sets (Nemhauser and Ullmann 1969), bounds of Sinha and Zoltners 1979, both from "
     "memory; people as on the Room page.",
     "Of the estimates the best to the last unit of money; each estimate within 2 of 100."},
    {"sheet.size", "Width × height from the tape, largest or smallest of three.", tape, tape_range},
    {"sheet.united", "What many price lists go by.", tape, tape_range},
    {"sheet.fits", "The largest unit that stands plumb and level in the opening as it is.",
     "Both diagonals of any four-sided opening: rising² − falling² = 4 (width × lean + height × "
     "drop).",
     "Within 1 mm of random crooked openings; sides are taken for straight but for their bow."},
    {"sheet.unit", "What to order so that the unit goes in.", tape,
     "Makers differ in what they deduct: ask."},
    {"sheet.play", "What is left for shims and foam once it stands plumb and level.", tape,
     tape_range},
    {"sheet.glass", "Glass that shows in both sashes.", "Widths of frame and sash as drawn.",
     drawn_range},
    {"sheet.clear", "Width × height of the way through, lower sash pushed all the way up.",
     "Widths of frame and sash as drawn.", drawn_range},
    {"sheet.clear_area", "Width × height of the way through.", "Widths of frame and sash as drawn.",
     drawn_range},
    {"sheet.need", "What the chosen remedy takes of it at this opening.", practice, waste},
    {"sheet.all", "What to buy of it for the house.", practice, waste},
    {"sheet.work", "Of the chosen remedy.", "The remedy's own list.",
     "An estimate, ± 15 %: a quote decides."},
    {"sheet.house", "Of all openings with a chosen remedy.", "The remedies' own lists.",
     "An estimate, ± 15 %: a quote decides."},
};

/// The figure that a page's number goes up and down with.
struct Leaning {
    std::string_view key, figure;
};
constexpr Leaning leanings[] = {
    {"ribbon", "u_centre"},           {"face", "part.glass_centre"}, {"sun", "shgc"},
    {"path.glass", "u_centre"},       {"path.edge", "u_edge"},       {"path.frame", "u_frame"},
    {"path.unrated", "heat"},         {"coated", "u_centre"},        {"left", "shim_flow"},
    {"reading", "part.glass_centre"}, {"glass_u", "u_centre"},       {"bill.heat", "year_kwh"},
    {"bill.loss", "year_kwh"},        {"bill.cool", "shgc"},         {"bill.fuel", "year_kwh"},
    {"bill.cost", "year_cost"},       {"bill.carbon", "year_kwh"},   {"bill.saving", "year_cost"},
    {"bill.payback", "year_cost"},    {"bill.value", "year_cost"},
};

std::string path(std::string_view key, const Case& c, const assess::Assessment& a, Units u) {
    const double k = c.room.air_c - c.weather.outside_c;
    const opening::UnitSize unit = opening::unit_size(c.opening);
    const double unit_m2 = unit.width_m * unit.height_m;
    if (key == "path.edge")
        return put("U × area × (room − outdoors) = %.3f × %.3f × %.2f (SI)", a.u_edge_w_m2k,
                   a.edge_m2, k);
    if (key == "path.frame")
        return put("U × area × (room − outdoors) = %.3f × %.3f × %.2f (SI)", a.u_frame_w_m2k,
                   a.frame_m2, k);
    if (key == "path.glass")
        return "whole window − edge − frame = " + format_heat(a.u_window_w_m2k * unit_m2 * k, u) +
               " − " + format_heat(a.u_edge_w_m2k * a.edge_m2 * k, u) + " − " +
               format_heat(a.u_frame_w_m2k * a.frame_m2 * k, u);
    return put("all heat − U window × area × (room − outdoors)\n= %.1f − %.3f × %.3f × %.2f (SI)",
               a.heat_w, a.u_window_w_m2k, unit_m2, k);
}

/// Of the work; the order's and the glass's numbers are told beside their screen.
std::string of_sheet(std::string_view key, const Session& session, Shown of, Units u) {
    if (key != "sheet.work") return sheet_formula(key, session, of, u);
    const house::Sheet s = house::sheet(session.house(), session.record());
    const Trade trade = trade_of(session.house());
    return put("%.2f hours × ", s.hours) + format_money(session.house().hour, trade) +
           " + material " + format_money(s.material_cost, trade);
}

} // namespace

std::span<const CardText> page_cards() {
    return cards;
}

const assess::Figure* tried_figure(std::string_view key) {
    for (const Leaning& leaning : leanings)
        if (leaning.key == key) return assess::find_figure(leaning.figure);
    return assess::find_figure(key);
}

std::string page_formula(std::string_view key, const Session& session, Shown of, Units units) {
    const assess::Assessment& a = session.result(of);
    if (key.substr(0, 5) == "path.") return path(key, session.shown_case(of), a, units);
    if (key.substr(0, 6) == "sheet.") return of_sheet(key, session, of, units);
    return {};
}

} // namespace shimlight::view
