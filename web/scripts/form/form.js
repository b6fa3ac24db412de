// The form: which fields there are for the chosen positions and units, and what stands in them.
// It knows names and texts only; Python makes numbers of them.

import { get } from '../common/dom.js';
import './rest-of-form.js'; // first: what follows looks for its fields
import { showParts } from '../common/assembly-parts.js';
import { speakOf } from '../common/assembly-words.js';
import { BELLHOUSING_LIMITS, FEWEST_MARKS, MOST_POSITIONS, PHOTO } from '../common/core-values.js';
import { changed, differences } from './changes.js';
import { EXAMPLE } from './example.js';
import { Otherwise, listOf } from './sweep-overrides.js';
import { Readings, numbered } from './readings.js';
import { Rounds } from './rounds.js';
import { setUpLine } from './set-up-line.js';
import { Undo } from './undo.js';
import { nameUnits, unitsOf } from '../common/units.js';
import { say } from '../common/words.js';

/** @typedef {Record<string, string>} Fields every named field with its text */

const form = /** @type {HTMLFormElement} */ (get('form'));
const choice = /** @type {HTMLSelectElement} */ (get('positions-choice'));
const turn = /** @type {HTMLSelectElement} */ (get('turn'));
const shows = /** @type {HTMLSelectElement} */ (get('shows'));
const positions = /** @type {HTMLInputElement} */ (get('positions'));
const assembly = /** @type {HTMLSelectElement} */ (get('assembly'));
const first = /** @type {HTMLInputElement} */ (get('marks-first'));
const count = /** @type {HTMLInputElement} */ (get('marks-count'));
const undoButton = get('undo');
const boxes = /** @type {NodeListOf<HTMLInputElement>} */ (
  form.querySelectorAll('input[type=checkbox]')
);
const date = /** @type {HTMLInputElement} */ (get('about-date'));
/** Choices that are offered only to a job that has them. */
const old = /** @type {NodeListOf<HTMLOptionElement>} */ (form.querySelectorAll('option[data-old]'));
const rounds = new Rounds(get('rounds'), get('round-template'));
const companions = [...document.querySelectorAll('[data-companion]')].map((place) => {
  const part = /** @type {HTMLElement} */ (place);
  const { companion = '' } = part.dataset;
  const prefix = `companions.${companion}`;
  const readings = new Readings(part, prefix, say(`what.${companion}`));
  const own = new Otherwise(part, prefix, ['positions', 'contact', 'plunger']);
  const button = /** @type {HTMLElement} */ (
    document.querySelector(`[data-own-of="${companion}"]`)
  );
  return { companion, readings, own, button };
});

/** Every field with its text; a box that is not ticked has none.
 * @param {HTMLFormElement} from @returns {Fields} */
function textsOf(from) {
  const texts = /** @type {Fields} */ ({});
  for (const box of boxes) texts[box.name] = '';
  for (const [name, value] of new FormData(from)) texts[name] = String(value);
  return texts;
}

/** @returns {Fields} */
export function readForm() {
  return textsOf(form);
}

/** The text of one field. @param {string} name */
function textIn(name) {
  const field = form.elements.namedItem(name);
  return field && 'value' in field ? String(field.value) : '';
}

/** Every field as the page came, whatever may stand in it by now. @returns {Fields} */
export function untouchedForm() {
  const copy = /** @type {HTMLFormElement} */ (form.cloneNode(true));
  copy.reset();
  return textsOf(copy);
}

/** A kind that is no longer offered stays where a job has it. */
function showOld() {
  for (const option of old) {
    option.hidden = !option.selected;
    option.disabled = !option.selected;
  }
}

/** The set-up in one line. */
function showSetUp() {
  get('set-up-line').textContent = setUpLine(readForm());
}

/** What is put on what: its parts at once, its words as soon as they are there. */
async function showAssembly() {
  showParts(assembly.value);
  const lost = get('assembly-lost');
  lost.hidden = true;
  try {
    if (!(await speakOf(assembly.value, import.meta.url, () => assembly.value))) return;
  } catch (error) {
    lost.textContent = say('assembly.lost', { why: String(error) });
    lost.hidden = false;
    return;
  }
  withFocusKept(() => {
    for (const { companion, readings } of companions) readings.rename(say(`what.${companion}`));
  });
}

