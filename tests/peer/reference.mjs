// SPDX-License-Identifier: MIT
// A section's answer by finite elements, on meshes that grow where the equation is least fulfilled,
// until two of them in a row agree.
import { first_air, Painting } from './painting.mjs';
import { Tree } from './tree.mjs';
import { Triangles } from './triangles.mjs';

// Flows are compared with at least this: where nothing flows at all, the elements' round-off is
// nearly 1e-8 W/m, which must stay below any share that is judged.
const nil_w_m = 1e-5;
const bulk = 0.65; // share of what is left of the equation that the next mesh goes after
const deepest = 10; // halvings towards a corner from one mesh to the next

/** Leaves that hold the bulk of a sum, and how deep to go towards corners in each. */
function mark(asked, leaves, amounts) {
  const order = leaves.map((_, i) => i).sort((a, b) => amounts[b] - amounts[a]);
  let rest = bulk * amounts.reduce((sum, amount) => sum + amount, 0);
  const chosen = [];
  for (const i of order) {
    if (rest <= 0) break;
    rest -= amounts[i];
    chosen.push(i);
  }
  const least = amounts[chosen.at(-1)];
  for (const i of chosen) {
    // What is left at a corner goes with its size or faster, unless conductivities are far apart.
    const depth = Math.min(deepest, Math.ceil(Math.log2(amounts[i] / least)));
    asked.set(leaves[i], Math.max(depth, asked.get(leaves[i]) ?? 0));
  }
}

/** Where heat (energy) and where temperature alone is least sure. */
function marked(triangles, left) {
  const leaves = [...triangles.firstOf.keys()];
  const energy = leaves.map((leaf) => {
    let sum = 0;
    for (let t = triangles.firstOf.get(leaf); triangles.leafOf[t] === leaf; ++t) sum += left[t];
    return sum;
  });
  const asked = new Map();
  mark(asked, leaves, energy);
  mark(asked, leaves, energy.map((amount, i) => amount / leaves[i].fill));
  return asked;
}

export const largest = (values) => Math.max(...values.map(Math.abs));

/** Index of the value that differs most. */
function furthest(a, b) {
  let most = 0;
  a.forEach((value, i) => {
    if (Math.abs(value - b[i]) > Math.abs(a[most] - b[most])) most = i;
  });
  return most;
}

/** How far two answers are apart: K at the worst probe, share of the largest heat flow. */
export function distance(a, b) {
  const probe = furthest(a.probes, b.probes);
  const flow = furthest(a.heat, b.heat);
  const scale = Math.max(largest(a.heat), largest(b.heat), nil_w_m);
  return {
    probe,
    probe_k: Math.abs(a.probes[probe] - b.probes[probe]),
    heat_share: Math.abs(a.heat[flow] - b.heat[flow]) / scale,
  };
}

/** Temperatures of the airs that a solid touches, low and high. */
function rangeOf(triangles) {
  const labels = new Set(triangles.edges.map(([, , label]) => label));
  const touched = triangles.tree.painting.airs
    .filter((_, i) => labels.has(first_air + i))
    .map((air) => air.air_c ?? air.surface_c);
  return { low_c: Math.min(...touched), high_c: Math.max(...touched) };
}

/**
 * The answer, how far it is from the one on the mesh before it, and what it took. Settled when it
 * is as near as wanted to that one and half as near to the one before that: a mesh that hardly
 * grew must not agree with its like.
 */
export async function reference(elements, question, wanted, most_triangles) {
  const tree = new Tree(new Painting(question));
  const answers = [];
  const steps = [];
  const near = ({ probe_k, heat_share }, times) =>
    probe_k <= times * wanted.probe_k && heat_share <= times * wanted.heat_share;
  for (;;) {
    const triangles = new Triangles(tree);
    const now = await elements.solve(triangles, question.probes);
    const [before, earlier] = answers;
    const change = before ? distance(now, before) : { probe_k: Infinity, heat_share: Infinity };
    steps.push({ triangles: triangles.count, ...change });
    const agree = earlier !== undefined && near(change, 1) && near(distance(now, earlier), 2);
    if (agree || triangles.count > most_triangles) {
      return { ...now, ...rangeOf(triangles), change, agree, steps };
    }
    answers.unshift(now);
    tree.refine(marked(triangles, now.left));
  }
}
