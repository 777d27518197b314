// SPDX-License-Identifier: MIT
// Light or dark: the reader's choice, else the system's.

const system = matchMedia("(prefers-color-scheme: dark)");
const names = [undefined, "light", "dark"];

export class Theme {
  constructor(choice) {
    this.choice = choice;
    this.changed = () => {};
    this.show();
    system.addEventListener("change", () => this.changed());
  }

  /// 0 follow the system, 1 light, 2 dark.
  choose(choice) {
    this.choice = choice;
    this.show();
  }

  get dark() {
    return this.choice === 2 || (this.choice !== 1 && system.matches);
  }

  show() {
    const name = names[this.choice];
    if (name) document.documentElement.dataset.theme = name;
    else delete document.documentElement.dataset.theme;
  }
}
