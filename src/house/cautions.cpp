// SPDX-License-Identifier: MIT
// Rules: read means seen as published or quoted; retold, in another's words; from memory means to
// be looked up before it counts.
#include "house/cautions.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace shimlight::house {
namespace {

constexpr double frame_kg_m = 3;     // of vinyl or wood frame and sash: estimate, 2 to 5
constexpr double out_of_reach_m = 2; // of hands from the ground: engineering judgement

/// The more certain "no" wins, then "unknown".
Known both(Known a, Known b) {
    if (a == Known::no || b == Known::no) return Known::no;
    return a == Known::unknown || b == Known::unknown ? Known::unknown : Known::yes;
}

Known when(bool fact) {
    return fact ? Known::yes : Known::no;
}

Known built_before(const SiteFacts& f, double year) {
    return f.year_built ? when(*f.year_built < year) : Known::unknown;
}

Known deeper_than(const SiteFacts& f, double m) {
    return f.ground_m ? when(*f.ground_m > m) : Known::unknown;
}

bool unit_out(const SiteFacts& f) {
    return f.method == Method::insert || f.method == Method::full_frame ||
           f.method == Method::glass;
}

bool outside_work(const SiteFacts& f) {
    return f.method == Method::full_frame || f.method == Method::storm;
}

Known high_outside(const SiteFacts& f) {
    if (!outside_work(f)) return Known::no;
    return f.ground_m ? when(*f.ground_m + f.height_m > out_of_reach_m) : Known::unknown;
}

Known edge(const SiteFacts& f) {
    const bool open = unit_out(f) || f.method == Method::storm;
    return both(when(open && f.sill_m < fall_sill_m),
                f.ground_m ? when(*f.ground_m >= fall_edge_m) : Known::unknown);
}

Known large_low_glass(const SiteFacts& f) {
    const opening::Daylight& g = f.glass;
    return when(g.pane_m2() > large_pane_m2 && g.pane_bottom_m < low_glass_m &&
                g.pane_top_m() > high_glass_m);
}

Known reached(const SiteFacts& f, Known near) {
    return both(when(f.glass.pane_bottom_m < reached_glass_m), near);
}

Known sleeping(const SiteFacts& f) {
    return f.basement && f.bedroom != Known::yes ? Known::unknown : f.bedroom;
}

bool at_grade(const SiteFacts& f) {
    return f.ground_m && *f.ground_m <= way_out_sill_m;
}

constexpr CautionRow rows[] = {
    {"lead", "Lead paint",
     "Paint from before 1978 may hold lead: a certified firm, chips and dust kept in, no dry "
     "sanding "
     "or open flame, children away. Replacing a window is never minor repair; beyond that, up to "
     "6 ft² (0.56 m²) a room inside and 20 ft² (1.9 m²) outside may be.",
     "US 40 CFR 745 subpart E, with 745.83; 16 CFR 1303, in force from 1978 (read)",
     [](const SiteFacts& f) { return both(when(f.disturbs_paint), built_before(f, lead_before)); },
     Entry::year_built},
    {"asbestos", "Asbestos",
     "Old glazing putty, caulk, siding and boards may hold asbestos: have them tested before they "
     "are cut, ground or broken.",
     "US 29 CFR 1926.1101, which presumes it in insulation and surfacing up to 1980 and takes "
     "nothing "
     "else for clean (read); 40 CFR 61 subpart M, not for a single small home: 60 FR 38725 (read)",
     [](const SiteFacts& f) {
         return both(when(f.method == Method::glass || f.method == Method::insert ||
                          f.method == Method::full_frame),
                     built_before(f, asbestos_until + 1));
     },
     Entry::year_built},
    {"glass_low", "Safety glass: large and low",
     "A pane of more than 9 ft² (0.84 m²) that begins less than 18 in (46 cm) above the floor and "
     "ends more than 36 in (91 cm) above it, where people walk by, is a place for safety glass.",
     "IRC R308.4.3, IRC 2015 (read); safety glass: ANSI Z97.1, by which 16 CFR 1201 tests (read)",
     large_low_glass},
    {"glass_door", "Safety glass: beside a door",
     "Glass within 24 in (61 cm) of a door that begins less than 60 in (152 cm) above the floor is "
     "a place for safety glass.",
     "IRC R308.4.2, IRC 2015 (read); safety glass: ANSI Z97.1, by which 16 CFR 1201 tests (read)",
     [](const SiteFacts& f) { return reached(f, f.near_door); }, Entry::near_door},
    {"glass_bath", "Safety glass: beside a bath",
     "Glass beside a bath or shower that begins less than 60 in (152 cm) above its floor is a "
     "place for safety glass.",
     "IRC R308.4, wet places (list of 2006, read)",
     [](const SiteFacts& f) { return reached(f, f.near_bath); }, Entry::near_bath},
    {"glass_stairs", "Safety glass: beside stairs",
     "Glass within 36 in (91 cm) of stairs that begins less than 60 in (152 cm) above them is a "
     "place for safety glass.",
     "IRC R308.4, stairs (list of 2006, read)",
     [](const SiteFacts& f) { return reached(f, f.near_stairs); }, Entry::near_stairs},
    {"way_out", "Escape window",
     "A bedroom's or basement's window may be the way out of a fire. Published: 5.7 ft² (0.53 m²) "
     "clear, 5.0 ft² "
     "(0.46 m²) at grade, 24 in (61 cm) high, 20 in (51 cm) wide, sill up to 44 in (112 cm); both "
     "least measures together are not enough. A replacement of the largest size that fits the "
     "frame "
     "may be exempt.",
     "IRC R310, replacement: R310.2.5 of 2015 (read)", sleeping, Entry::bedroom},
    {"way_blocked", "Escape window, closed off",
     "A storm panel, panel or film before a bedroom's sash closes a way out: it must open or come "
     "away from inside without tools.",
     "IRC R310 (read)", [](const SiteFacts& f) { return both(when(f.blocks_way), sleeping(f)); },
     Entry::bedroom},
    {"fall_child", "Falls from the window",
     "A sill less than 24 in (61 cm) above the floor with more than 72 in (183 cm) to the ground "
     "outside: children fall. A limiter or guard that a grown person can release keeps the opening "
     "under 4 in (10 cm); replaced windows count too.",
     "IRC R312.2, also for replacements (2015), ASTM F2090 (read)",
     [](const SiteFacts& f) {
         return both(when(f.sill_m < low_sill_m), deeper_than(f, far_down_m));
     },
     Entry::ground_m},
    {"fall_work", "Falls at work",
     "With the sash or unit out, this opening is an edge more than 6 ft (1.8 m) above the ground: "
     "guard it or tie off before it is opened.",
     "US 29 CFR 1926.501(b)(1), 6 ft (read); (b)(14), openings with less than 39 in (99 cm) of "
     "sill "
     "(from memory)",
     edge, Entry::ground_m},
    {"ladder", "Ladder",
     "Work outside above reach: ladder 1 out for 4 up, 3 ft (0.9 m) above where one steps off, "
     "never "
     "alone; a unit is not carried up a ladder by one person.",
     "US 29 CFR 1926.1053(b)(1), 3 ft above the landing (read); (b)(5)(i), slope (retold)",
     high_outside, Entry::ground_m},
    {"wires", "Electricity",
     "Wires run beside and under windows: find them and switch them off before drilling, sawing or "
     "foaming; keep ladders away from wires overhead.",
     "US 29 CFR 1926.416(a), wires looked for before work (read); 1926.1053(b)(12), rails that do "
     "not conduct (retold)",
     [](const SiteFacts& f) { return both(when(f.any_work), f.near_wires); }, Entry::near_wires},
    {"foam", "Foam",
     "Wet foam and its vapor (MDI) can cause lasting asthma: fresh air, gloves, goggles, nobody "
     "sensitised in the room; the propellant burns: no flame, pilot lights out. Window foam of low "
     "pressure, little at a time, and try the sash before it cures: it can bow a frame.",
     "US OSHA ceiling 0.02 ppm MDI, NIOSH 0.005 ppm over a shift (read); propellant: label (from "
     "memory)",
     [](const SiteFacts& f) { return when(f.foams); }},
    {"lift", "Weight", "Two people lift this.",
     "NIOSH lifting equation: 51 lb (23 kg) at best for one person (read)",
     [](const SiteFacts& f) { return when(f.weight_kg > lift_kg); }},
    {"broken", "Broken glass",
     "Old panes break when sashes come out: tape them, gloves and goggles, floor and garden swept "
     "after.",
     "US 29 CFR 1926.102(a)(1), eyes (read); 1926.95, gloves (from memory)",
     [](const SiteFacts& f) { return when(unit_out(f)); }},
    {"weights", "Sash weights",
     "Cut cords drop iron weights inside the wall, and old wires are often found in the pockets.",
     "Common practice", [](const SiteFacts& f) { return when(f.pockets && f.any_work); }},
    {"heater", "Heater below",
     "A heater stands below: off and cold before work, an electric one off at its breaker; nothing "
     "that hangs or is foamed comes near it while hot.",
     "Common practice; the heater's label",
     [](const SiteFacts& f) { return when(f.heater && (f.any_work || f.covered)); }},
    {"fresh_air", "Fresh air",
     "A tighter house brings flue gas back sooner: fires and open-flued heaters want their own "
     "air, "
     "a working flue and an alarm for carbon monoxide.",
     "IRC R315, alarms, also where work in an old house needs a permit (2012, read)",
     [](const SiteFacts& f) { return when(f.tightens); }},
    {"cords", "Cords",
     "Cords of blinds and curtains strangle small children: cordless, or out of their reach.",
     "ANSI/WCMA A100.1 (2022, read)", [](const SiteFacts& f) { return when(f.covered); }},
};

std::string area(double m2) {
    char text[48];
    std::snprintf(text, sizeof text, "%.1f ft² (%.2f m²)", m2 / (foot_m * foot_m), m2);
    return text;
}

std::string long_way(double m) {
    char text[48];
    std::snprintf(text, sizeof text, "%.1f in (%.0f cm)", m / inch_long_m, 100 * m);
    return text;
}

/// What the opening's own figures add to a row.
std::string figures(const CautionRow& row, const SiteFacts& f) {
    if (row.key == "way_out") {
        const std::string lacks = short_of_way_out(f);
        return " Computed here: " + area(f.glass.clear_m2()) + ", " +
               long_way(f.glass.clear_height_m) + " high, " + long_way(f.glass.clear_width_m) +
               " wide; today " + area(f.today.clear_m2()) + "." +
               (lacks.empty() ? " Met as drawn: check the maker's."
                              : " Not met as drawn: " + lacks + ". Check.");
    }
    if (row.key == "glass_low") return " One pane here: " + area(f.glass.pane_m2()) + ".";
    if (row.key == "lift") {
        char text[96];
        std::snprintf(text, sizeof text,
                      " The new unit weighs about %.0f kg (%.0f lb), an estimate.", f.weight_kg,
                      f.weight_kg / 0.45359237);
        return text;
    }
    return "";
}

Known written(const Entries& site, Entry e) {
    return site.has(e) ? when(site.of(e) > 0.5) : Known::unknown;
}

/// Storey and ground that levers and entries leave open stay unknown.
std::optional<double> number(const Entries& site, Entry e) {
    return site.has(e) ? std::optional<double>(site.of(e)) : std::nullopt;
}

/// What the remedy does that cautions ask for.
void add_work(SiteFacts& f, const Job& work) {
    using namespace opening;
    const Opening &was = work.today.opening, &is = work.remedy.opening;
    f.method = work.method;
    f.glass = daylight(work.remedy);
    f.today = daylight(work.today);
    const bool joint = is.shim.fill != was.shim.fill || is.pockets != was.pockets;
    const bool caulk = is.casing.seal != was.casing.seal;
    const bool strip = is.sash.weatherstrip && !was.sash.weatherstrip;
    f.any_work = f.method != Method::none || joint || caulk || strip;
    f.disturbs_paint = (f.any_work && f.method != Method::film) || joint || caulk || strip;
    for (const MaterialLine& line : materials(work))
        f.foams = f.foams || line.row->key == "foam";
    f.tightens = f.any_work;
    f.blocks_way = (is.glazing.panel != Panel::none && is.glazing.panel != was.glazing.panel) ||
                   (is.glazing.storm != Storm::none && is.glazing.storm != was.glazing.storm);
    f.covered = is.covering != Covering::none && is.covering != was.covering;
    f.pockets = has_pockets(was) && was.pockets == Pockets::empty;
    if (f.method == Method::insert || f.method == Method::full_frame) {
        const UnitSize unit = unit_size(is);
        f.weight_kg = glass_kg(work.remedy) + frame_kg_m * 2 * (unit.width_m + unit.height_m);
    }
}

} // namespace

