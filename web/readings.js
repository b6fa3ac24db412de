// The readings widget: a row for each position of each sweep, with a plus/minus key beside each,
// since the number pad of a phone has no minus.

import { WORDS } from './words.js';

const AT = 'rounds.0.bore';
export const MOST_SWEEPS = 5;

/**
 * What was typed, by sweep and position (as written), so that a change of positions loses nothing.
 * @type {Map<string, string>[]}
 */
const typed = [new Map()];

/** @type {string[]} */
let positions = [];

/** @param {string} position a clock hour, a clock time or degrees */
function where(position) {
  return /^\d{1,2}$/.test(position) ? WORDS.hour(position) : position;
}

/**
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} name @param {Partial<HTMLElementTagNameMap[K]>} properties
 * @param {(Node | string)[]} children
 * @returns {HTMLElementTagNameMap[K]}
 */
function make(name, properties, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

/** Turn the sign of what stands in a field: text only. @param {HTMLInputElement} input */
function turnSign(input) {
  const text = input.value.trim();
  input.value = /^[-−–]/.test(text) ? text.slice(1) : `-${text.replace(/^\+/, '')}`;
  input.dispatchEvent(new Event('input', { bubbles: true }));
}

/** @param {string} name @param {string} label @param {string} spoken @param {string} value */
function row(name, label, spoken, value) {
  const input = make('input', { name, id: name, value, inputMode: 'decimal', enterKeyHint: 'next' });
  const fault = `fault-${name}`;
  input.setAttribute('aria-describedby', fault);
  input.setAttribute('aria-label', spoken);
  const sign = make('button', { type: 'button', className: 'sign', tabIndex: -1 }, '±');
  sign.setAttribute('aria-label', WORDS.sign(spoken));
  // The field keeps the focus, and so the number pad stays up.
  sign.addEventListener('pointerdown', (event) => event.preventDefault());
  sign.addEventListener('click', () => {
    turnSign(input);
    input.focus();
  });
  return make(
    'div',
    { className: 'reading field' },
    make('label', { htmlFor: name }, label),
    input,
    sign,
    make('p', { className: 'fault', id: fault }),
  );
}

/** @param {HTMLElement} place @param {number} j */
function sweepPart(place, j) {
  const title = make('h3', {}, WORDS.sweep(j + 1));
  if (typed.length > 1) {
    const remove = make('button', { type: 'button' }, WORDS.remove);
    remove.setAttribute('aria-label', WORDS.removeSweep(j + 1));
    remove.addEventListener('click', () => {
      typed.splice(j, 1);
      draw(place);
      place.dispatchEvent(new Event('input', { bubbles: true }));
    });
    title.append(remove);
  }
  const rows = positions.map((position, i) => {
    const label = where(position);
    const value = typed[j]?.get(position) ?? '';
    return row(`${AT}.sweeps.${j}.${i}`, label, WORDS.reading(label, j + 1), value);
  });
  const spoken = WORDS.reading(WORDS.closing, j + 1);
  const closing = row(`${AT}.closing.${j}`, WORDS.closing, spoken, typed[j]?.get('closing') ?? '');
  closing.classList.add('closing');
  const help = make('p', { className: 'help' }, WORDS.closingHelp);
  return make('section', { className: 'sweep' }, title, ...rows, closing, help);
}

/** @param {HTMLElement} place */
function draw(place) {
  place.replaceChildren(...typed.map((_, j) => sweepPart(place, j)));
}

/** Keep what was typed into a field of the widget. @param {HTMLInputElement} input */
function keep(input) {
  const [, kind, j, i] = /(sweeps|closing)\.(\d+)(?:\.(\d+))?$/.exec(input.name) ?? [];
  const key = kind === 'closing' ? 'closing' : positions[Number(i)];
  if (key !== undefined) typed[Number(j)]?.set(key, input.value);
}

/** Enter goes to the next reading. @param {HTMLElement} place @param {KeyboardEvent} event */
function walk(place, event) {
  if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const fields = [...place.querySelectorAll('input')];
  const next = fields[fields.indexOf(event.target) + 1];
  if (next) next.focus();
  else event.target.blur();
}

/** @param {HTMLElement} place @param {string[]} wanted positions as written, in order */
export function showReadings(place, wanted) {
  if (wanted.join(' ') === positions.join(' ') && place.firstChild) return;
  positions = wanted;
  if (!place.firstChild) {
    place.addEventListener('input', (e) => e.target instanceof HTMLInputElement && keep(e.target));
    place.addEventListener('keydown', (event) => walk(place, event));
  }
  draw(place);
}

/** @param {HTMLElement} place @returns {boolean} whether there may be yet another */
export function addSweep(place) {
  if (typed.length < MOST_SWEEPS) typed.push(new Map());
  draw(place);
  return typed.length < MOST_SWEEPS;
}

/** What was typed so far, to be put back later. @returns {Map<string, string>[]} */
export function takeReadings() {
  return typed.map((sweep) => new Map(sweep));
}

/** @param {HTMLElement} place @param {Map<string, string>[]} sweeps */
export function putReadings(place, sweeps) {
  typed.splice(0, typed.length, ...sweeps.map((sweep) => new Map(sweep)));
  draw(place);
}
