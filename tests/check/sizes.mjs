// SPDX-License-Identifier: MIT
// sizes.mjs FOLDER: what a first visit costs over the network, against its budget.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const limitKb = { brotli: 300, gzip: 400 }; // decided before the first line was written
const folder = process.argv[2];

const packed = {
  brotli: (bytes) => brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }),
  gzip: (bytes) => gzipSync(bytes, { level: 9 }),
};
// Hosts do not pack again what is packed.
const isPacked = (name) => /\.png$/.test(name);

function filesBelow(path) {
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)]);
}

// What the service worker lists is what a visit loads; the rest of the program comes with the first
// use, and the door for who asks it.
const worker = readFileSync(join(folder, "sw.js"), "utf8");
const listed = JSON.parse(/const FILES = (\[.*\]);/.exec(worker)[1]).map(({ url }) => url);
const visited = new Set(["sw.js", ...listed.map((url) => (url === "./" ? "index.html" : url))]);

const total = { raw: 0, brotli: 0, gzip: 0 };
const kb = (bytes) => (bytes / 1024).toFixed(1).padStart(8);
console.log("     raw  brotli    gzip  KB");
for (const file of filesBelow(folder).sort()) {
  const bytes = readFileSync(file);
  const size = { raw: bytes.length };
  for (const kind of ["brotli", "gzip"]) {
    size[kind] = isPacked(file) ? bytes.length : packed[kind](bytes).length;
  }
  const name = relative(folder, file);
  const counted = visited.delete(name);
  if (counted) for (const kind in total) total[kind] += size[kind];
  console.log(`${kb(size.raw)}${kb(size.brotli)}${kb(size.gzip)}  ${name}${counted ? "" : " (when asked for)"}`);
}
console.log(`${kb(total.raw)}${kb(total.brotli)}${kb(total.gzip)}  together`);

for (const name of visited) console.log(`missing: ${name}`);
let failed = total.raw === 0 || visited.size > 0 ? 2 : 0;
for (const kind in limitKb) {
  if (total[kind] / 1024 <= limitKb[kind]) continue;
  console.log(`${kind}: over ${limitKb[kind]} KB`);
  failed += 1;
}
console.log(`${2 - failed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
