// SPDX-License-Identifier: MIT
// What every widget needs, and the few widgets that all screens share. Each call draws, listens to
// finger and mirror, and registers itself in the mirror: one source of truth.
#pragma once

#include "view/platform.hpp"
#include "view/theme.hpp"
#include "view/units.hpp"

#include <string>
#include <string_view>

namespace shimlight::view {

struct Box {
    float x = 0, y = 0, w = 0, h = 0;
    float right() const { return x + w; }
    float bottom() const { return y + h; }
    ImVec2 min() const { return {x, y}; }
    ImVec2 max() const { return {x + w, y + h}; }
    ImVec2 centre() const { return {x + w / 2, y + h / 2}; }
    bool contains(ImVec2 p) const {
        return p.x >= x && p.x < right() && p.y >= y && p.y < bottom();
    }
    Box shrunk(float by) const { return {x + by, y + by, w - 2 * by, h - 2 * by}; }
};

/// Whose the finger is once its first movement has decided.
enum class Grip { undecided, lever, scroll, picture, held };

/// Follows one finger (or the mouse) from touch to release.
struct Gesture {
    Grip grip = Grip::undecided;
    ImVec2 start;
    bool down = false;
    bool settled = false; ///< released in this frame after having moved something
    void follow();
};

/// The list of an opened drop-down, drawn over everything else.
struct Overlay {
    std::string id; ///< of the drop-down that is open; empty when none is
    Box anchor;
    std::vector<std::string> options;
    int now = -1;
    std::string chosen_id; ///< set for one frame when something was chosen
    int chosen = -1;
};

class Why;
class LeverCard;

struct Ui {
    const Platform& platform;
    Wishes& wishes;
    const Theme& theme;
    Mirror& mirror;
    ImDrawList* list;
    Gesture& gesture;
    Overlay& overlay;
    Units units = Units::us;
    std::string group;    ///< region of the mirror that nodes are added to
    Box visible;          ///< nodes outside are scrolled out of sight
    bool blocked = false; ///< an overlay is open: nothing beneath it listens to the finger
    bool modal = false;   ///< what is drawn now belongs to a card over the page
    Why* why = nullptr;   ///< the card that explains a figure
    LeverCard* lever_card = nullptr;
    bool paper = false; ///< drawn to be printed: nothing can be pressed
};

/// A frame's only window: as large as the screen, without any decoration of its own.
void begin_page(const Platform& p, const Theme& theme);
void end_page();

/// Whether anything in `box` would be seen: what is scrolled out of sight need not be drawn.
bool in_sight(const Ui& ui, Box box);

enum class Align { left, centre, right };

float font_px(const Ui& ui, const ImFont* font);
ImVec2 text_size(const Ui& ui, ImFont* font, std::string_view text);

/// One line of text, snapped to device pixels so that it is crisp at any ratio.
void text(Ui& ui, ImFont* font, ImVec2 at, ImU32 colour, std::string_view line,
          Align align = Align::left);

/// Where a line of these words ends: at a blank, and never so that the next line begins with
/// closing punctuation. `scale` is of the font's own size.
const char* line_end(const ImFont* font, float scale, const char* from, const char* end,
                     float width);

/// Text broken into lines of `width`; returns the height. Draws nothing when `draw` is false.
float paragraph(Ui& ui, ImFont* font, ImVec2 at, float width, ImU32 colour, std::string_view words,
                bool draw = true);

/// One line that ends in "…" where it does not fit.
void text_fitted(Ui& ui, ImFont* font, ImVec2 at, float width, ImU32 colour, std::string_view line);

void fill(Ui& ui, Box box, ImU32 colour, float radius = 0);
void frame(Ui& ui, Box box, ImU32 colour, float radius = 0, float thickness = 1);

/// Tells the mirror where a node lies and of which region it is, as far as it is in sight.
void put_in_place(const Ui& ui, MirrorNode& node, Box box);

/// Registers a node that has no behaviour of its own (headings, outputs).
void note(Ui& ui, Role role, std::string_view id, Box box, std::string_view name,
          std::string_view value = "");

enum class ButtonLook { plain, outlined, filled, tab };

struct ButtonStyle {
    ButtonLook look = ButtonLook::outlined;
    Role role = Role::button;
    bool on = false;
    bool enabled = true;
    bool compact = false; ///< drawn smaller than its touch target
    bool sign = false;    ///< the label is a sign, drawn larger
    std::string help;
    std::string action;
    std::string value;  ///< what the action works with
    std::string spoken; ///< name in the mirror when the label is a sign
};

/// True when pressed by finger, mouse, key or mirror.
bool button(Ui& ui, std::string_view id, Box box, std::string_view label,
            const ButtonStyle& style = {});

/// Invisible press area with hover; `held` while pressed. Shared by the widgets.
struct Touch {
    bool pressed = false, hovered = false, held = false;
};
Touch touch_area(Ui& ui, std::string_view id, Box box);

/// The ring around what has the keyboard's focus.
void focus_ring(Ui& ui, std::string_view id, Box box, float radius = radius_px);

/// A drop-down whose list opens over the page; returns the newly chosen index or -1.
int choice(Ui& ui, std::string_view id, Box box, std::string_view name,
           const std::vector<std::string>& options, int now);

/// A tab that opens a list of further tabs; returns the chosen one's index or -1.
int menu_tab(Ui& ui, std::string_view id, Box box, std::string_view label,
             const std::vector<std::string>& options, int now);

/// Draws the open drop-down's list, if any. Last thing in a frame.
void draw_overlay(Ui& ui);

} // namespace shimlight::view
