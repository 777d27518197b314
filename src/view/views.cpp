// SPDX-License-Identifier: MIT
#include "view/views.hpp"

#include <algorithm>
#include <array>

namespace shimlight::view {
namespace {

struct Named {
    View view;
    const char* id;
    const char* name;
};
constexpr std::array<Named, 9> views{{{View::slice, "view.slice", "Slice"},
                                      {View::room, "view.room", "Room"},
                                      {View::panes, "view.panes", "Panes"},
                                      {View::air, "view.air", "Air"},
                                      {View::readings, "view.readings", "Readings"},
                                      {View::bill, "view.bill", "Bill"},
                                      {View::sheet, "view.sheet", "Sheet"},
                                      {View::lesson, "view.lesson", "Lesson"},
                                      {View::house, "view.house", "House"}}};
constexpr float pad_px = 22; // both sides of a tab's name
constexpr float least_px = 60;
constexpr float more_px = 92;

float tab_px(const Ui& ui, const char* name) {
    return std::max(least_px, text_size(ui, ui.platform.fonts.strong, name).x + pad_px);
}

/// How many tabs fit into `width`, "More" among them when not all do.
std::size_t fitting(const Ui& ui, float width, float& used) {
    float all = 0;
    for (const Named& v : views)
        all += tab_px(ui, v.name);
    used = all;
    if (all <= width) return views.size();
    used = more_px;
    std::size_t count = 0;
    while (used + tab_px(ui, views[count].name) <= width)
        used += tab_px(ui, views[count++].name);
    return count;
}

/// A tab behind "More": the mirror has it all the same.
bool hidden_tab(Ui& ui, const Named& v, Box box, bool on) {
    MirrorNode node;
    node.id = v.id;
    node.role = Role::tab;
    node.name = v.name;
    node.on = on;
    put_in_place(ui, node, box);
    node.reachable = false; // a finger there means "More"
    ui.mirror.add(std::move(node));
    focus_ring(ui, v.id, box, 0);
    return ui.mirror.pressed(v.id);
}

} // namespace

View views_row(Ui& ui, Box box, View now) {
    float used = 0;
    const std::size_t count = fitting(ui, box.w, used);
    const float spare = (box.w - used) / static_cast<float>(count + (count < views.size()));
    View chosen = now;
    ButtonStyle style;
    style.look = ButtonLook::tab;
    style.role = Role::tab;
    float x = box.x;
    for (std::size_t i = 0; i < count; ++i) {
        const float w = tab_px(ui, views[i].name) + spare;
        style.on = views[i].view == now;
        if (button(ui, views[i].id, {x, box.y, w, box.h}, views[i].name, style))
            chosen = views[i].view;
        x += w;
    }
    if (count == views.size()) return chosen;
    const Box more{x, box.y, box.right() - x, box.h};
    std::vector<std::string> names;
    int on = -1;
    for (std::size_t i = count; i < views.size(); ++i) {
        if (views[i].view == now) on = static_cast<int>(i - count);
        if (hidden_tab(ui, views[i], more, views[i].view == now)) chosen = views[i].view;
        names.push_back(views[i].name);
    }
    const int picked = menu_tab(ui, "views.more", more,
                                on < 0 ? "More" : names[static_cast<std::size_t>(on)], names, on);
    if (picked >= 0) chosen = views[count + static_cast<std::size_t>(picked)].view;
    return chosen;
}

} // namespace shimlight::view
