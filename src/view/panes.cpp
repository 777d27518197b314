// SPDX-License-Identifier: MIT
#include "view/panes.hpp"

#include "assess/published_u.hpp"
#include "view/chart.hpp"
#include "view/column.hpp"
#include "view/ribbons.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float least_picture_px = 192, most_picture_px = 400, chart_px = 234;
// Names, numbers and a little of the ribbons: with less room the picture is cut, and scrolls.
constexpr float whole_picture_px = 84;
constexpr float flat_px = 110, flat_picture_px = 150; // of the sun, a phone lying on its side
constexpr float around_px = 58;                       // heading and gaps around the three factors
constexpr float summer_px = 170;                      // two rows and what they mean
constexpr float both_from_px = 560; // narrower, three panes have no room for their words
constexpr double thermometer_k = 2; // infrared, plus or minus (physics/thermography.hpp)
constexpr const char* gases[] = {"air", "argon", "krypton", "xenon"};

/// One subject of the page: where it is written, of which case.
struct Facts {
    Ui& ui;
    Column& column;
    const std::string id; ///< "panes.today"
    const opening::Case c;
    const assess::Assessment& result;
    const GlassCurves& curves;

    std::string u(double w_m2k) const { return format_u(w_m2k, ui.units) + " " + u_unit(ui.units); }
    const Shown of;

    void row(const char* what, const std::string& name, const std::string& value,
             const char* key) const {
        column.row(id + what, name, value, ui.theme.ink, {key, of});
    }
    void say(const char* what, const char* name, const std::string& words) const {
        column.sentence(id + what, name, words, ui.theme.soft);
    }
    std::string paths() const;
    void sun() const;
    void published() const;
    std::vector<Column::Cell> factors() const;
    float rows_px() const;
    void three(bool beside) const;
    void beside() const;
    void gap_chart() const;
    void fill_chart() const;
    void coating() const;
};

/// The ribbons in a few sentences.
std::string Facts::paths() const {
    const assess::PaneHeat heat = assess::pane_heat(c, result.glass);
    std::string words = "Through the middle of the glass " +
                        format_flux(result.glass.flux_w_m2, ui.units) + " " + flux_unit(ui.units) +
                        " leave the room.";
    for (std::size_t k = heat.panes - 1; k > 0; --k) {
        const double sum = heat.at[k].sum();
        if (std::fabs(sum) < 0.1) continue;
        words += " In " + (heat.panes > 2 ? "space " + std::to_string(k) : "the space") + " (" +
                 gas_name(c.opening, k) + ") " + format_percent(heat.at[k].radiation_w_m2 / sum) +
                 " of it is radiated, " + format_percent(heat.at[k].gas_w_m2 / sum) +
                 " goes through the gas.";
    }
    std::string coated;
    bool several = false;
    for (std::size_t face = 1; face <= 2 * heat.panes; ++face) {
        if (!face_coated(c.opening, face)) continue;
        several = !coated.empty();
        coated += (several ? " and " : "") + std::to_string(face);
    }
    if (!coated.empty())
        words +=
            std::string(" Low-e (thick line): ") + (several ? "faces " : "face ") + coated + ".";
    const double lost = heat.room().sum() - heat.outdoors().sum();
    if (std::fabs(lost) > 0.03 * std::fabs(heat.largest_w_m2()))
        words += " Air that leaks through a space carries off the difference between in and out.";
    return words + " Faces are counted from outdoors inward; 1 is the outermost.";
}

void Facts::sun() const {
    const assess::SunThrough& s = result.sun;
    std::string taken = format_percent(s.absorbed[0]);
    for (std::size_t k = 1; k < opening::glazing_stack(c.opening).pane_count; ++k)
        taken += " and " + format_percent(s.absorbed[k]);
    row(".shgc", "SHGC, center of glass", format_u(s.shgc, Units::si), "shgc");
    row(".light", "Visible transmittance", format_u(s.light, Units::si), "light");
    say(".sun", "Sun let in",
        "Of 100 W of sun straight on " + format_percent(s.shgc) + " end in the room: " +
            format_percent(s.transmitted) + " as sun, " + format_percent(s.shgc - s.transmitted) +
            " as warmth of the panes. In that sun the inner face is at " +
            format_temperature(s.summer_glass_c, ui.units) + ", in shade at " +
            format_temperature(s.shade_glass_c, ui.units) + ".");
}

