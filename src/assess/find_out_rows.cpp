// SPDX-License-Identifier: MIT
// All likelihoods of the tests, in this one place. They are engineering judgement from what
// auditors write about their work, not measured: a test that decides gets about 0.9 against 0.1,
// one that leans 0.7 against 0.35. None is 0 or 1, since hands and tissues err.
#include "assess/find_out_rows.hpp"

namespace shimlight::assess {

namespace {

using Words = std::array<std::string_view, 3>;

constexpr Words yes_no = {"yes", "no"};
constexpr Words ended = {"gone", "weaker", "same"};
constexpr Words grew = {"grows", "somewhat", "same"};
constexpr Words read = {"colder", "as_computed", "warmer"};

constexpr std::string_view fan_caution =
    "Not with an open fire or an appliance on a flue alight: its fumes would come into the room.";
constexpr std::string_view tape_caution =
    "Painter's tape only, and gently: paint from before 1978 may hold lead.";

constexpr TestRow rows[] = {
    {"lock_home",
     "Push the upper sash up and the lower one down, engage the lock: is the draft gone, weaker or "
     "the same?",
     Scale::three,
     1,
     {0.05, 0.55, 0.05},
     "A sash that was not home stops leaking; a worn one leaks on.",
     {"locking the sashes ended the draft", "locking the sashes weakened it",
      "locking the sashes changed nothing"},
     ended},
    {"wind",
     "Is it worse in wind than on still cold nights?",
     Scale::two,
     0.5,
     {0.1, 0.8, 0.75},
     "Wind drives air through cracks; falling air needs none.",
     {"it is worse in wind", "it is as bad on still nights"},
     yes_no},
    {"tissue_pane",
     "A tissue at the foot of the glass: does it hang down and lean out over the sill?",
     Scale::two,
     1,
     {0.85, 0.35, 0.3},
     "Falling air sweeps down the pane and over the sill; some of it is there beside any leak.",
     {"the tissue leaned out over the sill", "the tissue hung still over the sill"},
     yes_no},
    {"tissue_sash",
     "A tissue along the sash joints and the meeting rail: is it blown sideways?",
     Scale::two,
     1,
     {0.15, 0.85, 0.15},
     "A jet comes straight out of its crack; air that falls along the pane hardly does.",
     {"the tissue was blown sideways at the sash", "the tissue was still at the sash"},
     yes_no},
    {"tissue_casing",
     "A tissue along the casing edge: is it blown sideways?",
     Scale::two,
     1,
     {0.06, 0.1, 0.8},
     "The joint's air comes out behind the casing, where no air falls.",
     {"the tissue was blown sideways at the casing", "the tissue was still at the casing"},
     yes_no},
    {"shade",
     "Shade or curtain down: does cold air spill from under its hem?",
     Scale::two,
     1,
     {0.8, 0.4, 0.25},
     "Behind a shade the glass grows colder and its air falls out below; a leak blows the shade.",
     {"cold spills from under the shade", "nothing spills from under the shade"},
     yes_no},
    {"flame",
     "A flame near the window: does it flicker?",
     Scale::two,
     1,
     {0.7, 0.7, 0.7},
     "It proves nothing: air that falls from cold glass moves a flame just as a leak does.",
     {"the flame flickered", "the flame stood still"},
     yes_no,
     "No flame near curtains; a tissue shows the direction, which is what counts."},
    {"glass_reading",
     "Read the glass: colder than computed, as computed, or warmer?",
     Scale::three,
     2,
     {0.65, 0.35, 0.35},
     "Colder glass makes more falling air than was computed.",
     {"the glass is colder than computed", "the glass is as computed",
      "the glass is warmer than computed"},
     read,
     {},
     true},
    {"frame_reading",
     "Read the sash and frame: colder than computed, as computed, or warmer?",
     Scale::three,
     2,
     {0.35, 0.7, 0.4},
     "Air past the sash cools it more than was computed.",
     {"the frame is colder than computed", "the frame is as computed",
      "the frame is warmer than computed"},
     read,
     {},
     true},
    {"casing_reading",
     "Read the casing at its edge: colder than computed, as computed, or warmer?",
     Scale::three,
     2,
     {0.3, 0.35, 0.75},
     "The joint's air cools the casing on its way out.",
     {"the casing is colder than computed", "the casing is as computed",
      "the casing is warmer than computed"},
     read,
     {},
     true},
    {"paper",
     "A strip of paper shut in the sash at several places: does it slide out freely?",
     Scale::two,
     3,
     {0.35, 0.85, 0.35},
     "A sash that does not grip leaks, but many that leak little do not grip either.",
     {"the paper slid out freely", "the sash held the paper"},
     yes_no},
    {"fans",
     "All exhaust fans on, doors open: does it grow at once, somewhat, or not?",
     Scale::three,
     3,
     {0.08, 0.85, 0.8},
     "Fans draw air in through every crack within seconds; falling air does not know of them.",
     {"the fans made it grow at once", "the fans made it grow somewhat",
      "the fans changed nothing"},
     grew,
     fan_caution},
    {"tape_sash",
     "Tape over all sash joints: is the draft gone, weaker or the same?",
     Scale::three,
     6,
     {0.06, 0.92, 0.08},
     "Tape stops what came through there and nothing else.",
     {"tape over the sash joints ended it", "tape over the sash joints weakened it",
      "tape over the sash joints changed nothing"},
     ended,
     tape_caution},
    {"tape_casing",
     "Tape over the casing edges: is the draft gone, weaker or the same?",
     Scale::three,
     6,
     {0.06, 0.08, 0.92},
     "Tape stops what came through there and nothing else.",
     {"tape over the casing edges ended it", "tape over the casing edges weakened it",
      "tape over the casing edges changed nothing"},
     ended,
     tape_caution},
};

} // namespace

std::span<const TestRow> test_rows() {
    return rows;
}

} // namespace shimlight::assess
