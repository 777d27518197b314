// SPDX-License-Identifier: MIT
#pragma once

#include <initializer_list>

namespace shimlight::app {

/// Has it compiled and linked; the sources of each stage are taken one after the other. It goes on
/// beside what is done next: nothing is asked before it is used.
unsigned make_program(std::initializer_list<const char*> vertex,
                      std::initializer_list<const char*> fragment);

/// Numbers the samplers of a linked program: the first looks at texture unit 0. Leaves it in use.
void set_units(unsigned program, std::initializer_list<const char*> samplers);

/// What a fragment shader made of several files begins with.
inline constexpr char field_head[] =
    "#version 300 es\nprecision highp float;\nprecision highp int;\n";

/// Waits for it. False when it failed, with the compiler's words on standard error.
bool is_linked(unsigned program);

} // namespace shimlight::app
