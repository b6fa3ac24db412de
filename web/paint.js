// Paints the answer. Every text comes worded from Python and is set as text, never as markup; the
// drawing, which Python made of numbers, is parsed as SVG.

import { explain } from './explain.js';
import { WORDS } from './words.js';

/** @import { PlainWord } from './explain.js' */

/**
 * @typedef {object} Choice
 * @property {string} what
 * @property {string} expected
 * @property {string} chance
 * @property {string} pilot empty where it is not known
 * @property {boolean} chosen
 *
 * @typedef {object} Section
 * @property {string} name
 * @property {string} title
 * @property {string} verdict
 * @property {string} verdict_text
 * @property {string[]} lines
 * @property {string[]} head
 * @property {string[][]} rows
 *
 * @typedef {{ level: string, label: string, text: string }} Remark
 * @typedef {object} Sheet
 * @property {string} verdict
 * @property {string} verdict_text
 * @property {string} headline
 * @property {string[]} figures
 * @property {string[]} steps
 * @property {Choice[]} choices
 * @property {Section[]} sections
 * @property {Remark[]} remarks
 *
 * @typedef {{ field: string, text: string }} Fault
 * @typedef {{ limit: string } & (
 *   { state: 'waiting', text: string } |
 *   { state: 'faults', faults: Fault[] } |
 *   { state: 'answer', sheet: Sheet, words: Record<string, PlainWord[]>, drawing: string, side_view: string, flange_view: string })} Answer
 */

/** @param {string} id */
function get(id) {
  return /** @type {HTMLElement} */ (document.getElementById(id));
}

/** @template {keyof HTMLElementTagNameMap} K @param {K} name @param {string} text */
function textElement(name, text) {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

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

/** A row; its cells carry their heads, which stand before them where a table is stacked.
 * @param {'td' | 'th'} name @param {string[]} texts @param {string[]} [heads] */
function tableRow(name, texts, heads = []) {
  const row = document.createElement('tr');
  const cells = texts.map((text, i) => {
    const cell = textElement(name, text);
    cell.dataset.head = heads[i] ?? '';
    return cell;
  });
  row.append(...cells);
  return row;
}

/** A part of the sheet beside the bore. @param {Section} section */
function sectionPart({ name, title, verdict, verdict_text: word, lines, head, rows }) {
  const part = document.createElement('section');
  part.id = `section-${name}`;
  part.append(textElement('h3', title));
  if (word) {
    const box = document.createElement('div');
    box.className = 'verdict';
    box.dataset.verdict = verdict;
    box.append(textElement('p', word));
    part.append(box);
  }
  const list = document.createElement('ul');
  list.className = 'figures';
  list.append(...lines.map((line) => textElement('li', line)));
  part.append(list);
  if (rows.length) {
    const table = document.createElement('table');
    if (head.length > 3) table.className = 'stack';
    table.append(tableRow('th', head), ...rows.map((row) => tableRow('td', row, head)));
    part.append(table);
  }
  return part;
}

/** @param {Remark[]} remarks */
function paintRemarks(remarks) {
  get('doubts-title').hidden = remarks.length === 0;
  const items = remarks.map(({ level, label, text }) => {
    const item = document.createElement('li');
    item.dataset.level = level;
    item.append(textElement('b', label), text);
    return item;
  });
  get('remarks').replaceChildren(...items);
}

/** @param {string} id @param {string} svg empty for none */
function paintDrawing(id, svg) {
  get(id).hidden = !svg;
  if (!svg) return;
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  get(id).replaceChildren(document.importNode(parsed, true));
}

/** @param {Sheet} sheet */
function paintSheet(sheet) {
  get('verdict').dataset.verdict = sheet.verdict;
  setText('verdict-text', sheet.verdict_text);
  setText('headline', sheet.headline);
  setList('figures', 'li', sheet.figures);
  setList('steps', 'li', sheet.steps);
  paintChoices(sheet.choices);
  get('sections').replaceChildren(...sheet.sections.map(sectionPart));
  paintRemarks(sheet.remarks);
}

/** Where a fault is written: below its field. @param {HTMLElement} field */
function faultPlace(field) {
  const around = field.closest('.field') ?? field.parentElement;
  let place = around?.querySelector('.fault');
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
  for (const old of document.querySelectorAll('.fault[id]')) old.textContent = '';
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

/** @param {Answer} answer */
export function paint(answer) {
  setText('limit-both', answer.limit);
  const faults = answer.state === 'faults' ? answer.faults : [];
  const homeless = paintFaults(faults);
  const answered = answer.state === 'answer';
  get('shown').hidden = !answered;
  get('waiting').hidden = answered;
  get('strip').hidden = false;
  document.documentElement.dataset.answer = answer.state;
  if (answered) {
    paintSheet(answer.sheet);
    explain(answer.words);
    paintDrawing('drawing', answer.drawing);
    paintDrawing('side-view', answer.side_view);
    paintDrawing('flange-view', answer.flange_view);
    setText('strip-verdict', `${answer.sheet.verdict_text}.`);
    setText('strip-headline', answer.sheet.headline);
    return;
  }
  const several = faults.length > 1;
  const text =
    answer.state === 'waiting'
      ? answer.text
      : [several ? WORDS.severalOutOfOrder(faults.length) : WORDS.outOfOrder, ...homeless].join(' ');
  setText('waiting', text);
  setText('strip-verdict', '');
  setText('strip-headline', text);
}
