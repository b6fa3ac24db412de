// Fetches Python's two big files. The page does so itself, since it is at work before its worker is; the
// worker gets the compiled code and the library handed over.

import { SIZES } from '../common/release.js';
import { say } from '../common/words.js';

/** @import { Files } from './worker.js' */

const FOLDER = new URL('./python/', import.meta.url).href;
const CODE = 'pyodide.asm.wasm';
const LIBRARY = 'library.zip';
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

/** Pass a download on, telling how much has come. @param {Response} response
 * @param {(bytes: number) => void} onBytes */
function counted(response, onBytes) {
  const counter = new TransformStream({
    transform(chunk, controller) {
      onBytes(chunk.byteLength);
      controller.enqueue(chunk);
    },
  });
  const body = /** @type {ReadableStream} */ (response.body).pipeThrough(counter);
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
 * @param {((loaded: number, total: number) => void) | null} onProgress null: from the cache, where there
 *   is nothing to count, and counting would cost the browser its copy of the compiled code
 * @returns {Promise<Files>}
 */
export async function fetchFiles(onProgress) {
  let onBytes = null;
  if (onProgress) {
    const total = [CODE, LIBRARY].reduce((sum, name) => sum + SIZES[`python/${name}`], 0);
    let loaded = 0;
    onBytes = (/** @type {number} */ bytes) => onProgress((loaded += bytes), total);
  }
  const watched = (/** @type {Response} */ response) =>
    onBytes ? counted(response, onBytes) : response;
  const [code, library] = await Promise.all([
    open(CODE).then((response) => compile(watched(response))),
    open(LIBRARY).then((response) => watched(response).arrayBuffer()),
  ]);
  return { code, library };
}
