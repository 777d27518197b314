// SPDX-License-Identifier: MIT
// How fast a temperature changes towards a corner: as r^λ, with the smallest λ > 0 for which the
// quarters around the corner have a solution r^λ φ(θ). In a quarter of conductivity k, temperature
// and flux k φ'/λ turn by λ π/2; both go on from quarter to quarter. Where solids end, the flux is
// nil, at films as at adiabatic borders (a film is no more than that at small r); at a surface of
// fixed temperature the temperature is.

const identity = [1, 0, 0, 1];
const least = 1e-4; // exponents are looked for between these
const most = 1;
const step = 1.02;

const times = (a, b) => [a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3]];

/** Takes temperature and flux from one end of the quarters to the other. */
function across(quarters, exponent) {
  const angle = exponent * Math.PI / 2;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return quarters.reduce((all, k) => times([c, s / k, -k * s, c], all), identity);
}

/** The smallest exponent at which a function that is nil at a solution changes its sign. */
function smallest(miss) {
  let before = miss(least);
  for (let exponent = least * step; exponent < most; exponent *= step) {
    const now = miss(exponent);
    if (before * now <= 0) return exponent;
    before = now;
  }
  return most;
}

/** Four quarters in a ring: each its conductivity, or what ends the solid. */
function exponentOf(ring, isFixed) {
  const start = ring.findIndex((fill) => !(fill > 0));
  if (start < 0) return smallest((exponent) => {
    const m = across(ring, exponent);
    return m[0] + m[3] - 2;
  });
  const turned = [...ring.slice(start), ...ring.slice(0, start + 1)];
  let found = most;
  let first = 0;
  for (let end = 1; end < turned.length; ++end) {
    if (turned[end] > 0) continue;
    const quarters = turned.slice(first + 1, end);
    // Which entry of the matrix is nil: from temperature or flux to temperature or flux.
    const entry = (isFixed(turned[end]) ? 0 : 2) + (isFixed(turned[first]) ? 1 : 0);
    if (quarters.length) found = Math.min(found, smallest((e) => across(quarters, e)[entry]));
    first = end;
  }
  return found;
}

/** The smallest exponent of all corners of a painting. */
export function smallestExponent(painting) {
  let found = most;
  for (let j = 0; j <= painting.rows; ++j) {
    for (let i = 0; i <= painting.columns; ++i) {
      const ring = [painting.fill(i, j), painting.fill(i - 1, j), painting.fill(i - 1, j - 1),
        painting.fill(i, j - 1)];
      if (new Set(ring).size < 2 || Math.max(...ring) <= 0) continue;
      found = Math.min(found, exponentOf(ring, (fill) => painting.isFixed(fill)));
    }
  }
  return found;
}
