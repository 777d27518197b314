// SPDX-License-Identifier: MIT
// The houses beside the one that is open: the list of them, the trash, one file of all, and who has a
// house when two tabs want it. Comes with the second part of the program.
import { HOUSES, copyAgain, dropCopy, dropUnfinished } from "./copies.js";
import { offerFile } from "./files.js";
import { hideNotice, showNotice } from "./notice.js";
import { dropPhotos, fieldTwice, idsNamed, keptPhotos, withPictures, withoutPictures } from "./photos.js";
import { done, finished, newHouse, put, textsOf } from "./storage.js";

/// Of what comes late with this: it must belong to what is here (site.py fills it in).
export const MARK = "__LATER_MARK__";

const KIND = "shimlight-library", VERSION = 1;
const MOST_HOUSES = 1000; // in a file
const MOST_LISTED = 500;
const LOCK = "shimlight-house-"; // and the id: who has a house
const LEAVING_MS = 300; // a page that is being reloaded may still hold its house
const KEPT_MS = 3000; // the service worker keeps what passed through it by then
// What comes with this file and after it.
const PARTS = ["shimlight-rest.wasm", "library.js", "photos.js", "pictures.js", "report.js", "report.css"];
const FILE_NAME = "Shimlight houses.json";
// What storage.js throws.
const IN_WORDS = {
  lent: "this house is open in another tab",
  older: "an older Shimlight is open in another tab; close that and reload",
};
const PROMISES = new Map([
  [true, "The browser has promised not to clear the houses away by itself."],
  [false, "The browser has not promised to keep them: it may clear them away when the device runs out of room, or after weeks without a visit. Save them to a file now and then."],
  [undefined, "This browser does not say for how long it keeps them. Save them to a file now and then."],
]);
const OTHER_TAB = "What is changed here is not kept. Use the house here, or duplicate it on the House page.";

/// Made once: it takes a slow phone longer than a frame.
const hours = new Intl.DateTimeFormat([], { hour: "numeric", minute: "2-digit" });

function clock(time) {
  const today = new Date().toDateString() === time.toDateString();
  return today ? hours.format(time)
    : time.toLocaleDateString([], { month: "short", day: "numeric" });
}

function reason(error) {
  if (error?.name === "QuotaExceededError") return "this device has no room left";
  if (error?.name === "SecurityError" || error?.name === "InvalidStateError")
    return "this browser window keeps nothing";
  return error?.name === "Error" ? IN_WORDS[error.message] ?? error.message : "the browser refused";
}

/// The houses of a library file, each as it stands there. Throws an error that names the path.
function housesIn(text) {
  let file;
  try {
    file = JSON.parse(text);
  } catch (error) {
    throw new Error(`it is not JSON (${error.message})`);
  }
  const wrong = (path, words) => {
    throw new Error(`at ${path}: ${words}`);
  };
  if (file.kind !== KIND) wrong("/kind", `is not "${KIND}"`);
  if (!Number.isInteger(file.version) || file.version < 1) wrong("/version", "is no version");
  if (file.version > VERSION) wrong("/version", "this file was written by a newer Shimlight");
  const twice = fieldTwice(text);
  if (twice !== undefined) wrong(twice, "is there twice in one object");
  const stranger = Object.keys(file).find((key) => !["kind", "version", "houses"].includes(key));
  if (stranger !== undefined) wrong(`/${stranger}`, "is not known");
  if (!Array.isArray(file.houses)) wrong("/houses", "is no list");
  if (!file.houses.length) wrong("/houses", "is empty");
  if (file.houses.length > MOST_HOUSES) wrong("/houses", `are too many; accepted are ${MOST_HOUSES}`);
  return file.houses;
}

/// What a list has room for, whatever a damaged house calls itself.
function short(words) {
  return [...String(words ?? "")].slice(0, 200).join("");
}

function inWords({ openings, place, kept_at, deleted_at }) {
  const count = `${openings} opening${openings === 1 ? "" : "s"}`;
  const when = deleted_at ? `deleted ${clock(new Date(deleted_at))}` : `saved ${clock(new Date(kept_at))}`;
  return [short(place), count, when].filter(Boolean).join(" · ");
}

/// What came before the service worker was there to keep it, or has not been needed yet.
async function keepWhole() {
  for (const name of PARTS) if (!await caches.match(name)) await (await fetch(name)).arrayBuffer();
}

