// SPDX-License-Identifier: MIT
// The ink over the wash: outlines, temperature along the inside surface, wet stretches, creeping
// air, the labels of the glass faces.
#pragma once

#include "section/flux_lines.hpp"
#include "view/callout.hpp"
#include "view/section_reading.hpp"

namespace shimlight::view {

/// One cut as it stands on the screen.
struct DrawnCut {
    Solved solved;
    Placement placement;
    TemperatureScale scale;
    double dew_point_c = 0;
    double room_c = 21;
    float opacity = 1;
    const std::vector<OutlineStroke>* strokes = nullptr;
    const std::vector<section::FluxLine>* heat = nullptr; ///< null: not to be drawn
};

/// The ways of the heat from the room outwards, with an arrow on each.
void draw_heat_lines(Ui& ui, const DrawnCut& cut);

void draw_outlines(Ui& ui, const DrawnCut& cut);

/// A blind as tilted slats, a shade as a line, a curtain as a wave; air that spills out below the
/// hem as an arrow.
void draw_covering(Ui& ui, const DrawnCut& cut, double spill_m_s);

/// The colder the surface, the further this band stands out into the room.
void draw_surface_band(Ui& ui, const DrawnCut& cut);

/// Drops along the stretches of the inside surface that are below the dew point.
void draw_wet(Ui& ui, const DrawnCut& cut);

/// Air creeping along `way`; `flow_m3_s` positive comes in. `phase_m` moves the dashes.
void draw_leak(Ui& ui, const DrawnCut& cut, const std::vector<section::Point>& way,
               double flow_m3_s, double phase_m);

/// Temperature of every glass face near the far end of the glass, fanned out to both sides of
/// `area`; `clear_px` of that end are covered by something else. After the callouts have been
/// added: no letters on what they point at.
void draw_glass_faces(Ui& ui, const DrawnCut& cut, const physics::GlazingResult& glass,
                      CalloutPlacer& placer, Box area, bool roomy, float clear_px);

} // namespace shimlight::view
