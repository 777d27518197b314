// SPDX-License-Identifier: MIT
// The three browsers behind one small face: what a test needs of a page, however it is driven.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createServer } from "node:net";

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

/** Chromium on a profile that stays, as a process in a group of its own: to be killed. */
export async function chromiumOnProfile(userDataDir) {
  const { default: puppeteer } = await import("puppeteer-core");
  return puppeteer.launch({
    executablePath: firstThere("/usr/bin/chromium", "/usr/bin/chromium-browser"),
    userDataDir,
    args: [...chromiumFlags, "--force-prefers-reduced-motion"],
  });
}

/** Firefox needs a display for WebGL; it cannot be told light or dark, the page's own choice can. */
async function launchFirefox({ prefs = {} } = {}) {
  const { default: puppeteer } = await import("puppeteer-core");
  const browser = await puppeteer.launch({
    browser: "firefox",
    executablePath: firstThere("/usr/bin/firefox-esr", "/usr/bin/firefox"),
    headless: false,
    extraPrefsFirefox: { ...firefoxPrefs, ...prefs },
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

function freePort() {
  return new Promise((done) => {
    const probe = createServer().listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });
}

/** What Visit needs of a page. WebKit's driver tells neither console nor requests. */
function webkitPage(driver) {
  const inPage = (work) => `const [given, done] = arguments;
    Promise.resolve().then(() => (${work})(given))
      .then((value) => done({ value }), (error) => done({ error: String(error) }));`;
  return {
    on() {},
    goto: (url) => driver.get(url),
    reload: () => driver.navigate().refresh(),
    async evaluate(work, given = null) {
      const { value, error } = await driver.executeAsyncScript(inPage(work), given);
      if (error) throw new Error(error);
      return value;
    },
    screenshot: async () => Buffer.from(await driver.takeScreenshot(), "base64"),
  };
}

/** WebKitGTK's own small browser, by its driver; needs a display. Each page is a new session. */
async function launchWebkit() {
  const { Builder, Capabilities } = await import("selenium-webdriver");
  const port = await freePort();
  const service = spawn("WebKitWebDriver", [`--port=${port}`], { stdio: "ignore" });
  const binary = firstThere(...["4.1", "4.0", "6.0"].map((version) =>
    `/usr/lib/${process.arch === "arm64" ? "aarch64" : "x86_64"}-linux-gnu/webkit2gtk-${version}/MiniBrowser`));
  const wanted = new Capabilities({
    browserName: "MiniBrowser",
    "webkitgtk:browserOptions": { binary, args: ["--automation"] },
  });
  return {
    name: "webkit",
    async newPage({ width, height }) {
      const driver = await new Builder().usingServer(`http://127.0.0.1:${port}`)
        .withCapabilities(wanted).build();
      await driver.manage().setTimeouts({ script: 60_000 });
      await driver.manage().window().setRect({ width, height, x: 0, y: 0 });
      return { page: webkitPage(driver), close: () => driver.quit() };
    },
    async close() {
      service.kill();
    },
  };
}

const launchers = { chromium: launchChromium, firefox: launchFirefox, webkit: launchWebkit };

export function launch(name, options) {
  return launchers[name](options);
}
