// SPDX-License-Identifier: MIT
#include "view/room.hpp"

#include "assess/words.hpp"
#include "view/air_house.hpp"
#include "view/callout.hpp"
#include "view/pair.hpp"
#include "view/range_words.hpp"
#include "view/room_air.hpp"
#include "view/share_bar.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr double animate_s = 8; // air moves this long after a change, then rests
constexpr float decide_px = 6;  // sideways movement of a finger before the chair follows
constexpr float bar_px = 16, phone_bar_px = 11;
constexpr float head_px = 74;                            // bar with title and words
constexpr float paper_head_px = 48, paper_room_px = 246; // two rooms side by side on a sheet
constexpr float narrow_bar_px = 196, narrow_half_px = 420, list_row_px = 21;
constexpr double chair_m = 0.6; // behind the ankles
constexpr const char* seat_key = "room.seat_distance_m";

bool drafty(const physics::SeatResult& seat) {
    return seat.ankle_speed_m_s >= felt_m_s;
}

std::string part_id(const char* start, Shown of) {
    return std::string(start) + (of == Shown::today ? ".today" : ".remedy");
}

std::string no_draft_words(const Ui& ui, const physics::SeatResult& seat) {
    return assess::fill("No draft at the ankles here: {0}, slower than one feels. Who is still "
                        "bothered is cool all over.",
                        {format_speed(seat.ankle_speed_m_s, ui.units)});
}

std::string bothered(double pct) {
    return format_percent(pct / 100) + " bothered";
}

/// "ankles: 67 ft/min, 58 °F".
std::string air_words(const Ui& ui, const char* where, double m_s, double c) {
    return assess::fill("{0}: {1}, {2}",
                        {where, format_speed(m_s, ui.units), format_temperature(c, ui.units)});
}

std::string ankle_words(const Ui& ui, const physics::SeatResult& seat) {
    return air_words(ui, "ankles", seat.ankle_speed_m_s, seat.ankle_air_c);
}

std::string neck_words(const Ui& ui, const physics::SeatResult& seat) {
    return air_words(ui, "neck", seat.neck_speed_m_s, seat.neck_air_c);
}

std::string felt_words(const Ui& ui, const RoomScene& s) {
    const double felt_c = s.result->seat.operative_c;
    return assess::fill(
        "felt {0}; without window {1}",
        {format_tenths(felt_c, ui.units), format_tenths(felt_c + felt_loss_k(s), ui.units)});
}

const char* face_word(const RoomScene& s) {
    const opening::Covering covering = s.c.opening.covering;
    return !s.covered()                           ? "pane"
           : covering == opening::Covering::blind ? "blind"
           : covering == opening::Covering::shade ? "shade"
                                                  : "curtain";
}

/// The first sentence about this place; else how sure the method is at all.
std::string_view warning_sentence(const physics::SeatResult& seat) {
    std::string_view found;
    for (const std::string_view& w : seat.warnings) {
        if (w.find("(ISO") != w.npos || w.find("ASHRAE") != w.npos) continue; // of the formulas
        if (w.find("estimate") == w.npos) return w;
        found = w;
    }
    return found;
}

/// The card of a label of the picture.
const char* key_of(const std::string& id) {
    return id.find("room.ankles") == 0 ? "ankles"
           : id.find("room.neck") == 0 ? "neck"
                                       : "operative";
}

void cause_words(Ui& ui, const std::string& id, Box box, const char* title,
                 const std::string& words) {
    const Shown of = id.find(".today") != std::string::npos ? Shown::today : Shown::remedy;
    figure(ui, id, box, title, words, "draft_glass", of);
    figure_touch(ui, id, box, "draft_glass", of);
}

std::string warning_of(const opening::Case& c, const assess::Assessment& a, Units units) {
    return told_warning(warning_sentence(a.seat), c, a, units);
}

