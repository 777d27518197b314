// SPDX-License-Identifier: MIT
// A picture of every screen at three sizes, light and dark, and on a phone on its side, in build/shots;
// each beside the one that was last looked at and found right, kept in tests/pictures as the mean colours
// of its cells.
// SHIMLIGHT_KEEP_PICTURES=1 keeps the new ones in their place: look at build/shots before.
import assert from "node:assert/strict";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../../build/shots/", import.meta.url));
const kept = fileURLToPath(new URL("../../pictures/", import.meta.url));
const renew = process.env.SHIMLIGHT_KEEP_PICTURES === "1";

// Letters and soft edges differ a little from one version of a browser or font to the next; a
// label elsewhere, another colour or another number of lines are more.
const CELL_PX = 12;
const CELL_LEVELS = 12; // of 255, in any of three colours
const CELLS_SHARE = 0.01; // of the picture
const sizes = [
  { width: 360, height: 640, touch: true },
  { width: 768, height: 1024, touch: true },
  { width: 1440, height: 900 },
  { width: 640, height: 360, touch: true, darks: [false] },
];
const screens = {
  "slice-sill": ["view.slice", "cut.Sill"],
  "slice-jamb": ["view.slice", "cut.Jamb"],
  "slice-head": ["view.slice", "cut.Head"],
  "slice-rail": ["view.slice", "cut.Rail"],
  "slice-today": ["view.slice", "cut.Sill", "show.today"],
  room: ["view.room"],
  panes: ["view.panes"],
  air: ["view.air"],
  readings: ["view.readings"],
  bill: ["view.bill"],
  sheet: ["view.sheet"],
  lessons: ["view.lesson"],
  remedies: ["view.slice", "remedies.open"],
  house: ["view.house"],
};

/** Of a picture: how many colours it has, how much of it is one, the mean colours of its cells. */
function read(visit, picture) {
  return visit.evaluate(async ({ picture, cell }) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const context = new OffscreenCanvas(image.width, image.height).getContext("2d");
    context.drawImage(image, 0, 0);
    const pixels = new Uint32Array(context.getImageData(0, 0, image.width, image.height).data.buffer);
    const counts = new Map();
    for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
    const columns = Math.floor(image.width / cell), rows = Math.floor(image.height / cell);
    const small = new OffscreenCanvas(columns, rows), means = new ImageData(columns, rows);
    for (let k = 0; k < columns * rows; k++) {
      const { data } = context.getImageData(k % columns * cell, Math.floor(k / columns) * cell, cell, cell);
      for (let c = 0; c < 4; c++) {
        let sum = 0;
        for (let i = c; i < data.length; i += 4) sum += data[i];
        means.data[4 * k + c] = Math.round(sum / (cell * cell));
      }
    }
    small.getContext("2d").putImageData(means, 0, 0);
    const bytes = new Uint8Array(await (await small.convertToBlob({ type: "image/png" })).arrayBuffer());
    return { colours: counts.size, most: Math.max(...counts.values()) / pixels.length,
      cells: btoa(String.fromCharCode(...bytes)) };
  }, { picture: picture.toString("base64"), cell: CELL_PX });
}

/** Which share of the cells of two small pictures differ. */
function differing(visit, a, b) {
  return visit.evaluate(async ({ pair, levels }) => {
    const [one, other] = await Promise.all(pair.map(async (picture) => {
      const image = new Image();
      image.src = `data:image/png;base64,${picture}`;
      await image.decode();
      const context = new OffscreenCanvas(image.width, image.height).getContext("2d");
      context.drawImage(image, 0, 0);
      return context.getImageData(0, 0, image.width, image.height);
    }));
    if (one.width !== other.width || one.height !== other.height) return 1;
    let differ = 0;
    for (let k = 0; k < one.data.length; k += 4) {
      if ([0, 1, 2].some((c) => Math.abs(one.data[k + c] - other.data[k + c]) > levels)) differ++;
    }
    return 4 * differ / one.data.length;
  }, { pair: [a, b], levels: CELL_LEVELS });
}

async function compare(visit, name, cells, keep = renew) {
  const file = `${kept}${name}.png`;
  if (keep) {
    mkdirSync(kept, { recursive: true });
    writeFileSync(file, Buffer.from(cells, "base64"));
  }
  assert.ok(existsSync(file), `${name} has a picture to be compared with`);
  const share = await differing(visit, readFileSync(file).toString("base64"), cells);
  return { share, same: share <= CELLS_SHARE };
}

/** Shoots a screen; answers what is wrong with it, if anything. */
async function shoot(visit, name) {
  const picture = await visit.picture();
  writeFileSync(`${folder}${name}.png`, picture);
  const { colours, most, cells } = await read(visit, picture);
  assert.ok(colours > 100 && most < 0.9, `${name} shows something: ${colours} colours`);
  const { share, same } = await compare(visit, name, cells);
  return same ? "" : `${name}: ${(100 * share).toFixed(1)} % of its cells`;
}

const pictures = sizes.flatMap(({ darks = [false, true], ...size }) => darks.map((dark) => ({
  name: `pictures at ${size.width} × ${size.height}, ${dark ? "dark" : "light"}`,
  browsers: ["chromium"],
  window: { dpr: 1, ...size, dark },
  async run(visit) {
    mkdirSync(folder, { recursive: true });
    const label = `${size.width}x${size.height}-${dark ? "dark" : "light"}`;
    const others = [];
    for (const [screen, presses] of Object.entries(screens)) {
      for (const id of presses) await visit.press(id);
      const wrong = await shoot(visit, `${screen}-${label}`);
      if (wrong) others.push(wrong);
    }
    assert.deepEqual(others, [], "these look as they did when they were last looked at");
  },
})));

export const cases = [...pictures, {
  name: "a picture with one lever moved is seen to be another one",
  browsers: ["chromium"],
  window: { dpr: 1, ...sizes[0], dark: false },
  async run(visit) {
    await visit.set("lever.weather.outside_c", 0);
    const { cells } = await read(visit, await visit.picture());
    const { same, share } = await compare(visit, "slice-sill-360x640-light", cells, false);
    assert.ok(!same, `${share} of the cells differ`);
  },
}];
