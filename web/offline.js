// SPDX-License-Identifier: MIT
// The service worker from the page's side: registered once, replaced only when the reader agrees.
import { showNotice } from "./notice.js";

function offerUpdate(worker, beforeReload) {
  showNotice("A newer Shimlight is ready.", [
    ["Use it", async () => {
      await beforeReload();
      worker.postMessage("take-over");
    }],
    ["Later", () => {}],
  ]);
}

/// await beforeReload() keeps what is not kept yet.
export async function workOffline(beforeReload) {
  if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) return;
  const workers = navigator.serviceWorker;
  const updating = workers.controller !== null;
  workers.addEventListener("controllerchange", () => {
    if (updating) location.reload();
  });
  const registration = await workers.register("sw.js", { updateViaCache: "none" });
  if (registration.waiting && updating) offerUpdate(registration.waiting, beforeReload);
  registration.addEventListener("updatefound", () => {
    const worker = registration.installing;
    worker.addEventListener("statechange", () => {
      if (worker.state === "installed" && workers.controller) offerUpdate(worker, beforeReload);
    });
  });
}
