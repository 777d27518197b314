// SPDX-License-Identifier: MIT
// Room: side view to scale with the person, the falling air, the leaks and the cold radiation.
#pragma once

#include "view/rest.hpp"
#include "view/room_scene.hpp"

namespace shimlight::view {

class RoomView {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);
    /// For the report: both rooms at rest, nothing to press.
    void draw_paper(Ui& ui, Session& session, Box box);

  private:
    bool dragged_ = false;        ///< the figure follows the finger
    double seat_at_start_m_ = 0;  ///< where it was then
    double shown_m_ = 3;          ///< depth of the room that is seen; stays during a drag
    double animate_from_s_ = -60; ///< of the last change: air is seen to move for a while
    int seen_revision_ = -1;

    void draw_part(Ui& ui, Session& session, Shown of, Box box, bool roomy, float foot);
    void draw_scene(Ui& ui, const RoomScene& scene, bool roomy, bool held);
    bool seat(Ui& ui, Session& session, Shown of, const RoomScene& scene);
};

/// Where the draft at the ankles comes from: a bar with hatches, words and percentages.
void draft_bar(Ui& ui, const physics::SeatResult& seat, std::string_view id, Box box, bool roomy);

} // namespace shimlight::view
