// SPDX-License-Identifier: MIT
// How soon a change is kept.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";
import { withWorkerScript } from "../worker_site.mjs";

const outside = "lever.weather.outside_c";

/** In the worker, before its script: after which frame a house was handed over. */
function noteKeeping() {
  const tell = globalThis.postMessage.bind(globalThis);
  globalThis.keptAfter = [];
  globalThis.postMessage = (message, ...more) => {
    if (message[0] === "keep") globalThis.keptAfter.push(globalThis.host.frames);
    tell(message, ...more);
  };
}

export const cases = [
  {
    name: "a change is kept with the frame that shows it",
    browsers: ["chromium"],
    bare: true,
    run: ({ browser, site }) => withWorkerScript(site, `(${noteKeeping})();`, async (server) => {
      const visit = new Visit(browser, server, await browser.newPage({ width: 360, height: 640, dpr: 1 }));
      visit.expected = /not of this version/; // says the service worker of the other worker
      await visit.open();
      await visit.change("slice", outside, 25); // brings the program's second part, which writes houses
      const worker = visit.page.workers()[0];
      const frames = await worker.evaluate(() => {
        globalThis.keptAfter.length = 0;
        return globalThis.host.frames;
      });
      await visit.change("slice", outside, -5);
      const [first] = await worker.evaluate(() => globalThis.keptAfter);
      assert.ok(first <= frames + 2, `kept after ${first - frames} frames`);
      await visit.close();
    }),
  },
];
