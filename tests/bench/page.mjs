// SPDX-License-Identifier: MIT
// Window sections asked at the door of the real page, in Chromium.
// node page.mjs PATH_OF_PEER_SECTIONS JSON [SITE]
// Milliseconds depend on the machine, so they are printed and never fail.
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { startServer } from '../../web/serve.mjs';
import { launch } from '../browser/browsers.mjs';
import { Visit } from '../browser/visit.mjs';
import { addRows, printRow } from './rows.mjs';

const seeds = [3, 5, 8];
const runs = { draft: 101, normal: 31, fine: 9 };
const unmeasured = { draft: 30, normal: 5, fine: 0 }; // until the browser has compiled for speed
const wanted_ms = { draft: 4, normal: 20 };

const [writer, json, site = fileURLToPath(new URL('../../build/web', import.meta.url))] =
  process.argv.slice(2);
const sections = execFileSync(writer, [String(Math.max(...seeds))],
  { encoding: 'utf8', maxBuffer: 1 << 28 }).trim().split('\n').map((line) => JSON.parse(line))
  .filter(({ kind, seed }) => kind === 'window' && seeds.includes(seed));

const server = await startServer(site);
const browser = await launch('chromium');
const visit = await Visit.start(browser, server);
const rows = [];
for (const accuracy of Object.keys(runs)) {
  for (const { seed, question } of sections) {
    const { cells, times } = await visit.evaluate(({ asked, count }) => {
      const answers = Array.from({ length: count }, () => shimlight.ask('section', asked));
      return { cells: answers[0].cells, times: answers.map((answer) => answer.solve_ms) };
    }, { asked: { ...question, accuracy }, count: runs[accuracy] });
    times.splice(0, unmeasured[accuracy]);
    times.sort((a, b) => a - b);
    rows.push({ case: `window ${seed}`, unknowns: cells, solver: `page, ${accuracy}`,
      solve_ms: times[Math.floor(times.length / 2)] });
    printRow(rows.at(-1));
  }
  if (wanted_ms[accuracy]) console.log(`    on a desktop machine: at most ${wanted_ms[accuracy]} ms`);
}
addRows(json, rows);
await visit.closeContext();
await browser.close();
await server.stop();
