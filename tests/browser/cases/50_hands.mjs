// SPDX-License-Identifier: MIT
// Fingers, mouse and keys on the canvas itself.
import assert from "node:assert/strict";
import { desktop, phone } from "../visit.mjs";

const middle = ({ box }) => [box.x + box.width / 2, box.y + box.height / 2];

/** Finger events as a touch screen sends them. */
async function fingers(visit) {
  const session = await visit.page.context().newCDPSession(visit.page);
  return async (type, ...places) => {
    await session.send("Input.dispatchTouchEvent", {
      type, touchPoints: places.map(([x, y], id) => ({ x, y, id })),
    });
    await visit.evaluate(() => new Promise((done) => requestAnimationFrame(() => done())));
  };
}

/** The knob of a slider and the ends of its track, as far as the mirror tells. */
function alongTrack(control) {
  const share = (Number(control.value) - control.min) / (control.max - control.min);
  const { x, y, width, height } = control.box;
  return { at: (s) => [x + s * width, y + height / 2], share };
}

async function dragFinger(visit, from, to, steps = 8) {
  const touch = await fingers(visit);
  await touch("touchStart", from);
  for (let i = 1; i <= steps; i++) {
    await touch("touchMove", [
      from[0] + (to[0] - from[0]) * i / steps, from[1] + (to[1] - from[1]) * i / steps]);
  }
  await touch("touchEnd");
  await visit.rest();
}

export const cases = [
  {
    name: "a tap on the canvas presses what is there",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await visit.page.touchscreen.tap(...middle(await visit.control("cut.Jamb")));
      await visit.rest();
      assert.equal((await visit.control("cut.Jamb")).pressed, "true");
      assert.equal((await visit.control("cut.Sill")).pressed, "false");
      await visit.page.touchscreen.tap(...middle(await visit.control("view.room")));
      await visit.rest();
      assert.ok(await visit.control("room.picture.remedy"), "the room is there");
      const more = (await visit.control("views.more")).box;
      await visit.page.touchscreen.tap(...middle({ box: more }));
      await visit.rest();
      // The list stands above the tab; the house is its last line.
      await visit.page.touchscreen.tap(more.x + more.width / 2, more.y - 22);
      await visit.rest();
      assert.ok(await visit.control("menu.save"), "the house page is there");
    },
  },
  {
    name: "a finger drags a lever and the results follow",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      const id = "lever.weather.outside_c";
      const lever = await visit.control(id);
      const before = await visit.results();
      const { at, share } = alongTrack(lever);
      await dragFinger(visit, at(share), at(share - 0.3));
      const after = await visit.control(id);
      assert.ok(Number(after.value) < Number(lever.value) - lever.step, `${lever.value} ${after.value}`);
      assert.notDeepEqual(await visit.results(), before);
      await visit.chord("Control", "z");
      assert.equal((await visit.control(id)).value, lever.value, "one drag is one change");
    },
  },
  {
    name: "a finger drawn upwards scrolls the levers and moves none",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      const id = "lever.weather.outside_c";
      const lever = await visit.control(id);
      // From the lever's own track, which lies in sight: how far the list goes on below it depends on
      // the number of lines of the verdict, and below the list stand the tabs.
      const [x, y] = middle(lever);
      await dragFinger(visit, [x, y], [x, y - 120]);
      const after = await visit.control(id);
      assert.equal(after.value, lever.value);
      assert.ok(after.box.y < lever.box.y - 40, `${lever.box.y} ${after.box.y}`);
    },
  },
  {
    name: "two fingers zoom the picture, and there is a way back",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      const [x, y] = middle(await visit.control("slice.today") ?? await visit.control("slice.remedy"));
      const touch = await fingers(visit);
      await touch("touchStart", [x - 20, y], [x + 20, y]);
      for (let d = 25; d <= 60; d += 5) await touch("touchMove", [x - d, y], [x + d, y]);
      await touch("touchEnd");
      await visit.rest();
      assert.ok(await visit.control("picture.fit"), "zoomed");
      await visit.press("picture.fit");
      assert.equal(await visit.control("picture.fit"), null, "the whole cut again");
    },
  },
  {
    name: "a tap in the picture reads the temperature there",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      const { box } = await visit.control("slice.today") ?? await visit.control("slice.remedy");
      // Somewhere in the lower half lies solid wall.
      for (let share = 0.25; share < 0.9 && !(await visit.control("slice.probe")); share += 0.05) {
        await visit.page.touchscreen.tap(box.x + share * box.width, box.y + 0.75 * box.height);
        await visit.rest();
        if (await visit.control("why.close")) await visit.press("why.close"); // that was a label
      }
      assert.match((await visit.control("slice.probe")).text, /°F, \w+/);
    },
  },
  {
    name: "the mouse hovers to read, its wheel zooms the picture",
    browsers: ["chromium"],
    window: desktop,
    async run(visit) {
      const { box } = await visit.control("slice.today");
      let probe = null;
      for (let share = 0.2; share < 0.9 && !probe; share += 0.05) {
        await visit.page.mouse.move(box.x + share * box.width, box.y + 0.7 * box.height);
        await visit.rest();
        probe = await visit.control("slice.probe");
      }
      assert.match(probe?.text ?? "", /°F/);
      await visit.page.keyboard.down("Control");
      await visit.page.mouse.wheel(0, -200);
      await visit.page.keyboard.up("Control");
      await visit.rest();
      assert.ok(await visit.control("picture.fit"), "zoomed");
    },
  },
  {
    name: "the Tab key reaches every control and then leaves the page",
    browsers: ["chromium"],
    async run(visit) {
      const wanted = await visit.evaluate(() => [...document.querySelectorAll(
        "#mirror button, #mirror input, #mirror select")]
        .filter((one) => one.tabIndex >= 0).map((one) => one.dataset.id));
      const reached = new Set();
      for (let i = 0; i < wanted.length + 10; i++) {
        await visit.page.keyboard.press("Tab");
        const id = await visit.focused();
        if (!id && reached.size > 0) break; // the browser's own controls
        reached.add(id);
      }
      // Of a row of tabs only one needs to be in the order; the arrows reach the others.
      assert.deepEqual(wanted.filter((id) => !reached.has(id)), []);
      assert.equal(await visit.focused(), "", "no trap");
    },
  },
  {
    name: "the control with the focus is in sight, with a ring around it",
    browsers: ["chromium"],
    window: { width: 1440, height: 600 },
    async run(visit) {
      const ids = (await visit.ids("slider")).filter((id) => !id.includes(".typed"));
      for (const id of [ids[0], ids[Math.floor(ids.length / 2)], ids[ids.length - 1]]) {
        await visit.focus(id);
        const { box } = await visit.control(id);
        assert.ok(box.y >= 0 && box.y + box.height <= 600, `${id} at ${box.y}`);
        const focused = await visit.picture();
        await visit.evaluate(() => document.activeElement.blur());
        await visit.rest();
        assert.ok(!focused.equals(await visit.picture()), `${id} has a ring`);
      }
    },
  },
];
