// SPDX-License-Identifier: MIT
// What a screen reader gets, from the browser's own accessibility tree; and what a thumb needs.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { phone } from "../visit.mjs";

const views = ["slice", "room", "panes", "air", "readings", "bill", "sheet", "lesson", "house"];
const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const spokenRoles = ["button", "slider", "combobox", "textbox", "tab", "image", "heading", "status"];
const touched = ["button", "toggle", "tab", "slider", "choice"];

async function accessibilityTree(visit) {
  const session = await visit.page.context().newCDPSession(visit.page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  return nodes.filter((node) => !node.ignored).map((node) => ({
    role: node.role?.value,
    name: node.name?.value ?? "",
    value: node.value?.value,
    text: node.properties?.find((one) => one.name === "valuetext")?.value?.value ?? "",
  }));
}

/** Rectangles of the mirror that lie in sight and are meant for a finger. */
async function targets(visit) {
  return visit.evaluate((touched) => [...document.querySelectorAll("#mirror .node")]
    .filter((node) => touched.includes(node.dataset.role))
    .map((node) => {
      const { x, y, width, height } = node.getBoundingClientRect();
      const cut = node.classList.contains("cut"); // by the edge of a list that scrolls
      const behind = node.classList.contains("away"); // a tab in the list of further ones
      return { id: node.querySelector("[data-id]").dataset.id, x, y, width, height, cut, behind };
    })
    .filter((box) => !box.behind && box.y >= 0 && box.y + box.height <= innerHeight), touched);
}

async function onEachView(visit, work) {
  for (const view of views) {
    await visit.show(view);
    await work(view);
  }
}

export const cases = [
  {
    name: "every control has a role and a name in the accessibility tree",
    browsers: ["chromium"],
    async run(visit) {
      await onEachView(visit, async (view) => {
        const tree = await accessibilityTree(visit);
        const nodes = tree.filter((node) => spokenRoles.includes(node.role));
        assert.ok(nodes.length > 15, `${nodes.length} nodes in ${view}`);
        assert.deepEqual(nodes.filter((node) => !node.name.trim() && node.role !== "status"), []);
      });
    },
  },
  {
    name: "no two controls have the same role and name",
    browsers: ["chromium"],
    async run(visit) {
      await onEachView(visit, async (view) => {
        const nodes = (await accessibilityTree(visit))
          .filter((node) => ["button", "slider", "combobox", "textbox", "tab"].includes(node.role))
          .map((node) => `${node.role}: ${node.name}`);
        assert.deepEqual(nodes.filter((node, i) => nodes.indexOf(node) !== i), [], view);
      });
    },
  },
  {
    name: "a slider tells its value with its unit, its range, and what it is for",
    async run(visit) {
      for (const id of await visit.ids("slider")) {
        const lever = await visit.control(id);
        assert.ok(lever.spoken && lever.min < lever.max, id);
        const now = Number(lever.value);
        assert.ok(now >= lever.min - 1e-9 && now <= lever.max + 1e-9, `${id} within its range`);
        const help = await visit.evaluate((id) => {
          const found = document.querySelector(`[data-id="${CSS.escape(id)}"]`);
          return document.getElementById(found.getAttribute("aria-describedby"))?.textContent;
        }, id);
        assert.ok(help?.length > 10, `${id} has a sentence of help`);
      }
    },
  },
  {
    name: "the verdict is announced politely, once it has settled",
    async run(visit) {
      const told = () => visit.evaluate(() => {
        const one = document.querySelector('[data-id="verdict"]');
        return { live: one.getAttribute("aria-live"), role: one.getAttribute("role"),
          text: one.textContent };
      });
      await visit.set("lever.weather.outside_c", -8);
      const verdict = await visit.verdict();
      await visit.until((verdict) =>
        document.querySelector('[data-id="verdict"]').textContent === verdict, verdict,
      "the verdict to be read out");
      const { live, role } = await told();
      assert.equal(live, "polite");
      assert.equal(role, "status");
    },
  },
  {
    name: "axe finds no violation in the mirror of any screen",
    browsers: ["chromium"],
    async run(visit) {
      await visit.evaluate(axeSource);
      await onEachView(visit, async (view) => {
        const { violations, passes } = await visit.evaluate(() => window.axe.run());
        assert.ok(passes.length > 15, `${passes.length} rules looked at ${view}`);
        assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), [], view);
      });
    },
  },
  {
    name: "headings lead through the page, the first one first",
    async run(visit) {
      await onEachView(visit, async (view) => {
        const levels = await visit.evaluate(() =>
          [...document.querySelectorAll("h1, h2, h3, h4")].map((one) => Number(one.localName[1])));
        assert.equal(levels[0], 1, view);
        levels.slice(1).forEach((level, i) =>
          assert.ok(level > 1 && level <= levels[i] + 1, `${view}: ${levels}`));
      });
    },
  },
  ...[phone, { width: 768, height: 1024, touch: true }].map((window) => ({
    name: `at ${window.width} × ${window.height} nothing to touch is smaller than 44 px or over another`,
    browsers: ["chromium"],
    window,
    async run(visit) {
      await onEachView(visit, async (view) => {
        const boxes = await targets(visit);
        assert.ok(boxes.length > 4, `${boxes.length} targets in ${view}`);
        const small = boxes.filter((box) => !box.cut && (box.width < 44 || box.height < 44));
        assert.deepEqual(small.map((box) => `${box.id} ${box.width}x${box.height}`), []);
        const over = (a, b) => Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > 1 &&
          Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > 1;
        const clashes = boxes.flatMap((a, i) => boxes.slice(i + 1)
          .filter((b) => over(a, b)).map((b) => `${a.id} over ${b.id}`));
        assert.deepEqual(clashes, []);
      });
    },
  })),
];
