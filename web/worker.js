// Runs Python off the page's own thread.
//
// In:  {start: true, count: boolean, plain: boolean} once, then {id, text} for each question.
//      plain: not from a snapshot. Or {snapshot: true}, to make one and no more.
// Out: {kind: 'progress', loaded, total}      bytes of the download
//      {kind: 'restoring'}                    a snapshot is used for the start
//      {kind: 'ready', restored: boolean}
//      {kind: 'answer', id, text, ms}         ms: time spent in Python
//      {kind: 'failed', why, id?, fatal?}     with an id: that question; fatal: Python is broken
//      {kind: 'kept'}                         the snapshot

/** @typedef {{kind: 'progress', loaded: number, total: number} | {kind: 'restoring'}
 *   | {kind: 'ready', restored: boolean} | {kind: 'kept'} | {kind: 'answer', id: number, text: string, ms: number}
 *   | {kind: 'failed', why: string, id?: number, fatal?: boolean}} FromWorker */

const FOLDER = new URL('./python/', import.meta.url).href;
const WASM = 'pyodide.asm.wasm';
const LIBRARY = 'library.zip';
const BIG_FILES = [WASM, LIBRARY];

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
 * Python's big files, on their way.
 * @typedef {{library: Promise<Response>, compiled: Promise<WebAssembly.Module>}} Files
 */

/**
 * Have all downloads start now, side by side, and the code compiled while it comes.
 * @param {boolean} count tell the progress of the download @returns {Files}
 */
function fetchFiles(count) {
  if (typeof WebAssembly !== 'object') throw new Error('This browser has no WebAssembly.');
  const library = open(LIBRARY, count);
  const compiled = open(WASM, count).then((response) => WebAssembly.compileStreaming(response));
  // One that does not come is told where it is waited for, which may be a little later.
  for (const file of [library, compiled]) file.catch(() => undefined);
  return { library, compiled };
}

/**
 * Load Python.
 * @param {Files} files
 * @param {object} [options] for Pyodide
 */
async function load({ library, compiled }, options = {}) {
  // Pyodide asks for the same files and gets these.
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

/** @param {any} python */
function answererOf(python) {
  return python.pyimport('sweepsheet.page').answer_text;
}

/** Start from the snapshot that is kept here; tells whether there is one. @param {Files} files */
async function restore(files) {
  const { findSnapshot, QUESTION } = await snapshots;
  const snapshot = await findSnapshot();
  if (!snapshot) return false;
  say({ kind: 'restoring' });
  const answerer = answererOf(await load(files, { _loadSnapshot: snapshot.bytes }));
  if (!(await snapshot.fits(answerer(QUESTION)))) throw new Error('Python answers otherwise.');
  answerText = answerer;
  return true;
}

/**
 * Start Python; resolves when it can answer, to whether it was from a snapshot.
 * @param {boolean} count tell the progress of the download @param {boolean} plain no snapshot
 */
async function start(count, plain) {
  let files = fetchFiles(count);
  if (plain) await forget();
  else {
    try {
      if (await restore(files)) return true;
    } catch (error) {
      console.warn(`Starting without the snapshot, which did not do: ${sentence(error)}`);
      await forget();
      files = fetchFiles(false); // the first ones are used up
    }
  }
  answerText = answererOf(await load(files));
  return false;
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
  const python = await load(fetchFiles(false), { _makeSnapshot: true });
  // Everything is imported, but nothing of Python is held here: a snapshot could not hold that.
  python.runPython('import sweepsheet.page');
  const bytes = python.makeMemorySnapshot();
  await keepSnapshot(bytes, answererOf(python)(QUESTION));
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
  if (!data.start && !data.snapshot) return answer(data.id, data.text);
  const done = data.start
    ? start(data.count, data.plain).then((restored) => say({ kind: 'ready', restored }))
    : makeSnapshot().then(() => say({ kind: 'kept' }));
  done.catch((error) => say({ kind: 'failed', why: sentence(error) }));
};
