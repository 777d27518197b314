// SPDX-License-Identifier: MIT
// The program comes in two parts; what the first one says must not wait for the second.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";
import { startServer } from "../../../web/serve.mjs";

const REST = "shimlight-rest.wasm";
const outside = "lever.weather.outside_c", width = "lever.shim.width_m";

/** Every text of the mirror: names, values, helps, options. */
function texts(visit) {
  return visit.evaluate(() => Object.fromEntries([...document.querySelectorAll("#mirror [data-id]")]
    .map((one) => [one.dataset.id, [one.closest(".node").textContent, one.getAttribute("aria-label"),
      one.getAttribute("aria-valuetext"), one.value].join("|")])));
}

/** From the next load on the second part is on its way until window.release() is called. */
async function holdRest(visit) {
  await visit.beforeLoad(() => {
    const { fetch } = window;
    const released = new Promise((done) => { window.release = done; });
    window.fetch = async (what, ...more) => {
      if (String(what).includes("rest.wasm")) await released;
      return fetch(what, ...more);
    };
  });
}

/** What a lever stands at. While a part is coming the screen does not rest: this waits for what it says. */
async function says(visit, id, words) {
  await visit.until(({ id, words }) => {
    const lever = document.querySelector(`[data-id="${id}"]`);
    return lever && `${lever.value} ${lever.getAttribute("aria-valuetext")}`.includes(words);
  }, { id, words }, `${id} to be ${words}`);
}

function move(visit, id, value) {
  return visit.evaluate(({ id, value }) => {
    const lever = document.querySelector(`[data-id="${id}"]`);
    if (lever.localName === "select") lever.selectedIndex = value;
    else lever.value = value;
    for (const name of ["input", "change"]) lever.dispatchEvent(new Event(name, { bubbles: true }));
  }, { id, value });
}

/** All levers and the remedy, with what they stand at. */
function levers(visit) {
  return visit.evaluate(() => Object.fromEntries(
    [...document.querySelectorAll("[data-id^='lever.'], [data-id='remedy.choice']")]
      .filter((one) => !/\.(less|more|typed|back|card)$/.test(one.dataset.id))
      .map((one) => [one.dataset.id, [one.value, one.getAttribute("aria-valuetext"),
        one.getAttribute("aria-pressed")].join("|")])));
}

/** Loads the page anew while the second part is held back. */
async function reloadHeld(visit) {
  await visit.page.reload();
  await visit.until(() => document.documentElement.dataset.ready === "1", null, "the first frame", 60_000);
  await visit.until(async () => { // the mirror grows some controls at a time
    const count = () => document.querySelectorAll("#mirror [data-id]").length;
    const before = count();
    await new Promise((done) => setTimeout(done, 300));
    return before > 0 && count() === before;
  }, null, "the mirror");
}

const hasRest = (visit) => visit.requests.some((url) => url.endsWith(REST));

