// SPDX-License-Identifier: MIT
// Several houses on one device: kept apart, deleted and put back, as one file, in two tabs, and what is
// said where nothing can be kept. What survives a browser that dies is in kill.mjs.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";

const outside = "lever.weather.outside_c";
const bothBrowsers = ["chromium", "firefox"];
const small = { width: 360, height: 640 }; // quick to draw

const title = async (visit) => (await visit.control("title")).text;
const spoken = async (visit) => (await visit.control(outside)).spoken;

/** The controls of the list whose words hold `words`: their ids. */
function listed(visit, kind, words) {
  return visit.evaluate(({ kind, words }) => [...document.querySelectorAll("[data-id]")]
    .filter((one) => one.dataset.id.startsWith(kind) && one.textContent.includes(words))
    .map((one) => one.dataset.id), { kind, words });
}

async function open(visit, words) {
  await visit.show("house");
  const [id, ...more] = (await listed(visit, "shelf.", words)).filter((id) => !/^shelf\.(gone|back)\./.test(id));
  assert.ok(id && !more.length, `one house called ${words}`);
  await visit.press(id);
}

const change = (visit, value) => visit.change("slice", outside, value);

async function begin(visit, name) {
  await visit.show("house");
  await visit.press("library.new");
  await visit.set("house.name", name);
}

const noticed = (visit) => visit.evaluate(() => {
  const notice = document.getElementById("notice");
  return notice.hidden ? "" : notice.querySelector("p").textContent;
});

async function choose(visit, words) {
  await visit.evaluate((words) => {
    [...document.querySelectorAll("#notice button")].find((one) => one.textContent === words).click();
  }, words);
  await visit.rest();
}

const note = async (visit) => {
  await visit.show("house");
  return (await visit.control("storage.note"))?.text ?? "";
};

/** Another tab of the same browser, with the same houses. */
async function secondTab(visit) {
  const { page } = visit;
  const context = page.context?.() ?? page.browserContext();
  const second = await context.newPage();
  if (page.viewportSize) await second.setViewportSize(page.viewportSize());
  else await second.setViewport(page.viewport());
  const tab = new Visit(visit.browser, visit.server, { page: second, close: () => second.close() });
  await tab.open();
  await tab.until(() => document.querySelector("[data-id]") && true, null, "the second tab");
  return tab;
}

/** Firefox draws only the tab in front. */
const front = (visit) => visit.isFirefox && visit.page.bringToFront();

/** The last file that was offered. */
async function offered(visit, press) {
  await visit.evaluate(() => {
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob) => {
      window.blob = blob;
      return make(blob);
    };
  });
  await visit.show("house");
  await visit.press(press);
  return visit.until(() => window.blob?.text(), null, "a file");
}

/** A database of version 1 in the place of what is here, with these texts, oldest first. */
function asVersionOne(visit, texts) {
  return visit.evaluate(async (texts) => {
    const done = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    await done(indexedDB.deleteDatabase("shimlight"));
    const opening = indexedDB.open("shimlight", 1);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore("houses", { autoIncrement: true });
      opening.result.createObjectStore("settings");
    };
    const database = await done(opening);
    const transaction = database.transaction(["houses", "settings"], "readwrite");
    texts.forEach((text, i) => transaction.objectStore("houses").add({ text, kept_at: 1.7e12 + i }));
    transaction.objectStore("settings").put(2, "theme");
    await new Promise((resolve) => { transaction.oncomplete = resolve; });
    database.close();
  }, texts);
}

