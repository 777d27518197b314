// SPDX-License-Identifier: MIT
// A door question `section` read anew: what fills each cell between the rectangles' lines.

const one_line_m = 1e-9; // lines nearer than this differ by round-off only
// Labels of borders. 0 is left to the edges between materials that the finite-element program adds.
const adiabatic = 1;
export const first_air = 2;

function distinct(values) {
  const lines = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    if (!lines.length || value - lines.at(-1) > one_line_m) lines.push(value);
  }
  return lines;
}

function nearest(lines, value) {
  let best = 0;
  lines.forEach((line, i) => {
    if (Math.abs(line - value) < Math.abs(lines[best] - value)) best = i;
  });
  return best;
}

const upright = (edge) => edge.side === 'left' || edge.side === 'right';

/** Lines along one axis: the section's ends, the rectangles' sides, the ends of joined borders. */
function linesOf(question, low, high, extent, edgesAlong) {
  const values = [0, extent];
  for (const region of question.regions) values.push(region[low], region[high]);
  for (const edge of question.edges ?? []) {
    if (edgesAlong(edge)) values.push(edge.from_m, edge.to_m);
  }
  return distinct(values.filter((value) => value >= 0 && value <= extent));
}

/**
 * Cells between lines. A fill is a conductivity, W/mK, when positive, and the label of an air or of
 * an adiabatic border, negated, when not. Beyond the section lie the borders: columns -1 and last.
 */
export class Painting {
  constructor(question) {
    this.names = Object.keys(question.airs);
    this.airs = this.names.map((name) => question.airs[name]);
    this.x = linesOf(question, 'x0_m', 'x1_m', question.width_m, (edge) => !upright(edge));
    this.y = linesOf(question, 'y0_m', 'y1_m', question.height_m, upright);
    this.columns = this.x.length - 1;
    this.rows = this.y.length - 1;
    this.stride = this.columns + 2;
    this.fills = new Float64Array(this.stride * (this.rows + 2)).fill(-adiabatic);
    for (const region of question.regions) this.#paint(region);
    for (const edge of question.edges ?? []) this.#join(edge);
  }

  fill(i, j) {
    return this.fills[(j + 1) * this.stride + i + 1];
  }

  isSolid(i, j) {
    return this.fill(i, j) > 0;
  }

  /** Is this fill an air with a surface of fixed temperature? */
  isFixed(fill) {
    return 'surface_c' in (this.airs[-fill - first_air] ?? {});
  }

  #label(name) {
    return this.names.indexOf(name) + first_air;
  }

  #set(i0, i1, j0, j1, value) {
    for (let j = j0; j < j1; ++j) {
      this.fills.fill(value, (j + 1) * this.stride + i0 + 1, (j + 1) * this.stride + i1 + 1);
    }
  }

  #paint(region) {
    const value = 'air' in region ? -this.#label(region.air) : region.conductivity_w_mk;
    if (value === undefined) throw new Error('only solids and airs can be compared');
    this.#set(nearest(this.x, region.x0_m), nearest(this.x, region.x1_m),
      nearest(this.y, region.y0_m), nearest(this.y, region.y1_m), value);
  }

  #join(edge) {
    const lines = upright(edge) ? this.y : this.x;
    const from = nearest(lines, edge.from_m);
    const to = nearest(lines, edge.to_m);
    const label = -this.#label(edge.air);
    if (edge.side === 'left') this.#set(-1, 0, from, to, label);
    if (edge.side === 'right') this.#set(this.columns, this.columns + 1, from, to, label);
    if (edge.side === 'bottom') this.#set(from, to, -1, 0, label);
    if (edge.side === 'top') this.#set(from, to, this.rows, this.rows + 1, label);
  }

  /** Solids that touch only over the corner (i, j), with no solid between them, do not meet. */
  isPinched(i, j) {
    const solid = [this.isSolid(i - 1, j - 1), this.isSolid(i, j - 1), this.isSolid(i - 1, j),
      this.isSolid(i, j)];
    return solid[0] === solid[3] && solid[1] === solid[2] && solid[0] !== solid[1];
  }

  /** Does what is painted turn or branch at (i, j)? There the flux may be infinite. */
  #isCorner(i, j) {
    const [a, b, c, d] = [this.fill(i - 1, j - 1), this.fill(i, j - 1), this.fill(i - 1, j),
      this.fill(i, j)];
    if (Math.max(a, b, c, d) <= 0) return false;
    return !(a === b && c === d) && !(a === c && b === d);
  }

  /** Places where it does, as "x y". */
  corners() {
    const places = new Set();
    for (let j = 0; j <= this.rows; ++j) {
      for (let i = 0; i <= this.columns; ++i) {
        if (this.#isCorner(i, j)) places.add(`${this.x[i]} ${this.y[j]}`);
      }
    }
    return places;
  }
}
