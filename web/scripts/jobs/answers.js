// Keeps the last answer of each job, in a store of its own: what is typed never waits for it.

import { openDB } from 'idb';

/** @import { Kept } from '../report/known.js' */

const ANSWERS = 'answers';

/** An answer that is not kept comes when Python is up. @param {unknown} error */
export function cantKeep(error) {
  console.warn(`No answer is kept for the next time: ${error}`);
  return null;
}

export class Answers {
  /** @type {import('idb').IDBPDatabase} */
  #db;

  /** @param {import('idb').IDBPDatabase} db */
  constructor(db) {
    this.#db = db;
  }

  /** @param {string} address of the page, as the jobs have it */
  static async open(address) {
    const upgrade = (/** @type {import('idb').IDBPDatabase} */ made) => void made.createObjectStore(ANSWERS);
    return new Answers(await openDB(`sweepsheet answers ${address}`, 1, { upgrade }));
  }

  /** @param {string} job @returns {Promise<Kept | null>} */
  async read(job) {
    return (await this.#db.get(ANSWERS, job)) ?? null;
  }

  /** @param {string} job @param {Kept} answer */
  async write(job, answer) {
    await this.#db.put(ANSWERS, answer, job);
  }

  /** Forget those of jobs that are there no more. @param {string[]} jobs that are there */
  async forgetOthers(jobs) {
    for (const job of await this.#db.getAllKeys(ANSWERS)) {
      if (!jobs.includes(String(job))) await this.#db.delete(ANSWERS, job);
    }
  }
}
