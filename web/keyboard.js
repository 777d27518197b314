// SPDX-License-Identifier: MIT
// Keys that belong to the whole screen. All others stay with the focused control.

const COMMANDS = { z: "menu.undo", y: "menu.redo", s: "menu.save", o: "menu.open" };

function typingIn(target) {
  return target instanceof HTMLInputElement && target.type !== "range";
}

export function listenToKeys(program, mirror, press) {
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !typingIn(event.target)) {
      program._shimlight_escape();
      press("menu.escape");
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
