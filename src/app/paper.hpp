// SPDX-License-Identifier: MIT
// Draws a report's pictures beside the screen and hands its pages over.
#pragma once

#include "app/canvas.hpp"
#include "view/report.hpp"
#include "view/rest.hpp"

namespace shimlight::app {

/// What is due of the report. A picture is drawn into a frame buffer that the page binds and reads
/// (web/report.js): what is on the screen stays.
SHIMLIGHT_REST void serve_report(view::Report& report, Canvas& canvas);

} // namespace shimlight::app