function keepWholeLater() {
  setTimeout(() => keepWhole().catch(() => {}), KEPT_MS); // else the next visit brings it
}

export class Library {
  /// press(id) presses a control of the screen; note(words) tells of what is kept.
  constructor({ storage, program, press, note }) {
    Object.assign(this, { storage, program, press, note });
    this.busy = 0; // acts that are not done yet
    this.doing = Promise.resolve();
    this.failed = false; // what is on the screen could not be kept
    storage.told = (error) => this.heard(error);
    this.tellStart();
    document.addEventListener("visibilitychange", () => document.hidden || this.refresh());
    this.inTurn(() => this.holdFirst(storage), "The houses were not read");
    this.inTurn(() => this.sweep(), "Old photographs were not cleared away");
    const workers = navigator.serviceWorker;
    if (workers?.controller) keepWholeLater();
    else workers?.addEventListener("controllerchange", keepWholeLater, { once: true });
  }

  /// How the house of the start was found, and what happened since.
  tellStart() {
    const { texts, house, fault, early, kept_at, back } = this.storage;
    if (fault) this.note(`Not kept between visits: ${reason(fault)}. Save a file.`);
    else if (texts.length && !house.rev) this.note("The house that was kept here is damaged. It stays as it is, in the list.");
    else if (back) this.note(`The browser had lost what was kept here. ${back === 1 ? "1 house is" : `${back} houses are`} back from a second copy.`);
    else if (kept_at) this.note(`Saved ${clock(new Date(kept_at))}`);
    if (early) this.heard(...early);
  }

  /// What view::Wishes::act may be. One after the other.
  act(name, text, other) {
    const acts = {
      open: () => this.open(text),
      add: () => this.add(text),
      duplicate: () => this.add(text, true),
      remove: () => this.remove(text, other),
      restore: () => this.restore(text),
      empty: () => this.empty(),
      save: () => this.save(text),
      take: () => this.take(),
    };
    this.inTurn(() => {
      this.again = () => this.act(name, text, other);
      return acts[name]();
    }, "That could not be done");
  }

  inTurn(work, fault) {
    this.busy++;
    this.doing = this.doing.then(work).then(() => this.refresh())
      .catch((error) => showNotice(`${fault}: ${reason(error)}.`, [["Close", () => {}]]))
      .finally(() => {
        this.busy--;
      });
  }

  transaction(mode) {
    const { database } = this.storage;
    if (!database) throw new DOMException("", "InvalidStateError");
    return database.transaction(["library", "texts", "settings"], mode, { durability: "strict" });
  }

  refresh() {
    return this.tellHouses().catch((error) => this.note(`The list of houses was not read: ${reason(error)}.`));
  }

  /// Tells the screen how things stand. The open house it knows best itself.
  async tellHouses() {
    const { program, storage } = this;
    const houses = storage.database
      ? await done(this.transaction("readonly").objectStore("library").getAll()) : [];
    const promised = await navigator.storage?.persisted?.().catch(() => undefined);
    houses.sort((a, b) => (b.deleted_at ?? b.kept_at) - (a.deleted_at ?? a.kept_at));
    const shelf = {
      promise: storage.database ? PROMISES.get(promised) : "",
      keeps: storage.database !== undefined,
      lent: storage.house.lent === true,
      houses: houses.filter(({ id }) => id !== storage.house.id).slice(0, MOST_LISTED).map((house) => ({
        id: house.id,
        name: short(house.name) || "A house without a name",
        words: inWords(house),
        trashed: house.deleted_at !== undefined,
      })),
    };
    program.tell("shelf", JSON.stringify(shelf));
  }

  /// After each attempt to keep what is on the screen.
  heard(error) {
    const { storage } = this;
    const warned = this.failed;
    this.failed = error !== undefined;
    this.note(error ? `Not kept: ${reason(error)}. Save a file.` : `Saved ${clock(new Date())}`);
    if (!error) return this.askToStay();
    if (storage.house.lent) return warned ? undefined : this.lend(storage.house, "is open in");
    if (warned) return undefined;
    return showNotice(`What you changed is not kept: ${reason(error)}. Save a file.`,
      [["Save a file", () => this.press("menu.save")], ["Later", () => {}]]);
  }

  /// Once there is something to lose, asks the browser not to clear it away.
  async askToStay() {
    if (this.asked) return;
    this.asked = true;
    await navigator.storage?.persist?.().catch(() => {});
    this.refresh();
  }

