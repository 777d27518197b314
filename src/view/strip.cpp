// SPDX-License-Identifier: MIT
#include "view/strip.hpp"

#include "view/figure_text.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float brief_below_px = 324;
constexpr double told_s = 4; // what a lever did is told so long

/// One figure: what it is called, its two values, and which way is better.
struct Figure {
    const char* id;
    const char* key;     ///< of the figure that its card explains
    const char* brief;   ///< for a phone with large text
    std::string caption; ///< short, for the phone
    std::string full;    ///< whole, for wide screens and the mirror
    std::string today, remedy;
    std::string unit;       ///< when it is not part of the values
    int change = 0;         ///< 1 better, -1 worse, 0 no visible change
    std::string more = {};  ///< told where there is room
    std::string moved = {}; ///< what the last lever did to it: "+3 °F better"
    int way = 0;            ///< 1 better, -1 worse
    bool untold = false;    ///< a lesson asks for it, or it is not worked out yet
};

int judge(double today, double remedy, double visible, bool more_is_better) {
    const double gain = more_is_better ? remedy - today : today - remedy;
    return gain > visible ? 1 : gain < -visible ? -1 : 0;
}

std::string humidity(double max_rh) {
    return max_rh >= 1 ? "never" : format_percent(max_rh);
}

std::array<Figure, 5> figures(const Session& s, Units units) {
    const auto& a = s.today_result();
    const auto& b = s.remedy_result();
    const Trade trade = trade_of(s.house());
    const auto& fa = a.glass.faces_c;
    const std::size_t ia = 2 * opening::glazing_stack(s.today().opening).pane_count - 1;
    const std::size_t ib =
        2 * opening::glazing_stack((s.has_remedy() ? s.remedy() : s.today()).opening).pane_count -
        1;
    const double glass_a = fa[ia], glass_b = b.glass.faces_c[ib];
    std::array<Figure, 5> all = {{
        {"strip.glass", "glass_inside", "Glass", "Glass, inside", "Glass, inside face",
         format_temperature(glass_a, units), format_temperature(glass_b, units), "",
         judge(glass_a, glass_b, 0.25, true)},
        {"strip.ankles", "ankles", "Bothered", "People bothered", "Bothered at the ankles",
         format_percent(a.seat.ankle_bare_pct / 100), format_percent(b.seat.ankle_bare_pct / 100),
         "of people", judge(a.seat.ankle_bare_pct, b.seat.ankle_bare_pct, 0.5, false)},
        {"strip.rh", "wet_above", "Wet at RH", "Wet at humidity",
         "Glass wet above (indoor humidity)", humidity(a.max_rh), humidity(b.max_rh), "",
         judge(a.max_rh, b.max_rh, 0.005, true)},
        {"strip.u", "u_window", "U-factor", "U, whole window", "U-factor, whole window",
         format_u(a.u_window_w_m2k, units), format_u(b.u_window_w_m2k, units), u_unit(units),
         judge(a.u_window_w_m2k, b.u_window_w_m2k, 0.01, false)},
        {"strip.cost", "year_cost", "Lost a year", "Heat lost", "Heat lost, this opening",
         format_money(a.year_cost, trade), format_money(b.year_cost, trade), "a year",
         judge(a.year_cost, b.year_cost, 0.5, false)},
    }};
    all[4].more = ", " + format_percent(b.year_air_share) + " by air";
    for (Figure& f : all) {
        if (s.drafted() && !s.is_asked(f.key)) continue;
        f.today = f.remedy = s.drafted() ? "?" : "…";
        f.unit.clear();
        f.more.clear();
        f.change = 0;
        f.untold = true;
    }
    return all;
}

