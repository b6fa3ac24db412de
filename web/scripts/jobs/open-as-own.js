// Copies the job of a link into the jobs on this phone, as a new one, and opens it.

import { OPEN_HERE, Store, newId } from './store.js';

const address = new URL('..', import.meta.url).href;

/** @param {Record<string, string>} form with the name of the job among its texts */
export async function openAsOwn({ name = '', ...fields }) {
  const store = await Store.open(address);
  const id = newId();
  await store.add([{ id, name, fields }]);
  sessionStorage.setItem(OPEN_HERE, id);
  // In the language of this page, and with it what was chosen by hand.
  const home = /** @type {HTMLAnchorElement} */ (document.querySelector('a[data-home]'));
  location.assign(home.href + location.search);
}
