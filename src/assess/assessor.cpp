// SPDX-License-Identifier: MIT
// The path of one answer: case → glass balance → cuts → surfaces, leaks, seat, money.
#include "assess/assessment.hpp"
#include "assess/covering_case.hpp"
#include "assess/joint_air.hpp"
#include "assess/leak.hpp"
#include "assess/seat_case.hpp"
#include "assess/solve_memory.hpp"
#include "assess/storm_panel.hpp"
#include "assess/surfaces.hpp"
#include "assess/whole_window.hpp"
#include "assess/year_case.hpp"
#include "opening/films.hpp"
#include "opening/glazing_balance.hpp"
#include "opening/storm_air.hpp"
#include "physics/moist_air.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Position;
using opening::position_count;
using opening::Surroundings;
using section::Accuracy;

// Airs nearer than this give no heat flow to measure a conductance by, K.
constexpr double measurable_k = 1;
constexpr std::string_view refusal =
    "A cut through this window could not be solved; the last one is kept.";
// Coverings are drawn from dusk to morning: half of a winter's day, common practice.
constexpr double drawn_share = 0.5;
constexpr std::string_view pocket_estimate =
    "What leaks through weight pockets is an estimate within a factor of 2.";
constexpr std::string_view bead_estimate =
    "What leaks past a bead of foam is an estimate within a factor of 2.";
constexpr std::string_view upright_frame =
    "The glass leans: its U, sky and sun follow the tilt; frame, edge, shim space and covering are "
    "computed as if upright.";
constexpr std::string_view upright_air =
    "Falling air, draft and radiation at the seat are computed for upright glass; leaning glass is "
    "outside the range of their equations.";
constexpr double hours_per_day = 24, w_per_kw = 1000;

std::size_t index(Position position) {
    return static_cast<std::size_t>(position);
}

/// The same case with airs far enough apart to measure conductances by, and no cold sky.
opening::Case measurable(const opening::Case& c) {
    opening::Case apart = c;
    apart.weather.sky = opening::Sky::cloudy;
    if (std::fabs(c.room.air_c - c.weather.outside_c) < measurable_k)
        apart.room.air_c = c.weather.outside_c + measurable_k;
    return apart;
}

/// What the year gains while nothing is drawn before the window, W/K: negative heat with none.
double uncovered_w_k(const opening::Case& c, double covered_u_w_m2k) {
    if (c.opening.covering == opening::Covering::none) return 0;
    opening::Case open = c;
    open.opening.covering = opening::Covering::none;
    const opening::UnitSize size = opening::unit_size(c.opening);
    const double more_w_m2k = opening::covered_glass(open).glass.u_w_m2k - covered_u_w_m2k;
    return (1 - drawn_share) * more_w_m2k * size.width_m * size.height_m;
}

/// What leaning glass loses beyond upright glass because it sees more of a cold sky, W.
double more_sky_w(const opening::Case& c, const physics::GlazingResult& glass,
                  const WindowConductance& heat) {
    const auto environment_c = [&](double tilt_deg) {
        return opening::outside_environment_c(c.weather, glass.outside_film, tilt_deg);
    };
    return glass.u_w_m2k * (heat.unit_m2 - heat.frame_m2) *
           (environment_c(90) - environment_c(c.opening.tilt_deg));
}

void add_warnings(Warnings& all, const Warnings& more) {
    for (const std::string_view warning : more)
        if (std::find(all.begin(), all.end(), warning) == all.end()) all.push_back(warning);
}

std::array<Slot, position_count> slots(Surroundings surroundings) {
    return {Slot{Position::head, surroundings}, Slot{Position::jamb, surroundings},
            Slot{Position::sill, surroundings}, Slot{Position::meeting_rail, surroundings}};
}

} // namespace

struct Assessor::Memory {
    std::array<Slot, position_count> installed = slots(Surroundings::wall);
    std::array<Slot, position_count> alone = slots(Surroundings::none);
    Assessment answer;

