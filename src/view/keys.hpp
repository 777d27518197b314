// SPDX-License-Identifier: MIT
// All keys that do something, as one table: the card shows it, the tests press it.
#pragma once

namespace shimlight::view {

struct Key {
    const char* keys;
    const char* what;
    /// What the page sends for it: a mirror node's id, or how it ends on a lever's; "" where the
    /// focused control does it by itself.
    const char* sends;
};

inline constexpr Key all_keys[] = {
    {"Tab, Shift+Tab", "To the next control, or the one before.", ""},
    {"Enter, Space", "Presses the button.", ""},
    {"Arrows", "On a lever one step; on the views the next one.", ""},
    {"Page Up, Page Down, Home, End", "On a lever larger steps; its least and its most.", ""},
    {"Delete", "Takes a lever back to its earlier value.", ".back"},
    {"Shift+F10, menu key", "Opens a lever's card.", ".card"},
    {"Ctrl+Z", "Undo.", "menu.undo"},
    {"Ctrl+Y, Ctrl+Shift+Z", "Redo.", "menu.redo"},
    {"Ctrl+S", "Saves the house to a file.", "menu.save"},
    {"Ctrl+O", "Opens a file.", "menu.open"},
    {"Page Down, arrow right", "In a lesson the next question.", "lesson.next"},
    {"Page Up, arrow left", "In a lesson back.", "lesson.back"},
    {"Escape", "Closes a card, ends presenting, leaves what is being typed.", "menu.escape"},
    {"?", "Opens this list.", "keys.open"}};

} // namespace shimlight::view
