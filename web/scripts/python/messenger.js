// Carries questions from the page to Python in its worker, and the answers back.
//
// Only the newest question matters: while one is being worked out, a newer one waits, and takes the
// place of any other that waits. A question that was overtaken resolves to null, so an old answer
// never comes after a newer one. What has time, such as a link, waits until nothing else does.

import { fetchFiles, sayLost } from './python-files.js';
import { language, say } from '../common/words.js';

/** @import { Files, FromWorker } from './worker.js' */

/**
 * @typedef {object} Waiting
 * @property {number} id
 * @property {string} text
 * @property {(answer: any) => void} resolve
 * @property {(error: Error) => void} reject
 * @property {boolean} [surely] it is answered, whatever else is asked
 */

/**
 * @typedef {object} Python
 * @property {(request: unknown) => Promise<any>} ask null when a newer question overtook this one
 * @property {(request: unknown) => Promise<any>} askLater the same, when nothing else is asked
 * @property {(request: unknown) => Promise<any>} askSurely the same, never overtaken: in its turn
 * @property {(text: string) => Promise<any>} drawQr a QR code of the text; null when overtaken
 * @property {() => number} lastMs time in Python for the last answer, in milliseconds
 * @property {() => void} quickenNextStart have a snapshot made for it, soon, where none was used
 * @property {() => void} stop let Python go
 */

// After the first answer a person looks at it, or goes on typing.
const QUIET_MS = 2000;

/** A function that catches an exception, as Pyodide's do (WebAssembly's first exception handling). */
const CATCHING = new Uint8Array([
  ...[0, 0x61, 0x73, 0x6d, 1, 0, 0, 0], // a module of version 1
  ...[1, 4, 1, 0x60, 0, 0], // one type: takes nothing, gives nothing
  ...[3, 2, 1, 0], // one function of that type
  ...[10, 8, 1, 6, 0, 6, 0x40, 0x19, 11, 11], // try, catch_all, end, end
]);

/** A browser that knows of module workers asks for the type, before it finds the address wrong. */
function hasModuleWorkers() {
  let isAsked = false;
  const options = {
    get type() {
      isAsked = true;
      return /** @type {const} */ ('module');
    },
  };
  try {
    new Worker('http://[', options).terminate();
  } catch {
    // The address is wrong on purpose: no worker is wanted.
  }
  return isAsked;
}

/** What is missing in this browser, in a sentence, or null. */
export function missing() {
  if (typeof WebAssembly !== 'object') return say('python.no_wasm');
  if (!WebAssembly.validate(CATCHING)) return say('python.old_wasm');
  if (typeof Worker !== 'function' || !hasModuleWorkers()) return say('python.no_worker');
  return null;
}

function newWorker() {
  return new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
}

/** In a worker of its own, which has seen nothing that was typed. @param {Files} files */
function makeSnapshot(files) {
  const maker = newWorker();
  /** @param {string} why */
  const giveUp = (why) => {
    // A full storage, for one; the next start is then as long as this one was.
    console.warn(`No snapshot was made: ${why}`);
    maker.terminate();
  };
  maker.addEventListener('error', (event) => {
    event.preventDefault();
    giveUp(event.message);
  });
  maker.addEventListener('message', ({ data }) => {
    if (data.kind === 'failed') giveUp(data.why);
    else if (data.kind === 'kept') maker.terminate();
  });
  maker.postMessage({ snapshot: true });
  maker.postMessage({ files });
}

/**
 * Start Python in its worker.
 * @param {object} options
 * @param {(loaded: number, total: number) => void} [options.onProgress] bytes of the download
 * @param {() => void} [options.onReady]
 * @param {(why: string) => void} [options.onFailed] it will not start, or broke down for good
 * @param {number} [options.patience] seconds without a sign of life before it counts as failed
 * @returns {Python}
 */
