// SPDX-License-Identifier: MIT
#include "view/photo.hpp"

#include "house/openings.hpp"

namespace shimlight::view {

void photo(Ui& ui, const Session& session, Box box, const house::Photo& photo) {
    fill(ui, box, ui.theme.card, 4);
    frame(ui, box, ui.theme.rule, 4);
    paragraph(ui, ui.platform.fonts.small, {box.x + 8, box.y + 8}, box.w - 16, ui.theme.soft,
              "Not on this device");
    MirrorNode node;
    node.id = "photo." + photo.id;
    node.role = Role::photo;
    node.name = photo.words.empty() ? "Photograph" : photo.words;
    node.value = photo.id;
    node.action = "show-photo";
    node.enabled = !ui.blocked && session.message.empty(); // else it would lie over a card
    node.on = box.y < ui.visible.y;                        // cut above: its lower part is seen
    put_in_place(ui, node, box.shrunk(1));
    ui.mirror.add(std::move(node));
    focus_ring(ui, "photo." + photo.id, box, 4);
}

bool take_photo(Session& session, std::string_view opened) {
    constexpr std::string_view mark = "photo ";
    if (opened.substr(0, mark.size()) != mark) return false;
    house::House next = session.house();
    auto& record = next.openings[static_cast<std::size_t>(next.selected)];
    if (house::add_photo(record, opened.substr(mark.size()))) session.edit(std::move(next));
    return true;
}

} // namespace shimlight::view