/// A dot at `at`, its leader, a bold value and a word below, left edge at `place`.
void two_lines(Ui& ui, ImVec2 at, ImVec2 place, Box area, const std::string& value,
               const std::string& word, const std::string& id, const std::string& name) {
    ImFont* bold = ui.platform.fonts.strong;
    ImFont* small = ui.platform.fonts.small;
    const float w = std::max(text_size(ui, bold, value).x, text_size(ui, small, word).x), h = 35;
    const Box box{std::clamp(place.x, area.x + 4, std::max(area.x + 4, area.right() - w - 4)),
                  std::clamp(place.y, area.y, area.bottom() - h), w, h};
    const ImVec2 end{at.x < box.x ? box.x - 3 : std::min(at.x, box.right() + 3),
                     std::clamp(at.y, box.y + 8, box.bottom() - 5)};
    draw_leader(ui, at, end);
    fill(ui, {box.x - 3, box.y - 1, w + 6, h + 1}, ui.theme.halo, 4);
    text(ui, bold, box.min(), ui.theme.ink, value);
    text(ui, small, {box.x, box.y + 18}, ui.theme.ink, word);
    const Shown of = id.find(".today") != std::string::npos ? Shown::today : Shown::remedy;
    figure(ui, id, box, name, value + ", " + word, key_of(id), of);
    const float taller = (touch_px - box.h) / 2;
    figure_touch(ui, id, {box.x, box.y - taller, box.w, touch_px}, key_of(id), of);
}

// A lower picture than these leaves a label out; its description has it all the same.
constexpr float air_from_px = 135, neck_from_px = 100, lowest_with_bar_px = 210;

void draw_names(Ui& ui, const RoomScene& s, Shown of, bool roomy) {
    ImFont* small = ui.platform.fonts.small;
    const std::string out = format_temperature(s.c.weather.outside_c, ui.units);
    const std::string in = "Room air " + format_temperature(s.c.room.air_c, ui.units);
    const ImVec2 wall = s.at(-s.wall_m, 0), ceiling = s.at(s.shown_m, s.c.room.height_m);
    const float y = ceiling.y + 4;
    const bool under = roomy && s.c.opening.sill_m * s.px_per_m > 46; // the leaks' lines
    constexpr float out_px = 35;                                      // two lines
    const float out_y = clear_of_lines(y - 2, s.foot.y - 2, out_px, leaks_outdoors(s, roomy),
                                       under ? s.foot.y - 38 : y);
    text(ui, small, {wall.x - 6, out_y}, ui.theme.ink, "Outdoors", Align::right);
    text(ui, ui.platform.fonts.strong, {wall.x - 6, out_y + 16}, ui.theme.ink, out, Align::right);
    figure(ui, part_id("room.outdoors", of), {wall.x - 62, out_y, 56, 34}, "Outdoors", out,
           "outside", of);
    if (s.area.h < air_from_px) return;
    const ImVec2 size = text_size(ui, small, in);
    fill(ui, {ceiling.x - 11 - size.x, y, size.x + 6, size.y + 2}, ui.theme.halo, 4);
    text(ui, small, {ceiling.x - 8, y}, ui.theme.ink, in, Align::right);
    figure(ui, part_id("room.air", of), {ceiling.x - 8 - size.x, y, size.x, size.y}, "Room air", in,
           "room", of);
}

void draw_distance(Ui& ui, const RoomScene& s, Shown of) {
    const ImVec2 a = s.foot, b = s.at(s.seat_m(), 0);
    const float y = a.y + 9;
    const ImU32 ink = ui.theme.soft;
    ui.list->AddLine({a.x, y}, {b.x, y}, ink, 1);
    for (const float x : {a.x, b.x})
        ui.list->AddLine({x, y - 5}, {x, y + 5}, ink, 1);
    const std::string words = format(Quantity::long_m, s.seat_m(), ui.units);
    const ImVec2 size = text_size(ui, ui.platform.fonts.strong, words);
    const Box box{b.x + 8, y - 8, size.x, size.y};
    text(ui, ui.platform.fonts.strong, box.min(), ui.theme.ink, words);
    if (!ui.paper)
        text(ui, ui.platform.fonts.small, {box.right() + 8, box.y + 1}, ui.theme.soft,
             "drag the chair");
    note(ui, Role::output, part_id("room.distance", of), box, "From the wall to the person", words);
}

