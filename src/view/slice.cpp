// SPDX-License-Identifier: MIT
#include "view/slice.hpp"

#include "view/legend.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using section::Point;

constexpr float fade_per_s = 5;     // cross-fade between Today and the Remedy
constexpr double animate_s = 8;     // creeping air moves this long after a change, then rests
constexpr double creep_m_s = 0.04;  // how fast the dashes are drawn to move
constexpr float tap_px = 8;         // less movement than this is a tap
constexpr int heat_line_count = 18; // through today's cut
constexpr float least_zoom = 1, most_zoom = 12;
constexpr double beyond_k = 0.05;  // a surface is colder than outdoors from here on
constexpr double least_span_k = 1; // of the colours, where outdoors is as warm as the room

std::size_t index(Shown of) {
    return of == Shown::today ? 0 : 1;
}

/// Scale that fits the drawing into the box with room for labels on both sides.
float fit_px_per_m(const section::Rect& solid, Box box, float label_px) {
    const float across = std::max(box.w - 2 * label_px, box.w * 0.34f);
    return std::min(across / static_cast<float>(solid.x1_m - solid.x0_m),
                    box.h / static_cast<float>(solid.y1_m - solid.y0_m));
}

} // namespace

TemperatureScale scale_for(const Session& s) {
    const opening::Case c = s.today();
    TemperatureScale scale;
    scale.low_c = std::min(c.weather.outside_c, c.room.air_c);
    scale.high_c = std::max(c.weather.outside_c, c.room.air_c);
    double coldest_c = scale.low_c - beyond_k, warmest_c = scale.high_c + beyond_k;
    for (const Shown of : {Shown::today, Shown::remedy})
        for (const Solved& cut : s.result(of).cuts) {
            if (!cut) continue;
            if (cut->coldest_c < coldest_c) scale.low_c = coldest_c = cut->coldest_c;
            if (cut->warmest_c > warmest_c) scale.high_c = warmest_c = cut->warmest_c;
        }
    scale.low_c = std::min(scale.low_c, scale.high_c - least_span_k);
    scale.hinge_c = s.today_result().dew_point_c;
    return scale;
}

void Slice::reset_look() {
    zoom_ = 1;
    pan_ = {0, 0};
    probe_.reset();
    placed_ = {};
}

Box Slice::half(Box box, Shown of, bool side_by_side) const {
    if (!side_by_side && !plan()) return box;
    return {of == Shown::today ? box.x : box.x + box.w / 2, box.y, box.w / 2, box.h};
}

void Slice::prepare(const Session& session, Shown of, Placement placement, float opacity) {
    const assess::Assessment& result = session.result(of);
    const Solved solved = result.cuts[static_cast<std::size_t>(position)];
    auto& slot = drawn_[index(of)];
    slot.reset();
    if (!solved) return;
    Outline& lines = outlines_[index(of)];
    DrawnCut cut;
    cut.solved = solved;
    cut.placement = placement;
    cut.scale = scale_for(session);
    cut.dew_point_c = result.dew_point_c;
    cut.room_c = session.today().room.air_c;
    cut.opacity = opacity;
    cut.strokes = &lines.strokes;
    if (session.heat_lines) {
        // The same heat a line in both pictures: fewer lines, less heat.
        const Solved& reference = session.today_result().cuts[static_cast<std::size_t>(position)];
        const double each_w_m = room_heat_w_m(*reference) / heat_line_count;
        if (lines.heat_each_w_m != each_w_m) lines.heat = heat_lines(*solved, each_w_m);
        lines.heat_each_w_m = each_w_m;
        cut.heat = &lines.heat;
    }
    slot = cut;
}

void Slice::read(Outline& lines, const Solved& solved) {
    if (lines.of != solved) lines = {solved, outline(*solved), solid_extent(*solved), {}, 0};
}

/// Today's jamb on the left, the Remedy's on the right, the glass between them changing where they
/// meet in the middle.
void Slice::place_plan(const Session& session, Box box) {
    const section::Rect a = outlines_[0].extent, b = outlines_[1].extent;
    const double top_m = std::min(a.x0_m, b.x0_m), deep_m = std::max(a.x1_m, b.x1_m) - top_m;
    const double along_m = a.y1_m + b.y1_m;
    constexpr float chips_px = 48, labels_px = 88;
    const float s = zoom_ * std::min(box.w / static_cast<float>(along_m),
                                     (box.h - labels_px) / static_cast<float>(deep_m));
    const float middle_y = box.centre().y + pan_.y + chips_px / 2;
    const float top = middle_y - static_cast<float>(top_m + deep_m / 2) * s;
    const float join = box.centre().x + pan_.x + static_cast<float>(a.y1_m - b.y1_m) * s / 2;
    prepare(session, Shown::today, {{join - static_cast<float>(a.y1_m) * s, top}, s, true, false},
            1);
    prepare(session, Shown::remedy, {{join + static_cast<float>(b.y1_m) * s, top}, s, true, true},
            1);
}

