// SPDX-License-Identifier: MIT
// Every phrase that verdict and advice are made of, in one place, so that another language is
// another such table. {0}, {1}, … are filled in (words.hpp).
#pragma once

#include <string_view>

namespace shimlight::assess::phrases {

using Phrase = std::string_view;

// Causes; the short form as the last of three.
inline constexpr Phrase cold_glass = "cold glass", sash = "the sash",
                        joint = "the shim space behind the casing", joint_short = "the shim space";

// Cheap measures.
inline constexpr Phrase lock = "pushing home and locking", strip = "weather strip",
                        foam = "foam in the shim space",
                        strip_foam = "weather strip and foam in the shim space",
                        storm = "a storm panel",
                        storm_strip_foam = "a storm panel, weather strip and foam";

// Where the draft comes from.
inline constexpr Phrase hardly_any = "Hardly any draft reaches this seat.";
inline constexpr Phrase outward = "Air leaks outward here, so the draft is cold glass.";
inline constexpr Phrase largest = "{0} of the draft here is {1}", second = ", {0} {1}",
                        third = ", the rest {0}";
inline constexpr Phrase by_tests = "By {0} on site {1} of the draft is {2} ({3} to {4})";
inline constexpr Phrase one_test = "one test", some_tests = "{0} tests";

// What a remedy leaves.
inline constexpr Phrase nameless = "This remedy", remedy = "{0}: {1}";
inline constexpr Phrase bothered = "{0} bothered", worse = "a worse draft, {0}, not {1}",
                        more = "{0}, not {1}", stays = "the draft stays, {0}",
                        less = "{0} instead of {1}", by_these_tests = ", by these tests",
                        alone = "; {0} alone: {1}";
inline constexpr Phrase of_what_is_left = " Of what is left {0} is {1}{2}.";
inline constexpr Phrase glass_goes = "; the glass goes from {0} to {1}",
                        glass_stays = "; the glass stays at {0}", wet = ", with water on {0}",
                        frost = ", with frost on {0}", dries = "; {0} dries",
                        and_dries = " and dries";
/// Of a place and the cut it lies in.
/// After words about the glass.
inline constexpr Phrase on_it = "it", its_edge = "its edge ({0})", elsewhere = "{0} ({1})";
inline constexpr Phrase in_cut = "{0} at the {1}";
inline constexpr Phrase cuts[] = {"head", "jamb", "sill", "meeting rail"};
inline constexpr Phrase parts[] = {
    "the glass", "the edge of the glass", "the frame",      "the casing",
    "the wall",  "its coldest place",     "the storm panel"};

// Advice.
inline constexpr Phrase enough_today =
    "Today already {0} or fewer of 100 are bothered at the ankles, as the standard wants it.";
inline constexpr Phrase cheapest =
    "Cheapest with {0} of 100 or fewer bothered at the ankles: {1}, for {2} ({3} bothered).";
inline constexpr Phrase nearly = " {0}, for {1}, leaves {2}: hardly to be told apart.";
inline constexpr Phrase dearer_same = " {0} costs {1} more and leaves hardly fewer.";
inline constexpr Phrase dearer_better = " {0} costs {1} more and leaves {2}.";
inline constexpr Phrase not_solved = " {0} leaves {1}.";
inline constexpr Phrase none_solves =
    "Nothing here leaves {0} of 100 or fewer bothered at the ankles. Of those that leave the "
    "fewest the cheapest is {1}, "
    "for {2} ({3} bothered).";
inline constexpr Phrase as_is = "Today", with_remedy = "With {0}";
inline constexpr Phrase still_wet =
    "{0}: the coldest place is {1}, {2}, and wet: water stands where it is colder than {3}.";
inline constexpr Phrase still_frost = "{0}: the coldest place is {1}, {2}, with frost.";
inline constexpr Phrase coldest =
    "{0}: the coldest place is {1}, {2}; nothing that room air touches gets wet.";
inline constexpr Phrase storm_wet = " The storm panel's inner face, {0}, gets wet (estimate).",
                        storm_frost = " The storm panel's inner face, {0}, gets frost (estimate).",
                        storm_dry = " The storm panel, {0}, stays dry: the air behind it is drier "
                                    "(estimate).";
inline constexpr Phrase still_falling =
    " Falling air alone, without any leak, would bother {0} of 100.";
inline constexpr Phrase next = "Test next, on the window as it is today: {0}";
inline constexpr Phrase no_next = "No further test would tell more.";

// A reading beside the computation.
inline constexpr Phrase outdoor_air = "Outdoor air at the glass", wind = "Wind at the pane",
                        air_before = "Air before the glass (curtain, heater)",
                        gas = "Gas left between the panes", sun = "Sun on the glass",
                        coating = "A low-e coating", storm_panel = "A storm panel",
                        covering = "A drawn covering", clear_sky = "A clear night sky",
                        emissivity = "Emissivity of the face",
                        outdoor_air_there = "Outdoor air at the window",
                        air_before_part = "Air before it (curtain, heater)",
                        wind_in_cracks = "Wind in the cracks",
                        shim_filling = "A filling of the shim space",
                        casing_caulk = "Caulk along the casing", sash_play = "Play in the sash",
                        wall_insulation = "Insulation of the wall",
                        weight_pockets = "Weight pockets beside the jamb",
                        frame_steel = "Steel in the frame",
                        frame_break = "A thermal break in the frame",
                        frame_cladding = "A metal skin on the frame",
                        better_spacer = "An insulating spacer";
inline constexpr Phrase as_computed = "{0} reads as computed, within {1}.",
                        reads_colder = "{0} reads {1} colder than computed, give or take {2}",
                        reads_warmer = "{0} reads {1} warmer than computed, give or take {2}",
                        no_assumption = "; no single assumption explains it.",
                        one_assumption = "; one assumption would explain it.",
                        some_assumptions = "; {0} assumptions could explain it, each by itself.";
inline constexpr Phrase missing = "that is missing", unseen = "that nobody entered";
inline constexpr Phrase explains = "{0}: {1}, not {2}, would explain it.",
                        leaves = "{0}: even {1} would leave {3}.",
                        there_explains = "{0} {1} would explain it.",
                        there_leaves = "{0} {1} would still leave {2}.",
                        wrong_way = "{0}: any change that is possible goes the other way.";

// Tests on site.
inline constexpr Phrase contradiction = "{0}, yet {1}: no mix of causes fits both; repeat the two.";
inline constexpr Phrase stands_alone =
    "{0}: the other answers together speak against it; repeat it.";
inline constexpr Phrase against_prediction =
    "The tests move {0} of the draft to another cause than computed: check what was entered for "
    "this window.";

} // namespace shimlight::assess::phrases
