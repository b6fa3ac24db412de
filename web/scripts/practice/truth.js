// What was hidden, beside what was found.

import { get } from '../common/dom.js';
import { tableRow, textElement } from '../common/parts.js';

/** @typedef {{ head: string[], rows: string[][], lines: string[] }} Truth */

/** @param {Truth | null} truth */
export function paintTruth(truth) {
  get('truth').hidden = !truth;
  if (!truth) return;
  const rows = truth.rows.map((texts) => tableRow('td', texts, truth.head));
  get('truth-table').replaceChildren(tableRow('th', truth.head), ...rows);
  get('truth-lines').replaceChildren(...truth.lines.map((line) => textElement('li', line)));
}
