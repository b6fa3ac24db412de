// The lengths of an exercise: what the gauge shows of each is drawn, and typed into its field.

import { get } from '../common/dom.js';
import { keepDrawing } from '../common/svg.js';

/** @typedef {{ field: string, label: string, picture: string }} Shown one length, as Python shows it */

export class Lengths {
  /** @type {Shown[]} */
  #all = [];
  #at = 0;

  #bench = /** @type {HTMLFieldSetElement} */ (get('lengths-bench'));

  constructor() {
    get('length-back').addEventListener('click', () => this.#go(-1));
    get('length-on').addEventListener('click', () => this.#go(1));
    // Who goes to a field sees what it is about.
    this.#bench.addEventListener('focusin', ({ target }) => {
      const name = target instanceof HTMLElement ? target.getAttribute('name') : null;
      const at = this.#all.findIndex(({ field }) => field === name);
      if (at >= 0) this.#show(at);
    });
  }

  /** @param {Shown[]} lengths none where they are not the matter */
  offer(lengths) {
    this.#all = lengths;
    this.#bench.hidden = this.#bench.disabled = lengths.length === 0;
    this.#show(Math.min(this.#at, lengths.length - 1));
  }

  /** Nothing typed stays for another exercise. */
  clear() {
    for (const field of this.#bench.querySelectorAll('input')) field.value = field.defaultValue;
    this.#at = 0;
  }

  /** To the next one, or back, and into its field. @param {1 | -1} way */
  #go(way) {
    const next = this.#all[this.#at + way];
    if (!next) return;
    const field = this.#bench.querySelector(`[name="${next.field}"]`);
    if (field instanceof HTMLInputElement) field.focus({ preventScroll: true });
  }

  /** @param {number} at */
  #show(at) {
    const shown = this.#all[at];
    if (!shown) return;
    this.#at = at;
    get('length-name').textContent = shown.label;
    keepDrawing(get('length-view'), shown.picture);
  }
}
