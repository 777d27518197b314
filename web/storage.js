// SPDX-License-Identifier: MIT
// Keeps the house that is open in IndexedDB, two generations of it, each with what it is about in one
// transaction: either all of a change is there or the house as it was. Theme, text size and the
// lessons that were done lie beside it. The other houses, and all words about keeping, are library.js's.
import { HOUSES, copiedHouses, copy } from "./copies.js";

const OURS = "shimlight-house"; // of this tab, in sessionStorage
const MOVES = "shimlight-moves"; // of levers, from a page that was closed before its second part came
const LESSONS = 2 ** 24 - 1; // so many bits come whole through the look's floats

export function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

export function finished(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error ?? new DOMException("", "AbortError"));
  });
}

/// A tab's own memory, or that of all tabs; a browser may refuse both.
export function remembered(where, key) {
  try {
    return window[where].getItem(key);
  } catch {
    return null;
  }
}

export function remember(where, key, text) {
  try {
    window[where].setItem(key, text);
  } catch {} // then the next start is one without it
}

export function newHouse() {
  return { id: Date.now().toString(36) + Math.random().toString(36).slice(2), rev: 0 };
}

function about(text) {
  try {
    const { name, place, openings } = JSON.parse(text);
    return { name, place, openings: openings.length };
  } catch {
    return { name: "", place: "", openings: 0 };
  }
}

/// Into a transaction: the generation before last goes, and what the house is about follows. The
/// second copy goes along.
export function put(transaction, { id, rev }, text, now = Date.now()) {
  transaction.objectStore("texts").put({ text, rev }, [id, rev % 2]);
  transaction.objectStore("library").put({ id, rev, kept_at: now, ...about(text) });
  return copy(HOUSES, id, text);
}

/// The generations of a house, newest first.
export async function textsOf(transaction, id) {
  const kept = await done(transaction.objectStore("texts").getAll(IDBKeyRange.bound([id], [id, 2])));
  return kept.sort((a, b) => b.rev - a.rev).map(({ text }) => String(text));
}

/// Version 1 had one house, as texts alone.
function upgrade({ result, transaction }, from) {
  result.createObjectStore("library", { keyPath: "id" });
  result.createObjectStore("texts");
  if (from < 1) return result.createObjectStore("settings");
  transaction.objectStore("houses").getAll().onsuccess = ({ target }) => {
    const { id } = newHouse();
    target.result.forEach(({ text, kept_at }, i) => put(transaction, { id, rev: i + 1 }, text, kept_at));
    result.deleteObjectStore("houses");
  };
}

function openDatabase() {
  const request = indexedDB.open("shimlight", 2);
  request.onupgradeneeded = ({ oldVersion }) => upgrade(request, oldVersion);
  return new Promise((resolve, reject) => {
    request.onblocked = () => reject(new Error("older"));
    done(request).then(resolve, reject);
  });
}

/// Gives how many houses came back.
async function bringBack(database) {
  const kept = await copiedHouses();
  if (!kept.length) return 0;
  const transaction = database.transaction(["library", "texts"], "readwrite");
  for (const { id, text, kept_at } of kept) put(transaction, { id, rev: 1 }, text, kept_at);
  await finished(transaction);
  return kept.length;
}

export class Storage {
  constructor() {
    this.ours = remembered("sessionStorage", OURS);
    this.house = newHouse();
    this.texts = []; // of the house to start with, newest first
    this.theme = 0;
    this.text = 0;
    this.lessons = 0; // a bit each
    this.kept_at = 0; // the house to start with; never
    this.back = 0; // houses that the browser had lost
    this.moves = ""; // of levers since then
    this.writing = Promise.resolve();
    this.waiting = new Map(); // house → its text
    /// After each attempt to keep: an error, or nothing. Until somebody listens the last one stays.
    this.told = (error) => {
      this.early = [error];
    };
  }

  /// The one that is open; `lent` while another tab has it, `written` since the start. A reload comes
  /// back to it.
  get house() {
    return this.opened;
  }

  set house(house) {
    this.opened = house;
    remember("sessionStorage", OURS, house.id);
  }

  /// A library without a house, not even one in the trash, is a first visit's, or the browser lost it,
  /// or it was killed before a first house was kept or all had come back: the second copies tell.
  async open() {
    try {
      this.database = await openDatabase();
      this.database.onversionchange = () => this.database.close();
      if (!await this.read()) {
        this.back = await bringBack(this.database);
        if (this.back) await this.read();
      }
      const [, since, moves] = /^(\d+) (.*)$/s.exec(remembered("localStorage", MOVES)) ?? [];
      if (Number(since) === this.kept_at) this.moves = moves;
    } catch (error) {
      this.fault = error;
    }
    return this;
  }

  /// Settings and the house to start with. Gives how many houses there are.
  async read() {
    const transaction = this.database.transaction(["library", "texts", "settings"]);
    const [all, theme, text, lessons, open] = await Promise.all([
      transaction.objectStore("library").getAll(),
      ...["theme", "text", "lessons", "open"].map((key) => transaction.objectStore("settings").get(key)),
    ].map(done));
    this.theme = [0, 1, 2].includes(theme) ? theme : 0;
    this.text = [0, 1, 2].includes(text) ? text : 0;
    this.lessons = lessons & LESSONS; // what is no number counts as none
    const houses = all.filter((house) => !house.deleted_at).sort((a, b) => b.kept_at - a.kept_at);
    const house = houses.find(({ id }) => id === this.ours) ?? houses.find(({ id }) => id === open) ?? houses[0];
    if (house) {
      this.house = { id: house.id, rev: house.rev };
      this.texts = await textsOf(transaction, house.id);
      this.kept_at = house.kept_at;
    }
    return all.length;
  }

  /// None of the generations can be read: the damaged house stays as it is, the next is another.
  startAnew() {
    this.house = newHouse();
  }

  /// Before there is what writes houses: what levers did to the one of the start.
  leave(moves) {
    if (!this.database || moves === this.moves) return;
    this.moves = moves;
    remember("localStorage", MOVES, `${this.kept_at} ${moves}`);
  }

  /// Writes one after the other; of several of a house that wait only the last is written.
  keep(text) {
    const { house } = this;
    const idle = !this.waiting.has(house);
    this.waiting.set(house, text);
    if (idle) this.writing = this.writing.then(() => this.write(house));
    return this.writing;
  }

  async write(house) {
    const text = this.waiting.get(house);
    this.waiting.delete(house);
    try {
      if (!this.database) throw this.fault;
      const transaction = this.database.transaction(["library", "texts", "settings"], "readwrite",
        { durability: "strict" });
      const known = await done(transaction.objectStore("library").get(house.id));
      if (house.lent || (known && known.rev !== house.rev)) {
        house.lent = true;
        throw new Error("lent");
      }
      house.written = true;
      const copied = put(transaction, { id: house.id, rev: house.rev + 1 }, text);
      transaction.objectStore("settings").put(house.id, "open");
      transaction.commit(); // a page that closes now keeps it too
      await finished(transaction);
      await copied;
      document.documentElement.dataset.kept = ++house.rev;
      this.leave("");
      if (house === this.house) this.told();
    } catch (error) {
      if (house === this.house) this.told(error);
    }
  }
}
