// Keeps what was typed in a teacher's set on this phone, field by field, in a store of its own, until the set
// is cleared. A write is handed over whole before the next line runs.

import { openDB } from 'idb';

/** @typedef {Record<string, string>} Fields */

const AT_ONCE = /** @type {const} */ ({ durability: 'strict' });

/** The fields of one exercise, or of a whole set. @param {string[]} key */
function within(key) {
  return IDBKeyRange.bound(key, [...key, []]);
}

export class Kept {
  /** @type {import('idb').IDBPDatabase} */
  #db;

  /** What was last handed over of the exercise that is open. @type {Fields} */
  #last = {};

  /** @param {import('idb').IDBPDatabase} db */
  constructor(db) {
    this.#db = db;
  }

  /** @param {string} address of the folder of the page */
  static async open(address) {
    const db = await openDB(`sweepsheet practice ${address}`, 1, {
      upgrade(made) {
        made.createObjectStore('fields');
      },
    });
    return new Kept(db);
  }

  /** What was kept of one exercise. @param {string} set @param {string} at @returns {Promise<Fields>} */
  async read(set, at) {
    const read = this.#db.transaction('fields');
    const key = within([set, at]);
    const [keys, texts] = await Promise.all([read.store.getAllKeys(key), read.store.getAll(key)]);
    return Object.fromEntries(keys.map((each, i) => [/** @type {string[]} */ (each)[2], texts[i]]));
  }

  /** Open one: what is written from now on is written over this. @param {string} set @param {string} at */
  async take(set, at) {
    this.#last = await this.read(set, at);
    return { ...this.#last };
  }

  /** @param {string} set @param {string} at @param {Fields} fields all there is to be kept of it */
  async write(set, at, fields) {
    const before = this.#last;
    this.#last = { ...fields };
    const write = this.#db.transaction('fields', 'readwrite', AT_ONCE);
    const asked = Object.keys({ ...before, ...fields })
      .filter((name) => before[name] !== fields[name])
      .map((name) => {
        const text = fields[name];
        return text === undefined
          ? write.store.delete([set, at, name])
          : write.store.put(text, [set, at, name]);
      });
    write.commit();
    await Promise.all([...asked, write.done]);
  }

  /** Forget a set for good. @param {string} set */
  async forget(set) {
    this.#last = {};
    await this.#db.delete('fields', within([set]));
  }
}
