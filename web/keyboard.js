// SPDX-License-Identifier: MIT
// Keys that belong to the whole screen. All others stay with the focused control.

const COMMANDS = { z: "menu.undo", y: "menu.redo", s: "menu.save", o: "menu.open" };

function typingIn(target) {
  return target instanceof HTMLInputElement && target.type !== "range";
}

// A clicker's two keys go through a lesson, wherever it asks.
const STEPS = {
  PageDown: "lesson.next", ArrowRight: "lesson.next",
  PageUp: "lesson.back", ArrowLeft: "lesson.back",
};

/// The step that a key means here; arrows belong to whatever control has the focus.
function lessonStep(event, mirror) {
  const step = STEPS[event.key];
  const arrow = event.key.startsWith("Arrow");
  if (!step || (arrow && event.target.closest("input, select, [role=tab]"))) return undefined;
  return mirror.nodes.some((node) => node.i === step && !node.x) ? step : undefined;
}

/// What a key does to the lever that has the focus.
function leverKey(event) {
  if (event.key === "Delete") return ".back";
  return event.key === "ContextMenu" || (event.shiftKey && event.key === "F10") ? ".card" : undefined;
}

export function listenToKeys(program, mirror, press) {
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !typingIn(event.target)) {
      program.tell("escape");
      press("menu.escape");
      return;
    }
    if (event.key === "?" && !typingIn(event.target)) return press("keys.open");
    const end = leverKey(event), lever = `${event.target.dataset?.id}${end}`;
    if (end && mirror.nodes.some((node) => node.i === lever)) {
      event.preventDefault();
      press(lever);
      return;
    }
    const step = lessonStep(event, mirror);
    if (step) {
      event.preventDefault();
      press(step);
      return;
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const command = key === "z" && event.shiftKey ? "menu.redo" : COMMANDS[key];
    if (!command) return;
    // While a text is being typed its own undo comes first.
    if (typingIn(event.target) && (key === "z" || key === "y")) return;
    event.preventDefault();
    if (command === "menu.open") mirror.openFile();
    press(command);
  });
}
