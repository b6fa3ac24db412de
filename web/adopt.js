// Copies the job of a link into the jobs on this phone, as a new one, and opens it.

import { OPEN_HERE, Store, newId } from './store.js';

const address = new URL('..', import.meta.url).href;

/** @param {Record<string, string>} form @param {string} name */
export async function openAsOwn(form, name) {
  const store = await Store.open(address);
  const id = newId();
  await store.write(id, form);
  if (name) await store.rename(id, name);
  sessionStorage.setItem(OPEN_HERE, id);
  location.assign(address);
}
