// SPDX-License-Identifier: MIT
// Keeps the house that is open in IndexedDB, two generations of it, each with what it is about in one
// transaction: either all of a change is there or the house as it was. Theme, text size and the
// lessons that were done are kept beside it. The other houses are library.js's.

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

/// Into a transaction: the generation before last goes, and what the house is about follows.
export function put(transaction, { id, rev }, text, now = Date.now()) {
  transaction.objectStore("texts").put({ text, rev }, [id, rev % 2]);
  transaction.objectStore("library").put({ id, rev, kept_at: now, ...about(text) });
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
  request.onupgradeneeded = (event) => upgrade(request, event.oldVersion);
  return new Promise((resolve, reject) => {
    request.onblocked = () => reject(new Error("an older Shimlight is open in another tab"));
    done(request).then(resolve, reject);
  });
}

/// Made once: it takes a slow phone longer than a frame.
const hours = new Intl.DateTimeFormat([], { hour: "numeric", minute: "2-digit" });

export function clock(time) {
  const today = new Date().toDateString() === time.toDateString();
  return today ? hours.format(time)
    : time.toLocaleDateString([], { month: "short", day: "numeric" });
}

export function reason(error) {
  if (error?.name === "QuotaExceededError") return "this device has no room left";
  if (error?.name === "SecurityError" || error?.name === "InvalidStateError")
    return "this browser window keeps nothing";
  return error?.name === "Error" ? error.message : "the browser refused";
}

export class Storage {
  /// note(words) hears when the house was last kept, or why it could not be.
  constructor(note) {
    this.note = note;
    this.house = newHouse(); // the one that is open; `lent` while another tab has it
    this.texts = []; // of the house to start with, newest first
    this.theme = 0;
    this.text = 0;
    this.lessons = 0; // a bit each
    this.writing = Promise.resolve();
    this.waiting = new Map(); // house → its text
    this.told = () => {}; // after each attempt to keep: an error, or nothing
  }

  async open() {
    try {
      this.database = await openDatabase();
      this.database.onversionchange = () => this.database.close();
      const transaction = this.database.transaction(["library", "texts", "settings"]);
      const [theme, text, lessons, open] = await Promise.all(["theme", "text", "lessons", "open"]
        .map((key) => done(transaction.objectStore("settings").get(key))));
      this.theme = [0, 1, 2].includes(theme) ? theme : 0;
      this.text = [0, 1, 2].includes(text) ? text : 0;
      this.lessons = lessons & LESSONS; // what is no number counts as none
      const houses = (await done(transaction.objectStore("library").getAll()))
        .filter((house) => !house.deleted_at).sort((a, b) => b.kept_at - a.kept_at);
      const house = houses.find(({ id }) => id === open) ?? houses[0];
      if (!house) return this;
      this.house = { id: house.id, rev: house.rev };
      this.texts = await textsOf(transaction, house.id);
      this.note(`Saved ${clock(new Date(house.kept_at))}`);
    } catch (error) {
      this.note(`Not kept between visits: ${reason(error)}. Save a file.`);
    }
    return this;
  }

  /// To start with. When none can be read the damaged one stays as it is: the next is another.
  stored(generation) {
    if (this.texts.length && generation >= this.texts.length) {
      this.house = newHouse();
      this.note("The house that was kept here is damaged. It stays as it is, in the list.");
    }
    return this.texts[generation] ?? null;
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
      if (!this.database) throw new DOMException("", "InvalidStateError");
      const transaction = this.database.transaction(["library", "texts", "settings"], "readwrite",
        { durability: "strict" });
      const known = await done(transaction.objectStore("library").get(house.id));
      if (house.lent || (known && known.rev !== house.rev)) {
        house.lent = true;
        throw new Error("this house is open in another tab");
      }
      put(transaction, { id: house.id, rev: house.rev + 1 }, text);
      transaction.objectStore("settings").put(house.id, "open");
      await finished(transaction);
      document.documentElement.dataset.kept = ++house.rev;
      this.tell(house, `Saved ${clock(new Date())}`);
    } catch (error) {
      this.tell(house, `Not kept: ${reason(error)}. Save a file.`, error);
    }
  }

  /// Of a house that is no longer on the screen nobody is told.
  tell(house, words, error) {
    if (house !== this.house) return;
    this.note(words);
    this.told(error);
  }

  keepTheme(theme) {
    return this.keepSetting("theme", theme, "Light or dark");
  }

  keepText(size) {
    this.text = size;
    return this.keepSetting("text", size, "Text size");
  }

  keepLessons(done) {
    this.lessons = done;
    return this.keepSetting("lessons", done, "What lessons were done");
  }

  async keepSetting(key, value, words) {
    try {
      const transaction = this.database.transaction("settings", "readwrite");
      transaction.objectStore("settings").put(value, key);
      await finished(transaction);
    } catch (error) {
      this.note(`${words} not kept: ${reason(error)}.`);
    }
  }
}