/// Tells for a while what the last lever did to each figure of the window that it moved.
void tell_moved(Ui& ui, const Session& s, Box box, std::array<Figure, 5>& all, StripMemory& m) {
    const Shown of = s.has_remedy() ? s.shown : Shown::today;
    const int whose = s.house().selected * 128 + s.record().chosen * 2 + (of == Shown::remedy);
    const bool fresh = m.whose != whose;
    const bool moved = m.revision != s.revision();
    if (moved && !fresh) {
        if (!ui.gesture.down || !m.dragging) std::copy_n(m.now, 5, m.before);
        m.changed_s = ui.platform.time_s;
    }
    if (fresh) m.changed_s = -told_s; // another window is no change of this one
    m.dragging = ui.gesture.down && (m.dragging || moved);
    m.revision = s.revision();
    m.whose = whose;
    constexpr double visible[] = {0.25, 0.5, 0.005, 0.01, 0.5};
    std::string words;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const assess::Figure& figure = *assess::find_figure(all[i].key);
        m.now[i] = figure.read(s.shown_case(of), s.result(of));
        if (fresh) m.before[i] = m.now[i];
        const double change = m.now[i] - m.before[i];
        all[i].way = judge(m.before[i], m.now[i], visible[i], i == 0 || i == 2);
        if (all[i].way == 0 || all[i].untold) continue;
        all[i].moved = (change > 0 ? "+" : "−") +
                       figure_difference(figure, change, ui.units, trade_of(s.house()));
        if (i == 3) all[i].moved.resize(all[i].moved.find(u_unit(ui.units)) - 3); // and thin space
        all[i].moved += all[i].way > 0 ? " better" : " worse";
        words += (words.empty() ? "" : "; ") + all[i].full + " " + all[i].moved;
    }
    const bool told = !fresh && ui.platform.time_s - m.changed_s < told_s;
    if (told && !ui.platform.reduced_motion) ui.wishes.another_frame = true; // until it is gone
    if (told && !words.empty())
        return note(ui, Role::status, "strip.moved", box, "The lever", words);
    for (Figure& f : all)
        f.moved.clear();
}

} // namespace

void mark(Ui& ui, ImVec2 at, int change) {
    if (change == 0) return;
    const ImU32 ink = change > 0 ? ui.theme.better : ui.theme.worse;
    if (change > 0) {
        ui.list->AddLine({at.x, at.y + 5}, {at.x + 4, at.y + 9}, ink, 2);
        ui.list->AddLine({at.x + 4, at.y + 9}, {at.x + 11, at.y}, ink, 2);
    } else {
        ui.list->AddLine({at.x, at.y}, {at.x + 9, at.y + 9}, ink, 2);
        ui.list->AddLine({at.x + 9, at.y}, {at.x, at.y + 9}, ink, 2);
    }
}

