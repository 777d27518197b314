// SPDX-License-Identifier: MIT
// The two browsers behind one small face: what a test needs of a page, however it is driven.
import { existsSync } from "node:fs";

const chromiumFlags = [
  "--no-sandbox", // the tests may run as root, the page is our own
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-default-apps",
  "--disable-sync",
  "--no-first-run",
];

const firefoxPrefs = {
  "app.update.enabled": false,
  "browser.region.network.url": "",
  "browser.safebrowsing.downloads.remote.enabled": false,
  "browser.safebrowsing.malware.enabled": false,
  "browser.safebrowsing.phishing.enabled": false,
  "browser.search.update": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "dom.push.connection.enabled": false,
  "extensions.blocklist.enabled": false,
  "extensions.getAddons.cache.enabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "services.settings.server": "",
  "toolkit.telemetry.enabled": false,
  "ui.prefersReducedMotion": 1, // else each step waits for the creeping air to settle
  "webgl.force-enabled": true,
};

function firstThere(...paths) {
  const path = paths.find(existsSync);
  if (!path) throw new Error(`none of ${paths.join(", ")} is there`);
  return path;
}

/** Chromium: newPage({ width, height, dpr, dark, touch, moving }) answers { page, close }. */
async function launchChromium({ flags = [] } = {}) {
  const { chromium } = await import("playwright-core");
  const browser = await chromium.launch({
    executablePath: firstThere("/usr/bin/chromium", "/usr/bin/chromium-browser"),
    args: [...chromiumFlags, ...flags],
  });
  return {
    name: "chromium",
    async newPage({ width, height, dpr, dark, touch, moving }) {
      const context = await browser.newContext({
        viewport: { width, height },
        deviceScaleFactor: dpr,
        colorScheme: dark ? "dark" : "light",
        reducedMotion: moving ? "no-preference" : "reduce",
        hasTouch: touch,
        isMobile: touch,
        acceptDownloads: true,
      });
      return { page: await context.newPage(), close: () => context.close() };
    },
    close: () => browser.close(),
  };
}

/** Firefox needs a display for WebGL; it cannot be told light or dark, the page's own choice can. */
async function launchFirefox() {
  const { default: puppeteer } = await import("puppeteer-core");
  const browser = await puppeteer.launch({
    browser: "firefox",
    executablePath: firstThere("/usr/bin/firefox-esr", "/usr/bin/firefox"),
    headless: false,
    extraPrefsFirefox: firefoxPrefs,
    args: ["--width=1440", "--height=1000"],
  });
  return {
    name: "firefox",
    async newPage({ width, height, dpr }) {
      const context = await browser.createBrowserContext();
      const page = await context.newPage();
      await page.setViewport({ width, height, deviceScaleFactor: dpr });
      return { page, close: () => context.close() };
    },
    close: () => browser.close(),
  };
}

export function launch(name, options) {
  return name === "firefox" ? launchFirefox(options) : launchChromium(options);
}