    std::size_t turn = 0;    ///< of all cuts, the next while a lever moves
    bool all_wanted = false; ///< every cut as the last case has it
    opening::CoveredGlass glass;
    physics::GlazingResult apart_glass; ///< of the airs that conductances are measured by

    void want_glass(const opening::Case& c);
    void want(const opening::Case& c);
    Slot* next(const Budget& budget);
    void solve_within(const Budget& budget);
    void follow_lever(const opening::Case& c, const Budget& budget);
    void answer_from(const opening::Case& c);
    bool refused() const;
    void read_cuts(const opening::Case& c);
    void read_seat(const opening::Case& c);
    void read_heat(const opening::Case& c);
    void read_year(const opening::Case& c, double conduction_w_k);
};

void Assessor::Memory::want_glass(const opening::Case& c) {
    const opening::Case apart = measurable(c);
    glass = opening::covered_glass(c);
    const bool same = apart.room.air_c == c.room.air_c && apart.weather.sky == c.weather.sky;
    apart_glass = same ? glass.glass : opening::covered_glass(apart).glass;
}

/// Draws up all cuts.
void Assessor::Memory::want(const opening::Case& c) {
    want_glass(c);
    for (Slot& slot : installed)
        slot.want(c, glass.glass);
    const opening::Case apart = measurable(c);
    for (Slot& slot : alone)
        slot.want(apart, apart_glass);
    all_wanted = true;
}

/// The shown cut until it is right, the unit's own cuts (they are quick), then the other cuts.
Slot* Assessor::Memory::next(const Budget& budget) {
    const auto due = [&](const Slot& slot) { return !slot.fresh(budget.accuracy, Pace::resting); };
    Slot& shown = installed[index(budget.shown)];
    if ((budget.cuts & wall_cut(budget.shown)) != 0 && due(shown)) return &shown;
    for (std::size_t k = 0; k < 2 * position_count; ++k) {
        Slot& slot = k < position_count ? alone[k] : installed[k - position_count];
        if ((budget.cuts >> k & 1) != 0 && due(slot)) return &slot;
    }
    return nullptr;
}

void Assessor::Memory::solve_within(const Budget& budget) {
    for (int left = budget.max_solves; left > 0; --left) {
        Slot* slot = next(budget);
        if (!slot) return;
        slot->solve(budget.accuracy, Pace::resting);
    }
}

/// Only the cuts that get their turn are drawn up.
void Assessor::Memory::follow_lever(const opening::Case& c, const Budget& budget) {
    const auto start = std::chrono::steady_clock::now();
    want_glass(c);
    all_wanted = false;
    const opening::Case apart = measurable(c);
    const Pace pace = budget.around ? Pace::around : Pace::moving;
    const auto begun = [&](bool in_wall, std::size_t which) {
        Slot& slot = in_wall ? installed[which] : alone[which];
        slot.want(in_wall ? c : apart, in_wall ? glass.glass : apart_glass);
        if (slot.fresh(Accuracy::draft, pace)) return false;
        slot.solve(Accuracy::draft, pace);
        return true;
    };
    int left = budget.max_solves;
    if (left > 0 && budget.seen && begun(true, index(budget.shown))) --left;
    for (std::size_t tried = 0; tried < 2 * position_count && left > 0; ++tried) {
        turn = (turn + 1) % (2 * position_count);
        if ((budget.cuts >> turn & 1) == 0) continue;
        if (!begun(turn >= position_count, turn % position_count)) continue;
        --left;
        const std::chrono::duration<double, std::milli> taken =
            std::chrono::steady_clock::now() - start;
        if (taken.count() > budget.max_ms) return;
    }
}

bool Assessor::Memory::refused() const {
    const auto failed = [](const Slot& slot) { return slot.failed(); };
    return std::any_of(installed.begin(), installed.end(), failed) ||
           std::any_of(alone.begin(), alone.end(), failed);
}

