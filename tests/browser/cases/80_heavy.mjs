// SPDX-License-Identifier: MIT
// The largest sections that are accepted, asked at the page's door: within its 64 MiB beside the
// program.
import assert from "node:assert/strict";

/** Asks within the page, which makes the question itself: `n` by `n` blocks of any conductivity. */
function askBlocks(visit, n, accuracy, withStream) {
  return visit.evaluate(({ n, accuracy, withStream }) => {
    let state = 1;
    const unit = () => (state = (state * 16807) % 2147483647) / 2147483647; // Lehmer 1951
    const at = (k) => Number((k / n).toFixed(6));
    const regions = Array.from({ length: n * n }, (_, k) => ({
      x0_m: at(k % n), x1_m: at(k % n + 1), y0_m: at(Math.floor(k / n)), y1_m: at(Math.floor(k / n) + 1),
      conductivity_w_mk: Number((0.03 * Math.exp(6 * unit())).toPrecision(3)),
    }));
    const streams = { joint: { inlet_c: -10, capacity_w_mk: 1.2, path: [
      { x0_m: 0, y0_m: at(10), x1_m: 1, y1_m: at(11), from: "left", film_w_m2k: 12 }] } };
    return shimlight.ask("section", {
      width_m: 1, height_m: 1, regions, accuracy,
      airs: { out: { air_c: -10, film_w_m2k: 25 }, in: { air_c: 20, film_w_m2k: 8 } },
      edges: [{ side: "left", from_m: 0, to_m: 1, air: "out" },
        { side: "right", from_m: 0, to_m: 1, air: "in" }],
      ...(withStream ? { streams } : {}),
    });
  }, { n, accuracy, withStream });
}

export const cases = [
  {
    name: "the largest sections are answered within the page's memory",
    browsers: ["chromium"],
    async run(visit) {
      for (const [n, accuracy, withStream] of [[99, "fine", true], [50, "fine", true],
        [99, "fine", false], [99, "normal", true]]) {
        const answer = await askBlocks(visit, n, accuracy, withStream);
        assert.ok(answer.cells > 20000, JSON.stringify(answer).slice(0, 200));
        const total = Object.values(answer.heat_w_m).reduce((a, b) => a + b, 0) +
          (withStream ? answer.streams.joint.heat_w_m : 0);
        assert.ok(Math.abs(total) < 1e-7, `heat flows add up to ${total}`);
      }
      assert.ok((await visit.verdict()).length > 40, "the page goes on");
    },
  },
];
