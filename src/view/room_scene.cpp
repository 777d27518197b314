// SPDX-License-Identifier: MIT
#include "view/room_scene.hpp"

#include "opening/wall_build.hpp"
#include "view/pen.hpp"
#include "view/slice.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float foot_px = 24;    // below the floor, for the distance
constexpr double frame_m = 0.06; // height of sash and frame, seen from the side
constexpr double hatch_m = 0.12;

/// Two circles and what lies between them: a limb.
void limb(Ui& ui, const RoomScene& s, ImU32 ink, section::Point a, double ra, section::Point b,
          double rb) {
    const ImVec2 pa = s.at(a.x_m, a.y_m), pb = s.at(b.x_m, b.y_m);
    const float fa = static_cast<float>(ra) * s.px_per_m, fb = static_cast<float>(rb) * s.px_per_m;
    const float along = std::atan2(pb.y - pa.y, pb.x - pa.x);
    const float lean =
        std::acos(std::clamp((fa - fb) / std::hypot(pb.x - pa.x, pb.y - pa.y), -1.0f, 1.0f));
    constexpr float turn = 6.2831853f;
    ui.list->PathArcTo(pa, fa, along + lean, along - lean + turn, 16);
    ui.list->PathArcTo(pb, fb, along - lean, along + lean, 16);
    ui.list->PathFillConvex(ink);
}

void hatch(Ui& ui, const RoomScene& s, Box box) {
    ImGui::PushClipRect(box.min(), box.max(), true);
    const float step = std::max(static_cast<float>(hatch_m) * s.px_per_m, 7.0f);
    for (float y = box.y - box.w; y < box.bottom(); y += step)
        ui.list->AddLine({box.x, y + box.w}, {box.right(), y}, faded(ui.theme.ink, 0.28f), 1);
    ImGui::PopClipRect();
}

void solid(Ui& ui, const RoomScene& s, Box box) {
    fill(ui, box, ui.theme.quote);
    hatch(ui, s, box);
    frame(ui, box, ui.theme.outline == ui.theme.ink ? ui.theme.ink : ui.theme.soft, 0, 1.2f);
}

ImU32 line_ink(const Ui& ui) {
    return ui.platform.dark ? ui.theme.soft : ui.theme.ink;
}

void draw_heater(Ui& ui, const RoomScene& s) {
    using opening::Heater;
    const ImU32 ink = line_ink(ui);
    const double under = std::max(s.c.opening.sill_m, 0.2);
    const auto body = [&](Box box) {
        fill(ui, box, ui.theme.card, 2);
        frame(ui, box, ink, 2, 1.2f);
    };
    double top = 0.02;
    if (s.c.room.heater == Heater::radiator) {
        top = std::min(0.6, under - 0.06);
        const Box box = s.box(0.04, std::min(0.1, top / 2), 0.15, top);
        body(box);
        ui.list->AddLine({box.centre().x, box.y + 2}, {box.centre().x, box.bottom() - 2}, ink, 1);
    } else if (s.c.room.heater == Heater::baseboard) {
        top = std::min(0.2, under - 0.04);
        body(s.box(0.01, 0.02, 0.08, top));
    } else if (s.c.room.heater == Heater::register_) {
        for (int i = 0; i < 4; ++i)
            ui.list->AddLine(s.at(0.1 + 0.04 * i, 0.03), s.at(0.1 + 0.04 * i, -0.03), ink, 1.5f);
    } else {
        return;
    }
    for (int i = 0; i < 3; ++i) { // its warm air rises
        const ImVec2 a = s.at(0.05 + 0.05 * i, top + 0.04), b = s.at(0.07 + 0.05 * i, top + 0.3);
        ui.list->AddBezierCubic(a, {a.x + 5, a.y - 8}, {b.x - 6, b.y + 8}, b, ui.theme.lever, 1.2f);
    }
}