void Assessor::Memory::read_cuts(const opening::Case& c) {
    answer.accuracy = Accuracy::fine;
    answer.complete = true;
    const auto tried = [](const Slot& slot) { return slot.solved() || slot.failed(); };
    answer.drafted = std::all_of(installed.begin(), installed.end(), tried) &&
                     std::all_of(alone.begin(), alone.end(), tried);
    for (const Slot& slot : installed) {
        answer.cuts[index(slot.position())] = slot.solved();
        answer.complete = answer.complete && slot.fresh(Accuracy::normal, Pace::resting);
        if (!slot.solved()) continue;
        answer.accuracy = std::min(answer.accuracy, slot.accuracy());
        add_warnings(answer.warnings, slot.solved()->field.warnings);
    }
    for (const Slot& slot : alone)
        answer.complete = answer.complete && slot.fresh(Accuracy::normal, Pace::resting);
    if (refused()) add_warnings(answer.warnings, {refusal});
    answer.parts = part_surfaces(answer.cuts, c);
    if (const auto storm = storm_surface(c, answer.glass)) {
        answer.parts.push_back(*storm);
        add_warnings(answer.warnings, {storm_estimate});
    }
    answer.wetting_order = wetting_order(answer.parts);
    answer.max_rh = 1;
    for (const PartSurface& surface : answer.parts)
        if (surface.part == opening::Part::glass_centre ||
            surface.part == opening::Part::glass_edge)
            answer.max_rh = std::min(answer.max_rh, surface.max_rh);
}

void Assessor::Memory::read_seat(const opening::Case& c) {
    answer.seat =
        seat_of(c, answer.leak, seat_surfaces(c, answer.glass, answer.covering, answer.cuts));
    add_warnings(answer.warnings, answer.seat.warnings);
}

/// What creeping air takes from the wood is in the cuts' heat already and not needed again to warm
/// that air to the room.
void Assessor::Memory::read_heat(const opening::Case& c) {
    const opening::Case apart = measurable(c);
    const double difference_k = c.room.air_c - c.weather.outside_c;
    const double conducting_k = c.room.air_c - opening::outside_environment_c(c.weather);
    const double glass_u_w_m2k = apart_glass.u_w_m2k;
    const WindowConductance heat = window_conductance(c, glass_u_w_m2k, alone, installed);
    // The stream was solved under this sky.
    const double apart_k = std::fabs(conducting_k) < measurable_k
                               ? apart.room.air_c - apart.weather.outside_c
                               : conducting_k;
    const bool comes_in = answer.leak.shim_m3_s > 0;
    const double stream_w_k = comes_in ? heat.stream_w / apart_k : 0;
    const double still_w_k = heat.unit_w_k + heat.joint_w_k - stream_w_k;
    const double gross_w_k = leak_capacity_w_k(c, answer.leak);
    const double twice_w_k = opening::storm_air(c, answer.glass).counted_twice_w_k;
    const double leak_w_k = gross_w_k - twice_w_k;
    answer.u_centre_w_m2k = answer.glass.u_w_m2k;
    answer.frame_m2 = heat.frame_m2;
    answer.edge_m2 = heat.edge_m2;
    answer.u_frame_w_m2k = heat.frame_m2 > 0 ? heat.frame_w_k / heat.frame_m2 : 0;
    answer.u_edge_w_m2k = heat.edge_m2 > 0 ? heat.edge_w_k / heat.edge_m2 : 0;
    answer.u_window_w_m2k = heat.unit_w_k / heat.unit_m2;
    answer.u_installed_w_m2k = (still_w_k + leak_w_k) / heat.opening_m2;
    answer.heat_w =
        still_w_k * conducting_k + leak_w_k * difference_k + more_sky_w(c, answer.glass, heat);
    const double winter_air_w_k = winter_leak_w_k(c) * (gross_w_k > 0 ? leak_w_k / gross_w_k : 1);
    // In a calmer winter less air takes less heat from the wood.
    const double streaming = leak_w_k > 0 ? std::min(1.0, winter_air_w_k / leak_w_k) : 1;
    const double winter_w_k =
        still_w_k + (1 - streaming) * stream_w_k + uncovered_w_k(c, glass_u_w_m2k) + winter_air_w_k;
    answer.year_air_share = winter_w_k > 0 ? winter_air_w_k / winter_w_k : 0;
    answer.air_share = still_w_k + leak_w_k > 0 ? leak_w_k / (still_w_k + leak_w_k) : 0;
    answer.year_kwh = hours_per_day * c.running.heating_degree_days_k * winter_w_k / w_per_kw;
    answer.year.reset();
    if (c.running.climate > 0) read_year(c, winter_w_k - winter_air_w_k);
    answer.year_cost = answer.year_kwh / c.running.efficiency * c.running.price_per_kwh;
}

