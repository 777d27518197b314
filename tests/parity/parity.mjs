// SPDX-License-Identifier: MIT
// Asks the native door and the WASM door the same questions and compares answer by answer.
// node parity.mjs PATH_OF_NATIVE_DOOR FOLDER_OF_DOOR_MJS [SEED]
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { corpus } from './corpus.mjs';

// The two builds differ in their exp, log and pow by a unit in the last place (1e-16), which the
// formulas and the iteration carry on.
const relative = 1e-9;
// A number smaller than this is nil in any of the door's units (K, W/m, m/s, %): what is left of
// 20 - 20 need not agree in its first digit.
const nil = 1e-6;
const answered = 0;
const refused = 2;
const exempt = new Set(['solve_ms']);

function close(a, b) {
  return Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b), nil);
}

/** Where two answers differ first; undefined when they do not. */
function difference(a, b, path = '') {
  if (typeof a === 'number' && typeof b === 'number') {
    return close(a, b) ? undefined : `${path}: ${a} natively, ${b} in WASM`;
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return a === b ? undefined : `${path}: ${JSON.stringify(a)} natively, ${JSON.stringify(b)} in WASM`;
  }
  const keys = Object.keys(a);
  if (JSON.stringify(keys) !== JSON.stringify(Object.keys(b))) return `${path}: other fields`;
  for (const key of keys.filter((name) => !exempt.has(name))) {
    const found = difference(a[key], b[key], `${path}/${key}`);
    if (found) return found;
  }
  return undefined;
}

function askNative(program, question, text) {
  const run = spawnSync(program, [question], { input: text, maxBuffer: 1 << 28 });
  if (run.error || run.signal) throw new Error(`native door: ${run.error ?? run.signal}`);
  return { answer: JSON.parse(run.stdout.toString('utf8')), status: run.status };
}

/** What is wrong with one question's two answers; undefined when all is well. */
function fault(program, shimlight, { question, text }) {
  const native = askNative(program, question, text);
  const wasm = JSON.parse(shimlight.askText(question, text));
  const expected = 'error' in native.answer ? refused : answered;
  if (native.status !== expected) return `exit status ${native.status}, expected ${expected}`;
  return difference(native.answer, wasm);
}

/** ask() takes and gives objects; a bad question comes back as an object too. */
function objectFault(shimlight) {
  const good = shimlight.ask('moisture', { air_c: 21, rh: 0.4, surface_c: 6.5, outside_c: -10 });
  if (typeof good.dew_point_c !== 'number') return 'ask() gave no answer';
  const bad = shimlight.ask('moisture', { air_c: 21 });
  return bad.error?.path === '/rh' ? undefined : 'ask() gave no error object';
}

const [program, folder, seed = '1'] = process.argv.slice(2);
if (!program || !folder) {
  console.error('usage: node parity.mjs PATH_OF_NATIVE_DOOR FOLDER_OF_DOOR_MJS [SEED]');
  process.exit(refused);
}
const { shimlight } = await import(pathToFileURL(resolve(folder, 'door.mjs')).href);

let passed = 0;
let failed = 0;
let errors = 0;
function count(found, what) {
  if (found) console.log(`FAILED ${what}\n       ${found}`);
  if (found) ++failed;
  else ++passed;
}
count(objectFault(shimlight), 'ask()');
for (const asked of corpus(Number(seed))) {
  count(fault(resolve(program), shimlight, asked), `${asked.question} ${asked.text.slice(0, 400)}`);
  if ('error' in JSON.parse(shimlight.askText(asked.question, asked.text))) ++errors;
}
console.log(`${errors} of the answers are refusals`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