void draw_covering(Ui& ui, const RoomScene& s) {
    using opening::Covering;
    const ImU32 ink = line_ink(ui);
    const double low = s.c.opening.sill_m + 0.02, high = s.top_m() + 0.04;
    if (s.c.opening.covering == Covering::blind)
        for (double y = low; y < high; y += 0.06)
            ui.list->AddLine(s.at(0.005, y + 0.025), s.at(0.03, y), ink, 1.5f);
    if (s.c.opening.covering == Covering::shade) {
        ui.list->AddLine(s.at(0.02, low), s.at(0.02, high), ink, 2.5f);
        fill(ui, s.box(0, high, 0.05, high + 0.06), ink, 2);
    }
    if (s.c.opening.covering != Covering::curtain) return;
    for (double y = low - 0.05; y < high; y += 0.1) {
        const ImVec2 a = s.at(0.015, y), b = s.at(0.015, y + 0.1);
        ui.list->AddBezierCubic(a, s.at(0.05, y + 0.03), s.at(-0.02, y + 0.07), b, ink, 2.5f);
    }
    fill(ui, s.box(-0.02, high + 0.02, 0.07, high + 0.05), ink, 2);
}

void draw_window(Ui& ui, const RoomScene& s) {
    const ImU32 ink = line_ink(ui);
    const double sill = s.c.opening.sill_m, top = s.top_m();
    const double out = -0.62 * s.wall_m, in = -0.5 * s.wall_m, middle = (sill + top) / 2;
    fill(ui, s.box(-s.wall_m, sill, 0, top), ui.theme.outdoor_air);
    fill(ui, s.box(in, sill, 0, top), ui.theme.indoor_air);
    const int panes = s.c.opening.glazing.panes;
    const double deep = std::max(0.012, 0.018 * (panes - 1));
    const ImU32 glass = wash_ink(s, s.face_c(), 1);
    fill(ui, s.box(in - deep, sill, in, top), glass);
    for (int k = 0; k < panes; ++k) {
        const double x = panes > 1 ? in - deep * k / (panes - 1) : in;
        ui.list->AddLine(s.at(x, sill), s.at(x, top), ui.theme.water, 1.5f);
    }
    if (s.c.opening.glazing.storm != opening::Storm::none)
        ui.list->AddLine(s.at(-0.92 * s.wall_m, sill), s.at(-0.92 * s.wall_m, top), ui.theme.water,
                         1.5f);
    if (s.c.opening.glazing.panel != opening::Panel::none)
        ui.list->AddLine(s.at(-0.08 * s.wall_m, sill), s.at(-0.08 * s.wall_m, top), ui.theme.water,
                         1.5f);
    for (const double y : {sill, middle - frame_m / 2, top - frame_m}) {
        const Box rail = s.box(out, y, in + 0.02, y + frame_m);
        fill(ui, rail, ui.theme.card);
        frame(ui, rail, ink, 0, 1);
    }
    const Box board = s.box(in, sill - 0.03, s.c.room.sill_depth_m, sill);
    fill(ui, board, ui.theme.card);
    frame(ui, board, ink, 0, 1.2f);
    const double casing = s.c.opening.casing.width_m;
    for (const Box& trim :
         {s.box(0, top, 0.02, top + casing), s.box(0, sill - 0.03 - casing, 0.02, sill - 0.03)}) {
        fill(ui, trim, ui.theme.card);
        frame(ui, trim, ink, 0, 1);
    }
}

/// Of somebody about 1.75 m tall.
struct Joints {
    section::Point foot, ankle, knee, hip, shoulder, neck, head, elbow, hand;
};

Joints joints(double x) {
    return {{x - 0.15, 0.035},  {x, ankle_m},     {x + 0.01, 0.50},
            {x + 0.42, 0.56},   {x + 0.47, 1.0},  {x + 0.46, 1.13},
            {x + 0.445, 1.265}, {x + 0.40, 0.76}, {x + 0.13, 0.63}};
}

} // namespace

double RoomScene::face_c() const {
    if (covered()) return result->covering.front_c;
    return result->glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
}

Box RoomScene::figure() const {
    return box(seat_m() - 0.22, 0, seat_m() + 0.66, 1.4);
}