/// Where a half is too narrow for callouts: the same numbers in rows below the picture.
void list_values(Ui& ui, const RoomScene& s, Shown of) {
    const auto& seat = s.result->seat;
    const Box& a = s.area;
    const auto row = [&](float y, const char* id, const char* name, ImVec2 dot,
                         const std::string& value, const std::string& word) {
        ImFont* bold = ui.platform.fonts.strong;
        const float w = text_size(ui, bold, value).x;
        draw_dot(ui, dot);
        text(ui, bold, {a.x, y}, ui.theme.ink, value);
        text_fitted(ui, ui.platform.fonts.small, {a.x + w + 8, y + 2}, a.w - w - 8, ui.theme.ink,
                    word);
        figure_touch(ui, part_id(id, of), {a.x, y - 1, a.w, list_row_px}, key_of(id), of);
        figure(ui, part_id(id, of), {a.x, y, a.w, 19}, name, value + ", " + word, key_of(id), of);
    };
    const float y = a.bottom() + 4;
    row(y, "room.ankles", "At the ankles", s.at(s.seat_m() + 0.03, ankle_m),
        bothered(seat.ankle_bare_pct), ankle_words(ui, seat));
    row(y + list_row_px, "room.neck", "At the neck", s.at(s.seat_m() + 0.46, neck_m),
        bothered(seat.draft_rate_neck_pct), neck_words(ui, seat));
    row(y + 2 * list_row_px, "room.pane", "What cools the air", s.at(s.face_m(), s.top_m() - 0.25),
        format_temperature(s.face_c(), ui.units) + " " + face_word(s), felt_words(ui, s));
}

void draw_values(Ui& ui, const RoomScene& s, Shown of, bool roomy) {
    const auto& seat = s.result->seat;
    const Box figure = s.figure();
    const float low = s.foot.y - (roomy ? 0.75f * s.px_per_m : 45.0f);
    std::string neck = neck_words(ui, seat), ankle = ankle_words(ui, seat);
    const auto fits = [&] {
        return figure.right() + text_size(ui, ui.platform.fonts.small, ankle).x + 14 <=
               s.area.right();
    };
    if (!fits()) { // the leader tells where it is
        neck.erase(0, neck.find(": ") + 2);
        ankle.erase(0, ankle.find(": ") + 2);
    }
    const bool right = fits();
    const float wide = text_size(ui, ui.platform.fonts.small, ankle).x + 14;
    const float x = right ? figure.right() + 10 : std::max(figure.x - wide, s.foot.x + 4);
    if (s.area.h >= neck_from_px)
        two_lines(ui, s.at(s.seat_m() + (right ? 0.5 : 0.42), neck_m),
                  {x, std::min(s.at(0, 1.35).y, low - 38)}, s.area,
                  bothered(seat.draft_rate_neck_pct), neck, part_id("room.neck", of),
                  "At the neck");
    two_lines(ui, s.at(s.seat_m() + (right ? 0.05 : -0.03), ankle_m), {x, low}, s.area,
              bothered(seat.ankle_bare_pct), ankle, part_id("room.ankles", of), "At the ankles");
    if (!roomy) return;
    const double high = std::min(s.top_m() - 0.02, s.c.room.height_m - 0.35);
    two_lines(ui, s.at(s.face_m(), s.top_m() - 0.25), {s.at(0.55, 0).x, s.at(0, high).y}, s.area,
              format_temperature(s.face_c(), ui.units) + " " + face_word(s), felt_words(ui, s),
              part_id("room.pane", of),
              s.covered() ? "Face of the covering" : "Inside face of the pane");
}

