// SPDX-License-Identifier: MIT
// Engineering estimate; what is assumed, besides the sources of downdraft, jet and comfort:
// - Cold face: the glass; where the frame is colder, the two are weighted 0.7 and 0.3 (a usual
//   frame share), without asking for areas. A warmer frame does not help the glass.
// - Falling air: the layer grows over the height of the window and leaves it at the sill. The wall
//   below counts as more floor to run over: speed and cold fade along sill height + distance. No
//   obstacle is in the way; a deep sill counts as more floor. A covering has a stream of its own
//   face, and the air that sank behind it.
// - Leaks: cold air clings to the wall, falls and runs over the floor. A leak's momentum is spread
//   over the width of the window, as where along that width it blows is not asked.
// - All causes together: momentum adds (squares of speeds), the coldest stream sets the
//   temperature, since thin streams lie in layers. A cause's share is its part of the sum of
//   squares.
// - A heater below: its warm air rises against all that falls. What its heat leaves of their cold
//   falls on, slower by the cube root of it, as plumes do; where it has more, nothing reaches the
//   floor. Seen in chamber tests (a heater under the window stops the cold stream), not measured.
// - The body as a whole is in room air at 0.1 m/s or more; only ankles and neck feel the streams.
#include "physics/seat.hpp"

#include "physics/comfort.hpp"
#include "physics/constants.hpp"
#include "physics/crack.hpp"
#include "physics/downdraft.hpp"
#include "physics/jet.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double frame_share = 0.3;       ///< of a window (ISO 10077-1 tables use 0.2 and 0.3)
constexpr double still_air_m_s = 0.1;     ///< usual speed of still room air (common practice)
constexpr double felt_speed_m_s = 0.05;   ///< ISO 7730: slower air is no draught
constexpr double least_distance_m = 0.01; ///< a person cannot be in the plane of the wall

struct Heights {
    double head_m, radiant_m; ///< head and neck; element of plane radiant temperature (ISO 7726)
};

Heights heights_of(Posture posture) {
    return posture == Posture::seated ? Heights{1.1, 0.6} : Heights{1.7, 1.1};
}

/// Streams of one kind at one place on the body, all leaks of it together.
struct Stream {
    double square_m2_s2 = 0; ///< of speed
    double colder_k = 0;

    void add(double speed_m_s, double k) {
        square_m2_s2 += speed_m_s * speed_m_s;
        // Air slower than a draught mixes with the room's: a closing leak fades without a step.
        colder_k = std::max(colder_k, k * std::min(1.0, speed_m_s / felt_speed_m_s));
    }
    double speed_m_s() const { return std::sqrt(square_m2_s2); }
    /// Some of the cold that drives it is gone.
    void weaken(double cold_left) {
        const double speed_left = std::cbrt(cold_left);
        square_m2_s2 *= speed_left * speed_left;
        colder_k *= speed_left * speed_left;
    }
};

Stream together(const Stream& a, const Stream& b) {
    return {a.square_m2_s2 + b.square_m2_s2, std::max(a.colder_k, b.colder_k)};
}

struct LeakStreams {
    Stream sash, shim, at_sill, neck;
    bool any = false;
};

double cold_face_c(const SeatWindow& window) {
    const double frame_colder_k = std::max(window.surface_c - window.frame_c, 0.0);
    return window.surface_c - frame_share * frame_colder_k;
}

double distance_of(const SeatPerson& person) {
    return std::max(person.distance_m, least_distance_m);
}

void add_leak(const RoomLeak& leak, const SeatWindow& window, const SeatRoom& room,
              const SeatPerson& person, LeakStreams& streams) {
    if (leak.flow_m3_s <= 0 || leak.gap_m <= 0 || leak.length_m <= 0) return;
    const double distance = distance_of(person);
    const PlaneJet jet{leak.flow_m3_s / (leak.gap_m * leak.length_m), leak.gap_m,
                       room.air_c - leak.air_c};
    const double spread = std::sqrt(leak.length_m / window.width_m);
    const JetAir ankle = fallen_jet(jet, leak.height_m, distance, room.air_c);
    const JetAir sill = falling_jet(jet, std::max(leak.height_m - window.sill_m, 0.0), room.air_c);
    const JetAir free = free_jet(jet, distance);
    const double off_m =
        heights_of(person.posture).head_m - (leak.height_m - jet_drop_m(jet, distance, room.air_c));
    const double reach = jet_profile(distance, off_m);
    Stream& place = leak.place == LeakPlace::sash ? streams.sash : streams.shim;
    place.add(ankle.speed_m_s * spread, ankle.colder_k);
    streams.at_sill.add(sill.speed_m_s * spread, sill.colder_k);
    streams.neck.add(free.speed_m_s * reach * std::min(spread, 1.0), free.colder_k * reach);
    streams.any = true;
}

