// SPDX-License-Identifier: MIT
// The program in its two parts: the first starts the page, the rest comes once somebody uses it.

import { withTexts } from "./wasm.js";

const REST = "shimlight-rest.wasm";
const REST_MARK = "__REST_MARK__"; // of the content that belongs to the first part
const LATER_MARK = "__LATER_MARK__";

export const OTHER_VERSION = "the host has another version";

/// FNV-1a, the same as in site.py: parts of two versions must never meet.
function markOf(bytes) {
  let mark = 0x811c9dc5;
  for (const byte of bytes) mark = Math.imul(mark ^ byte, 0x01000193);
  return (mark >>> 0).toString(16);
}

/// A file of the program: from the page that carries it (web/setup/one_file.py), else from the host.
async function bring(name) {
  const carried = document.getElementById(`file:${name}`);
  if (!carried) return fetch(name);
  const packed = Uint8Array.from(atob(carried.textContent), (letter) => letter.charCodeAt(0));
  const bytes = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(bytes, { headers: { "Content-Type": "application/wasm" } });
}

async function instantiate(name, imports) {
  try {
    return await WebAssembly.instantiateStreaming(bring(name), imports);
  } catch (error) { // a host that does not know the type, or a browser that does not stream
    if (!(error instanceof TypeError)) throw error;
    return WebAssembly.instantiate(await (await bring(name)).arrayBuffer(), imports);
  }
}

/// What the first part calls of the second before it is there: a fault of the program.
const absent = new Proxy({}, {
  get: () => () => { throw new Error("the rest of the program is not here yet"); },
});

/// page: the object that app/page.cpp calls. Gives the program; program.whole() brings the rest.
export async function startProgram(page) {
  let first = null;
  const program = await createShimlight({
    page,
    instantiateWasm(imports, receive) {
      instantiate("shimlight.wasm", { ...imports, second: absent }).then(({ instance, module }) => {
        first = instance.exports;
        receive(instance, module);
      }, page.failed);
      return {};
    },
  });
  program.coming = false;
  let here = null;
  program.whole = () => (here ??= comes());
  async function comes() {
    program.coming = true;
    try {
      const [lessons, ...later] = await Promise.all([bringRest(first), import("./library.js"),
        import("./photos.js"), import("./report.js")]);
      if (later.some(({ MARK }) => MARK !== LATER_MARK)) throw new Error(OTHER_VERSION);
      page.arrived(...later);
      withTexts(program, [lessons], (at) => program._shimlight_whole(at));
    } catch (error) {
      here = null; // the next use asks again
      throw error;
    } finally {
      program.coming = false;
    }
  }
  return program;
}

/// Gives the lessons that come with it.
async function bringRest(first) {
  const answer = await bring(REST);
  if (!answer.ok) throw new Error(`${REST}: ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  if (markOf(new Uint8Array(bytes)) !== REST_MARK) throw new Error(OTHER_VERSION);
  const module = await WebAssembly.compile(bytes);
  await WebAssembly.instantiate(module, { first });
  return new TextDecoder().decode(WebAssembly.Module.customSections(module, "lessons")[0]);
}
