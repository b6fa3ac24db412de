// Keeps a copy of Python's memory, made on this device after the first start, so that later starts
// need not import everything anew.
//
// The copy stands in the release's own cache, beside the files that sw.js keeps there: the next
// release deletes it with them. It is for this browser only, in this version, and never leaves it.
// Losing it costs time and nothing else. It is made by a Python of its own that has seen nothing
// but QUESTION, so nothing that was typed is in it. Hash seeds and the state of `random` are frozen
// in it, which does no harm: nothing here is secret, and the core draws no random numbers.

const SCOPE = new URL('../', import.meta.url).href;
const RELEASE = new URL('./', import.meta.url).href.slice(SCOPE.length, -1);
const CACHE = `sweepsheet ${SCOPE} ${RELEASE}`; // as sw.js names it
const PLACE = new URL('python/snapshot', import.meta.url).href;
const MADE_BY = 'Made-By';
const ANSWER = 'Answer-SHA-256';

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

/** @typedef {{bytes: Promise<Uint8Array>, fits: (answer: string) => Promise<boolean>}} Snapshot */

/** @param {string} text */
async function hashOf(text) {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return new Uint8Array(bytes).join(' ');
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
  const unpacked = /** @type {ReadableStream} */ (kept.body).pipeThrough(
    new DecompressionStream('gzip'),
  );
  return {
    bytes: new Response(unpacked).arrayBuffer().then((buffer) => new Uint8Array(buffer)),
    fits: async (answer) => kept.headers.get(ANSWER) === (await hashOf(answer)),
  };
}

/** @param {Uint8Array} bytes @param {string} answer to QUESTION, by the Python it shows */
export async function keepSnapshot(bytes, answer) {
  const packed = new Blob([/** @type {Uint8Array<ArrayBuffer>} */ (bytes)]).stream().pipeThrough(new CompressionStream('gzip'));
  // As one piece, or a part of it could be kept when the storage is full.
  const body = await new Response(packed).blob();
  const headers = { [MADE_BY]: navigator.userAgent, [ANSWER]: await hashOf(answer) };
  await (await openCache())?.put(PLACE, new Response(body, { headers }));
}

/** Forget a snapshot that did not do. */
export async function dropSnapshot() {
  await (await openCache())?.delete(PLACE);
}
