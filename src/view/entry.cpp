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
                                       const std::string& name, const std::string& shown,
                                       const std::string& unit, const std::string& assumed) {
    const Fonts& fonts = ui.platform.fonts;
    const Box field{box.right() - field_px, box.y, field_px, touch_px};
    text_fitted(ui, fonts.body, {box.x, field.centre().y - 10}, box.w - field_px - 8, ui.theme.ink,
                name);
    const Box face{field.x, field.y + 4, field.w, field.h - 8};
    fill(ui, face, ui.theme.card, 6);
    frame(ui, face, ui.theme.rule, 6);
    const float unit_px = unit.empty() ? 0 : text_size(ui, fonts.small, unit).x + 6;
    text(ui, fonts.small, {face.right() - 8, face.centre().y - 9}, ui.theme.soft, unit,
         Align::right);
    text(ui, fonts.strong, {face.right() - 8 - unit_px, face.centre().y - 10},
         shown.empty() ? ui.theme.soft : ui.theme.ink,
         !shown.empty()    ? shown
         : assumed.empty() ? std::string("–")
                           : assumed,
         Align::right);
    focus_ring(ui, id, face, 6);
    MirrorNode node;
    node.id = id;
    node.role = Role::number;
    node.name = name;
    node.value = shown;
    node.help = assumed.empty() ? unit : unit + ", reckoned with " + assumed;
    put_in_place(ui, node, field);
    ui.mirror.add(std::move(node));
    return ui.mirror.text(id);
}

void entry(Ui& ui, Session& session, house::Entry which, Box box, std::optional<double> assumed) {
    const house::EntryRow& row = house::entry_rows()[static_cast<std::size_t>(which)];
    const house::Entries& site = session.record().site;
    const std::string shown =
        site.has(which) ? typeset(format_bare(row.quantity, site.of(which), ui.units)) : "";
    const auto typed =
        typed_field(ui, "site." + std::string(row.key), box, std::string(row.label), shown,
                    unit_sign(row.quantity, ui.units),
                    assumed ? typeset(format_bare(row.quantity, *assumed, ui.units)) : "");
    if (!typed || *typed == shown) return;
    if (typed->find_first_not_of(' ') == std::string::npos) return take(session, which, {});
    const auto value = parse(row.quantity, *typed, ui.units);
    if (value && *value >= row.min && *value <= row.max) return take(session, which, value);
    session.message = std::string(row.label) + ": accepted is " +
                      format(row.quantity, row.min, ui.units) + " to " +
                      format(row.quantity, row.max, ui.units) + ".";
}

} // namespace shimlight::view
