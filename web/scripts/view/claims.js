// What a link claims, as text in the customer's view.
//
// Everything here comes from a link that anyone may have made: it is set as text and nothing else.

import { get } from '../common/dom.js';
import { VERDICTS } from '../common/core-values.js';
import { worded } from '../common/figures.js';
import { textElement } from '../common/parts.js';
import { say } from '../common/words.js';

/** @import { Claimed, Figures, JobFigures, RoundFigures } from '../common/link.js' */

/**
 * @typedef {object} Told what a job says of its work in words; empty where it says nothing
 * @property {string} notes
 * @property {string} recheck the name of the last round
 */

/** @param {string} verdict */
function isVerdict(verdict) {
  return VERDICTS.some((known) => known === verdict);
}

/** @param {string} verdict */
function verdictWord(verdict) {
  return say(`answer.verdict.${isVerdict(verdict) ? verdict : 'none'}`);
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
function dowelsLine(round, unit) {
  const { dowel_offset, dowel_aim, other_offset } = round;
  if (!dowel_offset) return say('view.standard');
  if (!other_offset) return say('view.dowels', { offset: dowel_offset, aim: dowel_aim, unit });
  return say('view.dowels_differ', bothDowels(round, unit));
}

/** Two dowels that differ, each in words. @param {RoundFigures} round @param {string} unit */
function bothDowels({ dowel_offset, dowel_aim, other_offset, other_aim }, unit) {
  const dowel = (/** @type {string} */ offset, /** @type {string} */ aim) =>
    aim ? say('view.dowel', { offset, aim, unit }) : say('view.dowel_standard');
  return { one: dowel(dowel_offset, dowel_aim), other: dowel(other_offset, other_aim) };
}

/** @param {JobFigures} whole */
function limitLines({ limit_offset, limit_tir, limit_pilot, unit }) {
  const lines = [
    limit_offset ? say('view.limit', { limit_offset, limit_tir, unit }) : say('view.no_limit'),
  ];
  if (limit_pilot) lines.push(say('view.pilot_limit', { limit_pilot, unit }));
  return lines;
}

/** Which word is above all: what is open or over a limit comes before a bore that is within.
 * @param {JobFigures} whole @param {RoundFigures} last */
function gistOf({ stops }, { verdict, face_verdict, pilot_verdict }) {
  if (stops) return 'stop';
  if (verdict !== 'within') return isVerdict(verdict) ? verdict : 'none';
  for (const state of ['outside', 'undecided']) {
    if (face_verdict === state) return `face_${state}`;
    if (pilot_verdict === state) return `pilot_${state}`;
  }
  return 'within';
}

/** How far off it was and is, and what is allowed. @param {Figures} figures */
function offsetsLine({ whole: { unit, limit_offset }, rounds }) {
  const last = rounds.at(-1) ?? rounds[0];
  const { offset } = rounds[0];
  const found =
    rounds.length > 1
      ? [say('view.gist.found', { offset, unit }), say('view.gist.now', { offset: last.offset })]
      : [say('view.gist.only', { offset, unit })];
  if (limit_offset) found.push(say('view.gist.allowed', { limit: limit_offset }));
  if (rounds.length === 1) found.push(say('view.gist.once'));
  return found.join(' ');
}

/** Face and pilot line, where either is not within. @param {JobFigures} whole @param {RoundFigures} last */
function otherLines({ unit, limit_pilot }, { face_runout, face_limit, face_verdict, pilot_offset, pilot_verdict }) {
  const isOpen = (/** @type {string} */ verdict) => verdict && verdict !== 'within';
  const lines = [];
  if (isOpen(face_verdict)) {
    lines.push(say('view.gist.face', { runout: face_runout, limit: face_limit, unit }));
  }
  if (isOpen(pilot_verdict)) {
    lines.push(say('view.gist.pilot', { offset: pilot_offset, limit: limit_pilot, unit }));
  }
  return lines;
}

/** The dowels of a round as one text. @param {RoundFigures} round */
function dowelsOf({ dowel_offset, dowel_aim, other_offset, other_aim }) {
  return [dowel_offset, dowel_aim, other_offset, other_aim].join('|');
}

/** What was changed, as far as the record says; of one round, which dowels are in if not stock.
 * @param {Figures} figures @param {Told} told @returns {HTMLElement[]} */
function changesOf({ whole, rounds }, { notes, recheck }) {
  const [first] = rounds;
  const last = rounds.at(-1) ?? first;
  const offset = last.dowel_offset;
  const { unit } = whole;
  const isSame = dowelsOf(first) === dowelsOf(last);
  const found = [];
  if (rounds.length > 1 && isSame) found.push(say('view.change.none'));
  else if (last.other_offset) found.push(say('view.change.unlike', bothDowels(last, unit)));
  else if (!offset && !isSame) found.push(say('view.change.back'));
  else if (offset && !isSame && offset === first.dowel_offset && !first.other_offset) {
    found.push(say('view.change.turned', { offset, unit }));
  } else if (offset) {
    const isIn = rounds.length > 1 && last.verdict === 'within' && !whole.stops;
    found.push(say(`view.change.${isIn ? 'corrected' : 'fitted'}`, { offset, unit }));
  }
  const lines = found.map((line) => textElement('p', line));
  if (rounds.length === 1) return lines;
  if (recheck) {
    const line = textElement('p', `${say('view.change.name')} `);
    line.append(textElement('bdi', recheck));
    lines.push(line);
  }
  if (notes) lines.push(textElement('p', say('view.change.notes')));
  else if (isSame && !recheck) lines.push(textElement('p', say('view.change.silent')));
  return lines;
}

/** @param {HTMLElement} place @param {string} name @returns {HTMLElement} */
function part(place, name) {
  return /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
}

/** In short: the verdict, how far off, what was changed.
 * @param {Figures} figures @param {Told} told @param {HTMLElement} place */
export function paintGist(figures, told, place) {
  const both = worded(figures);
  const last = both.rounds.at(-1) ?? both.rounds[0];
  const gist = gistOf(both.whole, last);
  const box = part(place, 'verdict');
  box.dataset.verdict = gist === 'stop' ? gist : gist.replace(/^.*_/, '');
  box.replaceChildren(textElement('p', say(`view.verdict.${gist}`)));
  part(place, 'offsets').textContent = offsetsLine(both);
  const others = otherLines(both.whole, last).map((line) => textElement('p', line));
  part(place, 'changes').replaceChildren(...others, ...changesOf(both, told));
}

/** Every figure: as found, what was changed, the last recheck, the limits.
 * @param {Figures} figures @param {HTMLElement} place */
export function paintFigures(figures, place) {
  const { whole, rounds } = worded(figures);
  const { unit } = whole;
  const later = rounds.slice(1);
  const last = later.at(-1);
  const done = later.flatMap((round, i) => {
    const told = [textElement('p', dowelsLine(round, unit))];
    const title = textElement('h4', say('usual.later', { n: i + 1 }));
    return round === last ? told : [...told, title, ...roundPart(round, unit)];
  });
  part(place, 'found').replaceChildren(...roundPart(rounds[0], unit));
  part(place, 'later').hidden = !last;
  part(place, 'done').replaceChildren(...done);
  part(place, 'ended').hidden = !last;
  part(place, 'left').replaceChildren(...(last ? roundPart(last, unit) : []));
  part(place, 'limits').replaceChildren(...limitLines(whole).map((line) => textElement('p', line)));
}

/** Who, what, when, and where the limits come from. @param {Claimed} claimed */
function paintTexts({ name, about, source }) {
  const { shop, ...others } = about;
  get('shop').textContent = shop;
  get('shop').hidden = !shop.trim();
  if (name) get('title').textContent = name;
  const entries = Object.entries(others).filter(([, text]) => text.trim());
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

/** What a job says of its work in words. @param {Omit<Claimed, 'figures'>} claimed @returns {Told} */
export function toldIn({ about, recheck }) {
  return { notes: about.notes.trim(), recheck: recheck.trim() };
}

/** @param {Claimed} claimed */
export function paintClaimed(claimed) {
  const { figures } = claimed;
  paintTexts(claimed);
  paintGist(figures, toldIn(claimed), get('gist'));
  paintFigures(figures, get('claimed'));
  get('means').textContent = say(`view.small.${figures.whole.unit === 'mm' ? 'mm' : 'thou'}`);
  get('job').hidden = false;
}

/** Say how far the check of it is: below what was found, or above all of it where that may not hold.
 * @param {'waits' | 'claimed' | 'agrees' | 'older' | 'disagrees' | 'unchecked'} state @param {string} text */
export function tell(state, text) {
  const check = get('check');
  const isQuiet = state === 'claimed' || state === 'agrees';
  const before = isQuiet ? get('means') : get('job');
  if (check.nextElementSibling !== before) before.before(check);
  check.setAttribute('role', isQuiet || state === 'waits' ? 'status' : 'alert');
  document.documentElement.dataset.view = state;
  check.textContent = text;
  check.dataset.check = state;
  check.hidden = false;
}

/** Say why there is nothing to be shown. @param {string} text */
export function refuse(text) {
  get('job').hidden = true;
  get('check').hidden = true;
  get('trouble').textContent = text;
  get('trouble').hidden = false;
  document.documentElement.dataset.view = 'refused';
}
