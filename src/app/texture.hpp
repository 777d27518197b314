// SPDX-License-Identifier: MIT
#pragma once

#include <GLES3/gl3.h>

#include <initializer_list>

namespace shimlight::app {

/// How a sheet of numbers lies in a texture.
struct SheetKind {
    GLint kept_as;
    GLenum format, type;
};

/// A sheet that is looked up texel by texel; made with `texture` nil. Null numbers leave it to be
/// drawn.
void send_sheet(unsigned& texture, SheetKind kind, GLsizei width, GLsizei height,
                const void* numbers);

/// Lays textures into the units from 0 on.
void lay(std::initializer_list<unsigned> textures);

} // namespace shimlight::app
