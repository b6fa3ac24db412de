// Makes a picture small, and drawn anew from its pixels: what a camera writes beside them, such as where
// it was, is left behind.

import { LARGEST_PICTURE } from '../common/core-values.js';
import { say } from '../common/words.js';

/** The long side in pixels, and how true it is; the first that is small enough will do. */
const TRIES = /** @type {const} */ ([
  [1024, 0.7],
  [1024, 0.5],
  [768, 0.5],
  [512, 0.4],
]);

// The segments of a JPEG by their second byte: ITU-T T.81, table B.1.
const START_OF_SCAN = 0xda;
/** Without these nobody can draw it: frames, Huffman tables, quantization, restart interval. */
const NEEDED = [0xc0, 0xc1, 0xc2, 0xc4, 0xdb, 0xdd];

/** A JPEG without any segment that it can be drawn without. @param {Uint8Array<ArrayBuffer>} bytes */
export function bare(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint16(0) !== 0xffd8) throw new TypeError('JPEG');
  const parts = [bytes.subarray(0, 2)];
  for (let at = 2; ; ) {
    const kind = view.getUint8(at + 1);
    if (view.getUint8(at) !== 0xff) throw new TypeError('JPEG');
    if (kind === START_OF_SCAN) {
      parts.push(bytes.subarray(at));
      break;
    }
    const end = at + 2 + view.getUint16(at + 2);
    if (NEEDED.includes(kind)) parts.push(bytes.subarray(at, end));
    at = end;
  }
  const made = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    made.set(part, at);
    at += part.length;
  }
  return made;
}

/** The right way up, as the camera was held. @param {Blob} file */
async function decoded(file) {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' }).catch((error) => {
      // Older browsers do so unasked, and do not know the word.
      if (error instanceof TypeError) return createImageBitmap(file);
      throw error;
    });
  } catch (error) {
    throw new Error(say('photos.not_a_picture', { why: String(error) }));
  }
}

/** Its pixels, no larger than so many along the long side. @param {{ width: number, height: number }} picture
 * @param {number} side */
export function drawn({ width, height }, side) {
  const scale = Math.min(1, side / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const pen = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
  pen.imageSmoothingQuality = 'high';
  pen.fillStyle = '#fff'; // behind what can be seen through
  pen.fillRect(0, 0, canvas.width, canvas.height);
  return { canvas, pen };
}

/** A small JPEG of a picture. @param {Blob} file @returns {Promise<Uint8Array<ArrayBuffer>>} */
export async function shrink(file) {
  const picture = await decoded(file);
  try {
    return await jpegOf(picture);
  } finally {
    picture.close();
  }
}

/** @param {ImageBitmap | HTMLCanvasElement} picture @returns {Promise<Uint8Array<ArrayBuffer>>} */
export async function jpegOf(picture) {
  for (const [side, quality] of TRIES) {
    const { canvas, pen } = drawn(picture, side);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
    const jpeg = bare(new Uint8Array(await blob.arrayBuffer()));
    if (jpeg.length <= LARGEST_PICTURE) return jpeg;
  }
  throw new Error(say('photos.too_large'));
}