/// The falling layer is a hand thick: only a neck right at the glass is in it.
Stream layer_at_neck(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person) {
    const double fall_m = std::clamp(
        window.sill_m + window.height_m - heights_of(person.posture).head_m, 0.0, window.height_m);
    const double difference_k = room.air_c - cold_face_c(window);
    const FallingLayer layer = falling_layer(fall_m, difference_k, room.air_c);
    const double speed = layer_speed_m_s(layer, distance_of(person));
    const double share = layer.peak_speed_m_s > 0 ? speed / layer.peak_speed_m_s : 0;
    Stream stream;
    stream.add(speed, share * difference_k);
    return stream;
}

/// Air that sank behind a covering falls from the hem like a jet as thick as the gap.
JetAir fallen_spill(const SeatSpill& spill, const SeatWindow& window, const SeatRoom& room,
                    const SeatPerson& person) {
    if (spill.flow_m3_s_m <= 0 || spill.speed_m_s <= 0 || spill.air_c >= room.air_c) return {};
    const PlaneJet jet{spill.speed_m_s, spill.flow_m3_s_m / spill.speed_m_s,
                       room.air_c - spill.air_c};
    return fallen_jet(jet, std::max(window.sill_m, 0.0), distance_of(person), room.air_c);
}

Stream fill_downdraft(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person,
                      const SeatBelow& below, SeatResult& result) {
    const double difference_k = room.air_c - cold_face_c(window);
    const double way_m =
        std::max(window.sill_m, 0.0) + std::max(below.sill_depth_m, 0.0) + distance_of(person);
    const FloorStream floor = floor_stream(window.height_m, difference_k, way_m);
    const JetAir spill = fallen_spill(below.spill, window, room, person);
    Stream stream;
    stream.add(floor.speed_m_s, floor.colder_k);
    stream.add(spill.speed_m_s, spill.colder_k);
    const FallingLayer layer = falling_layer(window.height_m, difference_k, room.air_c);
    result.downdraft_speed_at_sill_m_s = std::max(layer.peak_speed_m_s, below.spill.speed_m_s);
    result.downdraft_layer_m = layer.thickness_m;
    result.downdraft_speed_m_s = stream.speed_m_s();
    result.downdraft_air_c = room.air_c - std::max(floor.colder_k, spill.colder_k);
    warn_once(result.warnings,
              floor_stream_warnings(window.height_m, difference_k, way_m, window.sill_m));
    return stream;
}

double heat_w_m(double flow_m3_s, double colder_k, double width_m) {
    return std::max(flow_m3_s, 0.0) * air_state(0).density_kg_m3 * air_specific_heat_j_kgk *
           std::max(colder_k, 0.0) / width_m;
}

/// Share of the cold below the window that a heater there does not make up for, 0…1.
double cold_left(const SeatWindow& window, const SeatRoom& room, const SeatBelow& below,
                 std::span<const RoomLeak> leaks) {
    if (below.heater_w_m <= 0) return 1;
    const double difference_k = room.air_c - cold_face_c(window);
    const FallingLayer layer = falling_layer(window.height_m, difference_k, room.air_c);
    double cold_w_m = layer_heat_w_m(layer, difference_k, room.air_c) +
                      heat_w_m(below.spill.flow_m3_s_m, room.air_c - below.spill.air_c, 1);
    for (const RoomLeak& leak : leaks)
        cold_w_m += heat_w_m(leak.flow_m3_s, room.air_c - leak.air_c, window.width_m);
    return cold_w_m > below.heater_w_m ? 1 - below.heater_w_m / cold_w_m : 0;
}

void fill_share(const Stream& glass, const LeakStreams& leaks, SeatResult& result) {
    const double sum = glass.square_m2_s2 + leaks.sash.square_m2_s2 + leaks.shim.square_m2_s2;
    if (sum <= 0) return;
    result.share = {glass.square_m2_s2 / sum, leaks.sash.square_m2_s2 / sum,
                    leaks.shim.square_m2_s2 / sum};
}

