// SPDX-License-Identifier: MIT
// Common practice. What a word stands for is what a contractor would most likely find.
#include "opening/word_rows.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

constexpr WordSet single{"glazing.panes", "1"}, twofold{"glazing.panes", "2"},
    threefold{"glazing.panes", "3"};
constexpr WordSet storm{"glazing.storm", "clear"}, loose{"sash.fit", "loose"},
    worn{"sash.fit", "worn"}, tight{"sash.fit", "tight"}, wood{"frame", "wood"},
    vinyl{"frame", "vinyl"}, aluminium{"frame", "aluminium"},
    fibreglass{"frame", "fibreglass|fiberglass"}, clad{"frame", "clad|wood"},
    composite{"frame", "composite"}, steel{"frame", "steel|vinyl"},
    broken{"frame", "thermal|broken|break"}, strip{"sash.weatherstrip", "1"},
    locked{"sash.locked", "1"}, unlocked{"sash.locked", "0"}, insert{"installation", "insert"},
    full{"installation", "full_frame"}, low_e{"glazing.coating", "face3"},
    hard{"glazing.coating_kind", "hard"}, argon{"glazing.gas", "argon"},
    film{"glazing.panel", "film"}, panel{"glazing.panel", "clear"}, foamed{"shim.fill", "foamed"},
    stuffed{"shim.fill", "stuffed"}, open{"shim.fill", "open"}, rod{"shim.fill", "backer_rod"},
    caulked{"casing.seal", "caulked"}, warm_edge{"glazing.spacer", "foam"};

