// SPDX-License-Identifier: MIT
// A report on the page: the program's blocks as elements, for eye, ear and paper alike. Comes with
// the second part of the program. What crosses from it is explained in src/app/page.hpp and
// src/app/report_json.hpp.
import { element } from "./controls.js";

/// Of what comes late with this: it must belong to what is here (site.py fills it in).
export const MARK = "__LATER_MARK__";

/// The single file (web/setup/one_file.py) carries the style itself.
function bringStyle() {
  if (!document.querySelector("link[rel=stylesheet]")) return;
  document.head.append(element("link", { rel: "stylesheet", href: "report.css" }));
}

/// What was drawn for the report until its pages come.
class Pictures {
  constructor() {
    this.urls = new Map(); // number → promise of an address
  }

  take(number, image) {
    const { width, height } = image, flat = element("canvas", { width, height });
    flat.getContext("2d").putImageData(image, 0, 0);
    this.urls.set(number, new Promise((done) => {
      flat.toBlob((blob) => done(blob && URL.createObjectURL(blob)));
    }));
  }

  /// All that were drawn since the last time: number → address.
  async taken() {
    const all = await Promise.all([...this.urls].map(async ([number, url]) => [number, await url]));
    this.urls.clear();
    return new Map(all);
  }
}

function row(cells, plain) {
  const made = element("tr");
  cells.forEach((words, i) => {
    const names = i === 0 && !plain;
    made.append(names ? element("th", { scope: "row" }, words) : element("td", {}, words));
  });
  return made;
}

function table({ t, m, h, r }) {
  const made = element("table", m ? { class: m } : {});
  if (t) made.append(element("caption", {}, t));
  if (h?.some((words) => words)) {
    const line = element("tr");
    line.append(...h.map((words) => (words ? element("th", { scope: "col" }, words) : element("td"))));
    const head = element("thead");
    head.append(line);
    made.append(head);
  }
  const body = element("tbody");
  body.append(...r.map((cells) => row(cells, m === "across")));
  made.append(body);
  return made;
}

function list({ m, r }) {
  const made = element("ul", m ? { class: m } : {});
  for (const [words, rule] of r) {
    const item = element("li", {}, words);
    if (rule) item.append(" ", element("span", { class: "rule" }, `Rule: ${rule}.`));
    made.append(item);
  }
  return made;
}

/// Without a picture its description stands in the place.
function figure({ t, d, p }, urls) {
  const made = element("figure");
  const src = urls.get(p);
  made.append(src ? element("img", { src, alt: d }) : element("p", {}, d), element("figcaption", {}, t));
  return made;
}

function signatures({ r }) {
  const made = element("div", { class: "signatures" });
  made.append(...r.map(([who]) => element("p", {}, who)));
  return made;
}

const makers = {
  heading: ({ l, t }) => element(`h${l}`, {}, t),
  sentence: ({ t, m }) => element("p", m ? { class: m } : {}, t),
  table, list, figure, signatures,
};

/// `main` with one section a side of paper.
function pages(blocks, urls) {
  const main = element("main", { id: "report", lang: "en" });
  let side = main;
  for (const block of blocks) {
    if (block.k === "page") {
      side = element("section", { class: block.t });
      main.append(side);
      continue;
    }
    side.append(makers[block.k](block, urls));
    if (block.k === "heading" && block.l === 1) {
      const day = new Date().toLocaleDateString("en", { dateStyle: "long" });
      side.append(element("p", { class: "date" }, `Report of ${day}`));
    }
  }
  return main;
}

/// A line at the foot of every sheet of paper: whose it is, and which of how many. Each side has a
/// name of its own for it, since particulars may take several sheets. Where a browser draws no
/// margins of pages the sheets go without.
function footers(main) {
  if (!document.adoptedStyleSheets) return null;
  const quoted = (words) => `"${words.replace(/[\\"]/g, "\\$&").replace(/\s+/g, " ")}"`;
  const house = main.querySelector("h1").textContent;
  let rules = "";
  main.querySelectorAll("section").forEach((side, i) => {
    const whole = side.classList.contains("house");
    const words = whole ? house : `${house} · ${side.querySelector("h2").textContent}`;
    side.style.page = `side${i}`;
    rules += `@page side${i} { @bottom-left { content: ${quoted(words)}; } }\n`;
  });
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
}

class Sheet {
  constructor(stage) {
    this.stage = stage;
    this.keys = (event) => {
      event.stopPropagation(); // the program's own rest meanwhile
      if (event.key === "Escape") this.close();
    };
  }

  open(main, urls, by) {
    this.close();
    this.urls = urls;
    this.before = document.querySelector(`[data-id="${by}"]`);
    this.title = document.title;
    this.frame = element("div", { id: "paper" });
    const bar = element("header"), print = element("button", { type: "button", class: "first" }, "Print");
    const close = element("button", { type: "button" }, "Close");
    print.addEventListener("click", () => window.print());
    close.addEventListener("click", () => this.close());
    if (window.print) bar.append(print);
    bar.append(close);
    this.frame.append(bar, main);
    document.body.append(this.frame);
    this.footers = footers(main);
    if (this.footers) document.adoptedStyleSheets = [...document.adoptedStyleSheets, this.footers];
    document.body.classList.add("reporting");
    this.stage.inert = true;
    document.title = `${main.querySelector("h1").textContent}, report`;
    addEventListener("keydown", this.keys, true);
    bar.firstChild.focus();
  }

  close() {
    if (!this.frame) return;
    removeEventListener("keydown", this.keys, true);
    this.frame.remove();
    this.frame = null;
    if (this.footers) {
      document.adoptedStyleSheets =
        [...document.adoptedStyleSheets].filter((one) => one !== this.footers);
    }
    for (const url of this.urls.values()) URL.revokeObjectURL(url);
    document.body.classList.remove("reporting");
    this.stage.inert = false;
    document.title = this.title;
    this.before?.focus({ preventScroll: true });
  }
}

/// Gives what the program calls with each picture and then with the pages.
export function makeReport() {
  bringStyle();
  const pictures = new Pictures();
  const sheet = new Sheet(document.getElementById("stage"));
  return {
    picture: (number, image) => pictures.take(number, image),
    async report({ blocks, by }) {
      const urls = await pictures.taken();
      sheet.open(pages(blocks, urls), urls, by);
    },
  };
}
