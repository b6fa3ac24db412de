// What a teacher does: makes a set of exercises, and opens what comes back. Nothing of it is kept.

import { get } from '../common/dom.js';
import { tableRow, textElement } from '../common/parts.js';
import { letCopy, practiceLink } from './course.js';

/** @import { Core } from '../python/core.js' */

const MOST_EXERCISES = 10;
const results = /** @type {HTMLTextAreaElement} */ (get('results'));

/** A whole number from 1 on, not to be foretold. @param {number} most */
export function drawn(most) {
  const [any = 0] = crypto.getRandomValues(new Uint32Array(1));
  return 1 + (any % most);
}

/** @param {Core} core @param {() => number} highestSeed */
export function startTeacher(core, highestSeed) {
  get('make-set').addEventListener('click', () => {
    const boxes = [...document.querySelectorAll('#kinds input:checked')];
    const levels = boxes.map((box) => /** @type {HTMLInputElement} */ (box).value);
    get('no-kind').hidden = levels.length > 0;
    get('made').hidden = levels.length === 0;
    if (!levels.length) return;
    const each = Array.from({ length: MOST_EXERCISES }, () => {
      return `${levels[drawn(levels.length) - 1]}-${drawn(highestSeed())}`;
    });
    /** @type {HTMLTextAreaElement} */ (get('set-link')).value = practiceLink(`set=${each.join('.')}`);
  });
  letCopy('set-link', 'copy-set');
  get('open-results').addEventListener('click', async () => {
    const { head, rows, troubles } = await core.openResults(results.value);
    get('results-troubles').replaceChildren(
      ...troubles.map((/** @type {string} */ text) => textElement('li', text)),
    );
    get('results-table').hidden = !rows.length;
    get('results-table').replaceChildren(
      tableRow('th', head),
      ...rows.map((/** @type {string[]} */ texts) => tableRow('td', texts, head)),
    );
  });
}

/** A link of results was opened: it is put where it can be looked at. @param {string} fragment */
export function showResults(fragment) {
  results.value = practiceLink(`results=${fragment}`);
  /** @type {HTMLDetailsElement} */ (get('teacher')).open = true;
  get('open-results').click();
  get('teacher').scrollIntoView();
}
