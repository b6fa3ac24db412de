// What another assembly than the main one has none of is out of sight, and keeps what was typed in it.

import { LACKS } from './core-values.js';

/** Places of the job that some assembly has none of. */
const PLACES = new Set(Object.values(LACKS).flatMap((places) => places.split(' ')));

/** What the parts in sight lack; a page comes with all of them. @type {string} */
let shown = '';

/** What belongs to a place of the job: what is marked with it, and the fields of its name.
 * @param {ParentNode} part @param {string} place @returns {HTMLElement[]} */
function partsOf(part, place) {
  const marked = [...part.querySelectorAll(`[data-only="${place}"]`)];
  const fields = [...part.querySelectorAll(`[name="${place}"]`)].map((field) => field.closest('.field, label'));
  const folded = [...part.querySelectorAll('template')].flatMap(({ content }) => partsOf(content, place));
  const found = [...marked, ...fields, ...folded];
  return /** @type {HTMLElement[]} */ (found.filter(Boolean));
}

/** Show what an assembly has, and nothing that it has none of. @param {string} assembly */
export function showParts(assembly) {
  const lacks = LACKS[/** @type {keyof typeof LACKS} */ (assembly)] ?? '';
  if (lacks === shown) return;
  shown = lacks;
  const lacking = lacks.split(' ');
  for (const place of PLACES) {
    for (const part of partsOf(document, place)) part.hidden = lacking.includes(place);
  }
}
