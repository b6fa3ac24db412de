// The last answer of a job, kept on the phone beside it: shown at once when the job is opened again, and
// marked so until Python has answered for itself. It is of one form, in one language, by one release, and
// stands for no other.

import { get } from '../common/dom.js';
import { conceal, paint } from './paint.js';
import { say } from '../common/words.js';

/** @import { Answer } from './paint.js' */
/** @typedef {{ of: string, answer: Answer }} Kept what it is the answer of, and the answer */

/** An answer is kept when nothing was typed for so long; ms. */
const PAUSE = 1000;

const root = document.documentElement;
const release = new URL('.', import.meta.url).href;

/** All that an answer hangs on. @param {Record<string, string>} form */
function keyOf(form) {
  return JSON.stringify([release, root.lang, Object.entries(form).sort()]);
}

export class Known {
  /** Of the job that has come, from the last time. @type {Kept | null} */
  #last = null;

  /** What Python has answered, and is not kept yet. @type {{ form: Record<string, string>, answer: Answer } | null} */
  #fresh = null;

  #timer = 0;

  /** @param {(kept: Kept) => void} keep writes it beside the open job */
  constructor(keep) {
    this.keep = keep;
    document.addEventListener('visibilitychange', () => document.hidden && this.#keep());
  }

  /** A job has come, with what was kept beside it. @param {Kept | null} kept */
  come(kept) {
    this.#last = kept;
  }

  /** Python is about to be asked about a form: show what is known of it, and nothing that is known of
   * another. @param {Record<string, string>} form @returns {Answer | null} what is shown */
  before(form) {
    this.#fresh = null;
    if (!this.#last && !root.dataset.known) return null;
    const known = this.#last?.of === keyOf(form) ? this.#last.answer : null;
    if (known) {
      paint(known);
      performance.mark('last-answer'); // for the bench
    } else if (root.dataset.known) {
      conceal(say('result.waiting'));
      delete root.dataset.answer;
    }
    const isFailed = root.dataset.python === 'failed';
    this.#mark(known ? (isFailed ? 'result.known_unchecked' : 'result.known') : '');
    return known;
  }

  /** Python has answered. @param {Record<string, string>} form @param {Answer} answer */
  answered(form, answer) {
    this.#last = null;
    if (root.dataset.known) this.#mark('');
    paint(answer);
    clearTimeout(this.#timer);
    if (answer.state !== 'answer') return;
    this.#fresh = { form, answer };
    this.#timer = window.setTimeout(() => this.#keep(), PAUSE);
  }

  /** Python won't answer: what is shown from last time stays, and is called that. */
  unanswered() {
    if (root.dataset.known) this.#mark('result.known_unchecked');
  }

  #keep() {
    if (!this.#fresh) return;
    const { form, answer } = this.#fresh;
    this.#fresh = null;
    this.keep({ of: keyOf(form), answer });
  }

  /** @param {string} key of the sentence that says what is shown; none where Python said it now */
  #mark(key) {
    if (key) root.dataset.known = 'kept';
    else delete root.dataset.known;
    get('known').hidden = !key;
    get('known').textContent = key && say(key);
    for (const id of ['shown', 'strip']) get(id).classList.toggle('stale', Boolean(key));
  }
}
