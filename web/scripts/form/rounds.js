// The rounds of a job: as found, and a recheck after each change of dowels. Each has its bore sweep and
// may have a face sweep; a recheck also tells which dowels were in.

import { MOST_ROUNDS } from '../common/core-values.js';
import { Otherwise } from './sweep-overrides.js';
import { Readings } from './readings.js';
import { say } from '../common/words.js';

/**
 * @typedef {object} Round
 * @property {HTMLElement} part
 * @property {Readings} bore
 * @property {Readings} face
 * @property {Otherwise} boreOwn
 * @property {Otherwise} faceOwn
 */

export class Rounds {
  /** @type {Round[]} */
  #rounds = [];

  /** @type {string[]} */
  #positions = [];

  #endFloat = '';

  /** @param {HTMLElement} place @param {HTMLTemplateElement} template */
  constructor(place, template) {
    this.place = place;
    this.template = template;
    this.setCount(1);
  }

  /** How many rounds there are. */
  get count() {
    return this.#rounds.length;
  }

  /** @param {string[]} positions @param {string} endFloat how it is dealt with in face sweeps */
  show(positions, endFloat) {
    this.#positions = positions;
    this.#endFloat = endFloat;
    for (const round of this.#rounds) this.#showRows(round);
  }

  /** @param {Round} round */
  #showRows({ bore, face, boreOwn, faceOwn }) {
    bore.show(boreOwn.positions(this.#positions));
    const endFloat = faceOwn.text('end_float') || this.#endFloat;
    face.show(faceOwn.positions(this.#positions), endFloat.startsWith('second'));
  }

  /** @param {number} count */
  setCount(count) {
    while (this.#rounds.length > Math.max(1, count)) this.#rounds.pop()?.part.remove();
    while (this.#rounds.length < Math.min(count, MOST_ROUNDS)) this.#add();
    this.#showEnds();
  }

  /** Forget every reading and every recheck. */
  clear() {
    this.setCount(1);
    for (const { part, bore, face, boreOwn, faceOwn } of this.#rounds) {
      for (const each of [bore, face, boreOwn, faceOwn]) each.clear();
      for (const field of part.querySelectorAll('.dowels input')) {
        if (field instanceof HTMLInputElement) field.value = '';
      }
    }
  }

  /** Make room for these fields, and take over what then stands in them.
   * @param {(prefix: string) => number} sweepsOf how many sweeps there are below a name */
  resize(sweepsOf) {
    for (const { bore, face } of this.#rounds) {
      bore.setCount(sweepsOf(bore.prefix));
      face.setCount(sweepsOf(face.prefix));
    }
  }

  /** @param {Record<string, string>} fields */
  takePhotos(fields) {
    for (const { bore, face } of this.#rounds) {
      bore.takePhotos(fields);
      face.takePhotos(fields);
    }
  }

  adopt() {
    for (const { part, bore, face, boreOwn, faceOwn } of this.#rounds) {
      for (const each of [bore, face, boreOwn, faceOwn]) each.adopt();
      showDowels(part);
      showNaming(part);
    }
  }

  #add() {
    const n = this.#rounds.length;
    // The build puts the first round into the page, so that it can be typed in before any script.
    const made = /** @type {DocumentFragment} */ (this.template.content.cloneNode(true));
    const part = /** @type {HTMLElement} */ (this.place.children[n] ?? made.firstElementChild);
    for (const field of part.querySelectorAll('[data-name]')) {
      if (!(field instanceof HTMLElement)) continue;
      const name = `rounds.${n}.${field.dataset.name}`;
      field.setAttribute('name', name);
      field.id = name;
      field.closest('.field')?.querySelector('.name')?.setAttribute('for', name);
    }
    const get = (/** @type {string} */ selector) =>
      /** @type {HTMLElement} */ (part.querySelector(selector));
    get('h3').textContent = n === 0 ? say('usual.first') : say('usual.later', { n });
    get('.naming summary').textContent = say(n === 0 ? 'round.name_first' : 'round.name');
    // Dowels that were in as found are rare.
    if (n === 0) get('.naming').append(get('.dowels'));
    get('.face-setup').hidden = n !== 0;
    part.querySelector(n === 0 ? '.since' : '.face-setup')?.remove();
    const bore = new Readings(get('.bore-readings'), `rounds.${n}.bore`, say('what.bore'));
    const face = new Readings(get('.face-readings'), `rounds.${n}.face`, say('what.face'));
    for (const [button, readings] of [[get('.more-bore'), bore], [get('.more-face'), face]]) {
      /** @type {HTMLElement} */ (button).addEventListener('click', () => {
        const list = /** @type {Readings} */ (readings);
        list.setCount(list.count + 1);
        part.dispatchEvent(new Event('input', { bubbles: true }));
      });
    }
    const boreOwn = new Otherwise(bore.place, bore.prefix, ['positions', 'contact']);
    const faceKeys = ['positions', 'radius', 'plunger', 'end_float'];
    const faceOwn = new Otherwise(face.place, face.prefix, faceKeys);
    get('.own-bore').addEventListener('click', () => boreOwn.open());
    get('.own-face').addEventListener('click', () => faceOwn.open());
    const round = { part, bore, face, boreOwn, faceOwn };
    part.addEventListener('input', () => {
      showDowels(part);
      this.#showRows(round);
    });
    get('.remove-round').addEventListener('click', () => {
      this.setCount(this.count - 1);
      this.place.dispatchEvent(new Event('input', { bubbles: true }));
    });
    // The form shows the first one as soon as it knows the positions.
    if (n !== 0) this.#showRows(round);
    this.#rounds.push(round);
    if (!part.isConnected) this.place.append(part);
    showDowels(part);
  }

  /** Only the last recheck can be removed. */
  #showEnds() {
    this.#rounds.forEach(({ part }, n) => {
      const remove = /** @type {HTMLElement} */ (part.querySelector('.remove-round'));
      remove.hidden = n === 0 || n !== this.#rounds.length - 1;
    });
  }
}

/** What is seldom typed is seen where it was. @param {HTMLElement} part */
function showNaming(part) {
  const naming = part.querySelector('.naming');
  const fields = naming?.querySelectorAll('input') ?? [];
  if (naming instanceof HTMLDetailsElement && [...fields].some(({ value }) => value)) {
    naming.open = true;
  }
}

/** Where nothing was done to the dowels they are those of the round before; the second dowel has fields of its
 * own only where it differs. @param {HTMLElement} part */
function showDowels(part) {
  const since = part.querySelector('select[data-name="since"]');
  const dowels = part.querySelector('.dowels');
  if (since instanceof HTMLSelectElement && dowels instanceof HTMLElement) {
    dowels.hidden = since.value !== 'dowels';
  }
  const alike = part.querySelector('select[data-name="alike"]');
  const second = part.querySelector('.second-dowel');
  if (alike instanceof HTMLSelectElement && second instanceof HTMLElement) {
    second.hidden = alike.value === 'yes';
  }
}
