// SPDX-License-Identifier: MIT
// A second copy of each house, as a file among the browser's private ones: a browser that is killed
// while it writes may drop its whole database at the next start (Chromium did so in about one of a
// hundred kills, on a page of twenty lines too). Where there are no such files, one copy has to do.

let copying = Promise.resolve();

const place = async () => (await navigator.storage.getDirectory()).getDirectoryHandle("houses", { create: true });

function inTurn(work) {
  copying = copying.then(async () => work(await place())).catch(() => {});
  return copying;
}

/// A file is exchanged as a whole.
export function copy(id, text) {
  return inTurn(async (files) => {
    const file = await (await files.getFileHandle(id, { create: true })).createWritable();
    await file.write(text);
    await file.close();
  });
}

export function dropCopy(id) {
  return inTurn((files) => files.removeEntry(id));
}

/// All that can be read: { id, text, kept_at }.
export async function copies() {
  const found = [];
  await inTurn(async (files) => {
    for await (const [id, handle] of files.entries()) {
      try {
        const file = await handle.getFile(), text = await file.text();
        JSON.parse(text);
        found.push({ id, text, kept_at: file.lastModified });
      } catch {} // was being written
    }
  });
  return found;
}
