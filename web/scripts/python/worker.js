// Runs Python off the page's own thread.
//
// In:  {start: true, plain: boolean} once, then {id, text} for each question.
//      plain: not from a snapshot. Or {snapshot: true}, to make one and no more.
//      {code} and {library}, each once: what the page has fetched.
//      {id, qr: text} after the start, for a QR code of the text.
// Out: {kind: 'alive'}                        it is getting on with the start
//      {kind: 'restoring'}                    a snapshot is used for the start
//      {kind: 'ready', restored: boolean}
//      {kind: 'answer', id, text, ms}         ms: time spent in Python
//      {kind: 'failed', why, id?, fatal?}     with an id: that question; fatal: Python is broken
//      {kind: 'kept'}                         the snapshot
//      {kind: 'qr', id, text}, {kind: 'no-qr', id, why, lost?}

import { dropSnapshot, findSnapshot, keepSnapshot, QUESTION } from './snapshot.js';

/** @typedef {{code: WebAssembly.Module, library: ArrayBuffer}} Files what the page has fetched */
/** @typedef {{name: string, status: number}} Lost a file that did not come */
/** @typedef {{kind: 'alive'} | {kind: 'restoring'}
 *   | {kind: 'ready', restored: boolean} | {kind: 'kept'} |
 *     {kind: 'qr', id: number, text: string} | {kind: 'no-qr', id: number, why: string, lost?: Lost} | {kind: 'answer', id: number, text: string, ms: number}
 *   | {kind: 'failed', why: string, id?: number, fatal?: boolean}} FromWorker */

const FOLDER = new URL('./python/', import.meta.url).href;
const WASM = 'pyodide.asm.wasm';
const LIBRARY = 'library.wasm';
const QR = 'qr.zip';

// Both scripts start to load now, side by side, and not each when the one before it has come.
const scripts = Promise.all([import('./python/pyodide.js'), import('./python/pyodide.asm.js')]);
// One that does not come is told where it is waited for, which may be a little later.
scripts.catch(() => undefined);

/** What the page is going to bring. @template T */
function awaited() {
  /** @type {(it: T) => void} */
  let bring = () => undefined;
  /** @type {Promise<T>} */
  const coming = new Promise((resolve) => {
    bring = resolve;
  });
  return { coming, bring };
}

/** @type {ReturnType<typeof awaited<Files['code']>>} */
const code = awaited();
/** Let go when Python is up, which has a copy. @type {ReturnType<typeof awaited<Files['library']>> | null} */
let library = awaited();

/** @type {(text: string) => string} */
let answerText;
/** What draws QR codes, once it was asked for. @type {Promise<(text: string) => string> | null} */
let drawer = null;
/** Pyodide itself. @type {any} */
let python;

/** @param {FromWorker} message */
function say(message) {
  self.postMessage(message);
}

/** @param {unknown} error */
function sentence(error) {
  return error instanceof Error ? error.message : String(error);
}

/**
 * Load Python.
 * @param {object} [options] for Pyodide
 * @param {Promise<void>} [filled] when the memory in them is as it was: Pyodide needs its size first, and
 *   what is in it once the code stands ready
 */
async function load(options = {}, filled = undefined) {
  const [{ loadPyodide }] = await scripts;
  say({ kind: 'alive' });
  // Pyodide asks for the files by itself, and gets those that are at hand.
  const { fetch, WebAssembly: { instantiateStreaming } } = self;
  self.fetch = async (input, given) => {
    const address = input instanceof Request ? input.url : String(input);
    if (address === FOLDER + WASM) return new Response();
    return address === FOLDER + LIBRARY ? new Response(await library?.coming) : fetch(input, given);
  };
  const broken = new Promise((_, reject) => {
    // Where the code can't be started Pyodide only warns on the console and waits for ever.
    WebAssembly.instantiateStreaming = async (_source, imports) => {
      const module = await code.coming;
      const starting = WebAssembly.instantiate(module, imports);
      starting.catch(reject);
      const instance = await starting;
      await filled?.catch(reject);
      say({ kind: 'alive' });
      return { module, instance };
    };
  });
  const loading = loadPyodide({ indexURL: FOLDER, stdLibURL: FOLDER + LIBRARY, ...options });
  try {
    return await Promise.race([loading, /** @type {Promise<never>} */ (broken)]);
  } finally {
    self.fetch = fetch;
    WebAssembly.instantiateStreaming = instantiateStreaming;
  }
}

/** @param {any} started */
function answererOf(started) {
  return started.pyimport('sweepsheet.page').handle_request;
}

/** Start from the snapshot that is kept here; tells whether there is one. */
async function restore() {
  const snapshot = await findSnapshot();
  if (!snapshot) return false;
  say({ kind: 'restoring' });
  const restored = await load({ _loadSnapshot: snapshot.memory }, snapshot.filled);
  snapshot.letGo();
  const answerer = answererOf(restored);
  if (!(await snapshot.fits(answerer(QUESTION)))) throw new Error('Python answers otherwise.');
  answerText = answerer;
  python = restored;
  return true;
}

/** Start Python; resolves when it can answer, to whether it was from a snapshot.
 * @param {boolean} plain no snapshot */
async function start(plain) {
  if (plain) await forget();
  else {
    try {
      if (await restore()) return true;
    } catch (error) {
      console.warn(`Starting without the snapshot, which did not do: ${sentence(error)}`);
      await forget();
    }
  }
  python = await load();
  say({ kind: 'alive' });
  answerText = answererOf(python);
  return false;
}

/** Fetch what draws QR codes. @returns {Promise<(text: string) => string>} */
async function loadDrawer() {
  const response = await fetch(FOLDER + QR);
  if (!response.ok) throw Object.assign(new Error(QR), { lost: { name: QR, status: response.status } });
  python.FS.writeFile(`/${QR}`, new Uint8Array(await response.arrayBuffer()));
  python.pyimport('sys').path.append(`/${QR}`);
  return python.pyimport('qr_code').draw;
}

/** @param {number} id @param {string} text */
async function drawQr(id, text) {
  try {
    drawer ??= loadDrawer();
    say({ kind: 'qr', id, text: (await drawer)(text) });
  } catch (error) {
    drawer = null; // it may come the next time
    const { lost } = /** @type {{ lost?: Lost }} */ (error);
    say({ kind: 'no-qr', id, why: sentence(error), lost });
  }
}

/** A storage that fails must not keep Python from starting. */
async function forget() {
  try {
    await dropSnapshot();
  } catch (error) {
    console.warn(`The snapshot could not be dropped: ${sentence(error)}`);
  }
}

/** Make a snapshot and keep it. */
async function makeSnapshot() {
  const maker = await load({ _makeSnapshot: true });
  // All that an answer imports is in it, but nothing of Python is held here: a snapshot could not hold that.
  maker.runPython(`import sweepsheet.page; sweepsheet.page.handle_request('${QUESTION}')`);
  const bytes = maker.makeMemorySnapshot();
  await keepSnapshot(bytes, answererOf(maker)(QUESTION));
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
  if (data.code) return code.bring(data.code);
  if (data.library) return library?.bring(data.library);
  if (data.qr !== undefined) return drawQr(data.id, data.qr);
  if (!data.start && !data.snapshot) return answer(data.id, data.text);
  const done = data.start
    ? start(data.plain).then((restored) => {
        library = null;
        say({ kind: 'ready', restored });
      })
    : makeSnapshot().then(() => say({ kind: 'kept' }));
  done.catch((error) => say({ kind: 'failed', why: sentence(error) }));
};
