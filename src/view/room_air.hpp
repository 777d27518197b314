// SPDX-License-Identifier: MIT
// The air in the room's picture: cold film and floor stream, leaks, the way back, cold radiation.
#pragma once

#include "view/pen.hpp"
#include "view/room_scene.hpp"

namespace shimlight::view {

/// Slower air is no draught (ISO 7730).
inline constexpr double felt_m_s = 0.05;

/// What `cause` alone brings to the ankles, m/s.
double cause_speed_m_s(const physics::SeatResult& seat, Cause cause);

/// What the pane takes from the felt (operative) temperature at the seat, K.
double felt_loss_k(const RoomScene& scene);

/// The cold that lies along glass, wall and floor.
void draw_wash(Ui& ui, const RoomScene& scene);

/// More for faster air, as far as they can be told apart.
int stream_lines(const RoomScene& scene);

/// Streamlines of the air that cold glass cools. Each carries the same flow; they begin where the
/// layer takes their air in, lie as far apart as it is thick, and end where it is no longer felt.
/// Marks on them are `time_s` on their way at the speed computed there.
void draw_cold_air(Ui& ui, const RoomScene& scene, double time_s);

/// Whether a leak is drawn: it is when its flow is worth it, or its share of the draft is told.
bool leak_drawn(const RoomScene& scene, Cause cause);
/// Heights on the screen at which the drawn leaks' lines run outdoors.
std::vector<float> leaks_outdoors(const RoomScene& scene, bool roomy);
/// The top of something `height_px` high within `from`…`to` that none of the lines runs through, as
/// near to `wanted` as can be; where there is no such place, in the middle of the widest gap.
float clear_of_lines(float from, float to, float height_px, std::vector<float> lines, float wanted);

/// Air through the cracks of sash or joint, in or out.
void draw_leaks(Ui& ui, const RoomScene& scene, Cause cause, double time_s, bool roomy);

/// Room air on its way back to the glass.
void draw_return(Ui& ui, const RoomScene& scene);

/// Body heat that goes straight to the cold pane.
void draw_rays(Ui& ui, const RoomScene& scene, bool roomy);

} // namespace shimlight::view
