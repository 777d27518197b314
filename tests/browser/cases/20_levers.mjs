// SPDX-License-Identifier: MIT
// Levers moved through the mirror and by keys; the canvas follows, and so do the results.
import assert from "node:assert/strict";

const isLever = (id) => /^lever\.[^.]/.test(id) && !/\.(less|more|typed|back|card)$/.test(id);
const levers = async (visit) => (await visit.ids()).filter(isLever);

/** What a lever stands at, whatever its kind. */
function standing(control) {
  if (control.role === "slider") return control.spoken;
  return control.role === "choice" ? control.value : control.pressed;
}

/** Another value that the lever can take. */
function elsewhere(control) {
  const now = Number(control.value);
  if (control.role === "choice") return now > 0 ? now - 1 : now + 1;
  const steps = Math.round((control.max - control.min) / control.step);
  const at = Math.round((now - control.min) / control.step);
  const next = at > steps / 2 ? at - Math.ceil(steps / 4) : at + Math.ceil(steps / 4);
  return control.min + next * control.step;
}

async function moveByMirror(visit, id) {
  const before = await visit.control(id);
  if (before.role === "toggle") await visit.press(id);
  else await visit.set(id, elsewhere(before));
  const after = await visit.control(id);
  return after && standing(after) !== standing(before);
}

async function moveByKeys(visit, id) {
  const before = await visit.control(id);
  await visit.focus(id);
  if (await visit.focused() !== id) return false;
  const tries = before.role === "toggle" ? ["Enter"] : ["ArrowDown", "ArrowUp", "ArrowUp"];
  for (const key of tries) {
    await visit.key(key);
    const after = await visit.control(id);
    if (after && standing(after) !== standing(before)) return true;
  }
  return false;
}

/**
 * Some levers hide others (a single pane has no gap); those there at the end are judged. Every
 * `nth` of them, from `first` on: each takes seconds without a graphics card.
 */
async function dead(visit, move, nth = 1, first = 0) {
  const found = [];
  const all = await levers(visit);
  for (const id of all.filter((_, at) => at % nth === first)) {
    if (!(await visit.control(id))) continue;
    if (!(await move(visit, id))) found.push(id);
  }
  return found;
}

export const cases = [
  {
    name: "moving a lever moves picture, results and verdict",
    webkit: true,
    async run(visit) {
      const before = { results: await visit.results(), verdict: await visit.verdict() };
      const picture = await visit.picture();
      const image = await visit.control("slice.today");
      await visit.set("lever.weather.outside_c", -10);
      const after = await visit.results();
      const degrees = (text) => Number(text.replace("−", "-").match(/-?\d+/)[0]);
      assert.ok(degrees(after["strip.glass.today"]) < degrees(before.results["strip.glass.today"]),
        "colder outdoors, colder glass");
      assert.ok(degrees(after["strip.rh.today"]) < degrees(before.results["strip.rh.today"]),
        "colder glass is wet at less humidity");
      assert.notEqual(await visit.verdict(), before.verdict);
      assert.notEqual((await visit.control("slice.today")).label, image.label);
      assert.ok(!picture.equals(await visit.picture()), "another picture");
    },
  },
  {
    name: "every lever can be moved through the mirror",
    async run(visit) {
      await visit.press("show.today");
      // One half in each browser.
      assert.deepEqual(await dead(visit, moveByMirror, 2, visit.isFirefox ? 1 : 0), []);
    },
  },
  {
    name: "levers of the Remedy can be moved through the mirror",
    async run(visit) {
      await visit.press("show.remedy");
      assert.deepEqual(await dead(visit, moveByMirror, 4), []);
    },
  },
  {
    name: "levers can be moved by the arrow keys",
    browsers: ["chromium"],
    async run(visit) {
      await visit.press("show.today");
      assert.deepEqual(await dead(visit, moveByKeys, 4, 1), []);
    },
  },
  {
    name: "a step less and a step more come back to where one was",
    async run(visit) {
      for (const id of ["lever.weather.outside_c", "lever.shim.width_m"]) {
        const before = standing(await visit.control(id));
        await visit.press(`${id}.more`);
        assert.notEqual(standing(await visit.control(id)), before, id);
        await visit.press(`${id}.less`);
        assert.equal(standing(await visit.control(id)), before, id);
      }
    },
  },
  {
    name: "a value can be typed, in either unit",
    async run(visit) {
      const id = "lever.weather.outside_c";
      await visit.set(`${id}.typed`, "-4");
      assert.match((await visit.control(id)).spoken, /^−4\s?°F$/);
      await visit.set(`${id}.typed`, "-10 °C");
      assert.match((await visit.control(id)).spoken, /^14\s?°F$/);
    },
  },
  {
    name: "nonsense typed changes nothing",
    async run(visit) {
      const id = "lever.weather.outside_c";
      const before = standing(await visit.control(id));
      for (const words of ["cold", "", "1e999", "--3"]) {
        await visit.set(`${id}.typed`, words);
        assert.equal(standing(await visit.control(id)), before, JSON.stringify(words));
      }
    },
  },
  {
    name: "choosing another remedy changes the Remedy's results and leaves Today's",
    async run(visit) {
      const choice = await visit.control("remedy.choice");
      const before = await visit.results();
      await visit.set("remedy.choice", (Number(choice.value) + 1) % choice.options.length);
      const after = await visit.results();
      assert.equal(after["strip.u.today"], before["strip.u.today"]);
      assert.notDeepEqual(after, before);
    },
  },
  {
    name: "the strip shows what the door answers for the same house",
    async run(visit) {
      await visit.show("house");
      await visit.press("units.si");
      const house = JSON.parse(await visit.savedFile());
      await visit.show("slice");
      const results = await visit.results();
      const answer = await visit.evaluate((house) => window.shimlight.ask("house", house), house);
      const record = answer.openings[house.selected ?? 0];
      const both = {
        today: record.today, remedy: record.remedies[record.chosen].assessment,
      };
      for (const [side, said] of Object.entries(both)) {
        const shown = (name) => Number(results[`strip.${name}.${side}`].replace("−", "-")
          .match(/-?[\d.]+/)[0]);
        // Half a unit of the last shown digit, and what rounding leaves.
        assert.ok(Math.abs(shown("u") - said.u_window_w_m2k) <= 0.0051, `U ${side}`);
        assert.ok(Math.abs(shown("rh") - 100 * said.max_rh_before_wet) <= 0.51, `humidity ${side}`);
        assert.ok(Math.abs(shown("cost") - said.year_cost) <= 0.51, `cost ${side}`);
      }
    },
  },
];
