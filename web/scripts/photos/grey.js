// A kept picture as grey pixels, small enough to be handed to what reads a dial off it.

import { toBase64 } from './base64.js';
import { drawn } from './shrink.js';

/** Of a side, in pixels, at most. */
const SIDE = 240;

/** @typedef {{ grey: Uint8Array, width: number, height: number }} Grey row by row from the top, 0 is black */

/** The square in the middle, where the dial is: what is beside it would make the dial smaller.
 * @param {Uint8Array<ArrayBuffer>} jpeg @returns {Promise<Grey>} */
export async function greyOf(jpeg) {
  const picture = await createImageBitmap(new Blob([jpeg], { type: 'image/jpeg' }));
  const side = Math.min(picture.width, picture.height);
  const { canvas, pen } = drawn({ width: side, height: side }, SIDE);
  const { width, height } = canvas;
  const [left, top] = [(picture.width - side) / 2, (picture.height - side) / 2];
  pen.drawImage(picture, left, top, side, side, 0, 0, width, height);
  picture.close();
  return { grey: greyIn(pen), width, height };
}

/** As the core is asked about it. @param {Grey} picture */
export function asAsked({ grey, width, height }) {
  return { grey: toBase64(grey), width, height };
}

/** What is drawn, in grey. @param {CanvasRenderingContext2D} pen */
export function greyIn(pen) {
  const { width, height } = pen.canvas;
  const { data } = pen.getImageData(0, 0, width, height);
  const grey = new Uint8Array(width * height);
  const part = (/** @type {number} */ at) => /** @type {number} */ (data[at]);
  // Luma of ITU-R BT.601, as a JPEG itself has it, in 256ths.
  for (let i = 0, at = 0; i < grey.length; i += 1, at += 4) {
    grey[i] = (77 * part(at) + 150 * part(at + 1) + 29 * part(at + 2)) >> 8;
  }
  return grey;
}
