// SPDX-License-Identifier: MIT
// One DOM control per role of a mirror node: how it is made, kept up to date and listened to.
// Keys of a node are explained in src/app/mirror_json.hpp.

const TYPING_PAUSE_MS = 500; // what is being typed counts when the fingers rest
const ANNOUNCE_MS = 500; // a verdict is read out when it has settled

export function element(tag, attributes = {}, text) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  if (text !== undefined) made.textContent = text;
  return made;
}

/// Writes only what differs, so that nothing is announced or laid out in vain.
function setText(target, text) {
  if (target.textContent !== text) target.textContent = text;
}

function setAttribute(target, name, value) {
  if (value === null || value === undefined) target.removeAttribute(name);
  else if (target.getAttribute(name) !== String(value)) target.setAttribute(name, value);
}

function label(control) {
  return element("label", { for: control.id });
}

const press = {
  make(control, send) {
    control.addEventListener("click", () => send.press());
    return [control];
  },
};

const button = {
  tag: "button",
  attributes: { type: "button" },
  make: press.make,
  update(control, node) {
    setText(control, node.n ?? "");
  },
};

const toggle = {
  ...button,
  update(control, node) {
    setText(control, node.n ?? "");
    setAttribute(control, "aria-pressed", node.p ? "true" : "false");
  },
};

const tab = {
  ...button,
  attributes: { type: "button", role: "tab" },
  make(control, send) {
    control.addEventListener("keydown", (event) => {
      const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (!way) return;
      const tabs = [...control.closest("[role=tablist]").querySelectorAll("[role=tab]")];
      tabs[(tabs.indexOf(control) + way + tabs.length) % tabs.length].focus();
      event.preventDefault();
    });
    return press.make(control, send);
  },
  update(control, node) {
    setText(control, node.n ?? "");
    setAttribute(control, "aria-selected", node.p ? "true" : "false");
  },
};

const slider = {
  tag: "input",
  attributes: { type: "range" },
  make(control, send) {
    control.addEventListener("input", () => send.number(control.valueAsNumber));
    return [label(control), control, element("span", { class: "value", "aria-hidden": "true" })];
  },
  update(control, node) {
    const [min, max, now, step] = node.s;
    setText(control.previousElementSibling, node.n ?? "");
    setText(control.nextElementSibling, node.v ?? "");
    setAttribute(control, "min", min);
    setAttribute(control, "max", max);
    setAttribute(control, "step", step > 0 ? step : "any");
    setAttribute(control, "aria-valuetext", node.v);
    control.value = now;
  },
};

const choice = {
  tag: "select",
  make(control, send) {
    control.addEventListener("change", () => {
      if (control.selectedIndex >= 0) send.number(control.selectedIndex);
    });
    return [label(control), control];
  },
  update(control, node) {
    const options = node.o ?? [];
    setText(control.previousElementSibling, node.n ?? "");
    while (control.length > options.length) control.remove(control.length - 1);
    while (control.length < options.length) {
      control.add(element("option", { value: control.length }));
    }
    options.forEach((option, index) => setText(control.options[index], option));
    control.selectedIndex = node.s[2];
  },
};

/// A line to type in. Its content follows the screen only while nobody is typing.
function typing(inputmode) {
  return {
    tag: "input",
    attributes: { type: "text", inputmode, autocomplete: "off", spellcheck: "false" },
    make(control, send) {
      let waiting = 0;
      const commit = () => {
        clearTimeout(waiting);
        if (control.value === control.dataset.told) return;
        control.dataset.told = control.value;
        send.text(control.value);
      };
      control.addEventListener("input", () => {
        clearTimeout(waiting);
        waiting = setTimeout(commit, TYPING_PAUSE_MS);
      });
      control.addEventListener("change", commit);
      control.addEventListener("keydown", (event) => {
        if (event.key === "Escape") {
          clearTimeout(waiting);
          control.value = control.dataset.told;
        }
        if (event.key === "Enter" || event.key === "Escape") control.blur();
      });
      return [label(control), control];
    },
    update(control, node) {
      setText(control.previousElementSibling, node.n ?? "");
      if (document.activeElement === control) return;
      control.value = node.v ?? "";
      control.dataset.told = control.value;
    },
  };
}

