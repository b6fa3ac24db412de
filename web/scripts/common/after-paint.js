// When what stands in the page has been drawn.

import { waited } from './waited.js';

/** The page as it is now has been drawn; a page in the background is not, and is not waited for. */
export function drawn() {
  // What runs in a frame runs before its drawing: the next but one comes after it.
  const frame = new Promise((resolve) =>
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve))),
  );
  return Promise.race([frame, waited(300)]);
}
