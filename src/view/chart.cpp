// SPDX-License-Identifier: MIT
#include "view/chart.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float left_px = 40, right_px = 14, top_px = 44, foot_px = 38; // around the curves
constexpr float axis_row_px = 17;                                       // the upright axis' name
constexpr float dash_px = 6;

std::string number(double v, int decimals, Units units) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, v);
    return grouped(buffer, units);
}

struct Frame {
    Box area;
    double x0, x1, y0, y1;
    ImVec2 at(double x, double y) const {
        return {area.x + area.w * static_cast<float>((x - x0) / (x1 - x0)),
                area.bottom() - area.h * static_cast<float>((y - y0) / (y1 - y0))};
    }
};

void curve(Ui& ui, const Frame& f, const Chart& c, const Series& s) {
    float run = 0;
    for (std::size_t i = 1; i < c.x.size(); ++i) {
        const ImVec2 a = f.at(c.x[i - 1], s.y[i - 1]), b = f.at(c.x[i], s.y[i]);
        if (!s.dashed) {
            ui.list->AddLine(a, b, s.colour, 2.2f);
            continue;
        }
        const float length = std::hypot(b.x - a.x, b.y - a.y);
        for (float done = 0; done < length;) {
            const float phase = std::fmod(run + done, 2 * dash_px);
            const float step =
                std::min(length - done, (phase < dash_px ? dash_px : 2 * dash_px) - phase + 0.01f);
            const auto way = [&](float k) {
                return ImVec2{a.x + (b.x - a.x) * k / length, a.y + (b.y - a.y) * k / length};
            };
            if (phase < dash_px) ui.list->AddLine(way(done), way(done + step), s.colour, 2.2f);
            done += step;
        }
        run += length;
    }
}

/// An axis by its quantity and what its 0 is.
std::string axis_name(const std::string& name, const std::string& zero) {
    return zero.empty() ? name : name + " (0: " + zero + ")";
}

/// The upright axis has its name above it, unless the only curve's says it.
float named_px(const Chart& c) {
    const bool said = c.series.size() == 1 && c.series.front().name == c.y_name;
    return said ? 0 : axis_row_px;
}

/// Names in one row above the curves, each with a piece of its line.
void legend(Ui& ui, const Chart& c, Box box) {
    float x = box.x + left_px;
    for (const Series& s : c.series) {
        const float y = box.y + 31;
        ui.list->AddLine({x, y}, {x + (s.dashed ? 6.0f : 18.0f), y}, s.colour, 2.5f);
        if (s.dashed) ui.list->AddLine({x + 11, y}, {x + 18, y}, s.colour, 2.5f);
        text(ui, ui.platform.fonts.small, {x + 23, y - 9}, ui.theme.ink, s.name);
        x += 23 + text_size(ui, ui.platform.fonts.small, s.name).x + 16;
    }
}

double value_at(const Chart& c, const Series& s, double x) {
    for (std::size_t i = 1; i < c.x.size(); ++i)
        if (x <= c.x[i])
            return s.y[i - 1] +
                   (s.y[i] - s.y[i - 1]) * std::max(x - c.x[i - 1], 0.0) / (c.x[i] - c.x[i - 1]);
    return s.y.back();
}

std::string in_words(const Chart& c, bool marked, Units units) {
    std::string words = c.y_name + " over " + c.x_name + ". ";
    if (!c.x_zero.empty()) words += "0 across: " + c.x_zero + ". ";
    if (!c.y_zero.empty()) words += "0 upwards: " + c.y_zero + ". ";
    for (const Series& s : c.series) {
        words += s.name + ": " + number(s.y.front(), c.decimals, units) + " at " +
                 number(c.x.front(), c.x_decimals, units);
        if (marked) words += ", " + number(value_at(c, s, c.x_now), c.decimals, units) + " now";
        words += ", " + number(s.y.back(), c.decimals, units) + " at " +
                 number(c.x.back(), c.x_decimals, units) + ". ";
    }
    return words;
}

