// SPDX-License-Identifier: MIT
#pragma once

#include <initializer_list>

namespace shimlight::app {

/// Compiles and links; the sources of each stage are taken one after the other. 0 when it fails,
/// with the compiler's words on standard error.
unsigned make_program(std::initializer_list<const char*> vertex,
                      std::initializer_list<const char*> fragment);

} // namespace shimlight::app
