// SPDX-License-Identifier: MIT
#include "view/entry.hpp"

namespace shimlight::view {
namespace {

constexpr float field_px = 128;

void take(Session& session, house::Entry which, std::optional<double> value) {
    house::House next = session.house();
    auto& site = next.openings[static_cast<std::size_t>(next.selected)].site;
    if (value)
        site.set(which, *value);
    else
        site.clear(which);
    session.edit(std::move(next));
}

} // namespace

std::optional<std::string> typed_field(Ui& ui, const std::string& id, Box box,
                                       const TypedField& f) {
    const Fonts& fonts = ui.platform.fonts;
    const float wide = f.role == Role::text ? box.w - f.label_px : field_px;
    const Box field{box.right() - wide, box.y, wide, touch_px};
    if (box.w > wide)
        text_fitted(ui, fonts.body, {box.x, field.centre().y - 10}, box.w - wide - 8, ui.theme.ink,
                    f.name);
    const Box face{field.x, field.y + 4, field.w, field.h - 8};
    fill(ui, face, ui.theme.card, 6);
    frame(ui, face, ui.theme.rule, 6);
    const bool empty = f.shown.empty();
    const std::string words = !empty ? f.shown : f.assumed.empty() ? "–" : f.assumed;
    const ImU32 ink = empty ? ui.theme.soft : ui.theme.ink;
    if (f.role == Role::text) {
        text_fitted(ui, fonts.strong, {face.x + 8, face.centre().y - 10}, face.w - 16, ink, words);
    } else {
        const float unit_px = f.unit.empty() ? 0 : text_size(ui, fonts.small, f.unit).x + 6;
        text(ui, fonts.small, {face.right() - 8, face.centre().y - 9}, ui.theme.soft, f.unit,
             Align::right);
        text(ui, fonts.strong, {face.right() - 8 - unit_px, face.centre().y - 10}, ink, words,
             Align::right);
    }
    focus_ring(ui, id, face, 6);
    MirrorNode node;
    node.id = id;
    node.role = f.role;
    node.name = f.name;
    node.value = f.shown;
    node.help = f.assumed.empty()      ? f.unit
                : f.role == Role::text ? f.assumed
                                       : f.unit + ", reckoned with " + f.assumed;
    put_in_place(ui, node, field);
    ui.mirror.add(std::move(node));
    return ui.mirror.text(id);
}

void entry(Ui& ui, Session& session, house::Entry which, Box box, std::optional<double> assumed) {
    const house::EntryRow& row = house::entry_rows()[static_cast<std::size_t>(which)];
    const house::Entries& site = session.record().site;
    const auto bare = [&](double si) { return typeset(format_bare(row.quantity, si, ui.units)); };
    const std::string shown = site.has(which) ? bare(site.of(which)) : "";
    const auto typed =
        typed_field(ui, "site." + std::string(row.key), box,
                    {std::string(row.label), shown, unit_sign(row.quantity, ui.units),
                     assumed ? bare(*assumed) : ""});
    if (!typed || *typed == shown) return;
    if (typed->find_first_not_of(' ') == std::string::npos) return take(session, which, {});
    const auto value = parse(row.quantity, *typed, ui.units);
    if (value && *value >= row.min && *value <= row.max) return take(session, which, value);
    const char* unit = unit_sign(row.quantity, ui.units);
    session.message = std::string(row.label) + ": accepted is " + bare(row.min) + " to " +
                      bare(row.max) + (*unit ? " " : "") + unit + ".";
}

} // namespace shimlight::view