constexpr WordRow rows[] = {
    // Words that only look like glass
    {"double hung", {}},
    {"single hung", {}},
    {"side by side", {}},
    // Panes
    {"single", {single}},
    {"single pane", {single}},
    {"one pane", {single}},
    {"double", {twofold}},
    {"two panes", {twofold}},
    {"double pane", {twofold}},
    {"insulating glass", {twofold}},
    {"insulated glass", {twofold}},
    {"thermopane", {twofold}},
    {"triple", {threefold}},
    {"three panes", {threefold}},
    // Coating, gas, spacer
    {"low e", {low_e}, "none"},
    {"lowe", {low_e}, "none"},
    {"coated", {low_e}, "none"},
    {"uncoated", {{{"glazing.coating", "none"}}}},
    {"hard coat", {low_e, hard}, "none"},
    {"soft coat", {low_e, {"glazing.coating_kind", "two_silvers"}}, "none"},
    {"room side coat", {{{"glazing.coating", "faces2and4"}}}},
    {"solar control", {{{"glazing.coating", "face2"}, {"glazing.coating_kind", "three_silvers"}}}},
    {"argon", {argon}, "air"},
    {"gas filled", {argon}, "air"},
    {"gas", {argon}, "air"},
    {"krypton", {{{"glazing.gas", "krypton"}}}, "air"},
    {"fogged", {{{"glazing.gas_share", "0"}}}},
    {"foggy", {{{"glazing.gas_share", "0"}}}},
    {"failed seal", {{{"glazing.gas_share", "0"}}}},
    {"seal failed", {{{"glazing.gas_share", "0"}}}},
    {"warm edge", {warm_edge}, "aluminium"},
    {"foam spacer", {warm_edge}},
    {"metal spacer", {{{"glazing.spacer", "aluminium"}}}},
    {"aluminium spacer", {{{"glazing.spacer", "aluminium"}}}},
    {"aluminum spacer", {{{"glazing.spacer", "aluminium"}}}},
    {"bronze", {{{"glazing.tint", "bronze"}}}, "clear"},
    {"grey glass", {{{"glazing.tint", "grey"}}}, "clear"},
    {"gray glass", {{{"glazing.tint", "grey"}}}, "clear"},
    {"green glass", {{{"glazing.tint", "green"}}}, "clear"},
    {"tinted", {{{"glazing.tint", "grey"}}}, "clear"},
    {"clear", {{{"glazing.tint", "clear"}}}},
    {"low iron", {{{"glazing.tint", "low_iron"}}}, "clear"},
    // Panels
    {"storm", {storm}, "none"},
    {"storm window", {storm}, "none"},
    {"storm panel", {storm}, "none"},
    {"low e storm", {{{"glazing.storm", "low_e"}}}, "none"},
    {"panel inside", {panel}, "none"},
    {"inside panel", {panel}, "none"},
    {"secondary", {panel}, "none"},
    {"film", {film}, "none"},
    {"shrink film", {film}, "none"},
    {"plastic film", {film}, "none"},
    // Frame
    {"wood", {wood}},
    {"wooden", {wood}},
    {"timber", {wood}},
    {"vinyl", {vinyl}},
    {"pvc", {vinyl}},
    {"upvc", {vinyl}},
    {"plastic", {vinyl}},
    {"aluminium", {aluminium}},
    {"aluminum", {aluminium}},
    {"metal", {aluminium}},
    {"thermal break", {broken}},
    {"thermally broken", {broken}},
    {"vinyl with steel", {steel}},
    {"reinforced vinyl", {steel}},
    {"thermally broken aluminium", {broken}},
    {"thermally broken aluminum", {broken}},
    {"fibreglass", {fibreglass}},
    {"fiberglass", {fibreglass}},
    {"clad wood", {clad}},
    {"clad", {clad}},
    {"composite", {composite}},
    // Sash
    {"loose", {loose}, "worn"},
    {"rattles", {loose}, "worn"},
    {"rattling", {loose}, "worn"},
    {"rattly", {loose}, "worn"},
    {"drafty", {loose}, "worn"},
    {"leaky", {loose}, "worn"},
    {"worn", {worn}},
    {"tight", {tight}, "worn"},
    {"painted shut", {tight, locked}},
    {"weatherstripped", {strip}, "0"},
    {"weather stripped", {strip}, "0"},
    {"weatherstrip", {strip}, "0"},
    {"weather strip", {strip}, "0"},
    {"locked", {locked}, "0"},
    {"locks", {locked}, "0"},
    {"lock", {locked}, "0"},
    {"unlocked", {unlocked}},
    {"broken lock", {unlocked}},
    {"lock broken", {unlocked}},
    {"slipped", {{{"sash.slipped_m", "0.005"}}}, "0"},
    {"upper sash down", {{{"sash.slipped_m", "0.005"}}}, "0"},
    {"ropes", {wood, worn, single}, "", true},
    {"rope", {wood, worn, single}, "", true},
    {"weights", {wood, worn, single}, "", true},
    {"pulleys", {wood, worn, single}, "", true},
    {"cords", {wood, worn, single}, "", true},
    // Age
    {"old", {wood, single, worn}, "", true},
    {"original", {wood, single, worn}, "", true},
    {"new", {vinyl, twofold, tight}, "", true},
    {"modern", {vinyl, twofold, tight}, "", true},
    // Setting
    {"insert", {insert}, "full_frame"},
    {"pocket unit", {insert}},
    {"full frame", {full}, "insert"},
    {"foamed", {foamed}, "open"},
    {"foam in the joint", {foamed}, "open"},
    {"foam in the shim space", {foamed}, "open"},
    {"foam around", {foamed}, "open"},
    {"stuffed", {stuffed}, "open"},
    {"fibre in the joint", {stuffed}, "open"},
    {"fiber in the shim space", {stuffed}, "open"},
    {"backer rod", {rod}, "open"},
    {"open joint", {open}},
    {"open shim space", {open}},
    {"empty shim space", {open}},
    {"empty joint", {open}},
    {"caulked", {caulked}, "unsealed"},
    {"2x4", {{{"wall.build", "frame_2x4"}}}},
    {"2x6", {{{"wall.build", "frame_2x6"}}}},
    {"insulated wall", {{{"wall.insulation_w_mk", "0.042"}}}},
    {"uninsulated", {{{"wall.insulation_w_mk", "0.5"}}}},
    {"empty wall", {{{"wall.insulation_w_mk", "0.5"}}}},
    // Storey
    {"basement", {{{"room.storey", "basement"}}}},
    {"ground floor", {{{"room.storey", "ground"}}}},
    {"downstairs", {{{"room.storey", "ground"}}}},
    {"upstairs", {{{"room.storey", "upstairs"}}}},
    {"second floor", {{{"room.storey", "upstairs"}}}},
    {"attic", {{{"room.storey", "attic"}}}},
};

constexpr std::string_view fillers[] = {
    "a",      "an",    "the",   "and",    "with",   "of",     "in",     "on",      "is",
    "are",    "it",    "has",   "very",   "hung",   "glass",  "glazed", "glazing", "pane",
    "panes",  "paned", "sash",  "sashes", "frame",  "framed", "frames", "window",  "windows",
    "unit",   "panel", "house", "wall",   "from",   "but",    "or",     "some",    "quite",
    "filled", "joint", "space", "shim",   "around", "spacer"};

} // namespace

std::span<const WordRow> word_rows() {
    return rows;
}

bool is_filler(std::string_view word) {
    return std::find(std::begin(fillers), std::end(fillers), word) != std::end(fillers);
}

} // namespace shimlight::opening