  /// Keeps what is on the screen before something else comes there; false when that cannot be.
  async left() {
    await this.program.ask("leave");
    await this.storage.writing;
    if (!this.failed) return true;
    const { again } = this;
    showNotice("What you changed in this house is not kept. Duplicate it or save it to a file first.",
      [["Stay", () => {}], ["Go on without it", () => {
        this.failed = false;
        again();
      }]]);
    return false;
  }

  /// Puts a house on the screen: the first of the texts that can be read. Up to there what is on the
  /// screen is kept for the house before.
  async show(house, texts) {
    const { program, storage } = this;
    let read = false;
    for (const text of texts) read ||= await program.ask("house", text);
    if (!read) throw new Error("the house is damaged; it stays as it is");
    storage.house = house;
    storage.texts = [];
    this.failed = false;
  }

  async openKept(id, options) {
    const transaction = this.transaction("readonly");
    const about = await done(transaction.objectStore("library").get(id));
    const texts = about ? await textsOf(transaction, id) : [];
    await this.show({ id, rev: about?.rev }, texts);
    await this.keepSetting("open", id, "Which house is open");
    this.note(`Saved ${clock(new Date(about.kept_at))}`);
    await this.hold(this.storage.house, options);
  }

  /// Beside the houses: what belongs to the device.
  async keepSetting(key, value, words) {
    try {
      const transaction = this.transaction("readwrite");
      transaction.objectStore("settings").put(value, key);
      await finished(transaction);
    } catch (error) {
      this.note(`${words} not kept: ${reason(error)}.`);
    }
  }

  async open(id) {
    if (await this.left()) await this.openKept(id);
  }

  /// Another house beside those that are here. A copy holds what could not be kept.
  async add(text, copy = false) {
    if (!copy && !(await this.left())) return;
    const house = { ...newHouse(), rev: 1 };
    const transaction = this.transaction("readwrite");
    put(transaction, house, text);
    transaction.objectStore("settings").put(house.id, "open");
    await finished(transaction);
    await this.show(house, [text]);
    this.note(`Saved ${clock(new Date())}`);
    await this.hold(house);
  }

  /// The open house goes to the trash; the one that was last worked on comes in its place, or `next`.
  async remove(text, next) {
    if (!(await this.left())) return;
    const { house } = this.storage;
    const transaction = this.transaction("readwrite");
    const library = transaction.objectStore("library");
    const houses = await done(library.getAll());
    if (!houses.some(({ id }) => id === house.id)) put(transaction, { ...house, rev: 1 }, text);
    library.put({ ...await done(library.get(house.id)), deleted_at: Date.now() });
    await finished(transaction);
    const others = houses.filter(({ id, deleted_at }) => id !== house.id && !deleted_at);
    if (!others.length) return this.add(next, true);
    return this.openKept(others.sort((a, b) => b.kept_at - a.kept_at)[0].id);
  }

  async restore(id) {
    if (!(await this.left())) return;
    const transaction = this.transaction("readwrite");
    const library = transaction.objectStore("library");
    const { deleted_at: _, ...house } = await done(library.get(id));
    library.put(house);
    await finished(transaction);
    await this.openKept(id);
  }

  /// Photographs go along that no other text has, be it of the generation before.
  async empty() {
    await this.program.ask("leave");
    await this.storage.writing;
    const transaction = this.transaction("readwrite");
    const library = transaction.objectStore("library"), store = transaction.objectStore("texts");
    const gone = [];
    for (const { id, deleted_at } of await done(library.getAll())) {
      if (!deleted_at) continue;
      gone.push(...await textsOf(transaction, id));
      dropCopy(HOUSES, id);
      library.delete(id);
      store.delete(IDBKeyRange.bound([id], [id, 2]));
    }
    const left = (await done(store.getAll())).map(({ text }) => String(text));
    await finished(transaction);
    const needed = idsNamed(left.join("\n"));
    const ids = [...idsNamed(gone.join("\n"))].filter((id) => !needed.has(id));
    if (ids.length) await dropPhotos(ids);
  }

  /// Photographs that were taken off go when nobody has an undo to bring them back: no other tab has a
  /// house, and this one has only begun.
  async sweep() {
    if (!this.storage.database || !navigator.locks?.query) return;
    const { held } = await navigator.locks.query();
    if (held.some(({ name }) => name.startsWith(LOCK) && name !== LOCK + this.storage.house.id)) return;
    await dropUnfinished();
    const photos = await keptPhotos();
    if (!photos.length) return;
    const texts = await done(this.transaction("readonly").objectStore("texts").getAll());
    const named = idsNamed(texts.map(({ text }) => String(text)).join("\n"));
    const loose = photos.filter((id) => !named.has(id));
    if (loose.length) await dropPhotos(loose);
  }

