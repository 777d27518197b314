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
    return Rater().rated(opening, accuracy);
}

/// Head and jamb are mostly one and the same cut, drawn upside down.
void Rater::solve(Slot& slot, section::Accuracy accuracy) {
    const Slot& jamb = alone_[static_cast<std::size_t>(Position::jamb)];
    const bool is_head = slot.position() == Position::head;
    if (is_head && jamb.fresh(accuracy, Pace::resting) && slot.take_mirrored(jamb)) return;
    if (!slot.fresh(accuracy, Pace::resting)) slot.solve(accuracy, Pace::resting);
}

double Rater::jamb_excess_w_mk(const opening::Opening& opening, section::Accuracy accuracy) {
    const opening::Case c = rating_winter(at_rating(opening));
    Slot& jamb = alone_[static_cast<std::size_t>(Position::jamb)];
    jamb.want(c, opening::glazing_balance(c));
    solve(jamb, accuracy);
    return jamb.excess_w_mk();
}

Rated Rater::rated(const opening::Opening& opening, section::Accuracy accuracy) {
    const opening::Case c = rating_winter(at_rating(opening));
    const physics::GlazingResult glass = opening::glazing_balance(c);
    const std::span<Slot> alone(alone_);
    Rated result;
    result.solved = true;
    for (Slot& slot : alone)
        slot.want(c, glass);
    solve(alone_[static_cast<std::size_t>(Position::jamb)], accuracy);
    for (Slot& slot : alone) {
        solve(slot, accuracy);
        result.solved = result.solved && !slot.failed();
    }
    if (!result.solved) return result;
    const WindowConductance heat = window_conductance(c, glass.u_w_m2k, alone, {});
    const SunStraightOn sun = sun_straight_on(c.opening);
    const double window_m2 = width_m * height_m, frame_m2 = window_m2 - glass_m2(alone);
    result.u_w_m2k = heat.unit_w_k / heat.unit_m2;
    result.u_centre_w_m2k = glass.u_w_m2k;
    result.shgc_centre = sun.shgc;
    result.glass_share = glass_m2(alone) / window_m2;
    // Frame and edge together, on the frame's area.
    const double frame_w_k = heat.unit_w_k - glass.u_w_m2k * glass_m2(alone);
    const double frame_gain = frame_absorptance * frame_w_k / frame_m2 / frame_film_w_m2k;
    result.shgc = result.glass_share * sun.shgc + (1 - result.glass_share) * frame_gain;
    result.light = result.glass_share * sun.light;
    return result;
}

} // namespace shimlight::assess
