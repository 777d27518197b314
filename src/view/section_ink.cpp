// SPDX-License-Identifier: MIT
#include "view/section_ink.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using section::Point;

constexpr float band_px = 24;         // how far the band stands out at the coldest end of the scale
constexpr float drop_every_px = 13;   // distance between drops
constexpr float least_step_px = 1.5f; // between two points of a heat line or of the band
constexpr float dash_px = 7, dash_gap_px = 6;

ImU32 ink_of(Rgb c, float opacity) {
    return ImGui::ColorConvertFloat4ToU32({c.r, c.g, c.b, opacity});
}

/// Unit vector on the screen from the solid towards the air.
ImVec2 towards_air(const Placement& p, const section::SurfaceFace& face) {
    const double dx = face.to.x_m - face.from.x_m, dy = face.to.y_m - face.from.y_m;
    const double length = std::max(std::hypot(dx, dy), 1e-12);
    const Point mid{(face.from.x_m + face.to.x_m) / 2, (face.from.y_m + face.to.y_m) / 2};
    const ImVec2 a = p.to_screen(mid);
    const ImVec2 b = p.to_screen({mid.x_m + dy / length, mid.y_m - dx / length});
    const float l = std::max(std::hypot(b.x - a.x, b.y - a.y), 1e-6f);
    return {(b.x - a.x) / l, (b.y - a.y) / l};
}

float distance(ImVec2 a, ImVec2 b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

void drop(Ui& ui, ImVec2 at, float opacity) {
    const ImU32 water = faded(ui.theme.water, opacity);
    ui.list->AddCircleFilled({at.x, at.y + 2}, 3, water);
    ui.list->AddTriangleFilled({at.x - 2.6f, at.y + 1}, {at.x + 2.6f, at.y + 1}, {at.x, at.y - 5},
                               water);
}

/// Walks a polyline on the screen and calls `each(from, to)` for pieces of dash and gap.
template <class Each> void walk_dashes(const std::vector<ImVec2>& path, float phase, Each each) {
    const float period = dash_px + dash_gap_px;
    float at = -std::fmod(phase, period);
    float travelled = 0;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        const ImVec2 a = path[i], b = path[i + 1];
        const float length = distance(a, b);
        if (length <= 0) continue;
        const ImVec2 u{(b.x - a.x) / length, (b.y - a.y) / length};
        while (at < travelled + length) {
            const float s0 = std::max(at, travelled) - travelled;
            const float s1 = std::min(at + dash_px, travelled + length) - travelled;
            if (s1 > s0)
                each(ImVec2{a.x + u.x * s0, a.y + u.y * s0},
                     ImVec2{a.x + u.x * s1, a.y + u.y * s1});
            if (at + dash_px > travelled + length) break;
            at += period;
        }
        travelled += length;
    }
}

void arrow_head(Ui& ui, ImVec2 from, ImVec2 to, ImU32 colour) {
    const float length = std::max(std::hypot(to.x - from.x, to.y - from.y), 1e-3f);
    const ImVec2 u{(to.x - from.x) / length, (to.y - from.y) / length};
    ui.list->AddTriangleFilled({to.x + u.x * 7, to.y + u.y * 7}, {to.x - u.y * 5, to.y + u.x * 5},
                               {to.x + u.y * 5, to.y - u.x * 5}, colour);
}

/// Where the label of glass face k stands: leader from `at` on the face to `end`.
struct FaceLeader {
    ImVec2 at, end;
    bool to_left = false;
};

/// Upright cuts fan to the left and right; the plan fans up and down, labels towards its wall.
FaceLeader face_leader(const DrawnCut& cut, int k, int count, float row_px, float clear_px) {
    const opening::Cut& c = cut.solved->cut;
    const bool outer = k < count / 2;
    const int step = outer ? k : count - 1 - k;
    const bool turned = cut.placement.turned;
    const double px = 1.0 / cut.placement.px_per_m;
    const double along = turned ? 10 * (count / 2.0 - step) : clear_px + row_px * (step + 0.6);
    const double y =
        c.glass_centre_m - std::copysign(along * px, c.glass_centre_m - c.glass_edge_m);
    const double reach = (turned ? 12 + row_px * step : 34) * px;
    const auto& xs = c.glass_face_x_m;
    const double x_end = outer ? xs.front() - reach : xs.back() + reach;
    FaceLeader leader;
    leader.at = cut.placement.to_screen({xs[static_cast<std::size_t>(k)], y});
    leader.end = cut.placement.to_screen({x_end, y});
    leader.to_left = turned ? !cut.placement.mirrored : outer;
    return leader;
}

} // namespace

