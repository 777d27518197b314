// SPDX-License-Identifier: MIT
// Files given to the user and taken from him.

import { showNotice } from "./notice.js";

/// A web app on an iPhone's home screen has no way back from a downloaded file; there it is shared.
const mustShare = navigator.standalone === true;

/// `title` may have an ending; else it is a house's name, and the file JSON.
export async function offerFile(title, content) {
  const name = /\.(csv|json)$/.test(title) ? title : `${title}.json`;
  const type = name.endsWith(".csv") ? "text/csv" : "application/json";
  const file = new File([content], name, { type });
  if (mustShare && navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return;
    } catch (error) {
      if (error.name === "AbortError") return;
    }
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

/// Must be called inside a gesture. No filter by ending: iOS could not pick such a file then.
export function chooseFile(opened) {
  const input = document.createElement("input");
  input.type = "file";
  input.id = "open-file";
  input.hidden = true;
  input.setAttribute("aria-label", "House file");
  input.addEventListener("change", async () => {
    const file = input.files[0];
    input.remove();
    if (file) opened(await file.text());
  });
  input.addEventListener("cancel", () => input.remove());
  document.getElementById("open-file")?.remove();
  document.body.append(input);
  input.click();
}

/// A phone shares the address; elsewhere it is copied, or shown where that is not allowed.
export async function offerLink(url) {
  try {
    if (matchMedia("(pointer: coarse)").matches && navigator.canShare?.({ url })) {
      await navigator.share({ url });
      return;
    }
    await navigator.clipboard.writeText(url);
    showNotice("The link is copied. It carries the opening itself: whoever gets it can read it.", [["Close", () => {}]]);
  } catch (error) {
    if (error.name !== "AbortError") showNotice(url, [["Close", () => {}]]);
  }
}
