// The form: which fields there are for the chosen positions and units, and what stands in them.
// It knows names and texts only; Python makes numbers of them.

import { EXAMPLE } from './example.js';
import { addSweep, putReadings, showReadings, takeReadings } from './readings.js';
import { WORDS } from './words.js';

/** @template {HTMLElement} T @param {string} id @returns {T} */
function get(id) {
  return /** @type {T} */ (document.getElementById(id));
}

const form = /** @type {HTMLFormElement} */ (get('form'));
const place = get('sweeps');
const choice = /** @type {HTMLSelectElement} */ (get('positions-choice'));
const turn = /** @type {HTMLSelectElement} */ (get('turn'));
const positions = /** @type {HTMLInputElement} */ (get('positions'));
const bringBack = get('bring-back');

/** Every named field with its text. @returns {Record<string, string>} */
export function readForm() {
  const texts = /** @type {Record<string, string>} */ ({});
  for (const [name, value] of new FormData(form)) texts[name] = String(value);
  return texts;
}

/** Positions of the list, in the order in which the crank comes to them. */
function orderedPositions() {
  if (choice.value === 'own') return positions.value;
  const [first, ...rest] = choice.value.split(' ');
  return [first, ...(turn.value === 'clockwise' ? rest : rest.reverse())].join(' ');
}

function showPositions() {
  const own = choice.value === 'own';
  get('own-field').hidden = !own;
  get('turn-field').hidden = own;
  positions.value = orderedPositions();
  showReadings(place, [...new Set(positions.value.split(/[\s,;]+/).filter(Boolean))]);
}

/** Fields that still hold the usual value of the other unit take that of this one. */
function showUnits() {
  const units = readForm().units === 'metric' ? 'metric' : 'inch';
  const other = units === 'metric' ? 'inch' : 'metric';
  for (const name of document.querySelectorAll('[data-unit]')) name.textContent = WORDS.unit[units];
  for (const field of form.querySelectorAll('input')) {
    const usual = field.dataset[units];
    if (usual !== undefined && field.value === field.dataset[other]) field.value = usual;
  }
}

/** @type {(() => void) | null} puts back what the last button took away */
let undo = null;

/** Do something that takes readings away, so that it can be undone. @param {() => void} change */
function undoable(change) {
  const readings = takeReadings();
  const [chosen, turned] = [choice.value, turn.value];
  change();
  undo = () => {
    choice.value = chosen;
    turn.value = turned;
    showPositions();
    putReadings(place, readings);
  };
  bringBack.hidden = false;
}

function loadExample() {
  choice.value = EXAMPLE.positions;
  turn.value = EXAMPLE.turn;
  showPositions();
  const sweep = new Map(Object.entries(EXAMPLE.readings));
  putReadings(place, [sweep]);
}

/** @param {() => void} onChange called when anything in the form was changed */
export function startForm(onChange) {
  showPositions();
  showUnits();
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', (event) => {
    if (event.target === positions || event.target === choice || event.target === turn) {
      showPositions();
    }
    if (event.target instanceof HTMLInputElement && event.target.name === 'units') showUnits();
    onChange();
  });
  get('add-sweep').addEventListener('click', () => {
    get('add-sweep').hidden = !addSweep(place);
    onChange();
  });
  get('clear').addEventListener('click', () => {
    undoable(() => putReadings(place, [new Map()]));
    onChange();
  });
  get('example').addEventListener('click', () => {
    undoable(loadExample);
    onChange();
  });
  bringBack.addEventListener('click', () => {
    undo?.();
    undo = null;
    bringBack.hidden = true;
    onChange();
  });
}
