// SPDX-License-Identifier: MIT
// node tests/browser/kill.mjs [SITE] [KILLS] [SEED]
// Changes a house on the real page, kills the browser with SIGKILL at a random moment, starts it again
// on the same profile and reads the house back: of all changes at most the one in progress may be lost.
// Now and then the database is gone as well, as Chromium itself drops it after some kills.
// One browser after the other, each of which was killed while the one before it had left off.
import assert from "node:assert/strict";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { startServer } from "../../web/serve.mjs";
import { chromiumOnProfile } from "./browsers.mjs";

const [site = fileURLToPath(new URL("../../build/web", import.meta.url)), kills = "200", seed = "1"] =
  process.argv.slice(2);
const LATEST_KILL_MS = 700; // after the first change; a change is kept within some 20 to 100 ms
const CHANGES = 60; // more than there is time for
const DROPPED = 0.15; // of all kills
const LEVER = "lever.weather.outside_c", NAME = "house.name";

/** mulberry32: the same moments for the same seed. */
function randomFrom(start) {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const ready = () => document.documentElement.dataset.ready === "1" && window.shimlight?.asleep;

/** In the page: one change after the other, each as soon as the one before is told to be kept. */
async function changeAll({ id, values }) {
  const kept = () => Number(document.documentElement.dataset.kept ?? 0);
  for (const [index, value] of values.entries()) {
    const before = kept();
    const told = new Promise((done) => {
      const watch = new MutationObserver(() => {
        if (kept() > before) done(watch.disconnect());
      });
      watch.observe(document.documentElement, { attributeFilter: ["data-kept"] });
    });
    await window.report("begun", index); // it is known here before it happens
    const control = document.querySelector(`[data-id="${id}"]`);
    control.value = value;
    control.dispatchEvent(new Event("input", { bubbles: true }));
    control.dispatchEvent(new Event("change", { bubbles: true }));
    await told;
    await window.report("kept", index);
  }
}

/** The second copies: [name, text] each, or why there are none. */
async function readCopies() {
  const copies = [];
  try {
    const files = await (await navigator.storage.getDirectory()).getDirectoryHandle("houses");
    for await (const [name, handle] of files.entries()) copies.push([name, await (await handle.getFile()).text()]);
  } catch (error) {
    copies.push(["", String(error)]);
  }
  return copies;
}

/** The house as it lies in the store, and as the page shows it. */
async function readHouse() {
  const done = (request) => new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const shown = {
    title: document.querySelector('[data-id="title"]').textContent,
    outside: document.querySelector('[data-id="lever.weather.outside_c"]').valueAsNumber,
  };
  const database = await done(indexedDB.open("shimlight"));
  const transaction = database.transaction(["library", "texts"]);
  const houses = await done(transaction.objectStore("library").getAll());
  const texts = await done(transaction.objectStore("texts").getAll());
  database.close();
  texts.sort((a, b) => b.rev - a.rev);
  return { shown, houses, house: texts.length ? JSON.parse(texts[0].text) : null, all: texts.map(({ text }) => text) };
}

class Run {
  constructor(profile, url, random) {
    Object.assign(this, { profile, url, random });
    this.name = null; // as last found in the store
    this.outside = null;
    this.count = 0; // of changes ever begun, so that no two names are the same
    this.found = { last: 0, progress: 0, untouched: 0, dropped: 0 };
  }

  async start(browser) {
    const page = await browser.newPage();
    await page.setViewport({ width: 360, height: 640 });
    this.errors = [];
    page.on("pageerror", (error) => this.errors.push(String(error)));
    page.on("console", (message) => message.text().startsWith("No second") && this.errors.push(message.text()));
    await page.goto(this.url, { waitUntil: "domcontentloaded" });
    await page.waitForFunction(ready, { polling: 30, timeout: 60_000 });
    return page;
  }

  /** The next changes: through a lever, or typed. Outside temperatures go up and down in whole steps. */
  nextChanges() {
    const typed = this.random() < 0.5;
    const values = Array.from({ length: CHANGES }, (_, i) =>
      (typed ? `House ${this.count + i}` : String(((this.count + i) * 7) % 50 - 10)));
    this.count += CHANGES;
    return { id: typed ? NAME : LEVER, values };
  }

  async turnTo(page, { id }) {
    if (id !== NAME) return;
    await page.evaluate(() => document.querySelector('[data-id="view.house"]').click());
    await page.waitForFunction((id) => window.shimlight.asleep && document.querySelector(`[data-id="${id}"]`),
      { polling: 30, timeout: 60_000 }, id);
  }

  /** One life of the browser. */
  async live() {
    const browser = await chromiumOnProfile(this.profile);
    const process = browser.process();
    try {
      const page = await this.start(browser);
      await this.compare(page);
      const changes = this.nextChanges();
      await this.turnTo(page, changes);
      const seen = { begun: -1, kept: -1 };
      await page.exposeFunction("report", (what, index) => {
        seen[what] = Math.max(seen[what], index);
      });
      page.evaluate(changeAll, changes).catch(() => {}); // it dies with the browser
      await new Promise((done) => setTimeout(done, this.random() * LATEST_KILL_MS));
      this.before = { changes, seen };
    } finally {
      const ended = new Promise((done) => process.once("exit", done));
      globalThis.process.kill(-process.pid, "SIGKILL"); // it and its children: a group of its own
      await ended;
      if (this.random() < DROPPED) this.drop();
    }
  }

  drop() {
    const database = join(this.profile, "Default", "IndexedDB");
    if (!existsSync(database)) return;
    rmSync(database, { recursive: true });
    this.found.dropped++;
  }

  /** What the store holds against what was told before the kill. */
  async compare(page) {
    const { shown, houses, house, all } = await page.evaluate(readHouse);
    assert.deepEqual(this.errors, [], "the page is quiet");
    const before = this.before;
    this.before = null;
    const copies = await page.evaluate(readCopies);
    const start = (text) => text.slice(0, 40);
    if (house) {
      assert.ok(copies.some(([name, text]) => name === houses[0].id && text === all[0]),
        `no copy of ${houses[0].id}, ${start(all[0])}: ${copies.map(([name, text]) => `${name}, ${start(text)}`)}`);
    }
    if (!before) return this.take(shown, house);
    const { changes: { id, values }, seen } = before;
    assert.ok(house || seen.kept < 0, `a house that was told to be kept is there; copies: ${copies}`);
    if (!house) return;
    assert.equal(houses.length, 1, "one house");
    all.forEach((text) => JSON.parse(text)); // both generations are whole
    const now = id === NAME ? house.name : shown.outside;
    const index = values.findLastIndex((value, i) => String(now) === value && i <= seen.begun);
    const old = String(id === NAME ? this.name : this.outside) === String(now);
    assert.ok(index >= 0 || (old && seen.kept < 0), `${now} was never asked for`);
    assert.ok(index >= seen.kept, `${now} is change ${index}; ${seen.kept} was told to be kept`);
    assert.ok(index >= seen.begun - 1, `${now} is change ${index}; ${seen.begun} was begun`);
    assert.ok(shown.title.includes(house.name), `the page shows ${shown.title}, the store has ${house.name}`);
    if (id === LEVER) assert.equal(house.name, this.name ?? house.name, "nothing else has changed");
    else assert.equal(shown.outside, this.outside ?? shown.outside, "nothing else has changed");
    this.found[index < 0 ? "untouched" : index > seen.kept ? "progress" : "last"]++;
    this.take(shown, house);
  }

  /** What the next life starts from. */
  take(shown, house) {
    this.name = house?.name ?? null;
    this.outside = shown.outside;
  }
}

const server = await startServer(site);
const profile = mkdtempSync(join(tmpdir(), "shimlight-kill-"));
const run = new Run(profile, server.url, randomFrom(Number(seed)));
let passed = 0, failed = 0;
const begun = Date.now();
try {
  await run.live();
  while (passed + failed < Number(kills)) {
    try {
      await run.live();
      passed++;
    } catch (problem) {
      failed++;
      run.before = null; // what follows starts from what is there
      console.log(`FAIL  after kill ${passed + failed}: ${problem.stack ?? problem}`);
    }
    if ((passed + failed) % 20 === 0) console.log(`${passed + failed} kills, ${((Date.now() - begun) / 1000).toFixed(0)} s`);
  }
} finally {
  await server.stop();
  rmSync(profile, { recursive: true, force: true });
}
const { last, progress, untouched, dropped } = run.found;
console.log(`found: ${last} times the last change told to be kept, ${progress} times the one in progress too, ${untouched} times none was kept yet; ${dropped} databases were dropped`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed || !passed ? 1 : 0);
