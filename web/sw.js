// Keeps one whole release for use without a signal.
//
// All or nothing: the release is installed when every file has come and has the right SHA-256. What
// has come before a failure is not fetched again, and a file goes on where it broke off. An
// old release goes on under the pages that it opened; the new one takes over at the next start, or
// when a page asks for it. Then the old one's files stay for the other pages until they are closed.

import { piecesOf } from './scripts/common/resumed.js';

/** @typedef {{ path: string } | { why: string }} Trouble */

const RELEASE = `{{release}}`;
const POLICY = `{{policy}}`;
/** SHA-256 of every file, by path. @type {Record<string, string>} */
const FILES = JSON.parse(`{{files}}`);

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const SCOPE = worker.registration.scope;
// Other copies of the page may stand in other folders of the same host.
const FAMILY = `sweepsheet ${SCOPE} `;
const CACHE = FAMILY + RELEASE;
const WORKER_FILE = `${RELEASE}/worker.js`;

/** @param {string} path */
function addressOf(path) {
  // Many hosts send "index.html" on to the folder, and a page may not be answered with a detour.
  return SCOPE + (path === 'index.html' ? '' : path);
}

/** The path of a file of this release, or of one whose pages may still be open, or null.
 * @param {string} address */
function pathOf(address) {
  const { origin, pathname } = new URL(address);
  const path = (origin + pathname).slice(SCOPE.length) || 'index.html';
  const isOurs = Object.hasOwn(FILES, path) || /^r-[0-9a-f]+\//.test(path);
  return (origin + pathname).startsWith(SCOPE) && isOurs ? path : null;
}

/** @param {ArrayBuffer} bytes @param {string} path */
async function isWhole(bytes, path) {
  const sum = await crypto.subtle.digest('SHA-256', bytes);
  const hash = Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, '0'));
  return hash.join('') === FILES[path];
}

/** A file that did not come as it is in the release; the page words it. */
class NotWhole extends Error {}

/** @param {Cache} cache @param {string} path */
async function store(cache, path) {
  // What the browser has just loaded will mostly do; if it does not, ask the host itself.
  for (const mode of /** @type {const} */ (['default', 'reload'])) {
    const response = await fetch(addressOf(path), { cache: mode });
    if (!response.ok) continue;
    let isBroken = false;
    const pieces = [];
    for await (const piece of piecesOf(response.clone(), response.url, () => void (isBroken = true))) {
      pieces.push(piece);
    }
    const bytes = await new Blob(pieces).arrayBuffer();
    if (!(await isWhole(bytes, path))) continue;
    // Some hosts send "view.html" on to "view"; what came by a detour can't open a page.
    const isStraight = !isBroken && !response.redirected;
    const whole = isStraight ? response : new Response(bytes, response);
    return cache.put(addressOf(path), path === WORKER_FILE ? withPolicy(whole) : whole);
  }
  throw new NotWhole(path);
}

/** Read a file back, and fetch it where it is lost. @param {Cache} cache @param {string} path */
async function have(cache, path) {
  const kept = await cache.match(addressOf(path));
  if (!kept || !(await isWhole(await kept.arrayBuffer(), path))) await store(cache, path);
}

async function install() {
  const cache = await caches.open(CACHE);
  const results = await Promise.allSettled(Object.keys(FILES).map((path) => have(cache, path)));
  const lost = results.find((result) => result.status === 'rejected');
  if (!lost) return;
  // What has come whole stays for the next try, but where there is no room for all.
  if (lost.reason instanceof DOMException) await caches.delete(CACHE);
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true })) {
    client.postMessage({ kind: 'not-installed', ...trouble(lost.reason) });
  }
  throw lost.reason;
}

/** What went wrong: the path of a file that did not come whole, or the browser's own words.
 * @param {unknown} error @returns {Trouble} */
function trouble(error) {
  if (error instanceof NotWhole) return { path: error.message };
  return { why: error instanceof Error ? error.message : String(error) };
}

/** The releases that are kept here beside this one. */
async function otherReleases() {
  return (await caches.keys()).filter((name) => name.startsWith(FAMILY) && name !== CACHE);
}

async function activate() {
  // At the first install the open page is of this release, and is taken in at once. Else a page
  // that is opened waits for what is done here: older releases go when it asks for the check.
  if (!(await otherReleases()).length) await worker.clients.claim();
}

/** Delete older releases of which no page is open (`release-lock.js`). */
async function tidyUp() {
  const { held = [] } = await worker.navigator.locks.query();
  const inUse = new Set(held.map(({ name }) => name));
  const others = await otherReleases();
  const { installing, waiting } = worker.registration;
  if (installing || waiting) return; // one of them is its own
  await Promise.all(others.filter((name) => !inUse.has(name)).map((name) => caches.delete(name)));
}

/** Read the whole release back, and fetch what is lost; throws if it cannot be had. */
async function check() {
  const cache = await caches.open(CACHE);
  for (const path of Object.keys(FILES)) await have(cache, path);
}

/** @param {string} path @param {Request} request */
async function answer(path, request) {
  const cache = await caches.open(CACHE);
  const kept = Object.hasOwn(FILES, path)
    ? await cache.match(addressOf(path))
    : await caches.match(addressOf(path));
  return kept ?? fetch(request);
}

/** The page's own policy does not reach into a worker; a header on the worker's script does.
 * @param {Response} response */
function withPolicy(response) {
  const headers = new Headers(response.headers);
  headers.set('Content-Security-Policy', POLICY);
  return new Response(response.body, { headers });
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));

worker.addEventListener('fetch', (event) => {
  const path = pathOf(event.request.url);
  if (path !== null && event.request.method === 'GET') {
    event.respondWith(answer(path, event.request));
  } else if (new URL(event.request.url).origin !== worker.location.origin) {
    event.respondWith(Response.error());
  }
});

worker.addEventListener('message', (event) => {
  if (event.data.kind === 'take') return event.waitUntil(worker.skipWaiting());
  if (event.data.kind !== 'check') return;
  event.waitUntil(
    tidyUp().then(check).then(
      () => event.ports[0].postMessage(null),
      (error) => event.ports[0].postMessage(trouble(error)),
    ),
  );
});
