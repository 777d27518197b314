// SPDX-License-Identifier: MIT
// One question: what is it like at this window today? Case → Assessment.
#pragma once

#include "assess/sun_through.hpp"
#include "assess/year.hpp"
#include "opening/cut.hpp"
#include "physics/glazing.hpp"
#include "physics/pressure.hpp"
#include "physics/seat.hpp"
#include "section/field.hpp"

#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace shimlight::assess {

/// A cut with its solved field.
struct SolvedCut {
    opening::Cut cut;
    section::Field field;
    double coldest_c = HUGE_VAL, warmest_c = -HUGE_VAL; ///< of all that is solid
};

/// Coldest place on one part of the inside surface, over all cuts solved.
struct PartSurface {
    opening::Part part = opening::Part::glass_centre;
    opening::Position position = opening::Position::sill;
    double surface_c = 0;
    section::Point at;
    double heat_w_m = 0; ///< entering this part in that cut, per metre of it
    double temperature_factor = 0;
    double max_rh = 1;              ///< 0…1, before it gets wet
    double wet_below_outside_c = 0; ///< at the room's present humidity
    bool wet = false, frost = false;
};

/// Air through sash and joint. Positive flows come in.
struct LeakResult {
    physics::DrivingPressure drive;
    double sash_m3_s = 0, shim_m3_s = 0;
    double sash_air_c = 0, shim_air_c = 0; ///< as it enters the room, warmed on its way
    double heat_w = 0;                     ///< to warm incoming air from outdoors, or carried out
};

/// What a drawn blind, shade or curtain does. Each value with the range that slots half and twice
/// as wide give: an engineering estimate.
struct CoveringEffect {
    bool covered = false;
    double glass_c = 0, glass_low_c = 0, glass_high_c = 0; ///< inside face of the glass behind
    double front_c = 0;                                    ///< face towards the room
    double spill_c = 0;      ///< air that comes out below, as long as the glass is the colder side
    double spill_m3_s_m = 0; ///< per metre of width
    double spill_m_s = 0;    ///< as it leaves
    double saved = 0, saved_low = 0, saved_high = 0; ///< share of the heat through the glass
};

struct Assessment {
    physics::GlazingResult glass;
    CoveringEffect covering;
    /// By Position; one may be null until the budget allowed it.
    std::array<std::shared_ptr<const SolvedCut>, opening::position_count> cuts;
    std::vector<PartSurface> parts; ///< glass centre, glass edge, frame, casing, wall, storm panel
    /// Parts that some room humidity up to saturation wets, the first one to get wet first.
    std::vector<opening::Part> wetting_order;
    LeakResult leak;
    physics::SeatResult seat;
    double dew_point_c = 0;
    double max_rh = 1;         ///< lowest over the glass (centre and edge), 0…1
    double u_centre_w_m2k = 0; ///< centre of glass, at this weather
    SunThrough sun;            ///< centre of glass, at rating conditions
    // From here on without conduction until the unit's cuts are solved.
    double u_frame_w_m2k = 0; ///< of what shows inside of frame and sashes, glass edge apart
    double u_edge_w_m2k = 0;  ///< of the 65 mm of glass along them
    double frame_m2 = 0, edge_m2 = 0;
    double u_window_w_m2k = 0;    ///< whole window, area weighted; of the unit, at this weather
    double u_installed_w_m2k = 0; ///< with the joint around it and its leak; of the whole opening
    double heat_w = 0;            ///< now, window and joint, leak included
    double air_share = 0;         ///< of that, carried by air through sash and joint
    /// Heat of a heating season: by degree days what is lost; by a place's climate what the house
    /// needs more with this window than with a wall that passes nothing, sun taken off.
    double year_kwh = 0;
    double year_air_share = 0;                             ///< of the year's heat, carried by air
    double year_cost = 0;                                  ///< of fuel, in the house's currency
    section::Accuracy accuracy = section::Accuracy::draft; ///< coarsest of the cuts present
    bool complete = false;        ///< all cuts solved at `normal` or better
    bool drafted = false;         ///< all at least as a draft, of this case or the last one: until
                                  ///< then what is of the whole window means nothing
    std::optional<YearHeat> year; ///< by months, with a place's climate
    Warnings warnings;
};

/// Cuts by a bit each: of the unit alone by Position, then of the unit in its wall.
using CutSet = unsigned;
inline constexpr CutSet unit_cuts = (1u << opening::position_count) - 1;
inline constexpr CutSet wall_cuts = unit_cuts << opening::position_count;
inline constexpr CutSet all_cuts = unit_cuts | wall_cuts;
constexpr CutSet wall_cut(opening::Position position) {
    return 1u << (opening::position_count + static_cast<std::size_t>(position));
}

/// Which work to do now.
struct Budget {
    opening::Position shown = opening::Position::sill; ///< this cut first
    section::Accuracy accuracy = section::Accuracy::normal;
    int max_solves = 99; ///< section solves at most in this call
    /// One of a lever's way: each cut as far as the eye can tell, the shown one first and then, in
    /// turn, those for which there is time.
    bool moving = false;
    bool seen = true;         ///< while moving: whether the shown cut is on the screen
    double max_ms = HUGE_VAL; ///< while moving: no further cut is begun after that
    /// While moving: many small changes around the case that was asked first, each at draft and on
    /// that one's grids, so that differences are the change's own.
    bool around = false;
    CutSet cuts = all_cuts; ///< only these
};

/// Remembers what a lever did not touch. One per case that is kept on the screen.
class Assessor {
  public:
    /// Brings the assessment as far as the budget allows. Calling again with the same case goes on
    /// where the last call stopped; `complete` says when there is nothing left to do. A stale cut
    /// of the previous case is kept (never null again) until its new solution is there.
    const Assessment& update(const opening::Case& c, const Budget& budget);
    const Assessment& last() const;
    /// A grid of one section towards the answer, which update() gives; false when there is none to
    /// solve. `c` is the case of the last update() that was not of a moving lever, or the first.
    bool refine(const opening::Case& c, const Budget& budget);

    Assessor();
    ~Assessor();
    Assessor(Assessor&&) noexcept;
    Assessor& operator=(Assessor&&) noexcept;

  private:
    struct Memory;
    std::unique_ptr<Memory> memory_;
};

/// The whole answer at once.
Assessment assess(const opening::Case& c, section::Accuracy accuracy = section::Accuracy::normal);

/// One or two plain sentences, made only from the numbers. Temperatures in the reader's unit.
struct VerdictStyle {
    bool fahrenheit = true;
};
std::string verdict(const opening::Case& today, const Assessment& today_result,
                    const std::string& remedy_name, const opening::Case& remedy,
                    const Assessment& remedy_result, const VerdictStyle& style);

} // namespace shimlight::assess
