// SPDX-License-Identifier: MIT
#include "app/texture.hpp"

namespace shimlight::app {

void send_sheet(unsigned& texture, SheetKind kind, GLsizei width, GLsizei height,
                const void* numbers) {
    if (!texture) glGenTextures(1, &texture);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, texture);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, kind.kept_as, width, height, 0, kind.format, kind.type, numbers);
    for (const GLenum filter : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER})
        glTexParameteri(GL_TEXTURE_2D, filter, GL_NEAREST);
    for (const GLenum wrap : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T})
        glTexParameteri(GL_TEXTURE_2D, wrap, GL_CLAMP_TO_EDGE);
}

void lay(std::initializer_list<unsigned> textures) {
    GLenum unit = GL_TEXTURE0;
    for (const unsigned texture : textures) {
        glActiveTexture(unit++);
        glBindTexture(GL_TEXTURE_2D, texture);
    }
}

} // namespace shimlight::app
