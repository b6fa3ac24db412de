// The stops of a film as a list: a small picture each, the position it belongs to, what was read off it, and the
// key that enters it. Stops that do not fit are matched by hand, and nothing is entered before that is confirmed.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';

/** @import { Fields } from '../form/form.js' */
/** @import { Dial } from './read-dial.js' */

/**
 * @typedef {{ state: 'refused', text: string } |
 *   { state: 'stops', stops: { text: string, best: number[] }[], fits: boolean, text: string }} Found
 *
 * @typedef {object} Stop
 * @property {string} text what it is called
 * @property {Uint8Array<ArrayBuffer>[]} pictures the best one first
 * @property {number} best which of them is shown and kept
 * @property {string} url of that
 * @property {string} at the name of its reading; empty where it belongs to none
 * @property {Dial | null} read
 *
 * @typedef {object} Row
 * @property {Stop} stop
 * @property {HTMLImageElement} picture
 * @property {HTMLSelectElement} choice
 * @property {HTMLElement} told
 * @property {HTMLSelectElement} turn which whole turn it is
 * @property {HTMLElement} typed
 * @property {HTMLButtonElement} enter
 */

export class StopList {
  /** @type {Row[]} */
  #rows = [];

  #isSure = false;

  #isAllowed = true;

  /** What stands in the form, as it is shown beside what was read. @type {Map<string, string>} */
  #shown = new Map();

  /** Of which reading the turns are that can be chosen. @type {WeakMap<HTMLSelectElement, Dial>} */
  #choices = new WeakMap();

  /** What is said of them all. */
  said = '';

  /** @param {{ name: string, label: string }[]} places
   * @param {{ changed: () => void, turned: () => void, enter: (stop: Stop) => void }} acts */
  constructor(places, acts) {
    this.places = places;
    this.acts = acts;
    this.list = make('ol', { className: 'film-stops' });
    this.twice = make('p', { className: 'fault', hidden: true }, say('film.twice'));
    this.twice.setAttribute('role', 'alert');
    this.note = make('p', { className: 'help' });
    this.goesRound = make('input', { type: 'checkbox', id: 'film-turns' });
    this.goesRound.addEventListener('change', () => this.acts.turned());
    const help = make('span', { className: 'help' }, say('dial.turns_help'));
    this.turns = make('p', { hidden: true }, make('label', {}, this.goesRound, ` ${say('dial.turns')} `), help);
    this.right = make('button', { type: 'button', id: 'film-right-key' }, say('film.right'));
    this.right.addEventListener('click', () => {
      this.#isSure = true;
      this.acts.changed();
    });
    const row = make('p', { className: 'row' }, this.right);
    this.part = make('div', {}, this.list, this.note, this.turns, this.twice, row);
  }

  get isEmpty() {
    return !this.#rows.length;
  }

  empty() {
    this.fill([], null);
  }

