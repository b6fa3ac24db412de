// The worker in which Python is to run is on its way from the moment on at which the script is there.

import { missing } from './support.js';

function spawn() {
  return new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
}

/** Not asked for yet. @type {Worker | null} */
let first = null;
if (!missing()) {
  first = spawn();
  // One that is lost by then is tried again by whoever asks for it, and told.
  first.addEventListener('error', (event) => {
    event.preventDefault();
    first = null;
  });
}

/** The one on its way, or another. @returns {Worker} */
export function newWorker() {
  const worker = first ?? spawn();
  first = null;
  return worker;
}
