// SPDX-License-Identifier: MIT
// The report: as a page for eye and ear, and printed to PDF on both sizes of paper. What was printed
// is read back by poppler; its pages are left in build/shots, in colour and in grey. Look at them.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { launch } from "../browsers.mjs";
import { Visit, phone } from "../visit.mjs";

const shots = fileURLToPath(new URL("../../../build/shots/", import.meta.url));
const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const LEAST_DPI = 150; // below that letters in a picture are ragged on paper
const LEAST_CONTRAST = 3; // of lines, WCAG 1.4.11
const papers = ["Letter", "A4"];

const plain = (text) => text.normalize("NFKC").replace(/\s+/g, " ").trimStart();

async function openReport(visit, id) {
  await visit.show("house");
  await visit.press(id);
  await visit.until(() => document.getElementById("report")
    && [...document.images].every((one) => one.complete && one.naturalWidth > 0), null, "the report");
}

function print(visit, paper) {
  mkdirSync(shots, { recursive: true });
  const path = `${shots}report-${paper}.pdf`;
  return visit.page.pdf({ path, format: paper, printBackground: false }).then(() => path);
}

/** The text of each page. */
function textOf(pdf) {
  return execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }).split("\f").slice(0, -1);
}

/** Of each picture in the PDF, how many px an inch it has on paper. */
function sharpness(pdf) {
  return execFileSync("pdfimages", ["-list", pdf], { encoding: "utf8" }).trim().split("\n").slice(2)
    .map((line) => line.trim().split(/\s+/))
    .filter((cells) => cells[2] === "image")
    .map((cells) => Number(cells[12]));
}

/** In grey, how the dew-point line of the first picture stands out from what lies on either side. */
function hingeContrast(visit) {
  return visit.evaluate(() => {
    const image = document.querySelector("#report img");
    const { naturalWidth: w, naturalHeight: h } = image;
    const context = new OffscreenCanvas(w, h).getContext("2d");
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, w, h);
    const linear = (v) => ((v / 255 + 0.055) / 1.055) ** 2.4;
    const light = (k) => 0.2126 * linear(data[k]) + 0.7152 * linear(data[k + 1]) + 0.0722 * linear(data[k + 2]);
    const dewInk = (k) => Math.hypot(data[k] - 5, data[k + 1] - 76, data[k + 2] - 102) < 12;
    const contrasts = [];
    for (let y = 0; y < h; y++) {
      for (let x = 20; x < w - 20; x++) {
        const k = 4 * (y * w + x);
        if (!dewInk(k) || dewInk(k - 4)) continue;
        let end = x;
        while (end < w - 20 && dewInk(4 * (y * w + end))) end++;
        if (end - x > 20) continue; // along the line
        const line = light(k + 4 * Math.floor((end - x) / 2));
        for (const side of [k - 32, 4 * (y * w + end) + 28]) {
          contrasts.push((Math.max(light(side), line) + 0.05) / (Math.min(light(side), line) + 0.05));
        }
        x = end;
      }
    }
    contrasts.sort((a, b) => a - b);
    return { found: contrasts.length, low: contrasts[Math.floor(contrasts.length / 4)] };
  });
}

