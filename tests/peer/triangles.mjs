// SPDX-License-Identifier: MIT
// The rectangles of a tree cut into triangles, with the borders labelled by what lies across.

import { oblong } from './tree.mjs';

/** Vertices by place; where solids are pinched to a point, each has its own. */
class Vertices {
  constructor(painting) {
    this.x = [];
    this.y = [];
    this.index = new Map();
    this.pinched = new Set();
    for (let j = 0; j <= painting.rows; ++j) {
      for (let i = 0; i <= painting.columns; ++i) {
        if (painting.isPinched(i, j)) this.pinched.add(`${painting.x[i]} ${painting.y[j]}`);
      }
    }
  }

  at(x, y, leaf) {
    const place = `${x} ${y}`;
    const key = this.pinched.has(place) && leaf.x0 >= x ? `${place} right` : place;
    let vertex = this.index.get(key);
    if (vertex === undefined) {
      vertex = this.x.length;
      this.index.set(key, vertex);
      this.x.push(x);
      this.y.push(y);
    }
    return vertex;
  }
}

/** Cell between lines that holds a coordinate. */
function cellAt(lines, value) {
  let low = 0;
  let high = lines.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lines[middle] <= value) low = middle;
    else high = middle;
  }
  return low;
}

/** What lies across the four sides of a leaf: an air's or the border's label, or nothing. */
function labelsAcross(painting, leaf) {
  const { x, y } = painting;
  const i = cellAt(x, (leaf.x0 + leaf.x1) / 2);
  const j = cellAt(y, (leaf.y0 + leaf.y1) / 2);
  const label = (line, column, row) => {
    const fill = line < 0 ? 1 : painting.fill(column, row);
    return fill > 0 ? undefined : -fill;
  };
  const [west, east] = [x.indexOf(leaf.x0), x.indexOf(leaf.x1)];
  const [south, north] = [y.indexOf(leaf.y0), y.indexOf(leaf.y1)];
  return {
    left: label(west, west - 1, j),
    right: label(east, east, j),
    bottom: label(south, i, south - 1),
    top: label(north, i, north),
  };
}

export class Triangles {
  constructor(tree) {
    this.tree = tree;
    this.vertices = new Vertices(tree.painting);
    this.corners = []; // three a triangle
    this.leafOf = []; // by triangle
    this.edges = []; // [from, to, label]
    this.firstOf = new Map(); // by leaf: its first triangle; the others follow
    for (const leaf of tree.leaves()) this.#cut(leaf);
  }

  get count() {
    return this.leafOf.length;
  }

  #add(leaf, a, b, c) {
    this.corners.push(a, b, c);
    this.leafOf.push(leaf);
  }

  #cut(leaf) {
    const { x0, x1, y0, y1 } = leaf;
    const sides = this.tree.hanging(leaf);
    const at = (x, y) => this.vertices.at(x, y, leaf);
    const bottom = [x0, ...sides.bottom, x1].map((x) => at(x, y0));
    const right = [y0, ...sides.right, y1].map((y) => at(x1, y));
    const top = [x0, ...sides.top, x1].map((x) => at(x, y1)).reverse();
    const left = [y0, ...sides.left, y1].map((y) => at(x0, y)).reverse();
    this.firstOf.set(leaf, this.count);
    const labels = labelsAcross(this.tree.painting, leaf);
    for (const [name, side] of Object.entries({ bottom, right, top, left })) {
      if (labels[name] === undefined) continue;
      for (let k = 1; k < side.length; ++k) this.edges.push([side[k - 1], side[k], labels[name]]);
    }
    const wide = x1 - x0;
    const high = y1 - y0;
    if (wide > oblong * high) this.#ladder(leaf, bottom, right, top, left);
    else if (high > oblong * wide) this.#ladder(leaf, right, top, left, bottom);
    else this.#fan(leaf, [bottom, right, top, left]);
  }

  /** Long sides without corners; first and third are the long ones. */
  #ladder(leaf, first, end, third, start) {
    const [a, b] = first;
    const [c, d] = third;
    if (start.length === 2 && end.length === 2) {
      this.#add(leaf, a, b, c);
      this.#add(leaf, a, c, d);
      return;
    }
    const m = start.length > 2 ? start[1] : undefined;
    const n = end.length > 2 ? end[1] : undefined;
    if (m === undefined) {
      this.#add(leaf, a, b, n);
      this.#add(leaf, a, n, d);
      this.#add(leaf, n, c, d);
    } else if (n === undefined) {
      this.#add(leaf, a, b, m);
      this.#add(leaf, m, b, c);
      this.#add(leaf, m, c, d);
    } else {
      this.#add(leaf, a, b, m);
      this.#add(leaf, m, b, n);
      this.#add(leaf, m, n, c);
      this.#add(leaf, m, c, d);
    }
  }

  #fan(leaf, sides) {
    const centre = this.vertices.at((leaf.x0 + leaf.x1) / 2, (leaf.y0 + leaf.y1) / 2, leaf);
    for (const side of sides) {
      for (let k = 1; k < side.length; ++k) this.#add(leaf, side[k - 1], side[k], centre);
    }
  }

  #place(triangle, x, y) {
    const [a, b, c] = this.corners.slice(3 * triangle, 3 * triangle + 3);
    const { x: xs, y: ys } = this.vertices;
    const twice = (p, q, u, v) => (xs[q] - xs[p]) * (v - ys[p]) - (u - xs[p]) * (ys[q] - ys[p]);
    const area = twice(a, b, xs[c], ys[c]);
    return [twice(b, c, x, y) / area, twice(c, a, x, y) / area, twice(a, b, x, y) / area];
  }

  /** The triangle that holds a point, and the point's barycentric coordinates. */
  locate(x, y) {
    const leaf = this.tree.leafNear(x, y);
    if (!leaf) throw new Error(`(${x}, ${y}) lies in no solid`);
    let best;
    for (let t = this.firstOf.get(leaf); this.leafOf[t] === leaf; ++t) {
      const place = this.#place(t, x, y);
      const least = Math.min(...place);
      if (!best || least > best.least) best = { triangle: t, place, least };
    }
    return best;
  }

  /** In the text format that readmesh takes; the regions are the conductivities' indices. */
  text(conductivities) {
    const { x, y } = this.vertices;
    const index = new Map(conductivities.map((value, i) => [value, i]));
    const lines = [`${x.length} ${this.count} ${this.edges.length}`];
    for (let v = 0; v < x.length; ++v) lines.push(`${x[v]} ${y[v]} 0`);
    for (let t = 0; t < this.count; ++t) {
      const [a, b, c] = this.corners.slice(3 * t, 3 * t + 3);
      lines.push(`${a + 1} ${b + 1} ${c + 1} ${index.get(this.leafOf[t].fill)}`);
    }
    for (const [from, to, label] of this.edges) lines.push(`${from + 1} ${to + 1} ${label}`);
    return `${lines.join('\n')}\n`;
  }
}
