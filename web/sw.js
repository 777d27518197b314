// SPDX-License-Identifier: MIT
// Keeps the whole program on the device. The build fills in the list of files and a version made
// from their content: either all files of one version are there, or the version is not installed.
// The door is kept once it was asked for.

const VERSION = "__CACHE_VERSION__";
const FILES = __PRECACHE__;
const DOOR = "/shimlight-door.wasm";
const CACHE = `shimlight-${VERSION}`;

addEventListener("install", (event) => {
  const requests = FILES.map(({ url }) => new Request(url, { cache: "reload" }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

addEventListener("activate", (event) => {
  event.waitUntil(caches.keys()
    .then((names) => Promise.all(names
      .filter((name) => name.startsWith("shimlight-") && name !== CACHE)
      .map((name) => caches.delete(name))))
    .then(() => clients.claim()));
});

addEventListener("message", (event) => {
  if (event.data === "take-over") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith(answer(request));
});

/// From the device first; any page in our scope is the one page there is.
async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request.mode === "navigate" ? "./" : request);
  if (kept) return kept;
  const fetched = await fetch(request);
  if (fetched.ok && request.url.endsWith(DOOR)) cache.put(request, fetched.clone());
  return fetched;
}