/// On paper: the same beside the picture.
void list_beside(Ui& ui, const RoomScene& s, Box place) {
    const auto& seat = s.result->seat;
    const auto say = [&](ImVec2 dot, const std::string& value, const std::string& words) {
        draw_dot(ui, dot);
        text(ui, ui.platform.fonts.strong, place.min(), ui.theme.ink, value);
        place.y += 18 + paragraph(ui, ui.platform.fonts.small, {place.x, place.y + 18}, place.w,
                                  ui.theme.ink, words);
        place.y += 5;
    };
    say(s.at(s.face_m(), s.top_m() - 0.25),
        format_temperature(s.face_c(), ui.units) + " " + face_word(s), felt_words(ui, s));
    say(s.at(s.seat_m() + 0.46, neck_m), bothered(seat.draft_rate_neck_pct), neck_words(ui, seat));
    say(s.at(s.seat_m() + 0.03, ankle_m), bothered(seat.ankle_bare_pct), ankle_words(ui, seat));
}

/// "Air comes in by the sash: 8.0 cfm."
std::string leak_words(const Ui& ui, Cause cause, double m3_s) {
    return assess::fill("Air {0} by the {1}: {2}. ", {way_word(m3_s), cause_word(cause),
                                                      format_flow(std::fabs(m3_s), ui.units)});
}

std::string described(const Ui& ui, const RoomScene& s) {
    const auto& seat = s.result->seat;
    const auto& leak = s.result->leak;
    return assess::fill(
        "Person {0} from the wall, room air {1}. Air falls along the {2} of {3} and leaves it at "
        "{4}. {5}, {6}; {7}, {8}. {9}",
        {format(Quantity::long_m, s.seat_m(), ui.units),
         format_temperature(s.c.room.air_c, ui.units), face_word(s),
         format_temperature(s.face_c(), ui.units),
         format_speed(seat.downdraft_speed_at_sill_m_s, ui.units), ankle_words(ui, seat),
         bothered(seat.ankle_bare_pct), neck_words(ui, seat), bothered(seat.draft_rate_neck_pct),
         assess::fill("{0} {1}{2}Beside the {3}: {4}. {5}",
                      {drafty(seat) ? "" : no_draft_words(ui, seat),
                       leak_words(ui, Cause::sash, leak.sash_m3_s),
                       leak_words(ui, Cause::shim, leak.shim_m3_s), face_word(s), felt_words(ui, s),
                       warning_of(s.c, *s.result, ui.units)})});
}

} // namespace

void draft_bar(Ui& ui, const physics::SeatResult& seat, const std::string& id, Box box,
               bool roomy) {
    const Fonts& fonts = ui.platform.fonts;
    const char* title = "Where the draft at the ankles comes from";
    const float title_px = !roomy || ui.paper ? 0 : 24; // on paper the caption tells it
    if (title_px > 0) text_fitted(ui, fonts.strong, box.min(), box.w, ui.theme.ink, title);
    if (!drafty(seat)) {
        const std::string words = no_draft_words(ui, seat);
        const std::string shown = roomy ? words : words.substr(0, words.find(". ") + 1);
        paragraph(ui, fonts.small, {box.x, box.y + title_px}, box.w, ui.theme.better, shown);
        return cause_words(ui, id, box, title, words);
    }
    const Box bar{box.x, box.y + (roomy ? title_px : 2), box.w, roomy ? bar_px : phone_bar_px};
    float x = bar.x, word_x = bar.x;
    const float word_y = bar.bottom() + (roomy ? 6 : 3);
    std::string words;
    const bool brief = !roomy || box.w < narrow_half_px;
    const float sample = brief ? 18 : 26;
    for (const Cause cause : causes) {
        const double share = share_of(seat.share, cause);
        const float w = bar.w * static_cast<float>(share);
        if (w > 1) cause_fill(ui, {x, bar.y, w - 1, bar.h}, cause);
        x += w;
        const std::string name = !brief                  ? cause_word(cause)
                                 : cause == Cause::glass ? "glass"
                                 : cause == Cause::sash  ? "sash"
                                                         : "shim";
        const std::string one = name + " " + format_percent(share);
        if (roomy) {
            stroke(ui, {{word_x, word_y + 9}, {word_x + sample, word_y + 9}}, cause_ink(ui, cause),
                   2.5f, cause_dash(cause),
                   -cause_dash(cause).on_px / 2); // a gap within the sample
            word_x += sample + 6;
        }
        text(ui, fonts.small, {word_x, word_y}, roomy ? ui.theme.ink : cause_ink(ui, cause), one);
        word_x += text_size(ui, fonts.small, one).x + (!roomy ? 7 : brief ? 10 : 18);
        words += (words.empty() ? "" : ", ") + std::string(cause_word(cause)) + " " +
                 format_percent(share);
    }
    cause_words(ui, id, box, title, words);
}