/// Tables beside what is computed.
void Facts::published() const {
    const auto range = assess::published_u(c.opening);
    if (!range) return;
    const std::string low = format_u(range->low_w_m2k, ui.units);
    const bool one = range->low_w_m2k == range->high_w_m2k;
    row(".published", "Tables, whole window", (one ? "" : low + " to ") + u(range->high_w_m2k),
        "published");
    if (!ui.why || !ui.why->asks(id + ".published") || !result.complete) return;
    const double now = result.u_window_w_m2k;
    ui.why->tell("computed " + u(now) + ": " +
                 (now < range->low_w_m2k    ? "below the tables"
                  : now > range->high_w_m2k ? "above the tables"
                                            : "within them"));
}

std::vector<Column::Cell> Facts::factors() const {
    return {{id + ".u_centre",
             "Center of glass",
             u(result.u_centre_w_m2k),
             "Glass and gas alone, away from the edges.",
             {"u_centre", of}},
            {id + ".u_window",
             "Whole window",
             u(result.u_window_w_m2k),
             "Also edge, sash and frame, each by its area, as a label counts.",
             {"u_window", of}},
            {id + ".u_installed",
             "Installed window",
             u(result.u_installed_w_m2k),
             "Also the shim space to the wall and the air that leaks. All three at this weather.",
             {"u_installed", of}}};
}

/// What stands above the factors, and the factors in rows.
float Facts::rows_px() const {
    float px = 0;
    for (const Column::Cell& one : factors())
        px += touch_px + 8 +
              paragraph(ui, ui.platform.fonts.body, {}, column.width(), 0, one.words, false);
    return px;
}

void Facts::three(bool beside) const {
    column.heading(id + ".three", "Three U-factors", 3);
    const std::vector<Column::Cell> all = factors();
    if (beside) {
        column.cells(all);
        return published();
    }
    for (const Column::Cell& one : all) {
        column.row(one.id, one.name, one.value, ui.theme.ink, one.about);
        column.sentence(one.id + ".is", "What it holds", one.words, ui.theme.soft);
        if (one.about.key == "u_window") published();
    }
}

/// What edge and frame carry, and what no label tells of.
void Facts::beside() const {
    const double k = c.room.air_c - c.weather.outside_c;
    const auto share = [&](double w) {
        return format_heat(w, ui.units) + ", " + format_percent(w / result.heat_w);
    };
    if (!result.complete || result.heat_w <= 1) return;
    const opening::UnitSize unit = opening::unit_size(c.opening);
    const double unit_m2 = unit.width_m * unit.height_m;
    const double edge_w = result.u_edge_w_m2k * result.edge_m2 * k,
                 frame_w = result.u_frame_w_m2k * result.frame_m2 * k,
                 window_w = result.u_window_w_m2k * unit_m2 * k,
                 air_w = result.air_share * result.heat_w, unrated_w = result.heat_w - window_w;
    column.heading(id + ".where", "Heat of the opening, share of all of it", 3);
    row(".glass", "Glass, edge apart", share(window_w - edge_w - frame_w), "path.glass");
    row(".edge", "Edge, spacer: " + format_area(result.edge_m2, ui.units), share(edge_w),
        "path.edge");
    row(".frame", "Frame, sash: " + format_area(result.frame_m2, ui.units), share(frame_w),
        "path.frame");
    row(".unrated", "On no label: shim space, leaks", share(unrated_w), "path.unrated");
    say(".unrated.is", "On no label",
        "Leaking air takes up " + format_heat(air_w, ui.units) +
            " in all, part of it from frame and wall. Edge alone: U " + u(result.u_edge_w_m2k) +
            "; frame alone: U " + u(result.u_frame_w_m2k) + "." +
            (unrated_w < 0 ? " Wall and casing cover part of the frame; that saves more than the "
                             "shim space loses."
                           : ""));
}

Series series(const Ui& ui, std::size_t g, const std::vector<double>& u_w_m2k) {
    const Theme& t = ui.theme;
    const ImU32 inks[] = {t.soft, t.lever, t.water, t.better};
    Series s{gases[g], {}, inks[g], g % 2 == 1};
    for (const double u : u_w_m2k)
        s.y.push_back(shown_u(u, ui.units));
    return s;
}

