// SPDX-License-Identifier: MIT
#include "view/room_air.hpp"

#include "assess/seat_case.hpp"
#include "physics/downdraft.hpp"
#include "view/share_bar.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using section::Point;

constexpr double speed_a_line_m_s = 0.1; // one more streamline for each of these
constexpr int most_lines = 9;
constexpr float least_apart_px = 2;
constexpr double visible_m3_s = 1.5e-4; // less than 0.15 L/s is not drawn, as in the slice
constexpr double mark_every_s = 1.6;
constexpr double turn_m = 0.16;       // radius of the stream's turn where wall meets floor
constexpr double most_floor_m = 0.35; // thickness that is drawn
constexpr double floor_step_m = 0.1;

/// The stream along the floor, told by how far from the foot of the wall.
struct Floor {
    double way_to_floor_m, ankle_ratio, ankle_m_s, layer_m, sill_m_s;

    double speed_m_s(double out_m) const {
        return ankle_m_s * physics::floor_speed_ratio(way_to_floor_m + out_m) / ankle_ratio;
    }
    /// The same flow, slower: thicker.
    double thick_m(double out_m) const {
        const double speed = std::max(speed_m_s(out_m), 0.02);
        return std::clamp(layer_m * sill_m_s / speed, std::min(layer_m, 0.1), most_floor_m);
    }
    /// How far out `share` of the ankles' speed is still felt.
    double end_m(double share, double most_m) const {
        double out = 0;
        while (out < most_m && speed_m_s(out) * share >= felt_m_s)
            out += floor_step_m;
        return std::min(out, most_m);
    }
};

Floor floor_of(const RoomScene& s, double ankle_m_s) {
    Floor f;
    const double over_sill = std::max(s.c.room.sill_depth_m - opening::usual_sill_depth_m, 0.0);
    f.way_to_floor_m = std::max(s.c.opening.sill_m, 0.0) + over_sill;
    f.ankle_ratio = std::max(physics::floor_speed_ratio(f.way_to_floor_m + s.seat_m()), 1e-3);
    f.ankle_m_s = ankle_m_s;
    f.layer_m = s.result->seat.downdraft_layer_m;
    f.sill_m_s = s.result->seat.downdraft_speed_at_sill_m_s;
    return f;
}

double edge_m(const RoomScene& s) {
    return s.shown_m - 0.08;
}

/// From over the sill board down the wall and out over the floor, `share` of the layer from solid.
void add_fall(std::vector<Point>& way, const RoomScene& s, const Floor& f, double share,
              double end_m) {
    const double off = share * f.layer_m, sill = s.c.opening.sill_m;
    const double nose = std::max(s.c.room.sill_depth_m, s.face_m());
    way.push_back({s.face_m() + off, sill + 0.06 + 0.8 * off});
    way.push_back({nose + 0.01 + off, sill + 0.5 * off + 0.01});
    const double low = share * f.thick_m(0) + 0.012;
    if (end_m <= 0) return way.push_back({nose + 0.01 + off, sill - 0.08}); // warm air stops it
    if (sill > 0.35) way.push_back({std::max(nose * 0.6, 0.02) + off, sill - 0.2});
    way.push_back({0.02 + off, low + turn_m});
    way.push_back({0.02 + off, low});
    for (double out = off + turn_m; out < end_m; out += 2 * floor_step_m)
        way.push_back({out, share * f.thick_m(out) + 0.012});
    way.push_back({end_m, share * f.thick_m(end_m) + 0.012});
}

Way on_screen(const RoomScene& s, const std::vector<Point>& metres) {
    Way way;
    for (const Point& p : metres)
        way.push_back(s.at(p.x_m, p.y_m));
    return rounded(std::move(way));
}

/// Speed of the falling air where the picture shows it.
double speed_at(const RoomScene& s, const Floor& f, ImVec2 at) {
    const double x = (at.x - s.foot.x) / s.px_per_m, y = (s.foot.y - at.y) / s.px_per_m;
    const double sill = s.c.opening.sill_m;
    if (y > sill)
        return f.sill_m_s *
               std::sqrt(std::clamp((s.top_m() - y) / s.c.opening.height_m, 0.02, 1.0));
    const double foot = f.speed_m_s(0), down = sill > 0 ? std::clamp(y / sill, 0.0, 1.0) : 0;
    if (x > 0.3) return f.speed_m_s(x);
    return foot + (f.sill_m_s - foot) * down;
}