/// The figure as a slider: drag, arrow keys, or a number; true while it is held.
bool RoomView::seat(Ui& ui, Session& session, Shown of, const RoomScene& s) {
    const opening::Field& field = *opening::find_field(seat_key);
    Box box = s.figure();
    const float wider = std::max(touch_px - box.w, 0.0f), taller = std::max(touch_px - box.h, 0.0f);
    box = {box.x - wider / 2, box.y - taller, box.w + wider, box.h + taller};
    const std::string id = part_id("room.seat", of);
    const auto shown = [&](double si) { return to_display(field.quantity, si, ui.units); };
    MirrorNode node;
    node.id = id;
    node.role = Role::slider;
    node.name = of == Shown::today ? "Person on the chair, today" : "Person on the chair, remedy";
    node.help = "Distance from the wall with the window";
    node.value = format(field.quantity, s.seat_m(), ui.units);
    node.step = shown(step_si(field, ui.units));
    node.min = std::round(shown(field.min) / node.step) * node.step;
    node.max = std::round(shown(field.max) / node.step) * node.step;
    node.now = shown(s.seat_m());
    put_in_place(ui, node, box);
    const double step = node.step;
    ui.mirror.add(std::move(node));
    const Touch touch = touch_area(ui, id, box);
    focus_ring(ui, id, box);
    const float moved = ImGui::GetIO().MousePos.x - ui.gesture.start.x;
    if (touch.held && ui.gesture.grip == Grip::undecided &&
        std::fabs(moved) > (ui.platform.touch ? decide_px : 1)) {
        ui.gesture.grip = Grip::lever;
        dragged_ = true;
        seat_at_start_m_ = s.seat_m();
    }
    double wanted = s.seat_m();
    if (const auto number = ui.mirror.number(id))
        wanted = from_display(field.quantity, *number, ui.units);
    const bool held = touch.held && dragged_;
    if (held) {
        const double to = shown(seat_at_start_m_ + moved / s.px_per_m);
        wanted = from_display(field.quantity, std::round(to / step) * step, ui.units);
    }
    const double behind_m = (held ? s.shown_m : s.c.room.depth_m) - chair_m;
    wanted = std::clamp(wanted, field.min, std::clamp(behind_m, field.min, field.max));
    if (std::fabs(wanted - s.seat_m()) > 1e-9) {
        // A remedy that moves the seat moves it from where it is today.
        const double today = session.today().room.seat_distance_m + wanted - s.seat_m();
        session.move(field, today, Shown::today, held ? id : std::string());
        ui.wishes.another_frame = true;
    }
    return held || (touch.hovered && !ui.platform.touch);
}

void RoomView::draw_scene(Ui& ui, const RoomScene& s, bool roomy, bool held) {
    const double since = ui.platform.time_s - animate_from_s_;
    const bool moves = since < animate_s && films(ui.platform);
    const double time_s = moves ? since : 0;
    if (moves) ui.wishes.film = true;
    const ImVec2 outside = s.at(-s.wall_m, s.c.room.height_m);
    fill(ui, {s.area.x, outside.y, outside.x - s.area.x, s.foot.y - outside.y},
         ui.theme.outdoor_air);
    draw_wash(ui, s);
    draw_building(ui, s);
    draw_return(ui, s);
    draw_rays(ui, s, roomy);
    draw_figure(ui, s, held);
    draw_cold_air(ui, s, time_s);
    draw_leaks(ui, s, Cause::sash, time_s, roomy);
    draw_leaks(ui, s, Cause::shim, time_s, roomy);
}

