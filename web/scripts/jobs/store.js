// Keeps the jobs on this phone, each field by itself: what one page writes never takes away what
// another one wrote. A write is handed over whole before the next line runs, and asks the browser not to
// say "done" before it is on the disk.

import { openDB } from 'idb';

/** @typedef {Record<string, string>} Fields every named field with its text */

/**
 * @typedef {object} Job
 * @property {string} id
 * @property {string} name
 * @property {string} stage the code of the verdict on what was last found
 * @property {number} changed milliseconds since 1970
 */

/** Where a tab keeps, in its own storage, which job it has open. */
export const OPEN_HERE = 'sweepsheet job';

/** A name for a new job. `randomUUID` is not there on a plain http address. */
export function newId() {
  return crypto.getRandomValues(new Uint32Array(4)).join('-');
}

/** What is kept beside the fields of the form. */
const NAME = '.name';
const STAGE = '.stage';
const CHANGED = '.changed';

const AT_ONCE = /** @type {const} */ ({ durability: 'strict' });

/** The fields of one job, in the order of their keys. @param {string} job */
function within(job) {
  return IDBKeyRange.bound([job], [job, []]);
}

export class Store {
  /** @type {import('idb').IDBPDatabase} */
  #db;

  /** @param {import('idb').IDBPDatabase} db */
  constructor(db) {
    this.#db = db;
  }

  /** Open the store of the page at this address; other copies on the host have their own.
   * @param {string} address */
  static async open(address) {
    const db = await openDB(`sweepsheet ${address}`, 1, {
      upgrade(made) {
        made.createObjectStore('jobs', { keyPath: 'id' });
        made.createObjectStore('fields');
      },
    });
    return new Store(db);
  }

  /** The jobs, the last changed first. @param {boolean} [isWhole] with those that can be brought back
   * @returns {Promise<Job[]>} */
  async list(isWhole) {
    const read = this.#db.transaction(['jobs', 'fields']);
    const fields = read.objectStore('fields');
    const records = await read.objectStore('jobs').getAll();
    const jobs = await Promise.all(
      records
        .filter(({ deleted }) => isWhole || !deleted)
        .map(async ({ id }) => ({
          id,
          name: (await fields.get([id, NAME])) ?? '',
          stage: (await fields.get([id, STAGE])) ?? '',
          changed: Number((await fields.get([id, CHANGED])) ?? 0),
        })),
    );
    return jobs.sort((a, b) => b.changed - a.changed);
  }

  /** The name of a job, and what stands in its form.
   * @param {string} job @returns {Promise<{ name: string, fields: Fields }>} */
  async read(job) {
    const read = this.#db.transaction('fields');
    const [keys, texts] = await Promise.all([
      read.store.getAllKeys(within(job)),
      read.store.getAll(within(job)),
    ]);
    const { [NAME]: name = '', ...all } = Object.fromEntries(
      keys.map((key, i) => [/** @type {string[]} */ (key)[1], texts[i]]),
    );
    const fields = Object.entries(all).filter(([key]) => !key.startsWith('.'));
    return { name, fields: Object.fromEntries(fields) };
  }

  /** Write what has changed; null takes a field away. Rejects where the browser won't keep it.
   * @param {string} job @param {Record<string, string | null>} changes */
  write(job, changes) {
    return this.#put(job, changes, true);
  }

  /** @param {string} job @param {Record<string, string | null>} changes
   * @param {boolean} isWork whether a person did it, which makes it a job, or one again */
  async #put(job, changes, isWork) {
    const all = { ...changes, [CHANGED]: String(Date.now()) };
    const write = this.#db.transaction(['jobs', 'fields'], 'readwrite', AT_ONCE);
    const fields = write.objectStore('fields');
    const asked = isWork ? [write.objectStore('jobs').put({ id: job })] : [];
    for (const [name, text] of Object.entries(all)) {
      asked.push(text === null ? fields.delete([job, name]) : fields.put(text, [job, name]));
    }
    write.commit();
    await Promise.all([...asked, write.done]);
  }

  /** @param {string} job @param {string} name */
  rename(job, name) {
    return this.write(job, { [NAME]: name });
  }

  /** What was found; a job that was deleted meanwhile stays so. @param {string} job @param {string} stage */
  setStage(job, stage) {
    return this.#put(job, { [STAGE]: stage }, false);
  }

  /** New jobs, all of them or none. @param {{ id: string, name: string, fields: Fields }[]} jobs */
  async add(jobs) {
    const write = this.#db.transaction(['jobs', 'fields'], 'readwrite', AT_ONCE);
    const fields = write.objectStore('fields');
    const changed = Date.now();
    const asked = [];
    for (const [n, { id, name, fields: texts }] of jobs.entries()) {
      // The first of them is the one that was changed last.
      const all = { ...texts, [NAME]: name, [CHANGED]: String(changed - n) };
      asked.push(write.objectStore('jobs').put({ id }));
      for (const [key, text] of Object.entries(all)) asked.push(fields.put(text, [id, key]));
    }
    write.commit();
    await Promise.all([...asked, write.done]);
  }

  /** Out of the list, to be had back until the page is next opened. @param {string} job */
  remove(job) {
    return this.#mark({ id: job, deleted: true });
  }

  /** @param {string} job */
  bringBack(job) {
    return this.#mark({ id: job });
  }

  /** @param {{ id: string, deleted?: boolean }} job */
  async #mark(job) {
    const write = this.#db.transaction('jobs', 'readwrite', AT_ONCE);
    const asked = write.store.put(job);
    write.commit();
    await Promise.all([asked, write.done]);
  }

  /** Forget for good what was removed before. */
  async forgetRemoved() {
    const write = this.#db.transaction(['jobs', 'fields'], 'readwrite');
    const records = await write.objectStore('jobs').getAll();
    for (const { id } of records.filter(({ deleted }) => deleted)) {
      write.objectStore('jobs').delete(id);
      write.objectStore('fields').delete(within(id));
    }
    await write.done;
  }
}
