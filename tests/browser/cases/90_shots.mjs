// SPDX-License-Identifier: MIT
// A picture of every screen at three sizes, light and dark, in build/shots.
import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../../build/shots/", import.meta.url));
const sizes = [
  { width: 360, height: 640, touch: true },
  { width: 768, height: 1024, touch: true },
  { width: 1440, height: 900 },
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

/** How many colours a picture has and how much of it is one colour. */
function palette(visit, picture) {
  return visit.evaluate(async (picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0);
    const pixels = new Uint32Array(context.getImageData(0, 0, image.width, image.height).data.buffer);
    const counts = new Map();
    for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
    return { colours: counts.size, most: Math.max(...counts.values()) / pixels.length };
  }, picture.toString("base64"));
}

async function shoot(visit, name) {
  const picture = await visit.picture();
  writeFileSync(`${folder}${name}.png`, picture);
  const { colours, most } = await palette(visit, picture);
  assert.ok(colours > 100 && most < 0.9, `${name} shows something: ${colours} colours`);
}

export const cases = sizes.flatMap((size) => [false, true].map((dark) => ({
  name: `pictures at ${size.width} × ${size.height}, ${dark ? "dark" : "light"}`,
  browsers: ["chromium"],
  window: { dpr: 1, ...size, dark },
  async run(visit) {
    mkdirSync(folder, { recursive: true });
    const label = `${size.width}x${size.height}-${dark ? "dark" : "light"}`;
    for (const [screen, presses] of Object.entries(screens)) {
      for (const id of presses) await visit.press(id);
      await shoot(visit, `${screen}-${label}`);
    }
  },
})));
