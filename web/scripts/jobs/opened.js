// The stores of the jobs are being opened from the moment on at which the script is there: it takes a tenth of
// a second, in which the page is drawn.

import { Answers } from './answers.js';
import { Store } from './store.js';

/** What the stores are named after. */
export const ADDRESS = new URL('..', import.meta.url).href;

export const opened = { store: Store.open(ADDRESS), answers: Answers.open(ADDRESS) };

// Where this browser keeps nothing, whoever waits for them is told.
for (const opening of Object.values(opened)) opening.catch(() => undefined);
