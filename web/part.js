// SPDX-License-Identifier: MIT
// The files of the program: from the page that carries them (web/setup/one_file.py), else from the host.

const FIRST = "shimlight.wasm";

export const carried = (name) => globalThis.document?.getElementById(`file:${name}`);

export async function bring(name) {
  const file = carried(name);
  if (!file) return fetch(name);
  const packed = Uint8Array.from(atob(file.textContent), (letter) => letter.charCodeAt(0));
  const bytes = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(bytes, { headers: { "Content-Type": "application/wasm" } });
}

export async function compile() {
  try {
    return await WebAssembly.compileStreaming(bring(FIRST));
  } catch (error) { // a host that does not know the type, or a browser that does not stream
    if (!(error instanceof TypeError)) throw error;
    return WebAssembly.compile(await (await bring(FIRST)).arrayBuffer());
  }
}
