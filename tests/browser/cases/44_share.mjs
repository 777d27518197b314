// SPDX-License-Identifier: MIT
// How a file leaves the page: on an iPhone's home screen by the share sheet, else as a download.
import assert from "node:assert/strict";

const small = { width: 360, height: 640, touch: true };

/** Lets the page find itself on such a device, from the next load on. */
const onHomeScreen = () => {
  Object.defineProperty(navigator, "standalone", { value: true });
};
const withSheet = () => {
  window.shared = [];
  navigator.canShare = ({ files }) => files?.every((file) => file instanceof File) ?? false;
  navigator.share = async ({ files }) => {
    window.shared.push([files[0].name, files[0].type, await files[0].text()]);
    if (window.sheetSays) throw new DOMException("", window.sheetSays);
  };
};

/** Saves the house; what was shared and what was downloaded. */
async function save(visit, sheetSays) {
  await visit.evaluate((sheetSays) => {
    window.sheetSays = sheetSays;
    window.shared = [];
    window.downloads = [];
    HTMLAnchorElement.prototype.click = function () {
      window.downloads.push(this.download);
    };
  }, sheetSays);
  await visit.show("house");
  await visit.press("menu.save");
  await visit.until(() => window.shared.length + window.downloads.length, null, "a file");
  await new Promise((done) => setTimeout(done, 200)); // what comes after the sheet
  return visit.evaluate(() => ({ shared: window.shared, downloads: window.downloads }));
}

export const cases = [
  {
    name: "on the home screen a file goes to the share sheet; closing that is an answer too",
    window: small,
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.beforeLoad(onHomeScreen);
      await visit.beforeLoad(withSheet);
      await visit.reload();
      const { shared: [[name, type, text]], downloads } = await save(visit);
      assert.equal(type, "application/json");
      assert.match(name, /\.json$/);
      assert.equal(JSON.parse(text).kind, "shimlight-house");
      assert.deepEqual(downloads, []);
      assert.deepEqual((await save(visit, "AbortError")).downloads, [], "closed by the reader");
      assert.deepEqual((await save(visit, "NotAllowedError")).downloads, [name], "refused by the browser");
    },
  },
  {
    name: "where no sheet takes files, or there is a way back from a download, it is a download",
    window: small,
    browsers: ["chromium", "firefox"],
    async run(visit) {
      await visit.beforeLoad(withSheet); // in a tab
      await visit.reload();
      const inTab = await save(visit);
      assert.deepEqual([inTab.shared.length, inTab.downloads.length], [0, 1]);
      await visit.beforeLoad(onHomeScreen);
      await visit.beforeLoad(() => { navigator.canShare = () => false; });
      await visit.reload();
      const refused = await save(visit);
      assert.deepEqual([refused.shared.length, refused.downloads.length], [0, 1]);
    },
  },
];
