// SPDX-License-Identifier: MIT
// The house page: units, light and dark, undo, files, what is kept between visits.
import assert from "node:assert/strict";

const outside = "lever.weather.outside_c";

/** Waits until the house has been written to the browser's store. */
function kept(visit) {
  return visit.until(() => document.documentElement.dataset.kept, null, "the house to be kept");
}

/** How light the page is, 0…1, from its picture. */
async function lightness(visit) {
  const picture = (await visit.picture()).toString("base64");
  return visit.evaluate(async (picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const canvas = new OffscreenCanvas(64, 64);
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0, 64, 64);
    const { data } = context.getImageData(0, 0, 64, 64);
    return data.reduce((sum, value, i) => sum + (i % 4 === 3 ? 0 : value), 0) / (64 * 64 * 3 * 255);
  }, picture);
}

export const cases = [
  {
    name: "units are switched in one place, throughout",
    async run(visit) {
      const fahrenheit = await visit.results();
      assert.match(fahrenheit["strip.glass.today"], /°F/);
      await visit.show("house");
      await visit.press("units.si");
      await visit.show("slice");
      const celsius = await visit.results();
      assert.match(celsius["strip.glass.today"], /°C/);
      assert.match(celsius["strip.u.today"], /W\/m²/);
      assert.match((await visit.control(outside)).spoken, /°C/);
      const everything = await visit.evaluate(() => document.getElementById("mirror").textContent);
      assert.doesNotMatch(everything.replace(/°F, inch/, ""), /°F|Btu|mph/, "no other unit is left");
      await visit.show("house");
      await visit.press("units.us");
      await visit.show("slice");
      assert.deepEqual(await visit.results(), fahrenheit);
    },
  },
  {
    name: "light and dark can be chosen and are kept",
    async run(visit) {
      await visit.show("house");
      await visit.press("theme.Light");
      const light = await lightness(visit);
      await visit.press("theme.Dark");
      const dark = await lightness(visit);
      assert.ok(light > 0.75 && dark < 0.35, `light ${light}, dark ${dark}`);
      await new Promise((done) => setTimeout(done, 300));
      await visit.reload();
      assert.ok(await lightness(visit) < 0.4, "still dark");
    },
  },
  {
    name: "the system's dark is followed",
    browsers: ["chromium"],
    window: { dark: true },
    async run(visit) {
      assert.ok(await lightness(visit) < 0.4);
      await visit.page.emulateMedia({ colorScheme: "light" });
      await visit.rest();
      assert.ok(await lightness(visit) > 0.6);
    },
  },
  {
    name: "undo and redo, by button and by key",
    async run(visit) {
      const at = async () => (await visit.control(outside)).spoken;
      const before = await at();
      await visit.set(outside, 20);
      await visit.set(outside, 30);
      await visit.chord("Control", "z");
      assert.match(await at(), /^20/);
      await visit.chord("Control", "z");
      assert.equal(await at(), before);
      await visit.chord("Control", "y");
      assert.match(await at(), /^20/);
      await visit.show("house");
      await visit.press("menu.redo");
      assert.ok((await visit.control("menu.redo")).disabled, "nothing more to redo");
      await visit.press("menu.undo");
      await visit.show("slice");
      assert.match(await at(), /^20/);
    },
  },
  {
    name: "a saved file opens to the same house",
    webkit: true,
    async run(visit) {
      await visit.set(outside, 25);
      const file = await visit.savedFile();
      const house = JSON.parse(file);
      assert.equal(house.kind, "shimlight-house");
      assert.ok(house.version >= 1);
      await visit.show("slice");
      await visit.set(outside, -5);
      await visit.openFile(file);
      await visit.show("slice");
      assert.match((await visit.control(outside)).spoken, /^25/);
      assert.deepEqual(JSON.parse(await visit.savedFile()), house);
    },
  },
  {
    name: "the saved file is a download with a name of its own",
    browsers: ["chromium"],
    async run(visit) {
      await visit.show("house");
      const download = visit.page.waitForEvent("download");
      await visit.press("menu.save");
      const name = (await download).suggestedFilename();
      assert.match(name, /^[^/\\]+\.json$/, name);
    },
  },
  {
    name: "a broken file gives a message with the path of the fault and changes nothing",
    async run(visit) {
      const before = await visit.savedFile();
      const wrong = JSON.parse(before);
      wrong.openings[1].today.shim.width_m = "wide";
      const broken = {
        "/openings/1/today/shim/width_m": JSON.stringify(wrong),
        "": before.slice(0, before.length / 2),
      };
      for (const [path, text] of Object.entries(broken)) {
        await visit.openFile(text);
        const message = await visit.control("message");
        assert.ok(message, "a message");
        const words = await visit.evaluate(() =>
          document.querySelector('[data-id="message"]').dataset.words);
        assert.ok(words.includes(path), words);
        await visit.press("message.close");
        assert.equal(await visit.control("message"), null);
        assert.equal(await visit.savedFile(), before);
      }
    },
  },
  {
    name: "changes are kept between visits",
    async run(visit) {
      await visit.set(outside, 33);
      await kept(visit);
      const results = await visit.results();
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^33/);
      assert.deepEqual(await visit.results(), results);
    },
  },
  {
    name: "another opening has its own trouble",
    async run(visit) {
      const before = { title: (await visit.control("title")).text, results: await visit.results() };
      await visit.show("house");
      await visit.press("opening.1");
      await visit.show("slice");
      assert.notEqual((await visit.control("title")).text, before.title);
      assert.notDeepEqual(await visit.results(), before.results);
    },
  },
];
