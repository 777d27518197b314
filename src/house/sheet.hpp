// SPDX-License-Identifier: MIT
// Measuring, ordering and materials of one opening, from the tape's raw measures and the remedy.
#pragma once

#include "house/house.hpp"

#include <optional>
#include <string>
#include <vector>

namespace shimlight::house {

/// One direction's measures.
struct TapeSize {
    int count = 0; ///< of three
    double least_m = 0, most_m = 0;
    bool uneven = false; ///< they differ by more than a straight opening's would
};

// Tolerances, common practice: three measures within 1/8 in, diagonals within 1/4 in.
inline constexpr double even_m = 0.0032, square_m = 0.0064;

struct Square {
    double difference_m = 0; ///< of the diagonals
    double lean_m = 0;       ///< by how much a side is out of plumb over the height
    bool racked = false;
};

struct OrderSize {
    double estimating_m = 0; ///< largest measure: for prices
    double opening_m = 0;    ///< smallest measure: what the maker is told when he deducts
    double unit_m = 0;       ///< less the deduction
};

/// Who takes the clearance off: both doing so is the classic error.
enum class Deducts { not_asked, sheet, maker };

struct Materials {
    double joint_m = 0;    ///< length of the shim space around the frame
    double foam_l = 0;     ///< that fills it
    int foam_cans = 0;     ///< of about 12 litres in a narrow joint
    double rod_m = 0;      ///< backer rod, with waste
    double rod_mm = 0;     ///< its diameter, a quarter more than the joint
    double sealant_ml = 0; ///< one bead inside, one outside
    int cartridges = 0;    ///< of 300 ml
    double casing_m = 0;   ///< trim with mitres and waste
    int shim_pairs = 0;
};

struct Sheet {
    TapeSize width, height;
    std::optional<Square> square; ///< with both diagonals, width and height
    OrderSize order_width, order_height;
    bool measured = false; ///< false: the levers' sizes stand in, good for an estimate only
    Deducts deducts = Deducts::not_asked;
    Materials materials;
    double glass_today_m2 = 0, glass_remedy_m2 = 0; ///< that shows
    double hours = 0, labour = 0, material_cost = 0;
    double total() const { return labour + material_cost; }
};

inline constexpr double usual_deduction_m = 0.00635; ///< 1/4 in, common practice; makers differ

/// `today` and `remedy` are the assessments of the opening and of its chosen remedy.
Sheet sheet(const House& house, const OpeningRecord& record, const assess::Assessment& today,
            const assess::Assessment& remedy);

/// What can hurt someone here, chosen by the opening's facts. Never a ruling: each defers to local
/// code and licensed practice.
struct SafetyNote {
    std::string words;
    std::string rule; ///< the published rule it comes from, or "common practice"
};
std::vector<SafetyNote> safety_notes(const OpeningRecord& record);

/// One row per opening, sizes in millimetres. Cells cannot carry formulas.
std::string sheet_csv(const House& house);

} // namespace shimlight::house
