// SPDX-License-Identifier: MIT
// Area-weighted whole window: the centre-of-glass U over the whole area, plus what each side's
// frame and edge carry beyond it, on the length along the middle of the frame (mitred corners).
#include "assess/whole_window.hpp"
#include "opening/dimensions.hpp"

namespace shimlight::assess {

namespace {

using opening::Position;

const Slot& at(std::span<const Slot> slots, Position position) {
    return slots[static_cast<std::size_t>(position)];
}

bool all_solved(std::span<const Slot> slots) {
    for (const Slot& slot : slots)
        if (!slot.solved()) return false;
    return true;
}

double unit_w_k(const opening::UnitSize& size, double glass_u_w_m2k, std::span<const Slot> alone) {
    const Slot &head = at(alone, Position::head), &jamb = at(alone, Position::jamb),
               &sill = at(alone, Position::sill), &rail = at(alone, Position::meeting_rail);
    const auto beyond_w_mk = [&](const Slot& slot) {
        return slot.excess_w_mk() - glass_u_w_m2k * slot.sight_m();
    };
    const double across_m = size.width_m - jamb.sight_m();
    const double along_m = size.height_m - (head.sight_m() + sill.sight_m()) / 2;
    return glass_u_w_m2k * size.width_m * size.height_m +
           (beyond_w_mk(head) + beyond_w_mk(sill)) * across_m + 2 * beyond_w_mk(jamb) * along_m +
           beyond_w_mk(rail) * (size.width_m - 2 * jamb.sight_m());
}

double length_m(const opening::Opening& o, Position position) {
    return position == Position::jamb ? 2 * o.height_m : o.width_m;
}

/// What shows of the unit by parts: four sides with mitred corners and the meeting rail; each of
/// the two panes has a band of edge all around.
void add_parts(const opening::UnitSize& size, std::span<const Slot> alone, WindowConductance& w) {
    const Slot &head = at(alone, Position::head), &jamb = at(alone, Position::jamb),
               &sill = at(alone, Position::sill), &rail = at(alone, Position::meeting_rail);
    const double clear_width_m = size.width_m - 2 * jamb.sight_m();
    const double clear_height_m = size.height_m - head.sight_m() - sill.sight_m() - rail.sight_m();
    const double band_m = opening::edge_band_m;
    const auto add = [&](const Slot& slot, double frame_m, double glass_m, int bands) {
        w.frame_w_k += slot.frame_w_mk() * frame_m;
        w.frame_m2 += slot.sight_m() * frame_m;
        w.edge_w_k += slot.edge_w_mk() * glass_m;
        w.edge_m2 += bands * band_m * glass_m;
    };
    const double across_m = clear_width_m - band_m, along_m = clear_height_m - 2 * band_m;
    add(head, size.width_m - jamb.sight_m(), across_m, 1);
    add(sill, size.width_m - jamb.sight_m(), across_m, 1);
    add(rail, clear_width_m, across_m, 2);
    const double jamb_m = size.height_m - (head.sight_m() + sill.sight_m()) / 2;
    add(jamb, 2 * jamb_m, 2 * along_m, 1);
}

/// Sum of `w_m` over the sides and the meeting rail. Sides still missing are taken like the mean of
/// the others; the meeting rail is like no other.
template <class PerMetre>
double around(const opening::Opening& o, std::span<const Slot> alone,
              std::span<const Slot> installed, PerMetre w_m) {
    double sides_w = 0, rail_w = 0, known_m = 0;
    for (std::size_t i = 0; i < installed.size(); ++i) {
        if (!installed[i].solved() || !alone[i].solved()) continue;
        const Position position = installed[i].position();
        const double w = w_m(alone[i], installed[i]) * length_m(o, position);
        if (position == Position::meeting_rail) {
            rail_w = w;
            continue;
        }
        sides_w += w;
        known_m += length_m(o, position);
    }
    return rail_w + (known_m > 0 ? sides_w * 2 * (o.width_m + o.height_m) / known_m : 0);
}

} // namespace

WindowConductance window_conductance(const opening::Case& c, double glass_u_w_m2k,
                                     std::span<const Slot> alone, std::span<const Slot> installed) {
    const opening::UnitSize size = opening::unit_size(c.opening);
    WindowConductance result;
    result.unit_m2 = size.width_m * size.height_m;
    result.opening_m2 = c.opening.width_m * c.opening.height_m;
    if (!all_solved(alone)) return result;
    result.unit_w_k = unit_w_k(size, glass_u_w_m2k, alone);
    add_parts(size, alone, result);
    result.joint_w_k =
        around(c.opening, alone, installed, [](const Slot& unit, const Slot& in_wall) {
            return in_wall.excess_w_mk() - unit.excess_w_mk();
        });
    result.stream_w = around(c.opening, alone, installed, [](const Slot&, const Slot& in_wall) {
        return in_wall.stream_heat_w_m();
    });
    return result;
}

} // namespace shimlight::assess
