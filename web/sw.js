// SPDX-License-Identifier: MIT
// Keeps the whole program on the device. The build fills in the list of files and a version made
// from their content: either all files of one version are there, or the version is not installed.
// The rest of the program and the door are kept once they were asked for; a new version then brings
// them along.

const VERSION = "__CACHE_VERSION__";
const FILES = __PRECACHE__;
const ASKED_FOR = ["shimlight-rest.wasm", "library.js", "photos.js", "report.js", "report.css",
  "shimlight-door.wasm"];
const CACHE = `shimlight-${VERSION}`;

async function install() {
  const known = await Promise.all(ASKED_FOR.map((url) => caches.match(url)));
  const urls = [...FILES.map(({ url }) => url), ...ASKED_FOR.filter((_, i) => known[i])];
  const cache = await caches.open(CACHE);
  await cache.addAll(urls.map((url) => new Request(url, { cache: "reload" })));
}

addEventListener("install", (event) => event.waitUntil(install()));

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
  const asked = ASKED_FOR.some((name) => request.url.endsWith(`/${name}`));
  if (fetched.ok && asked) cache.put(request, fetched.clone());
  return fetched;
}
