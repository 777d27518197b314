// SPDX-License-Identifier: MIT
// Installed, and the host has a newer version: which one runs, from where, and who decides. Both are
// put together by web/setup/site.py; every script of each tells its version when it runs.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Visit } from "../visit.mjs";
import { startServer } from "../../../web/serve.mjs";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const small = { width: 360, height: 640 };
const outside = "lever.weather.outside_c";
const BUILT = ["shimlight.wasm", "shimlight-rest.wasm", "shimlight-door.wasm"];
const MADE = join(root, "build/wasm/whole/shimlight.js"); // as emcc writes it

/** A version called `name` in a folder of its own, made from this project's page and the built programs. */
function makeVersion(folder, site, name) {
  const sources = join(folder, `${name}-sources`), icons = join(sources, "icons"), made = join(folder, name);
  cpSync(join(root, "web"), sources, { recursive: true, filter: (path) => !/web\/setup|serve\.mjs|door\.mjs/.test(path) });
  cpSync(join(root, "web/open_door.mjs"), join(sources, "open_door.mjs"));
  cpSync(join(root, "assets/icons"), icons, { recursive: true });
  for (const file of BUILT) cpSync(join(site, file), join(sources, file));
  cpSync(MADE, join(sources, "shimlight.js"));
  const files = readdirSync(sources, { withFileTypes: true }).filter((one) => one.isFile())
    .map((one) => join(sources, one.name)).filter((file) => /\.(html|css|m?js|webmanifest|wasm)$/.test(file));
  for (const file of files.filter((one) => /\.m?js$/.test(one) && basename(one) !== "sw.js")) {
    appendFileSync(file, `\n(globalThis.versions ??= []).push("${name}");\n`);
  }
  // A section of no meaning: the programs of two versions differ too.
  for (const file of BUILT.filter((one) => one.endsWith(".wasm"))) {
    appendFileSync(join(sources, file), Buffer.from([0, 2, 1, name.charCodeAt(0)]));
  }
  const page = join(sources, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("<head>", `<head><meta name="version" content="${name}">`));
  execFileSync("python3", [join(root, "web/setup/site.py"), made, ...files,
    ...readdirSync(icons).map((one) => join(icons, one))]);
  return made;
}

/** A host whose content can be exchanged, and a browser on it. */
async function onHost({ browser, site }, work) {
  const folder = mkdtempSync(join(tmpdir(), "shimlight-versions-"));
  const host = join(folder, "host");
  const [a, b] = ["A", "B"].map((name) => makeVersion(folder, site, name));
  const put = (version, names = readdirSync(version)) => {
    for (const name of names) cpSync(join(version, name), join(host, name), { recursive: true });
  };
  put(a);
  const server = await startServer(host);
  const visit = await Visit.start(browser, server, small);
  visit.expected = /sw\.js|ERR_CONNECTION_REFUSED|ServiceWorker/; // without a server it is asked for in vain
  try {
    await visit.until(async () => (await navigator.serviceWorker.getRegistration())?.active?.state === "activated"
      && navigator.serviceWorker.controller !== null, null, "the service worker");
    await work({ visit, server, put, b });
    await visit.close();
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true });
  }
}

/** Which versions have a part in the page: scripts, the page itself, what is kept for the next visit. */
function running(visit) {
  return visit.evaluate(async () => ({
    scripts: [...new Set(globalThis.versions)].join(),
    page: document.querySelector("meta[name=version]").content,
    caches: (await caches.keys()).length,
  }));
}

const only = (name) => ({ scripts: name, page: name, caches: 1 });

/** Asks the host for a newer worker; whether there is one that waits. */
function newerOne(visit) {
  return visit.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => {});
    while (registration.installing) await new Promise((done) => setTimeout(done, 50));
    return registration.waiting !== null;
  });
}

const noticed = (visit) => visit.evaluate(() => {
  const notice = document.getElementById("notice");
  return notice.hidden ? "" : notice.querySelector("p").textContent;
});

function offered(visit) {
  return visit.until(() => /newer Shimlight/.test(document.querySelector("#notice:not([hidden]) p")?.textContent),
    null, "the newer version to be offered");
}

function choose(visit, words) {
  return visit.evaluate((words) => [...document.querySelectorAll("#notice button")]
    .find((one) => one.textContent === words).click(), words);
}

/** Takes the newer version, which loads the page anew. */
async function useNewer(visit) {
  await choose(visit, "Use it");
  const isNewer = () => document.querySelector("meta[name=version]")?.content === "B";
  for (const end = Date.now() + 30_000; !await visit.evaluate(isNewer).catch(() => false);) {
    assert.ok(Date.now() < end, "the newer version comes");
    await new Promise((done) => setTimeout(done, 100));
  }
  await visit.ready();
}

async function bringRest(visit) {
  await visit.press("view.room");
  await visit.until(() => document.querySelector("[data-id='room.picture.remedy'], [data-id='room.picture.today']") !== null,
    null, "the second part");
  await visit.press("view.slice");
}

export const cases = [
  {
    name: "the installed version runs alone, without a host too, until the newer one is asked for",
    bare: true,
    run: (world) => onHost(world, async ({ visit, server, put, b }) => {
      await bringRest(visit);
      await visit.set(outside, -3);
      await visit.until(async () => Boolean(await caches.match("shimlight-rest.wasm") && await caches.match("report.css")),
        null, "the second part to be kept");
      assert.deepEqual(await running(visit), only("A"));

      put(b, ["sw.js", "loader.js"]); // in the middle of an exchange
      assert.equal(await newerOne(visit), false, "half a version is none");
      await visit.reload();
      assert.deepEqual(await running(visit), only("A"));
      assert.equal(await noticed(visit), "");

      put(b);
      await visit.reload();
      await offered(visit);
      await choose(visit, "Later");
      for (const stopped of [false, true]) {
        if (stopped) await server.stop();
        await visit.reload();
        assert.deepEqual(await running(visit), { ...only("A"), caches: 2 }, "the newer one waits");
        await bringRest(visit);
        assert.match((await visit.control(outside)).spoken, /^−3/);
        await visit.set(outside, -3 - stopped);
        await offered(visit);
      }

      await useNewer(visit);
      await bringRest(visit);
      assert.deepEqual(await running(visit), only("B"), "nothing of the old one is left");
      assert.match((await visit.control(outside)).spoken, /^−4/, "what was changed is there");
      assert.equal(await noticed(visit), "");
    }),
  },
  {
    name: "a second part of another version is refused and not kept, and that version offered",
    bare: true,
    run: (world) => onHost(world, async ({ visit, put, b }) => {
      put(b);
      await visit.evaluate(() => document.querySelector("[data-id='view.room']").click());
      await visit.until(() => document.querySelector("[data-id='rest']") !== null, null, "a word about the part that is missing");
      await visit.until(() => performance.getEntriesByType("resource").some(({ name }) => name.endsWith("report.js")),
        null, "the newer parts");
      await visit.rest();
      assert.ok(await visit.control("rest"), "the room waits");
      assert.equal(await visit.evaluate(async () => await caches.match("shimlight-rest.wasm") === undefined), true);
      await visit.press("view.slice");
      const before = await visit.results();
      await visit.set(outside, 5);
      assert.notDeepEqual(await visit.results(), before, "the first part goes on");
      await visit.set(outside, -3);
      await offered(visit);
      await useNewer(visit);
      await bringRest(visit);
      assert.deepEqual(await running(visit), only("B"));
      assert.match((await visit.control(outside)).spoken, /^−3/, "what was changed came along");
    }),
  },
];
