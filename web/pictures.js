// SPDX-License-Identifier: MIT
// Pictures for a report: the program draws each into a buffer of its size, and the page gets its pixels.
// Comes with the second part of the program. What crosses from it is explained in src/app/page.hpp.

/// Of what comes late with this: it must belong to what is here (site.py fills it in).
export const MARK = "__LATER_MARK__";

export class Pictures {
  constructor(gl, tell) {
    Object.assign(this, { gl, tell });
  }

  /// Whether what the program says of a report is about a picture; then it is done.
  takes(said) {
    if (said.length === 2) this.begin(...said);
    else if (said.length === 3) this.end(...said);
    else return false;
    return true;
  }

  begin(width, height) {
    const { gl } = this;
    this.frame = gl.createFramebuffer();
    this.paper = gl.createRenderbuffer();
    gl.bindRenderbuffer(gl.RENDERBUFFER, this.paper);
    gl.renderbufferStorage(gl.RENDERBUFFER, gl.RGBA8, width, height);
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.frame);
    gl.framebufferRenderbuffer(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.RENDERBUFFER, this.paper);
  }

  end(width, height, number) {
    const { gl } = this;
    const image = new ImageData(width, height), row = 4 * width;
    const read = new Uint8Array(image.data.length);
    gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, read);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.deleteFramebuffer(this.frame);
    gl.deleteRenderbuffer(this.paper);
    for (let y = 0; y < height; y++) { // GL counts from below
      image.data.set(read.subarray((height - 1 - y) * row, (height - y) * row), y * row);
    }
    this.tell("picture", number, image);
  }
}
