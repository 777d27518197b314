// SPDX-License-Identifier: MIT
// node tests/browser/run.mjs chromium|firefox|webkit [SITE] [WORD…]
// Runs the cases (only those whose name holds a WORD, if any) against the page in SITE (build/web)
// and closes with "N passed, N failed".
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { startServer } from "../../web/serve.mjs";
import { launch } from "./browsers.mjs";
import { Visit } from "./visit.mjs";

const CASE_MS = 300_000;
const [name = "chromium", site = fileURLToPath(new URL("../../build/web", import.meta.url)), ...words] =
  process.argv.slice(2);

/** Each file in cases/ exports a list `cases`: { name, window?, browsers?, asked?, run(visit, world) }. */
async function allCases() {
  const folder = new URL("cases/", import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith(".mjs")).sort();
  const loaded = await Promise.all(files.map((file) => import(new URL(file, folder))));
  return loaded.flatMap((one) => one.cases)
    .filter((one) => !one.browsers || one.browsers.includes(name))
    .filter((one) => name !== "webkit" || one.webkit) // the main job, through the mirror
    .filter((one) => !one.asked || words.length > 0) // times want a quiet machine
    .filter((one) => words.length === 0 || words.some((word) => one.name.includes(word)));
}

function within(limit, work) {
  let timer;
  const late = new Promise((_, fail) => {
    timer = setTimeout(() => fail(new Error(`not done after ${limit / 1000} s`)), limit);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

/** A case has a browser's fresh profile to itself; `bare` ones start their visits themselves. */
async function runCase(one, world) {
  if (one.bare) return one.run(world);
  const visit = await Visit.start(world.browser, world.server, one.window);
  try {
    await one.run(visit, world);
  } catch (problem) {
    const told = visit.errors.join("\n");
    await visit.closeContext();
    if (told) problem.message += `\nThe page said: ${told}`;
    throw problem;
  }
  return visit.close();
}

async function main() {
  const server = await startServer(site);
  const world = { browser: await launch(name), server, site, name };
  let passed = 0, failed = 0;
  for (const one of await allCases()) {
    const begun = Date.now();
    try {
      await within(CASE_MS, runCase(one, world));
      passed++;
      console.log(`ok    ${one.name} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
    } catch (problem) {
      failed++;
      console.log(`FAIL  ${one.name}\n${String(problem?.stack ?? problem).replace(/^/gm, "      ")}`);
    }
  }
  await within(10_000, world.browser.close()).catch(() => {});
  await server.stop();
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed || !passed ? 1 : 0);
}

await main();
