// The other jobs on this phone as a list, to be searched and put in order where there are many.

import { get, make } from '../common/dom.js';
import { STANDINGS } from '../common/core-values.js';
import { say } from '../common/words.js';

/** @import { Job } from './store.js' */

/** From so many on they can be searched. */
const MANY = 8;
/** As many stand in the page at once; the search finds the rest. */
const MOST_SHOWN = 100;

/** What was last found. Older releases kept it in words. @param {string} stage */
function stageWord(stage) {
  return STANDINGS.some((known) => known === stage) ? say(`answer.verdict.${stage}`) : stage;
}

export class JobList {
  /** What stands in the list, the last changed first. @type {{ id: string, text: string }[]} */
  #rows = [];

  /** @param {(id: string) => void} open */
  constructor(open) {
    this.open = open;
    this.find = /** @type {HTMLInputElement} */ (get('job-find'));
    this.order = /** @type {HTMLSelectElement} */ (get('job-order'));
    this.find.addEventListener('input', () => this.#paint());
    this.order.addEventListener('change', () => this.#paint());
  }

  /** @param {Job[]} jobs the last changed first */
  show(jobs) {
    const clock = new Intl.DateTimeFormat([], { dateStyle: 'short', timeStyle: 'short' });
    this.#rows = jobs.map((job) => ({ id: job.id, text: textOf(job, clock) }));
    get('job-find-part').hidden = jobs.length < MANY;
    get('job-list-title').hidden = jobs.length === 0;
    this.#paint();
  }

  #paint() {
    const wanted = this.find.value.trim().toLocaleLowerCase();
    const found = this.#rows.filter(({ text }) => text.toLocaleLowerCase().includes(wanted));
    if (this.order.value === 'name') found.sort((a, b) => a.text.localeCompare(b.text, undefined, { numeric: true }));
    const rows = found.slice(0, MOST_SHOWN).map(({ id, text }) => {
      const button = make('button', { type: 'button' }, text);
      button.addEventListener('click', () => this.open(id));
      return make('li', {}, button);
    });
    get('job-list').replaceChildren(...rows);
  }
}

/** @param {Job} job @param {Intl.DateTimeFormat} clock */
function textOf({ name, stage, changed }, clock) {
  const when = clock.format(new Date(changed));
  return [name || say('job.unnamed'), stageWord(stage), when].filter(Boolean).join(' · ');
}
