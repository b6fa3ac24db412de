// Has the browser keep the page for use without a signal, and tells how far that is.

/**
 * @typedef {(
 *   'unsupported' | 'installing' | 'ready' | 'failed' |
 *   'update-waiting' | 'update-taken' | 'update-refused'
 * )} OfflineState
 */

/** Whether this page has asked for the newer release. */
let isTaking = false;

/**
 * Have the service worker read all its files back; gives what is wrong, or null.
 * @param {ServiceWorker} keeper @returns {Promise<string | null>}
 */
function whatIsWrong(keeper) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    keeper.postMessage({ kind: 'check' }, [port2]);
  });
}

/**
 * Resolve when a service worker has come to one of these states.
 * @param {ServiceWorker} keeper @param {ServiceWorkerState[]} states
 * @returns {Promise<ServiceWorkerState>}
 */
function reaches(keeper, ...states) {
  return new Promise((resolve) => {
    const look = () => states.includes(keeper.state) && resolve(keeper.state);
    keeper.addEventListener('statechange', look);
    look();
  });
}

/**
 * Have the release that waits take over, and load the page again with it.
 * @param {() => Promise<boolean>} keep has everything kept that was typed; gives whether it is
 * @returns {Promise<boolean>} false where it was not taken, since something could not be kept
 */
export async function takeUpdate(keep) {
  if (!(await keep())) return false;
  isTaking = true;
  const registration = await navigator.serviceWorker.getRegistration();
  if (registration?.waiting) registration.waiting.postMessage({ kind: 'take' });
  else location.reload(); // another page has taken it already
  return true;
}

/**
 * @param {(state: OfflineState, why: string) => void} onState called at each change
 */
export async function keepForOffline(onState) {
  if (!('serviceWorker' in navigator)) {
    const why = window.isSecureContext ? 'this browser does not offer it' : 'it needs https';
    return onState('unsupported', why);
  }
  /** @type {Promise<string>} */
  const told = new Promise((resolve) => {
    navigator.serviceWorker.addEventListener('message', ({ data }) => {
      if (data.kind === 'not-installed') resolve(data.why);
    });
  });
  navigator.serviceWorker.startMessages();
  // At the first visit the page is taken in by its own release, which is no news.
  let isNews = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (isTaking) location.reload();
    else if (isNews) onState('update-taken', '');
    isNews = true;
  });
  const fail = async () => {
    // The service worker's own reason may come a little after the news of its end.
    const untold = new Promise((resolve) => setTimeout(resolve, 2000, 'the browser refused it.'));
    onState('failed', await Promise.race([told, untold]));
  };

  /** A newer release beside the one in use. @param {ServiceWorker} next */
  async function follow(next) {
    const state = await reaches(next, 'installed', 'activating', 'activated', 'redundant');
    if (state === 'installed') onState('update-waiting', '');
  }

  /** @type {ServiceWorkerRegistration} */
  let registration;
  try {
    registration = await navigator.serviceWorker.register(new URL('../sw.js', import.meta.url), {
      updateViaCache: 'none',
    });
  } catch (error) {
    // Without a signal the browser can't look for a newer release; what it keeps is still good.
    const kept = await navigator.serviceWorker.getRegistration();
    if (!kept) return onState('failed', String(error));
    registration = kept;
  }
  const first = registration.active ?? registration.installing ?? registration.waiting;
  if (!first) return fail();
  if (first.state !== 'activated') onState('installing', '');
  if ((await reaches(first, 'activated', 'redundant')) === 'redundant') return fail();
  const wrong = await whatIsWrong(first);
  if (wrong) return onState('failed', wrong);
  onState('ready', '');
  for (const next of [registration.waiting, registration.installing]) if (next) follow(next);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) follow(registration.installing);
  });
}
