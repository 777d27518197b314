// SPDX-License-Identifier: MIT
// What is written on the Slice: callouts, the reading under the finger, controls, words for the
// mirror.
#include "assess/surfaces.hpp"
#include "opening/crack_stream.hpp"
#include "view/legend.hpp"
#include "view/pair.hpp"
#include "view/slice.hpp"
#include "view/solid_map.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using opening::Part;
using opening::Position;

constexpr float arrow_px = 10; // room for the arrow where the joint's air ends its way
constexpr float tap_px = 8;    // less movement than this is a tap
constexpr float chips_px = 50; // switches lie over the picture
// On a narrower picture the switch has no room; it stands on the House page too.
constexpr float heat_switch_from_px = 600, heat_switch_wide_from_px = 860, heat_switch_px = 96;

constexpr float cut_list_below_px = 318; // narrower: one list in place of four buttons
constexpr Position cuts[] = {Position::head, Position::jamb, Position::sill,
                             Position::meeting_rail};

bool has_heat_switch(Box box, bool wide) {
    return box.w >= (wide ? heat_switch_wide_from_px : heat_switch_from_px);
}

const char* position_word(Position p) {
    switch (p) {
    case Position::head:
        return "Head";
    case Position::jamb:
        return "Jamb";
    case Position::meeting_rail:
        return "Rail";
    default:
        return "Sill";
    }
}

const char* position_spoken(Position p) {
    switch (p) {
    case Position::head:
        return "head";
    case Position::jamb:
        return "jamb";
    case Position::meeting_rail:
        return "meeting rail";
    default:
        return "sill";
    }
}

void air_label(Ui& ui, CalloutPlacer& placer, const std::string& words, ImVec2 at, Align align) {
    ImFont* font = ui.platform.fonts.small;
    const ImVec2 size = text_size(ui, font, words);
    const Box around{at.x - (align == Align::right ? size.x : 0) - 6, at.y - 3, size.x + 12,
                     size.y + 8};
    const auto& ways = placer.ground().ways;
    if (std::any_of(ways.begin(), ways.end(), [&](const Leader& w) { return through(w, around); }))
        fill(ui, around.shrunk(2), ui.theme.halo, 4); // a curtain hangs there
    text(ui, font, at, ui.theme.soft, words, align);
    placer.reserve(around);
}

/// In the plan the two halves share one outdoors and one room.
void air_labels(Ui& ui, const Session& session, CalloutPlacer& placer, bool plan, Shown of,
                float top, float bottom) {
    const Box& area = placer.ground().area;
    const opening::Case c = session.today();
    const std::string out = "outdoors " + format_temperature(c.weather.outside_c, ui.units);
    const std::string in = "room " + format_temperature(c.room.air_c, ui.units);
    if (plan) {
        if (of == Shown::today) air_label(ui, placer, out, {area.x + 10, top}, Align::left);
        if (of == Shown::remedy)
            air_label(ui, placer, in, {area.right() - 10, bottom}, Align::right);
    } else {
        air_label(ui, placer, out, {area.x + 10, bottom}, Align::left);
        air_label(ui, placer, in, {area.right() - 10, bottom}, Align::right);
    }
}

std::string material_at(const assess::SolvedCut& s, int cell) {
    const auto region = static_cast<std::size_t>(s.field.region[static_cast<std::size_t>(cell)]);
    return region < s.cut.pieces.size() ? std::string(s.cut.pieces[region].name) : std::string();
}

std::string callout_id(Shown of, const char* what) {
    return std::string(of == Shown::today ? "slice.today." : "slice.remedy.") + what;
}

/// The figure that explains the coldest place of a part, over all cuts.
const char* part_key(Part part) {
    switch (part) {
    case Part::casing:
        return "part.casing";
    case Part::frame:
        return "part.frame";
    case Part::wall:
        return "part.wall";
    default:
        return "part.glass_edge";
    }
}

