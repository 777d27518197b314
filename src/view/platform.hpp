// SPDX-License-Identifier: MIT
// What a screen gets from the platform each frame, and what it may ask of it. The view draws with
// ImGui and, for temperature fields, through FieldPainter, which the platform implements in GL.
#pragma once

#include "assess/assessment.hpp"
#include "view/mirror.hpp"
#include "view/temperature_scale.hpp"

#include <imgui.h>

#include <string>
#include <vector>

namespace shimlight::view {

/// Fonts by role; sizes are CSS px at 100 %.
struct Fonts {
    ImFont* small = nullptr;  ///< 13 regular
    ImFont* body = nullptr;   ///< 15 regular
    ImFont* strong = nullptr; ///< 15 semibold
    ImFont* title = nullptr;  ///< 20 semibold
    ImFont* figure = nullptr; ///< 20 bold, strip figures
    ImFont* large = nullptr;  ///< 28 bold
};

/// Placement of a cut on the screen. Sill and head stand upright: x to the right (outdoors on the
/// left), y upwards. The jamb is a plan, turned: y runs along the screen, x runs down (outdoors on
/// top, the room below).
struct Placement {
    ImVec2 origin; ///< CSS px, of the painting's (0, 0)
    float px_per_m = 1;
    bool turned = false;
    bool mirrored = false; ///< turned only: y runs to the left (the Remedy's jamb on the right)
    ImVec2 to_screen(section::Point p) const;
    section::Point to_section(ImVec2 screen) const;
};

/// One temperature field to be washed onto the screen.
struct FieldPicture {
    const assess::SolvedCut* solved = nullptr;
    Placement placement;
    ImVec2 clip_min, clip_max; ///< CSS px
    TemperatureScale scale;    ///< its hinge is the dew point: the heaviest isotherm
    float isotherm_step_c = 2;
    float opacity = 1; ///< for cross-fading
    bool dark = false;
};

/// Implemented by the platform. Called while the screen is being drawn; keeps the order of drawing.
class FieldPainter {
  public:
    virtual void paint(ImDrawList* list, const FieldPicture& picture) = 0;
    virtual ~FieldPainter() = default;
};

/// A house beside the one that is open.
struct ShelfHouse {
    std::string id, name;
    std::string words; ///< "3 openings · saved 9:41"
    bool trashed = false;
};

/// The houses that are kept on this device, without the one that is open.
struct Shelf {
    std::vector<ShelfHouse> houses; ///< newest first
    std::string promise;            ///< whether the browser has promised to keep them
    bool keeps = false;             ///< something can be kept here at all
    bool lent = false;              ///< the open house belongs to another tab: it is not kept here
};

struct Platform {
    float width_px = 360, height_px = 640; ///< CSS px
    float dpr = 1;
    float safe_top = 0, safe_right = 0, safe_bottom = 0, safe_left = 0;
    bool dark = false;
    bool reduced_motion = false;
    bool film_held = false; ///< this device draws films too slowly for them
    bool touch = false;     ///< the last pointer was a finger
    double time_s = 0;
    float wheel_zoom = 0; ///< ctrl+wheel or pinch since the last frame, log2 of the factor
    ImVec2 pinch_centre;  ///< CSS px
    ImVec2 pinch_pan;     ///< CSS px, two-finger drag since the last frame
    bool pinching = false;
    bool whole = true;        ///< the rest of the program is here (view/rest.hpp)
    std::string opened_file;  ///< content of a file the user has just opened, else empty
    bool from_link = false;   ///< that content came with a link: one opening for this house
    int theme_choice = 0;     ///< 0 follow the system, 1 light, 2 dark
    int text_choice = 0;      ///< size of the text: index of text_scales
    int lessons_done = 0;     ///< a bit for each of our own lessons that was run through
    std::string storage_note; ///< e.g. "Saved 9:41", or why it could not be saved
    const Shelf* shelf = nullptr;
    Fonts fonts;
    Mirror* mirror = nullptr;
    FieldPainter* painter = nullptr;
};

/// Whether air is shown in motion.
inline bool films(const Platform& p) {
    return !p.reduced_motion && !p.film_held;
}

class Report;

/// What the screen asks the platform to do after this frame.
struct Wishes {
    bool another_frame = false; ///< something moves
    bool film = false;          ///< air moves; nothing else needs the frame
    bool refine = false;        ///< sections are to be solved: Screen::refine between frames
    std::string save_name;      ///< non-empty: offer save_content as a file of this name
    std::string save_content;
    const char* act = nullptr; ///< with the houses, see web/library.js; what it works with follows
    std::string act_text, act_other;
    std::string link;         ///< non-empty: offer a link that carries this (house/link.hpp)
    int theme = -1;           ///< 0 follow the system, 1 light, 2 dark; -1 unchanged
    int text = -1;            ///< index of text_scales; -1 unchanged
    int lessons = 0;          ///< to be kept as lessons_done; 0 unchanged
    std::string title;        ///< document title
    Report* report = nullptr; ///< has a picture to be drawn for paper, or its pages to be shown
};

} // namespace shimlight::view
