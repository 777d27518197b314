// SPDX-License-Identifier: MIT
// An opening in the part of the address after "#": version, then the packed text, whose packing
// (gzip) carries its length and a check sum. That part never leaves the device by itself.

const VERSION = "o1";
const LONGEST_LINK = 20_000, LONGEST_TEXT = 400_000; // characters

export function isLink(hash) {
  return /^#o\d+=/.test(hash);
}

function through(stream, bytes) {
  return new Blob([bytes]).stream().pipeThrough(stream).getReader();
}

/// All there is, or an error as soon as it is more than `most` bytes: a small text can unpack to a huge one.
async function all(reader, most) {
  const parts = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return new Uint8Array(await new Blob(parts).arrayBuffer());
    length += value.length;
    if (length > most) throw new Error("it holds too much");
    parts.push(value);
  }
}

/// The address of this page with the house (JSON) in it.
export async function linkTo(json) {
  const lean = new TextEncoder().encode(JSON.stringify(JSON.parse(json)));
  const packed = await all(through(new CompressionStream("gzip"), lean), LONGEST_TEXT);
  const letters = btoa(String.fromCharCode(...packed));
  const text = letters.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
  return `${location.href.split("#")[0]}#${VERSION}=${text}`;
}

/// The JSON that a link carries. Throws an error whose message says what is wrong with the link.
export async function textOf(hash) {
  const [version, text] = hash.slice(1).split("=", 2);
  if (version !== VERSION) throw new Error("it was made by a newer Shimlight");
  if (text.length > LONGEST_LINK) throw new Error("it holds too much");
  try {
    const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const packed = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    const bytes = await all(through(new DecompressionStream("gzip"), packed), LONGEST_TEXT);
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (error) {
    if (error.message === "it holds too much") throw error;
    throw new Error("it has been cut or changed on its way");
  }
}
