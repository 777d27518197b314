// SPDX-License-Identifier: MIT
// Load once, stop the server, reload: it works.
import assert from "node:assert/strict";
import { Visit } from "../visit.mjs";
import { startServer } from "../../../web/serve.mjs";

const REST = "/shimlight-rest.wasm";

/** Everything the page fetched, and what the service worker keeps, as paths. */
async function fetchedAndKept(visit) {
  return visit.evaluate(async () => {
    const path = (url) => new URL(url, location).pathname;
    const fetched = performance.getEntriesByType("resource").map((entry) => path(entry.name));
    const kept = [];
    for (const name of await caches.keys()) {
      for (const request of await (await caches.open(name)).keys()) kept.push(path(request.url));
    }
    return { fetched: [...new Set(fetched)], kept };
  });
}

async function becomeOffline(visit) {
  await visit.until(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return registration?.active?.state === "activated";
  }, null, "the service worker");
}

/** Where the browser's route took the page from; undefined in one that knows none. */
const routed = (visit) => visit.evaluate(() =>
  performance.getEntriesByType("navigation")[0].workerFinalSourceType);

export const cases = [
  {
    name: "loaded once, it starts and computes without a server",
    bare: true,
    async run({ browser, site }) {
      const server = await startServer(site);
      const visit = await Visit.start(browser, server);
      try {
        await becomeOffline(visit);
        assert.ok(!(await fetchedAndKept(visit)).fetched.includes(REST), "nobody has used it yet");
        await visit.press("view.room");
        await visit.until(() => document.querySelector("[data-id='room.picture.remedy']") !== null, null, "the room");
        const { fetched, kept } = await fetchedAndKept(visit);
        assert.ok(fetched.includes(REST), "the first use brings the rest");
        await visit.press("view.slice");
        const missing = fetched.filter((path) => !kept.includes(path) && path !== "/sw.js");
        assert.deepEqual(missing, [], "all that was fetched is kept");
        await server.stop();
        await visit.reload();
        const before = await visit.results();
        await visit.set("lever.weather.outside_c", -15);
        assert.notDeepEqual(await visit.results(), before, "a lever is computed");
        await visit.press("view.room");
        assert.ok(await visit.control("room.picture.remedy"), "the rest is here too");
        await visit.reload();
        assert.match((await visit.control("lever.weather.outside_c")).spoken, /^−15/);
        assert.ok(["cache", undefined].includes(await routed(visit)), "taken from the device, the worker not asked");
        await visit.open("?from=mail");
        assert.match((await visit.control("lever.weather.outside_c")).spoken, /^−15/, "with a question too");
        // The browser itself asks for a newer worker now and then; it finds no server.
        visit.errors = visit.errors.filter((text) => !/sw\.js|ERR_CONNECTION_REFUSED/.test(text));
      } finally {
        await server.stop();
      }
      await visit.close();
    },
  },
  {
    name: "what came before the service worker is kept too",
    bare: true,
    async run({ browser, site }) {
      const server = await startServer(site);
      const visit = await Visit.start(browser, server);
      try {
        await becomeOffline(visit);
        await visit.evaluate(async () => {
          const registration = await navigator.serviceWorker.getRegistration();
          await registration.unregister();
          for (const name of await caches.keys()) await caches.delete(name);
        });
        await visit.beforeLoad(() => {
          const { register } = ServiceWorkerContainer.prototype;
          const allowed = new Promise((done) => { window.letRegister = done; });
          ServiceWorkerContainer.prototype.register = async function (...what) {
            await allowed;
            return register.apply(this, what);
          };
        });
        await visit.reload();
        await visit.press("view.room");
        await visit.until(() => document.querySelector("[data-id='room.picture.remedy']") !== null, null, "the room");
        assert.deepEqual((await fetchedAndKept(visit)).kept, []);
        await visit.evaluate(() => window.letRegister());
        await becomeOffline(visit);
        await visit.until(async () => Boolean(await caches.match("shimlight-rest.wasm") && await caches.match("report.css")),
          null, "the second part to be kept");
        await server.stop();
        await visit.reload();
        await visit.press("view.room");
        assert.ok(await visit.control("room.picture.remedy"), "the rest is here");
        visit.errors = visit.errors.filter((text) => !/sw\.js|ERR_CONNECTION_REFUSED/.test(text));
      } finally {
        await server.stop();
      }
      await visit.close();
    },
  },
  {
    name: "every file of the site is kept, and the page is valid without its name",
    bare: true,
    async run({ browser, server }) {
      const visit = await Visit.start(browser, server);
      await becomeOffline(visit);
      const { kept } = await fetchedAndKept(visit);
      assert.ok(kept.includes("/"), "the page itself");
      for (const name of ["/host.js", "/shimlight.wasm", "/loader.js", "/style.css"]) {
        assert.ok(kept.includes(name), name);
      }
      await visit.close();
    },
  },
];
