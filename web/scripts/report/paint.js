// Paints the answer. Every text comes worded from Python and is set as text, never as markup; the
// drawing, which Python made of numbers, is parsed as SVG.

import { get } from '../common/dom.js';
import { explain } from './glossary.js';
import { paintActions } from './actions.js';
import { offerMove } from '../common/movement.js';
import { remarkItem, sectionPart, tableRow, textElement } from '../common/parts.js';
import { nameMarks } from '../form/readings.js';
import { showOrder } from './order.js';
import { putDrawing } from '../common/svg.js';
import { say } from '../common/words.js';

/** @import { Action } from './actions.js' */
/** @import { PlainWord } from './glossary.js' */
/** @import { Order } from './order.js' */
/** @import { Told } from '../rigs/rigs.js' */
/** @import { Remark, Section } from '../common/parts.js' */

/**
 * @typedef {object} Choice
 * @property {string} what
 * @property {string} expected
 * @property {string} chance
 * @property {string} pilot empty where it is not known
 * @property {boolean} chosen
 *
 * @typedef {object} Sheet
 * @property {string} verdict
 * @property {string} verdict_text
 * @property {string} headline
 * @property {string[]} figures
 * @property {string[]} steps
 * @property {Choice[]} choices
 * @property {Section[]} sections
 * @property {(Remark & { place: string })[]} remarks each with where it stands: in sight, or folded away
 *
 * @typedef {{ field: string, text: string }} Fault
 * @typedef {{ actions: Action[], lists: string[], not_entered: string }} Glance
 * @typedef {{ limit: string, stage: string, marks: string[] } & (
 *   { state: 'waiting', text: string, rig?: undefined } |
 *   { state: 'faults', faults: Fault[] } |
 *   { state: 'answer', sheet: Sheet, glance: Glance, words: Record<string, PlainWord[]>, drawing: string, side_view: string, flange_view: string, depth_view: string, dowel_view: string, wave: string, order: Order | null, rig: Told })} Answer
 */

/** Set a text only where it changes, so that a screen reader hears changes alone. */
function setText(/** @type {string} */ id, /** @type {string} */ text) {
  if (get(id).textContent !== text) get(id).textContent = text;
}

/** @param {string} id @param {'li'} name @param {string[]} texts */
function setList(id, name, texts) {
  get(id).replaceChildren(...texts.map((text) => textElement(name, text)));
}

/** @param {Choice[]} choices */
function paintChoices(choices) {
  const withPilot = choices.some(({ pilot }) => pilot);
  get('choices').classList.toggle('with-pilot', withPilot);
  get('choices').classList.toggle('stack', withPilot);
  const heads = [...get('choices').querySelectorAll('th')].map((head) => head.textContent ?? '');
  const rows = choices.map(({ what, expected, chance, pilot, chosen }) => {
    const row = tableRow('td', [what, expected, chance, ...(withPilot ? [pilot] : [])], heads);
    row.className = chosen ? 'chosen' : '';
    return row;
  });
  get('choices').querySelector('tbody')?.replaceChildren(...rows);
}

/** What is to be known stays in sight; what was not entered is one line, and the reason of a step stands
 * with the step. @param {Sheet['remarks']} remarks @param {string} notEntered */
function paintRemarks(remarks, notEntered) {
  const at = (/** @type {string} */ where) => remarks.filter(({ place }) => place === where).map(remarkItem);
  const inSight = at('');
  get('doubts').hidden = inSight.length === 0;
  get('remarks').replaceChildren(...inSight);
  get('not-entered').hidden = notEntered === '';
  setText('not-entered-line', notEntered);
  get('not-entered-list').replaceChildren(...at('not_entered'));
}

/** The parts of the sheet; one that was opened stays open. @param {Section[]} sections */
function paintSections(sections) {
  const open = new Set([...get('sections').querySelectorAll('details[open]')].map(({ id }) => id));
  const parts = sections.map(sectionPart);
  for (const part of parts) part.open = open.has(part.id);
  get('sections').replaceChildren(...parts);
}

/** @param {Sheet} sheet @param {Glance} glance */
function paintSheet(sheet, glance) {
  get('verdict').dataset.verdict = sheet.verdict;
  setText('verdict-text', sheet.verdict_text);
  setText('headline', sheet.headline);
  setList('figures', 'li', sheet.figures);
  paintActions(glance.actions, glance.lists);
  paintChoices(sheet.choices);
  paintSections(sheet.sections);
  paintRemarks(sheet.remarks, glance.not_entered);
}

