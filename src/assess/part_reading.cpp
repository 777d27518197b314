// SPDX-License-Identifier: MIT
#include "assess/part_reading.hpp"

#include "assess/phrases.hpp"
#include "assess/solve_memory.hpp"
#include "opening/covered_glass.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::CasingSeal;
using opening::Coating;
using opening::FrameMaterial;
using opening::Part;
using opening::Pockets;
using opening::Position;
using opening::SashFit;
using opening::ShimFill;
using opening::SpacerKind;
using opening::WallCavity;

/// What is possible, as for the glass (reading.cpp): estimates.
constexpr double outdoor_step_k = 6, curtain_k = 8, heater_k = 12, most_wind_m_s = 15;
constexpr double soft_coating = 0.05; // emissivity of what is sold most, common practice
constexpr double least_effect_k = 0.1, near_enough_k = 0.1; // a draft's own error
constexpr int most_steps = 2;                               // of the false position, past the ends

enum class What {
    outdoor_air,
    air_before,
    wind,
    shim_filling,
    casing_caulk,
    sash_play,
    wall_insulation,
    weight_pockets,
    frame_steel, // from here on frames that look alike from the room
    thermal_break,
    frame_cladding,
    spacer,
    coating
};

/// One assumption of the computation. Its functions are switches: called by name they come with
/// the page's second part (web/setup/split.py), behind pointers they would come with the first.
struct Candidate {
    What what;
    std::string_view name;
    std::string_view word; ///< begins the sentence
    Kind kind;
};

constexpr Candidate candidates[] = {
    {What::outdoor_air, "outdoor air", phrases::outdoor_air_there, Kind::temperature},
    {What::air_before, "air before the part", phrases::air_before_part, Kind::temperature},
    {What::wind, "wind", phrases::wind_in_cracks, Kind::speed},
    {What::shim_filling, "shim filling", phrases::shim_filling, Kind::yes_no},
    {What::casing_caulk, "casing caulk", phrases::casing_caulk, Kind::yes_no},
    {What::sash_play, "sash play", phrases::sash_play, Kind::yes_no},
    {What::wall_insulation, "wall insulation", phrases::wall_insulation, Kind::yes_no},
    {What::weight_pockets, "weight pockets", phrases::weight_pockets, Kind::yes_no},
    {What::frame_steel, "frame steel", phrases::frame_steel, Kind::yes_no},
    {What::thermal_break, "thermal break", phrases::frame_break, Kind::yes_no},
    {What::frame_cladding, "frame cladding", phrases::frame_cladding, Kind::yes_no},
    {What::spacer, "spacer", phrases::better_spacer, Kind::yes_no},
    {What::coating, "coating", phrases::coating, Kind::yes_no},
};

bool matters(What what, const opening::Opening& o, Part part) {
    const bool edge = part == Part::glass_edge, joint = !edge;
    switch (what) {
    case What::shim_filling:
    case What::casing_caulk:
    case What::wall_insulation:
        return joint;
    case What::weight_pockets:
        return joint && (is_wood(o.frame) || o.installation == opening::Installation::insert);
    case What::frame_steel:
        return o.frame == FrameMaterial::vinyl || o.frame == FrameMaterial::vinyl_steel;
    case What::thermal_break:
        return is_metal(o.frame);
    case What::frame_cladding:
        return is_wood(o.frame);
    case What::spacer:
    case What::coating:
        return edge && o.glazing.panes > 1;
    default:
        return true;
    }
}

/// °C, m/s, or whether it is so.
double get(What what, const Case& c) {
    const opening::Opening& o = c.opening;
    switch (what) {
    case What::outdoor_air:
        return c.weather.outside_c;
    case What::air_before:
        return c.room.air_c;
    case What::wind:
        return c.weather.wind_m_s;
    case What::shim_filling:
        return o.shim.fill != ShimFill::open;
    case What::casing_caulk:
        return o.casing.seal == CasingSeal::caulked;
    case What::sash_play:
        return o.sash.fit == SashFit::loose;
    case What::wall_insulation:
        return o.wall.cavity != WallCavity::empty;
    case What::weight_pockets:
        return o.pockets != Pockets::none;
    case What::frame_steel:
        return o.frame == FrameMaterial::vinyl_steel;
    case What::thermal_break:
        return o.frame == FrameMaterial::aluminium_break;
    case What::frame_cladding:
        return o.frame == FrameMaterial::clad_wood;
    case What::spacer:
        return o.glazing.spacer != SpacerKind::aluminium;
    case What::coating:
        return o.glazing.coating != Coating::none;
    }
    return 0;
}

