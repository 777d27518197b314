// SPDX-License-Identifier: MIT
// The benchmark's rows in JSON, and targets as the benchmark of the solver prints them.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const empty = { setup_ms: 0, cycles: null, work_units: null, bytes_per_unknown: null };

/** Adds rows to the file, in the place of those of the same case and solver. */
export function addRows(file, rows) {
  const old = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
  const is = (a) => (b) => a.case === b.case && a.solver === b.solver;
  const kept = old.filter((row) => !rows.some(is(row)));
  writeFileSync(file, `${JSON.stringify([...kept, ...rows.map((row) => ({ ...empty, ...row }))],
    null, 1)}\n`);
}

export function printRow({ case: name, unknowns, solver, solve_ms }) {
  console.log(`${name.padEnd(18)} ${String(unknowns).padStart(9)} ${solver.padEnd(40)} `
    + `${solve_ms.toFixed(2).padStart(10)} ms`);
}

/** What a ratio of two times may be off because of what else the machine does. */
export const timing_noise = 1.3;

/** What misses by less than `noise` is said to be near and does not fail. */
export class Targets {
  passed = 0;
  failed = 0;

  #note(met, near, what, measured, relation, limit) {
    if (near) ++this.passed;
    else ++this.failed;
    const verdict = met ? 'ok    ' : near ? 'near  ' : 'MISSED';
    console.log(`${verdict} ${what}: ${measured.toPrecision(3)}, wanted ${relation} ${limit}`);
  }

  atLeast(what, measured, limit, noise = 1) {
    this.#note(measured >= limit, measured * noise >= limit, what, measured, '>=', limit);
  }

  atMost(what, measured, limit, noise = 1) {
    this.#note(measured <= limit, measured <= limit * noise, what, measured, '<=', limit);
  }

  /** Prints the tally and ends the program. */
  end() {
    console.log(`${this.passed} passed, ${this.failed} failed`);
    process.exit(this.failed ? 1 : 0);
  }
}
