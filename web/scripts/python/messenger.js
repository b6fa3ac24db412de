// Carries questions from the page to Python in its worker, and the answers back; starts the worker anew
// where it breaks down. In which order they are answered is told by `queue.js`.

import { newWorker } from './first-worker.js';
import { fetchFiles, sayLost } from './python-files.js';
import { Queue, Slot } from './queue.js';
import { missing } from './support.js';
import { watch } from './watchdog.js';
import { language, say } from '../common/words.js';

/** @import { Asked } from './queue.js' */
/** @import { Coming, OnProgress } from './python-files.js' */
/** @import { FromWorker } from './worker.js' */

/**
 * @typedef {object} Messenger
 * @property {(request: unknown) => Promise<any>} ask null when a newer question overtook this one
 * @property {(request: unknown) => Promise<any>} askLater the same, when nothing else is asked
 * @property {(request: unknown) => Promise<any>} askSurely the same, never overtaken: in its turn
 * @property {(text: string) => Promise<any>} drawQr a QR code of the text; null when overtaken
 * @property {() => number} lastMs time in Python for the last answer, in milliseconds
 * @property {() => void} quickenNextStart now that the files are kept for use without a signal: have a
 *   snapshot made for it, soon, where none was used
 * @property {() => void} stop let Python go
 */

/**
 * @typedef {object} Options
 * @property {OnProgress} [onProgress] bytes of the download,
 *   and whether it broke off and waits to go on
 * @property {() => void} [onReady]
 * @property {(why: string) => void} [onFailed] it will not start, or broke down for good
 * @property {number} [patience] seconds without a sign of life before it counts as failed
 */

// After the first answer a person looks at it, or goes on typing.
const QUIET_MS = 2000;

/** Give a worker each of the files when it is there. @param {Worker} worker @param {Coming} files */
function handOver(worker, { code, library }) {
  // One that does not come is told by whoever asked for it.
  code.then((it) => worker.postMessage({ code: it }), () => undefined);
  library.then((it) => worker.postMessage({ library: it }), () => undefined);
}

/** In a worker of its own, which has seen nothing that was typed. @param {Coming} files */
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
  handOver(maker, files);
}

/** Start Python in its worker. @param {Options} options @returns {Messenger} */
export function startMessenger({ onProgress, onReady, onFailed, patience = 120 }) {
  const queue = new Queue();
  /** A QR code that is being drawn. */
  const drawing = new Slot();
  /** @type {Worker | null} */
  let worker = null;
  /** None where Python can't run, and none once the browser keeps them. @type {Coming | null} */
  let files = null;
  /** @type {string | null} */
  let failure = null;
  let isUp = false;
  let mayRestart = true;
  let isRestoring = false;
  let lastId = 0;
  let lastMs = NaN;

  const watchdog = watch(patience, () => {
    if (isUp) return;
    if (isRestoring) restart();
    else fail(say('python.stalled'));
  });

  /** @param {string} why */
  function fail(why) {
    failure = why;
    isUp = false;
    worker?.terminate();
    watchdog.stop();
    const error = new Error(why);
    queue.refuseAll(error);
    drawing.take()?.reject(error);
    onFailed?.(why);
  }

  /** @param {string} why */
  function failToStart(why) {
    fail(say('python.not_started', { why }));
  }

  function sendNext() {
    const next = isUp ? queue.next() : null;
    if (next) worker?.postMessage({ id: next.id, text: next.text });
  }

  /** A promise, and what settles it. @param {string} text @param {(asked: Asked) => void} put
   * @returns {Promise<any>} */
  function asking(text, put) {
    return new Promise((resolve, reject) => {
      if (failure) return reject(new Error(failure));
      put({ id: ++lastId, text, resolve, reject });
      sendNext();
    });
  }

  /** A question as text, with the language of the answer. @param {any} request
   * @param {(asked: Asked) => void} put */
  function question(request, put) {
    return asking(JSON.stringify({ ...request, language }), put);
  }

  /** Start anew, and not from the snapshot, which may be what is wrong. */
  function restart() {
    mayRestart = isRestoring = isUp = false;
    queue.again();
    drawing.take()?.resolve(null);
    worker?.terminate();
    startWorker(true);
  }

  /** @param {FromWorker} message */
  function hear(message) {
    watchdog.heard();
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
        queue.answer(message.text);
        break;
      case 'qr':
      case 'no-qr':
        if (message.id !== drawing.asked?.id) return;
        if (message.kind === 'qr') drawing.take()?.resolve(JSON.parse(message.text));
        else drawing.take()?.reject(new Error(message.lost ? sayLost(message.lost) : message.why));
        break;
      case 'failed':
        if (message.id === undefined) return failToStart(message.why);
        if (message.fatal && mayRestart) return restart();
        if (message.fatal) return fail(message.why);
        queue.refuse(message.why);
    }
    sendNext();
  }

  function startWorker(plain = false) {
    watchdog.heard();
    const started = newWorker();
    worker = started;
    // A worker that was let go may still have had something to say.
    started.addEventListener('message', ({ data }) => started === worker && hear(data));
    started.addEventListener('error', (event) => {
      event.preventDefault();
      if (started === worker) failToStart(event.message || say('python.no_file'));
    });
    started.postMessage({ start: true, plain });
    const coming = (files ??= fetchFiles(null));
    handOver(started, coming);
    Promise.all([coming.code, coming.library]).catch(
      (error) => started === worker && failToStart(error.message),
    );
  }

  /** @param {number} loaded @param {number} total @param {boolean} isBroken */
  function tellProgress(loaded, total, isBroken) {
    if (failure) return;
    watchdog.heard();
    onProgress?.(loaded, total, isBroken);
  }

  const absent = missing();
  if (absent) queueMicrotask(() => fail(absent));
  else {
    files = fetchFiles(navigator.serviceWorker?.controller ? null : tellProgress);
    startWorker();
  }

  return {
    ask: (request) => question(request, (asked) => queue.ask(asked)),
    askLater: (request) => question(request, (asked) => queue.askLater(asked)),
    askSurely: (request) => question(request, (asked) => queue.askSurely(asked)),
    drawQr: (text) =>
      asking(text, (asked) => {
        drawing.put(asked);
        // It may have to be fetched first what draws it; questions do not wait for that.
        worker?.postMessage({ id: asked.id, qr: text });
      }),
    lastMs: () => lastMs,
    quickenNextStart() {
      const coming = files;
      files = null; // they would take room; who starts anew has them from the cache
      if (coming && !isRestoring) setTimeout(() => makeSnapshot(coming), QUIET_MS);
    },
    stop() {
      watchdog.stop();
      worker?.terminate();
    },
  };
}
