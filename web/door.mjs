// SPDX-License-Identifier: MIT
// The calculation door for Node and browsers: shimlight.ask("glazing", {…}) → {…}.
// shimlight-door.js and shimlight-door.wasm lie beside this file.

const inNode = typeof process === 'object' && Boolean(process.versions?.node);
const longest = 1024 * 1024; // bytes of JSON that the door accepts

async function inNodeModule() {
  const { createRequire } = await import('node:module');
  const { readFileSync } = await import('node:fs');
  const create = createRequire(import.meta.url)('./shimlight-door.js');
  // Given by hand: the loader would try to fetch a file name.
  return create({ wasmBinary: readFileSync(new URL('shimlight-door.wasm', import.meta.url)) });
}

async function inBrowserModule() {
  await new Promise((resolve, reject) => {
    const script = document.createElement('script');
    script.src = new URL('shimlight-door.js', import.meta.url).href;
    script.onload = resolve;
    script.onerror = () => reject(new Error('shimlight-door.js could not be loaded'));
    document.head.append(script);
  });
  return globalThis.createShimlightDoor({ locateFile: (name) => new URL(name, import.meta.url).href });
}

const door = await (inNode ? inNodeModule() : inBrowserModule());

/** JSON text (or its UTF-8 bytes) in, JSON text out. Never throws on bad text. */
function askText(question, text) {
  const name = new TextEncoder().encode(question);
  const all = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  const json = all.subarray(0, longest + 1); // what is longer is refused anyway
  const at = door._shimlight_room_for(name.length + json.length + 2);
  door.HEAPU8.set(name, at);
  door.HEAPU8.set(json, at + name.length + 1);
  const answer = door._shimlight_ask(at, at + name.length + 1);
  const end = door.HEAPU8.indexOf(0, answer);
  return new TextDecoder().decode(door.HEAPU8.subarray(answer, end));
}

function ask(question, object) {
  return JSON.parse(askText(question, JSON.stringify(object) ?? ''));
}

export const shimlight = Object.freeze({ ask, askText });