  /** @param {Stop[]} stops @param {Found | null} found */
  fill(stops, found) {
    this.#isSure = found?.state === 'stops' && found.fits;
    this.said = found?.text ?? '';
    stops.forEach((stop, i) => {
      stop.at = this.places[i]?.name ?? '';
    });
    this.#rows = stops.map((stop, i) => this.#row(stop, i));
    this.list.replaceChildren(
      ...this.#rows.map(({ picture, choice, told, turn, typed, enter }) =>
        make('li', {}, picture, make('div', {}, choice, told, turn, typed, enter)),
      ),
    );
  }

  /** Those that belong to a reading. */
  placed() {
    return this.#rows.map(({ stop }) => stop).filter(({ at }) => at);
  }

  /** What was read may be wrong now. */
  forget() {
    for (const { stop } of this.#rows) stop.read = null;
  }

  /** @param {boolean} isAllowed whether anything may be pressed */
  allow(isAllowed) {
    this.#isAllowed = isAllowed;
    for (const { choice } of this.#rows) choice.disabled = !isAllowed;
  }

  /** What stood in the form when a stop was last shown. @param {string} at */
  shown(at) {
    return this.#shown.get(at) ?? '';
  }

  /** Those whose reading can be entered where nothing is typed. @param {Fields} form */
  ready(form) {
    if (!this.#isSure || this.#isTwice()) return [];
    return this.placed().filter(({ at, read }) => read?.state === 'read' && !form[at]);
  }

  #isTwice() {
    const all = this.placed().map(({ at }) => at);
    return new Set(all).size < all.length;
  }

  /** @param {Stop} stop @param {number} i @returns {Row} */
  #row(stop, i) {
    const choice = make('select', { id: `film-stop-${i}` }, new Option(say('film.none'), ''));
    choice.append(...this.places.map(({ name, label }) => new Option(label, name)));
    choice.value = stop.at;
    choice.setAttribute('form', 'none');
    choice.setAttribute('aria-label', say('film.position', { n: i + 1 }));
    choice.addEventListener('change', () => {
      stop.at = choice.value;
      this.#isSure = false;
      this.forget(); // the first position may have another picture
      this.acts.changed();
    });
    const enter = make('button', { type: 'button', hidden: true });
    enter.addEventListener('click', () => this.acts.enter(stop));
    const turn = make('select', { id: `film-turn-${i}`, hidden: true });
    turn.setAttribute('form', 'none');
    turn.setAttribute('aria-label', say('film.turn', { n: i + 1 }));
    turn.addEventListener('change', () => {
      const { read } = stop;
      const chosen = read?.state === 'read' && read.turns.find(({ typed }) => typed === turn.value);
      if (chosen) Object.assign(read, { typed: chosen.typed, shown: chosen.shown });
      this.acts.turned();
    });
    const told = make('p', {});
    const picture = make('img', { alt: stop.text });
    return { stop, picture, choice, told, turn, typed: make('p', { className: 'help' }), enter };
  }

  /** @param {Fields} form what stands in it */
  paint(form) {
    const isTwice = this.#isTwice();
    this.twice.hidden = !isTwice;
    this.right.hidden = this.isEmpty || this.#isSure;
    this.right.disabled = !this.#isAllowed || isTwice;
    let note = '';
    for (const { stop, picture, told, turn, typed, enter, choice } of this.#rows) {
      const { at, read } = stop;
      const before = form[at] ?? '';
      this.#shown.set(at, before);
      if (picture.getAttribute('src') !== stop.url) picture.src = stop.url;
      told.textContent = read && read.state !== 'face' ? read.text : stop.text;
      typed.textContent = at && before ? say('film.typed', { reading: before }) : '';
      const reading = read?.state === 'read' ? read.typed : '';
      enter.hidden = !reading || !at || reading === before;
      enter.disabled = !this.#isAllowed || !this.#isSure || isTwice;
      const values = { reading: read?.state === 'read' ? read.shown : '', typed: before };
      enter.textContent = before ? say('film.replace', values) : say('dial.enter', values);
      const where = choice.selectedOptions[0]?.label ?? '';
      enter.setAttribute('aria-label', `${enter.textContent}: ${where}`);
      this.#paintTurn(turn, read);
      if (read?.state === 'read') note = read.note;
    }
    this.note.textContent = note;
    this.turns.hidden = !note;
  }

  /** @param {HTMLSelectElement} turn @param {Dial | null} read */
  #paintTurn(turn, read) {
    const turns = read?.state === 'read' ? read.turns : [];
    turn.hidden = !this.goesRound.checked || !turns.length;
    turn.disabled = !this.#isAllowed;
    if (read?.state !== 'read' || this.#choices.get(turn) === read) return;
    this.#choices.set(turn, read); // while it stays, what is being chosen is left alone
    turn.replaceChildren(...turns.map(({ typed, text }) => new Option(text, typed)));
    turn.value = read.typed;
  }
}