std::span<const CautionRow> caution_rows() {
    return rows;
}

std::string rule_in_print(const CautionRow& row) {
    std::string words(row.rule);
    for (const std::string_view mark : {" (read)", ", read"}) {
        std::size_t at = 0;
        while ((at = words.find(mark)) != std::string::npos)
            words.erase(at, mark.size());
    }
    return words;
}

SiteFacts site_facts(const House& house, const OpeningRecord& record) {
    const Entries& site = record.site;
    SiteFacts f;
    f.bedroom = written(site, Entry::bedroom);
    f.near_door = written(site, Entry::near_door);
    f.near_bath = written(site, Entry::near_bath);
    f.near_stairs = written(site, Entry::near_stairs);
    f.near_wires = written(site, Entry::near_wires);
    f.year_built = number(site, Entry::year_built);
    f.ground_m = number(site, Entry::ground_m);
    f.sill_m = record.today.sill_m;
    f.height_m = record.today.height_m;
    f.heater = record.room.heater != opening::Heater::none;
    f.basement = record.room.storey == opening::Storey::basement;
    add_work(f, job_of(house, record));
    return f;
}

std::string short_of_way_out(const SiteFacts& f) {
    const opening::Daylight& g = f.glass;
    const struct {
        bool lacks;
        const char* what;
    } all[] = {{g.clear_m2() < (at_grade(f) ? way_out_at_grade_m2 : way_out_m2), "area"},
               {g.clear_height_m < way_out_high_m, "height"},
               {g.clear_width_m < way_out_wide_m, "width"},
               {g.clear_bottom_m > way_out_sill_m, "sill too high"}};
    std::string lacks;
    for (const auto& one : all)
        if (one.lacks) lacks += (lacks.empty() ? "" : ", ") + std::string(one.what);
    return lacks;
}

std::vector<Caution> cautions(const SiteFacts& facts) {
    std::vector<Caution> all;
    for (const CautionRow& row : rows) {
        const Known applies = row.applies(facts);
        if (applies == Known::no) continue;
        all.push_back({&row, applies == Known::unknown,
                       std::string(row.words) + figures(row, facts) + std::string(whose_word)});
    }
    return all;
}

std::vector<Caution> cautions(const House& house, const OpeningRecord& record) {
    return cautions(site_facts(house, record));
}

} // namespace shimlight::house
