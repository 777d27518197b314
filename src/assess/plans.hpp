// SPDX-License-Identifier: MIT
// All that could be done at this window, by price, and the cheapest that solves the complaint.
#pragma once

#include "assess/assessment.hpp"
#include "opening/remedy.hpp"

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace shimlight::assess {

/// A draft is solved at this share of people bothered: the limit of ASHRAE 55-2020 for draft at the
/// ankles (from memory).
inline constexpr double solved_pct = 20;

/// People are told whole, so whole people decide: what is shown as 20 is 20.
inline bool solves(double bothered_pct) {
    return std::round(bothered_pct) <= solved_pct;
}

/// A remedy or several together.
struct Plan {
    std::string name; ///< "Weather-strip the sashes and foam the shim space"
    opening::Remedy remedy;
    double price = 0;        ///< labour and material
    double bothered_pct = 0; ///< at the ankles; an estimate until solved
    bool solved = false;     ///< `bothered_pct` is the full answer
};

/// Price of an hour of work, in the house's currency. Common practice in North America is 40 to
/// 100; every house may enter its own.
inline constexpr double usual_hour = 60;

/// Labour and material.
double price_of(const opening::Remedy& remedy, double hour);

struct PlanQuestion {
    const opening::Case& today;
    const Assessment& now;
    std::span<const opening::Remedy> own = {}; ///< the house's; those without a price are left out
    double hour = usual_hour;
    const physics::DraftShare* by_tests = nullptr; ///< see by_tests.hpp
};

/// The house's own remedies, every ready-made one and the sensible combinations of the cheap ones,
/// cheapest first, each with a quick estimate. A warmer thermostat is left out: its price is the
/// fuel of the whole house. What changes nothing here is left out too.
std::vector<Plan> plans(const PlanQuestion& question);

struct Cheapest {
    std::optional<Plan> plan;   ///< fully computed; empty when nothing reaches the limit
    std::optional<Plan> nearly; ///< cheaper, and above the limit by less than anybody notices
    Plan best;                  ///< without `plan`: of those that leave the fewest, the cheapest
};

/// Solves sections for a few plans (some 30 ms each): not for while a lever moves.
Cheapest cheapest_plan(const PlanQuestion& question, const std::vector<Plan>& by_price,
                       section::Accuracy accuracy = section::Accuracy::draft);

} // namespace shimlight::assess