export const cases = [
  {
    name: "the first part says all it says before the second has come",
    bare: true,
    browsers: ["chromium"],
    async run({ browser, server }) {
      for (const window of [{ width: 360, height: 640 }, { width: 1440, height: 900 }]) {
        const visit = await Visit.start(browser, server, window);
        assert.ok(!visit.requests.some((url) => url.endsWith("shimlight-rest.wasm")));
        await visit.until(() => document.querySelector("[data-id='verdict']").textContent, null, "the verdict");
        const before = await texts(visit);
        assert.ok(Object.keys(before).length > 40, "levers, strip, verdict");
        await visit.evaluate(() => dispatchEvent(new Event("keydown")));
        await visit.until(() => window.shimlight.asleep && document.querySelector("[data-id='verdict']"),
          null, "the rest");
        await visit.until(() => performance.getEntriesByType("resource")
          .some((one) => one.name.endsWith("shimlight-rest.wasm")), null, "the second part");
        await visit.rest();
        const after = await texts(visit);
        for (const id of Object.keys(before)) assert.equal(after[id], before[id], id);
        await visit.close();
      }
    },
  },
  {
    name: "looked at for a while the page brings its second part itself, and works without a server",
    bare: true,
    browsers: ["chromium"],
    async run({ browser, site }) {
      const server = await startServer(site);
      const small = { width: 360, height: 640 };
      const begun = Date.now();
      const [seen, hidden, unconnected] = await Promise.all([1, 2, 3].map(() => Visit.start(browser, server, small)));
      await hidden.evaluate(() => Object.defineProperty(document, "hidden", { value: true }));
      await unconnected.evaluate(() => Object.defineProperty(navigator, "onLine", { value: false }));
      try {
        for (const visit of [seen, hidden, unconnected]) assert.ok(!hasRest(visit));
        for (const end = Date.now() + 60_000; !hasRest(seen) && Date.now() < end;) {
          await new Promise((done) => setTimeout(done, 200));
        }
        assert.ok(hasRest(seen), "it comes without a touch");
        assert.ok(Date.now() - begun > 20_000, "not at once");
        await new Promise((done) => setTimeout(done, 3000));
        assert.ok(!hasRest(hidden) && !hasRest(unconnected), "nobody looks, or there is no network");
        await seen.until(async () => {
          const parts = ["shimlight-rest.wasm", "library.js", "photos.js", "report.js", "report.css"];
          const kept = await Promise.all(parts.map((name) => caches.match(name)));
          return kept.every(Boolean);
        }, null, "all of it to be kept");
        await server.stop();
        await seen.reload();
        await seen.press("view.room");
        assert.ok(await seen.control("room.picture.remedy"), "the second part is here");
        seen.errors = seen.errors.filter((text) => !/sw\.js|ERR_CONNECTION_REFUSED/.test(text));
      } finally {
        await server.stop();
      }
      for (const visit of [seen, hidden, unconnected]) await visit.close();
    },
  },
  {
    name: "levers moved before the second part has come are not lost when the page is closed",
    browsers: ["chromium", "firefox"],
    async run(visit) {
      const untouched = await levers(visit);
      await holdRest(visit);
      await reloadHeld(visit);
      await move(visit, outside, -3);
      await says(visit, outside, "−3");
      const choice = Number((await visit.control("remedy.choice")).value) - 1;
      await move(visit, "remedy.choice", choice);
      await says(visit, "remedy.choice", `${choice}`);
      const before = await levers(visit);
      await visit.evaluate((id) => document.querySelector(`[data-id="${id}.more"]`).click(), width);
      await visit.until(({ id, was }) => document.querySelector(`[data-id="${id}"]`).value !== was,
        { id: width, was: before[width].split("|")[0] }, "another lever to move");
      const moved = await levers(visit);
      await reloadHeld(visit);
      assert.deepEqual(await levers(visit), moved, "as it was left, in the first picture");
      await move(visit, outside, -4);
      await says(visit, outside, "−4");
      await reloadHeld(visit);
      assert.deepEqual({ ...await levers(visit), [outside]: "" }, { ...moved, [outside]: "" });
      await says(visit, outside, "−4");
      assert.equal(await visit.evaluate(() => document.documentElement.dataset.kept), undefined);
      await visit.evaluate(() => window.release());
      await visit.until(() => document.documentElement.dataset.kept, null, "the house to be kept");
      await visit.rest();
      await visit.press("menu.undo");
      assert.deepEqual(await levers(visit), untouched, "undo goes back to the house as it was");
      await visit.press("menu.redo");
      await visit.until(() => !/\d \S/.test(localStorage.getItem("shimlight-moves")), null, "no moves to be left");
      await visit.page.reload();
      await visit.evaluate(() => window.release());
      await visit.ready();
      await says(visit, outside, "−4");
      assert.deepEqual({ ...await levers(visit), [outside]: "" }, { ...moved, [outside]: "" });
    },
  },
  {
    name: "what is moved is kept when the second part comes to a page that is out of sight",
    browsers: ["chromium"],
    async run(visit) {
      await holdRest(visit);
      await reloadHeld(visit);
      await move(visit, outside, -3);
      await says(visit, outside, "−3");
      await visit.evaluate(() => {
        Object.defineProperty(document, "hidden", { value: true });
        document.dispatchEvent(new Event("visibilitychange"));
        window.requestAnimationFrame = () => 0; // as a browser does it
        window.release();
      });
      await visit.until(() => document.documentElement.dataset.kept, null, "the house to be kept");
    },
  },
];
