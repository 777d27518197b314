// SPDX-License-Identifier: MIT
// The room as it stands on the screen: wall, window, heater, covering, chair and person, to scale.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

struct RoomScene {
    opening::Case c;
    const assess::Assessment* result = nullptr;
    TemperatureScale scale;
    Box area;    ///< of the drawing
    ImVec2 foot; ///< where the wall's inside face meets the floor
    float px_per_m = 1;
    double wall_m = 0;  ///< thickness of the wall
    double shown_m = 0; ///< depth of the room that is seen

    ImVec2 at(double x_m, double y_m) const {
        return {foot.x + static_cast<float>(x_m) * px_per_m,
                foot.y - static_cast<float>(y_m) * px_per_m};
    }
    Box box(double x0_m, double y0_m, double x1_m, double y1_m) const {
        const ImVec2 a = at(x0_m, y1_m), b = at(x1_m, y0_m);
        return {a.x, a.y, b.x - a.x, b.y - a.y};
    }
    double top_m() const { return c.opening.sill_m + c.opening.height_m; }
    bool covered() const { return result->covering.covered; }
    /// Inside face of what cools the air: the glass, or the covering before it.
    double face_m() const { return covered() ? 0.03 : -0.5 * wall_m; }
    double face_c() const;
    double seat_m() const { return c.room.seat_distance_m; }
    Box figure() const; ///< around chair and person
};

/// Fits the room, at least `shown_m` of its depth, into `area`; beside it outdoors is left
/// `outdoors_px`.
RoomScene room_scene(const Session& session, Shown of, Box area, float outdoors_px, double shown_m);

/// Heights of the places that are asked about, above the floor.
inline constexpr double ankle_m = 0.1, neck_m = 1.1;

ImU32 wash_ink(const RoomScene& scene, double temperature_c, float opacity);
void draw_building(Ui& ui, const RoomScene& scene);
void draw_figure(Ui& ui, const RoomScene& scene, bool held);

} // namespace shimlight::view
