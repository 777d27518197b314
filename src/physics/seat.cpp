// SPDX-License-Identifier: MIT
#include "physics/seat.hpp"

#include "physics/comfort.hpp"
#include "physics/downdraft.hpp"
#include "physics/jet.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {
namespace {

// Share of the window that is frame, for its mean temperature (common practice, 15 to 30 %).
constexpr double frame_share = 0.2;
constexpr double least_distance_m = 0.1; // nobody sits in the glass
constexpr double still_air_m_s = 0.1;    // room air never stands; PMV is flat below this
constexpr double ankle_height_m = 0.1;   // ISO 7726
constexpr double seated_centre_m = 0.6, standing_centre_m = 1.1; // ISO 7726, abdomen
constexpr double seated_neck_m = 1.1, standing_neck_m = 1.7;     // ISO 7726, head
constexpr double sitting_met = 1.2; // above it a draft is felt less than computed

constexpr std::string_view jet_warning =
    "Cold air from leaks is followed as a plane jet that clings to wall and floor: an engineering "
    "estimate, good for comparing remedies.";

/// Air moving at one place: its speed and how much colder than the room it is.
using Stream = JetAir;

struct Streams {
    Stream downdraft, sash, shim;
};

/// Streams that meet add their momentum; each keeps its heat, carried by its speed.
Stream together(const Stream& a, const Stream& b) {
    const double sum = a.speed_m_s + b.speed_m_s;
    if (sum <= 0) return {};
    return {std::hypot(a.speed_m_s, b.speed_m_s),
            (a.speed_m_s * a.colder_k + b.speed_m_s * b.colder_k) / sum};
}

PlaneJet jet_of(const RoomLeak& leak, const SeatRoom& room) {
    const double area_m2 = leak.gap_m * leak.length_m;
    return {area_m2 > 0 ? leak.flow_m3_s / area_m2 : 0, leak.gap_m, room.air_c - leak.air_c};
}

double window_c(const SeatWindow& w) {
    return (1 - frame_share) * w.surface_c + frame_share * w.frame_c;
}

/// Adds the leaks' air after it has fallen to `level_m` and run `floor_m` over the floor.
void add_leaks(Streams& s, const SeatRoom& room, double level_m, double floor_m,
               std::span<const RoomLeak> leaks) {
    for (const RoomLeak& leak : leaks) {
        if (leak.flow_m3_s <= 0) continue;
        const double fall_m = std::max(0.0, leak.height_m - level_m);
        Stream& cause = leak.place == LeakPlace::sash ? s.sash : s.shim;
        cause = together(cause, fallen_jet(jet_of(leak, room), fall_m, floor_m, room.air_c));
    }
}

Streams at_ankles(const SeatWindow& window, const SeatRoom& room, double distance_m,
                  std::span<const RoomLeak> leaks) {
    Streams s;
    const FloorStream fallen =
        floor_stream(window.height_m, room.air_c - window_c(window), window.sill_m + distance_m);
    s.downdraft = {fallen.speed_m_s, fallen.colder_k};
    add_leaks(s, room, ankle_height_m, distance_m, leaks);
    return s;
}

/// Free jets straight at the neck, as far as they have not sunk past it, and the falling layer.
Stream at_neck(const SeatWindow& window, const SeatRoom& room, double distance_m, double neck_m,
               std::span<const RoomLeak> leaks) {
    const double fallen_m =
        std::clamp(window.sill_m + window.height_m - neck_m, 0.0, window.height_m);
    const FallingLayer layer = falling_layer(fallen_m, room.air_c - window_c(window), room.air_c);
    Stream neck{layer_speed_m_s(layer, distance_m), 0};
    for (const RoomLeak& leak : leaks) {
        if (leak.flow_m3_s <= 0) continue;
        const PlaneJet jet = jet_of(leak, room);
        const double axis_m = leak.height_m - jet_drop_m(jet, distance_m, room.air_c);
        const double share = jet_profile(distance_m, axis_m - neck_m);
        const Stream middle = free_jet(jet, distance_m);
        neck = together(neck, {middle.speed_m_s * share, middle.colder_k * share});
    }
    return neck;
}

/// Each cause's part of the momentum at the ankles.
DraftShare shares(const Streams& s) {
    auto momentum = [](const Stream& stream) { return stream.speed_m_s * stream.speed_m_s; };
    const double sum = momentum(s.downdraft) + momentum(s.sash) + momentum(s.shim);
    if (sum <= 0) return {};
    return {momentum(s.downdraft) / sum, momentum(s.sash) / sum, momentum(s.shim) / sum};
}

void radiate(SeatResult& r, const SeatWindow& window, const SeatRoom& room,
             const SeatPerson& person, double distance_m) {
    const double centre_m = person.posture == Posture::seated ? seated_centre_m : standing_centre_m;
    SeenRectangle seen;
    seen.left_m = -window.width_m / 2;
    seen.right_m = window.width_m / 2;
    seen.low_m = window.sill_m - centre_m;
    seen.high_m = seen.low_m + window.height_m;
    seen.distance_m = distance_m;
    const RadiantView view = radiant_view(seen, window_c(window), room.surfaces_c, person.posture);
    r.mean_radiant_c = view.mean_radiant_c;
    r.asymmetry_k = view.asymmetry_k;
    r.asymmetry_dissatisfied_pct = cool_wall_pct(view.asymmetry_k);
}

void feel(SeatResult& r, const SeatRoom& room, const SeatPerson& person) {
    ThermalState state;
    state.air_c = room.air_c;
    state.radiant_c = r.mean_radiant_c;
    const double body_speed = std::max(still_air_m_s, r.neck_speed_m_s);
    state.speed_m_s = relative_speed_m_s(body_speed, person.met);
    state.rh = room.rh;
    state.met = person.met;
    state.clo = person.met > sitting_met ? dynamic_clo(person.clo, person.met) : person.clo;
    r.operative_c = operative_iso_c(room.air_c, r.mean_radiant_c, body_speed);
    r.pmv = predicted_mean_vote(state);
    r.ppd_pct = predicted_dissatisfied_pct(r.pmv);
    const AnkleDraft ankle = ankle_draft(r.ankle_speed_m_s, r.pmv);
    r.ankle_bare_pct = ankle.standard_pct;
    r.ankle_covered_pct = ankle.covered_pct;
    r.draft_rate_ankle_pct = draught_rate_pct(r.ankle_air_c, r.ankle_speed_m_s);
    r.draft_rate_neck_pct = draught_rate_pct(r.neck_air_c, r.neck_speed_m_s);
    warn_thermal_state(state, r.pmv, r.warnings);
    warn_draught_rate(r.ankle_air_c, r.ankle_speed_m_s, unknown_turbulence_pct, r.warnings);
    warn_ankle_draft({r.ankle_air_c, r.ankle_speed_m_s}, state, r.warnings);
}

} // namespace

