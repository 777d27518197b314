// SPDX-License-Identifier: MIT
// Compares the door's answers on random sections with an independent finite-element program's.
// node finite_elements.mjs PATH_OF_NATIVE_DOOR PATH_OF_PEER_SECTIONS [--count N] [--every-fine]
// [--seed KIND:SEED] [--worst FILE]
// N sections of each kind; every third of them at `fine` too, or all. A seed asks for that section
// alone. The worst sections are added to FILE, one a line: question and reference.
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { smallestExponent } from './corners.mjs';
import { Elements } from './elements.mjs';
import { Painting } from './painting.mjs';
import { distance, largest, reference } from './reference.mjs';
import { smallest_share } from './tree.mjs';

// What is promised: K at every probe, share of the section's largest heat flow in every flow. The
// reference is taken when what its last mesh changed is the `unsure` share of it.
const promised = {
  normal: { probe_k: 0.1, heat_share: 0.005, unsure: 1 / 8 },
  fine: { probe_k: 0.02, heat_share: 0.001, unsure: 1 / 6 },
};
const most_triangles = 150_000; // of a reference that does not settle
// Around a corner with exponent λ the heat that a mesh misses goes with the size of its smallest
// triangles as d^(2λ). Conductors that touch corner to corner in an insulator have λ near 0: what
// passes between them is settled at sizes below those of atoms. Such sections are left out, others
// take their places.
const beyond_meshes = 1e-4; // d^(2λ) that is still taken, d as a share of the section
const spare = 10; // sections written to take places
const balance_share = 1e-9; // of the largest heat flow, that their sum may be
const round_off_k = 1e-9; // beyond the range of the airs
const safe_share = 0.95; // of the sections, whose error the estimate covers
const most_generous = 10; // times the error, the estimate's median
const fine_every = 3;
const worst_listed = 10;

const script = fileURLToPath(new URL('conduction.edp', import.meta.url));

function ask(door, question) {
  return new Promise((resolve, reject) => {
    const program = spawn(door, ['section'], { stdio: ['pipe', 'pipe', 'inherit'] });
    let text = '';
    program.stdout.setEncoding('utf8').on('data', (part) => { text += part; });
    program.on('error', reject).on('close', () => resolve(JSON.parse(text)));
    program.stdin.end(JSON.stringify(question));
  });
}

const figure = (value) => value.toPrecision(2);

function drawn(writer, count) {
  const text = execFileSync(writer, [String(count)], { maxBuffer: 1 << 28, encoding: 'utf8' });
  return text.trim().split('\n').map((line) => JSON.parse(line));
}

/** The first `count` of each kind that meshes can settle; says what is left out. */
function chosen(sections, count) {
  const found = { window: [], jumble: [] };
  for (const section of sections) {
    const list = found[section.kind];
    if (list.length === count) continue;
    const exponent = smallestExponent(new Painting(section.question));
    if (smallest_share ** (2 * exponent) <= beyond_meshes) list.push(section);
    else console.log(`left out: ${section.kind}:${section.seed}, exponent ${figure(exponent)}`);
  }
  return [...found.window, ...found.jumble];
}

/** The door's answer at one accuracy beside the reference. */
async function compare(door, { kind, seed, question }, accuracy, truth) {
  const answer = await ask(door, { ...question, accuracy });
  if (answer.error) throw new Error(`${kind} ${seed}: ${JSON.stringify(answer.error)}`);
  const heat = Object.values(answer.heat_w_m);
  const temperatures = [...answer.probes_c];
  if (answer.coldest_inside) temperatures.push(answer.coldest_inside.c);
  const { probe_k, probe, heat_share } = distance({ heat, probes: answer.probes_c }, truth);
  return {
    kind, seed, accuracy, question, probe_k, heat_share,
    at_m: question.probes[probe],
    estimate_k: answer.error_estimate_k,
    gap: Math.abs(heat.reduce((sum, flow) => sum + flow, 0)) / (largest(heat) || 1),
    beyond_k: Math.max(truth.low_c - Math.min(...temperatures),
      Math.max(...temperatures) - truth.high_c),
    unsure: truth.change,
    reference: { probes_c: truth.probes, heat_w_m: truth.heat },
  };
}

async function treat(section, elements, options) {
  const isFine = options.everyFine || section.seed % fine_every === 1;
  const { probe_k, heat_share, unsure } = isFine ? promised.fine : promised.normal;
  const wanted = { probe_k: unsure * probe_k, heat_share: unsure * heat_share };
  const truth = await reference(elements, section.question, wanted, most_triangles);
  const rows = [];
  for (const accuracy of isFine ? ['normal', 'fine'] : ['normal']) {
    rows.push(await compare(options.door, section, accuracy, truth));
  }
  return { truth: { ...truth, kind: section.kind, seed: section.seed }, rows };
}

/** All sections, as many at a time as there are processors. */
async function treatAll(sections, options) {
  const folder = mkdtempSync(join(tmpdir(), 'finite-elements-'));
  const results = [];
  const queue = [...sections];
  const work = async (_, worker) => {
    const elements = new Elements(script, join(folder, String(worker)));
    for (let section = queue.shift(); section; section = queue.shift()) {
      results.push(await treat(section, elements, options));
    }
    await elements.end();
  };
  try {
    await Promise.all(Array.from({ length: availableParallelism() }, work));
  } finally {
    rmSync(folder, { recursive: true });
  }
  return results;
}

