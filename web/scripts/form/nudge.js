// A reading moved by one step of the dial that the form tells of.

import { changed } from './readings.js';
import { moved } from './decimal-step.js';
import { say } from '../common/words.js';

/** @param {string} name */
function textOf(name) {
  const field = document.querySelector(`[name="${name}"]`);
  const isField = field instanceof HTMLInputElement || field instanceof HTMLSelectElement;
  return isField ? field.value : '';
}

/** @param {HTMLInputElement} field @param {1 | -1} way */
export function nudge(field, way) {
  const turn = textOf('indicator.shows') === 'all_round' ? textOf('indicator.turn') : null;
  const mark = say('number.decimal_mark');
  const text = moved(field.value, textOf('indicator.step'), way, mark, turn);
  if (text === null) return;
  field.value = text;
  changed(field);
}
