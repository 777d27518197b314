// SPDX-License-Identifier: MIT
// The DOM mirror: keeps real controls over the painted ones, in the order in which the screen names
// them, and passes on what is done to them. Only what has changed is touched.
import { element, makeControl, updateControl } from "./controls.js";

// As view::MirrorEvent::Kind.
const PRESS = 0, NUMBER = 1, TEXT = 2, FOCUS = 3, BLUR = 4;
const AT_ONCE = 5; // nodes
const TYPED = ["text", "number"];
const TAKES_TAPS = ["button", "toggle", "tab", "slider", "choice", "photo", ...TYPED];

export class Mirror {
  /// tell(kind, id, number, text) reaches the program; actions must run inside a gesture.
  /// The first of it is there: grown().
  constructor(root, tell, actions, grown) {
    this.root = root;
    this.tell = tell;
    this.grown = grown;
    this.actions = actions;
    this.nodes = [];
    this.entries = new Map(); // id → { control, wrapper, node, told }
    this.groups = new Map(); // key → section
    this.made = 0;
    root.addEventListener("scroll", () => root.scrollTo(0, 0)); // a focus must not shift it
  }

  /// Takes the nodes of a frame as JSON. The first are many: they come some at a time, and the page
  /// answers between.
  take(json) {
    const first = this.late === undefined;
    const waiting = this.late;
    this.late = first || waiting ? json : "";
    if (first) this.grow(AT_ONCE);
    else if (!waiting) this.update(JSON.parse(json));
  }

  grow(count) {
    setTimeout(() => {
      const nodes = JSON.parse(this.late);
      this.update(nodes.slice(0, count));
      this.root.scrollTop; // laid out here, else all at once in the end
      if (count < nodes.length) this.grow(count + AT_ONCE);
      else this.whole();
    });
  }

  whole() {
    this.late = "";
    (window.requestIdleCallback ?? setTimeout)(() => this.grown());
  }

  update(nodes) {
    this.nodes = nodes;
    this.removeGone(new Set(nodes.map((node) => node.i)));
    nodes.forEach((node) => this.keep(node));
    this.arrange(nodes);
    this.hold(nodes.find((node) => node.m));
  }

  /// A card over the page is a dialog: the rest rests, the focus goes in and comes back.
  hold(first) {
    const card = first && this.entries.get(first.i).wrapper.closest("section");
    if (!this.card) this.before = document.activeElement?.dataset.id;
    for (const section of this.root.children) {
      section.inert = card !== undefined && section !== card;
      if (section !== card) for (const name of ["role", "aria-modal"]) section.removeAttribute(name);
    }
    if (card === this.card) return;
    this.card = card;
    card?.setAttribute("role", "dialog");
    card?.setAttribute("aria-modal", "true");
    const target = card?.querySelector("button, input, select") ?? this.entries.get(this.before)?.control;
    target?.focus({ preventScroll: true });
  }

  removeGone(ids) {
    document.getElementById("intro")?.remove();
    for (const [id, entry] of this.entries) {
      if (ids.has(id)) continue;
      entry.wrapper.remove();
      this.entries.delete(id);
    }
  }

  keep(node) {
    const told = JSON.stringify(node);
    let entry = this.entries.get(node.i);
    if (entry && entry.node.r !== node.r) {
      entry.wrapper.remove();
      entry = undefined;
    }
    if (!entry) entry = this.add(node);
    if (entry.told === told) return;
    updateControl(entry, node);
    entry.node = node;
    entry.told = told;
  }

  add(node) {
    const send = {
      press: () => this.press(this.entries.get(node.i).node),
      number: (value) => this.change(NUMBER, node.i, value, ""),
      text: (value) => this.change(TEXT, node.i, 0, value),
    };
    const made = makeControl(node, `m${++this.made}`, send);
    made.control.addEventListener("focus", () => this.focused(made, node, true));
    made.control.addEventListener("blur", () => this.focused(made, node, false));
    const entry = { ...made, node };
    this.entries.set(node.i, entry);
    return entry;
  }

  press(node) {
    if (node.x) return;
    this.act(node);
    this.tell(PRESS, node.i, 0, "");
  }

  /// What only the page can do, and only inside a gesture.
  act(node) {
    this.actions[node.a]?.(node);
  }

  change(kind, id, number, text) {
    const entry = this.entries.get(id);
    if (entry.node.x) updateControl(entry, entry.node);
    else this.tell(kind, id, number, text);
  }

  focused(entry, node, gained) {
    if (TYPED.includes(node.r)) entry.wrapper.classList.toggle("editing", gained);
    this.tell(gained ? FOCUS : BLUR, node.i, 0, "");
    // What was shown while typing may not be what the screen made of it.
    if (!gained) updateControl(entry, this.entries.get(node.i)?.node ?? node);
  }

  /// Puts the wrappers into sections, one a run of nodes of the same group, tabs into a tablist.
  arrange(nodes) {
    const used = new Set();
    const places = new Map(); // parent → how many children stand right
    const place = (parent, child) => {
      const index = places.get(parent) ?? 0;
      if (parent.children[index] !== child) parent.insertBefore(child, parent.children[index] ?? null);
      places.set(parent, index + 1);
    };
    let group, section, list, runs = {};
    for (const node of nodes) {
      const name = node.g ?? "";
      if (name !== group) {
        group = name;
        list = undefined;
        runs[name] = (runs[name] ?? 0) + 1;
        section = this.section(`${name}#${runs[name]}`, name, used);
        place(this.root, section);
      }
      if (node.r !== "tab") list = undefined;
      else if (!list) {
        list = this.section(`${name}#tabs${node.i}`, name, used, true);
        place(section, list);
      }
      place(list ?? section, this.entries.get(node.i).wrapper);
    }
    for (const [key, unused] of this.groups) {
      if (used.has(key)) continue;
      unused.remove();
      this.groups.delete(key);
    }
  }

  section(key, name, used, tabs = false) {
    used.add(key);
    let made = this.groups.get(key);
    if (!made) {
      const label = { "aria-label": name || "Shimlight" };
      made = tabs ? element("div", { role: "tablist", ...label }) : element("section", label);
      this.groups.set(key, made);
    }
    return made;
  }

  /// The topmost node that a tap at this place is meant for.
  nodeAt(x, y, roles = TAKES_TAPS) {
    return this.nodes.findLast((node) => {
      const [left, top, width, height] = node.b;
      return !node.u && !node.x && roles.includes(node.r) &&
        x >= left && x < left + width && y >= top && y < top + height;
    });
  }

  onPicture(x, y) {
    return this.nodeAt(x, y, ["image"]) !== undefined;
  }

  /// What a tap on the canvas asks of the page itself. Runs inside the tap's gesture: only then
  /// does a phone open its keyboard or a file dialog.
  tapped(x, y) {
    const node = this.nodeAt(x, y);
    if (!node) return;
    this.act(node);
    if (!TYPED.includes(node.r)) return;
    const { control } = this.entries.get(node.i);
    control.focus({ preventScroll: true });
    control.select();
  }
}
