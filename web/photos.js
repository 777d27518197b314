// SPDX-License-Identifier: MIT
// Photographs of openings: taken or picked, made small, kept beside the house in a store of their
// own, laid over the canvas where the mirror says. The program knows their ids alone. Comes with
// the program's second part.
import { element, roles } from "./controls.js";
import { PHOTOGRAPHS, copy, copyOf, dropCopy } from "./copies.js";
import { showNotice } from "./notice.js";
import { done, finished } from "./storage.js";

/// Of what comes late with this: it must belong to what is here (site.py fills it in).
export const MARK = "__LATER_MARK__";
const LONGEST_PX = 1024, QUALITY = 0.7;
const ID = /^[0-9a-f]{16}$/;
const PICTURES = /"data:image\/jpeg;base64,[A-Za-z0-9+/=]*"/g;
const SAVED = /^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/;

let database = null;
function opened() {
  database ??= (() => {
    const request = indexedDB.open("shimlight-photos", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("photos");
    return done(request);
  })().catch((error) => {
    database = null; // the next one asks again
    throw error;
  });
  return database;
}

/// Does `work` with the store and waits until it is kept.
async function withStore(mode, work) {
  const transaction = (await opened()).transaction("photos", mode);
  const answer = work(transaction.objectStore("photos"));
  await finished(transaction);
  return answer?.result;
}

/// One that the browser lost with its database comes back from its second copy.
async function photoOf(id) {
  const kept = await withStore("readonly", (store) => store.get(id));
  const copied = kept ? null : await copyOf(PHOTOGRAPHS, id);
  if (!copied) return kept;
  const blob = new Blob([await copied.arrayBuffer()], { type: "image/jpeg" });
  await withStore("readwrite", (store) => store.put(blob, id));
  return blob;
}

/// Pictures that the store has no room for or that it refuses live as long as the page.
const unkept = new Map();
const dropped = new Map(); // and those of houses that are gone for good
const urls = new Map(); // id → address of what is shown
const waiting = new Map(); // id → images that wait for it

/// Only 8 bytes: enough to tell a house's photographs apart.
async function idOf(bytes) {
  if (crypto.subtle) {
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return [...hash.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  }
  const lanes = [0x811c9dc5, 0x1b873593]; // FNV-1a twice, from two starts
  for (const byte of new Uint8Array(bytes))
    for (const i of [0, 1]) lanes[i] = Math.imul(lanes[i] ^ (byte + 89 * i), 0x01000193);
  return lanes.map((lane) => (lane >>> 0).toString(16).padStart(8, "0")).join("");
}

/// Redrawn upright and small: of what the camera wrote beside the picture (place, time) nothing is
/// left.
async function small(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = element("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const context = canvas.getContext("2d");
  context.imageSmoothingQuality = "high";
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const made = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", QUALITY));
  if (!made) throw new Error("no JPEG");
  return made;
}

function tellTrouble(words) {
  showNotice(words, [["Close", () => {}]]);
}

async function keep(id, blob) {
  unkept.set(id, blob);
  show(id, blob);
  try {
    await withStore("readwrite", (store) => store.put(blob, id));
    unkept.delete(id);
    await copy(PHOTOGRAPHS, id, blob);
  } catch (error) {
    tellTrouble(error?.name === "QuotaExceededError"
      ? "This device has no room left for the photograph. It is here until the page is closed: save the house to a file."
      : "This browser window keeps no photographs. It is here until the page is closed: save the house to a file.");
  }
}

async function take(file, added) {
  let blob;
  try {
    blob = await small(file);
  } catch {
    tellTrouble(`"${file.name}" is no picture that this browser can read. A JPEG or PNG is.`);
    return;
  }
  const id = await idOf(await blob.arrayBuffer());
  await keep(id, blob);
  added(id);
}

/// Must be called inside a gesture. Phones offer the camera and the pictures they have.
export function choosePhoto(added) {
  document.getElementById("add-photo")?.remove();
  const input = element("input", { type: "file", accept: "image/*", id: "add-photo", "aria-label": "Photograph" });
  input.hidden = true;
  input.addEventListener("change", async () => {
    if (input.files[0]) await take(input.files[0], added);
    input.remove();
  });
  input.addEventListener("cancel", () => input.remove());
  document.body.append(input);
  input.click();
}

function show(id, blob) {
  if (!urls.has(id)) urls.set(id, URL.createObjectURL(blob));
  for (const image of waiting.get(id) ?? []) image.src = urls.get(id);
  waiting.delete(id);
}

function want(id, image) {
  if (dropped.has(id)) keep(id, dropped.get(id));
  dropped.delete(id);
  if (urls.has(id)) {
    image.src = urls.get(id);
    return;
  }
  const images = waiting.get(id);
  if (images) {
    images.push(image);
    return;
  }
  waiting.set(id, [image]);
  photoOf(id).then((blob) => {
    if (blob) show(id, blob);
    else waiting.delete(id); // another device has it
  }, () => waiting.delete(id));
}

/// Large, over everything, until it is pressed or closed. `node` of the mirror.
export function enlarge(node) {
  const button = document.querySelector(`[data-id="${node.i}"]`), image = button.firstChild;
  if (!image.src) return;
  const dialog = element("dialog", { "aria-label": image.alt });
  Object.assign(dialog.style, {
    padding: "0", border: "0", background: "black", maxWidth: "100vw", maxHeight: "100vh", width: "100vw", height: "100vh",
  });
  const large = element("img", { src: image.src, alt: image.alt });
  Object.assign(large.style, { width: "100%", height: "100%", objectFit: "contain" });
  const close = element("button", { type: "button" }, "Close");
  Object.assign(close.style, {
    position: "absolute", right: "1rem", bottom: "calc(1rem + env(safe-area-inset-bottom))", minWidth: "5rem", minHeight: "3rem",
    font: "inherit", color: "black", background: "white", border: "0", borderRadius: "0.6rem",
  });
  dialog.append(large, close);
  dialog.addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => {
    dialog.remove();
    button.focus({ preventScroll: true });
  });
  document.body.append(dialog);
  dialog.showModal();
  close.focus();
}

/// The control of a mirror node of this role: a button that is a picture, 4 to 3. Where a part is
/// scrolled out of sight the picture stays as large and is cut.
roles.photo = {
  tag: "button",
  attributes: { type: "button" },
  make(control, send) {
    const image = element("img", { draggable: "false" });
    Object.assign(image.style, { left: "0", width: "100%", objectFit: "cover" });
    Object.assign(control.style, { padding: "0", border: "0", background: "none" });
    image.hidden = true;
    image.addEventListener("load", () => { image.hidden = false; });
    control.append(image);
    control.addEventListener("click", () => send.press());
    return [control];
  },
  update(control, node) {
    const image = control.firstChild;
    const [, , width, height] = node.b;
    const whole = width * 3 / 4;
    image.alt = node.n;
    image.style.position = document.body.classList.contains("no-gl") ? "static" : "absolute";
    image.style.height = `${whole}px`;
    image.style.top = `${node.p ? height - whole : 0}px`;
    const shown = !node.x && !node.u;
    Object.assign(control.parentElement.style, { opacity: shown ? "1" : "", visibility: node.x ? "hidden" : "" });
    if (image.dataset.id === node.v) return;
    image.dataset.id = node.v;
    want(node.v, image);
  },
};

/// The ids that a house's text might mean. A damaged one still has its photographs.
export function idsNamed(text) {
  return new Set((text.match(/[0-9a-f]{16,}/g) ?? []).filter((id) => ID.test(id)));
}

export const keptPhotos = () => withStore("readonly", (store) => store.getAllKeys());

/// Where a JSON text has a field twice in one object, of which JSON.parse keeps the last: the path.
export function fieldTwice(text) {
  const levels = []; // { at, names }: the name or index that comes, and of an object those before
  for (const [token] of text.matchAll(/"[^"\\]*(?:\\.[^"\\]*)*"(\s*:)?|[[\]{},]/g)) {
    const level = levels.at(-1);
    if (token === "{") levels.push({ names: new Set() });
    else if (token === "[") levels.push({ at: 0 });
    else if (token === "}" || token === "]") levels.pop();
    else if (token === ",") level.at++; // of an object its name follows
    else if (token.endsWith(":")) {
      level.at = JSON.parse(token.slice(0, -1));
      if (level.names.has(level.at)) return levels.map(({ at }) => `/${at}`).join("");
      level.names.add(level.at);
    }
  }
  return undefined;
}

function idsIn(house) {
  const all = (house.openings ?? []).flatMap((opening) => opening.photos ?? []);
  return [...new Set(all.map((photo) => photo.id))].filter((id) => ID.test(id));
}

function asText(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/// A house file's text with the pictures of its photographs. What is no house stays as it is.
export async function withPictures(text) {
  if (!text.includes('"photos"')) return text;
  const house = JSON.parse(text);
  const pictures = {};
  for (const id of idsIn(house)) {
    const blob = unkept.get(id) ?? await photoOf(id).catch(() => undefined);
    if (blob) pictures[id] = await asText(blob);
  }
  if (Object.keys(pictures).length === 0) return text;
  const added = JSON.stringify({ pictures });
  const end = text.lastIndexOf("}");
  return `${text.slice(0, end).trimEnd()},\n${added.slice(1)}\n`;
}

/// Keeps the pictures of a file and gives the text without them. What is no such file stays as it is.
export async function withoutPictures(text) {
  if (!text.includes('"pictures"')) return text;
  let house;
  try {
    house = JSON.parse(text);
  } catch {
    return text; // the program says what is wrong with it
  }
  if (typeof house?.pictures !== "object") return text;
  if (fieldTwice(text)) return text.replace(PICTURES, '""'); // it says that too, of a text not too long
  for (const id of idsIn(house)) {
    const saved = house.pictures?.[id];
    if (typeof saved !== "string" || !SAVED.test(saved)) continue;
    const bytes = Uint8Array.from(atob(saved.slice(saved.indexOf(",") + 1)), (letter) => letter.charCodeAt(0));
    await keep(id, new Blob([bytes], { type: "image/jpeg" }));
  }
  delete house.pictures;
  return JSON.stringify(house);
}

/// Forgets these. The page still has them, should undo bring one back.
export async function dropPhotos(ids) {
  for (const id of ids) {
    const blob = await photoOf(id);
    if (blob) dropped.set(id, blob);
  }
  await withStore("readwrite", (store) => ids.forEach((id) => store.delete(id)));
  ids.forEach((id) => dropCopy(PHOTOGRAPHS, id));
}