export const cases = [
  {
    name: "two houses are kept apart",
    window: small,
    webkit: true,
    async run(visit) {
      await change(visit, 25);
      const first = await title(visit);
      await begin(visit, "Mill Row 12");
      assert.match(await title(visit), /Mill Row 12/);
      await change(visit, -5);
      await open(visit, "openings");
      assert.equal(await title(visit), first);
      assert.ok((await visit.control("menu.undo")).disabled, "its history does not hold the other's changes");
      await visit.show("slice");
      assert.match(await spoken(visit), /^25/);
      await visit.reload();
      assert.equal(await title(visit), first, "the one that was open");
      assert.match(await spoken(visit), /^25/);
      await open(visit, "Mill Row 12");
      await visit.show("slice");
      assert.match(await spoken(visit), /^−5/);
      await visit.reload();
      assert.match(await title(visit), /Mill Row 12/);
    },
  },
  {
    name: "a change just made goes along when another house is opened",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      await begin(visit, "Mill Row 12");
      await open(visit, "openings");
      await visit.show("slice");
      await visit.set(outside, 11); // and at once, without waiting for anything
      await open(visit, "Mill Row 12");
      await open(visit, "openings");
      await visit.show("slice");
      assert.match(await spoken(visit), /^11/);
    },
  },
  {
    name: "a deleted house waits in the trash and comes back as it was",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const first = await title(visit);
      await begin(visit, "Mill Row 12");
      await visit.press("library.delete");
      assert.equal(await title(visit), first, "the other house comes in its place");
      assert.match((await visit.control("library.gone")).text, /Mill Row 12/);
      await visit.reload();
      assert.equal(await title(visit), first, "and stays there");
      await visit.show("house");
      const [back] = await listed(visit, "shelf.back.", "Mill Row 12");
      await visit.press(back);
      assert.match(await title(visit), /Mill Row 12/);
      assert.deepEqual(await listed(visit, "shelf.back.", ""), []);
      await visit.press("library.delete");
      await visit.press("library.empty");
      await visit.press("library.erase");
      await visit.reload();
      await visit.show("house");
      assert.deepEqual(await listed(visit, "shelf.back.", ""), [], "gone for good");
      await visit.press("library.delete");
      assert.match(await title(visit), /New house/, "after the last one an empty one");
      assert.equal((await listed(visit, "shelf.back.", "")).length, 1);
    },
  },
  {
    name: "a duplicate goes its own way",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      await visit.show("house");
      await visit.press("library.duplicate");
      assert.match(await title(visit), /, copy/);
      await change(visit, 5);
      await open(visit, "openings");
      await visit.show("slice");
      assert.match(await spoken(visit), /^25/);
    },
  },
  {
    name: "all houses go into one file and come back beside what is there",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      await begin(visit, "Mill Row 12");
      await change(visit, -5);
      const file = await offered(visit, "library.save");
      const { kind, version, houses } = JSON.parse(file);
      assert.deepEqual([kind, version, houses.length], ["shimlight-library", 1, 2]);
      const alone = await visit.savedFile();
      assert.deepEqual(houses[0], JSON.parse(alone), "each as its own file has it");
      const before = await listed(visit, "shelf.", "");
      await visit.openFile(file);
      assert.match(await noticed(visit), /2 houses were added/);
      assert.match(await title(visit), /Mill Row 12/, "what is open stays");
      assert.equal((await listed(visit, "shelf.", "")).length, before.length + 2);
      await open(visit, "Mill Row 12"); // the one from the file: the other is open
      assert.deepEqual(JSON.parse(await visit.savedFile()), houses[0], "not a field is lost");
    },
  },
  {
    name: "a faulty library file is told with its path and adds nothing",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const file = JSON.parse(await offered(visit, "library.save"));
      const twice = { ...file, houses: [file.houses[0], structuredClone(file.houses[0])] };
      twice.houses[1].openings[0].today.width_m = "wide";
      const before = await listed(visit, "shelf.", "");
      for (const [text, words] of [
        [JSON.stringify(twice), /\/houses\/1\/openings\/0\/today\/width_m/],
        [JSON.stringify({ ...file, version: 2 }), /\/version.*newer/],
        [JSON.stringify({ ...file, houses: {} }), /\/houses: is no list/],
        [JSON.stringify({ ...file, more: 1 }), /\/more: is not known/],
        [JSON.stringify(file).slice(0, -9), /not JSON/],
        [JSON.stringify(file).replace('"kind"', '"kind":1,"kind"'), /\/kind: is there twice/],
        [JSON.stringify(file).replace('"width_m"', '"wi\\u0064th_m":1,"width_m"'),
          /\/houses\/0\/openings\/0\/[a-z/]+width_m: is there twice in one object/],
      ]) {
        await visit.openFile(text);
        const told = await noticed(visit);
        assert.match(told, words);
        assert.match(told, /nothing was changed/);
        await choose(visit, "Close");
        assert.deepEqual(await listed(visit, "shelf.", ""), before);
      }
    },
  },
  {
    name: "a second tab says so, and can take the house over",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const tab = await secondTab(visit);
      await tab.until(() => !document.getElementById("notice").hidden, null, "a word about the other tab");
      assert.match(await noticed(tab), /open in another tab/);
      await choose(tab, "Just look");
      await tab.show("slice");
      await tab.set(outside, 5);
      assert.match(await note(tab), /another tab/);
      await front(visit);
      await change(visit, 30); // the first goes on as before
      assert.match(await note(visit), /Saved/);

      await front(tab);
      await tab.press("library.take");
      assert.match(await noticed(tab), /What you changed in this house is not kept/);
      await choose(tab, "Go on without it");
      await tab.show("slice");
      assert.match(await spoken(tab), /^30/, "as the first tab left it");
      await visit.until(() => !document.getElementById("notice").hidden, null, "the first tab to hear of it");
      assert.match(await noticed(visit), /taken over by another tab/);
      await change(tab, 12);
      await front(visit);
      await choose(visit, "Just look");
      await visit.show("slice");
      await visit.set(outside, 0);
      assert.match(await note(visit), /another tab/);
      assert.ok((await visit.control("library.delete")).disabled);
      await visit.press("library.duplicate"); // what is here is not lost
      await visit.show("slice");
      assert.match(await spoken(visit), /^0/);
      await open(visit, "openings"); // what the other tab has lies in the list, as it left it
      assert.match(await noticed(visit), /open in another tab/);
      await visit.show("slice");
      assert.match(await spoken(visit), /^12/);
      await tab.close();
    },
  },
  {
    name: "a reload comes back to the tab's own house, a new tab to the last one",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const first = await title(visit);
      const tab = await secondTab(visit);
      await tab.until(() => !document.getElementById("notice").hidden, null, "a word about the other tab");
      await choose(tab, "Just look");
      await begin(tab, "Mill Row 12");
      await change(tab, -5);
      await front(visit);
      await visit.reload();
      assert.equal(await title(visit), first);
      await change(visit, 20);
      await front(tab);
      await tab.reload();
      assert.match(await title(tab), /Mill Row 12/, "though the other one was kept last");
      const third = await secondTab(visit);
      assert.equal(await title(third), first);
      await third.close();
      await front(tab);
      await tab.show("house");
      await tab.press("library.delete");
      await tab.reload();
      assert.equal(await title(tab), first, "its own is in the trash");
      await tab.close();
    },
  },
  {
    name: "a closed tab gives its house back",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const tab = await secondTab(visit);
      await tab.until(() => !document.getElementById("notice").hidden, null, "a word about the other tab");
      await choose(tab, "Use it here");
      await change(tab, 12);
      await tab.close();
      await visit.until(() => document.querySelector("[data-id='lever.weather.outside_c']")
        .getAttribute("aria-valuetext").startsWith("12"), null, "the house to come back");
      await visit.rest();
      await change(visit, 14);
      await visit.reload();
      assert.match(await spoken(visit), /^14/);
    },
  },
  {
    name: "without locks no tab writes over another's changes",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await visit.beforeLoad(() => Object.defineProperty(navigator, "locks", { value: undefined }));
      await change(visit, 25);
      await visit.reload();
      const tab = await secondTab(visit);
      await tab.evaluate(() => new Promise((done) => setTimeout(done, 300)));
      await front(visit);
      await change(visit, 30);
      await front(tab);
      await tab.show("slice");
      await tab.set(outside, 5);
      await tab.until(() => !document.getElementById("notice").hidden, null, "a word about the other tab");
      assert.match(await noticed(tab), /open in another tab/);
      await tab.close();
      await visit.reload();
      assert.match(await spoken(visit), /^30/);
    },
  },
  {
    name: "what version 1 kept is all there, its older text too",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      const newer = await visit.savedFile();
      await change(visit, 20);
      const older = await visit.savedFile();
      await asVersionOne(visit, [older, newer]);
      await visit.reload();
      assert.deepEqual(JSON.parse(await visit.savedFile()), JSON.parse(newer));
      await visit.show("slice");
      await change(visit, 15);
      await visit.reload();
      assert.match(await spoken(visit), /^15/);
      await asVersionOne(visit, [older, newer.slice(0, 900)]);
      await visit.reload();
      await visit.show("slice");
      assert.match(await spoken(visit), /^20/, "the newest is damaged, the one before is read");
    },
  },
  {
    name: "a house of which nothing can be read stays as it is",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await asVersionOne(visit, ["{", "[]"]);
      await visit.reload();
      await change(visit, 25);
      const texts = await visit.evaluate(() => new Promise((resolve) => {
        indexedDB.open("shimlight").onsuccess = ({ target: { result } }) => {
          result.transaction("texts").objectStore("texts").getAll().onsuccess = ({ target }) =>
            resolve(target.result.map(({ text }) => text));
        };
      }));
      assert.ok(texts.includes("{") && texts.includes("[]") && texts.length === 3);
      await visit.reload();
      await visit.show("slice");
      assert.match(await spoken(visit), /^25/);
    },
  },
  {
    name: "without room it says so, and a file can be saved",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await change(visit, 25);
      await visit.evaluate(() => {
        const { put } = IDBObjectStore.prototype;
        window.makeRoom = () => { IDBObjectStore.prototype.put = put; };
        IDBObjectStore.prototype.put = function () {
          throw new DOMException("full", "QuotaExceededError");
        };
      });
      await visit.set(outside, 30);
      await visit.until(() => !document.getElementById("notice").hidden, null, "a word about room");
      assert.match(await noticed(visit), /not kept: this device has no room left/);
      await choose(visit, "Later");
      await visit.set(outside, 31);
      assert.equal(await noticed(visit), "", "told once");
      assert.match(await note(visit), /Not kept: this device has no room left. Save a file/);
      await visit.press("library.new");
      assert.match(await noticed(visit), /What you changed in this house is not kept/);
      await choose(visit, "Stay");
      await visit.evaluate(() => window.makeRoom());
      await change(visit, 32);
      assert.match(await note(visit), /Saved/);
      await visit.reload();
      await visit.show("slice");
      assert.match(await spoken(visit), /^32/);
    },
  },
  {
    name: "a disk that is really full costs no kept house",
    window: small,
    browsers: ["chromium"],
    async run(visit) {
      await change(visit, 25);
      const devtools = await visit.page.context().newCDPSession(visit.page);
      const { origin } = new URL(visit.server.url);
      await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
      // The browser asks its disk only now and then.
      for (let value = 26; !(await noticed(visit)) && value < 50; value++) {
        await visit.set(outside, value);
        await new Promise((done) => setTimeout(done, 1000));
      }
      assert.match(await noticed(visit), /not kept: this device has no room left/);
      await choose(visit, "Later");
      const kept = await visit.evaluate(() => document.documentElement.dataset.kept);
      await devtools.send("Storage.overrideQuotaForOrigin", { origin });
      await visit.reload();
      await visit.show("slice");
      assert.match(await spoken(visit), new RegExp(`^${24 + Number(kept)}`), "as it was last kept");
    },
  },
  {
    name: "a browser that keeps nothing says so, and all else works",
    window: small,
    browsers: bothBrowsers,
    async run(visit) {
      await visit.beforeLoad(() => Object.defineProperty(window, "indexedDB", {
        get() { throw new DOMException("", "SecurityError"); },
      }));
      await visit.reload();
      await visit.set(outside, 25);
      await visit.show("house");
      await visit.until(() => !document.getElementById("notice").hidden, null, "a word about it");
      assert.match(await noticed(visit), /not kept: this browser window keeps nothing. Save a file/);
      await choose(visit, "Later");
      assert.match(await note(visit), /this browser window keeps nothing. Save a file/);
      assert.equal(await visit.control("library.delete"), null);
      const before = JSON.parse(await visit.savedFile());
      await visit.press("library.new");
      assert.match(await title(visit), /New house/);
      await visit.press("menu.undo");
      assert.deepEqual(JSON.parse(await visit.savedFile()), before, "one house at a time, and undo");
      assert.deepEqual(JSON.parse(await offered(visit, "library.save")).houses, [before]);
    },
  },
];
