// Reads a dial off its photo: by three taps on it, or by itself against the sweep's first photo. The core does
// the reading; what it comes to is offered, and stands in the form only when it is tapped.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';
import { DialScale } from './dial-scale.js';
import { asAsked } from './grey.js';
import { MarkPlacer } from './place-mark.js';
import { TurnChoice } from './turn-choice.js';

/** @import { Owner } from './dial-scale.js' */
/** @import { Grey } from './grey.js' */
/** @import { Spot } from './lens.js' */
/** @import { Turn } from './turn-choice.js' */

/**
 * @typedef {{ state: 'read', typed: string, shown: string, text: string, turns: Turn[], note: string } |
 *   { state: 'face', face: unknown } | { state: 'refused', text: string }} Dial
 *
 * @typedef {object} Source what the dial is read off
 * @property {Owner} owner whose scale it is
 * @property {(asked: object) => Promise<Dial>} ask the core
 * @property {() => Promise<Grey | null>} grey this photo
 * @property {() => Promise<Grey | null>} first the photo of the sweep's first position
 * @property {string} firstName what that is called; another photo is called otherwise
 * @property {string} firstReading as typed; empty where this is the first, or it is not there
 * @property {(typed: string) => void} enter
 */

/** How well a finger hits, in the pixels of the screen. */
const SIGMA = 3;
const MOST_SLANT = 20;
const TAPS = /** @type {const} */ (['middle', 'zero', 'tip']);

export class DialReader {
  /** @type {Source | null} */
  #source = null;

  /** @type {Spot[]} */
  #taps = [];

  /** How well they hit, the worst of them, in the pixels of the picture. */
  #sigma = 0;

  /** The face that was found last on a first photo: it is the same for every other photo of the sweep.
   * @type {{ of: string, face: unknown } | null} */
  #known = null;

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
    this.turns = new TurnChoice((turn) => this.#offer(turn));
    this.placer = new MarkPlacer(picture, (spot, across) => this.#tapped(spot, across));
    // Below the picture: what is to be tapped is read while it is.
    this.wanted = make('p', { className: 'told', id: 'dial-wanted', hidden: true });
    this.wanted.setAttribute('role', 'status');
    this.overlay = [this.placer.mark, this.placer.lens.part, this.wanted];
    this.tapKey.addEventListener('click', () => this.#begin());
    this.selfKey.addEventListener('click', () => this.#try(() => this.#bySelf()));
    this.enter.addEventListener('click', () => this.#source?.enter(this.enter.value));
    this.part = make(
      'details',
      { id: 'dial-reader' },
      make('summary', {}, say('dial.read')),
      make('p', { className: 'help' }, say('dial.help')),
      ...this.scale.parts,
      make('p', { className: 'row' }, this.tapKey, this.selfKey),
      this.told,
      this.turns.part,
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
    if (source) this.scale.show(source.owner);
    this.#stop('');
  }

  /** @param {string} text */
  #stop(text) {
    this.#taps = [];
    this.#sigma = 0;
    this.placer.stop();
    this.turns.hide();
    this.enter.hidden = this.wanted.hidden = true;
    this.told.textContent = text;
  }

  #begin() {
    // A broken picture has no places.
    if (!this.picture.naturalWidth) return this.#stop(say('photos.was_lost'));
    this.#stop('');
    this.wanted.hidden = false;
    this.wanted.textContent = `${say('dial.tap_middle')} ${say('dial.lens')}`;
    this.wanted.scrollIntoView({ block: 'nearest' });
    return this.placer.begin(say('dial.tap_middle'));
  }

  /** @param {Spot} spot @param {number} across how many pixels of the picture one of the screen is */
  #tapped(spot, across) {
    this.#taps.push(spot);
    this.#sigma = Math.max(this.#sigma, SIGMA * across);
    const next = TAPS[this.#taps.length];
    if (next) {
      this.wanted.textContent = say(`dial.tap_${next}`);
      this.placer.name(this.wanted.textContent);
      return;
    }
    const [middle, zero, tip] = this.#taps;
    const taps = { middle, zero, tip, sigma: this.#sigma, slant: MOST_SLANT };
    this.#try(() => this.#ask({ taps }));
  }

  /** @param {object} what @param {object} [scale] @returns {Promise<Dial>} */
  #ask(what, scale = this.scale.take()) {
    const source = /** @type {Source} */ (this.#source);
    return source.ask({ ...what, scale });
  }

  /** @returns {Promise<Dial>} */
  async #bySelf() {
    const source = /** @type {Source} */ (this.#source);
    const scale = this.scale.take(); // what is typed meanwhile counts the next time
    const of = `${source.firstName} ${JSON.stringify(scale)}`;
    const [first, here] = await Promise.all([source.first(), source.grey()]);
    if (!first || !here) return { state: 'refused', text: say('dial.no_first') };
    let known = this.#known;
    if (known?.of !== of) {
      const found = await this.#ask({ picture: asAsked(first) }, scale);
      if (found.state === 'refused') return { ...found, text: say('dial.of_first', { text: found.text }) };
      if (found.state !== 'face') return found;
      known = { of, face: found.face };
      this.#known = known;
    }
    const reference = { face: known.face, reading: source.firstReading };
    return this.#ask({ picture: asAsked(here), reference }, scale);
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
    this.#stop(`${found.text} ${found.note}`);
    this.turns.show(found.turns, found.typed);
    this.#offer(found);
    this.enter.focus();
  }

  /** What the key enters. @param {{ typed: string, shown: string }} reading */
  #offer({ typed, shown }) {
    this.enter.hidden = false;
    this.enter.value = typed;
    this.enter.textContent = say('dial.enter', { reading: shown });
  }
}
