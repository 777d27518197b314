// SPDX-License-Identifier: MIT
// How large the canvas is: in CSS px, in device px, beside a phone's notch and above its keyboard.

const motion = matchMedia("(prefers-reduced-motion: reduce)");

export class CanvasLayout {
  constructor(stage, canvas) {
    this.stage = stage;
    this.canvas = canvas;
    this.changed = () => {};
    this.device = { width: 0, height: 0 };
    this.observe();
    this.watchRatio();
    window.visualViewport?.addEventListener("resize", () => this.followViewport());
    window.visualViewport?.addEventListener("scroll", () => this.followViewport());
    addEventListener("resize", () => this.remeasure());
    motion.addEventListener("change", () => this.changed());
    this.readSafeArea();
    this.measure();
  }

  observe() {
    const observer = new ResizeObserver((entries) => {
      this.measure(entries[entries.length - 1]);
      this.readSafeArea();
      this.changed();
    });
    try {
      observer.observe(this.canvas, { box: "device-pixel-content-box" });
    } catch {
      observer.observe(this.canvas); // Safari knows no such box
    }
  }

  /// Without WebGL there is no canvas to see; the screen is thought as large as the window.
  get hidden() {
    return this.canvas.clientWidth === 0;
  }

  /// Device px as the browser lays them out where it tells, else rounded. Where the two differ by
  /// more than rounding the ratio is an emulated one, which the layout does not know.
  measure(entry) {
    this.ratio = devicePixelRatio;
    const exact = entry?.devicePixelContentBoxSize?.[0];
    const box = this.hidden ? { width: innerWidth, height: innerHeight }
      : this.canvas.getBoundingClientRect();
    const fit = (size, told) => {
      const rounded = Math.round(size * this.ratio);
      return Math.abs(told - rounded) <= 1 ? told : rounded;
    };
    this.device = {
      width: fit(box.width, exact?.inlineSize),
      height: fit(box.height, exact?.blockSize),
    };
  }

  /// Another monitor or the browser's zoom; where the box above is unknown nothing else tells.
  watchRatio() {
    const media = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    media.addEventListener("change", () => {
      this.watchRatio();
      this.remeasure();
    }, { once: true });
  }

  remeasure() {
    this.measure();
    this.readSafeArea();
    this.changed();
  }

  /// iOS lays its keyboard over the page and shrinks only the visual viewport.
  followViewport() {
    const viewport = window.visualViewport;
    const covered = viewport.scale < 1.01 && innerHeight - viewport.height > 80;
    this.stage.style.height = covered ? `${viewport.height}px` : "";
    this.stage.style.top = covered ? `${viewport.offsetTop}px` : "";
  }

  readSafeArea() {
    const style = getComputedStyle(document.getElementById("safe"));
    this.safe = [style.paddingTop, style.paddingRight, style.paddingBottom, style.paddingLeft]
      .map(parseFloat);
  }

  /// In the order of app::page::look(), save what is kept between visits.
  look(dark) {
    if (this.ratio !== devicePixelRatio) this.measure();
    const { width, height } = this.device;
    return [width / this.ratio, height / this.ratio, this.ratio, width, height, ...this.safe,
      dark ? 1 : 0, motion.matches ? 1 : 0, document.hidden ? 1 : 0];
  }
}
