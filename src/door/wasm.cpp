// SPDX-License-Identifier: MIT
// The door as WASM exports it. web/open_door.mjs is the other side.
#include "door/door.hpp"

#include <string>

#ifdef __EMSCRIPTEN__
#include <emscripten/emscripten.h>
#else
#define EMSCRIPTEN_KEEPALIVE
#endif

namespace {

std::string question_bytes, answer_text; // each lives until the next call

} // namespace

extern "C" {

/// Room for a question: the caller writes its name and its JSON there, each ended by a zero.
EMSCRIPTEN_KEEPALIVE char* shimlight_room_for(int bytes) {
    question_bytes.assign(bytes > 0 ? static_cast<std::size_t>(bytes) : 0, '\0');
    return question_bytes.data();
}

/// The answer, ended by a zero; it stays until the next question.
EMSCRIPTEN_KEEPALIVE const char* shimlight_ask(const char* question, const char* json) {
    answer_text = shimlight::door::ask(question, json);
    return answer_text.c_str();
}
}