void set(What what, Case& c, double value) {
    opening::Opening& o = c.opening;
    const bool yes = value >= 0.5;
    switch (what) {
    case What::outdoor_air:
        c.weather.outside_c = value;
        break;
    case What::air_before:
        c.room.air_c = value;
        break;
    case What::wind:
        c.weather.wind_m_s = value;
        break;
    case What::shim_filling:
        o.shim.fill = yes ? ShimFill::foamed : ShimFill::open;
        break;
    case What::casing_caulk:
        o.casing.seal = yes ? CasingSeal::caulked : CasingSeal::unsealed;
        break;
    case What::sash_play:
        o.sash.fit = yes ? SashFit::loose : SashFit::tight;
        break;
    case What::wall_insulation:
        o.wall.cavity = yes ? WallCavity::filled : WallCavity::empty;
        break;
    case What::weight_pockets:
        o.pockets = yes ? Pockets::empty : Pockets::none;
        break;
    case What::frame_steel:
        o.frame = yes ? FrameMaterial::vinyl_steel : FrameMaterial::vinyl;
        break;
    case What::thermal_break:
        o.frame = yes ? FrameMaterial::aluminium_break : FrameMaterial::aluminium;
        break;
    case What::frame_cladding:
        o.frame = yes ? FrameMaterial::clad_wood : FrameMaterial::wood;
        break;
    case What::spacer:
        o.glazing.spacer = yes ? SpacerKind::foam : SpacerKind::aluminium;
        break;
    case What::coating:
        o.glazing.emissivity = soft_coating;
        o.glazing.coating = !yes                   ? Coating::none
                            : o.glazing.panes == 3 ? Coating::faces2and5
                                                   : Coating::face3;
    }
}

/// Both ends of what is possible; the same one twice for yes and no.
Span possible(const Candidate& a, double assumed) {
    if (a.kind == Kind::yes_no) return {1 - assumed, 1 - assumed};
    if (a.kind == Kind::speed) return {0, std::max(assumed, most_wind_m_s)};
    return a.what == What::outdoor_air ? Span{assumed - outdoor_step_k, assumed + outdoor_step_k}
                                       : Span{assumed - curtain_k, assumed + heater_k};
}

/// One cut of a case at draft; nothing where it cannot be solved.
std::shared_ptr<const SolvedCut> draft(const Case& c, Position position) {
    Slot slot(position, opening::Surroundings::wall);
    slot.want(c, opening::covered_glass(c).glass);
    slot.solve(section::Accuracy::draft, Pace::resting);
    return slot.solved();
}

const PartSurface* find(const std::vector<PartSurface>& all, Part part) {
    for (const PartSurface& surface : all)
        if (surface.part == part) return &surface;
    return nullptr;
}

Explanation explain(const Candidate& a, double assumed, double needed, double left_k,
                    const PartReading& reading, bool fahrenheit) {
    Explanation e;
    e.assumption = a.name;
    e.assumed = assumed;
    e.needed = needed;
    e.left_k = left_over_k(left_k);
    e.explains = std::fabs(e.left_k) <= tolerance_of(reading.range_k);
    tell(e, a.kind, a.word, reading.difference_k, fahrenheit);
    return e;
}

} // namespace

void DraftParts::step() {
    cuts_[static_cast<std::size_t>(next_)] = draft(c_, static_cast<Position>(next_));
    if (++next_ < opening::position_count) return;
    parts_ = part_surfaces(cuts_, c_);
    cuts_ = {};
}

PartReader::Search::Search(Point assumed, double likely, double other, double target_c)
    : value(likely), known_(assumed), likely_(likely), other_(other), target_c_(target_c) {}

double PartReader::Search::apart_k(const Point& p) const {
    return std::fabs(p.c - target_c_);
}

/// From `known_` on one side of the target and `end_` on the other towards where it is met.
void PartReader::Search::aim() {
    const double share = (target_c_ - known_.c) / (end_.c - known_.c);
    value = known_.value + share * (end_.value - known_.value);
}

