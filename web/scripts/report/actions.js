// The steps on the screen: each with its reason a tap away and, where the page has the place for it, a
// button that leads there; and the lists of what is then done by hand. Every text comes from Python.

import { get, make } from '../common/dom.js';
import { say } from '../common/words.js';

/** @typedef {{ code: string, text: string, why: string, measure: string }} Action */

/** Where a step is done on this page: by a press of a button, or in a part that is opened. */
const PLACES = /** @type {const} */ ({
  recheck: 'recheck',
  'tighten-and-sweep': 'recheck',
  'clean-joint': 'recheck',
  'sweep-face': 'face',
  'resweep-face': 'face',
  'no-limit': 'limit',
  sag: 'sag',
});

/** The last round's part of this kind. @param {string} selector */
function last(selector) {
  return /** @type {HTMLElement | undefined} */ ([...document.querySelectorAll(selector)].at(-1));
}

/** Lead to a place of the page. @param {'recheck' | 'face' | 'limit' | 'sag'} place */
export function goTo(place) {
  if (place === 'recheck') get('add-round').click();
  const parts = {
    recheck: last('.round'),
    face: last('.round .face'),
    limit: document.getElementById('limits'),
    sag: document.getElementById('dial'),
  };
  const part = parts[place];
  if (part instanceof HTMLDetailsElement) part.open = true;
  part?.scrollIntoView({ block: 'start' });
  part?.querySelector('input')?.focus({ preventScroll: place !== 'limit' });
}

/** @param {Action} action @returns {HTMLLIElement} */
function item({ code, text, why, measure }) {
  const step = make('div', { className: 'step' }, make('p', {}, text));
  const made = make('li', {}, step);
  const of = (/** @type {string} */ name) => PLACES[/** @type {keyof typeof PLACES} */ (name)];
  const place = of(measure) ?? of(code);
  // The practice page has neither rounds nor limits of its own.
  if (place && document.getElementById('add-round')) {
    const button = make('button', { type: 'button', className: 'go' }, say(`go.${place}`));
    button.addEventListener('click', () => goTo(place));
    step.append(button);
  }
  if (why) {
    const reason = make('details', {}, make('summary', {}, say('result.why')), make('p', {}, why));
    reason.className = 'why';
    step.append(reason);
  }
  return made;
}

let shown = '';

/** @param {Action[]} actions @param {string[]} lists */
export function paintActions(actions, lists) {
  for (const part of document.querySelectorAll('[data-list]')) {
    const { list = '' } = /** @type {HTMLElement} */ (part).dataset;
    const isTicked = part.querySelector('input:checked') !== null;
    part.toggleAttribute('hidden', list !== 'closing_up' && !isTicked && !lists.includes(list));
  }
  const now = JSON.stringify(actions);
  if (now === shown) return; // a reason that is open stays open
  shown = now;
  const [first, ...rest] = actions.map(item);
  get('steps').replaceChildren(...(first ? [first] : []));
  get('then').replaceChildren(...rest);
  get('then-part').hidden = rest.length === 0;
}