/// Twelve months of the place in place of degree days.
void Assessor::Memory::read_year(const opening::Case& c, double conduction_w_k) {
    const opening::UnitSize size = opening::unit_size(c.opening);
    const SunGlass glass = sun_glass(answer.sun, size.width_m * size.height_m - answer.frame_m2);
    YearHouse house;
    house.heating_c = c.room.air_c;
    house.cooling_c = std::max(house.cooling_c, c.room.air_c + 1);
    const double facing_deg = 45.0 * static_cast<int>(c.opening.facing);
    const auto place = static_cast<std::size_t>(c.running.climate - 1);
    answer.year = year_heat(year_window(c, conduction_w_k, facing_deg, glass), house,
                            opening::climate_at(place));
    const MonthHeat& total = answer.year->total;
    const double lost_kwh = total.heating_by_conduction_kwh + total.heating_by_leakage_kwh;
    answer.year_kwh = total.heating_kwh;
    answer.year_air_share = lost_kwh > 0 ? total.heating_by_leakage_kwh / lost_kwh : 0;
}

void Assessor::Memory::answer_from(const opening::Case& c) {
    answer.warnings.clear();
    answer.glass = glass.glass;
    answer.sun = sun_through(c.opening);
    answer.covering = covering_result(c, glass);
    add_warnings(answer.warnings, answer.glass.warnings);
    if (glass.covered) add_warnings(answer.warnings, {covering_estimate});
    if (opening::has_pockets(c.opening)) add_warnings(answer.warnings, {pocket_estimate});
    if (c.opening.shim.fill == opening::ShimFill::partly_foamed)
        add_warnings(answer.warnings, {bead_estimate});
    if (c.opening.tilt_deg < 90) add_warnings(answer.warnings, {upright_frame, upright_air});
    answer.dew_point_c = physics::dew_point_c(c.room.air_c, c.room.rh);
    read_cuts(c);
    answer.leak = leak(c);
    answer.leak.shim_air_c = shim_air_c(c, answer.leak, installed, answer.cuts);
    answer.leak.sash_air_c = sash_air_c(c, answer.leak, installed);
    read_seat(c);
    read_heat(c);
}

Assessor::Assessor() : memory_(std::make_unique<Memory>()) {}
Assessor::~Assessor() = default;
Assessor::Assessor(Assessor&&) noexcept = default;
Assessor& Assessor::operator=(Assessor&&) noexcept = default;

const Assessment& Assessor::update(const opening::Case& c, const Budget& budget) {
    if (budget.moving) {
        memory_->follow_lever(c, budget);
    } else {
        memory_->want(c);
        memory_->solve_within(budget);
    }
    memory_->answer_from(c);
    if (budget.moving) memory_->answer.complete = false;
    return memory_->answer;
}

const Assessment& Assessor::last() const {
    return memory_->answer;
}

bool Assessor::refine(const opening::Case& c, const Budget& budget) {
    if (!memory_->all_wanted) memory_->want(c);
    Slot* slot = memory_->next(budget);
    if (slot) slot->step(budget.accuracy);
    return slot != nullptr;
}

Assessment assess(const opening::Case& c, section::Accuracy accuracy) {
    Assessor assessor;
    Budget budget;
    budget.accuracy = accuracy;
    return assessor.update(c, budget);
}

} // namespace shimlight::assess
