// SPDX-License-Identifier: MIT
// The calculation door for Node and browsers: shimlight.ask("glazing", {…}) → {…}.
// open_door.mjs and shimlight-door.wasm lie beside this file.
import { openDoor } from './open_door.mjs';

const inNode = typeof process === 'object' && Boolean(process.versions?.node);
const program = new URL('shimlight-door.wasm', import.meta.url);

async function bytes() {
  if (inNode) return (await import('node:fs')).readFileSync(program);
  return (await fetch(program)).arrayBuffer();
}

export const shimlight = openDoor(await bytes());
