// SPDX-License-Identifier: MIT
#include "app/shader.hpp"

#include <GLES3/gl3.h>

#include <cstdio>

namespace shimlight::app {
namespace {

void attach(GLuint program, GLenum stage, std::initializer_list<const char*> sources) {
    const GLuint shader = glCreateShader(stage);
    glShaderSource(shader, static_cast<GLsizei>(sources.size()), sources.begin(), nullptr);
    glCompileShader(shader);
    glAttachShader(program, shader);
}

} // namespace

unsigned make_program(std::initializer_list<const char*> vertex,
                      std::initializer_list<const char*> fragment) {
    const GLuint program = glCreateProgram();
    attach(program, GL_VERTEX_SHADER, vertex);
    attach(program, GL_FRAGMENT_SHADER, fragment);
    glLinkProgram(program);
    return program;
}

void set_units(unsigned program, std::initializer_list<const char*> samplers) {
    glUseProgram(program);
    GLint unit = 0;
    for (const char* sampler : samplers)
        glUniform1i(glGetUniformLocation(program, sampler), unit++);
}

bool is_linked(unsigned program) {
    GLint done = 0;
    glGetProgramiv(program, GL_LINK_STATUS, &done);
    if (done) return true;
    GLuint shaders[2] = {};
    GLsizei count = 0;
    glGetAttachedShaders(program, 2, &count, shaders);
    char words[1024] = "";
    for (GLsizei i = 0; i < count; ++i) {
        glGetShaderInfoLog(shaders[i], sizeof words, nullptr, words);
        std::fprintf(stderr, "shader: %s\n", words);
    }
    glGetProgramInfoLog(program, sizeof words, nullptr, words);
    std::fprintf(stderr, "shader program: %s\n", words);
    return false;
}

} // namespace shimlight::app
