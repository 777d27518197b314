// SPDX-License-Identifier: MIT
#include "view/air.hpp"

#include "assess/leak.hpp"
#include "assess/quick_seat.hpp"
#include "assess/words.hpp"
#include "opening/remedy.hpp"
#include "view/adding_up.hpp"
#include "view/air_house.hpp"
#include "view/column.hpp"
#include "view/pair.hpp"
#include "view/pen.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr double most_wind_m_s = 12;
constexpr int wind_steps = 16, height_steps = 32;
constexpr double most_height_m = 8; // limits of the lever
constexpr float chart_px = 222, bar_px = 14, bar_row_px = 44;
constexpr float two_columns_px = 640, between_px = 28;
constexpr double little = 0.15; // of the glass's speed

std::string part_id(const char* start, Shown of) {
    return std::string(start) + (of == Shown::today ? ".today" : ".remedy");
}

/// `shown` of `pa`, rounded beside its sum.
std::string pressing(double pa, double shown) {
    return assess::fill("{0} {1}",
                        {format_pascal(std::fabs(shown)), pa < 0 ? "outwards" : "inwards"});
}

constexpr double shown_digit = 0.1; // of flows and pressures

/// Sash and shim space, as they are shown beside their sum.
std::array<double, 2> shown_flows(double sash_m3_s, double shim_m3_s, Units units) {
    const double unit = flow_display(1, units);
    const auto parts = adding_up({sash_m3_s * unit, shim_m3_s * unit}, shown_digit);
    return {parts[0] / unit, parts[1] / unit};
}

/// "8.0 cfm comes in at 18 °F"; `shown` of `m3_s`.
std::string flowing(double m3_s, double shown, double air_c, const opening::Case& c, Units units) {
    return assess::fill("{0} {1} at {2}",
                        {format_flow(std::fabs(shown), units), way_word(m3_s),
                         format_temperature(m3_s > 0 ? air_c : c.room.air_c, units)});
}

/// What the wind does to the two causes, in words made from the curves.
std::string wind_words(const Chart& wind) {
    const auto& leaks = wind.series[1].y;
    const auto& glass = wind.series[0].y;
    const double more = leaks.back() - leaks.front();
    if (std::max(leaks.front(), leaks.back()) < little * glass.back())
        return "Hardly any of this draft is leaks: it is about the same on still days.";
    if (more < 0) return "Wind pulls air out at this wall: its leaks let less in.";
    if (more > 2 * (glass.back() - glass.front()))
        return "Wind makes the leaks' draft grow, cold glass far less: much worse on windy days "
               "means a leak.";
    return "Wind changes this draft little.";
}

void numbers(Ui& ui, Column& column, const assess::Assessment& result, const opening::Case& c,
             Shown of) {
    const assess::LeakResult& leak = result.leak;
    const ImU32 ink = ui.theme.ink;
    const auto row = [&](const char* id, const char* name, const std::string& value,
                         const char* key) {
        column.row(part_id(id, of), name, value, ink, {key, of});
    };
    const auto& drive = leak.drive;
    const auto pa = adding_up({drive.stack_pa, drive.wind_pa}, shown_digit);
    row("air.stack", "Warm house (stack)", pressing(drive.stack_pa, pa[0]), "stack");
    row("air.wind", "Wind on this wall", pressing(drive.wind_pa, pa[1]), "wind");
    row("air.total", "Together", pressing(drive.pressure_pa, pa[0] + pa[1]), "pressure");
    const auto flow = shown_flows(leak.sash_m3_s, leak.shim_m3_s, ui.units);
    row("air.sash", "Sash", flowing(leak.sash_m3_s, flow[0], leak.sash_air_c, c, ui.units),
        "sash_flow");
    row("air.shim", "Shim space", flowing(leak.shim_m3_s, flow[1], leak.shim_air_c, c, ui.units),
        "shim_flow");
    row("air.heat", "Heat carried",
        format_watts(leak.heat_w, ui.units) + ", " + format_percent(result.air_share) +
            " of the loss",
        "leak_heat");
}