/** Limits that are usual for the main assembly alone: nobody typed them, so they go and come with it. */
function showUsualLimits() {
  const units = unitsOf(textIn('units'));
  for (const name of BELLHOUSING_LIMITS) {
    const field = /** @type {HTMLInputElement} */ (form.elements.namedItem(name));
    const usual = field.dataset[units] ?? '';
    if (field.value === (assembly.value ? usual : '')) field.value = assembly.value ? '' : usual;
  }
}

/** Everything as on a new page. */
export function resetForm() {
  form.reset();
  showOld();
  date.type = 'date';
  clear();
  showChoices();
  showUnits();
  showTicked();
  showAssembly();
  undo.forget(readForm());
  showUndo();
}

/** Put texts into the form; fields without a text are left as they are. @param {Fields} fields */
export function fillForm(fields) {
  fill(fields);
  undo.follow(readForm());
}

/** Put a job under what was done before it was known, which is one step that can be taken back.
 * @param {Fields} fields @param {Fields} blank the form as the page came
 * @returns {Fields} the job as the form gives it */
export function fillUnder(fields, blank) {
  const now = readForm();
  const isUntouched = Object.keys(differences(blank, now)).length === 0;
  const done = isUntouched ? {} : differences(untouchedForm(), now);
  let job = now;
  withFocusKept(() => {
    fill(fields);
    job = readForm();
    undo.forget(job);
    if (isUntouched) return;
    // Fields that were added and are blank still, as those of a recheck, come first.
    fill(changed({ ...now, ...job }, done));
    undo.note(readForm(), '');
  });
  showUndo();
  return job;
}

/** @param {Fields} fields */
function fill(fields) {
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
  for (const { readings } of companions) readings.setCount(sweepsOf(readings.prefix));
  // Own positions first: the fields of a sweep come and go with them.
  setFields(fields);
  showChoices();
  if (names.some((name) => name.endsWith(PHOTO)) || form.querySelector('.photo-id')) takePhotos(fields);
  setFields(fields);
  rounds.adopt();
  for (const { readings, own } of companions) {
    readings.adopt();
    own.adopt();
  }
  showChoices();
  showUnits(fields);
  showTicked();
  showAssembly();
}

/** Which readings have a photo. @param {Fields} fields */
function takePhotos(fields) {
  rounds.takePhotos(fields);
  for (const { readings } of companions) readings.takePhotos(fields);
}

/** @param {Fields} fields */
function setFields(fields) {
  for (const [name, text] of Object.entries(fields)) {
    const field = form.elements.namedItem(name);
    if (field instanceof RadioNodeList) field.value = text;
    else if (field instanceof HTMLInputElement && field.type === 'checkbox') {
      field.checked = text === 'yes';
    } else if (
      field instanceof HTMLInputElement ||
      field instanceof HTMLSelectElement ||
      field instanceof HTMLTextAreaElement
    ) {
      // Setting what stands there already would move the cursor.
      if (field.value === text) continue;
      field.value = text;
      // A date that came with a file may be any text, which a date field would throw away.
      if (field === date) keepDate(text);
    }
  }
  showOld();
}

/** @param {string} text */
function keepDate(text) {
  for (const type of ['date', 'text']) {
    if (date.value !== text) date.type = type;
    date.value = text;
  }
}

/** How many boxes of each list are ticked. */
function showTicked() {
  for (const list of form.querySelectorAll('.checks')) {
    const all = [...list.querySelectorAll('input')];
    const ticked = list.querySelector('.ticked');
    const count = all.filter(({ checked }) => checked).length;
    if (ticked) ticked.textContent = say('ticked.count', { n: count, of: all.length });
  }
}

/** How many marks were asked for; while the number is none, as many as there were. */
let counted = 8;

/** Positions of the list, in the order in which the crank comes to them; marks stand by their number,
 * since where they are on the clock is worked out by Python. */
function orderedPositions() {
  if (choice.value === 'own') return positions.value;
  const isCounted = choice.value === 'bolts' || choice.value === 'wheel';
  const typed = /^\s*(\d{1,2})\s*$/.exec(count.value)?.[1] ?? '';
  if (Number(typed) >= FEWEST_MARKS && Number(typed) <= MOST_POSITIONS) counted = Number(typed);
  if (isCounted) return numbered(counted);
  if (!['', '12'].includes(first.value.trim())) return numbered(listOf(choice.value).length);
  const [start, ...rest] = choice.value.split(' ');
  return [start, ...(turn.value === 'clockwise' ? rest : rest.reverse())].join(' ');
}