void Facts::gap_chart() const {
    Chart chart;
    chart.id = id + ".by_gap";
    chart.title = "U, center of glass, by width of the space";
    chart.x_name = std::string("space, ") + unit_sign(Quantity::thin_m, ui.units);
    chart.y_name = std::string("U, ") + u_unit(ui.units);
    for (const double gap : curves.gap_m)
        chart.x.push_back(to_display(Quantity::thin_m, gap, ui.units));
    for (std::size_t g = 0; g < curve_gases; ++g)
        chart.series.push_back(series(ui, g, curves.u_by_gap[g]));
    chart.x_now = to_display(Quantity::thin_m, c.opening.glazing.gap_m, ui.units);
    chart.decimals = 2;
    chart.x_decimals = ui.units == Units::us ? 2 : 0;
    view::chart(ui, column.take(chart_px), chart);
}

void Facts::fill_chart() const {
    const std::string gas = gases[static_cast<std::size_t>(curves.gas)];
    Chart chart;
    chart.id = id + ".by_share";
    chart.title = "U, center of glass, by filling with " + gas;
    chart.x_name = gas + ", %";
    chart.y_name = std::string("U, ") + u_unit(ui.units);
    for (const double share : curves.share)
        chart.x.push_back(100 * share);
    chart.series.push_back(series(ui, static_cast<std::size_t>(curves.gas), curves.u_by_share));
    chart.series.back().dashed = false;
    chart.x_now = curves.filled ? 100 * c.opening.glazing.gas_share : 0;
    chart.decimals = 2;
    view::chart(ui, column.take(chart_px), chart);
    const double apart_k = curves.full.inside_c - curves.empty.inside_c;
    const auto kelvin = [&](double k) {
        char words[24];
        std::snprintf(words, sizeof words, ui.units == Units::us ? "%.1f °F" : "%.1f °C",
                      ui.units == Units::us ? k * 1.8 : k);
        return typeset(words);
    };
    say(".leaked", "Has it leaked out?",
        "Has the gas leaked out? With 90\u2009% " + gas + " U is " + u(curves.full.u_w_m2k) +
            ", with none " + format_u(curves.empty.u_w_m2k, ui.units) +
            ". The inner face is then " + kelvin(apart_k) + " colder. An infrared thermometer, ±" +
            kelvin(thermometer_k) +
            (std::fabs(apart_k) > thermometer_k ? ", can tell." : ", cannot tell."));
}

void Facts::coating() const {
    const bool storm = c.opening.glazing.storm != opening::Storm::none;
    const auto& [on2, on3] = curves.coated;
    column.heading(id + ".faces",
                   storm ? "Low-e on the sash's face 2 or 3" : "Low-e on face 2 or 3", 3);
    for (const CoatedFace& on : curves.coated)
        row(on.face == 2 ? ".on2" : ".on3", "Face " + std::to_string(on.face),
            "U " + u(on.u_w_m2k) + ", SHGC " + format_u(on.shgc, Units::si), "coated");
    const bool same = std::fabs(on2.u_w_m2k - on3.u_w_m2k) < 0.03 * on3.u_w_m2k;
    if (same && on2.shgc < on3.shgc)
        say(".faces.is", "What differs",
            "The same U, another sun: on face 2 the outer pane takes the sun up and gives it off "
            "outdoors.");
}

} // namespace

void Panes::pictures(Ui& ui, const Session& session, const Pair& pair, float y, float height) {
    const opening::Case cases[] = {session.today(), session.remedy()};
    const assess::PaneHeat heats[] = {assess::pane_heat(cases[0], session.today_result().glass),
                                      assess::pane_heat(cases[1], session.remedy_result().glass)};
    assess::SpaceHeat widest;
    for (const assess::PaneHeat& heat : heats)
        for (std::size_t k = 0; k <= heat.panes; ++k) {
            widest.radiation_w_m2 =
                std::max(widest.radiation_w_m2, std::fabs(heat.at[k].radiation_w_m2));
            widest.gas_w_m2 = std::max(widest.gas_w_m2, std::fabs(heat.at[k].gas_w_m2));
        }
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (!pair.seen(of, session)) continue;
        const auto i = static_cast<std::size_t>(of);
        const Ribbons r{of == Shown::today ? "panes.today" : "panes.remedy",
                        shown_name(session, of),
                        cases[i],
                        session.result(of),
                        heats[i],
                        widest};
        const Box part = pair.part(of);
        const Box picture{part.x, y, part.w, height};
        if (summer_)
            draw_summer(ui, picture, r);
        else
            draw_winter(ui, picture, r);
    }
}