/// How cold the creeping air comes in, or how warm it goes out.
void add_streams(const Ui& ui, const DrawnCut& cut, Shown of, CalloutPlacer& placer) {
    const auto& streams = cut.solved->cut.painting.streams;
    for (std::size_t s = 0; s < streams.size(); ++s) {
        const bool joint = streams[s].name == opening::joint_stream_name;
        const auto& way = joint ? cut.solved->cut.leak_path : cut.solved->cut.sash_path;
        const bool comes_in = streams[s].inlet_c < cut.room_c;
        const ImVec2 end = cut.placement.to_screen(comes_in ? way.back() : way.front());
        std::vector<ImVec2> drawn;
        for (const section::Point& p : way)
            drawn.push_back(cut.placement.to_screen(p));
        placer.avoid(drawn);
        placer.reserve(Box{end.x - arrow_px, end.y - arrow_px, 2 * arrow_px, 2 * arrow_px});
        placer.add({end, format_temperature(cut.solved->field.streams[s].outlet_c, ui.units),
                    comes_in ? "air in" : "air out", ui.theme.water,
                    joint ? "shim_air" : "sash_air", callout_id(of, joint ? "joint" : "sash"), of});
    }
}

/// The line of the dew point where no other callout points at, so that one dot has one temperature.
void add_dew_point(const Ui& ui, const DrawnCut& cut, Shown of, CalloutPlacer& placer, bool roomy) {
    const Box& area = placer.ground().area;
    const Box seen{area.x, area.y + chips_px, area.w, area.h - chips_px};
    for (const DewMark& mark : dew_marks(*cut.solved, cut.dew_point_c)) {
        const ImVec2 at = cut.placement.to_screen(mark.at);
        if (!seen.contains(at) || placer.has_dot(at)) continue;
        return placer.add({at, format_temperature(cut.dew_point_c, ui.units),
                           roomy && mark.on_surface ? "dew point, wet where colder" : "dew point",
                           ui.theme.water, "dew_point", callout_id(of, "dew"), of});
    }
}

} // namespace

void Slice::add_callouts(const Ui& ui, Shown of, CalloutPlacer& placer, bool roomy) const {
    const DrawnCut& cut = *drawn_[of == Shown::today ? 0 : 1];
    add_streams(ui, cut, of, placer);
    for (const Part part : {Part::casing, Part::glass_edge, Part::frame, Part::wall}) {
        if (!roomy && part == Part::wall) continue;
        const auto cold = assess::coldest_of_part(*cut.solved, part);
        if (!cold) continue;
        const bool wet = cold->c < cut.dew_point_c;
        placer.add({cut.placement.to_screen(cold->at), format_temperature(cold->c, ui.units),
                    std::string(part_word(part)) + (wet ? ", wet" : ""), wet ? ui.theme.water : 0,
                    part_key(part), callout_id(of, part_word(part)), of});
    }
    add_dew_point(ui, cut, of, placer, roomy);
    const opening::CoveringStroke& covering = cut.solved->cut.covering;
    if (covering.kind != opening::Covering::none)
        placer.avoid({cut.placement.to_screen({covering.x_m, covering.end_m}),
                      cut.placement.to_screen({covering.x_m, covering.far_m})});
}

