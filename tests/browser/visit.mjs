// SPDX-License-Identifier: MIT
// A visit to the page: what a person with a screen reader does (mirror), sees (pictures) and hears
// (results), and what must never happen meanwhile: errors, requests to anyone else.
import assert from "node:assert/strict";

const START_MS = 60_000; // a slow machine compiles the program without a graphics card
const REST_MS = 30_000;

export const desktop = { width: 1440, height: 900, dpr: 1, dark: false, touch: false };
export const phone = { width: 360, height: 640, dpr: 2, dark: false, touch: true };

/** Firefox's and WebKit's driver cancel the browser's own dialog for files before anybody can choose. */
function keepDialogsShut() {
  const { click } = HTMLElement.prototype;
  HTMLInputElement.prototype.click = function () {
    if (this.type !== "file") click.call(this);
  };
}

export class Visit {
  constructor(browser, server, { page, close }) {
    Object.assign(this, { browser, server, page, closeContext: close });
    this.errors = [];
    this.requests = [];
    page.on("console", (message) => {
      if (["error", "assert"].includes(message.type())) this.errors.push(message.text());
    });
    page.on("pageerror", (error) => this.errors.push(String(error)));
    page.on("request", (request) => this.requests.push(request.url()));
  }

  static async start(browser, server, window = desktop) {
    const visit = new Visit(browser, server, await browser.newPage({ ...desktop, ...window }));
    await visit.open();
    return visit;
  }

  get isFirefox() {
    return this.browser.name === "firefox";
  }

  async open(question = "") {
    await this.page.goto(this.server.url + question);
    await this.ready();
  }

  async reload() {
    await this.page.reload();
    await this.ready();
  }

  /** Runs before anything of the page, from the next load on. */
  beforeLoad(script) {
    return this.page.addInitScript ? this.page.addInitScript(script)
      : this.page.evaluateOnNewDocument(script);
  }

  evaluate(work, given) {
    return this.page.evaluate(work, given);
  }

  /** Asks within the page until it is so; `given` reaches `check`. */
  async until(check, given, what, limit = REST_MS) {
    const end = Date.now() + limit;
    for (;;) {
      const answer = await this.evaluate(check, given);
      if (answer) return answer;
      if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
      await new Promise((done) => setTimeout(done, 40));
    }
  }

  async ready() {
    await this.until(() => document.documentElement.dataset.ready === "1", null, "the first frame",
      START_MS);
    await this.rest();
  }

  /** Until what was done is computed, drawn and told: no frame is asked for any more. */
  async rest() {
    // WebKit's driver loses the answer of a frame that comes late now and then.
    if (this.browser.name === "webkit") await new Promise((done) => setTimeout(done, 50));
    else await this.evaluate(() => new Promise((done) => requestAnimationFrame(() => done())));
    await this.until(() => window.shimlight?.asleep, null, "the screen to come to rest", REST_MS);
  }

  /** What a control of the mirror says of itself; null when there is none of that id. */
  control(id) {
    return this.evaluate((id) => {
      const found = document.querySelector(`[data-id="${CSS.escape(id)}"]`);
      if (!found) return null;
      const box = found.closest(".node").getBoundingClientRect();
      return {
        tag: found.localName,
        type: found.type,
        role: found.closest(".node").dataset.role,
        text: found.textContent,
        value: found.value,
        spoken: found.getAttribute("aria-valuetext"),
        pressed: found.getAttribute("aria-pressed") ?? found.getAttribute("aria-selected"),
        disabled: found.getAttribute("aria-disabled") === "true",
        label: found.labels?.[0]?.textContent ?? found.getAttribute("aria-label") ?? found.textContent,
        min: Number(found.min), max: Number(found.max), step: Number(found.step),
        options: found.options ? [...found.options].map((one) => one.textContent) : [],
        box: { x: box.x, y: box.y, width: box.width, height: box.height },
      };
    }, id);
  }

  async ids(role) {
    return this.evaluate((role) => [...document.querySelectorAll("[data-id]")]
      .filter((one) => !role || one.closest(".node").dataset.role === role)
      .map((one) => one.dataset.id), role);
  }