class Tally {
  passed = 0;
  failed = 0;

  /** One check a row; says how many hold. */
  each(name, rows, holds) {
    const bad = rows.filter((row) => !holds(row));
    this.passed += rows.length - bad.length;
    this.failed += bad.length;
    const named = bad.slice(0, worst_listed).map((row) => `${row.kind}:${row.seed}`).join(' ');
    const but = named && `; not ${named}`;
    console.log(`${name}: ${rows.length - bad.length} of ${rows.length}${but}`);
  }

  once(name, value, holds) {
    if (holds) ++this.passed;
    else ++this.failed;
    console.log(`${name}: ${figure(value)}${holds ? '' : ' FAILED'}`);
  }
}

/** The value that a share of the rows stays below or at. */
function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

function spread(name, values) {
  const figures = [0.5, 0.9, 0.99, 1].map((share) => figure(quantile(values, share)));
  console.log(`  ${name}: ${figures.join(', ')} (median, 90 %, 99 %, largest)`);
}

function judge(tally, name, rows, promise) {
  if (!rows.length) return;
  console.log(name);
  spread('probes, K', rows.map((row) => row.probe_k));
  spread('heat flows, share', rows.map((row) => row.heat_share));
  tally.each(`  every probe within ${promise.probe_k} K`, rows,
    (row) => row.probe_k <= promise.probe_k);
  tally.each(`  every heat flow within ${100 * promise.heat_share} %`, rows,
    (row) => row.heat_share <= promise.heat_share);
  tally.each('  heat flows sum to zero', rows, (row) => row.gap <= balance_share);
  tally.each('  temperatures in the range of the airs', rows, (row) => row.beyond_k <= round_off_k);
}

/** Does the door know how wrong it is? As far as the reference can tell. */
function judgeEstimate(tally, accuracy, rows) {
  if (!rows.length) return;
  const isCovered = (row) => row.estimate_k + row.unsure.probe_k >= row.probe_k;
  const covered = rows.filter(isCovered).length / rows.length;
  tally.once(`${accuracy}, share of errors that the estimate covers`, covered,
    covered >= safe_share);
  const ratios = rows.filter((row) => row.probe_k > 0).map((row) => row.estimate_k / row.probe_k);
  const generous = quantile(ratios, 0.5);
  tally.once(`${accuracy}, estimate over error, median`, generous, generous <= most_generous);
}

function tellWorst(rows, accuracy, file) {
  const measure = (row) => Math.max(row.probe_k / promised[accuracy].probe_k,
    row.heat_share / promised[accuracy].heat_share);
  const order = [...rows].sort((a, b) => measure(b) - measure(a)).slice(0, worst_listed);
  console.log(`worst at ${accuracy}`);
  for (const row of order) {
    console.log(`  ${row.kind}:${row.seed} ${figure(row.probe_k)} K at (${row.at_m}), heat `
      + `${figure(100 * row.heat_share)} %, estimate ${row.estimate_k} K; reference unsure by `
      + `${figure(row.unsure.probe_k)} K, ${figure(100 * row.unsure.heat_share)} %`);
  }
  if (!file) return;
  const lines = order.map(({ kind, seed, question, reference: known, probe_k, heat_share }) =>
    JSON.stringify({ kind, seed, probe_k, heat_share, question: { ...question, accuracy },
      reference: known }));
  writeFileSync(file, `${lines.join('\n')}\n`, { flag: 'a' });
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string', default: '150' },
    'every-fine': { type: 'boolean', default: false },
    seed: { type: 'string' },
    worst: { type: 'string' },
  },
});
const [door, writer] = positionals;
if (!door || !writer) {
  console.error('usage: node finite_elements.mjs PATH_OF_NATIVE_DOOR PATH_OF_PEER_SECTIONS');
  process.exit(2);
}
const sections = values.seed
  ? drawn(writer, Number(values.seed.split(':')[1]))
    .filter(({ kind, seed }) => values.seed === `${kind}:${seed}`)
  : chosen(drawn(writer, Number(values.count) + spare), Number(values.count));
const results = await treatAll(sections, { door, everyFine: values['every-fine'] });
const rows = results.flatMap((result) => result.rows);
const truths = results.map((result) => result.truth);

const tally = new Tally();
console.log('reference');
spread('triangles', truths.map((truth) => truth.steps.at(-1).triangles));
spread('change from the mesh before, K', truths.map((truth) => truth.change.probe_k));
spread('the same in heat flows, share', truths.map((truth) => truth.change.heat_share));
tally.each('  settled', truths, (truth) => truth.agree);
for (const accuracy of ['normal', 'fine']) {
  const compared = rows.filter((row) => row.accuracy === accuracy);
  for (const kind of ['window', 'jumble']) {
    judge(tally, `${accuracy}, ${kind}s`, compared.filter((row) => row.kind === kind),
      promised[accuracy]);
  }
  judgeEstimate(tally, accuracy, compared);
  tellWorst(compared, accuracy, values.worst);
}
console.log(`${tally.passed} passed, ${tally.failed} failed`);
process.exit(tally.failed ? 1 : 0);
