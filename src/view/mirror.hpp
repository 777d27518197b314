// SPDX-License-Identifier: MIT
// What the screen says of itself: every widget call leaves its role, name, value and rectangle
// here, and finds here what was done to it through the DOM. The platform turns the nodes into real,
// transparent DOM controls over the canvas.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::view {

enum class Role {
    heading, ///< name is the text; value the level "1"…"4"
    button,  ///< press
    toggle,  ///< pressed or not
    tab,     ///< one of a row of views; selected or not
    slider,  ///< a range; value is what a screen reader says for the number
    choice,  ///< a drop-down; options, selected index in now
    text,    ///< a line of text to edit; value is its content
    number,  ///< a typed number beside a slider; value is its content as shown
    output,  ///< a result: name and value
    figure,  ///< a result that opens a card of its own on a press
    status,  ///< announced politely when it changes
    image,   ///< the picture; value is its description in words
    photo    ///< a photograph that the page shows: value is its id, name what it shows
};

struct MirrorRect {
    float x = 0, y = 0, w = 0, h = 0; ///< CSS px on the canvas
};

struct MirrorNode {
    std::string id; ///< stable: "lever.weather.outside_c"
    Role role = Role::button;
    std::string name;
    std::string value;
    std::string help; ///< described-by text
    MirrorRect rect;
    double min = 0, max = 1, now = 0, step = 1; ///< slider; choice: now is the index
    std::vector<std::string> options;
    bool on = false; ///< toggle, tab
    bool enabled = true;
    std::string
        action; ///< what the page itself must do: "open-file" asks for a file on a press,
                ///< "add-photo" for a photograph, "show-photo" shows it large, "copy" puts `value`
                ///< on the clipboard, "no-tab" keeps it out of the Tab order; "" for nothing
    bool reachable = true; ///< false when scrolled out of sight: a tap there is not meant for it
    bool cut = false;      ///< at least a part is scrolled out of sight; `rect` is what is left
    bool modal = false;    ///< of a card over the page: nothing else can be reached
    std::string group;     ///< region the node belongs to: "levers", "results", "views" …
};

/// What was done through the DOM since the last frame.
struct MirrorEvent {
    enum class Kind { press, number, text, focus, blur };
    std::string id;
    Kind kind = Kind::press;
    double number = 0;
    std::string text;
};

class Mirror {
  public:
    /// Starts a frame: forgets the nodes, takes the events.
    void begin(std::vector<MirrorEvent> events);
    void add(MirrorNode node) { nodes_.push_back(std::move(node)); }

    bool pressed(std::string_view id) const;
    std::optional<double> number(std::string_view id) const;
    std::optional<std::string> text(std::string_view id) const;
    /// The node with the DOM focus; the screen draws the focus ring there.
    bool focused(std::string_view id) const { return id == focus_; }

    const std::vector<MirrorNode>& nodes() const { return nodes_; }

  private:
    std::vector<MirrorNode> nodes_;
    std::vector<MirrorEvent> events_;
    std::string focus_;
};

} // namespace shimlight::view
