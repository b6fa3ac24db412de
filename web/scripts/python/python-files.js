// Fetches Python's two big files. The page does so itself, since it is at work before its worker is; the
// worker gets the compiled code and the library handed over.

import { SIZES } from '../common/release.js';
import { piecesOf } from '../common/resumed.js';
import { say } from '../common/words.js';

/** @import { Files } from './worker.js' */
/** @typedef {{ code: Promise<Files['code']>, library: Promise<Files['library']> }} Coming */
/** @typedef {(loaded: number, total: number, isBroken: boolean) => void} OnProgress */
/** @typedef {{ onBytes: (bytes: number) => void, onBreak: () => void }} Watcher */

const FOLDER = new URL('./python/', import.meta.url).href;
const CODE = 'pyodide.asm.wasm';
const LIBRARY = 'library.wasm';
const WASM_TYPE = 'application/wasm';

/** A file that did not come. @param {{ name: string, status: number }} lost */
export function sayLost(lost) {
  return say('python.lost', lost);
}

/** @param {string} name */
async function open(name) {
  const response = await fetch(FOLDER + name);
  if (!response.ok) throw new Error(sayLost({ name, status: response.status }));
  return response;
}

/** Pass a download on, which goes on where it breaks off, for as long as the page is open; tell how much
 * has come. @param {Response} response @param {Watcher} watcher */
function watched(response, watcher) {
  const pieces = piecesOf(response, response.url, () => {
    watcher.onBreak();
    return true;
  });
  const body = new ReadableStream({
    async pull(controller) {
      const { done, value } = await pieces.next();
      if (done) return controller.close();
      watcher.onBytes(value.byteLength);
      controller.enqueue(value);
    },
  });
  return new Response(body, { headers: { 'Content-Type': WASM_TYPE } });
}

/** The code is compiled while it comes. @param {Response} response */
function compile(response) {
  const isTyped = response.headers.get('Content-Type') === WASM_TYPE;
  // A response from the cache is passed on as it is, or the browser could not keep the compiled code
  // with it. One from a host that sends the wrong type gets the right one.
  const typed = isTyped
    ? response
    : new Response(response.body, { headers: { 'Content-Type': WASM_TYPE } });
  return WebAssembly.compileStreaming(typed);
}

/**
 * Have both come, side by side.
 * @param {OnProgress | null} onProgress null: from the
 *   cache, where there is nothing to count, and counting would cost the browser its copy of the compiled code
 * @returns {Coming}
 */
export function fetchFiles(onProgress) {
  const total = [CODE, LIBRARY].reduce((sum, name) => sum + SIZES[`python/${name}`], 0);
  let loaded = 0;
  const watcher = onProgress && {
    onBytes: (/** @type {number} */ bytes) => onProgress((loaded += bytes), total, false),
    onBreak: () => onProgress(loaded, total, true),
  };
  const coming = (/** @type {Response} */ response) => (watcher ? watched(response, watcher) : response);
  const files = {
    code: open(CODE).then((response) => compile(coming(response))),
    library: open(LIBRARY).then((response) => coming(response).arrayBuffer()),
  };
  for (const file of Object.values(files)) file.catch(() => undefined); // told where it is waited for
  return files;
}