void draw_outlines(Ui& ui, const DrawnCut& cut) {
    const ImU32 ink = faded(ui.theme.outline, cut.opacity);
    for (const OutlineStroke& stroke : *cut.strokes) {
        const ImVec2 a = cut.placement.to_screen(stroke.from);
        const ImVec2 b = cut.placement.to_screen(stroke.to);
        ui.list->AddLine(a, b, ink, stroke.outer ? 1.6f : 0.8f);
    }
}

namespace {

/// One slat across the covering's plane, closed as far as slats go.
void draw_slats(Ui& ui, const DrawnCut& cut, const opening::CoveringStroke& c, ImU32 ink) {
    constexpr double slat_m = 0.025, half_across_m = 0.005, half_along_m = 0.0105; // 25 mm slats
    const double way = c.far_m > c.end_m ? 1 : -1;
    const double length_m = std::fabs(c.far_m - c.end_m);
    for (double s = slat_m / 2; s < length_m; s += slat_m) {
        const double y = c.end_m + way * s;
        ui.list->AddLine(cut.placement.to_screen({c.x_m - half_across_m, y + half_along_m}),
                         cut.placement.to_screen({c.x_m + half_across_m, y - half_along_m}), ink,
                         1.6f);
    }
}

/// Folds hang upright: the plan cuts through them, the other cuts run along one.
void draw_cloth(Ui& ui, const DrawnCut& cut, const opening::CoveringStroke& c, ImU32 ink) {
    const bool plan = cut.placement.turned;
    const double fold_m = plan ? 0.035 : 0.1, deep_m = plan ? 0.004 : 0.002, step_m = 0.0035;
    const double length_m = std::fabs(c.far_m - c.end_m);
    const int steps = std::max(2, static_cast<int>(length_m / step_m));
    std::vector<ImVec2> way;
    for (int i = 0; i <= steps; ++i) {
        const double y = c.end_m + (c.far_m - c.end_m) * i / steps;
        const double wave = std::sin(2 * 3.14159265 * length_m * i / steps / fold_m);
        way.push_back(cut.placement.to_screen({c.x_m + deep_m * wave, y}));
    }
    ui.list->AddPolyline(way.data(), static_cast<int>(way.size()), ink, 0, 2);
}

/// Out from behind the covering, through the slot below its hem, into the room.
void draw_spill(Ui& ui, const DrawnCut& cut, const opening::CoveringStroke& c, double spill_m_s) {
    constexpr double behind_m = 0.05, before_m = 0.035;
    const double down = c.far_m > c.end_m ? -1 : 1;
    const double slot_y = c.end_m + down * c.slot_m / 2, back_x = c.x_m - c.gap_m / 2;
    const ImVec2 way[] = {cut.placement.to_screen({back_x, c.end_m - down * behind_m}),
                          cut.placement.to_screen({back_x, slot_y}),
                          cut.placement.to_screen({c.x_m + before_m, slot_y})};
    const float width = std::clamp(1.5f + 8 * static_cast<float>(spill_m_s), 2.0f, 4.0f);
    ui.list->AddPolyline(way, 3, faded(ui.theme.card, 0.75f * cut.opacity), 0, width + 2.5f);
    const ImU32 air = faded(ui.theme.water, cut.opacity);
    ui.list->AddPolyline(way, 3, air, 0, width);
    arrow_head(ui, way[1], way[2], air);
}

/// The band before the inside surface: the colder, the farther it stands out. It goes from the
/// middle of a face to that of the next which is a step away on the screen.
class SurfaceBand {
  public:
    SurfaceBand(Ui& ui, const DrawnCut& cut)
        : list_(*ui.list), cut_(cut), edge_(faded(ui.theme.ink, 0.55f * cut.opacity)) {}

    void add(const section::SurfaceFace& face) {
        const ImVec2 n = towards_air(cut_.placement, face);
        const ImVec2 a = cut_.placement.to_screen(face.from), b = cut_.placement.to_screen(face.to);
        const bool turns = distance(n, towards_air_) > 0.1f || distance(a, to_) > least_step_px;
        if (turns) end();
        towards_air_ = n;
        c_ = face.temperature_c;
        to_ = b;
        const ImVec2 middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
        if (turns) place(a);
        if (distance(middle, placed_) > least_step_px) place(middle);
    }

