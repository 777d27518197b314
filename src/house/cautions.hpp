// SPDX-License-Identifier: MIT
// What can hurt someone at an opening, chosen by its facts. Never a ruling: each names the
// published rule it comes from and defers to local code and licensed practice.
#pragma once

#include "house/materials.hpp"
#include "opening/daylight.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::house {

/// Yes, no, or not known: a fact that nobody has written down keeps its caution.
enum class Known { no, yes, unknown };

/// All that the cautions go by.
struct SiteFacts {
    Known bedroom = Known::unknown, near_door = Known::unknown, near_bath = Known::unknown,
          near_stairs = Known::unknown, near_wires = Known::unknown;
    std::optional<double> year_built;
    std::optional<double> ground_m; ///< outdoor ground below the sill
    double sill_m = 0;              ///< floor to sill
    double height_m = 0;            ///< of the opening
    opening::Daylight glass, today; ///< with the remedy, and as it is
    Method method = Method::none;
    bool any_work = false; ///< anything that tools are taken for
    bool disturbs_paint = false;
    bool foams = false;      ///< the remedy fills with foam
    bool tightens = false;   ///< the remedy closes leaks
    bool blocks_way = false; ///< storm, panel or film stands before the sashes
    bool covered = false;    ///< the remedy hangs something at the window
    bool heater = false, basement = false, pockets = false;
    double weight_kg = 0; ///< of what is lifted: the new unit, estimated
};
SiteFacts site_facts(const House& house, const OpeningRecord& record);

// Limits of the rules, exact in the units they are published in.
inline constexpr double lead_before = 1978;    ///< year: 16 CFR 1303, 40 CFR 745
inline constexpr double asbestos_until = 1980; ///< year: 29 CFR 1926.1101
inline constexpr double foot_m = 0.3048, inch_long_m = 0.0254;
inline constexpr double large_pane_m2 = 9 * foot_m * foot_m;
inline constexpr double low_glass_m = 18 * inch_long_m, high_glass_m = 36 * inch_long_m;
inline constexpr double reached_glass_m = 60 * inch_long_m; ///< beside doors, baths, stairs
inline constexpr double way_out_m2 = 5.7 * foot_m * foot_m,
                        way_out_at_grade_m2 = 5 * foot_m * foot_m;
inline constexpr double way_out_high_m = 24 * inch_long_m, way_out_wide_m = 20 * inch_long_m,
                        way_out_sill_m = 44 * inch_long_m;
inline constexpr double low_sill_m = 24 * inch_long_m, far_down_m = 72 * inch_long_m;
inline constexpr double fall_edge_m = 6 * foot_m, fall_sill_m = 39 * inch_long_m; ///< of work
inline constexpr double lift_kg = 23; ///< one person, at best: NIOSH lifting equation

struct CautionRow {
    std::string_view key;
    std::string_view name;                   ///< short, for tables
    std::string_view words;                  ///< what it is and what is done about it
    std::string_view rule;                   ///< as published, with how it was learnt
    Known (*applies)(const SiteFacts&) = {}; ///< unknown: a fact it needs is not there
    std::optional<Entry> asks = {};          ///< the fact it needs
};
std::span<const CautionRow> caution_rows();

/// The rule as it is printed: of how it was learnt only what keeps it from counting.
std::string rule_in_print(const CautionRow& row);

/// Ends each: none is a ruling.
inline constexpr std::string_view whose_word = " Check your local code; licensed practice decides.";

/// The same, short, where many stand in a list under one sentence of whose word counts.
inline constexpr std::string_view check_word = " Check local code.";

struct Caution {
    const CautionRow* row = nullptr;
    bool unknown = false; ///< stays because a fact is not known
    std::string words;    ///< the row's, the opening's figures, and whose word counts
};
std::vector<Caution> cautions(const SiteFacts& facts);
std::vector<Caution> cautions(const House& house, const OpeningRecord& record);

/// The way out with the remedy beside the published figures: what falls short, in words; empty when
/// nothing does.
std::string short_of_way_out(const SiteFacts& facts);

} // namespace shimlight::house
