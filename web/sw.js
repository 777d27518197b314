// SPDX-License-Identifier: MIT
// Keeps the whole program on the device. The build fills in the list of files and a version made
// from their content: either all files of one version are there, each with its own hash, or the version
// is not installed.
// The rest of the program and the door are kept once they were asked for; a new version then brings
// them along.

const VERSION = "__CACHE_VERSION__";
const FILES = __PRECACHE__;
const ASKED_FOR = __ASKED_FOR__;
const CACHE = `shimlight-${VERSION}`;

/// A host may be in the middle of an exchange, or keep an older file for longer than another.
async function isOurs({ revision }, answer) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await answer.arrayBuffer()));
  return revision === [...hash.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function fetched(file) {
  const answer = await fetch(new Request(file.url, { cache: "reload" }));
  if (!answer.ok || !await isOurs(file, answer.clone())) throw new Error(`${file.url} is not of this version`);
  return answer;
}

async function install() {
  const known = await Promise.all(ASKED_FOR.map(({ url }) => caches.match(url)));
  const files = [...FILES, ...ASKED_FOR.filter((_, i) => known[i])];
  const answers = await Promise.all(files.map(fetched));
  const cache = await caches.open(CACHE);
  await Promise.all(files.map(({ url }, i) => cache.put(url, answers[i])));
}

/// A browser that knows routes takes these files from the device without starting this worker first. An
/// address with a question is answered below.
async function route(event) {
  const from = (pathname) => ({ pathname, search: "", baseURL: registration.scope });
  await event.addRoutes?.(FILES.map(({ url }) => ({
    condition: { urlPattern: from(url), requestMethod: "GET" },
    source: { cacheName: CACHE },
  })));
}

addEventListener("install", (event) => {
  event.waitUntil(install());
  route(event).catch(() => {}); // then they come as all others do
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
  const answer = await fetch(request);
  const asked = ASKED_FOR.find(({ url }) => request.url.endsWith(`/${url}`));
  if (answer.ok && asked) keep(cache, asked, answer.clone());
  return answer;
}

async function keep(cache, file, answer) {
  if (await isOurs(file, answer.clone())) await cache.put(file.url, answer);
}
