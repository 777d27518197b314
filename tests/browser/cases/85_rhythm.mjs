// SPDX-License-Identifier: MIT
// A lever drawn by a finger at 60 Hz on a page slowed to a quarter: how soon the picture follows, and
// whether the film after it keeps up with the display. Figures go to build/rhythm.json. The browser slows
// the page's thread and not the worker's, in which the program runs: told is also what would be if each
// frame of the worker took four times as long. Here software draws, in a process of its own that shares
// two processors with both: each size is measured with it, with a canvas that is only cleared, and with
// nothing drawn. Without drawing the time is the program's own, and what is wanted is asked of that; what a
// cleared canvas takes no program can undercut here.
import assert from "node:assert/strict";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Visit } from "../visit.mjs";
import { withWorkerScript } from "../worker_site.mjs";

const SLOWED = 4; // processor of a phone of the middle class beside this machine: an estimate
const HZ = 60;
const DRAG_S = 2;
const SETTLED_MS = 3500;
const WANTED_MS = 50; // from the finger to the frame's end, 95th percentile: our own target
const NOISE = 3; // others may use the machine: only three times the wanted fails
const file = fileURLToPath(new URL("../../../build/rhythm.json", import.meta.url));

/** What is left out of WebGL. */
const LEFT_OUT = {
  "drawn": [],
  "only cleared": ["drawElements", "drawArrays"],
  "not drawn": ["drawElements", "drawArrays", "bufferData", "texImage2D", "clear"],
};

/** In the worker, before its script: times each frame, and what it had heard by then. */
function timeFrames(leftOut) {
  const frames = (globalThis.frames = []), ask = globalThis.requestAnimationFrame.bind(globalThis);
  const now = () => performance.timeOrigin + performance.now();
  globalThis.requestAnimationFrame = (work) => ask((time) => {
    const begun = now(), { heard } = globalThis.host;
    work(time);
    frames.push({ begun, ended: now(), heard });
  });
  // Without a card films hold still: here they shall run.
  const context = OffscreenCanvas.prototype.getContext;
  OffscreenCanvas.prototype.getContext = function (kind, given) {
    return context.call(this, kind, given && { ...given, failIfMajorPerformanceCaveat: false });
  };
  for (const name of leftOut) WebGL2RenderingContext.prototype[name] = () => {};
}

/** In the page, before its scripts: remembers when a finger moved and which message told of it. */
function timeMoves() {
  const moves = (window.moves = []), post = Worker.prototype.postMessage;
  const now = () => performance.timeOrigin + performance.now();
  let sent = 0, waiting = null;
  addEventListener("onpointerrawupdate" in window ? "pointerrawupdate" : "pointermove", (event) => {
    const first = event.getCoalescedEvents?.()[0] ?? event;
    waiting = { asked: performance.timeOrigin + first.timeStamp, told: now() };
  }, true);
  Worker.prototype.postMessage = function (message, ...more) {
    sent++;
    if (waiting && message[1] === "pointer") moves.push({ ...waiting, message: sent });
    waiting = null;
    return post.call(this, message, ...more);
  };
}

/** Each frame that follows moves, with the first of them: since then the finger has waited. */
function follow(frames, moves) {
  let next = 0;
  return frames.flatMap((frame) => {
    const first = next;
    while (next < moves.length && moves[next].message <= frame.heard) next++;
    return next > first ? [{ ...frame, ...moves[first] }] : [];
  });
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

function share(values, part) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1);
  return sorted.length ? Number(sorted[Math.max(at, 0)].toFixed(1)) : null;
}

const spread = (values) => ({ median: share(values, 0.5), p95: share(values, 0.95) });
const gaps = (frames) => frames.slice(1).map((one, i) => one.begun - frames[i].begun);

/** What the display offers when nothing is drawn: ms between frames of an empty loop. */
function displayBeat(visit) {
  return visit.evaluate(() => new Promise((done) => {
    const times = [];
    const step = (time) => {
      times.push(time);
      if (times.length < 40) requestAnimationFrame(step);
      else done(times.slice(1).map((one, i) => one - times[i]).sort((a, b) => a - b)[19]);
    };
    requestAnimationFrame(step);
  }));
}

