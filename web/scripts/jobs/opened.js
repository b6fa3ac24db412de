// The stores of the jobs are opened, and the job that was open last is read, from the moment on at which the
// script is there: it takes two tenths of a second, in which the page is drawn.

import { Answers, cantKeep } from './answers.js';
import { OPEN_HERE, Store } from './store.js';

/** @import { Changes } from '../form/changes.js' */
/** @import { Fields, Job } from './store.js' */
/** @import { Kept } from '../report/known.js' */

/** What the stores are named after. */
export const ADDRESS = new URL('..', import.meta.url).href;

const store = Store.open(ADDRESS);
const answers = Answers.open(ADDRESS);

/** Tells other pages of the same host what was written here. */
const others = new BroadcastChannel(`sweepsheet ${ADDRESS}`);

/** What other pages have written since, which may not be in what was read.
 * @type {{ job: string, changes: Changes }[]} */
const heard = [];
others.onmessage = ({ data }) => heard.push(data);

/** The jobs that are there, and what is kept of the one that was open last: here, or else anywhere.
 * @returns {Promise<{ jobs: Job[], id: string, name: string, fields: Fields, answer: Kept | null }>} */
async function readLast() {
  const jobs = await (await store).list();
  const here = sessionStorage.getItem(OPEN_HERE);
  const id = (jobs.find((job) => job.id === here) ?? jobs[0])?.id ?? '';
  const [{ name, fields }, answer] = await Promise.all([
    (await store).read(id),
    answers.then((kept) => kept.read(id)).catch(cantKeep),
  ]);
  return { jobs, id, name, fields, answer };
}

export const opened = { store, answers, others, heard, last: readLast() };

// Where this browser keeps nothing, whoever waits for them is told.
for (const opening of [store, answers, opened.last]) opening.catch(() => undefined);
