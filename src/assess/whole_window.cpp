// SPDX-License-Identifier: MIT
// Area-weighted whole window: the centre-of-glass U over the whole area, plus what each side's
// frame and edge carry beyond it, on the length along the middle of the frame (mitred corners).
#include "assess/whole_window.hpp"

namespace shimlight::assess {

namespace {

using opening::Position;

// Height of the meeting rail that shows; common practice. It has no cut of its own yet: per area it
// is taken like the head, an estimate.
constexpr double meeting_rail_m = 0.035;

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
               &sill = at(alone, Position::sill);
    const auto beyond_w_mk = [&](const Slot& slot) {
        return slot.excess_w_mk() - glass_u_w_m2k * slot.sight_m();
    };
    const double across_m = size.width_m - jamb.sight_m();
    const double along_m = size.height_m - (head.sight_m() + sill.sight_m()) / 2;
    const double rail_w_mk = meeting_rail_m * beyond_w_mk(head) / head.sight_m();
    return glass_u_w_m2k * size.width_m * size.height_m +
           (beyond_w_mk(head) + beyond_w_mk(sill)) * across_m + 2 * beyond_w_mk(jamb) * along_m +
           rail_w_mk * (size.width_m - 2 * jamb.sight_m());
}

double side_m(const opening::Opening& o, Position position) {
    return position == Position::jamb ? 2 * o.height_m : o.width_m;
}

/// Sides whose wall cut is still missing are taken like the mean of the others.
double stream_w(const opening::Opening& o, std::span<const Slot> installed) {
    double sum_w = 0, known_m = 0;
    for (const Slot& slot : installed) {
        if (!slot.solved()) continue;
        sum_w += slot.stream_heat_w_m() * side_m(o, slot.position());
        known_m += side_m(o, slot.position());
    }
    return known_m > 0 ? sum_w * 2 * (o.width_m + o.height_m) / known_m : 0;
}

/// Sides whose wall cut is still missing are taken like the mean of the others.
double joint_w_k(const opening::Opening& o, std::span<const Slot> alone,
                 std::span<const Slot> installed) {
    double sum_w_k = 0, known_m = 0;
    for (std::size_t i = 0; i < installed.size(); ++i) {
        if (!installed[i].solved() || !alone[i].solved()) continue;
        const double side_m =
            installed[i].position() == Position::jamb ? 2 * o.height_m : o.width_m;
        sum_w_k += (installed[i].excess_w_mk() - alone[i].excess_w_mk()) * side_m;
        known_m += side_m;
    }
    return known_m > 0 ? sum_w_k * 2 * (o.width_m + o.height_m) / known_m : 0;
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
    result.joint_w_k = joint_w_k(c.opening, alone, installed);
    result.stream_w = stream_w(c.opening, installed);
    return result;
}

} // namespace shimlight::assess
