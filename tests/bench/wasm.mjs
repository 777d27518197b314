// SPDX-License-Identifier: MIT
// The same sections at the native door and at the door in WASM under Node.
// node wasm.mjs PATH_OF_BENCH_REPEATED FOLDER_OF_DOOR_MJS PATH_OF_PEER_SECTIONS JSON
//
// Times are what the door says of itself (solve_ms), both warm: asked again and again in one
// process. Rounds alternate, so that what else the machine does meets both, and the median of the
// better half counts.
import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { addRows, printRow, Targets, timing_noise } from './rows.mjs';

const most_times = 1.6;
const seeds = [3, 5, 8];
const rounds = 4;
const runs = { draft: 40, normal: 15, fine: 4 }; // a round
const unmeasured = { draft: 60, normal: 5, fine: 0 }; // until WASM has been compiled for speed

/** The median of the better half. */
function typical(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 4)];
}

const [native, folder, writer, json] = process.argv.slice(2);
if (!json) {
  console.error('usage: node wasm.mjs BENCH_REPEATED FOLDER_OF_DOOR_MJS PEER_SECTIONS JSON');
  process.exit(2);
}
const { shimlight } = await import(pathToFileURL(resolve(folder, 'door.mjs')).href);
const sections = execFileSync(writer, [String(Math.max(...seeds))],
  { encoding: 'utf8', maxBuffer: 1 << 28 }).trim().split('\n').map((line) => JSON.parse(line))
  .filter(({ kind, seed }) => kind === 'window' && seeds.includes(seed));

const targets = new Targets();
const rows = [];
for (const accuracy of Object.keys(runs)) {
  const ratios = [];
  for (const { seed, question } of sections) {
    const text = JSON.stringify({ ...question, accuracy });
    const times = { native: [], wasm: [] };
    let cells = 0;
    const ask = () => JSON.parse(shimlight.askText('section', text));
    for (let k = 0; k < unmeasured[accuracy]; ++k) ask();
    for (let round = 0; round < rounds; ++round) {
      times.native.push(...execFileSync(native, [String(runs[accuracy])], { input: `${text}\n`,
        encoding: 'utf8' }).trim().split(' ').map(Number));
      for (let k = 0; k < runs[accuracy]; ++k) {
        const answer = ask();
        times.wasm.push(answer.solve_ms);
        cells = answer.cells;
      }
    }
    for (const build of ['native', 'wasm']) {
      rows.push({ case: `window ${seed}`, unknowns: cells, solver: `${build}, ${accuracy}`,
        solve_ms: typical(times[build]) });
      printRow(rows.at(-1));
    }
    ratios.push(typical(times.wasm) / typical(times.native));
  }
  ratios.sort((a, b) => a - b);
  targets.atMost(`times native in WASM, ${accuracy}`, ratios[Math.floor(ratios.length / 2)],
    most_times, timing_noise);
}
addRows(json, rows);
targets.end();
