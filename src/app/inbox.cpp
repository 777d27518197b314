// SPDX-License-Identifier: MIT
// The functions the page calls. Strings are zero-terminated UTF-8 owned by the page.
#include "app/inbox.hpp"

#include "app/shelf.hpp"
#include "house/embedded.hpp"

#include <emscripten.h>

#include <cfloat>

namespace shimlight::app {
namespace {

void wake() {
    if (inbox().wake) inbox().wake();
}

ImGuiMouseSource source_of(int kind) {
    if (kind == 1) return ImGuiMouseSource_TouchScreen;
    return kind == 2 ? ImGuiMouseSource_Pen : ImGuiMouseSource_Mouse;
}

} // namespace

Inbox& inbox() {
    static Inbox one;
    return one;
}

void Inbox::frame_taken() {
    events.clear();
    if (whole) opened_file.clear(); // else it waits for the rest, which reads it
    context_new = false;
    pinch.zoom = 0;
    pinch.pan = ImVec2(0, 0);
}

} // namespace shimlight::app

using shimlight::app::inbox;
using shimlight::view::MirrorEvent;

extern "C" {

EMSCRIPTEN_KEEPALIVE void shimlight_wake() {
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_solve() {
    inbox().solve();
}

EMSCRIPTEN_KEEPALIVE void shimlight_leave() {
    if (inbox().leave) inbox().leave();
}

/// `button` −1 for a mere move, else 0 left, 1 right, 2 middle; `kind` 0 mouse, 1 finger, 2 pen.
/// The place goes ahead of the button, so that a tap hits what lies under it.
EMSCRIPTEN_KEEPALIVE void shimlight_pointer(float x, float y, int button, int down, int kind) {
    ImGuiIO& io = ImGui::GetIO();
    inbox().touch = kind == 1;
    io.AddMouseSourceEvent(shimlight::app::source_of(kind));
    io.AddMousePosEvent(x / inbox().zoom, y / inbox().zoom);
    if (button >= 0) io.AddMouseButtonEvent(button, down != 0);
    shimlight::app::wake();
}

/// The pointer has left: a lifted finger, a mouse outside, a gesture taken over by the browser.
EMSCRIPTEN_KEEPALIVE void shimlight_pointer_gone() {
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    shimlight::app::wake();
}

/// Drops a press without a click: the pointer leaves before the button comes up.
EMSCRIPTEN_KEEPALIVE void shimlight_pointer_cancel() {
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    ImGui::GetIO().AddMouseButtonEvent(0, false);
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_wheel(float x, float y) {
    ImGui::GetIO().AddMouseWheelEvent(x, y);
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_pinch(float zoom, float x, float y, float pan_x, float pan_y,
                                          int active) {
    auto& pinch = inbox().pinch;
    pinch.zoom += zoom;
    const float zoom_now = inbox().zoom;
    pinch.centre = ImVec2(x / zoom_now, y / zoom_now);
    pinch.pan.x += pan_x / zoom_now;
    pinch.pan.y += pan_y / zoom_now;
    pinch.active = active != 0;
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_escape() {
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Escape, true);
    ImGui::GetIO().AddKeyEvent(ImGuiKey_Escape, false);
    shimlight::app::wake();
}

/// `kind` as in MirrorEvent::Kind.
EMSCRIPTEN_KEEPALIVE void shimlight_mirror_event(int kind, const char* id, double number,
                                                 const char* text) {
    inbox().events.push_back({id, static_cast<MirrorEvent::Kind>(kind), number, text});
    shimlight::app::wake();
}

/// `from_link`: one opening for the house that is here, else a file in its place.
EMSCRIPTEN_KEEPALIVE void shimlight_opened(const char* content, int from_link) {
    inbox().opened_file = content;
    inbox().from_link = from_link != 0;
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_storage_note(const char* note) {
    inbox().storage_note = note;
    shimlight::app::wake();
}

/// Does what `moves` tells of levers.
EMSCRIPTEN_KEEPALIVE void shimlight_moves(const char* moves) {
    inbox().moves(moves);
}

/// Puts another house on the screen; what is on it is kept first. 0 when it cannot be read.
EMSCRIPTEN_KEEPALIVE int shimlight_house(const char* json) {
    return inbox().show_house(json) ? 1 : 0;
}

/// What is wrong with a house's text, with the path; empty when it can be read.
EMSCRIPTEN_KEEPALIVE const char* shimlight_fault(const char* json) {
    return shimlight::app::fault_of(json).c_str();
}

/// The list of kept houses anew.
EMSCRIPTEN_KEEPALIVE void shimlight_shelf(const char* json) {
    shimlight::app::take_shelf(json);
    shimlight::app::wake();
}

/// The second part of the program can be called from now on; `lessons` came with it.
EMSCRIPTEN_KEEPALIVE void shimlight_whole(const char* lessons) {
    static std::string kept;
    kept = lessons;
    shimlight::house::lessons_text = kept;
    inbox().whole = true;
    shimlight::app::wake();
}

EMSCRIPTEN_KEEPALIVE void shimlight_context(int lost) {
    inbox().context_lost = lost != 0;
    inbox().context_new = lost == 0;
    shimlight::app::wake();
}

} // extern "C"
