// What is asked of Python, in the order in which it is to be answered.
//
// Only the newest question matters: while one is being worked out, a newer one waits, and takes the
// place of any other that waits. A question that was overtaken resolves to null, so an old answer
// never comes after a newer one. What has to be answered comes in its turn; what has time, such as a
// link, waits until nothing else does.

/**
 * @typedef {object} Asked
 * @property {number} id
 * @property {string} text
 * @property {(answer: any) => void} resolve
 * @property {(error: Error) => void} reject
 * @property {boolean} [surely] it is answered, whatever else is asked
 */

/** Room for one question, which a newer one overtakes. */
export class Slot {
  /** @type {Asked | null} */
  asked = null;

  /** @param {Asked} asked */
  put(asked) {
    this.asked?.resolve(null);
    this.asked = asked;
  }

  take() {
    const { asked } = this;
    this.asked = null;
    return asked;
  }
}

export class Queue {
  /** What is being worked out. @type {Asked | null} */
  #running = null;
  #newest = new Slot();
  /** @type {Asked[]} */
  #sure = [];
  #later = new Slot();

  /** @param {Asked} asked */
  ask(asked) {
    this.#newest.put(asked);
  }

  /** @param {Asked} asked */
  askLater(asked) {
    this.#later.put(asked);
  }

  /** @param {Asked} asked */
  askSurely(asked) {
    this.#sure.push({ ...asked, surely: true });
  }

  /** The next question that may be sent, or null: one is worked out at a time. */
  next() {
    if (this.#running) return null;
    this.#running = this.#newest.take() ?? this.#sure.shift() ?? this.#later.take();
    return this.#running;
  }

  /** @param {string} text */
  answer(text) {
    const asked = this.#running;
    this.#running = null;
    asked?.resolve(this.#newest.asked && !asked.surely ? null : JSON.parse(text));
  }

  /** @param {string} why */
  refuse(why) {
    this.#running?.reject(new Error(why));
    this.#running = null;
  }

  /** What was being worked out is asked again, first of all, unless a newer one waits. */
  again() {
    const asked = this.#running;
    this.#running = null;
    if (!asked) return;
    if (asked.surely) this.#sure.unshift(asked);
    else if (this.#newest.asked) asked.resolve(null);
    else this.#newest.put(asked);
  }

  /** @param {Error} error */
  refuseAll(error) {
    const all = [this.#running, this.#newest.take(), ...this.#sure, this.#later.take()];
    this.#running = null;
    this.#sure = [];
    for (const asked of all) asked?.reject(error);
  }
}
