// The customer's view: what a link claims, readable at once; then Python works it out again.
//
// Everything here comes from a link that anyone may have made: it is set as text and nothing else.

import { holdRelease } from './hold.js';
import { canUnpack, readLink, troubleWith } from './link.js';
import { textElement } from './parts.js';
import { WORDS } from './view-words.js';

/** @import { Claimed, Figures, RoundFigures } from './link.js' */

/** @param {string} id */
function get(id) {
  return /** @type {HTMLElement} */ (document.getElementById(id));
}

/** @param {string} verdict */
function verdictWord(verdict) {
  return WORDS.verdict[Object.hasOwn(WORDS.verdict, verdict) ? verdict : 'none'];
}

/** What one round came to. @param {RoundFigures} round @param {string} unit */
function roundPart(round, unit) {
  const box = document.createElement('div');
  box.className = 'verdict';
  box.dataset.verdict = round.verdict;
  box.append(textElement('p', verdictWord(round.verdict)));
  const lines = [WORDS.bore(round, unit)];
  if (round.chance) lines.push(WORDS.chance(round.chance));
  const judged = (/** @type {string} */ line, /** @type {string} */ verdict) =>
    verdict ? WORDS.judged(line, verdictWord(verdict)) : line;
  if (round.face_runout) lines.push(judged(WORDS.face(round, unit), round.face_verdict));
  if (round.pilot_offset) lines.push(judged(WORDS.pilot(round, unit), round.pilot_verdict));
  const list = document.createElement('ul');
  list.className = 'figures';
  list.append(...lines.map((line) => textElement('li', line)));
  return [box, list];
}

/** Which dowels were in for a round. @param {RoundFigures} round @param {string} unit */
function dowelsLine(round, unit) {
  if (!round.dowel_offset) return WORDS.standard;
  if (round.other_offset) return WORDS.dowelsDiffer(round, unit);
  return WORDS.dowels(round.dowel_offset, round.dowel_aim, unit);
}

/** Found, done, ended. @param {Figures} figures @param {HTMLElement} place */
export function paintFigures({ whole, rounds }, place) {
  const { unit } = whole;
  const part = (/** @type {string} */ name) =>
    /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  const later = rounds.slice(1);
  const last = later.at(-1);
  const done = later.flatMap((round, i) => {
    const told = [textElement('p', dowelsLine(round, unit))];
    const title = textElement('h3', WORDS.round(i + 1));
    return round === last ? told : [...told, title, ...roundPart(round, unit)];
  });
  part('stops').hidden = !whole.stops;
  part('stops').textContent = WORDS.stops;
  part('found').replaceChildren(...roundPart(rounds[0], unit));
  part('done').replaceChildren(...(last ? done : [textElement('p', WORDS.nothingDone)]));
  part('ended').hidden = !last;
  part('left').replaceChildren(...(last ? roundPart(last, unit) : []));
  const limits = [WORDS.limit(whole)];
  if (whole.limit_pilot) limits.push(WORDS.pilotLimit(whole));
  part('limits').replaceChildren(...limits.map((line) => textElement('p', line)));
}

/** Who, what, when, and where the limits come from. @param {Claimed} claimed */
function paintTexts({ name, about, source }) {
  if (name) get('title').textContent = name;
  const entries = Object.entries(about).filter(([, text]) => text.trim());
  const rows = entries.flatMap(([key, text]) => {
    const value = textElement('dd', text);
    value.dir = 'auto'; // a text in another script must not turn round what stands beside it
    return [textElement('dt', WORDS.name[key]), value];
  });
  get('about').replaceChildren(...rows);
  const told = source.trim() ? [WORDS.source, textElement('bdi', source)] : [WORDS.noSource];
  get('source').replaceChildren(...told);
}

/** @param {Claimed} claimed */
export function paintClaimed(claimed) {
  paintTexts(claimed);
  paintFigures(claimed.figures, get('claimed'));
  get('job').hidden = false;
}

/** Say why there is nothing to be shown. @param {string} text */
export function refuse(text) {
  get('job').hidden = true;
  get('check').hidden = true;
  get('trouble').textContent = text;
  get('trouble').hidden = false;
  document.documentElement.dataset.view = 'refused';
}

/** @param {'waits' | 'claimed'} state @param {string} text */
function tell(state, text) {
  document.documentElement.dataset.view = state;
  get('check').textContent = text;
  get('check').hidden = false;
}

async function begin() {
  // The page's scripts are there: from here on it says itself what is wrong.
  document.documentElement.dataset.python = 'later';
  const fragment = location.hash.slice(1);
  const trouble = troubleWith(fragment);
  if (trouble) return refuse(WORDS.trouble[trouble]);
  if (!canUnpack()) tell('waits', WORDS.waits);
  else {
    const claimed = await readLink(fragment);
    if (!claimed) return refuse(WORDS.trouble.cut);
    paintClaimed(claimed);
    tell('claimed', WORDS.checking);
  }
  performance.mark('readable');
  // Python is started when this has been painted, so that it takes nothing from it.
  const painted = new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
  await Promise.race([painted, new Promise((resolve) => setTimeout(resolve, 300))]);
  const { check } = await import('./check.js');
  await check(fragment);
}

holdRelease();
get('print').addEventListener('click', () => print());
addEventListener('hashchange', () => location.reload());
begin().catch((error) => refuse(WORDS.unchecked(String(error))));