export function startPython({ onProgress, onReady, onFailed, patience = 120 }) {
  /** @type {Worker | null} */
  let worker = null;
  /** @type {Waiting | null} */
  let running = null;
  /** @type {Waiting | null} */
  let waiting = null;
  /** @type {Promise<Files> | null} */
  let files = null;
  /** What has time. @type {Waiting | null} */
  let later = null;
  /** What has to be answered, in its order. @type {Waiting[]} */
  let sure = [];
  /** A QR code that is being drawn. @type {Waiting | null} */
  let drawing = null;
  /** @type {string | null} */
  let failure = null;
  let isUp = false;
  let mayRestart = true;
  let isRestoring = false;
  let quietSeconds = 0;
  let lastId = 0;
  let lastMs = NaN;

  /** @param {string} why */
  function fail(why) {
    failure = why;
    isUp = false;
    worker?.terminate();
    clearInterval(watchdog);
    const error = new Error(why);
    for (const asked of [running, waiting, ...sure, later, drawing]) asked?.reject(error);
    running = waiting = later = drawing = null;
    sure = [];
    onFailed?.(why);
  }

  /** @param {string} why */
  function failToStart(why) {
    fail(say('python.not_started', { why }));
  }

  function sendNext() {
    const next = waiting ?? sure[0] ?? later;
    if (!isUp || running || !next) return;
    if (next === waiting) waiting = null;
    else if (next === sure[0]) sure.shift();
    else later = null;
    running = next;
    worker?.postMessage({ id: next.id, text: next.text });
  }

  /** A question as text, with the language of the answer. @param {any} request */
  function textOf(request) {
    return JSON.stringify({ ...request, language });
  }

  /** A promise, and what settles it. @param {string} text @param {(asked: Waiting) => void} put
   * @returns {Promise<any>} */
  function asking(text, put) {
    return new Promise((resolve, reject) => {
      if (failure) return reject(new Error(failure));
      put({ id: ++lastId, text, resolve, reject });
      sendNext();
    });
  }

  /** Start anew, and not from the snapshot, which may be what is wrong. */
  function restart() {
    mayRestart = isRestoring = false;
    isUp = false;
    if (running?.surely) sure.unshift(running);
    else waiting ??= running;
    if (running !== waiting && !running?.surely) running?.resolve(null);
    drawing?.resolve(null);
    running = drawing = null;
    worker?.terminate();
    startWorker(true);
  }

  /** @param {FromWorker} message */
  function hear(message) {
    quietSeconds = 0;
    switch (message.kind) {
      case 'restoring':
        isRestoring = true;
        break;
      case 'ready':
        isUp = true;
        isRestoring = message.restored;
        onReady?.();
        break;
      case 'answer':
        mayRestart = true;
        lastMs = message.ms;
        running?.resolve(waiting && !running.surely ? null : JSON.parse(message.text));
        running = null;
        break;
      case 'qr':
      case 'no-qr':
        if (message.id !== drawing?.id) return;
        if (message.kind === 'qr') drawing.resolve(JSON.parse(message.text));
        else drawing.reject(new Error(message.lost ? sayLost(message.lost) : message.why));
        drawing = null;
        break;
      case 'failed':
        if (message.id === undefined) return failToStart(message.why);
        if (message.fatal && mayRestart) return restart();
        if (message.fatal) return fail(message.why);
        running?.reject(new Error(message.why));
        running = null;
    }
    sendNext();
  }

  function startWorker(plain = false) {
    quietSeconds = 0;
    const started = newWorker();
    worker = started;
    // A worker that was let go may still have had something to say.
    started.addEventListener('message', ({ data }) => started === worker && hear(data));
    started.addEventListener('error', (event) => {
      event.preventDefault();
      if (started === worker) failToStart(event.message || say('python.no_file'));
    });
    started.postMessage({ start: true, plain });
    files?.then(
      (all) => started.postMessage({ files: all }),
      (error) => started === worker && failToStart(error.message),
    );
  }

  /** @param {number} loaded @param {number} total */
  function tellProgress(loaded, total) {
    quietSeconds = 0;
    onProgress?.(loaded, total);
  }

  // Seconds are counted one by one: a phone that slept has not waited.
  const watchdog = setInterval(() => {
    if (isUp) quietSeconds = 0;
    else if (++quietSeconds <= patience) return;
    else if (isRestoring) restart();
    else fail(say('python.stalled'));
  }, 1000);

  const absent = missing();
  if (absent) queueMicrotask(() => fail(absent));
  else {
    files = fetchFiles(navigator.serviceWorker?.controller ? null : tellProgress);
    startWorker();
  }

  return {
    ask: (request) =>
      asking(textOf(request), (asked) => {
        waiting?.resolve(null);
        waiting = asked;
      }),
    askLater: (request) =>
      asking(textOf(request), (asked) => {
        later?.resolve(null);
        later = asked;
      }),
    askSurely: (request) =>
      asking(textOf(request), (asked) => sure.push({ ...asked, surely: true })),
    drawQr: (text) =>
      asking(text, (asked) => {
        drawing?.resolve(null);
        drawing = asked;
        // It may have to be fetched first what draws it; questions do not wait for that.
        worker?.postMessage({ id: asked.id, qr: text });
      }),
    lastMs: () => lastMs,
    quickenNextStart() {
      if (!isRestoring) setTimeout(async () => files && makeSnapshot(await files), QUIET_MS);
    },
    stop() {
      clearInterval(watchdog);
      worker?.terminate();
    },
  };
}
