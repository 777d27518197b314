// SPDX-License-Identifier: MIT
// node tests/browser/lighthouse.mjs [SITE] [performance]
// Lighthouse with its mobile preset on the served page: accessibility, best practices and SEO must be
// full. With `performance` its score too and when the page can be used, each the median of five runs as
// their makers advise, on a quiet machine. Closes with "N passed, N failed".
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { packAll, startServer } from "../../web/serve.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const [site = join(here, "../../build/web"), ...asked] = process.argv.slice(2);
const wanted = { accessibility: 1, "best-practices": 1, seo: 1 };
const speed = asked.includes("performance");
if (speed) wanted.performance = 0.95;
const USABLE_MS = 1500;
const RUNS = speed ? 5 : 1;
const told = ["first-contentful-paint", "largest-contentful-paint", "total-blocking-time",
  "speed-index", "cumulative-layout-shift", "interactive", "total-byte-weight"];

const flags = "--headless=new --no-sandbox --use-angle=swiftshader --enable-unsafe-swiftshader";

function lighthouse(url, file) {
  const chromium = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find(existsSync);
  const child = spawn(process.execPath, [join(here, "node_modules/lighthouse/cli/index.js"), url,
    "--quiet", "--output=json", `--output-path=${file}`, "--form-factor=mobile",
    "--no-enable-error-reporting", `--only-categories=${Object.keys(wanted).join(",")}`,
    `--chrome-flags=${flags}`],
  { stdio: "inherit", env: { ...process.env, CHROME_PATH: chromium } });
  return new Promise((done, failed) => child.on("exit", (code) =>
    code === 0 ? done(JSON.parse(readFileSync(file))) : failed(new Error(`lighthouse: ${code}`))));
}

/** What keeps a category from its full score, heaviest first. */
function shortfalls(report, category) {
  return report.categories[category].auditRefs
    .filter(({ id, weight }) => weight > 0 && report.audits[id].score !== null && report.audits[id].score < 1)
    .sort((a, b) => b.weight - a.weight)
    .map(({ id }) => `      ${id}: ${report.audits[id].displayValue ?? report.audits[id].title}`);
}

const median = (values) => values.sort((a, b) => a - b)[values.length >> 1];

await packAll(site); // as on a host, where nobody waits for the packing
const server = await startServer(site);
mkdirSync(join(here, "../../build"), { recursive: true });
const reports = [];
for (let run = 0; run < RUNS; run++) {
  reports.push(await lighthouse(server.url, join(here, "../../build/lighthouse.json")));
}
await server.stop();

let passed = 0, failed = 0;
function check(good, words) {
  good ? passed++ : failed++;
  console.log(`${good ? "ok   " : "FAIL "} ${words}`);
}

const report = reports.at(-1);
for (const [category, least] of Object.entries(wanted)) {
  const scores = reports.map(({ categories }) => categories[category].score);
  check(!scores.includes(null) && median([...scores]) >= least, `${category} ${scores.join(" ")}, wanted ${least}`);
  for (const line of shortfalls(report, category)) console.log(line);
}
if (speed) {
  const usable = reports.map(({ audits }) => Math.round(audits.interactive.numericValue));
  check(median([...usable]) <= USABLE_MS, `usable after ${usable.join(" ")} ms, wanted ${USABLE_MS}`);
}
for (const id of told) {
  const audit = report.audits[id];
  if (audit?.displayValue) console.log(`${id}: ${audit.displayValue}`);
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
