// Where a sweep stops: made ready, each position, back at the start, done; and the form's fields of each. The
// lengths along the crank axis are stops of the same kind.

import { LENGTHS } from '../common/core-values.js';
import { say } from '../common/words.js';

/**
 * @typedef {object} Stop
 * @property {'ready' | 'position' | 'closing' | 'end'} kind
 * @property {string} label as it stands in the form
 * @property {string[]} names the fields of the form that belong to it
 */

/** @param {string} name */
export function fieldNamed(name) {
  const [field] = document.getElementsByName(name);
  return field instanceof HTMLInputElement ? field : null;
}

/** Where the lengths stand, in place of a sweep. */
export const DEPTH = 'depth';

/** The stops of the lengths, each with its field. @returns {Stop[]} */
function lengthStops() {
  const stops = LENGTHS.map((name) => {
    const field = fieldNamed(name);
    const [letter = ''] = (field?.labels?.[0]?.textContent ?? '').split(':');
    const label = letter.trim();
    return { kind: /** @type {const} */ ('position'), label, names: [name] };
  });
  return [
    { kind: 'ready', label: say('guide.get_ready'), names: [] },
    ...stops,
    { kind: 'end', label: say('guide.measured'), names: [] },
  ];
}

/** The stops of one sweep, or of the lengths. @param {string} at @param {number} sweep @returns {Stop[]} */
export function stopsOf(at, sweep) {
  if (at === DEPTH) return lengthStops();
  /** @type {Stop[]} */
  const positions = [];
  for (let i = 0; fieldNamed(`${at}.sweeps.${sweep}.${i}`); i++) {
    const name = `${at}.sweeps.${sweep}.${i}`;
    const names = [name, `${at}.opposite.${sweep}.${i}`].filter(fieldNamed);
    const label = document.querySelector(`label[for="${name}"]`)?.textContent ?? '';
    positions.push({ kind: 'position', label, names });
  }
  return [
    { kind: 'ready', label: say('guide.get_ready'), names: [] },
    ...positions,
    { kind: 'closing', label: say('readings.closing'), names: [`${at}.closing.${sweep}`] },
    { kind: 'end', label: say('guide.done'), names: [] },
  ];
}

/** Whether anything stands in a field. @param {string} name */
function isFilled(name) {
  return Boolean(fieldNamed(name)?.value.trim());
}

/** Whether somebody typed in a field: some come with a figure. @param {string} name */
function isTyped(name) {
  return isFilled(name) && fieldNamed(name)?.value !== fieldNamed(name)?.defaultValue;
}

/** Where to go on: the beginning of a blank sweep, else its first blank field. @param {Stop[]} stops */
export function firstBlank(stops) {
  if (!stops.some(({ names }) => names.some(isTyped))) return 0;
  const first = stops.findIndex(({ names }) => !names.every(isFilled));
  return first < 0 ? stops.length - 1 : first;
}

/** How many sweeps the form has at a place. @param {string} at */
export function sweepsAt(at) {
  return document.querySelectorAll(`button.lead[data-at="${at}"]`).length;
}

/** Whether anything stands in the readings of a sweep. @param {string} at @param {number} sweep */
function isBegun(at, sweep) {
  const names = [`${at}.sweeps.${sweep}.`, `${at}.opposite.${sweep}.`];
  const fields = [...document.querySelectorAll('form input')];
  return fields.some(
    (field) =>
      field instanceof HTMLInputElement && field.value && names.some((name) => field.name.startsWith(name)),
  );
}

/** A sweep that is still blank after this one, else one more, which the form then has.
 * @param {string} at @param {number} sweep */
export function nextBlankSweep(at, sweep) {
  let next = sweep + 1;
  while (next < sweepsAt(at) && isBegun(at, next)) next++;
  if (next === sweepsAt(at)) {
    const round = document.querySelector(`button.lead[data-at="${at}"]`)?.closest('.round');
    const more = round?.querySelector(at.endsWith('.face') ? '.more-face' : '.more-bore');
    if (more instanceof HTMLElement) more.click();
  }
  return next;
}