void Slice::place_cuts(const Session& session, Box box, bool side_by_side) {
    const auto which = static_cast<std::size_t>(position);
    const Solved a = session.today_result().cuts[which], b = session.remedy_result().cuts[which];
    drawn_ = {};
    if (!a || !b) return;
    read(outlines_[0], a);
    read(outlines_[1], b);
    if (plan()) return place_plan(session, box);
    const section::Rect ra = outlines_[0].extent, rb = outlines_[1].extent;
    const Box part = half(box, Shown::today, side_by_side);
    const float label_px = part.w < 480 ? 84.0f : 128.0f;
    const float s =
        zoom_ * std::min(fit_px_per_m(ra, part, label_px), fit_px_per_m(rb, part, label_px));
    for (const Shown of : {Shown::today, Shown::remedy}) {
        const section::Rect& r = of == Shown::today ? ra : rb;
        const Box own = half(box, of, side_by_side);
        const ImVec2 origin{own.centre().x + pan_.x - static_cast<float>(r.x0_m + r.x1_m) * s / 2,
                            own.centre().y + pan_.y + static_cast<float>(r.y0_m + r.y1_m) * s / 2};
        const float opacity = side_by_side ? 1 : of == Shown::remedy ? fade_ : 1;
        prepare(session, of, {origin, s, false, false}, opacity);
    }
}

/// Wheel, pinch, drag and tap in the picture.
void Slice::navigate(Ui& ui, Box box) {
    const ImGuiIO& io = ImGui::GetIO();
    if (ui.blocked) return;
    const bool over = box.contains(io.MousePos);
    ImVec2 focus = io.MousePos;
    float octaves = over ? io.MouseWheel * 0.25f : 0;
    if (ui.platform.pinching || (over && ui.platform.wheel_zoom != 0)) {
        octaves += ui.platform.wheel_zoom;
        if (ui.platform.pinching) focus = ui.platform.pinch_centre;
        pan_ = {pan_.x + ui.platform.pinch_pan.x, pan_.y + ui.platform.pinch_pan.y};
        ui.gesture.grip = Grip::picture;
    }
    if (octaves != 0 && box.contains(focus)) {
        const float before = zoom_;
        zoom_ = std::clamp(zoom_ * std::exp2(octaves), least_zoom, most_zoom);
        const float k = zoom_ / before;
        const ImVec2 from{focus.x - box.centre().x - pan_.x, focus.y - box.centre().y - pan_.y};
        pan_ = {pan_.x - from.x * (k - 1), pan_.y - from.y * (k - 1)};
    }
    if (zoom_ <= least_zoom * 1.001f) pan_ = {0, 0};
    const bool mine =
        ui.gesture.down && box.contains(ui.gesture.start) && !ImGui::IsAnyItemActive();
    const float moved =
        std::hypot(io.MousePos.x - ui.gesture.start.x, io.MousePos.y - ui.gesture.start.y);
    if (mine && ui.gesture.grip == Grip::undecided && moved > tap_px)
        ui.gesture.grip = Grip::picture;
    if (mine && ui.gesture.grip == Grip::picture && !ui.platform.pinching && zoom_ > least_zoom)
        pan_ = {pan_.x + io.MouseDelta.x, pan_.y + io.MouseDelta.y};
    const float room_x = box.w * zoom_ / 2, room_y = box.h * zoom_ / 2;
    pan_ = {std::clamp(pan_.x, -room_x, room_x), std::clamp(pan_.y, -room_y, room_y)};
}

/// Paper, and in the plan the outdoor air above the glass and the room below it.
void Slice::draw_air(Ui& ui, Box box) {
    fill(ui, box, ui.theme.paper);
    if (!plan() || !drawn_[0]) return;
    const auto& xs = drawn_[0]->solved->cut.glass_face_x_m;
    const float split = drawn_[0]->placement.to_screen({xs.empty() ? 0 : xs.front(), 0}).y;
    fill(ui, {box.x, box.y, box.w, split - box.y}, ui.theme.outdoor_air);
    fill(ui, {box.x, split, box.w, box.bottom() - split}, ui.theme.indoor_air);
}

