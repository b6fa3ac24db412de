// A download that goes on where it broke off: the rest of the file is asked for, not all of it. It holds for
// files that never change, as those of a release.

import { waited } from './waited.js';

/** Waits before each try; ms. Then it is given up, unless the download has got on meanwhile. */
const WAITS = [0, 1000, 2000, 5000, 10000, 20000];

const PARTIAL = 206;
const PAST_THE_END = 416;

/** The bytes of a file, piece by piece.
 * @param {Response} response in which they have begun to come @param {string} address
 * @param {() => boolean | void} [onBreak] called at each break; true: it is never given up
 * @returns {AsyncGenerator<Uint8Array<ArrayBuffer>>} */
export async function* piecesOf(response, address, onBreak) {
  let come = 0;
  let tries = 0;
  let reader = readerOf(response);
  for (;;) {
    /** @type {ReadableStreamReadResult<Uint8Array<ArrayBuffer>>} */
    let piece;
    try {
      piece = await reader.read();
    } catch (error) {
      const isPatient = onBreak?.() === true;
      if (tries >= WAITS.length && !isPatient) throw error;
      await waited(WAITS[Math.min(tries, WAITS.length - 1)] ?? 0);
      tries += 1;
      // Where there is no rest yet, the broken one breaks again.
      reader = (await restOf(address, come)) ?? reader;
      continue;
    }
    if (piece.done) return;
    tries = 0;
    come += piece.value.byteLength;
    yield piece.value;
  }
}

/** @param {Response} response */
function readerOf(response) {
  return /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (response.body).getReader();
}

/** What comes behind so many bytes; null where it can't be had now. @param {string} address @param {number} come */
async function restOf(address, come) {
  try {
    const response = await fetch(address, { headers: { Range: `bytes=${come}-` }, cache: 'no-store' });
    const range = response.headers.get('Content-Range') ?? '';
    if (response.status === PARTIAL && range.startsWith(`bytes ${come}-`)) return readerOf(response);
    // All had come; only the end had not been told.
    if (response.status === PAST_THE_END && range === `bytes */${come}`) return readerOf(new Response(new Blob()));
    // A host that knows no ranges sends all of it again.
    if (response.status === 200) return readerOf(new Response(response.body?.pipeThrough(without(come))));
    return null;
  } catch {
    return null; // no signal yet
  }
}

/** Leaves out the first bytes. @param {number} bytes @returns {TransformStream<Uint8Array, Uint8Array>} */
function without(bytes) {
  let left = bytes;
  return new TransformStream({
    transform(chunk, controller) {
      const kept = chunk.subarray(Math.min(left, chunk.byteLength));
      left -= chunk.byteLength - kept.byteLength;
      if (kept.byteLength) controller.enqueue(kept);
    },
  });
}
