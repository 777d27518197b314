// SPDX-License-Identifier: MIT
// A second copy of each house and photograph, as a file among the browser's private ones: a browser
// that is killed while it writes may drop its whole database at the next start (Chromium did so in
// about one of a hundred kills, on a page of twenty lines too). Where there are no such files, one copy
// has to do.

export const HOUSES = "houses";
export const PHOTOGRAPHS = "photographs";
let copying = Promise.resolve();

async function place(kind) {
  return (await navigator.storage.getDirectory()).getDirectoryHandle(kind, { create: true });
}

function inTurn(kind, work) {
  const turn = copying.then(async () => work(await place(kind))).catch(() => {});
  copying = turn;
  return turn;
}

/// A file is exchanged as a whole.
async function write(files, id, content) {
  const file = await (await files.getFileHandle(id, { create: true })).createWritable();
  await file.write(content);
  await file.close();
}

/// What can no longer be written there, say after a kill, gives way. The console tells why there is none.
async function writeAnyway(files, id, content) {
  try {
    await write(files, id, content).catch(async (error) => {
      if (error.name === "QuotaExceededError") throw error; // an older copy is better than none
      await files.removeEntry(id).catch(() => {});
      await write(files, id, content);
    });
  } catch (error) {
    console.warn(`No second copy: ${error}`);
  }
}

export function copy(kind, id, content) {
  return inTurn(kind, (files) => writeAnyway(files, id, content));
}

/// A browser that was killed between a house and its copy has an older copy. `stale()`: the content is
/// not the newest any more.
export function copyAgain(kind, id, content, stale) {
  return inTurn(kind, async (files) => {
    const old = await files.getFileHandle(id).then((handle) => handle.getFile()).then((file) => file.text())
      .catch(() => null);
    if (old !== content && !stale()) await writeAnyway(files, id, content);
  });
}

export function dropCopy(kind, id) {
  return inTurn(kind, (files) => files.removeEntry(id));
}

/// The file, or nothing.
export function copyOf(kind, id) {
  return inTurn(kind, async (files) => (await files.getFileHandle(id)).getFile());
}

/// What a browser was writing when it was killed stays beside the file it was to become (Chromium:
/// ID.crswap). Our own names have no dot.
const unfinished = (name) => name.includes(".");

export async function dropUnfinished() {
  for (const kind of [HOUSES, PHOTOGRAPHS])
    await inTurn(kind, async (files) => {
      const names = [];
      for await (const name of files.keys()) if (unfinished(name)) names.push(name);
      for (const name of names) await files.removeEntry(name);
    });
}

/// All houses that can be read: { id, text, kept_at }.
export async function copiedHouses() {
  const found = [];
  await inTurn(HOUSES, async (files) => {
    for await (const [id, handle] of files.entries()) {
      if (unfinished(id)) continue;
      try {
        const file = await handle.getFile(), text = await file.text();
        JSON.parse(text);
        found.push({ id, text, kept_at: file.lastModified });
      } catch {} // was being written
    }
  });
  return found;
}
