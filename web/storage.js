// SPDX-License-Identifier: MIT
// Keeps the house between visits in IndexedDB: the new one is written before the one before last
// goes, so that a damaged newest leaves a previous one to fall back to. Theme, text size and the
// lessons that were done are kept beside it.

const GENERATIONS = 2;
const LESSONS = 2 ** 24 - 1; // so many bits come whole through the look's floats

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function finished(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
  });
}

function openDatabase() {
  const request = indexedDB.open("shimlight", 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("houses", { autoIncrement: true });
    request.result.createObjectStore("settings");
  };
  return done(request);
}

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
  return "the browser refused";
}

export class Storage {
  /// note(words) hears when the house was last kept, or why it could not be.
  constructor(note) {
    this.note = note;
    this.houses = []; // texts, newest first, as they were at the start
    this.theme = 0;
    this.text = 0;
    this.lessons = 0; // a bit each
    this.writing = Promise.resolve();
    this.waiting = null;
  }

  async open() {
    try {
      this.database = await openDatabase();
      const transaction = this.database.transaction(["houses", "settings"]);
      const kept = done(transaction.objectStore("houses").getAll());
      const theme = done(transaction.objectStore("settings").get("theme"));
      const text = done(transaction.objectStore("settings").get("text"));
      const lessons = done(transaction.objectStore("settings").get("lessons"));
      const houses = (await kept).reverse();
      this.houses = houses.map((house) => String(house?.text ?? ""));
      this.theme = [0, 1, 2].includes(await theme) ? await theme : 0;
      this.text = [0, 1, 2].includes(await text) ? await text : 0;
      this.lessons = (await lessons) & LESSONS; // what is no number counts as none
      if (houses[0]?.kept_at) this.note(`Saved ${clock(new Date(houses[0].kept_at))}`);
    } catch (error) {
      this.note(`Not kept between visits: ${reason(error)}. Save a file.`);
    }
    return this;
  }

  /// Writes one after the other; of several that wait only the last is written.
  keep(text) {
    const idle = this.waiting === null;
    this.waiting = text;
    if (idle) this.writing = this.writing.then(() => this.write());
    return this.writing;
  }

  async write() {
    const text = this.waiting;
    this.waiting = null;
    try {
      if (!this.database) throw new DOMException("", "InvalidStateError");
      const transaction = this.database.transaction("houses", "readwrite");
      const houses = transaction.objectStore("houses");
      const now = new Date();
      houses.add({ text, kept_at: now.getTime() });
      const keys = await done(houses.getAllKeys());
      keys.slice(0, -GENERATIONS).forEach((key) => houses.delete(key));
      await finished(transaction);
      this.note(`Saved ${clock(now)}`);
      this.askToStay();
    } catch (error) {
      this.note(`Not kept: ${reason(error)}. Save a file.`);
    }
  }

  /// Once there is something to lose, asks the browser not to clear it away.
  askToStay() {
    if (this.asked) return;
    this.asked = true;
    navigator.storage?.persist?.().catch(() => {});
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
