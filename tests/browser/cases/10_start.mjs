// SPDX-License-Identifier: MIT
// The first visit: the demo house, what the page promises, silence when nothing happens.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { phone, Visit } from "../visit.mjs";
import { withWorkerScript } from "../worker_site.mjs";

const demo = JSON.parse(readFileSync(new URL("../../../assets/demo_house.json", import.meta.url)));

/** In the worker, before its script: in which order it solves, tells of the mirror, hears that it is there. */
function logOrder() {
  const order = (globalThis.order = []), post = globalThis.postMessage;
  globalThis.postMessage = ([name, ...what]) => {
    if (name === "mirror") order.push(name);
    post([name, ...what]);
  };
  addEventListener("message", ({ data: [, name] }) => name === "grown" && order.push(name));
  const port = Object.getOwnPropertyDescriptor(MessagePort.prototype, "onmessage");
  Object.defineProperty(MessagePort.prototype, "onmessage", { ...port, set(solve) {
    port.set.call(this, () => {
      order.push("solve");
      solve();
    });
  } });
}

export const cases = [
  {
    name: "first start shows the demo house with its troubles",
    webkit: true,
    async run(visit) {
      const title = await visit.control("title");
      assert.equal(title.tag, "h1");
      assert.ok(title.text.includes(demo.name), title.text);
      const opening = demo.openings[demo.selected ?? 0];
      assert.ok(title.text.includes(opening.name), title.text);
      assert.ok((await visit.verdict()).length > 40, "the verdict says something");
      await visit.show("house");
      const cards = (await visit.ids("toggle")).filter((id) => /^opening\.\d+$/.test(id));
      assert.equal(cards.length, demo.openings.length);
      assert.ok(cards.length > 1, "more than one opening");
    },
  },
  {
    name: "the page's own words go with the first picture, not over it",
    async run(visit) {
      await visit.beforeLoad(() => {
        new MutationObserver((_, observer) => {
          if (!document.documentElement?.dataset.ready) return;
          window.wordsOverPicture = Boolean(document.getElementById("intro")?.offsetHeight);
          observer.disconnect();
        }).observe(document, { attributes: true, subtree: true });
      });
      await visit.reload();
      assert.equal(await visit.evaluate(() => window.wordsOverPicture), false);
    },
  },
  {
    name: "every result has a figure, for Today and for the Remedy",
    webkit: true,
    async run(visit) {
      const results = await visit.results();
      for (const name of ["glass", "ankles", "rh", "u", "cost"]) {
        for (const side of ["today", "remedy"]) {
          assert.match(results[`strip.${name}.${side}`] ?? "", /\d|never/, `strip.${name}.${side}`);
        }
      }
    },
  },
  {
    name: "at least fourteen levers",
    async run(visit) {
      const levers = (await visit.ids()).filter((id) => /^lever\.[^.]/.test(id) &&
        !/\.(less|more|typed|back|card)$/.test(id));
      assert.ok(levers.length >= 14, `${levers.length} levers`);
    },
  },
  {
    name: "strict content security policy; strings are not run as code",
    async run(visit) {
      const policy = await visit.evaluate(() =>
        document.querySelector('meta[http-equiv="Content-Security-Policy"]').content);
      assert.match(policy, /default-src 'none'/);
      assert.doesNotMatch(policy, /'unsafe-(eval|inline)'|https?:|\*/);
      visit.expected = /Content-Security-Policy.*eval/; // Firefox says so, sooner or later
      // Out of the driver's own call, whose code the browser lets pass.
      const outcome = await visit.evaluate(() => new Promise((done) => setTimeout(() => {
        try {
          done(new Function("return 'run'")());
        } catch {
          done("refused");
        }
      })));
      assert.equal(outcome, "refused");
    },
  },
  {
    name: "while the page grows its first mirror the worker solves nothing",
    browsers: ["chromium"],
    bare: true,
    run: ({ browser, site }) => withWorkerScript(site, `(${logOrder})();`, async (server) => {
      const visit = new Visit(browser, server, await browser.newPage({ ...phone, dpr: 1 }));
      visit.expected = /not of this version/; // says the service worker of the other worker
      await visit.open();
      const order = await visit.page.workers()[0].evaluate(() => globalThis.order);
      const told = order.indexOf("mirror"), grown = order.indexOf("grown");
      assert.ok(told > 0 && grown > told, order.join(" "));
      assert.ok(order.slice(0, told).includes("solve"), "drafts first");
      assert.ok(!order.slice(told, grown).includes("solve"), order.join(" "));
      assert.ok(order.slice(grown).includes("solve"), "the rest afterwards");
      await visit.close();
    }),
  },
  {
    name: "nothing is drawn while nothing changes",
    async run(visit) {
      const before = await visit.evaluate(() => window.shimlight.frames);
      await new Promise((done) => setTimeout(done, 1500));
      assert.equal(await visit.evaluate(() => window.shimlight.frames), before);
    },
  },
  {
    name: "the page answers questions itself",
    async run(visit) {
      const answer = await visit.evaluate(() => window.shimlight.ask("moisture",
        { air_c: 21, rh: 0.4, surface_c: 6.5, outside_c: -10 }));
      // Magnus form with the constants of Alduchov and Eskridge (1996): 6.9 °C at 21 °C and 40 %.
      assert.ok(Math.abs(answer.dew_point_c - 6.9) < 0.2, JSON.stringify(answer));
      const refused = await visit.evaluate(() => window.shimlight.ask("moisture", { air_c: "warm" }));
      assert.ok(refused.error.path.startsWith("/"), JSON.stringify(refused));
    },
  },
  {
    name: "the manifest makes it an app: name, icons, start",
    async run(visit) {
      const manifest = await visit.evaluate(async () => {
        const link = document.querySelector('link[rel="manifest"]').href;
        const told = await (await fetch(link)).json();
        const sizes = await Promise.all(told.icons.map(async (icon) => {
          const image = new Image();
          image.src = new URL(icon.src, link);
          await image.decode();
          return `${image.naturalWidth}x${image.naturalHeight}`;
        }));
        return { ...told, real: sizes };
      });
      assert.equal(manifest.name, "Shimlight");
      assert.equal(manifest.display, "standalone");
      assert.ok(manifest.start_url);
      manifest.icons.forEach((icon, i) => {
        if (icon.type === "image/png") assert.equal(icon.sizes, manifest.real[i], icon.src);
      });
      for (const size of ["192x192", "512x512"]) assert.ok(manifest.real.includes(size), size);
      assert.ok(manifest.icons.some((icon) => icon.purpose?.includes("maskable")));
    },
  },
  {
    name: "without WebGL the mirror is a page to read and to work with",
    browsers: ["chromium", "firefox"],
    bare: true,
    async run({ name, server }) {
      const { launch } = await import("../browsers.mjs");
      const { Visit } = await import("../visit.mjs");
      const browser = await launch(name, {
        flags: ["--disable-gpu", "--disable-software-rasterizer"],
        prefs: { "webgl.disabled": true, "webgl.force-enabled": false },
      });
      try {
        const visit = await Visit.start(browser, server, { ...phone, dpr: 1 });
        assert.equal(await visit.evaluate(() =>
          document.createElement("canvas").getContext("webgl2")), null);
        assert.ok(await visit.evaluate(() => document.body.classList.contains("no-gl")));
        const before = await visit.results();
        await visit.set("lever.weather.outside_c", 30);
        assert.notDeepEqual(await visit.results(), before);
        visit.errors = visit.errors.filter((text) => !/WebGL/i.test(text));
        await visit.close();
      } finally {
        await browser.close();
      }
    },
  },
];
