// Has the browser keep the page for use without a signal, and tells how far that is.

import { say } from './words.js';

/**
 * `update-waiting`: a newer release has come whole. `update-failed`: one did not, and this one stays.
 * `update-taken`: another page took it, and this one goes on with the older.
 * @typedef {'unsupported' | 'installing' | 'ready' | 'failed'
 *   | 'update-waiting' | 'update-failed' | 'update-taken'} OfflineState
 */

/** @typedef {{ path: string } | { why: string }} Trouble as sw.js tells it */

/** @param {Trouble} trouble */
function sayTrouble(trouble) {
  return 'path' in trouble ? say('offline.not_whole', trouble) : trouble.why;
}

/**
 * Have the service worker read all its files back; gives what is wrong, or null.
 * @param {ServiceWorker} keeper @returns {Promise<Trouble | null>}
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
 * @param {(state: OfflineState, why: string) => void} onState called at each change
 */
export async function keepForOffline(onState) {
  if (!('serviceWorker' in navigator)) {
    const why = say(window.isSecureContext ? 'offline.not_offered' : 'offline.needs_https');
    return onState('unsupported', why);
  }
  /** @type {Promise<string>} */
  const told = new Promise((resolve) => {
    navigator.serviceWorker.addEventListener('message', ({ data }) => {
      if (data.kind === 'not-installed') resolve(sayTrouble(data));
    });
  });
  navigator.serviceWorker.startMessages();
  /** @param {'failed' | 'update-failed'} state */
  const fail = async (state) => {
    // The service worker's own reason may come a little after the news of its end.
    const untold = new Promise((resolve) => setTimeout(resolve, 2000, say('offline.refused')));
    onState(state, await Promise.race([told, untold]));
  };

  /** A newer release beside the one in use. @param {ServiceWorker} next */
  async function follow(next) {
    const state = await reaches(next, 'installed', 'activating', 'activated', 'redundant');
    if (state === 'installed') onState('update-waiting', '');
    else if (state === 'redundant') await fail('update-failed');
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
  if (!first) return fail('failed');
  if (first.state !== 'activated') onState('installing', '');
  if ((await reaches(first, 'activated', 'redundant')) === 'redundant') return fail('failed');
  const wrong = await whatIsWrong(first);
  if (wrong) return onState('failed', sayTrouble(wrong));
  onState('ready', '');
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (navigator.serviceWorker.controller !== first) onState('update-taken', '');
  });
  for (const next of [registration.waiting, registration.installing]) if (next) follow(next);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) follow(registration.installing);
  });
}

/** Take the newer release that waits: the page is loaded anew, so all that was typed must be kept. */
export async function takeUpdate() {
  const next = (await navigator.serviceWorker.getRegistration())?.waiting;
  if (next) {
    next.postMessage({ kind: 'take' });
    // Redundant: a still newer one came in its place, and waits now.
    if ((await reaches(next, 'activated', 'redundant')) === 'redundant') return takeUpdate();
  }
  location.reload();
}
