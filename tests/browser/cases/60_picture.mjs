// SPDX-License-Identifier: MIT
// The canvas: as many device pixels as there are, and back again after the graphics card was lost.
import assert from "node:assert/strict";
import { phone, Visit } from "../visit.mjs";
import { withWorkerScript } from "../worker_site.mjs";

async function canvasSize(visit) {
  return visit.evaluate(() => {
    const canvas = document.getElementById("canvas");
    const box = canvas.getBoundingClientRect();
    return {
      css: [box.width, box.height], backing: [canvas.width, canvas.height],
      window: [innerWidth, innerHeight], dpr: devicePixelRatio,
    };
  });
}

async function isCrisp(visit, dpr) {
  const size = await canvasSize(visit);
  assert.equal(size.dpr, dpr);
  assert.deepEqual(size.css, size.window, "the canvas fills the window");
  assert.deepEqual(size.backing, size.css.map((px) => Math.round(px * dpr)));
}

/** Here software draws, so moving air is shown at rest, though the person has not asked for it. */
async function filmIsHeld({ browser, server }) {
  const visit = new Visit(browser, server, await browser.newPage({ ...phone, dpr: 1, moving: true }));
  await visit.open();
  const begun = await visit.evaluate(() => performance.now());
  await visit.rest();
  const rested = await visit.evaluate(() => performance.now());
  assert.ok(rested - begun < FILM_MS, `at rest after ${Math.round(rested - begun)} ms`);
  await visit.close();
}
const FILM_MS = 6000; // a film goes on for 8 s after each change

/** `drawer`: where the canvas is drawn, the page or a worker of it. */
async function isLostAndBack(visit, drawer) {
  const before = await visit.picture();
  await drawer.evaluate(() => {
    const canvas = globalThis.document?.getElementById("canvas") ?? globalThis.host.canvas;
    globalThis.loss = canvas.getContext("webgl2").getExtension("WEBGL_lose_context");
    globalThis.loss.loseContext();
  });
  await visit.until(() => !document.getElementById("notice").hidden, null, "a notice");
  await drawer.evaluate(() => globalThis.loss.restoreContext());
  await visit.until(() => document.getElementById("notice").hidden, null, "the notice to go");
  await visit.rest();
  for (const end = Date.now() + 5000; !before.equals(await visit.picture());) {
    assert.ok(Date.now() < end, "the same picture"); // the page shows it when it comes to that
  }
}

/** A browser whose workers have canvases without WebGL, or no script of ours. */
function withoutWorker({ browser, site }, broken) {
  return withWorkerScript(site, `if (!globalThis.document) ${broken}`, async (server) => {
    const visit = new Visit(browser, server, await browser.newPage({ ...phone, dpr: 1 }));
    visit.expected = /not of this version|the worker|broken/;
    await visit.page.goto(server.url); // it comes twice
    await visit.page.waitForFunction(() => sessionStorage.getItem("shimlight-here")
      && document.documentElement.dataset.ready === "1", null, { timeout: 60_000 });
    await visit.rest();
    assert.equal(visit.page.workers().length, 0);
    assert.ok(!await visit.evaluate(() => document.body.classList.contains("no-gl")), "there is a picture");
    const before = await visit.results();
    await visit.set("lever.weather.outside_c", -20);
    assert.notDeepEqual(await visit.results(), before);
    await visit.close();
  });
}

export const cases = [
  ...[1, 2, 3].map((dpr) => ({
    name: `at a device pixel ratio of ${dpr} the canvas has every device pixel`,
    window: { width: 390, height: 700, dpr },
    run: (visit) => isCrisp(visit, dpr),
  })),
  {
    name: "the window changes its size and the canvas follows",
    async run(visit) {
      const size = { width: 800, height: 600 };
      if (visit.isFirefox) await visit.page.setViewport({ ...size, deviceScaleFactor: 1 });
      else await visit.page.setViewportSize(size);
      await visit.until(() => document.getElementById("canvas").width === 800, null, "the new size");
      await visit.rest();
      await isCrisp(visit, 1);
    },
  },
  {
    name: "a worker that cannot draw is given up for the page",
    browsers: ["chromium"],
    bare: true,
    run: (world) => withoutWorker(world, "OffscreenCanvas.prototype.getContext = () => null;"),
  },
  {
    name: "a worker that does not start is given up for the page",
    browsers: ["chromium"],
    bare: true,
    run: (world) => withoutWorker(world, 'throw new Error("broken");'),
  },
  {
    name: "without a graphics card films hold still",
    browsers: ["chromium"],
    bare: true,
    run: filmIsHeld,
  },
  {
    name: "a lost graphics card is said, and the picture comes back",
    browsers: ["chromium"], // the others' drivers do not reach into a worker
    run: (visit) => isLostAndBack(visit, visit.page.workers()[0]),
  },
  {
    name: "where a worker cannot draw the page does, and a lost graphics card is said there too",
    browsers: ["chromium", "firefox"],
    async run(visit) {
      const before = await visit.picture();
      await visit.beforeLoad(() => { delete HTMLCanvasElement.prototype.transferControlToOffscreen; });
      await visit.reload();
      assert.equal(visit.page.workers?.().length ?? 0, 0, "no worker");
      assert.ok(before.equals(await visit.picture()), "the same picture");
      const told = await visit.results();
      await visit.set("lever.weather.outside_c", -20);
      assert.notDeepEqual(await visit.results(), told);
      await isLostAndBack(visit, visit.page);
    },
  },
];
