// SPDX-License-Identifier: MIT
// A report's blocks as the text that crosses to the page. web/report.js reads it.
#pragma once

#include "view/report_blocks.hpp"

#include <string>
#include <vector>

namespace shimlight::app {

/// {"by": id of the button, "blocks": […]}. Of a block: k kind (page, heading, sentence, table,
/// list, figure, signatures), l level, t words, m manner, d what a picture shows, h head and r rows
/// of cells, p number of the picture; each left out where there is none.
std::string report_json(const std::vector<view::Block>& blocks, const std::string& asked_by);

} // namespace shimlight::app
