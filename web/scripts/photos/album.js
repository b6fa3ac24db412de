// The pictures on this phone, in a store of their own: what is typed never waits for it. A picture stands
// under its name, which is made of its bytes; a job says which reading has which. A picture that is not
// ready yet has a ticket: the job holds that instead, wherever it may be by then.

import { openDB } from 'idb';

const PICTURES = 'pictures';
const TICKETS = 'tickets';

/** What is left free for what is typed; bytes. */
const ROOM = 2_000_000;

/** @typedef {{ file?: Blob, picture?: string }} Ticket the picture as it came, or what became of it */

/** There is no room on this phone. */
export class FullError extends Error {}

/** A name that no picture has. */
export function newTicket() {
  return `new-${crypto.getRandomValues(new Uint32Array(2)).join('-')}`;
}

/** @param {string} text that stands in a job */
export function isTicket(text) {
  return text.startsWith('new-');
}

/** What a picture is called: the first 16 hexadecimal digits of the SHA-256 of its bytes.
 * @param {BufferSource} bytes */
export async function nameOf(bytes) {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(hash.subarray(0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export class Album {
  /** @type {import('idb').IDBPDatabase} */
  #db;

  /** @param {import('idb').IDBPDatabase} db */
  constructor(db) {
    this.#db = db;
  }

  /** @param {string} address of the page, as the jobs have it */
  static async open(address) {
    const db = await openDB(`sweepsheet photos ${address}`, 1, {
      upgrade(made) {
        made.createObjectStore(PICTURES);
        made.createObjectStore(TICKETS);
      },
    });
    return new Album(db);
  }

  /** The bytes of a picture, if it is here. @param {string} name @returns {Promise<Uint8Array<ArrayBuffer> | undefined>} */
  picture(name) {
    return this.#db.get(PICTURES, name);
  }

  /** @param {string} ticket @returns {Promise<Ticket | undefined>} */
  ticket(ticket) {
    return this.#db.get(TICKETS, ticket);
  }

  /** Keep a picture as it came until it is ready, so that a reload does not lose it.
   * @param {string} ticket @param {Blob} file */
  async wait(ticket, file) {
    await this.#db.put(TICKETS, { file }, ticket);
  }

  /** A picture is ready; as it came it is not kept. @param {string} ticket @param {Uint8Array<ArrayBuffer>} bytes
   * @returns {Promise<string>} its name */
  async keep(ticket, bytes) {
    const name = await nameOf(bytes);
    await this.add(new Map([[name, bytes]]), new Map([[ticket, { picture: name }]]));
    return name;
  }

  /** All of them or none. @param {Map<string, Uint8Array<ArrayBuffer>>} pictures by name
   * @param {Map<string, Ticket>} [tickets] */
  async add(pictures, tickets = new Map()) {
    const needed = [...pictures.values()].reduce((sum, { length }) => sum + length, ROOM);
    const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
    if (quota - usage < needed) throw new FullError();
    try {
      const write = this.#db.transaction([PICTURES, TICKETS], 'readwrite', { durability: 'strict' });
      const asked = [
        ...[...pictures].map(([name, bytes]) => write.objectStore(PICTURES).put(bytes, name)),
        ...[...tickets].map(([ticket, told]) => write.objectStore(TICKETS).put(told, ticket)),
      ];
      await Promise.all([...asked, write.done]);
    } catch (error) {
      if (error instanceof DOMException && error.name === 'QuotaExceededError') throw new FullError();
      throw error;
    }
  }

  /** @param {string} ticket of a picture that came to nothing */
  async forget(ticket) {
    await this.#db.delete(TICKETS, ticket);
  }

  /** Forget what no job has any more. @param {Set<string>} used what stands in the jobs */
  async tidy(used) {
    const write = this.#db.transaction([PICTURES, TICKETS], 'readwrite');
    const [pictures, tickets] = [write.objectStore(PICTURES), write.objectStore(TICKETS)];
    const needed = new Set(used);
    for (const key of await tickets.getAllKeys()) {
      const { picture } = /** @type {Ticket} */ (await tickets.get(key));
      if (!used.has(String(key))) tickets.delete(key);
      else if (picture) needed.add(picture);
    }
    for (const key of await pictures.getAllKeys()) {
      if (!needed.has(String(key))) pictures.delete(key);
    }
    await write.done;
  }
}
