// Offers a photo beside each reading to who wants one. What it takes is brought when it is first wanted.

import { get } from '../common/dom.js';
import { recall, remember } from '../common/chosen.js';
import { say } from '../common/words.js';

/** @import { Page, Photos } from './photos.js' */

const CHOICE = 'sweepsheet-photos';
const choice = /** @type {HTMLSelectElement} */ (get('photos-choice'));

export class PhotoOffer {
  /** @type {Page} */
  #page;

  /** @type {Promise<Photos> | null} */
  #brought = null;

  #isStarted = false;

  /** @param {Page} page what they need of it */
  constructor(page) {
    this.#page = page;
    const before = recall(CHOICE);
    if (before === 'camera' || before === 'files') choice.value = before;
    choice.addEventListener('change', () => this.#choose());
  }

  /** The jobs are there. */
  start() {
    this.#isStarted = true;
    this.look();
  }

  /** The form has changed: photos that have come with it are shown. */
  look() {
    const isWanted = choice.value !== 'none' || document.querySelector('.photo-id');
    if (isWanted && this.#isStarted && !this.#brought) this.bring().catch(tell);
  }

  /** What shows, keeps and carries them. */
  bring() {
    this.#brought ??= import('./photos.js').then(({ startPhotos }) => startPhotos(this.#page));
    this.#brought.catch(() => {
      this.#brought = null; // the next time may do better
    });
    return this.#brought;
  }

  async #choose() {
    get('photos-told').textContent = '';
    remember(CHOICE, choice.value);
    try {
      (await this.bring()).show();
    } catch (error) {
      tell(error);
    }
  }
}

/** @param {unknown} error */
function tell(error) {
  const why = error instanceof Error ? error.message : String(error);
  get('photos-told').textContent = say('photos.not_here', { why });
}