/** The places of an answer's faults; what else went wrong on the page has its own, which no answer wipes. */
const PLACES = '.fault[id^="fault-"]';

/** Where a fault is written: below its field. @param {HTMLElement} field */
function faultPlace(field) {
  const around = field.closest('.field') ?? field.parentElement;
  let place = around?.querySelector(PLACES);
  if (!place) {
    place = textElement('p', '');
    place.className = 'fault';
    place.id = `fault-${field.id || field.getAttribute('name')}`;
    around?.append(place);
    const described = field.getAttribute('aria-describedby');
    field.setAttribute('aria-describedby', described ? `${described} ${place.id}` : place.id);
  }
  return place;
}

/** @param {string} name */
function fieldNamed(name) {
  return document.querySelector(`[name="${CSS.escape(name)}"]`);
}

/** The field of a fault, or the first field below it: a sweep's fault stands at its first reading.
 * @param {string} name */
function fieldFor(name) {
  return (
    fieldNamed(name) ?? document.querySelector(`[name^="${CSS.escape(name)}."]`)
  );
}

/** @param {Fault[]} faults */
function paintFaults(faults) {
  for (const old of document.querySelectorAll(PLACES)) old.textContent = '';
  for (const old of document.querySelectorAll('[aria-invalid]')) old.removeAttribute('aria-invalid');
  const homeless = [];
  for (const { field, text } of faults) {
    const found = fieldFor(field);
    if (!(found instanceof HTMLElement)) {
      homeless.push(text);
      continue;
    }
    found.closest('details')?.setAttribute('open', '');
    found.setAttribute('aria-invalid', 'true');
    const place = faultPlace(found);
    place.textContent = place.textContent ? `${place.textContent} ${text}` : text;
  }
  return homeless;
}

/** The picture grows in the middle of the readings too, where they stand round the clock: without its
 * words, which are too small there. @param {string} drawing */
function putMiddle(drawing) {
  const [middle] = [...document.querySelectorAll('.bore-readings .middle')].slice(-1);
  if (!(middle instanceof HTMLElement) || document.documentElement.dataset.layout !== 'clock') return;
  putDrawing(middle, drawing);
  const picture = middle.querySelector('svg');
  picture?.setAttribute('viewBox', '30 22 300 300');
  picture?.setAttribute('aria-hidden', 'true');
  for (const part of middle.querySelectorAll('.legend, .readings, defs, text')) part.remove();
}

/** Take the answer off the page, and say why. @param {string} text */
export function conceal(text) {
  get('shown').hidden = true;
  showOrder(null);
  get('waiting').hidden = false;
  setText('waiting', text);
  setText('strip-verdict', '');
  setText('strip-headline', text);
  setText('heard', text);
}

/** @param {Answer} answer */
export function paint(answer) {
  setText('limit-both', answer.limit);
  if (answer.marks) nameMarks(answer.marks);
  for (const link of document.querySelectorAll('[data-stage]')) {
    const isHere = /** @type {HTMLElement} */ (link).dataset.stage === answer.stage;
    link.setAttribute('aria-current', isHere ? 'step' : 'false');
  }
  const faults = answer.state === 'faults' ? answer.faults : [];
  const homeless = paintFaults(faults);
  const answered = answer.state === 'answer';
  get('strip').hidden = false;
  document.documentElement.dataset.answer = answer.state;
  if (answered) {
    get('shown').hidden = false;
    get('waiting').hidden = true;
    paintSheet(answer.sheet, answer.glance);
    explain(answer.words);
    putDrawing(get('drawing'), answer.drawing);
    putMiddle(answer.drawing);
    putDrawing(get('side-view'), answer.side_view);
    putDrawing(get('flange-view'), answer.flange_view);
    putDrawing(get('depth-view'), answer.depth_view);
    get('views').hidden = !answer.side_view && !answer.flange_view && !answer.depth_view;
    putDrawing(get('dowel-view'), answer.dowel_view);
    putDrawing(get('wave'), answer.wave);
    showOrder(answer.order);
    offerMove(get('show-move'), get('drawing'));
    setText('strip-verdict', `${answer.sheet.verdict_text}.`);
    setText('strip-headline', answer.sheet.headline);
    setText('heard', `${answer.sheet.verdict_text}. ${answer.sheet.headline}.`);
    return;
  }
  const several = faults.length > 1;
  const text =
    answer.state === 'waiting'
      ? answer.text
      : [several ? say('result.wrong', { n: faults.length }) : say('result.one_wrong'), ...homeless].join(' ');
  conceal(text);
}
