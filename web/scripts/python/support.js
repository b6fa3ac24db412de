// What Python needs of a browser.

import { say } from '../common/words.js';

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