/// Heads along a way, each `mark_every_s` ahead of the next.
void draw_marks(Ui& ui, const RoomScene& s, const Floor& f, const Way& way, ImU32 ink,
                double time_s) {
    double next = std::fmod(time_s, mark_every_s), now = 0;
    for (std::size_t i = 0; i + 1 < way.size(); ++i) {
        const ImVec2 a = way[i], b = way[i + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y) / s.px_per_m;
        const double takes = length / std::max(speed_at(s, f, a), 0.02);
        for (; next < now + takes; next += mark_every_s) {
            const auto k = static_cast<float>((next - now) / std::max(takes, 1e-6));
            arrow_head(ui, a, {a.x + (b.x - a.x) * k, a.y + (b.y - a.y) * k}, ink, 3.6f);
        }
        now += takes;
    }
}

} // namespace

int stream_lines(const RoomScene& s) {
    const auto& seat = s.result->seat;
    const int fast =
        1 + static_cast<int>(seat.downdraft_speed_at_sill_m_s / speed_a_line_m_s + 0.5);
    const int apart = 1 + static_cast<int>(static_cast<float>(seat.downdraft_layer_m) * s.px_per_m /
                                           least_apart_px);
    return std::clamp(std::min(fast, apart), 2, most_lines);
}

namespace {

void band(Ui& ui, Box box, ImU32 top_left, ImU32 top_right, ImU32 bottom_right, ImU32 bottom_left) {
    ui.list->AddRectFilledMultiColor(box.min(), box.max(), top_left, top_right, bottom_right,
                                     bottom_left);
}

struct Crack {
    double outside_y_m, inside_x_m, inside_y_m;
};

void draw_leak(Ui& ui, const RoomScene& s, const Crack& crack, Cause cause, double flow_m3_s,
               double time_s) {
    const Floor f = floor_of(s, s.result->seat.ankle_speed_m_s);
    const double share = cause_speed_m_s(s.result->seat, cause) / std::max(f.ankle_m_s, 1e-9);
    const double over = cause == Cause::sash ? 0.035 : 0.075; // beside the film, not in it
    const double outside = -s.wall_m - 0.32;
    std::vector<Point> way{{outside, crack.outside_y_m},
                           {-s.wall_m, crack.outside_y_m},
                           {crack.inside_x_m, crack.inside_y_m}};
    if (flow_m3_s < 0) {
        way.push_back({crack.inside_x_m + 0.3, crack.inside_y_m});
        std::reverse(way.begin(), way.end());
    } else {
        const double beside = std::max(s.face_m(), 0.0) + f.layer_m + over;
        const double end = f.end_m(share, edge_m(s));
        way.push_back({beside, crack.inside_y_m - 0.08});
        way.push_back({beside + 0.02, std::max(crack.inside_y_m - 0.35, 0.2)});
        if (end > beside + turn_m) {
            way.push_back({beside, f.thick_m(0) + over + turn_m});
            way.push_back({beside, f.thick_m(0) + over});
            for (double out = beside + turn_m; out < end; out += 2 * floor_step_m)
                way.push_back({out, f.thick_m(out) + over});
            way.push_back({end, f.thick_m(end) + over});
        }
    }
    const Way line = on_screen(s, way);
    const float width = std::clamp(
        1.2f + 1.0f * static_cast<float>(std::sqrt(std::fabs(flow_m3_s) * 1e3)), 1.6f, 3.5f);
    const double along_m = time_s * std::max(f.ankle_m_s * share, felt_m_s);
    stroke(ui, line, faded(ui.theme.card, 0.7f), width + 2);
    stroke(ui, line, cause_ink(ui, cause), width, cause_dash(cause),
           static_cast<float>(along_m) * s.px_per_m);
    arrow_head(ui, line[line.size() - 2], line.back(), cause_ink(ui, cause), width + 3);
}

} // namespace

double cause_speed_m_s(const physics::SeatResult& seat, Cause cause) {
    const physics::DraftShare& share = seat.share;
    const double part = cause == Cause::glass  ? share.cold_glass
                        : cause == Cause::sash ? share.sash_leak
                                               : share.shim_leak;
    return seat.ankle_speed_m_s * std::sqrt(std::max(part, 0.0)); // a share is one of squares
}

