// Where the readings stand: in a column, or round the clock as on the housing. The choice is the phone's,
// not the job's, and is remembered where the browser remembers anything.

import { get } from '../common/dom.js';
import { recall, remember } from '../common/chosen.js';

const CHOICE = 'sweepsheet-layout';
const choice = /** @type {HTMLSelectElement} */ (get('layout'));

function show() {
  document.documentElement.dataset.layout = choice.value;
}

export function startLayout() {
  if (recall(CHOICE) === 'clock') choice.value = 'clock';
  show();
  choice.addEventListener('change', () => {
    show();
    remember(CHOICE, choice.value);
  });
}
