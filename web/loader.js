// SPDX-License-Identifier: MIT
// Brings page and program together: gives the program its `page` (see src/app/page.hpp), hands it
// what happens on the page, and the door to whoever asks.
import { CanvasLayout } from "./canvas.js";
import { chooseFile, offerFile, offerLink } from "./files.js";
import { listenToKeys } from "./keyboard.js";
import { isLink, linkTo, textOf } from "./link.js";
import { Mirror } from "./mirror.js";
import { hideNotice, showNotice } from "./notice.js";
import { lookForNewer, workOffline } from "./offline.js";
import { openDoor } from "./open_door.mjs";
import { Pointer } from "./pointer.js";
import { OTHER_VERSION, Program } from "./program.js";
import { Storage } from "./storage.js";
import { Theme } from "./theme.js";

const SIGNS = ["pointerdown", "keydown", "focusin", "click", "input", "wheel", "appinstalled"];
const LOOKED_S = 20; // at a page at rest
const REST_MS = 200;
const stage = document.getElementById("stage");
const canvas = document.getElementById("canvas");
let program = null;
let library = null, photos = null; // come with the rest of the program
const state = { asleep: true, heard: 0, frames: 0, drawable: false, due: false };

function tell(kind, id, number, text) {
  program.tell("mirror_event", kind, id, number, text);
}

function note(words) {
  program.tell("storage_note", words);
}

function opened(text, fromLink = 0) {
  program.tell("opened", text, fromLink);
}

/// What only the page can do, and only inside a gesture: by the action of a mirror's node.
const actions = {
  "open-file": () => chooseFile((text) => (library ? library.opened(text) : opened(text))),
  copy: (node) => navigator.clipboard?.writeText(node.v).catch(() => {}),
  "add-photo": () => photos.choosePhoto((id) => opened(`photo ${id}`)),
  "show-photo": (node) => photos.enlarge(node),
};

/// An opening that came with the address. The address is then as it was, so that it comes once.
async function openLink() {
  if (!isLink(location.hash)) return;
  const { hash } = location;
  history.replaceState(null, "", location.pathname + location.search);
  try {
    const text = await textOf(hash);
    opened(text, 1);
    await program.whole();
  } catch (error) {
    showNotice(`The link was not opened: ${error.message}.`, [["Close", () => {}]]);
  }
}

/// What the program tells of itself and asks of the page: app/page.cpp and host.js call it.
function makePage(storage, theme, layout, mirror) {
  const look = () => [...layout.look(theme.dark), theme.choice, storage.text, storage.lessons];
  const wake = () => {
    if (program?.started) program.tell("laid", look());
  };
  theme.changed = layout.changed = wake;
  return {
    look,
    wake,
    damaged: () => storage.startAnew(),
    keep: (json) => storage.keep(json),
    moved: (moves) => library ?? storage.leave(moves),
    mirror: (nodes) => mirror.take(nodes),
    offer: (name, content) => (library ?? { offer: offerFile }).offer(name, content),
    act: (...what) => library.act(...what),
    arrived({ Library }, withPhotos, { makeReport }) {
      library = new Library({ storage, program, note, press: (id) => tell(0, id, 0, "") });
      photos = withPhotos;
      Object.assign(this, makeReport());
    },
    link: (house) => linkTo(house).then(offerLink),
    theme(choice) {
      theme.choose(choice);
      library.keepSetting("theme", choice, "Light or dark");
      wake();
    },
    text(size) {
      storage.text = size;
      library.keepSetting("text", size, "Text size");
      wake();
    },
    lessons(done) {
      storage.lessons = done;
      library.keepSetting("lessons", done, "What lessons were done");
      wake();
    },
    title(words) {
      document.title = words;
    },
    cursor(name) {
      stage.style.cursor = name;
    },
    drawable(drawable) {
      state.drawable = drawable;
      if (!drawable) program.undrawn();
      document.body.classList.toggle("no-gl", !drawable);
      layout.remeasure();
    },
    lost(lost) {
      if (!lost) return hideNotice();
      return showNotice("The graphics card has stopped answering. The picture comes back by itself as soon as it does; nothing is lost.");
    },
    asleep(asleep, heard, frames) {
      Object.assign(state, { asleep, heard, frames });
    },
    ready() {
      document.documentElement.dataset.ready = "1";
    },
  };
}

function listenToPage(page) {
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) program.tell("leave");
    page.wake();
  });
  addEventListener("pagehide", () => program.tell("leave"));
}

/// The first picture is there and the program rests: nothing that can wait takes its time from it.
function atRest(quiet) {
  return new Promise((done) => {
    const look = () => (state.frames && quiet() ? done() : setTimeout(look, REST_MS));
    look();
  });
}

/// The rest of the program comes at the first sign of use, to who looks at the page for a while, or
/// after the first rest to who was here before.
function bringRest(storage, rest) {
  let looking;
  const bring = () => {
    state.due = false;
    clearInterval(looking);
    for (const sign of SIGNS) removeEventListener(sign, bring, true);
    program.whole().then(() => document.hidden && program.tell("leave")).catch((error) => {
      console.warn(error);
      lookForNewer();
      showNotice("A part of Shimlight is missing: it comes when there is a network. Until then only levers are kept.",
        [["Close", () => {}]]);
      if (error.message !== OTHER_VERSION) listen(); // else a page loaded anew has them all
    });
  };
  const listen = () => {
    for (const sign of SIGNS) addEventListener(sign, bring, { capture: true, passive: true });
    let seconds = 0;
    looking = setInterval(() => {
      if (document.hidden || !navigator.onLine || !state.asleep || ++seconds < LOOKED_S) return;
      clearInterval(looking);
      (window.requestIdleCallback ?? setTimeout)(bring);
    }, 1000);
  };
  listen();
  state.due = storage.texts.length > 0 || Boolean(storage.moves);
  if (state.due) rest.then(bring);
}

/// A file of ours, here and now: whoever asks the door waits for it once.
function bytesNow(name) {
  const request = new XMLHttpRequest();
  request.open("GET", name, false);
  request.overrideMimeType("text/plain; charset=x-user-defined");
  request.send();
  return Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 255);
}

/// The calculation door: an object in, an object out. A program of its own, which nobody else loads.
let door = null;
function ask(question, object) {
  door ??= openDoor(bytesNow("shimlight-door.wasm"));
  return door.ask(question, object);
}

async function start() {
  const layout = new CanvasLayout(stage, canvas);
  program = new Program(layout);
  const storage = await new Storage().open();
  const mirror = new Mirror(document.getElementById("mirror"), tell, actions,
    () => program.tell("grown"));
  const page = makePage(storage, new Theme(storage.theme), layout, mirror);
  await program.start(page, storage);
  page.wake(); // what changed meanwhile
  if (state.drawable) new Pointer(stage, canvas, program, mirror);
  listenToPage(page);
  listenToKeys(program, mirror, (id) => tell(0, id, 0, ""));
  const quiet = () => state.asleep && state.heard === program.sent && !mirror.late;
  const rest = atRest(quiet);
  bringRest(storage, rest);
  addEventListener("hashchange", openLink);
  openLink();
  window.shimlight = {
    ask,
    get asleep() {
      return quiet() && !state.due && !program.coming && !library?.busy;
    },
    get frames() { return state.frames; },
  };
  await rest;
  workOffline(async () => {
    await program.ask("leave");
    await storage.writing;
  });
}

function failed(error) {
  console.error(error);
  showNotice("Shimlight could not start in this browser. It needs WebAssembly; a browser of the last few years has it.");
}

start().catch(failed);
