// SPDX-License-Identifier: MIT
// The whole program as one file, from a disk: no host, no request.
import assert from "node:assert/strict";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Visit } from "../visit.mjs";

export const cases = [
  {
    name: "one file from a disk is the whole program",
    bare: true,
    browsers: ["chromium", "firefox"],
    async run({ browser, site }) {
      const url = String(pathToFileURL(join(dirname(resolve(site)), "shimlight.html")));
      const visit = await Visit.start(browser, { url });
      const before = await visit.results();
      await visit.set("lever.weather.outside_c", -15);
      assert.notDeepEqual(await visit.results(), before, "a lever is computed");
      await visit.press("view.room");
      assert.ok(await visit.control("room.picture.remedy"), "the rest is in the file");
      await visit.show("house");
      assert.ok(await visit.control("library.save"), "the list of houses too");
      await visit.press("library.new");
      assert.match((await visit.control("title")).text, /New house/);
      const asked = visit.requests.filter((request) => request.split("#")[0] !== url
        && !/^(?:data|blob):/.test(request));
      assert.deepEqual(asked, [], "nothing is asked of anybody");
      visit.requests = []; // a visit's end looks for those of the server
      await visit.close();
    },
  },
];
