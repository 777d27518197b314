// SPDX-License-Identifier: MIT
// The program from the page's side, in its two parts: the first starts the page, the rest comes once
// somebody uses it. It runs in a worker where that can draw, else here (host.js).
import { bring, carried, compile } from "./part.js";
import { remember, remembered } from "./storage.js";

const REST = "shimlight-rest.wasm";
const REST_MARK = "__REST_MARK__"; // of the content that belongs to the first part
const LATER_MARK = "__LATER_MARK__";
const HERE = "shimlight-here"; // in sessionStorage: where the program runs in this tab
const WORDS_MS = 1000; // for the first picture of the page, at most

export const OTHER_VERSION = "the host has another version";

/// FNV-1a, the same as in site.py: parts of two versions must never meet.
function markOf(bytes) {
  let mark = 0x811c9dc5;
  for (const byte of bytes) mark = Math.imul(mark ^ byte, 0x01000193);
  return (mark >>> 0).toString(16);
}

/// The program need not come over a network: it was here before, or the page carries it.
const knowsUs = () => Boolean(navigator.serviceWorker?.controller || carried(REST));

/// A worker that turned out not to run or not to draw has the canvas: the page begins anew without it.
function startHere() {
  if (remembered("sessionStorage", HERE)) return;
  remember("sessionStorage", HERE, "yes");
  if (remembered("sessionStorage", HERE)) location.reload();
}

const pageDraws = () => document.createElement("canvas").getContext("webgl2") !== null;

/// Over a network the page's own words come first; the program is fifty times their size.
function wordsSeen() {
  if (knowsUs() || document.hidden) return undefined;
  return new Promise((done) => {
    try {
      new PerformanceObserver(done).observe({ type: "paint", buffered: true });
    } catch {
      done(); // a browser that does not tell
    }
    setTimeout(done, WORDS_MS);
  });
}

const canvas = document.getElementById("canvas");

export class Program {
  /// Begins what needs nothing of what the page kept. Known, it is compiled here, which is sooner than
  /// in the worker; a first visit's page has more to do.
  constructor(layout) {
    this.layout = layout;
    this.sent = 0;
    this.waiting = new Map(); // number of a question → what waits for its answer
    this.coming = false;
    this.started = false;
    this.worker = this.makeWorker();
    this.words = wordsSeen();
    if (this.words) return;
    this.compiled = compile();
    this.compiled.catch(() => {}); // told at the start
    this.handOver();
  }

  /// None where a worker cannot have the canvas.
  makeWorker() {
    if (!canvas.transferControlToOffscreen || carried(REST) || remembered("sessionStorage", HERE)) return null;
    const made = new Worker("host.js", { type: "module" });
    made.onerror = (event) => {
      console.error(event.message ?? "the worker did not start");
      if (!this.started) startHere();
    };
    return made;
  }

  handOver() {
    if (!this.worker) return;
    Object.assign(canvas, this.layout.device); // else what is drawn on is made anew for each side
    const drawn = canvas.transferControlToOffscreen();
    this.sent++;
    this.worker.postMessage([0, "drawOn", drawn], [drawn]);
  }

  /// The first part, its house made of the first of `texts` that can be read, and of `moves`.
  /// page: the object that the program calls.
  async start(page, { texts, moves }) {
    this.page = page;
    page.answer = (question, answer, fault) => this.answered(question, answer, fault);
    // Kept: a page loaded anew then need not wait for machine code that the browser has still.
    page.compiled = (first) => (this.compiled = first);
    if (this.words) {
      await this.words;
      this.handOver();
    }
    if (this.worker) {
      this.worker.onmessage = ({ data: [name, ...what] }) => page[name](...what);
      this.send = (message) => this.worker.postMessage(message);
    } else {
      const { Host } = await import("./host.js");
      const host = new Host((name, ...what) => page[name](...what));
      this.send = (message) => host.take(message);
      this.tell("drawOn", canvas);
    }
    await Promise.all([this.ask("start", page.look(), texts, moves),
      Promise.resolve(this.compiled).then((first) => this.tell("give", first))]);
    this.started = true;
  }

  answered(question, answer, fault) {
    const [done, failed] = this.waiting.get(question);
    this.waiting.delete(question);
    if (fault === undefined) done(answer);
    else failed(new Error(fault));
  }

  /// The program has no WebGL2.
  undrawn() {
    if (this.worker && pageDraws()) startHere();
  }

  /// Calls the program, or says something that is meant for host.js.
  tell(name, ...what) {
    this.sent++;
    this.send([0, name, ...what]);
  }

  /// The same with an answer; what was told meanwhile comes before it.
  ask(name, ...what) {
    const question = ++this.sent;
    return new Promise((...waits) => {
      this.waiting.set(question, waits);
      this.send([question, name, ...what]);
    });
  }

  /// Brings the rest, once.
  whole() {
    return (this.here ??= this.comes());
  }

  async comes() {
    this.coming = true;
    try {
      const [[lessons, mark], ...later] = await Promise.all([this.bringRest(), import("./library.js"),
        import("./photos.js"), import("./report.js")]);
      if ([mark, ...later.map(({ MARK }) => MARK)].some((one) => one !== LATER_MARK)) {
        throw new Error(OTHER_VERSION);
      }
      this.page.arrived(...later);
      this.tell("whole", lessons);
    } catch (error) {
      this.here = null; // the next use asks again
      throw error;
    } finally {
      this.coming = false;
    }
  }

  /// Gives the lessons that come with it and the mark of what the host brought along.
  async bringRest() {
    const answer = await bring(REST);
    if (!answer.ok) throw new Error(`${REST}: ${answer.status}`);
    const bytes = await answer.arrayBuffer();
    if (markOf(new Uint8Array(bytes)) !== REST_MARK) throw new Error(OTHER_VERSION);
    const module = await WebAssembly.compile(bytes);
    const lessons = new TextDecoder().decode(WebAssembly.Module.customSections(module, "lessons")[0]);
    return [lessons, await this.ask("join", module)];
  }
}