export const cases = [
  {
    name: "report: opens over the screen, tells itself, and leaves it as it was",
    browsers: ["chromium"],
    window: { dark: true },
    async run(visit) {
      await visit.show("house");
      await visit.focus("report.house");
      const before = await visit.picture();
      await openReport(visit, "report.house");
      const state = await visit.evaluate(() => ({
        focused: document.activeElement.textContent,
        inert: document.getElementById("stage").inert,
        paper: getComputedStyle(document.getElementById("paper")).backgroundColor,
        alts: [...document.querySelectorAll("#report img")].map((one) => one.alt),
        wide: document.getElementById("paper").scrollWidth <= innerWidth,
      }));
      assert.equal(state.focused, "Print");
      assert.ok(state.inert, "the screen rests");
      assert.equal(state.paper, "rgb(255, 255, 255)", "white in the dark as well");
      assert.ok(state.wide);
      assert.ok(state.alts.length >= 2 && state.alts.every((alt) => alt.length > 100), "pictures in words");
      await visit.evaluate(axeSource);
      const { violations } = await visit.evaluate(() => window.axe.run());
      assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), []);
      await visit.key("?"); // keys of the screen do nothing here
      await visit.key("Escape");
      assert.ok(await visit.evaluate(() => !document.getElementById("report")), "Escape closes it");
      assert.equal(await visit.focused(), "report.house", "the focus comes back");
      assert.deepEqual(await visit.picture(), before, "the canvas is as it was");
    },
  },
  {
    name: "report: printed on Letter and A4 it holds what the screen says",
    browsers: ["chromium"],
    async run(visit) {
      const results = await visit.results();
      const verdict = await visit.verdict();
      await openReport(visit, "report.house");
      const sides = await visit.evaluate(() => [...document.querySelectorAll("#report section")]
        .map((one) => one.querySelector("h1, h2").textContent));
      for (const paper of papers) {
        const pdf = await print(visit, paper);
        const pages = textOf(pdf);
        // A side that is all of one page begins it; particulars with many cautions take a second one.
        const firsts = sides.map((side) =>
          pages.findIndex((text) => plain(text).startsWith(plain(side).slice(0, 30))));
        assert.deepEqual(firsts, [...firsts].sort((a, b) => a - b), `${paper}: ${firsts}`);
        assert.equal(firsts[0], 0, "the house first");
        sides.forEach((side, i) => {
          const taken = (firsts[i + 1] ?? pages.length) - firsts[i];
          const most = /particulars/.test(side) ? 2 : 1;
          assert.ok(taken >= 1 && taken <= most, `${paper}: ${side} takes ${taken} pages`);
        });
        const all = plain(pages.join(" "));
        for (const figure of Object.values(results)) {
          for (const number of figure.match(/[−$]?\d[\d.]*/g)) assert.ok(all.includes(number), `${number} of ${figure}`);
        }
        assert.ok(all.includes(plain(verdict).replace(/^Verdict: /, "").slice(0, 40)), "the verdict");
        assert.ok(pages.slice(1).filter((text) => /Take care/.test(text)).length >= 1, "cautions");
        const dpi = sharpness(pdf);
        assert.equal(dpi.length, sides.length - 1, "two pictures an opening");
        assert.ok(Math.min(...dpi) >= LEAST_DPI, `${paper}: ${dpi}`);
        const name = pdf.replace(".pdf", "");
        execFileSync("pdftoppm", ["-r", "110", "-png", pdf, name]);
        execFileSync("pdftoppm", ["-r", "110", "-gray", "-png", pdf, `${name}-grey`]);
      }
      const { found, low } = await hingeContrast(visit);
      assert.ok(found > 50, `the dew-point line is there: ${found}`);
      assert.ok(low >= LEAST_CONTRAST, `in grey it stands out: ${low}`);
    },
  },
  {
    name: "report: of one opening, on a phone, no wider than the screen",
    browsers: ["chromium"],
    window: phone,
    async run(visit) {
      await openReport(visit, "report.opening");
      const state = await visit.evaluate(() => ({
        sides: document.querySelectorAll("#report section").length,
        width: document.getElementById("paper").scrollWidth,
        small: [...document.querySelectorAll("#paper button")].filter((one) => one.offsetHeight < 44).length,
      }));
      assert.deepEqual(state, { sides: 2, width: phone.width, small: 0 });
      await visit.evaluate(() => document.querySelector("#paper button:last-child").click());
      await visit.rest();
      assert.ok(await visit.evaluate(() => !document.getElementById("report")));
    },
  },
  {
    name: "report: without WebGL its pictures are told in words",
    bare: true,
    browsers: ["chromium"],
    async run({ server }) {
      const browser = await launch("chromium", { flags: ["--disable-gpu", "--disable-software-rasterizer"] });
      const visit = await Visit.start(browser, server);
      visit.expected = /WebGL|webgl/;
      await openReport(visit, "report.opening");
      const told = await visit.evaluate(() => [...document.querySelectorAll("#report figure > p")]
        .map((one) => one.textContent));
      assert.equal(told.length, 2);
      assert.match(told[0], /^Cut at the /);
      await visit.close();
      await browser.close();
    },
  },
  {
    name: "report: the single file has it too",
    bare: true,
    browsers: ["chromium"],
    async run({ browser, site }) {
      const url = String(pathToFileURL(join(dirname(resolve(site)), "shimlight.html")));
      const visit = await Visit.start(browser, { url });
      await openReport(visit, "report.opening");
      const white = await visit.evaluate(() => getComputedStyle(document.getElementById("paper")).backgroundColor);
      assert.equal(white, "rgb(255, 255, 255)", "its style is there");
      visit.requests = [];
      await visit.close();
    },
  },
];