void fill_radiation(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person,
                    SeatResult& result) {
    const double eye_m = heights_of(person.posture).radiant_m;
    const SeenRectangle seen{-window.width_m / 2, window.width_m / 2, window.sill_m - eye_m,
                             window.sill_m + window.height_m - eye_m, distance_of(person)};
    const RadiantView view =
        radiant_view(seen, cold_face_c(window), room.surfaces_c, person.posture);
    result.mean_radiant_c = view.mean_radiant_c;
    result.asymmetry_k = view.asymmetry_k;
    result.asymmetry_dissatisfied_pct =
        view.asymmetry_k >= 0 ? cool_wall_pct(view.asymmetry_k) : warm_wall_pct(-view.asymmetry_k);
    if (view.asymmetry_k > 15) {
        warn_once(result.warnings, "Radiant asymmetry toward a cool wall was studied below 15 K.");
    }
}

void fill_drafts(SeatResult& result) {
    result.draft_rate_ankle_pct = draught_rate_pct(result.ankle_air_c, result.ankle_speed_m_s);
    result.draft_rate_neck_pct = draught_rate_pct(result.neck_air_c, result.neck_speed_m_s);
    if (result.ankle_speed_m_s > felt_speed_m_s) {
        warn_draught_rate(result.ankle_air_c, result.ankle_speed_m_s, unknown_turbulence_pct,
                          result.warnings);
    }
    if (result.neck_speed_m_s > felt_speed_m_s) {
        warn_draught_rate(result.neck_air_c, result.neck_speed_m_s, unknown_turbulence_pct,
                          result.warnings);
    }
}

/// Mean speed over ankles, middle and head, none below that of still air.
double body_speed_m_s(const SeatResult& result) {
    return (std::max(result.ankle_speed_m_s, still_air_m_s) + still_air_m_s +
            std::max(result.neck_speed_m_s, still_air_m_s)) /
           3;
}

void fill_body(const SeatRoom& room, const SeatPerson& person, SeatResult& result) {
    const double speed = body_speed_m_s(result);
    const ThermalState state{room.air_c, result.mean_radiant_c, speed, room.rh, person.met,
                             person.clo};
    result.operative_c = operative_iso_c(room.air_c, result.mean_radiant_c, speed);
    result.pmv = predicted_mean_vote(state);
    result.ppd_pct = predicted_dissatisfied_pct(result.pmv);
    warn_thermal_state(state, result.pmv, result.warnings);
    const AnkleDraft ankle = ankle_draft(result.ankle_speed_m_s, result.pmv);
    result.ankle_bare_pct = ankle.standard_pct;
    result.ankle_covered_pct = ankle.covered_pct;
    if (result.ankle_speed_m_s > felt_speed_m_s) {
        warn_ankle_draft({result.ankle_air_c, result.ankle_speed_m_s}, state, result.warnings);
    }
}

} // namespace

SeatResult seat(const SeatWindow& window, const SeatRoom& room, const SeatPerson& person,
                std::span<const RoomLeak> leaks, const SeatBelow& below) {
    SeatResult result;
    Stream glass = fill_downdraft(window, room, person, below, result);
    LeakStreams streams;
    for (const RoomLeak& leak : leaks)
        add_leak(leak, window, room, person, streams);
    const double left = cold_left(window, room, below, leaks);
    for (Stream* stream : {&glass, &streams.sash, &streams.shim})
        stream->weaken(left);
    if (left < 1) {
        result.downdraft_speed_m_s = glass.speed_m_s();
        result.downdraft_air_c = room.air_c - glass.colder_k;
        warn_once(result.warnings, "What a heater below the window leaves of the draft is an "
                                   "engineering estimate; it holds while the heater is warm.");
    }
    const Stream leak = together(streams.sash, streams.shim);
    const Stream ankle = together(glass, leak);
    const Stream neck = together(layer_at_neck(window, room, person), streams.neck);
    result.leak_speed_at_sill_m_s = streams.at_sill.speed_m_s();
    result.leak_speed_m_s = leak.speed_m_s();
    result.leak_air_c = room.air_c - leak.colder_k;
    result.ankle_speed_m_s = ankle.speed_m_s();
    result.ankle_air_c = room.air_c - ankle.colder_k;
    result.neck_speed_m_s = neck.speed_m_s();
    result.neck_air_c = room.air_c - neck.colder_k;
    fill_share(glass, streams, result);
    fill_radiation(window, room, person, result);
    fill_drafts(result);
    fill_body(room, person, result);
    if (streams.any) {
        warn_once(result.warnings, "Drafts from leaks are an engineering estimate: plane jets that "
                                   "cling to wall and floor, averaged over the window's width.");
    }
    return result;
}

} // namespace shimlight::physics
