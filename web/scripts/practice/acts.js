// What is done between two rounds: which of it the exercise has, and only the fields that it needs.

import { get } from '../common/dom.js';
import { say } from '../common/words.js';

/** @typedef {Record<string, string>} Act fields of a round by their names, without `rounds.N.` */
/** @typedef {{ name: string, text: string }} Offered */
/** @typedef {{ value: string, text: string }} Choice */

const select = /** @type {HTMLSelectElement} */ (get('act'));
/** The fields of the page by the names that they have in a round. */
const FIELDS = /** @type {Record<string, Record<string, HTMLInputElement | HTMLSelectElement>>} */ ({
  dowels: { 'dowels.0.offset': get('fit-offset'), 'dowels.0.aim': get('fit-aim') },
  squared: { 'square.runout': get('square-runout'), 'square.at': get('square-at') },
});

function showFields() {
  for (const part of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-act]'))) {
    part.hidden = part.dataset.act !== select.value;
  }
}

/** @param {HTMLSelectElement} list @param {Choice[]} choices */
function fill(list, choices) {
  const chosen = list.value;
  list.replaceChildren(...choices.map(({ value, text }) => new Option(text, value)));
  if (choices.some(({ value }) => value === chosen)) list.value = chosen;
}

/** @param {Offered[]} acts @param {Choice[]} sizes of dowels */
export function offerActs(acts, sizes) {
  fill(select, acts.map(({ name, text }) => ({ value: name, text })));
  fill(/** @type {HTMLSelectElement} */ (get('fit-offset')), sizes);
  const [only] = acts;
  get('act-field').hidden = acts.length < 2;
  get('act-title').textContent = acts.length < 2 && only ? only.text : say('exercise.next');
  showFields();
}

/** What is about to be done. @returns {Act} */
export function readAct() {
  const fields = Object.entries(FIELDS[select.value] ?? {});
  return { act: select.value, ...Object.fromEntries(fields.map(([name, field]) => [name, field.value])) };
}

export function clearActs() {
  for (const fields of Object.values(FIELDS)) for (const field of Object.values(fields)) field.value = '';
}

/** The field of a fault of a round, where it is one of these. @param {string} name */
export function fieldOfAct(name) {
  const [, own = ''] = /^rounds\.\d+\.(.+)$/.exec(name) ?? [];
  if (own === 'act') return select;
  return Object.values(FIELDS).find((fields) => own in fields)?.[own];
}

select.addEventListener('change', showFields);
