// What is said while the download of Python is broken off.

import { say } from '../common/words.js';

/** Say it; once it goes on, what stood there before. @param {HTMLElement} place @param {boolean} isBroken */
export function tellBreak(place, isBroken) {
  const [broken, starting] = [say('python.broken'), say('index.starting')];
  if (isBroken && place.textContent === starting) place.textContent = broken;
  if (!isBroken && place.textContent === broken) place.textContent = starting;
}
