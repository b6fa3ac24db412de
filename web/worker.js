// Runs Python off the page's own thread.
//
// In:  {start: true, count: boolean} once, then {id, text} for each question.
// Out: {kind: 'progress', loaded, total}      bytes of the download
//      {kind: 'ready'}
//      {kind: 'answer', id, text, ms}         ms: time spent in Python
//      {kind: 'failed', why, id?, fatal?}     with an id: that question; fatal: Python is broken

import { SIZES } from './release.js';

/** @typedef {{kind: 'progress', loaded: number, total: number} | {kind: 'ready'}
 *   | {kind: 'answer', id: number, text: string, ms: number}
 *   | {kind: 'failed', why: string, id?: number, fatal?: boolean}} FromWorker */

const FOLDER = new URL('./python/', import.meta.url).href;
const WASM = 'pyodide.asm.wasm';
const LIBRARY = 'library.zip';
const BIG_FILES = [WASM, LIBRARY];

/** @type {(text: string) => string} */
let answerText;
let loaded = 0;

/** @param {FromWorker} message */
function say(message) {
  self.postMessage(message);
}

/** @param {unknown} error */
function sentence(error) {
  return error instanceof Error ? error.message : String(error);
}

/**
 * Pass a download on, telling how much of it has come.
 * @param {Response} response @param {number} total
 */
function counted(response, total) {
  const counter = new TransformStream({
    transform(chunk, controller) {
      loaded += chunk.byteLength;
      say({ kind: 'progress', loaded, total });
      controller.enqueue(chunk);
    },
  });
  return /** @type {ReadableStream} */ (response.body).pipeThrough(counter);
}

/**
 * Open one of Python's big files.
 * @param {string} name @param {boolean} count @param {number} total
 */
async function open(name, count, total) {
  const response = await fetch(FOLDER + name);
  if (!response.ok) throw new Error(`The file ${name} did not come (${response.status}).`);
  const isWasm = name === WASM;
  const type = isWasm ? 'application/wasm' : 'application/zip';
  const isTyped = !isWasm || response.headers.get('Content-Type') === type;
  // A response from the cache is passed on as it is, or the browser could not keep the compiled
  // code with it. One from a host that sends the wrong type gets the right one.
  if (!count && isTyped) return response;
  return new Response(count ? counted(response, total) : response.body, {
    headers: { 'Content-Type': type },
  });
}

/**
 * Start Python; resolves when it can answer.
 * @param {boolean} count tell the progress of the download
 */
async function start(count) {
  if (typeof WebAssembly !== 'object') throw new Error('This browser has no WebAssembly.');
  const total = BIG_FILES.reduce((sum, name) => sum + SIZES[`python/${name}`], 0);
  // All downloads start now, side by side. Pyodide then asks for the same files and gets these.
  const opened = new Map(BIG_FILES.map((name) => [FOLDER + name, open(name, count, total)]));
  const plainFetch = self.fetch;
  self.fetch = (input, options) =>
    opened.get(input instanceof Request ? input.url : String(input)) ?? plainFetch(input, options);

  const broken = new Promise((_, reject) => {
    opened.forEach((file) => file.catch(reject));
    // Where the code can't be compiled Pyodide only warns on the console and waits for ever.
    const instantiate = WebAssembly.instantiateStreaming;
    WebAssembly.instantiateStreaming = (...given) => {
      const result = instantiate.apply(WebAssembly, given);
      result.catch(reject);
      return result;
    };
  });
  const { loadPyodide } = await import('./python/pyodide.mjs');
  const loading = loadPyodide({ indexURL: FOLDER, stdLibURL: FOLDER + LIBRARY });
  const python = await Promise.race([loading, /** @type {Promise<never>} */ (broken)]);
  self.fetch = plainFetch;
  answerText = python.pyimport('sweepsheet.page').answer_text;
}

/** @param {number} id @param {string} text */
function answer(id, text) {
  const began = performance.now();
  try {
    const answered = answerText(text);
    say({ kind: 'answer', id, text: answered, ms: performance.now() - began });
  } catch (error) {
    const fatal = Boolean(/** @type {any} */ (error).pyodide_fatal_error);
    say({ kind: 'failed', why: sentence(error), id, fatal });
  }
}

self.onmessage = ({ data }) => {
  if (!data.start) return answer(data.id, data.text);
  start(data.count).then(
    () => say({ kind: 'ready' }),
    (error) => say({ kind: 'failed', why: sentence(error) }),
  );
};