async function drag(visit, session) {
  const { box, value, min, max } = await visit.control("lever.weather.outside_c");
  const y = box.y + box.height / 2, from = box.x + box.width * (value - min) / (max - min);
  const touch = (type, x) => session.send("Input.dispatchTouchEvent",
    { type, touchPoints: x === undefined ? [] : [{ x, y, id: 0 }] });
  await touch("touchStart", from);
  const sent = [], begun = performance.now();
  for (let i = 1; i <= HZ * DRAG_S; i++) {
    const wave = Math.sin(2 * Math.PI * i / HZ) * 0.3 * box.width;
    sent.push(touch("touchMove", Math.max(box.x + 12, Math.min(box.x + box.width - 12, from - wave))));
    await pause(begun + i * 1000 / HZ - performance.now());
  }
  await Promise.all(sent);
  await touch("touchEnd");
  await pause(500);
  const after = await visit.control("lever.weather.outside_c");
  assert.ok(Math.abs(Number(after.value) - value) <= 2 * after.step + 0.02 * (max - min),
    "after two whole waves the lever is where the finger began");
}

async function measure(visit, session) {
  const worker = visit.page.workers()[0];
  const take = () => worker.evaluate(() => globalThis.frames.splice(0));
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  const beat = await displayBeat(visit);
  await take();
  await visit.evaluate(() => window.moves.splice(0));
  await drag(visit, session);
  const dragged = await take();
  const moves = await visit.evaluate(() => window.moves);
  await pause(SETTLED_MS); // the cuts are solved anew, one a frame
  const settling = await take();
  await pause(1500);
  const film = (await take()).slice(-60);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const answered = follow(dragged, moves);
  const longer = (frame) => (SLOWED - 1) * (frame.ended - frame.begun);
  return {
    display_ms: Number(beat.toFixed(1)),
    answered: answered.length,
    follows_ms: spread(answered.map((one) => one.ended - one.asked)),
    follows_were_the_worker_slowed_ms: spread(answered.map((one) => one.ended - one.asked + longer(one))),
    of_it_before_the_page_heard_ms: spread(answered.map((one) => one.told - one.asked)),
    drag_frame_ms: spread(dragged.map((one) => one.ended - one.begun)),
    drag_between_ms: spread(gaps(dragged)),
    settling_between_ms: spread(gaps(settling)),
    film_frames: film.length,
    film_frame_ms: spread(film.map((one) => one.ended - one.begun)),
    film_between_ms: spread(gaps(film)),
  };
}

function keep(row) {
  const rows = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
  const others = rows.filter((one) => one.window !== row.window || one.picture !== row.picture);
  writeFileSync(file, `${JSON.stringify([...others, row], null, 1)}\n`);
}

async function visited(browser, server, size, picture) {
  const page = await browser.newPage({ dpr: 1, dark: false, touch: true, moving: true, ...size });
  await page.page.addInitScript(timeMoves);
  const visit = new Visit(browser, server, page);
  visit.expected = /not of this version/; // says the service worker of the other worker
  await visit.open();
  await visit.page.keyboard.press("Shift"); // brings the second part, once in a program's life
  await visit.rest();
  const session = await page.page.context().newCDPSession(page.page);
  const row = { window: `${size.width}x${size.height}`, picture, slowed: SLOWED,
    ...await measure(visit, session) };
  await visit.close();
  return row;
}

async function run({ browser, site }, size, picture) {
  const row = await withWorkerScript(site, `(${timeFrames})(${JSON.stringify(LEFT_OUT[picture])});`,
    (server) => visited(browser, server, size, picture));
  keep(row);
  console.log(`      ${JSON.stringify(row)}`);
  assert.ok(row.answered >= 8, `${row.answered} frames followed`);
  if (picture !== "not drawn") return; // whatever the film does: software that draws it is none of a device's
  assert.ok(row.film_frames >= 8, `${row.film_frames} frames of the film`);
  assert.ok(row.follows_ms.p95 <= NOISE * WANTED_MS, `the picture follows after ${row.follows_ms.p95} ms`);
  assert.ok(row.film_frame_ms.median <= NOISE * row.display_ms, "the film keeps up");
}

const sizes = [{ width: 360, height: 640 }, { width: 1440, height: 900 }];
export const cases = sizes.flatMap((size) => Object.keys(LEFT_OUT).map((picture) => ({
  name: `the picture follows a finger at ${size.width} × ${size.height}, ${picture}`,
  browsers: ["chromium"],
  asked: true, // by a word of its name
  bare: true,
  run: (world) => run(world, size, picture),
})));