    /// What has no neighbour farther on ends here.
    void end() {
        if (list_._Path.empty()) return;
        place(to_);
        list_.PathStroke(edge_, 0, 1);
    }

  private:
    void place(ImVec2 at) {
        const double span_k = std::max(cut_.room_c - cut_.scale.low_c, 1.0);
        const auto share = static_cast<float>(std::clamp((cut_.room_c - c_) / span_k, 0.0, 1.0));
        const float depth = share * band_px + 1.5f;
        const ImVec2 out{at.x + towards_air_.x * depth, at.y + towards_air_.y * depth};
        const ImVec2 piece[] = {placed_, at, out, out_};
        const ImU32 wash = ink_of(cut_.scale.colour(c_), 0.55f * cut_.opacity);
        if (!list_._Path.empty()) list_.AddConvexPolyFilled(piece, 4, wash);
        list_.PathLineTo(out);
        placed_ = at;
        out_ = out;
    }

    ImDrawList& list_;
    const DrawnCut& cut_;
    ImU32 edge_;
    ImVec2 towards_air_{0, 0}, to_{0, 0}, placed_{0, 0}, out_{0, 0};
    double c_ = 0; ///< of the face before
};

} // namespace

void draw_covering(Ui& ui, const DrawnCut& cut, double spill_m_s) {
    const opening::CoveringStroke& c = cut.solved->cut.covering;
    if (c.kind == opening::Covering::none) return;
    const ImU32 ink = faded(ui.theme.ink, 0.85f * cut.opacity); // it hangs in the room's air
    // The plan cuts a slat lengthwise.
    if (c.kind == opening::Covering::blind && !cut.placement.turned) {
        draw_slats(ui, cut, c, ink);
    } else if (c.kind == opening::Covering::curtain) {
        draw_cloth(ui, cut, c, ink);
    } else {
        ui.list->AddLine(cut.placement.to_screen({c.x_m, c.end_m}),
                         cut.placement.to_screen({c.x_m, c.far_m}), ink, 1.6f);
        if (c.hem) // its bar
            ui.list->AddCircleFilled(cut.placement.to_screen({c.x_m, c.end_m}), 3, ink);
    }
    if (c.hem && spill_m_s > 0) draw_spill(ui, cut, c, spill_m_s);
}

void draw_heat_lines(Ui& ui, const DrawnCut& cut) {
    if (!cut.heat) return;
    const ImU32 ink = faded(ui.theme.ink, 0.9f * cut.opacity);
    const ImU32 halo = faded(ui.theme.card, 0.75f * cut.opacity);
    std::vector<ImVec2> way;
    for (const section::FluxLine& line : *cut.heat) {
        way.clear();
        for (const Point& p : line.points) {
            const ImVec2 at = cut.placement.to_screen(p);
            const bool far = way.empty() || distance(at, way.back()) > least_step_px;
            if (far) way.push_back(at);
        }
        if (way.size() < 3) continue;
        const int count = static_cast<int>(way.size());
        ui.list->AddPolyline(way.data(), count, halo, 0, 3.5f);
        ui.list->AddPolyline(way.data(), count, ink, 0, 1.5f);
        const std::size_t middle = way.size() / 2;
        arrow_head(ui, way[middle - 1], way[middle], ink);
    }
}

void draw_surface_band(Ui& ui, const DrawnCut& cut) {
    const ImDrawListFlags soft = ui.list->Flags;
    ui.list->Flags &= ~ImDrawListFlags_AntiAliasedFill; // neighbours share their edges
    SurfaceBand band(ui, cut);
    for (const auto& face : cut.solved->field.faces)
        if (is_inside(*cut.solved, face)) band.add(face);
    band.end();
    ui.list->Flags = soft;
}

void draw_wet(Ui& ui, const DrawnCut& cut) {
    float since_drop = drop_every_px / 2;
    for (const auto& face : cut.solved->field.faces) {
        if (!is_inside(*cut.solved, face) || face.temperature_c >= cut.dew_point_c) continue;
        const ImVec2 n = towards_air(cut.placement, face);
        const ImVec2 a = cut.placement.to_screen(face.from), b = cut.placement.to_screen(face.to);
        const float length = distance(a, b);
        ui.list->AddLine({a.x + n.x * 1.5f, a.y + n.y * 1.5f}, {b.x + n.x * 1.5f, b.y + n.y * 1.5f},
                         faded(ui.theme.water, cut.opacity), 3);
        for (float s = drop_every_px - since_drop; s < length; s += drop_every_px)
            drop(ui,
                 {a.x + (b.x - a.x) * s / length + n.x * 5,
                  a.y + (b.y - a.y) * s / length + n.y * 5},
                 cut.opacity);
        since_drop = std::fmod(since_drop + length, drop_every_px);
    }
}

