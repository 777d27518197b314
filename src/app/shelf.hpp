// SPDX-License-Identifier: MIT
// What only web/library.js calls for, which comes with the second part of the program.
#pragma once

#include "view/rest.hpp"

#include <string>

namespace shimlight::app {

/// The kept houses beside the open one: {"promise", "keeps", "lent", "houses": [{"id", "name",
/// "words", "trashed"}]}, see view::Shelf.
SHIMLIGHT_REST void take_shelf(const char* json);

/// What is wrong with a house's text, with the path; empty when it can be read.
SHIMLIGHT_REST const std::string& fault_of(const char* json);

} // namespace shimlight::app
