// SPDX-License-Identifier: MIT
// Every screen by its controls: what is told there, and that what is done there counts.
import assert from "node:assert/strict";
import { phone } from "../visit.mjs";

const text = async (visit, id) => (await visit.control(id))?.text ?? "";

/** Opens the place in the list of further views or in the row. */
async function figures(visit, view) {
  await visit.show(view);
  return [...await visit.ids("output"), ...await visit.ids("figure")].filter((id) => !id.startsWith("strip."));
}

export const cases = [
  {
    name: "each screen tells results of its own, and strip and verdict stay",
    webkit: true,
    async run(visit) {
      for (const view of ["room", "panes", "air", "readings", "bill", "sheet"]) {
        const told = await figures(visit, view);
        assert.ok(told.length > 6, `${view} tells ${told.length}`);
        assert.ok(await visit.control("strip.glass.today"), `${view} has the strip`);
        assert.ok((await visit.control("verdict")).text.length > 20, `${view} has the verdict`);
      }
    },
  },
  {
    name: "the chair in the room moves the seat, and undo brings it back",
    webkit: true,
    async run(visit) {
      await visit.show("room");
      const chair = (await visit.ids("slider")).find((id) => id.startsWith("room.seat"));
      const before = await visit.control(chair);
      await visit.set(chair, before.min + (before.max - before.min) * 0.8);
      const after = await visit.control(chair);
      assert.ok(Number(after.value) > Number(before.value));
      await visit.press("menu.undo");
      assert.equal((await visit.control(chair)).value, before.value);
    },
  },
  {
    name: "answers on site move the shares, and are kept in the file",
    webkit: true,
    async run(visit) {
      await visit.show("readings");
      const before = await text(visit, "readings.share");
      await visit.press("test.tape_casing.gone");
      const after = await text(visit, "readings.share");
      assert.notEqual(after, before);
      assert.equal((await visit.control("test.tape_casing.gone")).pressed, "true");
      const house = JSON.parse(await visit.savedFile());
      assert.equal(house.openings[house.selected].answers.tape_casing, "gone");
    },
  },
  {
    name: "a reading is typed in the reader's unit and compared",
    webkit: true,
    async run(visit) {
      await visit.show("readings");
      await visit.set("site.before.glass_c", "20");
      const house = JSON.parse(await visit.savedFile());
      const kept = house.openings[house.selected].site.before.glass_c;
      assert.ok(Math.abs(kept + 6.6667) < 0.01, `20 °F are ${kept} °C`);
      await visit.show("readings");
      assert.match(await text(visit, "readings.u"), /Btu/);
    },
  },
  {
    name: "the sheet asks who deducts and never lets both",
    webkit: true,
    async run(visit) {
      await visit.show("sheet");
      assert.equal(await visit.control("sheet.unit"), null);
      await visit.press("sheet.deducts.sheet");
      const ours = await text(visit, "sheet.unit");
      await visit.press("sheet.deducts.maker");
      const makers = await text(visit, "sheet.unit");
      assert.match(ours, /^Order this size/);
      assert.match(makers, /^Tell the maker this opening/);
      assert.notEqual(ours, makers);
    },
  },
  {
    name: "a remedy of one's own is like today until a lever moves",
    webkit: true,
    async run(visit) {
      await visit.press("remedies.open");
      await visit.press("remedies.new");
      await visit.set("remedies.name", "Only the gas");
      await visit.press("remedies.done");
      const { label } = await visit.control("show.remedy");
      assert.match(label, /Only the gas|Remedy/);
      assert.equal((await visit.control("strip.glass.remedy")).text.match(/[-−\d]+/)[0],
        (await visit.control("strip.glass.today")).text.match(/[-−\d]+/)[0]);
      await visit.set("lever.covering", 3);
      const house = JSON.parse(await visit.savedFile());
      const opening = house.openings[house.selected];
      const mine = opening.remedies[opening.chosen];
      assert.equal(mine.name, "Only the gas");
      assert.deepEqual(Object.keys(mine.changes), ["covering"]);
    },
  },
  {
    name: "a figure opens its card, Escape closes it",
    webkit: true,
    async run(visit) {
      await visit.press("strip.ankles.remedy"); // without sections to solve: at rest at once
      assert.match(await text(visit, "why.source"), /\w{4}/);
      if (visit.browser.name === "webkit") return visit.press("why.close");
      await visit.focus("why.close");
      await visit.key("Escape");
      assert.equal(await visit.control("why.close"), null);
    },
  },
  {
    name: "a lesson runs with a clicker's two keys and leaves the house as it was",
    browsers: ["chromium"],
    async run(visit) {
      const before = await visit.savedFile();
      await visit.show("lesson");
      await visit.press("lesson.2");
      for (let i = 0; i < 4; ++i) await visit.key("PageDown");
      await visit.key("PageUp");
      assert.ok(await visit.control("lesson.leave"), "a way out is in sight");
      await visit.press("lesson.leave");
      assert.equal(await visit.savedFile(), before);
    },
  },
  {
    name: "a lesson that was run through is marked, and still is after the page is opened anew",
    async run(visit) {
      const label = async (id) => (await visit.control(id)).label;
      await visit.show("lesson");
      assert.match(await label("lesson.2"), /^Start/);
      await visit.press("lesson.2");
      for (let i = 0; i < 6; ++i) await visit.press("lesson.next");
      await visit.press("lesson.leave");
      await visit.show("lesson");
      assert.match(await label("lesson.2"), /^Again/);
      await new Promise((done) => setTimeout(done, 300));
      await visit.reload();
      await visit.show("lesson");
      assert.match(await label("lesson.2"), /^Again/, "still done");
      assert.match(await label("lesson.1"), /^Start/, "the others are not");
    },
  },
  {
    name: "on a phone a further view is chosen from the list by its tab in the mirror",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await visit.show("bill");
      assert.equal((await visit.control("view.bill")).pressed, "true");
      assert.ok(await visit.control("bill.price"), "the bill is there");
    },
  },
];
