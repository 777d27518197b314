// SPDX-License-Identifier: MIT
// A painting cut into rectangles: first along what is seen in it, then finer where asked. Corners
// of a neighbour may hang on a side; how many and where is kept to what triangles can follow.

const central = 0.3; // a cut along an existing corner must leave this share on either side
export const oblong = 2; // rectangles longer than this times their width get no corner on their long sides
const same_m = 1e-13; // coordinates nearer than this are one: halves of halves differ by round-off
const on_line_m = 2e-9; // a point this near to a rectangle may be meant to lie on its side
// Shorter sides, as a share of the section, are not cut: the finite-element program places vertices
// on a raster of 2^30.
export const smallest_share = 2 ** -26;

/** Gives coordinates that agree but for round-off the same value. */
class Snap {
  #seen = new Map();

  at(value) {
    const key = Math.round(value / same_m);
    for (const near of [key, key - 1, key + 1]) {
      if (this.#seen.has(near)) return this.#seen.get(near);
    }
    this.#seen.set(key, value);
    return value;
  }
}

/** Corners on lines: for a line's coordinate, the sorted coordinates along it. */
class Corners {
  #lines = new Map();

  static #place(line, value) {
    let low = 0;
    let high = line.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (line[middle] < value) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  add(at, along) {
    if (!this.#lines.has(at)) this.#lines.set(at, []);
    const line = this.#lines.get(at);
    const place = Corners.#place(line, along);
    if (line[place] !== along) line.splice(place, 0, along);
  }

  between(at, low, high) {
    const line = this.#lines.get(at) ?? [];
    const first = Corners.#place(line, low);
    const last = Corners.#place(line, high);
    return line.slice(line[first] === low ? first + 1 : first, last);
  }
}

/** The coordinate nearest to the middle of low…high, and its share of the way. */
function mostCentral(values, low, high) {
  const middle = (low + high) / 2;
  let best;
  for (const value of values) {
    if (best === undefined || Math.abs(value - middle) < Math.abs(best - middle)) best = value;
  }
  return best;
}

export class Tree {
  constructor(painting) {
    this.painting = painting;
    this.smallest_m = smallest_share * Math.max(painting.x.at(-1), painting.y.at(-1));
    this.corners = painting.corners();
    this.onX = new Corners(); // by x: the y of corners
    this.onY = new Corners();
    this.snapX = new Snap();
    this.snapY = new Snap();
    for (const x of painting.x) this.snapX.at(x);
    for (const y of painting.y) this.snapY.at(y);
    this.root = { i0: 0, i1: painting.columns, j0: 0, j1: painting.rows };
    this.#cutAlongLines(this.root);
    this.#close(this.leaves());
  }

  leaves() {
    const found = [];
    const open = [this.root];
    while (open.length) {
      const leaf = open.pop();
      if (leaf.first) open.push(leaf.second, leaf.first);
      else if (leaf.fill > 0) found.push(leaf);
    }
    return found;
  }

  /** Is there something to be seen along line i within the rectangle, or beside its ends? */
  #isSeen(fill, isSolid, line, from, to) {
    for (let k = from; k < to; ++k) if (fill(line - 1, k) !== fill(line, k)) return true;
    // What a solid meets across its side must be one thing along the whole side.
    for (const [inside, across] of [[from, from - 1], [to - 1, to]]) {
      const differs = fill(line - 1, across) !== fill(line, across);
      const bothSolid = isSolid(line - 1, across) && isSolid(line, across);
      if (isSolid(line, inside) && differs && !bothSolid) return true;
    }
    return false;
  }

  #cutAlongLines(leaf) {
    const p = this.painting;
    const { i0, i1, j0, j1 } = leaf;
    Object.assign(leaf, { x0: p.x[i0], x1: p.x[i1], y0: p.y[j0], y1: p.y[j1] });
    const seenX = [];
    const seenY = [];
    const turned = (j, i) => p.fill(i, j);
    const turnedSolid = (j, i) => p.isSolid(i, j);
    const isSolid = (i, j) => p.isSolid(i, j);
    for (let i = i0 + 1; i < i1; ++i) {
      if (this.#isSeen((a, b) => p.fill(a, b), isSolid, i, j0, j1)) seenX.push(p.x[i]);
    }
    for (let j = j0 + 1; j < j1; ++j) {
      if (this.#isSeen(turned, turnedSolid, j, i0, i1)) seenY.push(p.y[j]);
    }
    if (!seenX.length && !seenY.length) {
      leaf.fill = p.fill(i0, j0);
      this.#register(leaf);
      return;
    }
    const alongX = !seenY.length || (seenX.length && leaf.x1 - leaf.x0 >= leaf.y1 - leaf.y0);
    if (alongX) {
      const i = p.x.indexOf(mostCentral(seenX, leaf.x0, leaf.x1));
      leaf.first = { i0, i1: i, j0, j1 };
      leaf.second = { i0: i, i1, j0, j1 };
    } else {
      const j = p.y.indexOf(mostCentral(seenY, leaf.y0, leaf.y1));
      leaf.first = { i0, i1, j0, j1: j };
      leaf.second = { i0, i1, j0: j, j1 };
    }
    this.#cutAlongLines(leaf.first);
    this.#cutAlongLines(leaf.second);
  }

  /** Corners of air are nobody's corners. */
  #register(leaf) {
    if (!(leaf.fill > 0)) return;
    for (const x of [leaf.x0, leaf.x1]) {
      for (const y of [leaf.y0, leaf.y1]) {
        this.onX.add(x, y);
        this.onY.add(y, x);
      }
    }
  }