namespace {

Facts facts_of(Ui& ui, const Session& session, Shown of, Column& column,
               const GlassCurves& curves) {
    return {ui,
            column,
            of == Shown::today ? "panes.today" : "panes.remedy",
            session.shown_case(of),
            session.result(of),
            curves,
            of};
}

} // namespace

/// The picture leaves the three factors in sight as long as it is large enough itself: in rows, or
/// beside one another where rows have no room.
Panes::Sizes Panes::sizes(Ui& ui, const Session& session, const Pair& pair) const {
    Box area = pair.whole;
    area.h -= Scroll::sign_px;
    const float least = summer_ ? (area.h < flat_px ? flat_picture_px : least_picture_px)
                                : std::clamp(area.h, whole_picture_px, least_picture_px);
    float rows = 0, cells = 0;
    bool fit = true;
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (!pair.seen(of, session)) continue;
        const Box part = pair.part(of);
        Column column(ui, {part.x + margin_px, 0, part.w - 2 * margin_px, 0});
        const Facts facts =
            facts_of(ui, session, of, column, curves_[static_cast<std::size_t>(of)]);
        const float above = summer_ ? summer_px
                                    : paragraph(ui, ui.platform.fonts.body, {}, column.width(), 0,
                                                facts.paths(), false);
        const auto all = facts.factors();
        fit = fit && column.cells_fit(all);
        rows = std::max(rows, above + facts.rows_px() + around_px);
        cells = std::max(cells, above + column.cells_px(all) + around_px);
    }
    const float left = area.h - least;
    const bool beside = fit && rows > left && cells <= left;
    const float facts_px = rows <= left ? rows : beside ? cells : 8;
    return {std::clamp(area.h - facts_px, least, most_picture_px), beside};
}

void Panes::facts(Ui& ui, const Session& session, Shown of, Column& column, bool beside) const {
    const auto i = static_cast<std::size_t>(of);
    const Facts facts = facts_of(ui, session, of, column, curves_[i]);
    if (summer_)
        facts.sun();
    else
        facts.say(".paths", "Ways of the heat", facts.paths());
    column.space(6);
    facts.three(beside);
    column.space(6);
    facts.beside();
    column.space(10);
    if (!curves_[i].any) {
        facts.say(".single", "Curves", "A single pane has no space to fill or to coat within.");
        return;
    }
    facts.gap_chart();
    facts.fill_chart();
    facts.coating();
}

void Panes::draw(Ui& ui, Session& session, Box box, bool wide, bool roomy) {
    ui.group = "picture";
    const float switch_px = roomy ? 150.0f : 92.0f;
    const Pair both =
        pair(ui, session, box, wide && box.w >= both_from_px, box.right() - switch_px - 8);
    ButtonStyle style;
    style.compact = true;
    style.role = Role::toggle;
    style.on = summer_;
    style.spoken = "Summer sun instead of the winter night";
    style.help = "Shows what becomes of the sun on the glass";
    if (button(ui, "panes.sun", {box.right() - switch_px - 4, box.y + 2, switch_px, touch_px},
               roomy ? "Summer sun" : "Sun", style)) {
        summer_ = !summer_;
        ui.wishes.another_frame = true;
    }
    const Box area = both.whole;
    const float top = scroll_.begin(ui, area, content_px_, true);
    for (const Shown of : {Shown::today, Shown::remedy}) {
        const auto i = static_cast<std::size_t>(of);
        if (!both.seen(of, session) || revisions_[i] == session.revision()) continue;
        revisions_[i] = session.revision();
        curves_[i] = glass_curves(session.shown_case(of));
    }
    const auto [height, beside] = sizes(ui, session, both);
    pictures(ui, session, both, top, height);
    float end = top;
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (!both.seen(of, session)) continue;
        const Box part = both.part(of);
        Column column(ui, {part.x + margin_px, top + height + 12, part.w - 2 * margin_px, 0});
        facts(ui, session, of, column, beside);
        end = std::max(end, column.y);
    }
    if (content_px_ != end - top + 16) ui.wishes.another_frame = true;
    content_px_ = end - top + 16;
    scroll_.end(ui);
}

} // namespace shimlight::view
