// SPDX-License-Identifier: MIT
// Mouse, finger, pen and wheel on the stage, in CSS px of the canvas.

const KINDS = { mouse: 0, touch: 1, pen: 2 };
const BUTTONS = [0, 2, 1]; // DOM: left, middle, right → ImGui: left, right, middle
const TAP_PX = 8; // a press that moved farther is no tap
const WHEEL_LINE_PX = 100; // one notch of most wheels
const ZOOM_PER_PX = 0.008; // log2 of the factor per px of a ctrl+wheel
const ZOOM_MOST = 0.5; // per wheel event

// Moves as they come. The other kind waits for the page's next picture, and the page draws none.
const MOVES = "onpointerrawupdate" in window ? "pointerrawupdate" : "pointermove";

export class Pointer {
  constructor(stage, canvas, program, mirror) {
    Object.assign(this, { stage, canvas, program, mirror });
    this.fingers = new Map(); // pointerId → [x, y]
    this.pinching = false;
    this.start = [0, 0];
    const on = (name, take, options) => stage.addEventListener(name, take.bind(this), options);
    on("pointerdown", this.down);
    on(MOVES, this.move);
    on("pointerup", this.up);
    on("pointercancel", this.cancel);
    on("pointerleave", this.leave);
    on("click", this.click);
    on("contextmenu", (event) => this.foreign(event) || event.preventDefault());
    on("wheel", this.wheel, { passive: false });
    on("gesturestart", this.gesture, { passive: false });
    on("gesturechange", this.gesture, { passive: false });
  }

  place(event) {
    const box = this.canvas.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  /// A field that is being typed in keeps its own events.
  foreign(event) {
    return event.target instanceof HTMLInputElement;
  }

  down(event) {
    if (this.foreign(event)) return;
    const at = this.place(event);
    this.stage.setPointerCapture?.(event.pointerId);
    if (event.pointerType === "touch") {
      this.fingers.set(event.pointerId, at);
      if (this.fingers.size === 2) return this.startPinch();
      if (this.fingers.size > 2 || this.pinching) return;
    }
    this.start = at;
    this.send(at, BUTTONS[event.button] ?? 0, 1, event);
  }

  move(event) {
    if (this.foreign(event) && event.buttons === 0) return;
    const at = this.place(event);
    if (this.fingers.has(event.pointerId)) this.fingers.set(event.pointerId, at);
    if (this.pinching) return this.pinch();
    this.send(at, -1, 0, event);
  }

  up(event) {
    const finger = this.fingers.delete(event.pointerId);
    if (this.pinching) return this.endPinch();
    if (this.foreign(event)) return;
    this.send(this.place(event), BUTTONS[event.button] ?? 0, 0, event);
    if (finger) this.program.tell("pointer_gone");
  }

  cancel(event) {
    this.fingers.delete(event.pointerId);
    if (this.pinching) this.endPinch();
    else this.program.tell("pointer_cancel");
  }

  leave(event) {
    if (event.pointerType !== "touch") this.program.tell("pointer_gone");
  }

  send([x, y], button, down, event) {
    this.program.tell("pointer", x, y, button, down, KINDS[event.pointerType] ?? 0);
  }

  /// The browser's own tap: the gesture in which keyboards and file dialogs may open.
  click(event) {
    if (this.foreign(event) || event.detail === 0) return; // 0: not by pointer
    const at = this.place(event);
    const moved = Math.hypot(at[0] - this.start[0], at[1] - this.start[1]);
    if (moved < TAP_PX) this.mirror.tapped(...at);
  }

  pair() {
    const [a, b] = [...this.fingers.values()];
    return {
      centre: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      apart: Math.max(Math.hypot(a[0] - b[0], a[1] - b[1]), 1),
    };
  }

  /// The first finger had pressed something: that press is taken back.
  startPinch() {
    this.program.tell("pointer_cancel");
    this.pinching = true;
    this.last = this.pair();
    this.program.tell("pinch", 0, ...this.last.centre, 0, 0, 1);
  }

  pinch() {
    if (this.fingers.size < 2) return;
    const now = this.pair(), last = this.last;
    this.last = now;
    this.program.tell("pinch", Math.log2(now.apart / last.apart), ...now.centre,
      now.centre[0] - last.centre[0], now.centre[1] - last.centre[1], 1);
  }

  /// Over when the last finger is lifted, so that the one that stays does not start to drag.
  endPinch() {
    this.pinching = this.fingers.size > 0;
    if (this.fingers.size < 2) this.program.tell("pinch", 0, ...this.last.centre, 0, 0, 0);
  }

  wheel(event) {
    const at = this.place(event);
    const pixels = event.deltaMode === 1 ? 33 : event.deltaMode === 2 ? 400 : 1;
    if (event.ctrlKey) {
      if (!this.mirror.onPicture(...at)) return; // the browser's zoom
      const zoom = -event.deltaY * pixels * ZOOM_PER_PX;
      this.program.tell("pinch", Math.min(Math.max(zoom, -ZOOM_MOST), ZOOM_MOST), ...at, 0, 0, 0);
    } else {
      this.program.tell("wheel", -event.deltaX * pixels / WHEEL_LINE_PX,
        -event.deltaY * pixels / WHEEL_LINE_PX);
    }
    event.preventDefault();
  }

  /// Safari's trackpad pinch.
  gesture(event) {
    const at = this.place(event);
    if (this.fingers.size > 0 || !this.mirror.onPicture(...at)) return;
    event.preventDefault();
    if (event.type === "gesturestart") this.scale = 1;
    this.program.tell("pinch", Math.log2(event.scale / this.scale), ...at, 0, 0, 0);
    this.scale = event.scale;
  }
}