void bars(Ui& ui, Column& column, const std::vector<LeakLeft>& all, Shown of) {
    column.heading(part_id("air.left", of), "What is left of the leak", 3);
    double most = 1e-9;
    for (const LeakLeft& one : all)
        most = std::max(most, std::fabs(one.sash_m3_s + one.shim_m3_s));
    ImFont* body = ui.platform.fonts.body;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const LeakLeft& one = all[i];
        const Box box = column.take(bar_row_px, 2);
        const auto shown = shown_flows(one.sash_m3_s, one.shim_m3_s, ui.units);
        const std::string value = format_flow(std::fabs(shown[0] + shown[1]), ui.units);
        const float value_px = text_size(ui, ui.platform.fonts.strong, value).x;
        text_fitted(ui, body, {box.x, box.y}, box.w - value_px - 12, ui.theme.ink, one.name);
        text(ui, ui.platform.fonts.strong, {box.right(), box.y}, ui.theme.ink, value, Align::right);
        float x = box.x;
        for (const Cause cause : {Cause::sash, Cause::shim}) {
            const double part = std::fabs(cause == Cause::sash ? one.sash_m3_s : one.shim_m3_s);
            const float w = box.w * static_cast<float>(part / most);
            if (w >= 1) cause_fill(ui, {x, box.y + 22, w, bar_px}, cause);
            x += w;
        }
        const std::string id = part_id("air.left", of) + "." + std::to_string(i);
        figure_touch(ui, id, box, "left", of);
        figure(ui, id, box, one.name,
               value + ": sash " + format_flow(std::fabs(shown[0]), ui.units) + ", shim space " +
                   format_flow(std::fabs(shown[1]), ui.units),
               "left", of);
    }
    const Box key = column.take(20, 10);
    float x = key.x;
    for (const Cause cause : {Cause::sash, Cause::shim}) {
        cause_fill(ui, {x, key.y + 3, 24, bar_px - 2}, cause);
        text(ui, ui.platform.fonts.small, {x + 30, key.y}, ui.theme.ink, cause_word(cause));
        x += 44 + text_size(ui, ui.platform.fonts.small, cause_word(cause)).x;
    }
}

LeakLeft left_of(std::string name, const opening::Case& c) {
    const assess::LeakResult leak = assess::leak(c);
    return {std::move(name), leak.sash_m3_s, leak.shim_m3_s};
}

} // namespace

std::vector<LeakLeft> leaks_left(const Session& session) {
    const opening::Case today = session.today();
    std::vector<LeakLeft> all{left_of("Today", today)};
    for (const char* key : {"foam_joint", "rod_joint", "weatherstrip"}) {
        const opening::Remedy remedy = opening::make_remedy(key, today);
        all.push_back(left_of(remedy.name, opening::apply(remedy, today)));
    }
    if (session.has_remedy()) all.push_back(left_of(session.remedy_name(), session.remedy()));
    return all;
}

Chart wind_chart(const Ui& ui, const Session& session, Shown of) {
    const opening::Case c = session.shown_case(of);
    const assess::Assessment& result = session.result(of);
    Chart chart;
    chart.id = part_id("air.chart.wind", of);
    chart.title = "Draft at the ankles by wind";
    chart.x_name = std::string("wind, ") + unit_sign(Quantity::speed_m_s, ui.units);
    chart.y_name = std::string("air speed, ") + speed_unit(ui.units);
    chart.x_zero = "still air outdoors";
    chart.y_zero = "no draft";
    chart.decimals = ui.units == Units::us ? 0 : 2;
    chart.x_now = to_display(Quantity::speed_m_s, c.weather.wind_m_s, ui.units);
    Series glass{"cold glass", {}, cause_ink(ui, Cause::glass), false};
    Series leaks{"leaks", {}, cause_ink(ui, Cause::shim), true};
    const double most = std::max(most_wind_m_s, c.weather.wind_m_s);
    for (int i = 0; i <= wind_steps; ++i) {
        opening::Case windy = c;
        windy.weather.wind_m_s = most * i / wind_steps;
        const physics::SeatResult seat = assess::quick_seat(windy, c, result);
        chart.x.push_back(to_display(Quantity::speed_m_s, windy.weather.wind_m_s, ui.units));
        glass.y.push_back(speed_display(seat.downdraft_speed_m_s, ui.units));
        leaks.y.push_back(speed_display(seat.leak_speed_m_s, ui.units));
    }
    chart.series = {std::move(glass), std::move(leaks)};
    return chart;
}