  /** A press through the mirror, as a screen reader does it. */
  async press(id) {
    await this.evaluate((id) => {
      const found = document.querySelector(`[data-id="${CSS.escape(id)}"]`);
      if (!found) throw new Error(`there is no ${id}`);
      found.click();
    }, id);
    await this.rest();
  }

  /** Sets a slider, a choice (by index) or a text through the mirror. */
  async set(id, value) {
    await this.evaluate(({ id, value }) => {
      const found = document.querySelector(`[data-id="${CSS.escape(id)}"]`);
      if (!found) throw new Error(`there is no ${id}`);
      if (found.localName === "select") found.selectedIndex = value;
      else found.value = value;
      found.dispatchEvent(new Event("input", { bubbles: true }));
      found.dispatchEvent(new Event("change", { bubbles: true }));
    }, { id, value });
    await this.rest();
  }

  async focus(id) {
    await this.evaluate((id) => document.querySelector(`[data-id="${CSS.escape(id)}"]`).focus(), id);
    await this.rest();
  }

  focused() {
    return this.evaluate(() => document.activeElement?.dataset?.id ?? "");
  }

  async key(name) {
    await this.page.keyboard.press(name);
    await this.rest();
  }

  /** A chord such as Control+z. */
  async chord(modifier, key) {
    await this.page.keyboard.down(modifier);
    await this.page.keyboard.press(key);
    await this.page.keyboard.up(modifier);
    await this.rest();
  }

  /** Every result on the screen: id → its text. */
  results() {
    return this.evaluate(() => Object.fromEntries(
      [...document.querySelectorAll('[data-role="figure"] [data-id^="strip."]')]
        .map((one) => [one.dataset.id, one.querySelector(".value").textContent])));
  }

  /** The announced sentence. It settles before it is read out. */
  verdict() {
    return this.evaluate(() => document.querySelector('[data-id="verdict"]').dataset.words);
  }

  /** What "Save to a file" gives: the text of the house file. */
  async savedFile() {
    await this.evaluate(() => {
      window.offered ??= (() => {
        const make = URL.createObjectURL.bind(URL);
        URL.createObjectURL = (blob) => {
          window.offered.last = blob;
          return make(blob);
        };
        return {};
      })();
      window.offered.last = null;
    });
    await this.show("house");
    await this.press("menu.save");
    return this.until(() => window.offered.last?.text(), null, "a file");
  }

  /** Chooses `text` as the file after "Open a file". */
  async openFile(text) {
    await this.show("house");
    const chooser = this.page.waitForEvent && !this.isFirefox
      ? this.page.waitForEvent("filechooser") : null;
    if (!chooser) await this.evaluate(keepDialogsShut);
    await this.press("menu.open");
    if (chooser) {
      await (await chooser).setFiles(
        { name: "house.json", mimeType: "application/json", buffer: Buffer.from(text) });
    } else {
      await this.evaluate((text) => {
        const input = document.getElementById("open-file");
        const data = new DataTransfer();
        data.items.add(new File([text], "house.json", { type: "application/json" }));
        input.files = data.files;
        input.dispatchEvent(new Event("change"));
      }, text);
    }
    await this.until(() => !document.getElementById("open-file"), null, "the file to be taken");
    await new Promise((done) => setTimeout(done, 200)); // the file is read beside the frames
    await this.rest();
  }

  /** Turns to a view: "slice", "house". */
  async show(view) {
    const tab = await this.control(`view.${view}`);
    if (tab.pressed !== "true") await this.press(`view.${view}`);
  }

  /** Changes a control of a view and waits until that is kept. */
  async change(view, id, value) {
    await this.show(view);
    const before = await this.evaluate(() => document.documentElement.dataset.kept);
    await this.set(id, value);
    await this.until((before) => document.documentElement.dataset.kept !== before, before, "the change to be kept");
  }

  picture() {
    return this.page.screenshot({ type: "png" });
  }

  /** Ends the visit; nothing may have gone wrong or elsewhere. */
  async close() {
    const own = new URL(this.server.url).origin;
    const foreign = this.requests.filter((url) =>
      !url.startsWith(own) && !/^(blob|data|about):/.test(url));
    const errors = this.errors.filter((text) => !this.expected?.test(text));
    await this.closeContext();
    assert.deepEqual(errors, [], "the console is quiet");
    assert.deepEqual(foreign, [], "no request leaves the page's own origin");
  }
}
