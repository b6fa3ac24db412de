// A pad of our own for readings: large keys for gloves and grease. It types into the field that has the
// focus, as a keyboard would; what it types is text.

import { changed, turnSign } from './readings.js';
import { make } from '../common/dom.js';
import { recall, remember } from '../common/chosen.js';
import { nudge } from './nudge.js';
import { say } from '../common/words.js';

const CHOICE = 'sweepsheet-pad';

/** Where our pad is wanted: in the guide alone, everywhere, or nowhere. @returns {'guide' | 'all' | 'none'} */
export function padChoice() {
  const before = recall(CHOICE) ?? chosen;
  return before === 'all' || before === 'none' ? before : 'guide';
}

/** @type {'guide' | 'all' | 'none'} */
let chosen = 'guide';

/** @param {string} choice */
export function rememberPad(choice) {
  chosen = choice === 'all' || choice === 'none' ? choice : 'guide';
  remember(CHOICE, chosen);
}

/** Whether what stands in a field is marked, and is to be replaced. @param {HTMLInputElement} field */
function isMarked(field) {
  return field.value !== '' && field.selectionStart === 0 && field.selectionEnd === field.value.length;
}

/** @param {HTMLInputElement} field @param {string} text */
function put(field, text) {
  field.value = text;
  field.setSelectionRange(text.length, text.length);
  changed(field);
}

/** A character at the end; a second decimal mark is none. @param {HTMLInputElement} field @param {string} sign */
function type(field, sign) {
  const before = isMarked(field) ? '' : field.value;
  const isMark = !/\d/.test(sign);
  if (isMark && /[.,]/.test(before)) return;
  put(field, before + sign);
}

/** Half a step more, as it is written: 3 is 3.5, and 3.5 is 3 again. @param {HTMLInputElement} field */
function half(field) {
  const text = field.value.trim();
  const whole = /^(.*)[.,]50*$/.exec(text);
  if (whole) put(field, whole[1] === '0' ? '' : (whole[1] ?? ''));
  else if (!/[.,]\d/.test(text)) put(field, `${text.replace(/[.,]$/, '') || '0'}${say('number.decimal_mark')}5`);
}

/** @param {HTMLInputElement} field */
function erase(field) {
  put(field, isMarked(field) ? '' : field.value.slice(0, -1));
}

/**
 * The keys, which act on the field that has the focus.
 * @param {() => HTMLInputElement | null} reading
 * @param {(field: HTMLInputElement) => void} [next] where the page has no key of its own for it
 * @param {() => void} [takeBack]
 */
export function makePad(reading, next, takeBack) {
  /** @param {string} text @param {string} spoken @param {(field: HTMLInputElement) => void} act */
  const key = (text, spoken, act) => {
    const button = make('button', { type: 'button', tabIndex: -1 }, text); // a keyboard has its own
    button.setAttribute('aria-label', spoken);
    button.addEventListener('click', () => {
      const field = reading();
      if (field) act(field);
    });
    return button;
  };
  /** What a reading of a dial wants, and a length does not. @type {typeof key} */
  const ofDial = (text, spoken, act) => {
    const button = key(text, spoken, act);
    button.className = 'of-dial';
    return button;
  };
  const digit = (/** @type {string} */ sign) => key(sign, sign, (field) => type(field, sign));
  const mark = say('number.decimal_mark');
  const pad = make(
    'div',
    { className: 'pad' },
    ...['7', '8', '9'].map(digit),
    ofDial('±', say('hand.sign'), turnSign),
    ...['4', '5', '6'].map(digit),
    ofDial('½', say('pad.half'), half),
    ...['1', '2', '3'].map(digit),
    ofDial('▲', say('hand.up'), (field) => nudge(field, 1)),
    key(mark, say('pad.mark'), (field) => type(field, mark)),
    digit('0'),
    key('⌫', say('pad.erase'), erase),
    ofDial('▼', say('hand.down'), (field) => nudge(field, -1)),
  );
  if (takeBack) pad.append(key(say('hand.undo'), say('hand.undo'), takeBack));
  if (next) {
    const onward = key(say('hand.next'), say('hand.next'), next);
    onward.className = 'onward';
    pad.append(onward);
  }
  // The field keeps the focus.
  for (const press of ['pointerdown', 'mousedown']) {
    pad.addEventListener(press, (event) => event.preventDefault());
  }
  return pad;
}