void axes(Ui& ui, const Frame& f, const Chart& c, Box box) {
    const Fonts& fonts = ui.platform.fonts;
    const Theme& t = ui.theme;
    const auto ys = round_ticks(f.y0, f.y1, 4),
               xs = round_ticks(f.x0, f.x1, f.area.w < 260 ? 4 : 6);
    const int y_decimals = decimals_of(ys.size() > 1 ? ys[1] - ys[0] : 1);
    for (const double y : ys) {
        const ImVec2 at = f.at(f.x0, y);
        ui.list->AddLine(at, {f.area.right(), at.y}, t.rule);
        text(ui, fonts.small, {at.x - 6, at.y - 9}, t.soft, number(y, y_decimals, ui.units),
             Align::right);
    }
    const int x_decimals = decimals_of(xs.size() > 1 ? xs[1] - xs[0] : 1);
    for (const double x : xs)
        text(ui, fonts.small, {f.at(x, f.y0).x, f.area.bottom() + 3}, t.soft,
             number(x, x_decimals, ui.units), Align::centre);
    text(ui, fonts.small, {f.area.centre().x, box.bottom() - 19}, t.soft,
         axis_name(c.x_name, c.x_zero), Align::centre);
    if (named_px(c) > 0)
        text_fitted(ui, fonts.small, {box.x, f.area.y - axis_row_px - 4}, box.w, t.soft,
                    axis_name(c.y_name, c.y_zero));
    ui.list->AddLine({f.area.x, f.area.bottom()}, {f.area.right(), f.area.bottom()}, t.soft);
}

} // namespace

int decimals_of(double step) {
    return step >= 1 ? 0 : step >= 0.1 ? 1 : step >= 0.01 ? 2 : 3;
}

std::vector<double> round_ticks(double low, double high, int most) {
    std::vector<double> ticks;
    if (!(high > low) || most < 1) return {low};
    const double rough = (high - low) / most;
    double step = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double k : {1.0, 2.0, 5.0, 10.0})
        if (k * step >= rough * (1 - 1e-9)) {
            step *= k;
            break;
        }
    for (double v = std::ceil(low / step - 1e-9) * step; v <= high + step * 1e-9; v += step)
        ticks.push_back(std::fabs(v) < step * 1e-9 ? 0 : v);
    return ticks;
}

void chart(Ui& ui, Box box, const Chart& c) {
    double low = c.from_zero ? 0 : c.series.front().y.front(), high = low;
    for (const Series& s : c.series)
        for (const double y : s.y) {
            low = std::min(low, y);
            high = std::max(high, y);
        }
    if (high - low < 1e-9) high = low + 1;
    const double spare = (high - low) * 0.06;
    high += spare;
    if (low < 0) low -= spare;
    const float top = top_px + named_px(c);
    const Frame f{{box.x + left_px, box.y + top, box.w - left_px - right_px, box.h - top - foot_px},
                  c.x.front(),
                  c.x.back(),
                  low,
                  high};
    const Fonts& fonts = ui.platform.fonts;
    text_fitted(ui, fonts.strong, {box.x, box.y}, box.w, ui.theme.ink, c.title);
    legend(ui, c, box);
    axes(ui, f, c, box);
    const bool marked = c.x_now >= c.x.front() && c.x_now <= c.x.back();
    if (marked)
        ui.list->AddLine(f.at(c.x_now, low), {f.at(c.x_now, low).x, f.area.y}, ui.theme.lever,
                         1.5f);
    for (const Series& s : c.series) {
        curve(ui, f, c, s);
        if (marked) ui.list->AddCircleFilled(f.at(c.x_now, value_at(c, s, c.x_now)), 4, s.colour);
    }
    note(ui, Role::image, c.id, box, c.title, in_words(c, marked, ui.units));
}

} // namespace shimlight::view
