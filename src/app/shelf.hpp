// SPDX-License-Identifier: MIT
// What only web/library.js calls for, which comes with the second part of the program.
#pragma once

#include "view/rest.hpp"

#include <string>

namespace shimlight::app {

/// The list of kept houses anew, empty.
SHIMLIGHT_REST void begin_shelf(const char* promise, bool keeps, bool lent);
SHIMLIGHT_REST void put_on_shelf(const char* id, const char* name, const char* words, bool trashed);

/// What is wrong with a house's text, with the path; empty when it can be read.
SHIMLIGHT_REST const std::string& fault_of(const char* json);

} // namespace shimlight::app
