// The readings of one thing that is swept: a row for each position of each sweep, with a plus/minus key
// beside each, since the number pad of a phone has no minus.

import { MOST_SWEEPS, PHOTO } from '../common/core-values.js';
import { clockWords } from '../common/figures.js';
import { make } from '../common/dom.js';
import { say } from '../common/words.js';

/** Tell the form of a change. @param {HTMLElement} element */
export function changed(element) {
  element.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Turn the sign of what stands in a field: text only. @param {HTMLInputElement} input */
export function turnSign(input) {
  const text = input.value.trim();
  input.value = /^[-−–]/.test(text) ? text.slice(1) : `-${text.replace(/^\+/, '')}`;
  changed(input);
}

/** Go on to the next reading: round the clock as the crank is turned, back at the start, and then the
 * next sweep that is open in this round; else to what it comes to. @param {HTMLInputElement} input */
export function walkOn(input) {
  const round = input.closest('.round, details') ?? document;
  const all = /** @type {NodeListOf<HTMLInputElement>} */ (round.querySelectorAll('.reading input'));
  const fields = [...all].filter((field) => field.offsetParent);
  const next = fields[fields.indexOf(input) + 1];
  if (next) return next.focus();
  input.blur();
  document.getElementById('answer')?.scrollIntoView();
}

/** The plus/minus key that was pressed, or null. @param {Event} event */
function signOf({ target }) {
  return target instanceof Element ? target.closest('.sign') : null;
}

/** The quarters, which may stand where they are on the housing. */
const QUARTERS = ['12', '3', '6', '9'];

/** Which photo a reading has: a field that nobody sees, so that it goes wherever the reading goes.
 * @param {HTMLElement} row @param {string | undefined} text none: no such field */
function putPhoto(row, text) {
  const name = `${row.querySelector('input')?.name}${PHOTO}`;
  const there = /** @type {HTMLInputElement | null} */ (row.querySelector('.photo-id'));
  if (there?.value === text) return;
  there?.remove();
  if (text === undefined) return;
  row.append(make('input', { name, value: text, hidden: true, className: 'photo-id' }));
}

/** @param {string} name @param {string} label @param {string} spoken @param {string} value */
function row(name, label, spoken, value) {
  const input = make('input', { name, id: name, value, inputMode: 'decimal' });
  input.setAttribute('enterkeyhint', 'next');
  const fault = `fault-${name}`;
  input.setAttribute('aria-describedby', fault);
  input.setAttribute('aria-label', spoken);
  const sign = make('button', { type: 'button', className: 'sign', tabIndex: -1 }, '±');
  sign.setAttribute('aria-label', say('readings.sign', { where: spoken }));
  return make(
    'div',
    { className: 'reading field' },
    make('label', { htmlFor: name }, label),
    input,
    sign,
    make('p', { className: 'fault', id: fault }),
  );
}

/** Under what the reading at the i-th position is kept. A position that is there twice is two.
 * @param {string} list @param {string[]} positions @param {number} i */
function keyOf(list, positions, i) {
  const position = positions[i];
  const before = positions.slice(0, i).filter((other) => other === position).length;
  return `${list} ${position}${before ? ` again ${before}` : ''}`;
}

/** Marks by their numbers, as the positions of a list. @param {number} n */
export function numbered(n) {
  return Array.from({ length: n }, (_, i) => `${i + 1}/${n}`).join(' ');
}

/** The number of a mark, or nothing. @param {string} position */
function markOf(position) {
  return /^(\d+)\/\d+$/.exec(position)?.[1];
}

/** What the rows of marks are called, once Python has worked it out. @param {string[]} labels */
export function nameMarks(labels) {
  for (const row of document.querySelectorAll('.reading[data-at*="/"]')) {
    const mark = markOf(/** @type {HTMLElement} */ (row).dataset.at ?? '');
    const label = labels[Number(mark) - 1];
    const field = row.querySelector('input');
    if (!mark || !label || !field || row.querySelector('label')?.textContent === label) continue;
    const called = row.getAttribute('data-called') ?? say('marks.mark', { n: mark });
    row.querySelector('label')?.replaceChildren(label);
    for (const each of [field, row.querySelector('.sign')]) {
      const spoken = each?.getAttribute('aria-label') ?? '';
      each?.setAttribute('aria-label', spoken.replace(called, () => label));
    }
    row.setAttribute('data-called', label);
  }
}

/** The readings of one thing, in a place of the page, named `prefix.sweeps.J.I`. */
export class Readings {
  /**
   * What was typed, by sweep; each by list (`sweeps`, `opposite`) and position as written, so that a
   * change of positions loses nothing. The return to zero stands under `closing`.
   * @type {Map<string, string>[]}
   */
  #typed = [new Map()];

  /** @type {string[]} */
  #positions;

  #second = false;

  /**
   * Rows that stand there already, as the build put them, are taken over with what was typed.
   * @param {HTMLElement} place @param {string} prefix @param {string} what spoken name
   */
  constructor(place, prefix, what) {
    this.place = place;
    this.prefix = prefix;
    this.what = what;
    this.#positions = place.dataset.positions?.split(' ') ?? [];
    this.adopt();
    place.addEventListener('input', ({ target }) => {
      if (target instanceof HTMLInputElement) this.#keep(target);
    });
    place.addEventListener('keydown', (event) => this.#walk(event));
    place.addEventListener('click', (event) => this.#turnSign(event));
    // The field keeps the focus, and so the number pad stays up.
    place.addEventListener('pointerdown', (event) => signOf(event) && event.preventDefault());
  }

  /** How many sweeps there are. */
  get count() {
    return this.#typed.length;
  }

  /** @param {string[]} positions as written, in order @param {boolean} [second] a second dial */
  show(positions, second = false) {
    const same = positions.join(' ') === this.#positions.join(' ') && second === this.#second;
    if (same && this.place.firstChild) return;
    this.#carryOver(positions);
    this.#positions = positions;
    this.#second = second;
    this.#draw();
  }

  /** @param {number} count */
  setCount(count) {
    const wanted = Math.max(1, Math.min(count, MOST_SWEEPS));
    // Nothing is drawn anew for nothing: a field that is being typed in keeps its place.
    if (wanted === this.#typed.length) return;
    while (this.#typed.length < wanted) this.#typed.push(new Map());
    this.#typed.length = wanted;
    this.#draw();
  }

  /** It is called otherwise from now on. @param {string} what */
  rename(what) {
    if (what === this.what) return;
    this.what = what;
    this.#draw();
  }

  /** Forget everything typed. */
  clear() {
    this.#typed = [new Map()];
    this.#draw();
  }

  /** Take over what stands in the fields. */
  adopt() {
    for (const input of this.place.querySelectorAll('input')) this.#keep(input);
  }

  /** Which readings have a photo; those that are not among the fields have none.
   * @param {Record<string, string>} fields of the whole form */
  takePhotos(fields) {
    for (const row of /** @type {NodeListOf<HTMLElement>} */ (this.place.querySelectorAll('.reading'))) {
      const input = row.querySelector('input');
      const text = fields[`${input?.name}${PHOTO}`];
      putPhoto(row, text);
      const [typed, key] = this.#placeOf(input?.name ?? '');
      if (text === undefined) typed?.delete(key + PHOTO);
      else typed?.set(key + PHOTO, text);
    }
  }

  /** Between a list and as many marks, the readings go along in their order: the first mark was moved,
   * not the readings. @param {string[]} positions */
  #carryOver(positions) {
    const before = this.#positions;
    const [was = '', is = ''] = [before[0], positions[0]];
    if (before.length !== positions.length || !markOf(was) === !markOf(is)) return;
    for (const typed of this.#typed) {
      for (const list of ['sweeps', 'opposite']) {
        before.forEach((_, i) => {
          for (const what of ['', PHOTO]) {
            const text = typed.get(keyOf(list, before, i) + what);
            const key = keyOf(list, positions, i) + what;
            if (text === undefined) typed.delete(key);
            else typed.set(key, text);
          }
        });
      }
    }
  }

  #draw() {
    this.place.dataset.positions = this.#positions.join(' ');
    this.place.replaceChildren(...this.#typed.map((_, j) => this.#sweep(j)));
  }

  /** @param {string} list @param {number} j @param {string} spokenList */
  #rows(list, j, spokenList) {
    return this.#positions.map((position, i) => {
      const mark = markOf(position);
      const label = mark ? say('marks.mark', { n: mark }) : clockWords(position);
      const value = this.#typed[j]?.get(this.#key(list, i)) ?? '';
      const spoken = say('readings.reading', { where: label, what: spokenList, n: j + 1 });
      const made = row(`${this.prefix}.${list}.${j}.${i}`, label, spoken, value);
      made.dataset.at = position;
      putPhoto(made, this.#typed[j]?.get(this.#key(list, i) + PHOTO));
      return made;
    });
  }

  /** @param {number} j */
  #sweep(j) {
    const title = make('h4', {}, say('readings.sweep', { n: j + 1, what: this.what }));
    if (this.#typed.length > 1) {
      const remove = make('button', { type: 'button' }, say('readings.remove'));
      remove.setAttribute('aria-label', say('readings.remove_sweep', { n: j + 1, what: this.what }));
      remove.addEventListener('click', () => {
        this.#typed.splice(j, 1);
        this.#draw();
        changed(this.place);
      });
      title.append(remove);
    }
    const rows = this.#rows('sweeps', j, this.what);
    if (this.#second) {
      rows.push(make('div', { className: 'second' }, make('h4', {}, say('readings.second_dial'))));
      rows.push(...this.#rows('opposite', j, say('readings.second_dial')));
    }
    const label = say('readings.closing');
    const spoken = say('readings.reading', { where: label, what: this.what, n: j + 1 });
    const value = this.#typed[j]?.get('closing') ?? '';
    const closing = row(`${this.prefix}.closing.${j}`, label, spoken, value);
    closing.classList.add('closing');
    putPhoto(closing, this.#typed[j]?.get(`closing${PHOTO}`));
    const help = make('p', { className: 'help' }, say('readings.closing_help'));
    const head = make('div', { className: 'sweep-head' }, title, ...this.#lead(j));
    const list = make('div', { className: 'rows' }, ...rows);
    const isQuarters = QUARTERS.every((at) => this.#positions.includes(at)) && rows.length === QUARTERS.length;
    list.classList.toggle('quarters', isQuarters);
    if (isQuarters) list.append(make('div', { className: 'middle' }));
    return make('section', { className: 'sweep' }, head, list, closing, help);
  }

  /** A button that begins the guide, where there is one (guide-button.js). @param {number} j */
  #lead(j) {
    if (!this.place.matches('.bore-readings, .face-readings')) return [];
    const lead = make('button', { type: 'button', className: 'lead' }, say('guide.lead'));
    lead.setAttribute('aria-label', say('guide.lead_sweep', { n: j + 1, what: this.what }));
    lead.dataset.at = this.prefix;
    lead.dataset.sweep = String(j);
    return [lead];
  }

  /** @param {string} list @param {number} i */
  #key(list, i) {
    return keyOf(list, this.#positions, i);
  }

  /** In which sweep a field stands, and under what. @param {string} name
   * @returns {[Map<string, string> | undefined, string]} */
  #placeOf(name) {
    const pattern = /(sweeps|opposite|closing)\.(\d+)(?:\.(\d+))?(\.photo)?$/;
    const [, list, j, i, photo = ''] = pattern.exec(name) ?? [];
    const key = list === 'closing' ? 'closing' : this.#key(list ?? '', Number(i));
    return [list ? this.#typed[Number(j)] : undefined, key + photo];
  }

  /** @param {HTMLInputElement} input */
  #keep(input) {
    const [typed, key] = this.#placeOf(input.name);
    typed?.set(key, input.value);
  }

  /** @param {Event} event */
  #turnSign(event) {
    const input = signOf(event)?.previousElementSibling;
    if (!(input instanceof HTMLInputElement)) return;
    turnSign(input);
    input.focus();
  }

  /** Enter goes to the next reading. @param {KeyboardEvent} event */
  #walk(event) {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    walkOn(event.target);
  }
}