/// A result: its name and its value, read like a sentence. Not announced by itself.
const output = {
  tag: "output",
  attributes: { "aria-live": "off" },
  make(control) {
    control.append(element("span", { class: "name" }), " ", element("span", { class: "value" }));
    return [control];
  },
  update(control, node) {
    setText(control.firstChild, node.n ?? "");
    setText(control.lastChild, node.v ?? "");
  },
};

/// Today's numbers and the remedy's stand side by side under one name: the id tells whose it is.
function nameWithSide(node) {
  const side = /\.(today|remedy)$/.exec(node.i)?.[1];
  return !side || node.n.toLowerCase().includes(side) ? node.n : `${node.n}, ${side}`;
}

/// A result that opens a card which explains it.
const figure = {
  ...output,
  tag: "button",
  attributes: { type: "button", "aria-haspopup": "dialog" },
  make(control, send) {
    output.make(control);
    return press.make(control, send);
  },
  update(control, node) {
    output.update(control, { ...node, n: `${nameWithSide(node)}:` });
  },
};

const status = {
  tag: "p",
  attributes: { role: "status", "aria-live": "polite" },
  make: (control) => [control],
  update(control, node) {
    const words = [node.n, node.v].filter(Boolean).join(": ");
    if (control.dataset.words === words) return;
    control.dataset.words = words;
    clearTimeout(control.waiting);
    control.waiting = setTimeout(() => setText(control, words), ANNOUNCE_MS);
  },
};

const image = {
  tag: "div",
  attributes: { role: "img" },
  make(control) {
    control.append(element("span"));
    return [control];
  },
  update(control, node) {
    setAttribute(control, "aria-label", [node.n, node.v].filter(Boolean).join(". "));
    setText(control.firstChild, node.v ?? "");
  },
};

const heading = {
  make: (control) => [control],
  update(control, node) {
    setText(control, node.n ?? "");
  },
};

/// web/photos.js adds one.
export const roles = {
  button, toggle, tab, slider, choice, output, figure, status, image, heading,
  text: typing("text"), number: typing("decimal"),
};

/// `send` has press(), number(value) and text(string). Answers the control and its wrapper.
export function makeControl(node, domId, send) {
  const role = roles[node.r];
  const tag = role.tag ?? `h${Math.min(Math.max(parseInt(node.v ?? "2", 10) || 2, 1), 4)}`;
  const control = element(tag, { id: domId, "data-id": node.i, ...role.attributes });
  const wrapper = element("div", { class: "node", "data-role": node.r });
  wrapper.append(...role.make(control, send));
  return { control, wrapper };
}

export function updateControl({ control, wrapper }, node) {
  roles[node.r].update(control, node);
  setAttribute(control, "aria-disabled", node.x ? "true" : null);
  setAttribute(control, "tabindex", node.a === "no-tab" ? -1 : null);
  wrapper.classList.toggle("beside", node.a === "no-tab");
  wrapper.classList.toggle("cut", node.c === 1); // a part is scrolled out of sight
  wrapper.classList.toggle("away", node.u === 1); // a finger there is not meant for it
  updateHelp(control, wrapper, node.h);
  const [x, y, w, h] = node.b;
  Object.assign(wrapper.style, {
    left: `${x}px`, top: `${y}px`, width: `${w}px`, height: `${h}px`,
  });
}

function updateHelp(control, wrapper, help) {
  let words = wrapper.querySelector(".help");
  if (!help) {
    words?.remove();
    control.removeAttribute("aria-describedby");
    return;
  }
  if (!words) {
    words = element("span", { class: "help", id: `${control.id}-help` });
    wrapper.append(words);
    control.setAttribute("aria-describedby", words.id);
  }
  setText(words, help);
}
