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

export class Targets {
  passed = 0;
  failed = 0;

  #note(met, what, measured, relation, limit) {
    if (met) ++this.passed;
    else ++this.failed;
    console.log(`${met ? 'ok    ' : 'MISSED'} ${what}: ${measured.toPrecision(3)}, wanted `
      + `${relation} ${limit}`);
  }

  atLeast(what, measured, limit) { this.#note(measured >= limit, what, measured, '>=', limit); }
  atMost(what, measured, limit) { this.#note(measured <= limit, what, measured, '<=', limit); }

  /** Prints the tally and ends the program. */
  end() {
    console.log(`${this.passed} passed, ${this.failed} failed`);
    process.exit(this.failed ? 1 : 0);
  }
}
