// What a link claims, as text in the customer's view.
//
// Everything here comes from a link that anyone may have made: it is set as text and nothing else.

import { get } from '../common/dom.js';
import { VERDICTS } from '../common/core-values.js';
import { worded } from '../common/figures.js';
import { textElement } from '../common/parts.js';
import { say } from '../common/words.js';

/** @import { Claimed, Figures, JobFigures, RoundFigures } from '../common/link.js' */

/** @param {string} verdict */
function verdictWord(verdict) {
  return say(`answer.verdict.${VERDICTS.some((known) => known === verdict) ? verdict : 'none'}`);
}

/** @param {RoundFigures} round @param {string} unit */
function boreLine({ offset, pm, tir, toward }, unit) {
  const figures = { offset, pm, tir, unit };
  return toward ? say('view.bore', { ...figures, toward }) : say('view.bore_nowhere', figures);
}

/** @param {RoundFigures} round @param {string} unit */
function faceLine({ face_runout, face_pm, face_limit }, unit) {
  const figures = { face_runout, face_pm, unit };
  return face_limit ? say('view.face_limit', { ...figures, face_limit }) : say('view.face', figures);
}

/** What one round came to. @param {RoundFigures} round @param {string} unit */
function roundPart(round, unit) {
  const box = document.createElement('div');
  box.className = 'verdict';
  box.dataset.verdict = round.verdict;
  box.append(textElement('p', verdictWord(round.verdict)));
  const lines = [boreLine(round, unit)];
  if (round.chance) lines.push(say('view.chance', { chance: round.chance }));
  const judged = (/** @type {string} */ line, /** @type {string} */ verdict) =>
    verdict ? say('view.judged', { line, verdict: verdictWord(verdict) }) : line;
  if (round.face_runout) lines.push(judged(faceLine(round, unit), round.face_verdict));
  if (round.pilot_offset) {
    const { pilot_offset, pilot_pm } = round;
    lines.push(judged(say('view.pilot', { pilot_offset, pilot_pm, unit }), round.pilot_verdict));
  }
  const list = document.createElement('ul');
  list.className = 'figures';
  list.append(...lines.map((line) => textElement('li', line)));
  return [box, list];
}

/** Which dowels were in for a round. @param {RoundFigures} round @param {string} unit */
function dowelsLine({ dowel_offset, dowel_aim, other_offset, other_aim }, unit) {
  if (!dowel_offset) return say('view.standard');
  if (!other_offset) return say('view.dowels', { offset: dowel_offset, aim: dowel_aim, unit });
  const dowel = (/** @type {string} */ offset, /** @type {string} */ aim) =>
    aim ? say('view.dowel', { offset, aim, unit }) : say('view.dowel_standard');
  const [one, other] = [dowel(dowel_offset, dowel_aim), dowel(other_offset, other_aim)];
  return say('view.dowels_differ', { one, other });
}

/** @param {JobFigures} whole */
function limitLines({ limit_offset, limit_tir, limit_pilot, unit }) {
  const lines = [
    limit_offset ? say('view.limit', { limit_offset, limit_tir, unit }) : say('view.no_limit'),
  ];
  if (limit_pilot) lines.push(say('view.pilot_limit', { limit_pilot, unit }));
  return lines;
}

/** Found, done, ended. @param {Figures} figures @param {HTMLElement} place */
export function paintFigures(figures, place) {
  const { whole, rounds } = worded(figures);
  const { unit } = whole;
  const part = (/** @type {string} */ name) =>
    /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  const later = rounds.slice(1);
  const last = later.at(-1);
  const done = later.flatMap((round, i) => {
    const told = [textElement('p', dowelsLine(round, unit))];
    const title = textElement('h3', say('view.round', { n: i + 1 }));
    return round === last ? told : [...told, title, ...roundPart(round, unit)];
  });
  part('stops').hidden = !whole.stops;
  part('stops').textContent = say('view.stops');
  part('found').replaceChildren(...roundPart(rounds[0], unit));
  part('done').replaceChildren(...(last ? done : [textElement('p', say('view.nothing_done'))]));
  part('ended').hidden = !last;
  part('left').replaceChildren(...(last ? roundPart(last, unit) : []));
  part('limits').replaceChildren(...limitLines(whole).map((line) => textElement('p', line)));
}

/** Who, what, when, and where the limits come from. @param {Claimed} claimed */
function paintTexts({ name, about, source }) {
  if (name) get('title').textContent = name;
  const entries = Object.entries(about).filter(([, text]) => text.trim());
  const rows = entries.flatMap(([key, text]) => {
    const value = textElement('dd', text);
    value.dir = 'auto'; // a text in another script must not turn round what stands beside it
    return [textElement('dt', say(`view.about.${key}`)), value];
  });
  get('about').replaceChildren(...rows);
  const told = source.trim()
    ? [`${say('view.source')} `, textElement('bdi', source)]
    : [say('view.no_source')];
  get('source').replaceChildren(...told);
}

/** @param {Claimed} claimed */
export function paintClaimed(claimed) {
  paintTexts(claimed);
  paintFigures(claimed.figures, get('claimed'));
  get('job').hidden = false;
}

/** Say how far the check of it is. @param {'waits' | 'claimed' | 'agrees' | 'older' | 'disagrees' | 'unchecked'} state
 * @param {string} text */
export function tell(state, text) {
  document.documentElement.dataset.view = state;
  get('check').textContent = text;
  get('check').dataset.check = state;
  get('check').hidden = false;
}

/** Say why there is nothing to be shown. @param {string} text */
export function refuse(text) {
  get('job').hidden = true;
  get('check').hidden = true;
  get('trouble').textContent = text;
  get('trouble').hidden = false;
  document.documentElement.dataset.view = 'refused';
}
