// Runs Python off the page's own thread.
//
// In:  {start: true, count: boolean, plain: boolean} once, then {id, text} for each question.
//      plain: not from a snapshot. Or {snapshot: true}, to make one and no more.
//      {id, qr: text} after the start, for a QR code of the text.
// Out: {kind: 'progress', loaded, total}      bytes of the download
//      {kind: 'restoring'}                    a snapshot is used for the start
//      {kind: 'ready', restored: boolean}
//      {kind: 'answer', id, text, ms}         ms: time spent in Python
//      {kind: 'failed', why, id?, fatal?}     with an id: that question; fatal: Python is broken
//      {kind: 'kept'}                         the snapshot
//      {kind: 'qr', id, text}, {kind: 'no-qr', id, why}

/** @typedef {{kind: 'progress', loaded: number, total: number} | {kind: 'restoring'}
 *   | {kind: 'ready', restored: boolean} | {kind: 'kept'} |
 *     {kind: 'qr', id: number, text: string} | {kind: 'no-qr', id: number, why: string} | {kind: 'answer', id: number, text: string, ms: number}
 *   | {kind: 'failed', why: string, id?: number, fatal?: boolean}} FromWorker */

const FOLDER = new URL('./python/', import.meta.url).href;
const WASM = 'pyodide.asm.wasm';
const LIBRARY = 'library.zip';
const BIG_FILES = [WASM, LIBRARY];
const QR = 'qr.zip';

// All scripts start to load now, side by side, and not each when the one before it has come.
const scripts = Promise.all([
  import('./python/pyodide.mjs'),
  import('./python/pyodide.asm.mjs'),
  import('./release.js'),
]);
const snapshots = import('./snapshot.js');
// One that does not come is told where it is waited for, which may be a little later.
for (const script of [scripts, snapshots]) script.catch(() => undefined);

/** @type {(text: string) => string} */
let answerText;
/** What draws QR codes, once it was asked for. @type {Promise<(text: string) => string> | null} */
let drawer = null;
/** Pyodide itself. @type {any} */
let python;
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
 * @param {string} name @param {boolean} count
 */
async function open(name, count) {
  const response = await fetch(FOLDER + name);
  if (!response.ok) throw new Error(`The file ${name} did not come (${response.status}).`);
  const isWasm = name === WASM;
  const type = isWasm ? 'application/wasm' : 'application/zip';
  const isTyped = !isWasm || response.headers.get('Content-Type') === type;
  // A response from the cache is passed on as it is, or the browser could not keep the compiled
  // code with it. One from a host that sends the wrong type gets the right one.
  if (!count && isTyped) return response;
  const [, , { SIZES }] = await scripts;
  const total = BIG_FILES.reduce((sum, each) => sum + SIZES[`python/${each}`], 0);
  return new Response(count ? counted(response, total) : response.body, {
    headers: { 'Content-Type': type },
  });
}

/**
 * Load Python.
 * @param {boolean} count tell the progress of the download
 * @param {object} [options] for Pyodide
 */
async function load(count, options = {}) {
  if (typeof WebAssembly !== 'object') throw new Error('This browser has no WebAssembly.');
  // All downloads start now, side by side, and the code is compiled while it comes and while a
  // snapshot is unpacked. Pyodide then asks for the same files and gets these.
  const library = open(LIBRARY, count);
  const compiled = open(WASM, count).then((response) => WebAssembly.compileStreaming(response));
  const { fetch, WebAssembly: { instantiateStreaming } } = self;
  self.fetch = async (input, given) => {
    const address = input instanceof Request ? input.url : String(input);
    if (address === FOLDER + WASM) return new Response(); // it is at hand, compiled
    return address === FOLDER + LIBRARY ? library : fetch(input, given);
  };
  const broken = new Promise((_, reject) => {
    library.catch(reject);
    compiled.catch(reject);
    // Where the code can't be started Pyodide only warns on the console and waits for ever.
    WebAssembly.instantiateStreaming = async (_source, imports) => {
      const module = await compiled;
      const starting = WebAssembly.instantiate(module, imports);
      starting.catch(reject);
      return { module, instance: await starting };
    };
  });
  const loading = scripts.then(([{ loadPyodide }]) =>
    loadPyodide({ indexURL: FOLDER, stdLibURL: FOLDER + LIBRARY, ...options }),
  );
  try {
    return await Promise.race([loading, /** @type {Promise<never>} */ (broken)]);
  } finally {
    self.fetch = fetch;
    WebAssembly.instantiateStreaming = instantiateStreaming;
  }
}

/** @param {any} started */
function answererOf(started) {
  return started.pyimport('sweepsheet.page').answer_text;
}

/** Start from the snapshot that is kept here; tells whether that went well. */
async function restore() {
  const { findSnapshot, QUESTION } = await snapshots;
  const snapshot = await findSnapshot();
  if (!snapshot) return false;
  say({ kind: 'restoring' });
  const restored = await load(false, { _loadSnapshot: snapshot.bytes });
  const answerer = answererOf(restored);
  if (!(await snapshot.fits(answerer(QUESTION)))) throw new Error('Python answers otherwise.');
  answerText = answerer;
  python = restored;
  return true;
}

/**
 * Start Python; resolves when it can answer, to whether it was from a snapshot.
 * @param {boolean} count tell the progress of the download @param {boolean} plain no snapshot
 */
async function start(count, plain) {
  if (plain) await forget();
  else {
    try {
      if (await restore()) return true;
    } catch (error) {
      console.warn(`Starting without the snapshot, which did not do: ${sentence(error)}`);
      await forget();
    }
  }
  python = await load(count);
  answerText = answererOf(python);
  return false;
}

/** Fetch what draws QR codes. @returns {Promise<(text: string) => string>} */
async function loadDrawer() {
  const response = await fetch(FOLDER + QR);
  if (!response.ok) throw new Error(`The file ${QR} did not come (${response.status}).`);
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
    say({ kind: 'no-qr', id, why: sentence(error) });
  }
}

/** A storage that fails must not keep Python from starting. */
async function forget() {
  try {
    await (await snapshots).dropSnapshot();
  } catch (error) {
    console.warn(`The snapshot could not be dropped: ${sentence(error)}`);
  }
}

/** Make a snapshot and keep it. */
async function makeSnapshot() {
  const { keepSnapshot, QUESTION } = await snapshots;
  const maker = await load(false, { _makeSnapshot: true });
  // Everything is imported, but nothing of Python is held here: a snapshot could not hold that.
  maker.runPython('import sweepsheet.page');
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
  if (data.qr !== undefined) return drawQr(data.id, data.qr);
  if (!data.start && !data.snapshot) return answer(data.id, data.text);
  const done = data.start
    ? start(data.count, data.plain).then((restored) => say({ kind: 'ready', restored }))
    : makeSnapshot().then(() => say({ kind: 'kept' }));
  done.catch((error) => say({ kind: 'failed', why: sentence(error) }));
};
