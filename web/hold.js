// Tells the service worker that a page of this release is open, for as long as it is, so that the
// release's files are not deleted under it when another page takes a newer one.

const SCOPE = new URL('../', import.meta.url).href;
const RELEASE = new URL('./', import.meta.url).href.slice(SCOPE.length, -1);

export function holdRelease() {
  // Not there on a plain http address, where no release is kept either.
  navigator.locks?.request(
    `sweepsheet ${SCOPE} ${RELEASE}`, // as sw.js names the release's cache
    { mode: 'shared' },
    () => new Promise(() => undefined), // until the page is gone
  );
}