SeatResult seat(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person,
                std::span<const RoomLeak> leaks) {
    SeatResult r;
    const double distance_m = std::max(person.distance_m, least_distance_m);
    const double difference_k = room.air_c - window_c(window);
    const Streams ankles = at_ankles(window, room, distance_m, leaks);
    const Stream leak = together(ankles.sash, ankles.shim);
    const Stream ankle = together(ankles.downdraft, leak);
    const double neck_m = person.posture == Posture::seated ? seated_neck_m : standing_neck_m;
    const Stream neck = at_neck(window, room, distance_m, neck_m, leaks);
    r.downdraft_speed_at_sill_m_s =
        falling_layer(window.height_m, difference_k, room.air_c).peak_speed_m_s;
    r.downdraft_speed_m_s = ankles.downdraft.speed_m_s;
    r.downdraft_air_c = room.air_c - ankles.downdraft.colder_k;
    Streams sill;
    add_leaks(sill, room, window.sill_m, 0, leaks);
    r.leak_speed_at_sill_m_s = together(sill.sash, sill.shim).speed_m_s;
    r.leak_speed_m_s = leak.speed_m_s;
    r.leak_air_c = room.air_c - leak.colder_k;
    r.ankle_speed_m_s = ankle.speed_m_s;
    r.ankle_air_c = room.air_c - ankle.colder_k;
    r.neck_speed_m_s = neck.speed_m_s;
    r.neck_air_c = room.air_c - neck.colder_k;
    r.share = shares(ankles);
    radiate(r, window, room, person, distance_m);
    r.warnings = floor_stream_warnings(window.height_m, difference_k, window.sill_m + distance_m,
                                       window.sill_m);
    if (leak.speed_m_s > 0) r.warnings.push_back(jet_warning);
    feel(r, room, person);
    return r;
}

} // namespace shimlight::physics
