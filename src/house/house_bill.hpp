// SPDX-License-Identifier: MIT
// The bill of a whole house: what each opening could have, what the openings cost together, and
// what the chosen remedies bring together.
#pragma once

#include "house/bill.hpp"
#include "house/house.hpp"
#include "house/materials.hpp"
#include "house/mix.hpp"

#include <vector>

namespace shimlight::house {

/// The full answer of an opening as it is or with a remedy; its fields of temperature are let go.
struct OpeningAnswer {
    bool known = false;
    opening::Case of;
    assess::Assessment result;
    double bothered_pct() const { return result.seat.ankle_bare_pct; }
    bool wet() const { return of.room.rh > result.max_rh; } ///< the glass, at the room's humidity
};
OpeningAnswer opening_answer(const opening::Case& c, const assess::Assessment& result);

/// One thing that can be done at an opening.
struct OpeningChoice {
    opening::Remedy remedy;
    bool own = false;      ///< one of the opening's remedies, at the same place
    bool combined = false; ///< of several ready-made ones
    bool hidden = false;   ///< ready-made, and an own one does the same
    double quick_pct = 0;  ///< people bothered at the ankles, by an estimate without sections
    double dearer = 0;     ///< by the house's own prices of material
    OpeningAnswer answer;  ///< once it is computed in full

    double bothered_pct() const { return answer.known ? answer.bothered_pct() : quick_pct; }
    /// An own remedy without work and material has no price yet: nobody knows what it costs.
    double price(double hour) const { return assess::price_of(remedy, hour) + dearer; }
    bool priced() const { return !own || remedy.hours > 0 || remedy.material_cost > 0; }
};

/// The own remedies in their order, then what plans() knows. `now` must have its cuts.
std::vector<OpeningChoice> opening_choices(const OpeningRecord& record, const opening::Case& today,
                                           const assess::Assessment& now);

/// Sets what the house's own prices make dearer.
void price_choices(std::vector<OpeningChoice>& choices, const House& house,
                   const OpeningRecord& record);

/// Whether two remedies change the same to the same.
bool same_changes(const opening::Remedy& a, const opening::Remedy& b);

struct HouseOpening {
    OpeningAnswer today;
    std::vector<OpeningChoice> choices;
};

/// After the opening's own remedies became others. False when one is not known yet: then the
/// choices must be made anew.
bool take_over(HouseOpening& opening, const std::vector<opening::Remedy>& own);

/// Prices, and how many fewer of 100 people are bothered at the ankles. Every opening counts the
/// same, whoever sits there. What has no price has no part in it.
std::vector<MixOpening> mix_of(const std::vector<HouseOpening>& openings, double hour);

struct RankedRemedy {
    std::size_t opening = 0, choice = 0;
    double price = 0;
    double fewer = 0; ///< of 100 people
    double per_100() const { return price > 0 ? 100 * fewer / price : 0; }
};
/// Single remedies that somebody notices, by people fewer per money; those without a price first.
std::vector<RankedRemedy> ranked_remedies(const std::vector<HouseOpening>& openings, double hour);

using Answers = std::vector<const OpeningAnswer*>;

/// Sums over the openings.
struct HouseTotals {
    bool by_months = false; ///< all of them have a year
    assess::YearHeat year;  ///< of it months and total
    double kwh = 0;         ///< heating
    double air_kwh = 0;     ///< of it by leaking air
    double bothered = 0;    ///< people, of 100 at each opening
    int wet = 0;            ///< openings with wet glass
};
HouseTotals house_totals(const Answers& answers);

/// Heating and cooling of one house with all these windows in it. Each window's year is taken for
/// itself, the others staying as they are; together they share the house's free gains, so that
/// savings do not quite add. The house is that of YearHouse beside the windows.
struct HouseNeed {
    double heating_kwh = 0, cooling_kwh = 0;
};
HouseNeed house_need(const Answers& answers, const opening::Climate& climate);

/// One edit: at each opening its choice, -1 for as it is; a ready-made one joins its remedies.
/// Openings whose list is full keep what they have; their number comes back.
int take_set(House& house, const std::vector<HouseOpening>& openings,
             const std::vector<int>& chosen);

} // namespace shimlight::house