void draw_leak(Ui& ui, const DrawnCut& cut, const std::vector<Point>& way, double flow_m3_s,
               double phase_m) {
    constexpr double visible_m3_s = 1.5e-4; // less than 0.15 L/s is not drawn
    if (std::fabs(flow_m3_s) < visible_m3_s || way.size() < 2) return;
    std::vector<ImVec2> path;
    for (const Point& p : way)
        path.push_back(cut.placement.to_screen(p));
    if (flow_m3_s < 0) std::reverse(path.begin(), path.end());
    const float width = std::clamp(
        1.5f + 1.2f * static_cast<float>(std::sqrt(flow_m3_s * flow_m3_s) * 1e3), 2.0f, 5.0f);
    const ImU32 halo = faded(ui.theme.card, 0.75f * cut.opacity);
    const ImU32 air = faded(flow_m3_s > 0 ? ui.theme.water : ui.theme.lever, cut.opacity);
    const auto phase = -static_cast<float>(phase_m) * cut.placement.px_per_m;
    const float period = dash_px + dash_gap_px;
    walk_dashes(path, phase + period * 1e3f, [&](ImVec2 a, ImVec2 b) {
        ui.list->AddLine(a, b, halo, width + 2.5f);
        ui.list->AddLine(a, b, air, width);
    });
    arrow_head(ui, path[path.size() - 2], path.back(), air);
}

namespace {

/// Where the label of a face ends its leader, with its words.
struct FaceLabel {
    FaceLeader leader;
    std::string value, word;
    Box box;
};

FaceLabel face_label(const Ui& ui, const FaceLeader& leader, std::string value, std::string word) {
    const ImVec2 vs = text_size(ui, ui.platform.fonts.strong, value),
                 ws = text_size(ui, ui.platform.fonts.small, word);
    const float width = vs.x + 6 + ws.x;
    const Box box{leader.to_left ? leader.end.x - width - 3 : leader.end.x + 3,
                  leader.end.y - vs.y / 2, width, vs.y};
    return {leader, std::move(value), std::move(word), box};
}

} // namespace

void draw_glass_faces(Ui& ui, const DrawnCut& cut, const physics::GlazingResult& glass,
                      CalloutPlacer& placer, Box area, bool roomy, float clear_px) {
    const int count = static_cast<int>(cut.solved->cut.glass_face_x_m.size());
    std::vector<FaceLabel> labels;
    const float line_px = text_size(ui, ui.platform.fonts.strong, "0").y;
    const float row_px = std::max(roomy ? 21.0f : 18.0f, line_px + 2);
    const auto label = [&](int k, const char* face) {
        const double c = glass.faces_c[static_cast<std::size_t>(k)];
        return face_label(ui, face_leader(cut, k, count, row_px, clear_px),
                          format_temperature(c, ui.units),
                          face ? face + std::to_string(k + 1) : "");
    };
    for (const char* const face : {"face ", ""}) { // the number alone where the word has no room
        labels.clear();
        bool fits = true;
        for (int k = 0; k < count; ++k) {
            labels.push_back(label(k, face));
            // Nor does the word run into what another label points at.
            if (placer.on_dot(labels.back().box)) labels.back() = label(k, nullptr);
            const Box& box = labels.back().box;
            fits = fits && box.x >= area.x + 4 && box.right() <= area.right() - 4;
        }
        if (fits) break;
    }
    for (const FaceLabel& one : labels) {
        draw_leader(ui, one.leader.at, one.leader.end, cut.opacity);
        placer.reserve(Leader{one.leader.at, one.leader.end});
    }
    const ImU32 ink = faded(ui.theme.ink, cut.opacity);
    for (const FaceLabel& one : labels) {
        const Box& b = one.box;
        fill(ui, {b.x - 2, b.y, b.w + 4, b.h}, ui.theme.halo, 4);
        text(ui, ui.platform.fonts.strong, b.min(), ink, one.value);
        text(ui, ui.platform.fonts.small,
             {b.x + text_size(ui, ui.platform.fonts.strong, one.value).x + 6, b.y + 2},
             faded(ui.theme.soft, cut.opacity), one.word);
        placer.reserve(Box{b.x - 3, b.y - 1, b.w + 6, b.h + 2});
    }
}

} // namespace shimlight::view