void Slice::draw_labels(Ui& ui, const Session& session, Shown of, Box area, Written how) {
    const DrawnCut& cut = *drawn_[of == Shown::today ? 0 : 1];
    CalloutPlacer placer(area, SolidMap(cut.solved->field, cut.placement, area));
    placer.reserve(Box{area.x, area.y, area.w, chips_px}); // and switches
    if (how.foot_px > 0)
        placer.reserve(Box{area.x, area.bottom() - how.foot_px, area.w, how.foot_px});
    float top = area.y + chips_px - 2;
    if (how.headed) {
        const std::string name = of == Shown::today ? "Today" : session.remedy_name();
        ImFont* font = ui.platform.fonts.strong;
        text_fitted(ui, font, {area.x + 10, top}, area.w - 20, ui.theme.ink, name);
        const Box box{area.x + 10, top, std::min(text_size(ui, font, name).x, area.w - 20), 20};
        note(ui, Role::heading, callout_id(of, "name"), box, name, "2");
        placer.reserve(box);
        top = box.bottom();
    }
    add_callouts(ui, of, placer, how.roomy);
    const float airs_y = area.bottom() - 20 - how.airs_px;
    air_labels(ui, session, placer, plan(), of, top, airs_y);
    // How much of the glass's far end lies under the chips or beside the airs' names.
    const float end = cut.placement.to_screen({0, cut.solved->cut.glass_centre_m}).y;
    const float clear = position == Position::sill
                            ? std::max(0.0f, area.y + 54 - end)
                            : std::max(0.0f, end - std::min(airs_y, area.bottom() - 26));
    draw_glass_faces(ui, cut, session.result(of).glass, placer, area, how.roomy,
                     plan() ? 0 : clear);
    if (how.legend) small_legend(ui, cut.scale, placer);
    // While a lever moves the labels stay; once all is known they stand as they would from the
    // start.
    const bool known = session.today_result().complete && session.remedy_result().complete;
    placer.draw(ui, cut.solved, placed_[of == Shown::today ? 0 : 1],
                known ? Placing::afresh : Placing::keeping);
    placer.listen(ui);
}

void Slice::draw_probe(Ui& ui, Box box) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool inside = box.contains(io.MousePos) && !ui.blocked;
    const bool tapped =
        inside && io.MouseReleased[0] && ui.gesture.grip == Grip::undecided &&
        std::hypot(io.MousePos.x - ui.gesture.start.x, io.MousePos.y - ui.gesture.start.y) < tap_px;
    const bool hovering = inside && !ui.platform.touch && !io.MouseDown[0];
    if (tapped || hovering) {
        probe_.reset();
        for (const Shown of : {Shown::remedy, Shown::today}) {
            const auto& cut = drawn_[of == Shown::today ? 0 : 1];
            if (!cut || cut->opacity < 0.5f) continue;
            const section::Point p = cut->placement.to_section(io.MousePos);
            if (!probe_ && solid_at(cut->solved->field, p)) probe_ = Probe{p, of};
        }
    }
    if (!inside && !ui.platform.touch) probe_.reset();
    if (!probe_) return;
    const auto& cut = drawn_[probe_->on == Shown::today ? 0 : 1];
    const int cell = cut ? cell_at(cut->solved->field, probe_->at) : -1;
    if (cell < 0) return;
    const ImVec2 at = cut->placement.to_screen(probe_->at);
    const double c = cut->solved->field.probe_c(probe_->at);
    const std::string value = format_temperature(c, ui.units);
    const std::string word = material_at(*cut->solved, cell);
    const float width = std::max(text_size(ui, ui.platform.fonts.figure, value).x,
                                 text_size(ui, ui.platform.fonts.small, word).x) +
                        20;
    const float x = std::clamp(at.x + 16, box.x + 4, box.right() - width - 4);
    const float y = std::clamp(at.y - 62, box.y + 4, box.bottom() - 56);
    ui.list->AddCircle(at, 6, ui.theme.card, 0, 3);
    ui.list->AddCircle(at, 6, ui.theme.ink, 0, 1.5f);
    fill(ui, {x, y, width, 50}, ui.theme.card, 8);
    frame(ui, {x, y, width, 50}, ui.theme.rule, 8);
    text(ui, ui.platform.fonts.figure, {x + 10, y + 4}, ui.theme.ink, value);
    text(ui, ui.platform.fonts.small, {x + 10, y + 29}, ui.theme.soft, word);
    note(ui, Role::output, "slice.probe", {x, y, width, 50}, "Reading in the picture",
         value + ", " + word);
}

