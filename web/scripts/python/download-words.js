// What is said while the download of Python is broken off.

import { say } from '../common/words.js';

/** Say it, or again what stood there before. @param {HTMLElement} place @param {boolean} isBroken */
export function tellBreak(place, isBroken) {
  const text = say(isBroken ? 'python.broken' : 'index.starting');
  if (place.textContent !== text) place.textContent = text;
}
