// SPDX-License-Identifier: MIT
#include "assess/figures.hpp"

#include "assess/surfaces.hpp"
#include "opening/sash_glass.hpp"
#include "physics/thermography.hpp"

#include <limits>

namespace shimlight::assess {
namespace {

using opening::Case;
using opening::Part;
using Kind = FigureKind;

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// The coldest place of a part, over the cuts solved so far.
const PartSurface* surface(const Assessment& a, Part part) {
    for (const PartSurface& p : a.parts)
        if (p.part == part) return &p;
    return nullptr;
}

template <Part part> double part_c(const Case&, const Assessment& a) {
    const PartSurface* p = surface(a, part);
    return p ? p->surface_c : none;
}

template <Part part> double part_rh(const Case&, const Assessment& a) {
    const PartSurface* p = surface(a, part);
    return p ? p->max_rh : none;
}

template <auto member> double of(const Case&, const Assessment& a) {
    return a.*member;
}

template <auto member> double of_seat(const Case&, const Assessment& a) {
    return a.seat.*member;
}

template <auto member> double of_leak(const Case&, const Assessment& a) {
    return a.leak.*member;
}

double inside_glass_c(const Case& c, const Assessment& a) {
    return a.glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
}

// Mean skin at rest, 1.1 met: 35.7 − 0.028 × 64 W/m² (ISO 7730:2005).
constexpr double skin_c = 33.9;
constexpr double paint_emissivity = 0.9; // of casing and frame, common practice

/// What an instrument set as usual shows of a surface, straight on.
double shown_c(const Case& c, double surface_c, double emissivity, double mirrored_c) {
    physics::InfraredReading r;
    r.surface_emissivity = emissivity;
    r.reflected_c = c.room.air_c;
    return physics::infrared_shown_c(surface_c, mirrored_c, r);
}

/// Nothing where a covering hides the glass. Film lets heat radiation through.
double room_emissivity(const Case& c, const Assessment&) {
    const auto panel = opening::panel_inside(c.opening.glazing);
    if (c.opening.covering != opening::Covering::none || panel == opening::Panel::film) return none;
    const physics::GlazingStack stack = opening::glazing_stack(c.opening);
    return stack.panes[stack.pane_count - 1].emissivity_in;
}

double shown_glass_c(const Case& c, const Assessment& a) {
    return shown_c(c, inside_glass_c(c, a), room_emissivity(c, a), c.room.air_c);
}

double shown_mirror_c(const Case& c, const Assessment& a) {
    return shown_c(c, inside_glass_c(c, a), room_emissivity(c, a), skin_c);
}

template <Part part> double shown_part_c(const Case& c, const Assessment& a) {
    return shown_c(c, part_c<part>(c, a), paint_emissivity, c.room.air_c);
}

using A = Assessment;
using Seat = physics::SeatResult;

constexpr Figure rows[] = {
    {"glass_inside", "Glass, inside face", Kind::temperature_c, inside_glass_c, Needs::glass},
    {"ankles", "Bothered at the ankles", Kind::percent, of_seat<&Seat::ankle_bare_pct>,
     Needs::seat},
    {"wet_above", "Indoor humidity that wets the glass", Kind::humidity, of<&A::max_rh>,
     Needs::coldest_edge},
    {"u_window", "U-factor, whole window", Kind::u_w_m2k, of<&A::u_window_w_m2k>, Needs::unit},
    {"year_cost", "Heat lost in a year, this opening", Kind::money, of<&A::year_cost>},
    {"u_centre", "U-factor, center of glass", Kind::u_w_m2k, of<&A::u_centre_w_m2k>, Needs::glass},
    {"u_installed", "U-factor, installed, with shim space and leak", Kind::u_w_m2k,
     of<&A::u_installed_w_m2k>},
    {"u_frame", "U-factor, frame and sashes", Kind::u_w_m2k, of<&A::u_frame_w_m2k>, Needs::unit},
    {"u_edge", "U-factor, edge of the glass", Kind::u_w_m2k, of<&A::u_edge_w_m2k>, Needs::unit},
    {"year_kwh", "Heat of a year, this opening", Kind::energy_kwh, of<&A::year_kwh>},
    {"year_air", "Share of the year's heat carried by air", Kind::share, of<&A::year_air_share>},
    {"heat", "Heat lost now", Kind::heat_w, of<&A::heat_w>},
    {"air_share", "Share of it carried by air", Kind::share, of<&A::air_share>},
    {"dew_point", "Dew point of the room air", Kind::temperature_c, of<&A::dew_point_c>,
     Needs::room},
    {"shim_flow", "Air through the shim space", Kind::flow_m3_s, of_leak<&LeakResult::shim_m3_s>,
     Needs::leak},
    {"sash_flow", "Air past the sashes", Kind::flow_m3_s, of_leak<&LeakResult::sash_m3_s>,
     Needs::leak},
    {"shim_air", "Air from the shim space, as it enters", Kind::temperature_c,
     of_leak<&LeakResult::shim_air_c>, Needs::wall},
    {"sash_air", "Air from the sashes, as it enters", Kind::temperature_c,
     of_leak<&LeakResult::sash_air_c>, Needs::wall},
    {"leak_heat", "Heat carried by the leak", Kind::heat_w, of_leak<&LeakResult::heat_w>,
     Needs::leak},
    {"pressure", "Pressure across the window", Kind::pressure_pa,
     [](const Case&, const A& a) { return a.leak.drive.pressure_pa; }, Needs::leak},
    {"ankle_speed", "Air speed at the ankles", Kind::speed_m_s, of_seat<&Seat::ankle_speed_m_s>,
     Needs::seat},
    {"ankle_air", "Air temperature at the ankles", Kind::temperature_c, of_seat<&Seat::ankle_air_c>,
     Needs::seat},
    {"falling_speed", "Falling air at the sill", Kind::speed_m_s,
     of_seat<&Seat::downdraft_speed_at_sill_m_s>, Needs::seat},
    {"leak_speed", "Leaking air at the ankles", Kind::speed_m_s, of_seat<&Seat::leak_speed_m_s>,
     Needs::seat},
    {"draft_glass", "Share of the draft from cold glass", Kind::share,
     [](const Case&, const A& a) { return a.seat.share.cold_glass; }, Needs::seat},
    {"draft_sash", "Share of the draft from the sash", Kind::share,
     [](const Case&, const A& a) { return a.seat.share.sash_leak; }, Needs::seat},
    {"draft_shim", "Share of the draft from the shim space", Kind::share,
     [](const Case&, const A& a) { return a.seat.share.shim_leak; }, Needs::seat},
    {"operative", "Temperature as felt", Kind::temperature_c, of_seat<&Seat::operative_c>,
     Needs::seat},
    {"shgc", "SHGC, center of glass", Kind::ratio,
     [](const Case&, const A& a) { return a.sun.shgc; }, Needs::sun},
    {"light", "Visible light let in", Kind::ratio,
     [](const Case&, const A& a) { return a.sun.light; }, Needs::sun},
    {"part.glass_centre", "Coldest glass, center", Kind::temperature_c, part_c<Part::glass_centre>,
     Needs::coldest_centre},
    {"part.glass_edge", "Coldest edge of the glass", Kind::temperature_c, part_c<Part::glass_edge>,
     Needs::coldest_edge},
    {"part.frame", "Coldest place of the frame", Kind::temperature_c, part_c<Part::frame>,
     Needs::coldest_frame},
    {"part.casing", "Coldest place of the casing", Kind::temperature_c, part_c<Part::casing>,
     Needs::coldest_casing},
    {"part.wall", "Coldest place of the wall", Kind::temperature_c, part_c<Part::wall>,
     Needs::coldest_wall},
    {"part.storm", "Inner face of the storm panel", Kind::temperature_c, part_c<Part::storm>,
     Needs::storm},
    {"wet.storm", "Indoor humidity that wets the storm panel", Kind::humidity, part_rh<Part::storm>,
     Needs::storm},
    {"wet.casing", "Indoor humidity that wets the casing", Kind::humidity, part_rh<Part::casing>,
     Needs::coldest_casing},
    {"neck", "Bothered at the neck", Kind::percent, of_seat<&Seat::draft_rate_neck_pct>,
     Needs::seat},
    {"neck_speed", "Air speed at the neck", Kind::speed_m_s, of_seat<&Seat::neck_speed_m_s>,
     Needs::seat},
    {"neck_air", "Air temperature at the neck", Kind::temperature_c, of_seat<&Seat::neck_air_c>,
     Needs::seat},
    {"radiant", "Mean radiant temperature", Kind::temperature_c, of_seat<&Seat::mean_radiant_c>,
     Needs::seat},
    {"asymmetry", "Radiant asymmetry toward the window", Kind::difference_k,
     of_seat<&Seat::asymmetry_k>, Needs::seat},
    {"asymmetry_pct", "Bothered by the asymmetry", Kind::percent,
     of_seat<&Seat::asymmetry_dissatisfied_pct>, Needs::seat},
    {"pmv", "Mean vote (PMV)", Kind::vote, of_seat<&Seat::pmv>, Needs::seat},
    {"ppd", "Dissatisfied with the warmth (PPD)", Kind::percent, of_seat<&Seat::ppd_pct>,
     Needs::seat},
    {"stack", "Pressure of the warm house", Kind::pressure_pa,
     [](const Case&, const A& a) { return a.leak.drive.stack_pa; }, Needs::leak},
    {"wind", "Pressure of the wind", Kind::pressure_pa,
     [](const Case&, const A& a) { return a.leak.drive.wind_pa; }, Needs::leak},
    {"infrared.glass", "Infrared, glass", Kind::temperature_c, shown_glass_c, Needs::glass},
    {"infrared.mirror", "Infrared, mirrored face", Kind::temperature_c, shown_mirror_c,
     Needs::glass},
    {"infrared.casing", "Infrared, coldest casing", Kind::temperature_c, shown_part_c<Part::casing>,
     Needs::coldest_casing},
    {"emissivity", "Emissivity, glass to room", Kind::ratio, room_emissivity, Needs::glass},
    {"outside", "Outdoor air", Kind::temperature_c,
     [](const Case& c, const A&) { return c.weather.outside_c; }, Needs::room},
    {"room", "Room air", Kind::temperature_c, [](const Case& c, const A&) { return c.room.air_c; },
     Needs::room},
    {"humidity", "Humidity of the room", Kind::share,
     [](const Case& c, const A&) { return c.room.rh; }, Needs::room},
};
static_assert(sizeof rows / sizeof rows[0] == figure_count);

} // namespace

std::span<const Figure> figures() {
    return rows;
}

CutSet cuts_of(const Figure& figure, const Assessment& now) {
    // No small step of a lever moves the coldest place to a cut where it is so much warmer.
    constexpr double near_k = 1;
    constexpr Part parts[] = {Part::glass_centre, Part::glass_edge, Part::frame, Part::casing,
                              Part::wall};
    if (figure.needs == Needs::unit) return unit_cuts;
    if (figure.needs == Needs::wall) return wall_cuts;
    if (figure.needs < Needs::coldest_centre) return all_cuts;
    const Part part =
        parts[static_cast<int>(figure.needs) - static_cast<int>(Needs::coldest_centre)];
    const PartSurface* coldest = surface(now, part);
    if (!coldest) return wall_cuts;
    CutSet cuts = 0;
    for (std::size_t i = 0; i < now.cuts.size(); ++i) {
        const auto place = now.cuts[i] ? coldest_of_part(*now.cuts[i], part) : std::nullopt;
        const bool here = coldest->position == static_cast<opening::Position>(i);
        // Away from its edges the glass is as cold in every cut.
        const bool near =
            part != Part::glass_centre && place && place->c < coldest->surface_c + near_k;
        if (here || near) cuts |= 1u << (opening::position_count + static_cast<int>(i));
    }
    return cuts;
}

const Figure* find_figure(std::string_view key) {
    for (const Figure& figure : rows)
        if (figure.key == key) return &figure;
    return nullptr;
}

} // namespace shimlight::assess
