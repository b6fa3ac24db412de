// The form: which fields there are for the chosen positions and units, and what stands in them.
// It knows names and texts only; Python makes numbers of them.

import { EXAMPLE } from './example.js';
import { Readings } from './readings.js';
import { Rounds } from './rounds.js';
import { WORDS } from './words.js';

/** @typedef {Record<string, string>} Fields every named field with its text */

/** @template {HTMLElement} T @param {string} id @returns {T} */
function get(id) {
  return /** @type {T} */ (document.getElementById(id));
}

const form = /** @type {HTMLFormElement} */ (get('form'));
const choice = /** @type {HTMLSelectElement} */ (get('positions-choice'));
const turn = /** @type {HTMLSelectElement} */ (get('turn'));
const positions = /** @type {HTMLInputElement} */ (get('positions'));
const bringBack = get('bring-back');
const rounds = new Rounds(get('rounds'), get('round-template'));
const companions = [...document.querySelectorAll('[data-companion]')].map((place) => {
  const part = /** @type {HTMLElement} */ (place);
  const { companion = '', spoken = '' } = part.dataset;
  return new Readings(part, `companions.${companion}`, spoken);
});

/** @param {HTMLFormElement} from @returns {Fields} */
function textsOf(from) {
  return Object.fromEntries(Array.from(new FormData(from), ([name, text]) => [name, String(text)]));
}

/** @returns {Fields} */
export function readForm() {
  return textsOf(form);
}

/** Every named field as the page came, whatever may stand in it by now. @returns {Fields} */
export function untouchedForm() {
  const copy = /** @type {HTMLFormElement} */ (form.cloneNode(true));
  copy.reset();
  return textsOf(copy);
}

/** Everything as on a new page. */
export function resetForm() {
  form.reset();
  clear();
  showChoices();
  showUnits();
}

/** Put texts into the form; fields without a text are left as they are. @param {Fields} fields */
export function fillForm(fields) {
  const names = Object.keys(fields);
  const howMany = (/** @type {string} */ before) =>
    1 +
    names.reduce((most, name) => {
      const found = name.startsWith(before) ? /^\d+/.exec(name.slice(before.length)) : null;
      return found ? Math.max(most, Number(found[0])) : most;
    }, 0);
  setFields(fields); // the choices first, since other fields come and go with them
  showChoices();
  rounds.setCount(howMany('rounds.'));
  const sweepsOf = (/** @type {string} */ prefix) => howMany(`${prefix}.sweeps.`);
  rounds.resize(sweepsOf);
  for (const readings of companions) readings.setCount(sweepsOf(readings.prefix));
  setFields(fields);
  rounds.adopt();
  for (const readings of companions) readings.adopt();
  showChoices();
  showUnits();
}

/** @param {Fields} fields */
function setFields(fields) {
  for (const [name, text] of Object.entries(fields)) {
    const field = form.elements.namedItem(name);
    if (field instanceof RadioNodeList) field.value = text;
    else if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) {
      // Setting what stands there already would move the cursor.
      if (field.value !== text) field.value = text;
    }
  }
}

/** Positions of the list, in the order in which the crank comes to them. */
function orderedPositions() {
  if (choice.value === 'own') return positions.value;
  const [first, ...rest] = choice.value.split(' ');
  return [first, ...(turn.value === 'clockwise' ? rest : rest.reverse())].join(' ');
}

/** Show the fields that the choices ask for. */
function showChoices() {
  const own = choice.value === 'own';
  get('own-field').hidden = !own;
  get('turn-field').hidden = own;
  positions.value = orderedPositions();
  const list = [...new Set(positions.value.split(/[\s,;]+/).filter(Boolean))];
  rounds.show(list, readForm()['face.end_float'] === 'second');
  for (const readings of companions) readings.show(list);
}

/** Fields that still hold the usual value of the other unit take that of this one. */
function showUnits() {
  const units = readForm().units === 'metric' ? 'metric' : 'inch';
  const other = units === 'metric' ? 'inch' : 'metric';
  for (const name of document.querySelectorAll('[data-unit]')) name.textContent = WORDS.unit[units];
  for (const name of document.querySelectorAll('[data-long-unit]')) {
    name.textContent = WORDS.longUnit[units];
  }
  for (const field of form.querySelectorAll('input')) {
    const usual = field.dataset[units];
    if (usual !== undefined && field.value === field.dataset[other]) field.value = usual;
  }
}

/** @type {Fields | null} what stood in the form before the last button took it away */
let before = null;

/** Do something that takes readings away, so that it can be undone. @param {() => void} change */
function undoable(change) {
  before = readForm();
  change();
  bringBack.hidden = false;
}

function clear() {
  rounds.clear();
  for (const readings of companions) readings.clear();
}

/** @param {() => void} onChange called when anything in the form was changed */
export function startForm(onChange) {
  showChoices();
  showUnits();
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', ({ target }) => {
    const name = target instanceof HTMLElement ? target.getAttribute('name') : null;
    if (target === positions || target === choice || target === turn || name === 'face.end_float') {
      showChoices();
    }
    if (name === 'units') showUnits();
    onChange();
  });
  get('add-round').addEventListener('click', () => {
    rounds.setCount(rounds.count + 1);
    onChange();
  });
  get('clear').addEventListener('click', () => {
    undoable(clear);
    onChange();
  });
  get('example').addEventListener('click', () => {
    undoable(() => {
      clear();
      fillForm(EXAMPLE);
    });
    onChange();
  });
  bringBack.addEventListener('click', () => {
    if (before) {
      clear();
      fillForm(before);
    }
    before = null;
    bringBack.hidden = true;
    onChange();
  });
}
