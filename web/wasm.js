// SPDX-License-Identifier: MIT
// Strings into and out of the program's memory.

const encoder = new TextEncoder();

/// Calls `use` with the address of each text, zero-terminated; they are gone afterwards.
export function withTexts(module, texts, use) {
  const places = texts.map((text) => {
    const bytes = encoder.encode(text);
    const place = module._malloc(bytes.length + 1);
    module.HEAPU8.set(bytes, place);
    module.HEAPU8[place + bytes.length] = 0;
    return place;
  });
  try {
    return use(...places);
  } finally {
    places.forEach((place) => module._free(place));
  }
}
