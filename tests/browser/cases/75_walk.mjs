// SPDX-License-Identifier: MIT
// The main job as somebody does it who hears the page: each step is looked for in the browser's own
// accessibility tree and compared with the program's results, the house file and what was measured.
//
// Chromium tells its tree: role, name, value and live region are its own. Firefox only says which
// elements have a role and a name in its tree: so both are its own there too, but value and live
// region are read from the attributes and properties that they come from.
import assert from "node:assert/strict";

async function chromiumHears(visit, role) {
  const session = await visit.page.context().newCDPSession(visit.page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  return nodes.filter((node) => !node.ignored && node.role?.value === role).map((node) => ({
    name: node.name?.value ?? "", value: node.value?.value,
    live: node.properties?.find((one) => one.name === "live")?.value?.value,
  }));
}

/** Of the elements that have the role in Firefox's tree, what the page itself calls them. */
async function firefoxHears(visit, role) {
  const all = await visit.page.$$(`::-p-aria([role="${role}"])`);
  return visit.page.evaluate((...all) => all.map((one) => ({
    name: (one.getAttribute("aria-label") ?? one.labels?.[0]?.textContent ?? one.textContent).trim(),
    value: one.localName === "select" ? one.selectedOptions[0]?.textContent
      : one.type === "range" ? one.valueAsNumber : one.value,
    live: one.getAttribute("aria-live"),
  })), ...all);
}

/** That Firefox has the name, letter by letter. A live region has none: its words are its content. */
async function firefoxKnows(visit, role, name) {
  const quoted = name.replace(/["\\]/g, "\\$&");
  const there = await visit.page.$(`::-p-aria([name="${quoted}"][role="${role}"])`);
  assert.ok(there, `${role} "${name}" in the accessibility tree`);
}

async function hears(visit, role, pattern) {
  const all = await (visit.isFirefox ? firefoxHears : chromiumHears)(visit, role);
  const found = all.find((one) => pattern.test(one.name));
  assert.ok(found, `${role} ${pattern}`);
  if (visit.isFirefox && role !== "status") await firefoxKnows(visit, role, found.name);
  return found;
}

const escaped = (words) => new RegExp(words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));

/** The live region must hold the sentence that the program has now. */
async function hearsVerdict(visit) {
  const words = await visit.verdict();
  await visit.until((words) => document.querySelector('[data-id="verdict"]').textContent === words,
    words, "the verdict to be read out");
  if (visit.isFirefox) {
    assert.equal((await hears(visit, "status", escaped(words))).live, "polite");
  } else {
    assert.ok((await chromiumHears(visit, "status")).some((one) => one.live === "polite"));
    assert.ok((await chromiumHears(visit, "StaticText")).some((one) => one.name === words),
      "the verdict's words");
  }
  return words;
}

async function comparesBoth(visit) {
  const results = await visit.results();
  const today = await hears(visit, "button", /^Glass, inside face, today:/);
  const remedy = await hears(visit, "button", /^Glass, inside face, with the remedy:/);
  assert.match(today.name, escaped(results["strip.glass.today"]));
  assert.match(remedy.name, escaped(results["strip.glass.remedy"]));
}

/** "31 3/4 in" and "31.75 in" in inches. */
function inches(words) {
  const [, whole, top, bottom] = /^(\d+(?:\.\d+)?)?\s?(?:(\d+)\/(\d+))?\s?in$/u.exec(words.trim());
  return Number(whole ?? 0) + (bottom ? top / bottom : 0);
}

/** What the customer said, as the house file has it. */
async function hearsComplaint(visit) {
  const house = JSON.parse(await visit.savedFile()); // turns to House
  const { name, complaint } = house.openings[house.selected ?? 0];
  assert.ok(complaint.length > 10);
  const card = await hears(visit, "button", escaped(complaint));
  assert.ok(card.name.startsWith(name), card.name);
}

/** The order's size by this test's own sum: the smallest measure each way less what is deducted. */
async function ordersBySum(visit) {
  const taken = { // inches, as read from the tape
    width: { top: 32.125, middle: 32, bottom: 32.0625 },
    height: { left: 60.25, middle: 60.1875, right: 60.125 },
  };
  for (const [way, places] of Object.entries(taken))
    for (const [place, measure] of Object.entries(places))
      await visit.set(`site.tape.${way}_${place}_m`, String(measure));
  await visit.press("sheet.deducts.sheet");
  const { name } = await hears(visit, "button", /^Order this size:/);
  const sizes = name.replace(/^.*: ?/, "").split("×").map(inches);
  for (const [i, way] of ["width", "height"].entries()) {
    const help = await visit.evaluate((way) => {
      const field = document.querySelector(`[data-id="site.order.deduct_${way}_m"]`);
      return document.getElementById(field.getAttribute("aria-describedby")).textContent;
    }, way);
    const deducted = inches(`${/reckoned with (.*)$/.exec(help)[1]} in`); // as the page says it
    assert.ok(deducted > 0 && deducted <= 1.5, help);
    const left = Math.min(...Object.values(taken[way])) - deducted;
    assert.equal(sizes[i], Math.floor(8 * left + 1e-9) / 8, `${way}: eighths, rounded down`);
  }
}

export const cases = [
  {
    name: "the main job can be done by ear",
    browsers: ["chromium", "firefox"],
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
      await ordersBySum(visit);
      await hearsComplaint(visit);
    },
  },
];