/// Outdoors to the left of the glass and the room to its right; at the meeting rail the upper glass
/// stands farther out.
void Slice::draw_cut_air(Ui& ui, const DrawnCut& cut, Box area) const {
    const opening::Cut& c = cut.solved->cut;
    const auto split = [&](Box part, double glass_m) {
        const float x = cut.placement.to_screen({glass_m, 0}).x;
        fill(ui, {part.x, part.y, x - part.x, part.h}, faded(ui.theme.outdoor_air, cut.opacity));
        fill(ui, {x, part.y, part.right() - x, part.h}, faded(ui.theme.indoor_air, cut.opacity));
    };
    const double lower_m = c.glass_face_x_m.empty() ? 0 : c.glass_face_x_m.front();
    if (position != opening::Position::meeting_rail) return split(area, lower_m);
    const double rail_m = (c.glass_edge_m + c.frame_back_m) / 2;
    const float y = std::clamp(cut.placement.to_screen({0, rail_m}).y, area.y, area.bottom());
    split({area.x, area.y, area.w, y - area.y}, c.upper_glass_m);
    split({area.x, y, area.w, area.bottom() - y}, lower_m);
}

void Slice::draw_cut(Ui& ui, const Session& session, Shown of, Box area) {
    const DrawnCut& cut = *drawn_[index(of)];
    if (!plan()) draw_cut_air(ui, cut, area);
    draw_surface_band(ui, cut);
    FieldPicture picture;
    picture.solved = cut.solved.get();
    picture.placement = cut.placement;
    picture.clip_min = area.min();
    picture.clip_max = area.max();
    picture.scale = cut.scale;
    picture.isotherm_step_c = ui.units == Units::us ? 5 / 1.8f : 2;
    picture.opacity = cut.opacity;
    picture.dark = ui.platform.dark;
    ui.platform.painter->paint(ui.list, picture);
    draw_outlines(ui, cut);
    draw_heat_lines(ui, cut);
    draw_covering(ui, cut, session.result(of).covering.spill_m_s);
    draw_wet(ui, cut);
    const double now = ui.platform.time_s;
    const bool moves = now < animate_until_s_ && films(ui.platform);
    const assess::LeakResult& leak = session.result(of).leak;
    const double phase_m = moves ? now * creep_m_s : 0;
    draw_leak(ui, cut, cut.solved->cut.leak_path, leak.shim_m3_s, phase_m);
    draw_leak(ui, cut, cut.solved->cut.sash_path, leak.sash_m3_s, phase_m);
    if (moves) ui.wishes.film = true;
}

void Slice::draw(Ui& ui, Session& session, Box box, bool wide, bool roomy) {
    ui.group = "picture";
    const bool both = session.has_remedy();
    if (!both) session.shown = Shown::today;
    const bool side_by_side = wide && both;
    if (seen_revision_ != session.revision()) {
        seen_revision_ = session.revision();
        animate_until_s_ = ui.platform.time_s + animate_s;
    }
    const float target = session.shown == Shown::remedy ? 1 : 0;
    const float step = ui.platform.reduced_motion ? 1 : fade_per_s * ImGui::GetIO().DeltaTime;
    fade_ += std::clamp(target - fade_, -step, step);
    if (fade_ != target) ui.wishes.another_frame = true;

    navigate(ui, box);
    const float foot = roomy ? legend_height_px + 8 : 0;
    place_cuts(session, {box.x, box.y, box.w, box.h - foot}, side_by_side);
    ImGui::PushClipRect(box.min(), box.max(), true);
    draw_air(ui, box);
    for (const Shown of : {Shown::today, Shown::remedy}) {
        const bool seen = side_by_side || plan() || (of == Shown::today ? fade_ < 1 : fade_ > 0);
        if (!drawn_[index(of)] || !seen || (of == Shown::remedy && !both)) continue;
        const Box area = half(box, of, side_by_side);
        ImGui::PushClipRect(area.min(), area.max(), true);
        draw_cut(ui, session, of, area);
        const bool labelled = side_by_side || plan() || session.shown == of;
        const bool first = of == Shown::today || !(side_by_side || plan());
        if (labelled)
            draw_labels(ui, session, of, area,
                        {roomy, plan() && both && !side_by_side, first && !roomy,
                         side_by_side ? foot : 0, foot});
        ImGui::PopClipRect();
        if (labelled) describe(ui, session, of, area);
    }
    if (side_by_side || (plan() && both))
        ui.list->AddLine({box.centre().x, box.y + 12},
                         {box.centre().x, box.bottom() - std::max(foot, 12.0f)}, ui.theme.rule);
    if (roomy && drawn_[0]) legend(ui, drawn_[0]->scale, box);
    draw_probe(ui, box);
    controls(ui, session, box, wide);
    ImGui::PopClipRect();
}

} // namespace shimlight::view
