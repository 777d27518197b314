// SPDX-License-Identifier: MIT
#include "app/shader.hpp"

#include <GLES3/gl3.h>

#include <cstdio>

namespace shimlight::app {
namespace {

GLuint compile(GLenum stage, std::initializer_list<const char*> sources) {
    const GLuint shader = glCreateShader(stage);
    glShaderSource(shader, static_cast<GLsizei>(sources.size()), sources.begin(), nullptr);
    glCompileShader(shader);
    GLint done = 0;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &done);
    if (done) return shader;
    char words[1024] = "";
    glGetShaderInfoLog(shader, sizeof words, nullptr, words);
    std::fprintf(stderr, "shader: %s\n", words);
    glDeleteShader(shader);
    return 0;
}

} // namespace

unsigned make_program(std::initializer_list<const char*> vertex,
                      std::initializer_list<const char*> fragment) {
    const GLuint first = compile(GL_VERTEX_SHADER, vertex);
    const GLuint second = compile(GL_FRAGMENT_SHADER, fragment);
    if (!first || !second) return 0;
    const GLuint program = glCreateProgram();
    glAttachShader(program, first);
    glAttachShader(program, second);
    glLinkProgram(program);
    glDeleteShader(first);
    glDeleteShader(second);
    GLint done = 0;
    glGetProgramiv(program, GL_LINK_STATUS, &done);
    if (done) return program;
    char words[1024] = "";
    glGetProgramInfoLog(program, sizeof words, nullptr, words);
    std::fprintf(stderr, "shader program: %s\n", words);
    glDeleteProgram(program);
    return 0;
}

} // namespace shimlight::app
