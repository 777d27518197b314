// SPDX-License-Identifier: MIT
// The sun straight on at rating conditions: a beam that loses at each pane what is thrown back and
// what the pane takes, and the heat the panes give off to both sides.
#include "view/ribbons.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float label_px = 18, lane_gap_px = 6;

struct Summer {
    Ui& ui;
    const Ribbons& r;
    const assess::SunThrough& sun;
    PaneRow row;
    float beam_y = 0, beam_px = 1;

    float px(double share) const { return static_cast<float>(share) * beam_px; }
    /// Below the beam and what is thrown back each pane has a lane of its own.
    float lane_y(std::size_t pane) const {
        float y = beam_y + beam_px + 4 + px(sun.reflected) + label_px;
        for (std::size_t k = 0; k < pane; ++k)
            y += px(sun.absorbed[k]) + lane_gap_px;
        return y;
    }
    float back_y() const { return beam_y + beam_px + 4; }
    double outwards() const {
        double sum = 0;
        for (std::size_t k = 0; k < row.count; ++k)
            sum += sun.absorbed[k] - sun.absorbed_inwards[k];
        return sum;
    }
    double inwards() const { return sun.shgc - sun.transmitted; }
    void beam() const;
    void given_off() const;
    void words() const;
    static Box finger(Box box) {
        const float taller = std::max(touch_px - box.h, 0.0f) / 2;
        return {box.x, box.y - taller, box.w, box.h + 2 * taller};
    }
    void figure(const char* id, Box box, const std::string& name, double share) const {
        about_number(ui, r, std::string(".sun.") + id, box, finger(box), name,
                     format_percent(share), "sun");
    }
};

void Summer::beam() const {
    const ImU32 light = faded(ui.theme.lever, 0.55f);
    double left = 1;
    for (std::size_t k = 0; k <= row.count; ++k) {
        const Box where = row.space(k);
        const Box ribbon{where.x, beam_y, where.w - (k == row.count ? 6 : 0), px(left)};
        if (k == row.count)
            arrow(ui, ribbon, false, light);
        else
            fill(ui, ribbon, light);
        if (k == 0) figure("falls", ribbon, "Sun that falls on the glass", 1);
        if (k == row.count) {
            figure("direct", ribbon, "Let in directly", sun.transmitted);
            continue;
        }
        const double next = left - sun.absorbed[k] - (k == 0 ? sun.reflected : 0);
        ui.list->AddQuadFilled({row.left(k), beam_y}, {row.right(k), beam_y},
                               {row.right(k), beam_y + px(next)},
                               {row.left(k), beam_y + px(left - (k == 0 ? sun.reflected : 0))},
                               faded(ui.theme.lever, 0.75f));
        left = next;
    }
    const Box back{row.box.x + 4, back_y(), row.left(0) - row.box.x - 4, px(sun.reflected)};
    arrow(ui, back, true, faded(ui.theme.lever, 0.3f));
    figure("reflected", back, "Thrown back", sun.reflected);
}

/// Each pane's heat has a lane of its own, beside the others.
void Summer::given_off() const {
    const ImU32 warm = faded(ui.theme.worse, 0.45f);
    for (std::size_t k = 0; k < row.count; ++k) {
        const double in = sun.absorbed_inwards[k], out = sun.absorbed[k] - in;
        const float y = lane_y(k);
        const std::string at = std::to_string(k + 1);
        fill(ui, {row.left(k), y, row.pane_px, px(sun.absorbed[k])}, faded(ui.theme.worse, 0.8f));
        const Box to_out{row.box.x + 4, y, row.left(k) - row.box.x - 4, px(out)};
        const Box to_room{row.right(k), y, row.box.right() - 6 - row.right(k), px(in)};
        arrow(ui, to_out, true, warm);
        arrow(ui, to_room, false, warm);
        figure(("absorbed." + at).c_str(), {row.left(k), y, row.pane_px, px(sun.absorbed[k])},
               "Taken up by pane " + at, sun.absorbed[k]);
    }
    const Box left = row.space(0), right = row.space(row.count);
    const float y = lane_y(0), height = lane_y(row.count) - y;
    figure("outwards", {left.x, y, left.w, height}, "Given off outwards", outwards());
    figure("inwards", {right.x, y, right.w, height}, "Given off inwards", inwards());
}

void Summer::words() const {
    const Fonts& fonts = ui.platform.fonts;
    const Box left = row.space(0), right = row.space(row.count);
    ribbon_label(ui, left, beam_y - label_px, "sun", format_percent(1));
    ribbon_label(ui, right, beam_y - label_px, "directly", format_percent(sun.transmitted));
    ribbon_label(ui, left, back_y() + px(sun.reflected) + 1, "thrown back|back",
                 format_percent(sun.reflected));
    const float y = row.box.bottom() - 36;
    ribbon_label(ui, left, y, "warmth given off|warmth", format_percent(outwards()));
    ribbon_label(ui, right, y, "warmth given off|warmth", format_percent(inwards()));
    for (std::size_t k = 0; k < row.count; ++k) {
        const float x = (row.left(k) + row.right(k)) / 2;
        if (row.count == 1) {
            text(ui, fonts.small, {x, y + 18}, ui.theme.soft,
                 "the pane takes " + format_percent(sun.absorbed[0]), Align::centre);
            break;
        }
        text(ui, fonts.small, {x, y + 18}, ui.theme.soft,
             (row.gap_px > 90 ? "takes " : "") + format_percent(sun.absorbed[k]), Align::centre);
    }
}

std::string summer_words(const assess::SunThrough& sun, std::size_t panes) {
    std::string words = "Of the sun straight on " + format_percent(sun.reflected) +
                        " is thrown back, " + format_percent(sun.transmitted) + " passes. ";
    for (std::size_t k = 0; k < panes; ++k)
        words += "Pane " + std::to_string(k + 1) + " takes up " + format_percent(sun.absorbed[k]) +
                 " and gives " + format_percent(sun.absorbed_inwards[k]) + " of all inwards. ";
    return words;
}

} // namespace

void draw_summer(Ui& ui, Box box, const Ribbons& r) {
    Summer s{ui, r, r.result.sun, pane_row(box, r.heat.panes)};
    const Box& b = s.row.ribbons;
    s.beam_y = b.y + label_px;
    // What is thrown back and taken up is at most the beam once more. The same for both glazings.
    s.beam_px = (b.h - 2 * label_px - 4 - lane_gap_px * physics::max_panes) / 2;
    draw_glass(ui, s.row, r, format_temperature(assess::rated_summer_out_c, ui.units),
               format_temperature(assess::rated_summer_in_c, ui.units));
    note(ui, Role::image, r.id + ".picture", box, "Sun through the glass, " + r.name,
         summer_words(s.sun, s.row.count));
    s.beam();
    s.given_off();
    s.words();
}

} // namespace shimlight::view
