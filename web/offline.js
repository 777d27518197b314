// SPDX-License-Identifier: MIT
// The service worker from the page's side: registered once, replaced only when the reader agrees.
import { showNotice } from "./notice.js";

/// Other open pages go on with the version they have loaded.
function offerUpdate(worker, beforeReload) {
  showNotice("A newer Shimlight is ready.", [
    ["Use it", async () => {
      await beforeReload();
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
      worker.postMessage("take-over");
    }],
    ["Later", () => {}],
  ]);
}

/// When what the host has does not belong to what is here.
export async function lookForNewer() {
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.update().catch(() => {}); // no network
}

/// await beforeReload() keeps what is not kept yet.
export async function workOffline(beforeReload) {
  if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) return;
  if (!document.querySelector("link[rel=manifest]")) return; // the single file (web/setup/one_file.py)
  const registration = await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
  if (registration.waiting) offerUpdate(registration.waiting, beforeReload);
  registration.addEventListener("updatefound", () => {
    const worker = registration.installing;
    if (!worker || !registration.active) return; // the first one replaces nothing
    worker.addEventListener("statechange", () => {
      if (worker.state === "installed") offerUpdate(worker, beforeReload);
    });
  });
}