/** Show the fields that the choices ask for. */
function showChoices() {
  const own = choice.value === 'own';
  get('own-field').hidden = !own;
  get('turn-field').hidden = own;
  get('marks-first-field').hidden = own;
  get('marks-count-field').hidden = choice.value !== 'bolts' && choice.value !== 'wheel';
  get('turn-of-dial-field').hidden = shows.value !== 'all_round';
  positions.value = orderedPositions();
  const list = listOf(positions.value);
  rounds.show(list, textIn('face.end_float'));
  for (const { readings, own } of companions) readings.show(own.positions(list));
}

/** Fields that still hold the usual value of the other unit take that of this one; those that were just
 * given a text keep it. @param {Fields} [given] */
function showUnits(given = {}) {
  const units = nameUnits(textIn('units'));
  const other = units === 'metric' ? 'inch' : 'metric';
  for (const field of form.querySelectorAll('input')) {
    const usual = field.name in given ? undefined : field.dataset[units];
    if (usual !== undefined && field.value === field.dataset[other]) field.value = usual;
  }
  showSetUp();
}

const undo = new Undo(readForm());

function showUndo() {
  undoButton.hidden = !undo.isPossible;
}

/** What is to be done when anything was changed. */
let tellChange = () => {};

/** Fields may be drawn anew; the one that had the focus keeps it. @param {() => void} act */
function withFocusKept(act) {
  const name = document.activeElement?.getAttribute('name');
  act();
  const field = name ? form.elements.namedItem(name) : null;
  if (field instanceof HTMLElement) field.focus();
}

/** Change the form from elsewhere on the page. @param {import('./changes.js').Changes} changes
 * @param {boolean} isStep whether it can be taken back */
export function changeForm(changes, isStep) {
  withFocusKept(() => fill(changed(readForm(), changes)));
  if (isStep) undo.note(readForm(), '');
  else undo.follow(readForm());
  showUndo();
  tellChange();
}

/** Take the last change back. */
export function takeBack() {
  const before = undo.takeBack(readForm());
  if (!before) return;
  withFocusKept(() => {
    clear();
    fillForm(before);
  });
  showUndo();
  tellChange();
}

function clear() {
  rounds.clear();
  for (const { readings, own } of companions) {
    readings.clear();
    own.clear();
  }
}

/** @param {() => void} onChange called when anything in the form was changed */
export function startForm(onChange) {
  showChoices();
  showUnits();
  showTicked();
  undo.forget(readForm());
  tellChange = onChange;
  /** Something was changed: how and in which field, or elsewhere. @param {string} [name] */
  const noted = (name = '') => {
    undo.note(readForm(), name);
    showUndo();
    onChange();
  };
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', (event) => {
    const { target } = event;
    // What is on the page of the phone, and not of the job.
    if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) {
      if (!target.form) return;
    }
    const name = target instanceof HTMLElement ? target.getAttribute('name') : null;
    const isShared =
      target instanceof Element && [positions, choice, turn, shows, first, count].some((each) => each === target);
    if (isShared || name === 'face.end_float' || /^companions\..*\.positions$/.test(name ?? '')) {
      showChoices();
    }
    if (name?.startsWith('checklist.')) showTicked();
    if (name === 'units') showUnits();
    if (target === assembly) {
      showUsualLimits();
      showAssembly();
    }
    showSetUp();
    // What was typed and what a key moved are taken back apart.
    noted(name ? `${name} ${event instanceof InputEvent}` : '');
  });
  get('add-round').addEventListener('click', () => {
    rounds.setCount(rounds.count + 1);
    // What was ticked was done for the round before; the next fit begins anew.
    for (const box of boxes) if (box.closest('[data-list=fit], [data-list=trim]')) box.checked = false;
    showTicked();
    noted();
  });
  for (const { own, button } of companions) button.addEventListener('click', () => own.open());
  get('clear').addEventListener('click', () => {
    clear();
    noted();
  });
  get('example').addEventListener('click', () => {
    clear();
    fill(EXAMPLE);
    noted();
  });
  undoButton.addEventListener('click', takeBack);
}