/// Operative is weighted from air and radiant temperature; the weight is read off the result.
double felt_loss_k(const RoomScene& s) {
    const physics::SeatResult& seat = s.result->seat;
    const double air = s.c.room.air_c, below = seat.mean_radiant_c - air;
    const double weight = std::fabs(below) > 1e-6 ? (seat.operative_c - air) / below : 0.5;
    return weight * (air - assess::surfaces_below_air_k - seat.mean_radiant_c);
}

void draw_wash(Ui& ui, const RoomScene& s) {
    const auto& seat = s.result->seat;
    const double high = s.c.room.height_m, air = s.c.room.air_c;
    fill(ui, s.box(0, 0, s.shown_m, high), ui.theme.indoor_air);
    fill(ui, s.box(0, 0, s.shown_m, high), wash_ink(s, air, ui.platform.dark ? 0.1f : 0.16f));
    const double layer = seat.downdraft_layer_m;
    if (layer <= 0) return;
    // In the ink of cold air, the more of it the colder: by the section's scale all air above the
    // dew point would look warm beside the room.
    const auto cold = [&](double c, float a) {
        constexpr double deepest_k = 15;
        const double share = std::clamp((air - c) / deepest_k, 0.0, 1.0);
        return faded(ui.theme.water, a * (0.15f + 0.6f * static_cast<float>(share)));
    };
    const double film = (s.face_c() + air) / 2;
    band(ui, s.box(s.face_m(), s.c.opening.sill_m, s.face_m() + 2.5 * layer, s.top_m()),
         cold(film, 0.35f), cold(air, 0), cold(air, 0), cold(film, 0.75f));
    if (seat.ankle_speed_m_s < felt_m_s) return;
    const Floor f = floor_of(s, seat.ankle_speed_m_s);
    const double end = std::max(f.end_m(1, s.shown_m), 0.3);
    band(ui, s.box(0, 0, 2.5 * layer, s.c.opening.sill_m), cold(film, 0.6f), cold(air, 0),
         cold(seat.ankle_air_c, 0), cold(seat.ankle_air_c, 0.5f));
    band(ui, s.box(0, 0, end, 2.2 * f.thick_m(0)), cold(air, 0), cold(air, 0),
         cold(seat.ankle_air_c, 0.35f), cold(seat.ankle_air_c, 0.75f));
}

void draw_cold_air(Ui& ui, const RoomScene& s, double time_s) {
    const auto& seat = s.result->seat;
    if (seat.downdraft_speed_at_sill_m_s < felt_m_s) return;
    const Floor f = floor_of(s, seat.downdraft_speed_m_s);
    const double end = f.end_m(1, edge_m(s)), height = s.c.opening.height_m;
    const int count = stream_lines(s);
    for (int k = 0; k < count; ++k) {
        const double share = (k + 0.5) / count;
        // Flow grows as the 1.2th power of the fall, thickness as the 0.7th (turbulent layer).
        const double joins = height * std::pow(share, 1 / 1.2);
        std::vector<Point> way;
        const double at_join = f.layer_m * std::pow(joins / height, 0.7);
        way.push_back({s.face_m() + at_join + 0.22, s.top_m() - joins + 0.1});
        for (double fall = joins; fall < height - 0.1; fall += 0.15) {
            const double in = share * std::pow(height / fall, 1.2);
            way.push_back(
                {s.face_m() + f.layer_m * std::pow(fall / height, 0.7) * std::min(in, 1.0),
                 s.top_m() - fall});
        }
        add_fall(way, s, f, share, end);
        const Way line = on_screen(s, way);
        const ImU32 ink = faded(ui.theme.water, 0.95f - 0.4f * static_cast<float>(share));
        stroke(ui, line, ink, 1.4f);
        draw_marks(ui, s, f, line, ui.theme.water, time_s + mark_every_s * share * 0.9);
        arrow_head(ui, line[line.size() - 2], line.back(), ui.theme.water, 4);
    }
}

bool leak_drawn(const RoomScene& s, Cause cause) {
    constexpr double told_share = 0.005; // less is told as 0 %
    const auto& seat = s.result->seat;
    const bool sash = cause == Cause::sash;
    const double flow = sash ? s.result->leak.sash_m3_s : s.result->leak.shim_m3_s;
    return std::fabs(flow) >= visible_m3_s ||
           (seat.ankle_speed_m_s >= felt_m_s && share_of(seat.share, cause) >= told_share);
}

