// Reads a dial off its photo: by three taps on it, or by itself against the sweep's first photo. The core does
// the reading; what it comes to is offered, and stands in the form only when it is tapped.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';
import { toBase64 } from './base64.js';
import { DialScale } from './dial-scale.js';

/** @import { Grey } from './grey.js' */

/**
 * @typedef {{ state: 'read', typed: string, text: string, turns: string } |
 *   { state: 'face', face: unknown } | { state: 'refused', text: string }} Dial
 *
 * @typedef {object} Source what the dial is read off
 * @property {(asked: object) => Promise<Dial>} ask the core
 * @property {() => Promise<Grey | null>} grey this photo
 * @property {() => Promise<Grey | null>} first the photo of the sweep's first position
 * @property {string} firstReading as typed; empty where this is the first, or it is not there
 * @property {(typed: string) => void} enter
 */

/** How well a finger hits, in the pixels of the screen; the keys move the mark by one. */
const SIGMA = 3;
const MOST_SLANT = 20;
const TAPS = /** @type {const} */ (['middle', 'zero', 'tip']);

export class DialReader {
  /** @type {Source | null} */
  #source = null;

  /** @type {number[][]} */
  #taps = [];

  /** Counts the openings: an answer to an older one has no place. */
  #opened = 0;

  /** @param {HTMLImageElement} picture */
  constructor(picture) {
    this.picture = picture;
    this.scale = new DialScale('dial');
    this.tapKey = make('button', { type: 'button', id: 'dial-tap' }, say('dial.tap'));
    this.selfKey = make('button', { type: 'button', id: 'dial-self' }, say('dial.self'));
    this.told = make('p', { className: 'told', id: 'dial-told' });
    this.told.setAttribute('role', 'status');
    this.enter = make('button', { type: 'button', id: 'dial-enter', hidden: true });
    this.mark = make('div', { className: 'dial-mark', hidden: true, tabIndex: 0 });
    this.mark.setAttribute('role', 'button');
    this.tapKey.addEventListener('click', () => this.#begin());
    this.selfKey.addEventListener('click', () => this.#try(() => this.#bySelf()));
    this.enter.addEventListener('click', () => this.#source?.enter(this.enter.value));
    picture.addEventListener('click', (event) => this.#tapped(event.offsetX, event.offsetY));
    this.mark.addEventListener('keydown', (event) => this.#moved(event));
    this.part = make(
      'details',
      { id: 'dial-reader' },
      make('summary', {}, say('dial.read')),
      make('p', { className: 'help' }, say('dial.help')),
      ...this.scale.parts,
      make('p', { className: 'row' }, this.tapKey, this.selfKey),
      this.told,
      make('p', { className: 'row' }, this.enter),
    );
  }

  /** @param {Source | null} source none where there is no picture */
  open(source) {
    this.#opened += 1;
    this.#source = source;
    this.part.hidden = !source;
    this.part.open = false;
    this.selfKey.hidden = !source?.firstReading;
    this.#stop('');
  }

  /** @param {string} text */
  #stop(text) {
    this.#taps = [];
    this.mark.hidden = this.enter.hidden = true;
    this.picture.classList.remove('tapped');
    this.told.textContent = text;
  }

  #begin() {
    this.#stop(say('dial.tap_middle'));
    this.picture.classList.add('tapped');
    this.mark.hidden = false;
    this.#put(this.picture.width / 2, this.picture.height / 2);
    this.mark.focus();
  }

  /** The mark, where it stands in the picture. @param {number} x @param {number} y */
  #put(x, y) {
    this.mark.dataset.x = String(Math.min(Math.max(x, 0), this.picture.width));
    this.mark.dataset.y = String(Math.min(Math.max(y, 0), this.picture.height));
    this.mark.style.left = `${this.picture.offsetLeft + Number(this.mark.dataset.x)}px`;
    this.mark.style.top = `${this.picture.offsetTop + Number(this.mark.dataset.y)}px`;
    this.mark.setAttribute('aria-label', this.told.textContent ?? '');
  }

  /** @param {KeyboardEvent} event */
  #moved(event) {
    const far = event.shiftKey ? 10 : 1;
    const ways = { ArrowLeft: [-far, 0], ArrowRight: [far, 0], ArrowUp: [0, -far], ArrowDown: [0, far] };
    const way = ways[/** @type {keyof typeof ways} */ (event.key)];
    const [x, y] = [Number(this.mark.dataset.x), Number(this.mark.dataset.y)];
    if (way) this.#put(x + (way[0] ?? 0), y + (way[1] ?? 0));
    else if (event.key === 'Enter' || event.key === ' ') this.#tapped(x, y);
    else return;
    event.preventDefault();
  }

  /** @param {number} x @param {number} y on the picture as it is shown */
  #tapped(x, y) {
    if (!this.picture.classList.contains('tapped')) return;
    this.#taps.push([x, y]);
    const next = TAPS[this.#taps.length];
    if (next) {
      this.told.textContent = say(`dial.tap_${next}`);
      this.#put(x, y);
      return;
    }
    const [middle, zero, tip] = this.#taps;
    this.#stop('');
    this.#try(() => this.#ask({ taps: { middle, zero, tip, sigma: SIGMA, slant: MOST_SLANT } }));
  }

  /** @param {object} what @returns {Promise<Dial>} */
  #ask(what) {
    const source = /** @type {Source} */ (this.#source);
    return source.ask({ ...what, scale: this.scale.take() });
  }

  /** @returns {Promise<Dial>} */
  async #bySelf() {
    const source = /** @type {Source} */ (this.#source);
    const [first, here] = await Promise.all([source.first(), source.grey()]);
    if (!first || !here) return { state: 'refused', text: say('dial.no_first') };
    const found = await this.#ask({ picture: asked(first) });
    if (found.state !== 'face') return found;
    const reference = { face: found.face, reading: source.firstReading };
    return this.#ask({ picture: asked(here), reference });
  }

  /** @param {() => Promise<Dial>} read */
  async #try(read) {
    const mine = this.#opened;
    this.#stop(say('dial.working'));
    /** @type {Dial} */
    let found;
    try {
      found = await read();
    } catch (error) {
      found = { state: 'refused', text: error instanceof Error ? error.message : String(error) };
    }
    if (mine !== this.#opened) return;
    if (found.state !== 'read') {
      this.#stop(found.state === 'refused' ? found.text : '');
      return;
    }
    this.#stop(`${found.text} ${found.turns}`);
    this.enter.hidden = false;
    this.enter.value = found.typed;
    this.enter.textContent = say('dial.enter', { reading: found.typed });
    this.enter.focus();
  }
}

/** @param {Grey} picture */
function asked({ grey, width, height }) {
  return { grey: toBase64(grey), width, height };
}
