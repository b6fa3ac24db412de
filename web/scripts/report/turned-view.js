// The picture as the person lies under the car: another hour on top, or seen from the front. The core
// draws it from behind with 12 on top; the style sheet turns what it marks as the housing, and turns the
// figures in it back. The choice is the phone's, not the job's.

import { get } from '../common/dom.js';
import { recall, remember } from '../common/chosen.js';
import { say } from '../common/words.js';

const CHOICE = 'sweepsheet-view';
const AS_DRAWN = '12';

/** @param {HTMLSelectElement} choice */
function show(choice) {
  get('drawing').dataset.view = choice.value;
  get('view-line').textContent = choice.value === AS_DRAWN ? '' : say(`turned.line.${choice.value}`);
}

export function startTurnedView() {
  const choice = /** @type {HTMLSelectElement} */ (get('view-choice'));
  const before = recall(CHOICE) ?? AS_DRAWN;
  if ([...choice.options].some(({ value }) => value === before)) choice.value = before;
  show(choice);
  choice.addEventListener('change', () => {
    show(choice);
    remember(CHOICE, choice.value);
  });
}