  /** Corners of others on the four sides. */
  hanging(leaf) {
    const { x0, x1, y0, y1 } = leaf;
    return {
      bottom: this.onY.between(y0, x0, x1),
      top: this.onY.between(y1, x0, x1),
      left: this.onX.between(x0, y0, y1),
      right: this.onX.between(x1, y0, y1),
    };
  }

  /** Cuts across x (or y) in the middle, or at a corner that lies near it. */
  split(leaf, acrossX) {
    const [low, high] = acrossX ? [leaf.x0, leaf.x1] : [leaf.y0, leaf.y1];
    const sides = this.hanging(leaf);
    const corners = acrossX ? [...sides.bottom, ...sides.top] : [...sides.left, ...sides.right];
    const corner = mostCentral(corners, low, high);
    const share = (corner - low) / (high - low);
    const snap = acrossX ? this.snapX : this.snapY;
    const isCentral = share >= central && share <= 1 - central;
    const at = isCentral ? corner : snap.at((low + high) / 2);
    if (!(at > low && at < high) || high - low < this.smallest_m) return [];
    const { x0, x1, y0, y1, fill } = leaf;
    leaf.first = acrossX ? { x0, x1: at, y0, y1, fill } : { x0, x1, y0, y1: at, fill };
    leaf.second = acrossX ? { x0: at, x1, y0, y1, fill } : { x0, x1, y0: at, y1, fill };
    this.#register(leaf.first);
    this.#register(leaf.second);
    return [leaf.first, leaf.second];
  }

  /** Must it be cut before it can be made into triangles? 'x', 'y' or nothing. */
  #fault(leaf) {
    const sides = this.hanging(leaf);
    const wide = leaf.x1 - leaf.x0;
    const high = leaf.y1 - leaf.y0;
    const onFlat = Math.max(sides.bottom.length, sides.top.length);
    const onUpright = Math.max(sides.left.length, sides.right.length);
    if (onFlat > (wide > oblong * high ? 0 : 1)) return 'x';
    return onUpright > (high > oblong * wide ? 0 : 1) ? 'y' : undefined;
  }

  /** Cuts until all leaves can be made into triangles. */
  #close(leaves) {
    let changed = true;
    let queue = leaves;
    while (changed) {
      changed = false;
      const rest = [];
      while (queue.length) {
        const leaf = queue.pop();
        const fault = this.#fault(leaf);
        const parts = fault ? this.split(leaf, fault === 'x') : [];
        if (parts.length) {
          changed = true;
          queue.push(...parts);
        } else {
          rest.push(leaf);
        }
      }
      queue = rest;
    }
  }

  /** Into four, or as many as the smallest size allows. */
  #quarter(leaf) {
    return this.#halve(leaf).flatMap((half) => this.#halve(half));
  }

  #halve(leaf) {
    const parts = this.split(leaf, leaf.x1 - leaf.x0 >= leaf.y1 - leaf.y0);
    return parts.length ? parts : [leaf];
  }

  /** Quarters each leaf, then `depth` times what of it touches one of the painting's corners. */
  refine(asked) {
    for (const [leaf, depth] of asked) {
      const open = this.#quarter(leaf).map((part) => [part, depth]);
      while (open.length) {
        const [part, more] = open.pop();
        if (more <= 0 || !this.#isAtCorner(part)) continue;
        const parts = this.#quarter(part);
        if (parts.length > 1) open.push(...parts.map((next) => [next, more - 1]));
      }
    }
    this.#close(this.leaves());
  }

  #isAtCorner({ x0, x1, y0, y1 }) {
    return [x0, x1].some((x) => [y0, y1].some((y) => this.corners.has(`${x} ${y}`)));
  }

  /** The solid leaf at a point; on a boundary, one beside it. */
  leafNear(x, y) {
    for (const dx of [0, -on_line_m, on_line_m]) {
      for (const dy of [0, -on_line_m, on_line_m]) {
        const leaf = this.#leafAt(x + dx, y + dy, this.root);
        if (leaf) return leaf;
      }
    }
    return undefined;
  }

  #leafAt(x, y, node) {
    if (x < node.x0 || x > node.x1 || y < node.y0 || y > node.y1) return undefined;
    if (!node.first) return node.fill > 0 ? node : undefined;
    return this.#leafAt(x, y, node.first) ?? this.#leafAt(x, y, node.second);
  }
}
