// SPDX-License-Identifier: MIT
// The mirror's nodes as the text that crosses to the page. web/mirror.js reads it.
#pragma once

#include "view/mirror.hpp"

#include <string>
#include <vector>

namespace shimlight::app {

/// A JSON array with one object a node. Keys are single letters and left out at their default:
/// i id, r role, n name, v value, h help, b [x,y,w,h], s [min,max,now,step], o options, p on,
/// x not enabled, u not reachable, a action, g group.
/// `zoom`: CSS px of the page for each px of the nodes.
std::string mirror_json(const std::vector<view::MirrorNode>& nodes, float zoom);

/// `text` with its quotation marks, for a JSON text.
void put_string(std::string& out, const std::string& text);

} // namespace shimlight::app
