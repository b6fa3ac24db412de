// Tells the service worker that a page of this release is open, for as long as it is, so that the
// release's files are not deleted under it when another page takes a newer one.

import { cacheOf } from './release-cache.js';

/** @param {URL} folder that of the release */
export function holdRelease(folder) {
  // Not there on a plain http address, where no release is kept either.
  navigator.locks?.request(
    cacheOf(folder),
    { mode: 'shared' },
    () => new Promise(() => undefined), // until the page is gone
  );
}
