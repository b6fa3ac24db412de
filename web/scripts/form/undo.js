// Takes changes of the form back, step by step: what each changed field held before.

import { changed, differences } from './changes.js';

/** @import { Changes, Fields } from './changes.js' */

const MOST_STEPS = 100;
/** Letters typed into one field without such a pause are one step. */
const PAUSE_MS = 2000;

export class Undo {
  /** @type {{ field: string, at: number, before: Changes }[]} */
  #steps = [];

  /** The form after the last change. @type {Fields} */
  #last = {};

  /** @param {Fields} fields */
  constructor(fields) {
    this.#last = fields;
  }

  /** Whether there is anything to take back. */
  get isPossible() {
    return this.#steps.length > 0;
  }

  /** The form was changed by something else than a person at it. @param {Fields} fields */
  follow(fields) {
    this.#last = fields;
  }

  /** Another job is in the form. @param {Fields} fields */
  forget(fields) {
    this.#steps = [];
    this.#last = fields;
  }

  /** Keep what a change has taken away. @param {Fields} fields the form after it
   * @param {string} field in which something was typed, "" for any other change */
  note(fields, field) {
    const before = differences(fields, this.#last);
    this.#last = fields;
    if (!Object.keys(before).length) return;
    const at = Date.now();
    const step = this.#steps.at(-1);
    if (step && field && step.field === field && at - step.at < PAUSE_MS) {
      step.at = at;
      step.before = { ...before, ...step.before };
      return;
    }
    this.#steps.push({ field, at, before });
    if (this.#steps.length > MOST_STEPS) this.#steps.shift();
  }

  /** What is to stand in the form instead; null where there is nothing to take back.
   * @param {Fields} fields the form as it is @returns {Fields | null} */
  takeBack(fields) {
    const step = this.#steps.pop();
    return step ? changed(fields, step.before) : null;
  }
}