/// Today and the Remedy on the left, the cuts on the right; on a phone all a little narrower.
void Slice::controls(Ui& ui, Session& session, Box box, bool wide) {
    if (box.w < cut_list_below_px) {
        const float list_px = 90, list_x = box.right() - list_px - 8;
        choose_shown(ui, session, box, wide, list_x);
        const int now = static_cast<int>(std::find(std::begin(cuts), std::end(cuts), position) -
                                         std::begin(cuts));
        const int chosen = choice(ui, "cut.list", {list_x, box.y + 2, list_px, touch_px}, "Cut",
                                  {"Head", "Jamb", "Sill", "Rail"}, now);
        if (chosen < 0 || chosen == now || chosen > 3) return;
        position = cuts[chosen];
        ui.wishes.another_frame = true;
        return reset_look();
    }
    const float word_px = text_size(ui, ui.platform.fonts.strong, "Jamb").x + 12;
    const float each = std::max(wide ? 50.0f : 46.0f, word_px), gap = 2, side = wide ? 12 : 8;
    const float y = box.y + 2;
    float x = box.right() - side - 4 * (each + gap);
    const float switch_px = has_heat_switch(box, wide) ? heat_switch_px + 12 : 0;
    choose_shown(ui, session, box, wide, x - switch_px);
    ButtonStyle cut_style;
    cut_style.compact = true;
    cut_style.role = Role::toggle;
    const float cuts_x = x;
    for (const Position p : cuts) {
        cut_style.on = position == p;
        cut_style.spoken = std::string("Cut at the ") + position_spoken(p);
        if (button(ui, std::string("cut.") + position_word(p), {x, y, each, touch_px},
                   position_word(p), cut_style)) {
            position = p;
            reset_look();
        }
        x += each + gap;
    }
    if (has_heat_switch(box, wide)) {
        x = cuts_x - heat_switch_px - 12;
        cut_style.on = session.heat_lines;
        cut_style.spoken.clear();
        cut_style.help = "Draws the ways of the heat, each line the same heat";
        if (button(ui, "picture.heat", {x, y, heat_switch_px, touch_px}, "Heat lines", cut_style))
            session.heat_lines = !session.heat_lines;
    }
    if (zoom_ <= 1.001f) return;
    ButtonStyle fit;
    fit.compact = true;
    if (button(ui, "picture.fit", {box.right() - 96, box.bottom() - touch_px - 2, 84, touch_px},
               "Whole cut", fit))
        reset_look();
}

void Slice::describe(Ui& ui, const Session& session, Shown of, Box box) {
    const DrawnCut& cut = *drawn_[of == Shown::today ? 0 : 1];
    const assess::Assessment& result = session.result(of);
    std::string words = std::string("Cut at the ") + position_spoken(position) + ", " +
                        (of == Shown::today ? std::string("today") : session.remedy_name()) + ". ";
    const std::size_t count = cut.solved->cut.glass_face_x_m.size();
    for (std::size_t k = 0; k < count; ++k)
        words += "Glass face " + std::to_string(k + 1) + ": " +
                 format_temperature(result.glass.faces_c[k], ui.units) + ". ";
    for (const Part part : {Part::glass_edge, Part::frame, Part::casing, Part::wall})
        if (const auto cold = assess::coldest_of_part(*cut.solved, part))
            words += std::string("Coldest ") + part_word(part) + ": " +
                     format_temperature(cold->c, ui.units) +
                     (cold->c < cut.dew_point_c ? ", wet. " : ". ");
    for (std::size_t s = 0; s < cut.solved->field.streams.size(); ++s)
        words += "Air creeping by the " + cut.solved->cut.painting.streams[s].name +
                 " ends its way at " +
                 format_temperature(cut.solved->field.streams[s].outlet_c, ui.units) + ". ";
    words += "Dew point of the room air: " + format_temperature(cut.dew_point_c, ui.units) + ".";
    note(ui, Role::image, of == Shown::today ? "slice.today" : "slice.remedy", box,
         of == Shown::today ? "Picture of today" : "Picture of the remedy", words);
}

} // namespace shimlight::view