namespace {

/// Where the air of a cause passes the window: low, and high where there is room for both.
struct Cracks {
    Crack low, high;
    bool has_low = true, has_high = true;
};

Cracks cracks_of(const RoomScene& s, Cause cause, bool roomy) {
    const double sill = s.c.opening.sill_m, top = s.top_m(), casing = s.c.opening.casing.width_m;
    const double middle = (sill + top) / 2;
    if (cause == Cause::sash)
        return {{sill + 0.03, 0.0, sill + 0.05}, {middle, 0.0, middle}, roomy, true};
    return {{sill - 0.015, 0.03, sill - casing - 0.04},
            {top + 0.015, 0.03, top + casing + 0.01},
            true,
            roomy};
}

} // namespace

std::vector<float> leaks_outdoors(const RoomScene& s, bool roomy) {
    std::vector<float> lines;
    for (const Cause cause : {Cause::sash, Cause::shim}) {
        if (!leak_drawn(s, cause)) continue;
        const Cracks cracks = cracks_of(s, cause, roomy);
        if (cracks.has_low) lines.push_back(s.at(0, cracks.low.outside_y_m).y);
        if (cracks.has_high) lines.push_back(s.at(0, cracks.high.outside_y_m).y);
    }
    return lines;
}

float clear_of_lines(float from, float to, float height_px, std::vector<float> lines,
                     float wanted) {
    constexpr float line_px = 8; // an arrow's head, half of it
    lines.push_back(from - line_px);
    lines.push_back(to + line_px);
    std::sort(lines.begin(), lines.end());
    float best = wanted, least = 1e9f, widest = 0, middle = wanted;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const float top = lines[i] + line_px, room = lines[i + 1] - line_px - top;
        if (room > widest) widest = room, middle = top + (room - height_px) / 2;
        if (room < height_px) continue;
        const float y = std::clamp(wanted, top, top + room - height_px);
        if (std::fabs(y - wanted) < least) least = std::fabs(y - wanted), best = y;
    }
    return least < 1e9f ? best : middle;
}

void draw_leaks(Ui& ui, const RoomScene& s, Cause cause, double time_s, bool roomy) {
    if (!leak_drawn(s, cause)) return;
    const double flow = cause == Cause::sash ? s.result->leak.sash_m3_s : s.result->leak.shim_m3_s;
    const Cracks cracks = cracks_of(s, cause, roomy);
    if (cracks.has_high) draw_leak(ui, s, cracks.high, cause, flow, time_s);
    if (cracks.has_low) draw_leak(ui, s, cracks.low, cause, flow, time_s);
}

void draw_return(Ui& ui, const RoomScene& s) {
    const auto& seat = s.result->seat;
    if (seat.downdraft_speed_m_s < felt_m_s) return;
    const Floor f = floor_of(s, seat.downdraft_speed_m_s);
    const double end = f.end_m(1, edge_m(s)), high = s.c.room.height_m;
    const double up = std::min(end + 0.25, edge_m(s)),
                 under = std::min(s.top_m() + 0.12, high - 0.1);
    const Way way = on_screen(s, {{std::min(end + 0.08, up), 0.25},
                                  {up, 0.5},
                                  {up, high - 0.5},
                                  {up - 0.4, under + 0.02},
                                  {s.face_m() + 0.9, under},
                                  {s.face_m() + 0.5, under - 0.1}});
    stroke(ui, way, faded(ui.theme.lever, 0.9f), 2.4f, return_dash);
    arrow_head(ui, way[way.size() - 2], way.back(), ui.theme.lever, 4);
}

void draw_rays(Ui& ui, const RoomScene& s, bool roomy) {
    if (felt_loss_k(s) < 0.1) return;
    const ImVec2 chest = s.at(s.seat_m() + 0.36, 0.92);
    const int count = roomy ? 6 : 4;
    for (int k = 0; k < count; ++k) {
        const double y =
            s.c.opening.sill_m + s.c.opening.height_m * (0.16 + 0.68 * k / (count - 1));
        const ImVec2 end = s.at(s.face_m() + 0.02, y);
        ui.list->AddLine(chest, end, faded(ui.theme.worse, 0.55f), 1);
        arrow_head(ui, chest, end, ui.theme.worse, 3.5f);
    }
}

} // namespace shimlight::view
