// SPDX-License-Identifier: MIT
// A word from the page itself, outside the canvas: a lost graphics card, a newer version.

const box = document.getElementById("notice");

/// `choices`: [label, action] pairs; the first one is the suggested.
export function showNotice(words, choices = []) {
  box.querySelector("p").textContent = words;
  box.querySelectorAll("button").forEach((button) => button.remove());
  choices.forEach(([label, action], index) => {
    const button = document.createElement("button");
    button.textContent = label;
    button.className = index === 0 ? "first" : "";
    button.addEventListener("click", () => {
      hideNotice();
      action();
    });
    box.append(button);
  });
  box.hidden = false;
}

export function hideNotice() {
  box.hidden = true;
}
