// SPDX-License-Identifier: MIT
#include "app/page.hpp"

#include <emscripten.h>

#include <cstdlib>

// Each function forwards to the object `page` that web/host.js hands to the module.
// The macro's expansion is not pedantic C++.
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpedantic"

// clang-format off
EM_JS(void, page_look, (float* out), {
    const values = Module["page"].look();
    for (let i = 0; i < values.length; i++) HEAPF32[(out >> 2) + i] = values[i];
})

EM_JS(char*, page_stored, (int generation), {
    const text = Module["page"].stored(generation);
    if (text === null) return 0;
    const bytes = new TextEncoder().encode(text);
    const at = _malloc(bytes.length + 1);
    HEAPU8.set(bytes, at);
    HEAPU8[at + bytes.length] = 0;
    return at;
})

// No extension is used, and to ask for them waits for the card.
EM_JS(int, page_context, (int card), {
    if (Module["card"] !== !!card) return 0;
    const made = GL.registerContext(Module["gl"], { majorVersion: 2, enableExtensionsByDefault: false });
    GL.makeContextCurrent(made);
    return made;
})

EM_JS(void, page_moved, (const char* moves), { Module["page"].moved(UTF8ToString(moves)); })
EM_JS(void, page_keep, (const char* json), { Module["page"].keep(UTF8ToString(json)); })
EM_JS(void, page_mirror, (const char* nodes), { Module["page"].mirror(UTF8ToString(nodes)); })
EM_JS(void, page_link, (const char* house), { Module["page"].link(UTF8ToString(house)); })
EM_JS(void, page_offer, (const char* name, const char* content), {
    Module["page"].offer(UTF8ToString(name), UTF8ToString(content));
})
EM_JS(void, page_act, (const char* what, const char* text, const char* other), {
    Module["page"].act(UTF8ToString(what), UTF8ToString(text), UTF8ToString(other));
})
EM_JS(void, page_theme, (int theme), { Module["page"].theme(theme); })
EM_JS(void, page_text, (int size), { Module["page"].text(size); })
EM_JS(void, page_lessons, (int done), { Module["page"].lessons(done); })
EM_JS(void, page_report, (const char* json), { Module["page"].report(JSON.parse(UTF8ToString(json))); })
EM_JS(void, page_title, (const char* title), { Module["page"].title(UTF8ToString(title)); })
EM_JS(void, page_cursor, (const char* name), { Module["page"].cursor(UTF8ToString(name)); })
EM_JS(void, page_asleep, (int asleep), { Module["page"].asleep(!!asleep); })
EM_JS(void, page_drawable, (int drawable), { Module["page"].drawable(!!drawable); })
EM_JS(void, page_solve, (), { Module["page"].solve(); })
EM_JS(void, page_drawn, (), { Module["page"].drawn(); })
// clang-format on

#pragma clang diagnostic pop

namespace shimlight::app::page {

Look look() {
    float values[15] = {};
    page_look(values);
    Look look;
    look.width_px = values[0];
    look.height_px = values[1];
    look.dpr = values[2];
    look.device_width = static_cast<int>(values[3]);
    look.device_height = static_cast<int>(values[4]);
    look.safe_top = values[5];
    look.safe_right = values[6];
    look.safe_bottom = values[7];
    look.safe_left = values[8];
    look.dark = values[9] != 0;
    look.reduced_motion = values[10] != 0;
    look.hidden = values[11] != 0;
    look.theme = static_cast<int>(values[12]);
    look.text = static_cast<int>(values[13]);
    look.lessons_done = static_cast<int>(values[14]);
    return look;
}

std::optional<std::string> stored_house(int generation) {
    char* text = page_stored(generation);
    if (!text) return std::nullopt;
    std::string copy = text;
    std::free(text);
    return copy;
}

int make_context(bool card) {
    return page_context(card ? 1 : 0);
}

void keep_moves(const std::string& moves) {
    page_moved(moves.c_str());
}
void keep_house(const std::string& json) {
    page_keep(json.c_str());
}
void show_mirror(const std::string& nodes) {
    page_mirror(nodes.c_str());
}
void offer_link(const std::string& house) {
    page_link(house.c_str());
}

void offer_file(const std::string& name, const std::string& content) {
    page_offer(name.c_str(), content.c_str());
}
void act(const char* what, const std::string& text, const std::string& other) {
    page_act(what, text.c_str(), other.c_str());
}
void set_theme(int theme) {
    page_theme(theme);
}
void set_text(int size) {
    page_text(size);
}
void set_lessons(int done) {
    page_lessons(done);
}
void report(const std::string& json) {
    page_report(json.c_str());
}
void set_title(const std::string& title) {
    page_title(title.c_str());
}
void set_cursor(const char* css_name) {
    page_cursor(css_name);
}
void set_drawable(bool drawable) {
    page_drawable(drawable ? 1 : 0);
}
void set_asleep(bool asleep) {
    page_asleep(asleep ? 1 : 0);
}
void solve_soon() {
    page_solve();
}

void frame_drawn() {
    page_drawn();
}

} // namespace shimlight::app::page
