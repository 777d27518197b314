// SPDX-License-Identifier: MIT
// Where the program runs: in a worker of its own, so that the page never waits for it, or on the page
// itself where a worker cannot draw. What comes in are calls of the program's exported functions, what
// goes out are calls of the page's object (loader.js).
import { compile } from "./part.js";
import { createShimlight } from "./shimlight.js";

const OWN = ["drawOn", "start", "give", "laid", "grown", "join"]; // what is not the program's
const GIVE_TEXT = ["fault"];

/// What the first part calls of the second before it is there: a fault of the program.
const absent = new Proxy({}, {
  get: () => () => { throw new Error("the rest of the program is not here yet"); },
});

/// Of a graphics card, else of software that plays one. Strokes and letters carry their own soft edges.
function makeContext(canvas) {
  for (const card of [true, false]) {
    const gl = canvas.getContext("webgl2", {
      alpha: false, depth: false, antialias: false, powerPreference: "low-power",
      failIfMajorPerformanceCaveat: card,
    });
    if (gl) return { gl, card };
  }
  return {};
}

export class Host {
  /// tell(name, ...what) calls the page's object.
  constructor(tell) {
    this.tell = tell;
    this.heard = 0; // messages
    this.frames = 0;
    this.asleep = true;
    this.encoder = new TextEncoder();
    const { port1, port2 } = new MessageChannel(); // a timer would wait 4 ms
    port1.onmessage = () => this.program._shimlight_solve();
    this.soon = port2;
    this.first = new Promise((done) => {
      this.taken = done;
    });
  }

  /// A message of the page: [number of the question or 0, name, ...what].
  async take([question, name, ...what]) {
    this.heard++;
    try {
      const answer = await (OWN.includes(name) ? this[name](...what) : this.call(name, what));
      if (question) this.tell("answer", question, answer);
    } catch (error) {
      if (question) this.tell("answer", question, null, error.message);
      else setTimeout(() => { throw error; }); // for the console
    }
    if (this.asleep) this.rests(true);
  }

  /// The page hears of rest with all that came before it, and only once that there is none: each
  /// message of a frame would cost a slow page some of its own.
  rests(asleep) {
    if (asleep || this.asleep) this.tell("asleep", asleep, this.heard, this.frames);
    this.asleep = asleep;
  }

  /// Texts go into the program's memory zero-terminated and are gone afterwards.
  call(name, what) {
    const { program } = this, places = [];
    const given = what.map((one) => {
      if (typeof one !== "string") return one;
      const bytes = this.encoder.encode(one), place = program._malloc(bytes.length + 1);
      program.HEAPU8.set(bytes, place);
      program.HEAPU8[place + bytes.length] = 0;
      places.push(place);
      return place;
    });
    try {
      const answer = program[`_shimlight_${name}`](...given);
      return GIVE_TEXT.includes(name) ? program.UTF8ToString(answer) : answer;
    } finally {
      places.forEach((place) => program._free(place));
    }
  }

  /// The canvas comes first, while the page reads what it kept.
  drawOn(canvas) {
    this.canvas = canvas;
    this.context = makeContext(canvas);
    const lost = (is) => {
      if (this.program) this.call("context", [is ? 1 : 0]);
      this.tell("lost", is);
    };
    canvas.addEventListener("webglcontextlost", (event) => {
      event.preventDefault();
      lost(true);
    });
    canvas.addEventListener("webglcontextrestored", () => lost(false));
  }

  /// Makes the program of its first part. `texts`: the generations of the house to start with; `moves`:
  /// of levers since then, done again before the first picture.
  async start(look, texts, moves) {
    this.look = look;
    const page = this.page(texts);
    this.program = await new Promise((done, failed) => {
      createShimlight({
        ...this.context,
        page,
        instantiateWasm: (imports, receive) => {
          this.instantiate({ ...imports, second: absent }).then(receive).catch((error) => {
            failed(error);
            throw error; // should it come after the program was there
          });
          return {};
        },
      }).then(done, failed);
    });
    if (moves) this.call("moves", [moves]);
  }

  /// The first part as the page compiled it, or else it is compiled here and the page gets it to keep.
  give(first) {
    this.taken(first ?? this.compiles());
  }

  async compiles() {
    const first = await compile();
    this.tell("compiled", first);
    return first;
  }

  async instantiate(imports) {
    const first = await WebAssembly.instantiate(await this.first, imports);
    this.exports = first.exports;
    return first;
  }

  /// The object that app/page.cpp calls; what it does not do itself the page does.
  page(texts) {
    const own = {
      look: () => this.sized(),
      stored: (generation) => {
        if (texts.length && generation >= texts.length) this.tell("damaged");
        return texts[generation] ?? null;
      },
      asleep: (asleep) => this.rests(asleep),
      solve: () => this.solve(),
      mirror: (nodes) => {
        this.grows ??= true;
        this.tell("mirror", nodes);
      },
      drawn: () => {
        if (++this.frames === 1) this.tell("ready");
      },
      report: (said) => (this.pictures.takes(said) ? undefined : this.tell("report", said)),
    };
    return new Proxy(own, { get: (_, name) => own[name] ?? ((...what) => this.tell(name, ...what)) });
  }

  /// The backing store follows the layout when the program looks, between two pictures.
  sized() {
    const [, , , width, height] = this.look, { canvas } = this;
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    return this.look;
  }

  /// What the program has still to solve waits while the page grows its first mirror: both at once, on
  /// a phone's processors, keep the page from answering.
  solve() {
    if (this.grows) this.due = true;
    else this.soon.postMessage(null);
  }

  grown() {
    this.grows = false;
    if (this.due) this.soon.postMessage(null);
  }

  laid(look) {
    this.look = look;
    this.call("wake", []);
  }

  /// Gives the mark of what came along (program.js compares it).
  async join(rest) {
    const { Pictures, MARK } = await import("./pictures.js");
    this.pictures = new Pictures(this.context.gl, this.tell);
    await WebAssembly.instantiate(rest, { first: this.exports });
    return MARK;
  }
}

if (!globalThis.document) {
  globalThis.host = new Host((...what) => postMessage(what));
  onmessage = ({ data }) => globalThis.host.take(data);
}