void PartReader::Search::between() {
    nearest = end_;
    const bool passed = colder(end_) != colder(known_);
    done = !passed || likely_ == other_;
    at_ = At::between;
    if (!done) aim();
}

void PartReader::Search::found(double c) {
    const Point here{value, c};
    if (at_ == At::likely) {
        end_ = here;
        const bool away = apart_k(end_) >= apart_k(known_) && colder(end_) == colder(known_);
        if (likely_ == other_ || !away) return between();
        at_ = At::other;
        value = other_;
    } else if (at_ == At::other) {
        if (apart_k(here) < apart_k(end_)) end_ = here;
        between();
    } else {
        nearest = here;
        done = apart_k(here) < near_enough_k || ++steps_ == most_steps;
        (colder(here) == colder(known_) ? known_ : end_) = here;
        if (!done) aim();
    }
}

PartReader::PartReader(DraftParts drafts, Part part, const Measured& measured,
                       const physics::InfraredReading* infrared, bool fahrenheit)
    : drafts_(std::move(drafts)), part_(part), measured_(measured), fahrenheit_(fahrenheit) {
    if (infrared) infrared_ = *infrared;
}

bool PartReader::step(int most_solves) {
    for (int left = most_solves; !done_;) {
        const bool solves = !drafts_.done() || (search_ && !search_->done);
        if (solves && left-- <= 0) return false;
        reading_.solves += solves;
        if (!drafts_.done())
            drafts_.step();
        else if (!compared_)
            compare();
        else if (!search_)
            begin_search();
        else if (!search_->done)
            solve();
        else
            take();
    }
    return true;
}

void PartReader::compare() {
    compared_ = true;
    const PartSurface* coldest = find(drafts_.parts(), part_);
    if (coldest) reading_.position = coldest->position;
    static_cast<SurfaceReading&>(reading_) =
        assess::compared(measured_, coldest ? coldest->surface_c : measured_.c);
    if (reading_.compared == Compared::as_computed) finish();
}

/// Of the next candidate that matters; without one all are tried.
void PartReader::begin_search() {
    const Case& c = drafts_.of();
    while (candidate_ < std::size(candidates) &&
           !matters(candidates[candidate_].what, c.opening, part_))
        ++candidate_;
    if (candidate_ == std::size(candidates)) {
        if (infrared_)
            add(reading_, explain_emissivity(*infrared_, reading_.computed_c,
                                             tolerance_of(reading_.range_k), fahrenheit_));
        return finish();
    }
    const Candidate& a = candidates[candidate_];
    const double assumed = get(a.what, c);
    const Span span = possible(a, assumed);
    // Wind cools, warmer air warms.
    const bool up = (measured_.c > reading_.computed_c) == (a.kind == Kind::temperature);
    search_ = Search({assumed, reading_.computed_c}, up ? span.high : span.low,
                     up ? span.low : span.high, measured_.c);
}

/// The part with the candidate's next value, in the cut where it is coldest.
void PartReader::solve() {
    Case changed = drafts_.of();
    set(candidates[candidate_].what, changed, search_->value);
    SolvedCuts cuts;
    cuts[static_cast<std::size_t>(reading_.position)] = draft(changed, reading_.position);
    const std::vector<PartSurface> parts = part_surfaces(cuts, changed);
    const PartSurface* there = find(parts, part_);
    search_->found(there ? there->surface_c : reading_.computed_c);
}

void PartReader::take() {
    const Candidate& a = candidates[candidate_++];
    const Point nearest = search_->nearest;
    search_.reset();
    if (std::fabs(nearest.c - reading_.computed_c) < least_effect_k) return;
    add(reading_, explain(a, get(a.what, drafts_.of()), nearest.value, measured_.c - nearest.c,
                          reading_, fahrenheit_));
}

void PartReader::finish() {
    summarise(reading_, part_, fahrenheit_);
    done_ = true;
}

PartReading read_part(const Case& c, Part part, const Measured& measured,
                      const physics::InfraredReading* infrared, bool fahrenheit) {
    PartReader reader(DraftParts(c), part, measured, infrared, fahrenheit);
    while (!reader.step(most_part_solves)) {
    }
    return reader.reading();
}

} // namespace shimlight::assess
