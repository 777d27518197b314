// SPDX-License-Identifier: MIT
// The seam to the page: what the program asks of it. What the page tells the program comes in
// through the exported functions of inbox.cpp.
#pragma once

#include <optional>
#include <string>

namespace shimlight::app::page {

/// The canvas as the page has laid it out, in CSS px; the backing store is of that size.
struct Look {
    float width_px = 0, height_px = 0, dpr = 1;
    int device_width = 0, device_height = 0; ///< device px of the backing store
    float safe_top = 0, safe_right = 0, safe_bottom = 0, safe_left = 0;
    bool dark = false, reduced_motion = false, hidden = false;
    int theme = 0;        ///< the reader's choice: 0 system, 1 light, 2 dark
    int text = 0;         ///< the reader's choice: index of view::text_scales
    int lessons_done = 0; ///< a bit each, see view::Platform
};

/// Sizes the backing store to the layout and tells how things stand.
Look look();

/// The stored house, newest generation first; empty when there is none of that generation.
std::optional<std::string> stored_house(int generation);

/// The WebGL2 context of the canvas (web/host.js), made current; 0: there is none. `card`: only
/// with a graphics card, not with software that plays one.
int make_context(bool card);

/// Keeps between visits what levers did to the house of the start, as view::Screen::moves() tells
/// it, while what writes houses has not come.
void keep_moves(const std::string& moves);
/// Keeps the house between visits; the page answers with a storage note.
void keep_house(const std::string& json);

/// New nodes for the DOM mirror, as JSON.
void show_mirror(const std::string& nodes);

void offer_file(const std::string& name, const std::string& content);
/// Shares or copies an address that carries the house.
void offer_link(const std::string& house);
/// Does something with the kept houses; which acts there are says web/library.js.
void act(const char* what, const std::string& text, const std::string& other);
void set_theme(int theme); ///< 0 system, 1 light, 2 dark
void set_text(int size);   ///< index of view::text_scales
void set_lessons(int done);
/// For web/pictures.js and web/report.js: two numbers begin a picture of that size, three end it
/// (the third is its number), an object is the pages.
void report(const std::string& json);
void set_title(const std::string& title);
void set_cursor(const char* css_name);

/// Whether there is a picture; without one the page shows the mirror.
void set_drawable(bool drawable);
/// Whether drawing goes on; the page keeps it for whoever waits for a picture at rest.
void set_asleep(bool asleep);

/// Comes back through shimlight_solve() as a task of its own.
void solve_soon();

/// A frame has been drawn; the first one lets the page take its opening words away.
void frame_drawn();

} // namespace shimlight::app::page
