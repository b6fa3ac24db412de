// Where the readings stand: in a column, or round the clock as on the housing. The choice is the phone's,
// not the job's, and is remembered where the browser remembers anything.

import { get } from '../common/dom.js';

const CHOICE = 'sweepsheet-layout';
const choice = /** @type {HTMLSelectElement} */ (get('layout'));

function remembered() {
  try {
    return localStorage.getItem(CHOICE);
  } catch {
    return null; // storage is refused: a column, as for the first time
  }
}

function show() {
  document.documentElement.dataset.layout = choice.value;
}

export function startLayout() {
  if (remembered() === 'clock') choice.value = 'clock';
  show();
  choice.addEventListener('change', () => {
    show();
    try {
      localStorage.setItem(CHOICE, choice.value);
    } catch {
      // Storage is refused: it holds until the page is left.
    }
  });
}
