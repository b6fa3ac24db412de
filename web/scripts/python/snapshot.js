// Keeps a copy of Python's memory, made on this device after the first start, so that later starts
// need not import everything anew.
//
// The copy stands in the release's own cache, beside the files that sw.js keeps there: the next
// release deletes it with them. It is for this browser only, in this version, and never leaves it.
// Losing it costs time and nothing else. It is made by a Python of its own that has seen nothing
// but QUESTION, so nothing that was typed is in it. Hash seeds and the state of `random` are frozen
// in it, which does no harm: nothing here is secret, and the core draws its random
// numbers from a seed that is given to it.

import { cacheOf } from '../common/release-cache.js';

const CACHE = cacheOf(new URL('./', import.meta.url));
const PLACE = new URL('python/snapshot', import.meta.url).href;
const MADE_BY = 'Made-By';
const ANSWER = 'Answer-SHA-256';
const SIZE = 'Memory-Size';
const PAGES = 'Memory-Pages';
const CHECKSUM = 'Pages-SHA-256';
// More than half of the memory is zeros. Only the pages of it that are not are kept, and those as they
// are: unpacking a compressed copy took longer than anything else in a later start.
const PAGE = 1 << 16;

/** A bore that is off and a face that is not square: the answer tells whether Python is sound. */
export const QUESTION = JSON.stringify({
  form: {
    positions: '12 3 6 9',
    'rounds.0.bore.sweeps.0.0': '0',
    'rounds.0.bore.sweeps.0.1': '3',
    'rounds.0.bore.sweeps.0.2': '-9',
    'rounds.0.bore.sweeps.0.3': '-12',
  },
});

/** `memory` is there at once, and as it was when `filled` is done; `fits` says whether it and the answer are right.
 * Pyodide holds on to `memory` though it has put it in its place: `letGo` gives its room back.
 * @typedef {{memory: Uint8Array, filled: Promise<void>, letGo: () => void, fits: (answer: string) => Promise<boolean>}} Snapshot */

/** @param {BufferSource} bytes */
async function hashOf(bytes) {
  return new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)).join(' ');
}

/** @param {string} text */
function hashOfText(text) {
  return hashOf(new TextEncoder().encode(text));
}

/** Where in the memory there is anything. @param {Uint8Array} memory */
function usedPages(memory) {
  const words = new Uint32Array(memory.buffer, memory.byteOffset, memory.byteLength >> 2);
  const pages = [];
  for (let page = 0; page * PAGE < memory.byteLength; page++) {
    const [from, to] = [page, page + 1].map((n) => (n * PAGE) >> 2);
    if (words.subarray(from, to).some((word) => word !== 0)) pages.push(page);
  }
  return pages;
}

/** Put the pages of a memory back in their places. @param {Uint8Array} memory @param {Uint8Array} pages
 * @param {Response} kept */
function fill(memory, pages, kept) {
  const places = kept.headers.get(PAGES)?.split(' ').map(Number) ?? [];
  places.forEach((page, i) => {
    memory.set(pages.subarray(i * PAGE, (i + 1) * PAGE), page * PAGE);
  });
}

/** Give a buffer's room back, whoever holds on to it. @param {ArrayBufferLike} buffer */
function giveAway(buffer) {
  // As a message that nobody gets: `structuredClone` is not there before Chromium 98.
  const { port1, port2 } = new MessageChannel();
  port2.close();
  port1.postMessage(null, [/** @type {ArrayBuffer} */ (buffer)]);
  port1.close();
}

/** The release's cache; null until it is kept for use without a signal. */
async function openCache() {
  const isKept = typeof caches === 'object' && (await caches.has(CACHE));
  return isKept ? caches.open(CACHE) : null;
}

/** Another version of the browser may lay out memory otherwise. @param {Response | undefined} kept */
function isOurs(kept) {
  return kept?.headers.get(MADE_BY) === navigator.userAgent;
}

/** Give the snapshot of this release made by this browser, or null. @returns {Promise<Snapshot | null>} */
export async function findSnapshot() {
  const kept = await (await openCache())?.match(PLACE);
  if (!kept || !isOurs(kept)) return null;
  const pages = kept.arrayBuffer().then((buffer) => new Uint8Array(buffer));
  const sum = pages.then(hashOf);
  const memory = new Uint8Array(Number(kept.headers.get(SIZE)));
  const filled = pages.then((all) => fill(memory, all, kept));
  for (const each of [sum, filled]) each.catch(() => undefined); // told where it is waited for
  return {
    memory,
    filled,
    letGo: () => giveAway(memory.buffer),
    fits: async (answer) =>
      (await sum) === kept.headers.get(CHECKSUM) && (await hashOfText(answer)) === kept.headers.get(ANSWER),
  };
}

/** @param {Uint8Array} memory @param {string} answer to QUESTION, by the Python it shows */
export async function keepSnapshot(memory, answer) {
  const used = usedPages(memory);
  // As one piece, or a part of it could be kept when the storage is full.
  const body = new Blob(used.map((page) => memory.slice(page * PAGE, (page + 1) * PAGE)));
  const headers = {
    [MADE_BY]: navigator.userAgent,
    [ANSWER]: await hashOfText(answer),
    [SIZE]: String(memory.byteLength),
    [PAGES]: used.join(' '),
    [CHECKSUM]: await hashOf(await body.arrayBuffer()),
  };
  await (await openCache())?.put(PLACE, new Response(body, { headers }));
}

/** Forget a snapshot that did not do. */
export async function dropSnapshot() {
  await (await openCache())?.delete(PLACE);
}