namespace {

ImU32 change_ink(const Theme& t, int change) {
    return change > 0 ? t.better : change < 0 ? t.worse : t.ink;
}

/// `both`: a remedy is chosen; the finger opens its card, keys and screen readers either one's.
void register_figure(Ui& ui, const Figure& f, Box box, bool both) {
    if (f.untold)
        return note(ui, Role::output, f.id, box, f.full,
                    f.today == "?" ? "asked for" : "not worked out yet");
    const std::string unit = f.unit.empty() ? "" : " " + f.unit;
    const Box upper{box.x, box.y, box.w, box.h / 2},
        lower{box.x, box.y + box.h / 2, box.w, box.h / 2};
    figure(ui, std::string(f.id) + ".today", upper, f.full + ", today", f.today + unit, f.key,
           Shown::today);
    const char* words = f.change > 0 ? ", better" : f.change < 0 ? ", worse" : "";
    figure(ui, std::string(f.id) + ".remedy", lower, f.full + ", with the remedy",
           f.remedy + unit + f.more + words, f.key, both ? Shown::remedy : Shown::today);
    const Box touch{box.x, box.y - 1, box.w - 4, std::max(box.h, touch_px)};
    figure_touch(ui, f.id, touch, f.key, both ? Shown::remedy : Shown::today);
}

/// What the figure is called, or for a while what the lever did to it.
void caption(Ui& ui, const Figure& f, Box box, const std::string& name) {
    if (f.moved.empty())
        return text_fitted(ui, ui.platform.fonts.small, {box.x, box.y}, box.w, ui.theme.soft, name);
    const std::string both = std::string(f.brief) + " " + f.moved;
    const bool fits = text_size(ui, ui.platform.fonts.small, both).x <= box.w;
    text_fitted(ui, ui.platform.fonts.small, {box.x, box.y}, box.w, change_ink(ui.theme, f.way),
                fits ? both : f.moved);
}

/// Wide: caption, Today, Remedy under one another.
void stacked(Ui& ui, const Figure& f, Box box, bool both) {
    const Fonts& fonts = ui.platform.fonts;
    const Theme& t = ui.theme;
    const float room = box.w - 16;
    const bool fits = text_size(ui, fonts.small, f.full).x <= room;
    caption(ui, f, {box.x, box.y + 4, room, 0}, fits ? f.full : f.caption);
    const std::string unit = f.unit.empty() ? "" : " " + f.unit;
    text(ui, both ? fonts.body : fonts.figure, {box.x, box.y + 23}, both ? t.soft : t.ink, f.today);
    if (!both) return;
    text(ui, fonts.figure, {box.x, box.y + 42}, change_ink(t, f.change), f.remedy);
    const float used = text_size(ui, fonts.figure, f.remedy).x;
    mark(ui, {box.x + used + 7, box.y + 49}, f.change);
    const float room_px = box.w - used - 28;
    const bool all_fits = text_size(ui, fonts.small, unit + f.more).x <= room_px;
    text_fitted(ui, fonts.small, {box.x + used + 24, box.y + 48}, room_px, t.soft,
                all_fits ? unit + f.more : unit);
}

/// Phone: caption above, "Today → Remedy" on one line.
void inline_pair(Ui& ui, const Figure& f, Box box, bool both, bool brief) {
    const Fonts& fonts = ui.platform.fonts;
    const Theme& t = ui.theme;
    caption(ui, f, {box.x, box.y + 2, box.w - 6, 0}, brief ? f.brief : f.caption);
    float x = box.x;
    const std::string& result = both ? f.remedy : f.today;
    // The short captions say "a year" and "people" themselves.
    const bool said = f.unit == "of people" || (brief && f.unit == "a year");
    const std::string unit = said ? "" : f.unit;
    const float least = text_size(ui, fonts.strong, result).x + (f.change != 0 ? 21.0f : 5.0f) +
                        text_size(ui, fonts.small, unit).x;
    // Where both do not fit, Today's is told by the card and by the other screens.
    if (both && least + text_size(ui, fonts.small, f.today).x + 22 <= box.w) {
        text(ui, fonts.small, {x, box.y + 22}, t.soft, f.today);
        x += text_size(ui, fonts.small, f.today).x + 4;
        text(ui, fonts.small, {x, box.y + 22}, t.soft, "→");
        x += 18;
    }
    text(ui, fonts.strong, {x, box.y + 20}, both ? change_ink(t, f.change) : t.ink, result);
    x += text_size(ui, fonts.strong, result).x + 5;
    if (both) mark(ui, {x, box.y + 25}, f.change);
    if (both && f.change != 0) x += 16;
    text_fitted(ui, fonts.small, {x, box.y + 22}, box.right() - x, t.soft, unit);
}

} // namespace

void strip(Ui& ui, const Session& session, Box box, bool roomy, StripMemory& memory) {
    ui.group = "results";
    auto all = figures(session, ui.units);
    tell_moved(ui, session, box, all, memory);
    const bool both = session.has_remedy();
    const Theme& t = ui.theme;
    ui.list->AddLine({box.x, box.y}, {box.right(), box.y}, t.rule);
    for (std::size_t i = 0; i < all.size(); ++i) {
        Box cell;
        if (roomy) {
            const float w = box.w / 5;
            cell = {box.x + w * static_cast<float>(i), box.y + 2, w, box.h - 2};
            if (i > 0)
                ui.list->AddLine({cell.x - 8, cell.y + 8}, {cell.x - 8, cell.bottom() - 8}, t.rule);
            stacked(ui, all[i], cell, both);
        } else {
            const bool upper = i < 3, brief = box.w < brief_below_px;
            const float u_share = brief ? 0.66f : 0.56f;
            const float third = box.w / 3;
            const float x = upper    ? box.x + third * static_cast<float>(i)
                            : i == 3 ? box.x
                                     : box.x + box.w * u_share;
            cell = {x, box.y + (upper ? 2.0f : 46.0f),
                    upper ? third : box.w * (i == 3 ? u_share - 0.01f : 1 - u_share), 42};
            inline_pair(ui, all[i], cell, both, brief);
        }
        register_figure(ui, all[i], cell, both);
    }
}

} // namespace shimlight::view
