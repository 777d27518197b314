// SPDX-License-Identifier: MIT
// What a browser does to its database when it was killed while it wrote: it is gone. kill.mjs kills.
import assert from "node:assert/strict";

const outside = "lever.weather.outside_c";

const dropDatabase = () => new Promise((done, failed) => {
  Object.assign(indexedDB.deleteDatabase("shimlight"), { onsuccess: () => done(), onerror: failed });
});

/** In the page. "emptied": as after a kill between the copy and the transaction that goes with it.
 *  "damaged": the newest text of the one house is cut short, as a disk may do it. */
async function spoilLibrary(how) {
  const database = await new Promise((done, failed) => {
    const request = indexedDB.open("shimlight");
    Object.assign(request, { onsuccess: () => done(request.result), onerror: failed });
  });
  const transaction = database.transaction(["library", "texts", "settings"], "readwrite");
  const texts = transaction.objectStore("texts");
  if (how === "emptied") {
    for (const name of transaction.objectStoreNames) transaction.objectStore(name).clear();
  } else {
    transaction.objectStore("library").getAll().onsuccess = ({ target: { result: [{ id, rev }] } }) => {
      texts.get([id, rev % 2]).onsuccess = ({ target: { result } }) => {
        texts.put({ ...result, text: result.text.slice(0, 99) }, [id, rev % 2]);
      };
    };
  }
  await new Promise((done, failed) => Object.assign(transaction, { oncomplete: done, onabort: failed }));
  database.close();
}

/** The files: [name, text] each. */
async function copyTexts() {
  const files = await (await navigator.storage.getDirectory()).getDirectoryHandle("houses");
  const texts = [];
  for await (const [name, handle] of files.entries()) texts.push([name, await (await handle.getFile()).text()]);
  return texts;
}

async function putFiles(texts) {
  const files = await (await navigator.storage.getDirectory()).getDirectoryHandle("houses");
  for (const [name, text] of texts) {
    const file = await (await files.getFileHandle(name, { create: true })).createWritable();
    await file.write(text);
    await file.close();
  }
}

export const cases = [
  {
    name: "houses of a database that the browser drops come back from their second copies",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      const first = (await visit.control("title")).text;
      await visit.show("house");
      await visit.press("library.new");
      await visit.change("house", "house.name", "Mill Row 12");
      await visit.change("slice", outside, -5);
      await visit.evaluate(dropDatabase);
      await visit.reload();
      assert.match((await visit.control("title")).text, /Mill Row 12/, "the one that was open");
      assert.match((await visit.control(outside)).spoken, /^−5/);
      await visit.show("house");
      assert.match((await visit.control("storage.note")).text, /2 houses are back from a second copy/);
      await visit.press(await visit.evaluate(() => [...document.querySelectorAll("[data-id^='shelf.']")]
        .find((one) => one.textContent.includes("openings")).dataset.id));
      assert.equal((await visit.control("title")).text, first);
      await visit.reload();
      await visit.show("slice");
      assert.match((await visit.control(outside)).spoken, /^25/, "kept as before");
    },
  },
  {
    name: "a copy whose house never reached the database is that house at the next start, not one more",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      await visit.evaluate(spoilLibrary, "emptied");
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^25/);
      await visit.change("slice", outside, -5);
      await visit.evaluate(dropDatabase);
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^−5/);
      await visit.show("house");
      assert.equal(await visit.evaluate(() => document.querySelectorAll("[data-id^='shelf.']").length), 0, "no other house");
    },
  },
  {
    name: "what copies were being written at a kill is no house and goes",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      const [[name, text]] = await visit.evaluate(copyTexts);
      await visit.evaluate(putFiles,
        [[`${name}.crswap`, text], [`${name}.1.crswap`, text.slice(0, 99)], [`${name}.2.crswap`, ""]]);
      await visit.evaluate(dropDatabase);
      await visit.reload();
      await visit.show("house");
      assert.equal(await visit.evaluate(() => document.querySelectorAll("[data-id^='shelf.']").length), 0, "no other house");
      assert.match((await visit.control("storage.note")).text, /1 house is back/);
      await visit.until(async (texts) => (await eval(`(${texts})`)()).length === 1, String(copyTexts), "the rest to go");
    },
  },
  {
    name: "a copy that a kill left older than its house is made again at the next start",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      const copies = await visit.evaluate(copyTexts);
      await visit.change("slice", outside, -5);
      await visit.evaluate(putFiles, copies);
      await visit.reload();
      await visit.evaluate(dropDatabase);
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^−5/);
    },
  },
  {
    name: "a copy that cannot be written any more gives way to a new one",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      await visit.evaluate(async () => {
        const files = await (await navigator.storage.getDirectory()).getDirectoryHandle("houses");
        for await (const name of files.keys()) {
          await files.removeEntry(name);
          await files.getDirectoryHandle(name, { create: true });
        }
      });
      await visit.change("slice", outside, -5);
      await visit.evaluate(dropDatabase);
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^−5/);
    },
  },
  {
    name: "a text that was damaged does not take the place of its whole copy",
    window: { width: 360, height: 640 },
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.change("slice", outside, 25);
      const older = await visit.evaluate(copyTexts);
      await visit.change("slice", outside, -5);
      const copies = await visit.evaluate(copyTexts);
      assert.notDeepEqual(copies, older, "each change has its copy");
      await visit.evaluate(spoilLibrary, "damaged");
      await visit.reload();
      assert.match((await visit.control(outside)).spoken, /^25/, "the generation before");
      await visit.show("house"); // brings what compares the copy
      assert.deepEqual(await visit.evaluate(copyTexts), copies);
    },
  },
];
