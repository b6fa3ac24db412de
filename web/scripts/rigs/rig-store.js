// Keeps the rigs of the shop on this phone, in a store of their own: what is typed never waits for it.
// A rig is written whole, when a person asks for it; beside the rigs stands what each job's repeated
// sweeps told of the rig it was taken with, once a job.

import { openDB } from 'idb';
import { RIG_FIELDS } from '../common/core-values.js';

/** @import { Fields } from '../form/changes.js' */

/**
 * @typedef {object} Rig
 * @property {string} id
 * @property {string} name
 * @property {Fields} fields the texts of the form that belong to the rig
 * @property {number} used when it was last chosen or saved, in milliseconds since 1970
 * @property {boolean} [deleted]
 *
 * @typedef {{ of: string, variance: number, dof: number }} Repeats of one set of sweeps, as the core has it
 * @typedef {{ rig: string, units: string, sweeps: Repeats[] }} Learned from one job
 */

const RIGS = 'rigs';
const LEARNED = 'learned';
const AT_ONCE = /** @type {const} */ ({ durability: 'strict' });

/** What of a form belongs to the rig. @param {Record<string, unknown>} form @returns {Fields} */
export function rigFields(form) {
  const texts = /** @type {Fields} */ ({});
  for (const name of RIG_FIELDS) {
    const text = form[name];
    if (typeof text === 'string') texts[name] = text;
  }
  return texts;
}

export class RigStore {
  /** @type {import('idb').IDBPDatabase} */
  #db;

  /** @param {import('idb').IDBPDatabase} db */
  constructor(db) {
    this.#db = db;
  }

  /** @param {string} address of the page, as the jobs have it */
  static async open(address) {
    const db = await openDB(`sweepsheet rigs ${address}`, 1, {
      upgrade(made) {
        made.createObjectStore(RIGS, { keyPath: 'id' });
        made.createObjectStore(LEARNED);
      },
    });
    return new RigStore(db);
  }

  /** The rigs, the last used first. @returns {Promise<Rig[]>} */
  async list() {
    const rigs = /** @type {Rig[]} */ (await this.#db.getAll(RIGS));
    return rigs.filter(({ deleted }) => !deleted).sort((a, b) => b.used - a.used);
  }

  /** A new rig, or another state of one. @param {string} id @param {string} name @param {Fields} fields */
  async save(id, name, fields) {
    const write = this.#db.transaction(RIGS, 'readwrite', AT_ONCE);
    const asked = write.store.put({ id, name, fields, used: Date.now() });
    write.commit();
    await Promise.all([asked, write.done]);
  }

  /** Change some of a rig, whatever another page has written of the rest; nothing where it is gone.
   * @param {string} id @param {(rig: Rig) => Rig} change */
  async change(id, change) {
    const write = this.#db.transaction(RIGS, 'readwrite', AT_ONCE);
    const rig = await write.store.get(id);
    if (rig) await write.store.put(change(rig));
    await write.done;
  }

  /** What the repeated sweeps of a job tell of a rig, in place of what they told before.
   * @param {string} job @param {Learned | null} learned */
  async learn(job, learned) {
    if (learned?.rig && learned.sweeps.length) await this.#db.put(LEARNED, learned, job);
    else await this.#db.delete(LEARNED, job);
  }

  /** @param {string} rig @returns {Promise<Learned[]>} */
  async learnedOf(rig) {
    const all = /** @type {Learned[]} */ (await this.#db.getAll(LEARNED));
    return all.filter((each) => each.rig === rig);
  }

  /** Forget for good what was deleted before, and what jobs told that are there no more.
   * @param {string[]} jobs that are there */
  async forget(jobs) {
    for (const rig of /** @type {Rig[]} */ (await this.#db.getAll(RIGS))) {
      if (rig.deleted) await this.#db.delete(RIGS, rig.id);
    }
    for (const job of await this.#db.getAllKeys(LEARNED)) {
      if (!jobs.includes(String(job))) await this.#db.delete(LEARNED, job);
    }
  }
}