  /// A library file: all of it comes into the list, beside what is there, or nothing of it.
  async import(text) {
    const houses = housesIn(text);
    const lean = await Promise.all(houses.map((house) => withoutPictures(JSON.stringify(house))));
    for (const [index, one] of lean.entries()) await this.check(one, `/houses/${index}`);
    const transaction = this.transaction("readwrite");
    lean.forEach((one) => put(transaction, { ...newHouse(), rev: 1 }, one));
    await finished(transaction);
    const words = houses.length === 1 ? "1 house was" : `${houses.length} houses were`;
    showNotice(`${words} added to the list on the House page.`, [["Close", () => {}]]);
  }

  /// Throws what the reader of house files finds wrong.
  async check(text, path) {
    const fault = await this.program.ask("fault", text);
    if (fault) throw new Error(`at ${path}${fault}`);
  }

  /// One file of all houses that are not in the trash, the open one first.
  async save(open) {
    const texts = [open], { storage } = this;
    let damaged = 0;
    if (storage.database) {
      const transaction = this.transaction("readonly");
      for (const { id, deleted_at } of await done(transaction.objectStore("library").getAll())) {
        if (id === storage.house.id || deleted_at) continue;
        const whole = (await textsOf(transaction, id)).find(isJson);
        if (whole) texts.push(whole);
        else damaged++;
      }
    }
    const houses = await Promise.all(texts.map(withPictures));
    await offerFile(FILE_NAME,
      `{"kind":"${KIND}","version":${VERSION},"houses":[\n${houses.join(",\n")}\n]}\n`);
    if (damaged) showNotice(`Not in the file: ${damaged} damaged in the list.`, [["Close", () => {}]]);
  }

  /// A file for the user: a house's with its pictures.
  async offer(name, content) {
    return offerFile(name, name.endsWith(".csv") ? content : await withPictures(content));
  }

  /// A file from the user.
  async opened(text) {
    if (text.slice(0, 200).includes(KIND)) {
      return this.inTurn(() => this.import(text), "The file was not opened and nothing was changed");
    }
    const lean = await withoutPictures(text);
    this.program.tell("opened", lean, 0);
  }

  /// A house belongs to the first tab that opens it, until another takes it over. Answers once it is
  /// known whose it is. Without locks the check in Storage.write alone keeps tabs apart.
  async hold(house, options = { ifAvailable: true }) {
    this.release?.();
    if (!navigator.locks) return;
    if (await this.lock(house, options)) return;
    await new Promise((later) => setTimeout(later, LEAVING_MS));
    if (!await this.lock(house, options)) this.lend(house, "is open in");
  }

  /// The house of the start. Its copy may be older than it is, or whole where its text is not.
  async holdFirst({ house, texts: [text] }) {
    await this.hold(house);
    if (isJson(text) && house.rev) await copyAgain(HOUSES, house.id, text, () => house.lent || house.written);
  }

  lock(house, options) {
    return new Promise((known) => {
      navigator.locks.request(LOCK + house.id, options, (lock) => {
        known(lock !== null);
        return lock && new Promise((release) => {
          this.release = release;
        });
      }).catch(() => {
        known(true);
        this.lend(house, "was taken over by");
      });
    });
  }

  /// Another tab has it. When that one is closed it comes back, as it was left there.
  lend(house, how) {
    if (house !== this.storage.house) return;
    house.lent = true;
    this.note("Not kept: this house is open in another tab.");
    this.refresh();
    showNotice(`This house ${how} another tab. ${OTHER_TAB}`,
      [["Use it here", () => this.act("take")], ["Just look", () => {}]]);
    if (this.waits === house) return;
    this.waits = house;
    navigator.locks?.request(LOCK + house.id, () => {
      if (house === this.storage.house && !this.failed) this.act("take");
    }).catch(() => {});
  }

  /// The house as it was last kept, from now on here.
  async take() {
    const { house } = this.storage;
    if (!house.lent || !await this.left()) return;
    await this.openKept(house.id, { steal: true });
    hideNotice();
  }
}

function isJson(text) {
  try {
    return typeof JSON.parse(text) === "object";
  } catch {
    return false;
  }
}
