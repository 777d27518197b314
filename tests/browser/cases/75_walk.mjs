// SPDX-License-Identifier: MIT
// The main job as somebody does it who hears the page: each step is looked for in the browser's own
// accessibility tree and compared with the program's results.
import assert from "node:assert/strict";

async function heard(visit) {
  const session = await visit.page.context().newCDPSession(visit.page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  return nodes.filter((node) => !node.ignored).map((node) => ({
    role: node.role?.value, name: node.name?.value ?? "", value: node.value?.value,
    live: node.properties?.find((one) => one.name === "live")?.value?.value,
  }));
}

async function hears(visit, role, pattern) {
  const found = (await heard(visit)).find((one) => one.role === role && pattern.test(one.name));
  assert.ok(found, `${role} ${pattern}`);
  return found;
}

const escaped = (words) => new RegExp(words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));

/** The live region must hold the sentence that the program has now. */
async function hearsVerdict(visit) {
  const words = await visit.verdict();
  await visit.until((words) => document.querySelector('[data-id="verdict"]').textContent === words,
    words, "the verdict to be read out");
  assert.ok((await heard(visit)).some((one) => one.role === "status" && one.live === "polite"));
  assert.ok((await heard(visit)).some((one) => one.name === words), "the verdict's words");
  return words;
}

async function comparesBoth(visit) {
  const results = await visit.results();
  const today = await hears(visit, "button", /^Glass, inside face, today:/);
  const remedy = await hears(visit, "button", /^Glass, inside face, with the remedy:/);
  assert.match(today.name, escaped(results["strip.glass.today"]));
  assert.match(remedy.name, escaped(results["strip.glass.remedy"]));
}

export const cases = [
  {
    name: "the main job can be done by ear",
    browsers: ["chromium"],
    async run(visit) {
      const { text } = await visit.control("title");
      assert.equal((await hears(visit, "heading", escaped(text))).name, text);
      const first = await hearsVerdict(visit);
      await hears(visit, "button", /^Bothered at the ankles, today: \d+\s?%/);
      await visit.focus("lever.weather.outside_c");
      await visit.set("lever.weather.outside_c", -10);
      assert.equal((await hears(visit, "slider", /^Outdoors$/)).value, -10);
      assert.notEqual(await hearsVerdict(visit), first);
      const { options, value } = await visit.control("remedy.choice");
      const other = (Number(value) + 1) % options.length;
      await visit.set("remedy.choice", other);
      assert.equal((await hears(visit, "combobox", /^Remedy$/)).value, options[other]);
      await comparesBoth(visit);
      await visit.press("strip.ankles.remedy");
      await hears(visit, "heading", /^Bothered at the ankles, with the remedy$/);
      await hears(visit, "button", /^Close$/);
      await visit.press("why.close");
      await visit.show("sheet");
      await hears(visit, "tab", /^Sheet$/);
      assert.match((await visit.control("sheet.opening")).text, /^Opening size.*\sin × .*\sin/);
      assert.ok((await heard(visit)).some((one) => /\sin × .*\sin$/.test(one.name)), "the order's size");
    },
  },
];