RoomScene room_scene(const Session& session, Shown of, Box area, float outdoors_px,
                     double shown_m) {
    RoomScene s;
    s.c = session.shown_case(of);
    s.result = &session.result(of);
    s.scale = scale_for(session);
    s.area = area;
    s.wall_m = opening::joint_depth_m(s.c.opening.wall);
    const double high_px_m = (area.h - foot_px - 4) / s.c.room.height_m;
    const double beside_m = s.wall_m + 0.1, across_px = area.w - outdoors_px;
    const double fits_m = across_px / high_px_m - beside_m;
    const double depth = std::min(s.c.room.depth_m, std::max(shown_m, fits_m));
    s.px_per_m = static_cast<float>(std::min(high_px_m, across_px / (depth + beside_m)));
    s.shown_m = depth;
    const float high = static_cast<float>(s.c.room.height_m) * s.px_per_m + foot_px;
    const float wide = static_cast<float>(depth + s.wall_m) * s.px_per_m + outdoors_px;
    s.foot = {area.x + (area.w - wide) * 0.3f + outdoors_px +
                  static_cast<float>(s.wall_m) * s.px_per_m,
              area.y + (area.h + high) / 2 - foot_px};
    return s;
}

ImU32 wash_ink(const RoomScene& s, double temperature_c, float opacity) {
    const Rgb c = s.scale.colour(temperature_c);
    return ImGui::ColorConvertFloat4ToU32({c.r, c.g, c.b, opacity});
}

void draw_building(Ui& ui, const RoomScene& s) {
    const double high = s.c.room.height_m;
    solid(ui, s, s.box(-s.wall_m, -0.02, 0, s.c.opening.sill_m - 0.03));
    if (high > s.top_m()) solid(ui, s, s.box(-s.wall_m, s.top_m(), 0, high));
    draw_window(ui, s);
    draw_covering(ui, s);
    draw_heater(ui, s);
    const ImU32 ink = line_ink(ui);
    const bool whole = s.shown_m >= s.c.room.depth_m - 1e-6;
    ui.list->AddLine(s.at(-s.wall_m, 0), s.at(s.shown_m, 0), ink, 2);
    ui.list->AddLine(s.at(-s.wall_m, high), s.at(s.shown_m, high), ink, 1.5f);
    const ImVec2 a = s.at(s.shown_m, 0), b = s.at(s.shown_m, high);
    if (whole) return ui.list->AddLine(a, b, ink, 1.5f);
    stroke(ui, {a, b}, ui.theme.soft, 1, {7, 5}); // the room goes on
}

void draw_figure(Ui& ui, const RoomScene& s, bool held) {
    const ImU32 wood = line_ink(ui), halo = ui.theme.indoor_air;
    const ImU32 body =
        ui.platform.dark ? IM_COL32(0xA8, 0xB0, 0xB6, 255) : IM_COL32(0x4A, 0x52, 0x59, 255);
    const double x = s.seat_m();
    const Joints j = joints(x);
    const float leg = std::max(0.03f * s.px_per_m, 1.5f);
    ui.list->AddLine(s.at(x + 0.14, 0.44), s.at(x + 0.12, 0), wood, leg); // the chair
    ui.list->AddLine(s.at(x + 0.55, 0.44), s.at(x + 0.59, 0), wood, leg);
    ui.list->AddLine(s.at(x + 0.55, 0.42), s.at(x + 0.63, 0.95), wood, leg);
    fill(ui, s.box(x + 0.1, 0.42, x + 0.58, 0.46), wood, 2);
    const ImU32 ink = held ? ui.theme.lever : body;
    limb(ui, s, ink, j.ankle, 0.045, j.foot, 0.03);
    limb(ui, s, ink, {j.ankle.x_m + 0.02, 0.05}, 0.045, j.foot, 0.03);
    limb(ui, s, ink, j.knee, 0.07, j.ankle, 0.042);
    limb(ui, s, ink, j.hip, 0.1, j.knee, 0.075);
    limb(ui, s, ink, j.hip, 0.115, j.shoulder, 0.1);
    limb(ui, s, ink, j.shoulder, 0.07, j.neck, 0.045);
    limb(ui, s, ink, j.head, 0.098, {j.head.x_m - 0.012, j.head.y_m - 0.04}, 0.08);
    limb(ui, s, halo, {j.shoulder.x_m - 0.02, j.shoulder.y_m - 0.06}, 0.062, j.elbow, 0.052);
    limb(ui, s, halo, j.elbow, 0.05, j.hand, 0.043);
    limb(ui, s, ink, {j.shoulder.x_m - 0.015, j.shoulder.y_m - 0.05}, 0.05, j.elbow, 0.04);
    limb(ui, s, ink, j.elbow, 0.04, j.hand, 0.032);
}

} // namespace shimlight::view