void RoomView::draw_part(Ui& ui, Session& session, Shown of, Box box, bool roomy, float foot) {
    const float margin = roomy ? 16 : 6;
    Box area{box.x + margin, box.y + 2, box.w - 2 * margin, box.h - 4};
    const physics::SeatResult& result = session.result(of).seat;
    const std::string warning = warning_of(session.shown_case(of), session.result(of), ui.units);
    const float head = !roomy ? 0 : ui.paper ? paper_head_px : head_px;
    if (roomy)
        draft_bar(ui, result, part_id("room.causes", of), {area.x, area.y + 4, area.w, head - 10},
                  true);
    const bool narrow = roomy && area.w < narrow_half_px && !ui.paper;
    const float list = narrow ? 3 * list_row_px + 6 : 0;
    const Box beside{area.x + paper_room_px + 14, area.y + head, area.w - paper_room_px - 14, 0};
    area = {area.x, area.y + head, ui.paper ? paper_room_px : area.w, area.h - head - foot - list};
    const RoomScene scene = room_scene(session, of, area, roomy ? 76.0f : 62.0f, shown_m_);
    const bool held = seat(ui, session, of, scene);
    ImGui::PushClipRect(area.min(), area.max(), true);
    draw_scene(ui, scene, roomy, held);
    ImGui::PopClipRect();
    draw_names(ui, scene, of, roomy);
    draw_distance(ui, scene, of);
    if (ui.paper)
        list_beside(ui, scene, beside);
    else if (narrow)
        list_values(ui, scene, of);
    else
        draw_values(ui, scene, of, roomy);
    note(ui, Role::image, part_id("room.picture", of), area, "The room, " + shown_name(session, of),
         described(ui, scene));
    if (foot <= 0 || warning.empty()) return;
    paragraph(ui, ui.platform.fonts.small, {area.x, area.bottom() + list + 6}, area.w,
              ui.theme.soft, warning);
    note(ui, Role::output, part_id("room.warning", of),
         {area.x, area.bottom() + list + 6, area.w, foot - 8}, "How sure", warning);
}

void RoomView::draw(Ui& ui, Session& session, Box box, bool wide, bool roomy) {
    ui.group = "picture";
    if (seen_revision_ != session.revision()) {
        seen_revision_ = session.revision();
        animate_from_s_ = ui.platform.time_s;
    }
    const double far_m = std::max(session.today().room.seat_distance_m,
                                  session.shown_case(Shown::remedy).room.seat_distance_m);
    if (!ui.gesture.down) shown_m_ = std::max(roomy ? 2.4 : 4.4, far_m + 1.4);
    // With large text on a phone the bar has no room beside the switches; below them it has some
    // where the picture is high enough for both.
    const bool under = !roomy && box.w < 318;
    const float below = under && box.h >= lowest_with_bar_px ? 42 : 0;
    if (!roomy && (!under || below > 0)) {
        const Shown of = session.has_remedy() ? session.shown : Shown::today;
        draft_bar(ui, session.result(of).seat, part_id("room.causes", of),
                  {box.right() - narrow_bar_px - 8, box.y + 8 + below, narrow_bar_px, 34}, false);
    }
    Pair p = pair(ui, session, box, wide && roomy,
                  roomy || under ? box.right() : box.right() - narrow_bar_px - 4);
    p.whole.y += below;
    p.whole.h -= below;
    float foot = 0; // of both, so that they stand level
    for (const Shown of : {Shown::today, Shown::remedy})
        if (roomy)
            foot = std::max(
                foot,
                8 + paragraph(ui, ui.platform.fonts.small, {}, p.part(of).w - 32, 0,
                              warning_of(session.shown_case(of), session.result(of), ui.units),
                              false));
    for (const Shown of : {Shown::today, Shown::remedy})
        if (p.seen(of, session)) draw_part(ui, session, of, p.part(of), roomy, foot);
    if (dragged_ && !ui.gesture.down) {
        dragged_ = false;
        session.settle();
    }
}

} // namespace shimlight::view
