// SPDX-License-Identifier: MIT
// An opening that travels in an address.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";

/** The address that the page offers for the opening on the screen. */
async function linkOf(visit) {
  await visit.evaluate(() => {
    navigator.clipboard.writeText = async (text) => { window.copied = text; };
  });
  await visit.show("house");
  await visit.press("menu.link");
  return visit.until(() => window.copied, null, "a link");
}

async function openedAt(visit, hash) {
  await visit.evaluate((hash) => { location.hash = hash; }, hash);
  await visit.until(() => location.hash === "", null, "the link to be read");
  await visit.until(() => window.shimlight.asleep &&
    (document.querySelector('[data-id="message"]') || !document.getElementById("notice").hidden) && true,
    null, "a word about the link");
  await visit.rest();
}

/** What is announced, before it has settled and is read out. */
const message = (visit) => visit.evaluate(() => document.querySelector('[data-id="message"]').dataset.words);

const noticed = (visit) => visit.evaluate(() => document.querySelector("#notice p").textContent);

export const cases = [
  {
    name: "an opening travels in a link to another device",
    bare: true,
    browsers: ["chromium", "firefox"],
    async run({ browser, server }) {
      const sender = await Visit.start(browser, server);
      await sender.show("slice");
      await sender.set("lever.shim.width_m", 0.019);
      const results = await sender.results();
      const link = await linkOf(sender);
      await sender.close();
      assert.ok(link.length <= 1500, `${link.length} characters`);

      const receiver = await Visit.start(browser, server);
      const openings = (await receiver.ids()).length;
      await openedAt(receiver, new URL(link).hash);
      assert.match(await message(receiver), /Undo takes it out/);
      await receiver.press("message.close");
      assert.deepEqual(await receiver.results(), results, "the same opening, the same remedy");
      await receiver.show("house");
      assert.ok(await receiver.control("opening.3"), `beside the others (${openings})`);
      await receiver.press("menu.undo");
      assert.equal(await receiver.control("opening.3"), null);
      await receiver.close();
    },
  },
  {
    name: "damaged and hostile links are told and change nothing",
    browsers: ["chromium", "firefox"],
    async run(visit) {
      const link = await linkOf(visit);
      await visit.show("slice");
      const before = await visit.results();
      const good = new URL(link).hash;
      const bomb = await visit.evaluate(async () => {
        const zeros = new Blob([new Uint8Array(8e6)]).stream().pipeThrough(new CompressionStream("gzip"));
        const bytes = new Uint8Array(await new Response(zeros).arrayBuffer());
        return btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_");
      });
      const middle = Math.floor(good.length / 2);
      const changed = good[middle] === "A" ? "B" : "A";
      for (const [hash, words] of [
        [good.slice(0, -20), /cut or changed/],
        [good.slice(0, middle) + changed + good.slice(middle + 1), /cut or changed/],
        ["#o1=", /cut or changed/],
        ["#o1=%00%ff", /cut or changed/],
        [good.replace("#o1", "#o2"), /newer Shimlight/],
        [`#o1=${bomb}`, /too much/],
        [`#o1=${"A".repeat(30_000)}`, /too much/],
      ]) {
        await openedAt(visit, hash);
        assert.match(await noticed(visit), words, hash.slice(0, 20));
        await visit.evaluate(() => document.querySelector("#notice button").click());
        assert.deepEqual(await visit.results(), before);
      }
      // Well packed, but no house: the reader's own words.
      const stranger = await visit.evaluate(async () => {
        const text = new Blob(['{"kind":"else"}']).stream().pipeThrough(new CompressionStream("gzip"));
        const bytes = new Uint8Array(await new Response(text).arrayBuffer());
        return btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_");
      });
      await openedAt(visit, `#o1=${stranger}`);
      assert.match(await message(visit), /not opened and nothing was changed/);
      assert.deepEqual(await visit.results(), before);
    },
  },
];
