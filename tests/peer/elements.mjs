// SPDX-License-Identifier: MIT
// The finite-element program as a partner that is asked one mesh after the other.
import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { first_air } from './painting.mjs';

const no_label = 1_000_000; // of a fixed surface when there is none

export function input(painting, conductivities, located) {
  const { airs } = painting;
  const fixed = airs.findIndex((air) => 'surface_c' in air);
  const idle = Array.from({ length: first_air }, () => [0, 0]);
  const labels = [...idle, ...airs.map((air) => [air.air_c ?? air.surface_c, air.film_w_m2k ?? 0])];
  const words = [conductivities.length, ...conductivities, labels.length, ...labels.flat(),
    fixed < 0 ? no_label : fixed + first_air, located.length];
  for (const { triangle, place } of located) words.push(triangle, ...place);
  return `${words.join('\n')}\n`;
}

export class Elements {
  constructor(script, stem) {
    this.stem = stem;
    this.program = spawn('FreeFem++-nw', ['-v', '0', '-ns', '-nw', script],
      { stdio: ['pipe', 'pipe', 'inherit'] });
    this.program.stdin.on('error', () => {}); // its end is told by what it said last
    this.lines = createInterface({ input: this.program.stdout })[Symbol.asyncIterator]();
  }

  async #done() {
    const said = [];
    for (;;) {
      const { value, done } = await this.lines.next();
      if (done) throw new Error(`the finite-element program ended: ${said.join('\n')}`);
      if (value.trim() === 'done') return;
      said.push(value);
    }
  }

  /** Heat by air, W/m; temperature by probe; what is left of the equation by triangle, W K/m. */
  async solve(triangles, probes) {
    const { painting } = triangles.tree;
    const conductivities = [...new Set(triangles.leafOf.map((leaf) => leaf.fill))];
    const located = probes.map(([x, y]) => triangles.locate(x, y));
    writeFileSync(`${this.stem}.msh`, triangles.text(conductivities));
    writeFileSync(`${this.stem}.in`, input(painting, conductivities, located));
    this.program.stdin.write(`${this.stem}\n`);
    await this.#done();
    const numbers = readFileSync(`${this.stem}.out`, 'utf8').trim().split(/\s+/).map(Number);
    const airs = painting.airs.length + first_air;
    return {
      heat: numbers.slice(first_air, airs),
      probes: numbers.slice(airs, airs + probes.length),
      left: numbers.slice(airs + probes.length),
    };
  }

  /** Resolves when the program has ended. */
  end() {
    return new Promise((resolve) => {
      this.program.on('close', resolve);
      this.program.stdin.end('end\n');
    });
  }
}
