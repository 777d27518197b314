// SPDX-License-Identifier: MIT
// Air: pressures on this storey and façade, and what flows through sash and joint.
#pragma once

#include "view/chart.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

#include <array>

namespace shimlight::view {

/// What is left of the leak after one measure.
struct LeakLeft {
    std::string name;
    double sash_m3_s = 0, shim_m3_s = 0;
};

/// Today, the measures against leaks one by one, the chosen remedy.
std::vector<LeakLeft> leaks_left(const Session& session);

/// Speed at the ankles by cold glass and by leaks over the wind; flows over the height in the
/// house. In the reader's units.
Chart wind_chart(const Ui& ui, const Session& session, Shown of);
Chart height_chart(const Ui& ui, const Session& session, Shown of);

class AirView {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);

  private:
    /// Costly extras of one of the two, kept until something changes.
    struct Kept {
        int revision = -1;
        Units units = Units::us;
        bool dark = false;
        double air_c = 0; ///< of the leaks: changes while the cuts are being solved
        Chart wind, height;
        std::vector<LeakLeft> left;
    };
    std::array<Kept, 2> kept_;
    Scroll scroll_;
    float content_px_ = 0;

    const Kept& kept(const Ui& ui, const Session& session, Shown of);
    float draw_part(Ui& ui, const Session& session, Shown of, Box box, bool bars);
};

} // namespace shimlight::view
