// SPDX-License-Identifier: MIT
#include "assess/rated.hpp"
#include "assess/whole_window.hpp"
#include "opening/glazing_balance.hpp"

namespace shimlight::assess {

namespace {

using opening::Position;

constexpr double width_m = 1.2, height_m = 1.5; ///< vertical slider (NFRC 100, from memory)
// Frame in the sun: absorptance 0.3, outer film 30 W/m²K (NFRC 200, from memory).
constexpr double frame_absorptance = 0.3, frame_film_w_m2k = 30;

opening::Case rating_winter(const opening::Opening& opening) {
    opening::Case c;
    c.opening = opening;
    c.weather.outside_c = -18;
    c.weather.wind_m_s = 5.5;
    c.room.air_c = 21;
    return c;
}

constexpr auto jamb_index = static_cast<std::size_t>(Position::jamb);

double glass_m2(std::span<const Slot> alone) {
    const double head_m = alone[0].sight_m(), jamb_m = alone[1].sight_m();
    const double other_m = alone[2].sight_m() + alone[3].sight_m();
    return (width_m - 2 * jamb_m) * (height_m - head_m - other_m);
}

} // namespace

opening::Opening at_rating(opening::Opening opening) {
    opening.width_m = width_m;
    opening.height_m = height_m;
    opening.tilt_deg = 90;
    opening.installation = opening::Installation::full_frame;
    opening.glazing.storm = opening::Storm::none;
    opening.glazing.panel = opening::Panel::none;
    opening.covering = opening::Covering::none;
    opening.wall = {};
    return opening;
}

double rated_centre_u(const opening::Opening& opening) {
    return opening::glazing_balance(rating_winter(opening)).u_w_m2k;
}

Rater::Rater()
    : alone_{Slot{Position::head, opening::Surroundings::none},
             Slot{Position::jamb, opening::Surroundings::none},
             Slot{Position::sill, opening::Surroundings::none},
             Slot{Position::meeting_rail, opening::Surroundings::none}} {}

Rated rated(const opening::Opening& opening, section::Accuracy accuracy) {
    Rater rater;
    rater.want(opening);
    while (rater.advance(accuracy)) {
    }
    return rater.rated();
}

void Rater::want(const opening::Opening& opening) {
    want_jamb(opening);
    jamb_only_ = false;
    for (Slot& slot : alone_)
        slot.want(wanted_, glass_);
}

void Rater::want_jamb(const opening::Opening& opening) {
    jamb_only_ = true;
    wanted_ = rating_winter(at_rating(opening));
    glass_ = opening::glazing_balance(wanted_);
    alone_[jamb_index].want(wanted_, glass_);
}

/// Head and jamb are mostly one and the same cut, drawn upside down.
bool Rater::advance(section::Accuracy accuracy) {
    const auto solved = [&](Slot& slot) {
        if (slot.fresh(accuracy, Pace::resting)) return false;
        slot.solve(accuracy, Pace::resting);
        return true;
    };
    Slot& jamb = alone_[jamb_index];
    if (solved(jamb)) return true;
    if (jamb_only_) return false;
    for (Slot& slot : alone_) {
        if (slot.position() == Position::head && slot.take_mirrored(jamb)) continue;
        if (solved(slot)) return true;
    }
    return false;
}

double Rater::jamb_excess_w_mk() const {
    return alone_[jamb_index].excess_w_mk();
}

Rated Rater::rated() const {
    const std::span<const Slot> alone(alone_);
    Rated result;
    result.solved = true;
    for (const Slot& slot : alone)
        result.solved = result.solved && !slot.failed();
    if (!result.solved) return result;
    const WindowConductance heat = window_conductance(wanted_, glass_.u_w_m2k, alone, {});
    const SunStraightOn sun = sun_straight_on(wanted_.opening);
    const double window_m2 = width_m * height_m, frame_m2 = window_m2 - glass_m2(alone);
    result.u_w_m2k = heat.unit_w_k / heat.unit_m2;
    result.u_centre_w_m2k = glass_.u_w_m2k;
    result.shgc_centre = sun.shgc;
    result.glass_share = glass_m2(alone) / window_m2;
    // Frame and edge together, on the frame's area.
    const double frame_w_k = heat.unit_w_k - glass_.u_w_m2k * glass_m2(alone);
    const double frame_gain = frame_absorptance * frame_w_k / frame_m2 / frame_film_w_m2k;
    result.shgc = result.glass_share * sun.shgc + (1 - result.glass_share) * frame_gain;
    result.light = result.glass_share * sun.light;
    return result;
}

} // namespace shimlight::assess
