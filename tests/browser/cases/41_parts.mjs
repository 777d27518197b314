// SPDX-License-Identifier: MIT
// The program comes in two parts; what the first one says must not wait for the second.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";

/** Every text of the mirror: names, values, helps, options. */
function texts(visit) {
  return visit.evaluate(() => Object.fromEntries([...document.querySelectorAll("#mirror [data-id]")]
    .map((one) => [one.dataset.id, [one.closest(".node").textContent, one.getAttribute("aria-label"),
      one.getAttribute("aria-valuetext"), one.value].join("|")])));
}

export const cases = [
  {
    name: "the first part says all it says before the second has come",
    bare: true,
    browsers: ["chromium"],
    async run({ browser, server }) {
      for (const window of [{ width: 360, height: 640 }, { width: 1440, height: 900 }]) {
        const visit = await Visit.start(browser, server, window);
        assert.ok(!visit.requests.some((url) => url.endsWith("shimlight-rest.wasm")));
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
];
