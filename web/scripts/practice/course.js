// A teacher's set, as the pupil goes through it: which exercise is open, what is kept of each, and the link
// that is sent back in the end.

import { copyOf } from '../common/copy.js';
import { get } from '../common/dom.js';
import { ADDRESS } from '../common/release.js';
import { say } from '../common/words.js';
import { Kept } from './kept.js';

/** @import { Core } from '../python/core.js' */
/** @import { Fields } from './kept.js' */

const link = /** @type {HTMLTextAreaElement} */ (get('sent-link'));
const pupil = /** @type {HTMLInputElement} */ (get('pupil'));

/** Of these nothing is kept. */
const NOT_KEPT = ['exercise.set', 'exercise.at', 'exercise.truth', 'exercise.seed', 'exercise.level'];

/** @param {string} field of a link @param {string} button */
export function letCopy(field, button) {
  const place = /** @type {HTMLTextAreaElement} */ (get(field));
  get(button).addEventListener('click', async () => {
    place.select();
    get(button).textContent = say((await copyOf(place)) ? 'set.copied' : 'set.copy_by_hand');
  });
}

/** A link to the practice page with this behind it. @param {string} fragment */
export function practiceLink(fragment) {
  return new URL(`practice.html#${fragment}`, ADDRESS || location.href).href;
}

export class Course {
  /** The set as its address has it; empty where there is none. */
  set = '';

  at = '1';

  /** Nothing is written before what was kept is back in its fields. */
  isBack = false;

  /** Counts the changes: a link that was being made meanwhile is an old one. */
  #changes = 0;

  /** @type {Promise<Kept | null>} */
  #kept;

  constructor() {
    this.#kept = Kept.open(new URL('.', location.href).pathname).catch(() => null);
  }

  /** What was kept of the exercise that is open. @returns {Promise<Fields>} */
  async take() {
    const { set, at } = this;
    const kept = await this.#kept;
    get('kept').textContent = say(kept ? 'set.kept' : 'set.not_kept');
    try {
      return (await kept?.take(set, at)) ?? {};
    } catch (why) {
      get('kept').textContent = `${say('set.not_kept')} ${why}`;
      return {};
    }
  }

  /** Hand over what stands in the fields. @param {Fields} texts */
  keep(texts) {
    if (!this.set || !this.isBack) return;
    const { set, at } = this;
    const fields = Object.fromEntries(Object.entries(texts).filter(([name]) => !NOT_KEPT.includes(name)));
    this.#changes += 1;
    link.value = '';
    get('sent').hidden = true;
    this.#kept
      .then((kept) => kept?.write(set, at, fields))
      .catch((why) => {
        get('kept').textContent = `${say('set.not_kept')} ${why}`;
      });
  }

  /** @param {Core} core @param {string[]} places of the exercises */
  async send(core, places) {
    const { set } = this;
    const changes = this.#changes;
    const kept = await this.#kept;
    const work = await Promise.all(places.map((at) => kept?.read(set, at) ?? {}));
    const { fragment, trouble } = await core.sendResults({ set, name: pupil.value, work });
    if (changes !== this.#changes || set !== this.set) return;
    get('send-fault').textContent = trouble;
    if (!fragment) return;
    link.value = practiceLink(`results=${fragment}`);
    get('sent').hidden = false;
  }

  async forget() {
    this.isBack = false;
    const kept = await this.#kept;
    await kept?.forget(this.set);
  }
}
