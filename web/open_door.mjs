// SPDX-License-Identifier: MIT
// The bytes of shimlight-door.wasm in, the calculation door out; nothing waits for anything.

const longest = 1024 * 1024; // bytes of JSON that the door accepts

/** What the program wants of its surroundings: nothing that a calculation needs. */
function surroundings(module) {
  const all = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    (all[from] ??= {})[name] = () => 0;
  }
  return all;
}

export function openDoor(bytes) {
  const module = new WebAssembly.Module(bytes);
  const door = new WebAssembly.Instance(module, surroundings(module)).exports;
  door._initialize();

  /** JSON text (or its UTF-8 bytes) in, JSON text out. Never throws on bad text. */
  function askText(question, text) {
    const name = new TextEncoder().encode(question);
    const all = typeof text === "string" ? new TextEncoder().encode(text) : text;
    const json = all.subarray(0, longest + 1); // what is longer is refused anyway
    const at = door.shimlight_room_for(name.length + json.length + 2);
    const before = new Uint8Array(door.memory.buffer);
    before.set(name, at);
    before.set(json, at + name.length + 1);
    const answer = door.shimlight_ask(at, at + name.length + 1);
    const after = new Uint8Array(door.memory.buffer); // it may have grown
    return new TextDecoder().decode(after.subarray(answer, after.indexOf(0, answer)));
  }

  function ask(question, object) {
    return JSON.parse(askText(question, JSON.stringify(object) ?? ""));
  }

  return Object.freeze({ ask, askText });
}