Chart height_chart(const Ui& ui, const Session& session, Shown of) {
    const opening::Case c = session.shown_case(of);
    Chart chart;
    chart.id = part_id("air.chart.height", of);
    chart.title = "In below, out above: leaking air by height";
    chart.x_name = std::string("height, ") + unit_sign(Quantity::height_m, ui.units);
    chart.x_zero = "the neutral level";
    chart.y_name = std::string("coming in, ") + flow_unit(ui.units);
    chart.y_zero = "none; below it goes out";
    chart.decimals = 1;
    chart.x_now = to_display(Quantity::height_m, c.room.height_above_neutral_m, ui.units);
    Series sash{"sash", {}, cause_ink(ui, Cause::sash), true};
    Series shim{"shim space", {}, cause_ink(ui, Cause::shim), false};
    for (int i = 0; i <= height_steps; ++i) {
        opening::Case there = c;
        there.room.height_above_neutral_m = most_height_m * (2.0 * i / height_steps - 1);
        const assess::LeakResult leak = assess::leak(there);
        chart.x.push_back(
            to_display(Quantity::height_m, there.room.height_above_neutral_m, ui.units));
        sash.y.push_back(flow_display(leak.sash_m3_s, ui.units));
        shim.y.push_back(flow_display(leak.shim_m3_s, ui.units));
    }
    chart.series = {std::move(sash), std::move(shim)};
    return chart;
}

const AirView::Kept& AirView::kept(const Ui& ui, const Session& session, Shown of) {
    Kept& k = kept_[of == Shown::today ? 0 : 1];
    const assess::LeakResult& leak = session.result(of).leak;
    const double air_c = leak.sash_air_c + leak.shim_air_c;
    if (k.revision == session.revision() && k.units == ui.units && k.dark == ui.platform.dark &&
        k.air_c == air_c)
        return k;
    k = {session.revision(),
         ui.units,
         ui.platform.dark,
         air_c,
         wind_chart(ui, session, of),
         height_chart(ui, session, of),
         leaks_left(session)};
    return k;
}

float AirView::draw_part(Ui& ui, const Session& session, Shown of, Box box, bool with_bars) {
    const Kept& k = kept(ui, session, of);
    const opening::Case c = session.shown_case(of);
    const bool two = box.w >= two_columns_px; // else the second column goes on below the first
    const float each = two ? (box.w - between_px) / 2 : box.w;
    Column first(ui, {box.x, box.y, each, 0});
    draw_house(ui, c, session.result(of).leak, first.take(each < 360 ? 142.0f : 220.0f),
               part_id("air.house", of), "The house, " + shown_name(session, of));
    numbers(ui, first, session.result(of), c, of);
    first.space(10);
    if (with_bars) bars(ui, first, k.left, of);
    Column second(ui, {two ? box.x + each + between_px : box.x, two ? box.y : first.y, each, 0});
    chart(ui, second.take(chart_px), k.wind);
    second.sentence(part_id("air.wind_words", of), "Wind", wind_words(k.wind), ui.theme.ink);
    second.space(8);
    chart(ui, second.take(chart_px), k.height);
    second.sentence(
        part_id("air.height_words", of), "Height",
        "Low in the house cold air comes in: drafts. High up warm damp air goes out: wet "
        "panes upstairs. Wind moves the level where it turns.",
        ui.theme.ink);
    return std::max(first.y, second.y) - box.y;
}

void AirView::draw(Ui& ui, Session& session, Box box, bool wide, bool roomy) {
    ui.group = "picture";
    const Pair p = pair(ui, session, box, wide && roomy, box.right());
    const float top = scroll_.begin(ui, p.whole, content_px_, true);
    const float margin = roomy ? 16 : 12;
    float height = 0;
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (!p.seen(of, session)) continue;
        const Box part = p.part(of);
        const bool with_bars = !p.side_by_side || of == Shown::today;
        height = std::max(height,
                          draw_part(ui, session, of,
                                    {part.x + margin, top + 4, part.w - 2 * margin, 0}, with_bars));
    }
    scroll_.end(ui);
    if (content_px_ != height + 16) ui.wishes.another_frame = true;
    content_px_ = height + 16;
}

} // namespace shimlight::view
