// SPDX-License-Identifier: MIT
// From the tape's raw measures to what is ordered: by the remedy's way of being set, by what fits.
#pragma once

#include "house/house.hpp"
#include "opening/cut.hpp"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace shimlight::house {

/// How what the remedy brings is set; it follows from what the remedy changes.
enum class Method { none, glass, insert, full_frame, storm, panel, film };
inline constexpr int method_count = 7;

/// One row a method, all common practice; makers differ.
struct MethodRow {
    std::string_view key, name;
    std::string_view measured;        ///< between what the tape is held
    std::string_view clearance;       ///< what is usually taken off, in words with its spread
    double width_m = 0, height_m = 0; ///< taken off; less than 0: added
    double least_width_m = 0, least_height_m = 0; ///< of units that are usually made; 0: any
};
const MethodRow& method_row(Method method);
Method method_of(const House& house, const OpeningRecord& record);

/// What is taken off by default. In a full frame twice the remedy's shim space, so that order and
/// picture are one.
opening::UnitSize usual_clearance(Method method, const opening::Opening& remedy);

/// One direction's measures.
struct TapeSize {
    int count = 0; ///< of three
    double least_m = 0, most_m = 0;
    bool uneven = false;                ///< they differ by more than a straight opening's would
    double ends_m = 0, least_end_m = 0; ///< mean and lesser of first and last; of what is there
    // Where all three are there:
    double bow_m = 0;   ///< middle over the mean of the ends; less than 0: bowed inwards
    double taper_m = 0; ///< last over first
};

// Tolerances, common practice: three measures within 1/8 in, diagonals within 1/4 in; stricter
// makers want 1/8 in or a narrower unit. A new frame may bow by 1/16 in.
inline constexpr double even_m = 0.0032, square_m = 0.0064, strict_square_m = 0.0032;
inline constexpr double straight_m = 0.0016;
inline constexpr double too_racked_m = 0.0127; ///< 1/2 in out of plumb shows: engineering judgement
inline constexpr double pocket_depth_m = 0.0825; ///< of common inserts, 3 1/4 in
inline constexpr double far_off_m = 0.0254;      ///< tape from levers: something else was measured

/// What both diagonals tell.
struct Square {
    double difference_m = 0;
    double lean_m = 0;        ///< a side out of plumb over the height, head and sill being level
    double drop_m = 0;        ///< head and sill out of level over the width
    bool level_known = false; ///< which of both it is; else each as if it were the only one
    bool racked = false;      ///< more than 1/4 in
    bool counts = false;      ///< more than 1/8 in: the order goes by what fits
    double fits_width_m = 0, fits_height_m = 0; ///< largest unit that stands plumb and level in it
};

struct OrderSize {
    double estimating_m = 0; ///< largest measure, rounded up: for prices
    double smallest_m = 0;   ///< of the measures, as taken
    double opening_m = 0;    ///< the same or what fits, rounded down: the maker's, if he deducts
    double clearance_m = 0;  ///< usual, or as entered
    double unit_m = 0;       ///< less the clearance where this sheet deducts, rounded down
};

/// Who takes the clearance off: both doing so is the classic error.
enum class Deducts { not_asked, sheet, maker };

struct Order {
    Method method = Method::none;
    TapeSize width, height;
    std::optional<Square> square; ///< with both diagonals and a width and height
    OrderSize wide, high;
    bool measured = false; ///< three and three; false: good for an estimate only
    Deducts deducts = Deducts::not_asked;
    bool too_small = false;  ///< for units that are usually made
    bool too_racked = false; ///< for an insert: rather a full frame
    bool shallow = false;    ///< the pocket between the stops, for common inserts
    bool elsewhere = false;  ///< the tape is far from what is drawn
    int quantity = 1;        ///< panes: two
};

/// Sizes are rounded to what the trade orders by: 1/8 in or 1 mm.
double order_step_m(Units units);
double rounded_up_m(double m, Units units);
double rounded_down_m(double m, Units units);

/// Between what the method measures, from the levers: stands in until the tape was there.
opening::UnitSize drawn_size(Method method, const opening::Case& today,
                             const opening::Opening& remedy);

TapeSize tape_size(const Entries& site, Entry first);

/// Of any quadrilateral, as it stands, rising² − falling² = 4 (width · lean + height · drop), all
/// four means of two sides: both diagonals' sum and difference are twice the mean sides. `rise_m`
/// is how much higher the sill ends on the right; while it is not known, lean and drop are each
/// what they would be by themselves, and what fits, fits in both. A middle less than its ends is a
/// bow that takes room. Empty without a width or a height.
std::optional<Square> squareness(double rising_m, double falling_m, const TapeSize& width,
                                 const TapeSize& height, std::optional<double> rise_m);

Order order(const House& house, const OpeningRecord& record);

} // namespace shimlight::house
