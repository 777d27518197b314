// SPDX-License-Identifier: MIT
// Walking through a house on a phone: rooms, copies, photographs; by fingers where taps are counted.
import assert from "node:assert/strict";
import { Visit, phone } from "../visit.mjs";

const MOST_TAPS = 6; // for the second window of a room, typing apart
const LONGEST_PX = 1024;
// Exif of two entries, big endian: orientation 6 (turned to the right), and a place (GPS) with its
// latitude "N".
const EXIF = Uint8Array.of(
  0xff, 0xe1, 0x00, 0x46, 0x45, 0x78, 0x69, 0x66, 0, 0, 0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8,
  0, 2, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 0x26, 0, 0, 0, 0,
  0, 1, 0, 1, 0, 2, 0, 0, 0, 2, 0x4e, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

/** A JPEG of 3000 × 2000: its left third red, the rest blue, lying as a camera held upright has it. */
async function cameraPicture(visit) {
  const plain = await visit.evaluate(async () => {
    const canvas = document.createElement("canvas");
    canvas.width = 3000;
    canvas.height = 2000;
    const context = canvas.getContext("2d");
    context.fillStyle = "#00f";
    context.fillRect(0, 0, 3000, 2000);
    context.fillStyle = "#f00";
    context.fillRect(0, 0, 1000, 2000);
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from([...plain.slice(0, 2), ...EXIF, ...plain.slice(2)]);
}

/** As a finger does it: on what is painted there. */
async function tap(visit, id) {
  const { box } = await visit.control(id);
  await visit.page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await visit.rest();
  visit.taps = (visit.taps ?? 0) + 1;
}

async function typeInto(visit, id, words) {
  await tap(visit, id);
  assert.equal(await visit.focused(), id, "the phone's keyboard is up");
  await visit.page.keyboard.type(words);
  await visit.key("Enter");
}

async function addPhoto(visit, buffer, name = "IMG_1.jpg", mimeType = "image/jpeg") {
  const chooser = visit.page.waitForEvent("filechooser");
  await visit.press("photo.add");
  await (await chooser).setFiles({ name, mimeType, buffer });
  await visit.until(() => !document.getElementById("add-photo"), null, "the picture to be taken");
  await visit.rest();
}

/** The first photograph on the screen: size, colours at top and bottom. */
function shown(visit) {
  return visit.until(async () => {
    const image = document.querySelector('[data-role="photo"] img');
    if (!image?.complete || !image.naturalWidth || image.hidden) return null;
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth;
    canvas.height = image.naturalHeight;
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0);
    const colour = (share) => [...context.getImageData(canvas.width / 2, canvas.height * share, 1, 1).data];
    const box = image.getBoundingClientRect();
    return {
      width: canvas.width, height: canvas.height, top: colour(0.1), bottom: colour(0.9),
      id: image.dataset.id, alt: image.alt, seen: [box.width, box.height],
    };
  }, null, "the photograph");
}

/** A small picture of one colour. */
async function plainPicture(visit, colour) {
  const bytes = await visit.evaluate(async (colour) => {
    const canvas = document.createElement("canvas");
    canvas.width = canvas.height = 60;
    const context = canvas.getContext("2d");
    context.fillStyle = colour;
    context.fillRect(0, 0, 60, 60);
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
    return [...new Uint8Array(await blob.arrayBuffer())];
  }, colour);
  return Buffer.from(bytes);
}

/** The ids of the photographs that are kept. */
function keptPhotos(visit) {
  return visit.evaluate(() => new Promise((resolve) => {
    indexedDB.open("shimlight-photos").onsuccess = ({ target: { result } }) => {
      result.transaction("photos").objectStore("photos").getAllKeys().onsuccess = ({ target }) => {
        result.close();
        resolve(target.result);
      };
    };
  }));
}

/** As a browser does to its database when it was killed while it wrote. */
const dropPhotos = () => new Promise((done, failed) => {
  indexedDB.open("shimlight-photos").onsuccess = ({ target: { result } }) => {
    const transaction = result.transaction("photos", "readwrite");
    transaction.objectStore("photos").clear();
    transaction.oncomplete = () => done(result.close());
    transaction.onabort = failed;
  };
});

/** Does something that changes the house, and waits until that is kept. */
async function changing(visit, work) {
  await visit.evaluate(() => document.documentElement.removeAttribute("data-kept"));
  await work();
  await visit.until(() => document.documentElement.dataset.kept, null, "the change to be kept");
}

async function emptyTrash(visit) {
  await visit.show("house");
  await visit.press("library.empty");
  await visit.press("library.erase");
}

async function openChosen(visit) {
  await visit.show("house");
  await visit.press("opening.0");
}

export const cases = [
  {
    name: "the second window of a room takes six taps on a phone, typing apart",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await visit.show("house");
      await tap(visit, "opening.0");
      await visit.set("survey.room", "Bedroom");
      const before = JSON.parse(await visit.savedFile());
      visit.taps = 0;
      await tap(visit, "survey.copy");
      await typeInto(visit, "survey.width_m", "24");
      await typeInto(visit, "survey.height_m", "40");
      await tap(visit, "survey.facing");
      const { box, options } = await visit.control("survey.facing");
      const list = 44 * options.length, below = box.y + box.height;
      const top = list <= phone.height - below ? below : Math.max(8, box.y - list);
      await visit.page.touchscreen.tap(box.x + box.width / 2, top + 44 * 2.5);
      visit.taps++;
      await visit.rest();
      assert.ok(visit.taps <= MOST_TAPS, `${visit.taps} taps`);
      console.log(`  second window of a room: ${visit.taps} taps`);
      const after = JSON.parse(await visit.savedFile());
      assert.equal(after.openings.length, before.openings.length + 1);
      const [first, second] = after.openings.filter((one) => one.room_name === "Bedroom");
      assert.ok(second, "the copy is in the same room");
      assert.notEqual(second.name, first.name);
      assert.ok(Math.abs(second.today.width_m - 0.6096) < 1e-6);
      assert.ok(Math.abs(second.today.height_m - 1.016) < 1e-6);
      assert.notEqual(second.today.facing, first.today.facing);
      assert.equal(second.today.frame, first.today.frame);
      assert.deepEqual(second.photos, []);
    },
  },
  {
    name: "a photograph is turned upright, made small, kept, saved with the house and opened elsewhere",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await openChosen(visit);
      const original = await cameraPicture(visit);
      assert.ok(original.includes("Exif"), "the camera's picture tells its place");
      await addPhoto(visit, original);
      const house = JSON.parse(await visit.savedFile());
      const [photo] = house.openings[0].photos;
      assert.match(photo.id, /^[0-9a-f]{16}$/);
      const picture = house.pictures[photo.id];
      assert.match(picture, /^data:image\/jpeg;base64,/);
      const kept = Buffer.from(picture.split(",")[1], "base64");
      assert.ok(!kept.includes("Exif"), "nothing of the place is left");
      await visit.set(`photo.${photo.id}.words`, "stain under the sill");
      const size = await visit.evaluate(async (picture) => {
        const image = new Image();
        image.src = picture;
        await image.decode();
        return [image.naturalWidth, image.naturalHeight];
      }, picture);
      assert.deepEqual(size, [683, LONGEST_PX], "upright and small");
      // Upright: what lay left is on top.
      const seen = await shown(visit);
      assert.ok(seen.top[0] > 200 && seen.top[2] < 60, `red on top: ${seen.top}`);
      assert.ok(seen.bottom[2] > 200, `blue below: ${seen.bottom}`);
      assert.equal(seen.alt, "stain under the sill");
      await visit.reload();
      await openChosen(visit);
      assert.equal((await shown(visit)).id, photo.id, "kept between visits");
      await visit.evaluate(dropPhotos);
      await visit.reload();
      await openChosen(visit);
      assert.equal((await shown(visit)).id, photo.id, "back from its second copy");
      assert.deepEqual(await keptPhotos(visit), [photo.id]);
      const file = await visit.savedFile();
      const other = await Visit.start(visit.browser, visit.server, phone); // a browser of its own
      await other.openFile(file);
      await openChosen(other);
      assert.equal((await shown(other)).id, photo.id, "there elsewhere");
      assert.deepEqual(JSON.parse(await other.savedFile()), JSON.parse(file));
      await other.openFile(file.replace('"place"', '"place":"","place"'));
      const told = await other.evaluate(() => document.querySelector("[data-id='message']").dataset.words);
      assert.match(told, /nothing was changed.*\/place: is there twice in one object/);
      await other.close();
    },
  },
  {
    name: "a photograph opens larger, is removed and given back; a link has none",
    browsers: ["chromium"],
    async run(visit) {
      await openChosen(visit);
      await addPhoto(visit, await cameraPicture(visit));
      const { id } = await shown(visit);
      await visit.press(`photo.${id}`);
      const large = await visit.evaluate(() => {
        const image = document.querySelector("dialog[open] img");
        return image && image.getBoundingClientRect().height;
      });
      assert.ok(large > 400, `seen large: ${large}`);
      await visit.page.getByRole("button", { name: "Close" }).click();
      await visit.until(() => !document.querySelector("dialog"), null, "it to be closed");
      await visit.press(`photo.${id}.remove`);
      assert.equal(await visit.control(`photo.${id}`), null);
      await visit.press("menu.undo");
      assert.equal((await shown(visit)).id, id, "undo gives it back, with its picture");

      await changing(visit, () => visit.press(`photo.${id}.remove`));
      await changing(visit, () => visit.set("survey.room", "Attic"));
      assert.deepEqual(await keptPhotos(visit), [id], "undo may want it");
      await visit.reload();
      await visit.rest();
      assert.deepEqual(await keptPhotos(visit), [], "nobody can have it back any more");
    },
  },
  {
    name: "photographs of houses that are gone for good go too; what any text or undo still has stays",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await openChosen(visit);
      await changing(visit, async () => addPhoto(visit, await plainPicture(visit, "#0a0")));
      const { id: shared } = await shown(visit);
      await visit.press("library.duplicate");
      await changing(visit, async () => addPhoto(visit, await plainPicture(visit, "#a0a")));
      assert.equal((await keptPhotos(visit)).length, 2);
      await visit.press("library.delete");
      assert.equal((await keptPhotos(visit)).length, 2, "the trash has both");
      await changing(visit, () => visit.press(`photo.${shared}.remove`));
      await emptyTrash(visit);
      assert.deepEqual(await keptPhotos(visit), [shared], "the generation before has it");

      await changing(visit, () => visit.press("menu.undo"));
      await visit.press("library.duplicate");
      await visit.press("library.delete");
      await changing(visit, () => visit.press(`photo.${shared}.remove`));
      await changing(visit, () => visit.set("survey.room", "Attic"));
      assert.deepEqual(await keptPhotos(visit), [shared], "the trash has it");
      await emptyTrash(visit);
      assert.deepEqual(await keptPhotos(visit), []);
      await visit.press("menu.undo");
      await visit.press("menu.undo");
      assert.equal((await shown(visit)).id, shared);
      await visit.reload();
      await openChosen(visit);
      assert.equal((await shown(visit)).id, shared, "undo gave it back, with its picture");
    },
  },
  {
    name: "what is no picture is refused in words; a house without photographs is saved as it was",
    browsers: ["chromium"],
    async run(visit) {
      await openChosen(visit);
      await addPhoto(visit, Buffer.from("no picture at all"), "notes.jpg");
      const words = await visit.evaluate(() => document.querySelector("#notice p").textContent);
      assert.match(words, /notes\.jpg/);
      const house = JSON.parse(await visit.savedFile());
      assert.deepEqual(house.openings[0].photos, []);
      assert.equal(house.pictures, undefined);
    },
  },
];
