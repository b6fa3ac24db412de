// The sheet on paper, painted where only a printer sees it. All its texts come worded from Python.

import { remarkItem, tableRow, textElement } from '../common/parts.js';
import { putDrawing } from '../common/svg.js';

/** @import { Remark, Section } from '../common/parts.js' */

/**
 * @typedef {{ label: string, text: string }} Entry
 * @typedef {{ title: string, head: string[], rows: string[][] }} Table
 * @typedef {object} Paper
 * @property {string} title
 * @property {string} shop
 * @property {Entry[]} about
 * @property {string} verdict
 * @property {string} verdict_text
 * @property {string} headline
 * @property {string[]} figures
 * @property {string[]} limits
 * @property {string[]} dial
 * @property {string[]} steps
 * @property {Table} results
 * @property {Table[]} readings
 * @property {{ name: string, text: string }[]} photos
 * @property {Section[]} sections
 * @property {Remark[]} remarks
 * @property {string[]} done what was ticked of the checklist
 * @property {string[]} open what was not
 * @property {string} drawing
 * @property {Record<string, string>} words
 *
 * @typedef {object} Link where the same is to be seen on a phone
 * @property {string} address
 * @property {string} svg its QR code
 * @property {string} note who can open it, where not everybody can
 */

/** @param {string} name @param {(string | Node)[]} children */
function part(name, ...children) {
  const made = document.createElement('div');
  made.className = name;
  made.append(...children);
  return made;
}

/** @param {'ul' | 'ol'} name @param {string[]} texts */
function list(name, texts) {
  const made = document.createElement(name);
  made.append(...texts.map((text) => textElement('li', text)));
  return made;
}

/** A table below its title, if it has one. @param {Table} table */
export function readingsTable({ title, head, rows }) {
  const table = document.createElement('table');
  if (title) table.append(textElement('caption', title));
  const heads = document.createElement('thead');
  heads.append(tableRow('th', head));
  const body = document.createElement('tbody');
  body.append(...rows.map((row) => tableRow('td', row, head)));
  table.append(heads, body);
  return table;
}

/** What was told about the job, each with its label. @param {Entry[]} about */
export function aboutList(about) {
  const list = document.createElement('dl');
  for (const { label, text } of about) {
    const value = textElement('dd', text);
    value.dir = 'auto';
    const entry = document.createElement('div');
    entry.append(textElement('dt', label), value);
    list.append(entry);
  }
  return list;
}

/** @param {Paper} paper */
function titleBlock({ title, shop, about }) {
  const block = aboutList(about);
  const name = textElement('p', shop);
  name.className = 'shop';
  name.dir = 'auto';
  return part('paper-title', name, textElement('h1', title), block);
}

/** @param {Paper} paper */
function comesTo({ verdict, verdict_text: word, headline, figures, steps, limits, dial, words }) {
  const box = part('verdict', textElement('p', word));
  box.dataset.verdict = verdict;
  const found = [box, textElement('p', headline), list('ul', figures)];
  const todo = [textElement('h2', words.to_do), list('ol', steps)];
  return part('comes-to', ...found, ...todo, textElement('h2', words.found), list('ul', [...limits, ...dial]));
}

/** @param {Section} section */
function sectionOf({ title, verdict_text: word, lines, head, rows }) {
  const heading = textElement('h3', title);
  if (word) heading.append(' ', textElement('b', word));
  const made = part('paper-section', heading, list('ul', lines));
  if (rows.length) made.append(readingsTable({ title: '', head, rows }));
  return made;
}

/** The photos beside readings, each with its place; one whose picture is not here is named all the same.
 * @param {Paper} paper @param {Record<string, HTMLImageElement>} pictures */
function photosOf({ photos = [], words }, pictures) {
  if (!photos.length) return [];
  const figures = photos.map(({ name, text }) => {
    const figure = document.createElement('figure');
    const picture = pictures[name]?.cloneNode() ?? textElement('p', words.no_picture ?? '');
    figure.append(picture, textElement('figcaption', text));
    return figure;
  });
  return [textElement('h2', words.photos ?? ''), part('paper-photos', ...figures)];
}

/** What was looked after, and what was not. @param {Paper} paper */
function checklist({ done, open, words }) {
  const lists = [];
  for (const [name, title, texts] of /** @type {const} */ ([
    ['open', words.open, open],
    ['done', words.done, done],
  ])) {
    const items = list('ul', texts);
    items.className = name;
    if (texts.length) lists.push(textElement('h2', title), items);
  }
  return part('checklist', ...lists);
}

/** @param {Paper} paper @param {Link | null} link */
function foot(paper, link) {
  const { words } = paper;
  const texts = [words.view, words.caution].map((text) => textElement('p', text));
  const signature = textElement('p', words.signature);
  signature.className = 'signature';
  const told = part('notes', checklist(paper), part('closing-lines', part('cautions', ...texts), signature));
  if (!link) return part('paper-foot', told);
  const code = part('code');
  putDrawing(code, link.svg);
  const address = textElement('p', `${words.link} ${new URL(link.address).host}. ${link.note}`);
  return part('paper-foot', told, part('same', address, code));
}

/**
 * Paint the sheet. @param {HTMLElement} place @param {Paper} paper @param {Link | null} link
 * @param {Record<string, HTMLImageElement>} [pictures] by the names of photos
 */
export function paintPaper(place, paper, link, pictures = {}) {
  const drawing = part('paper-drawing');
  putDrawing(drawing, paper.drawing);
  const remarks = document.createElement('ul');
  remarks.append(...paper.remarks.map(remarkItem));
  const doubts = paper.remarks.length ? [textElement('h2', paper.words.doubts), remarks] : [];
  place.replaceChildren(
    titleBlock(paper),
    part('paper-top', comesTo(paper), drawing),
    readingsTable(paper.results),
    ...paper.readings.map(readingsTable),
    part('paper-sections', ...paper.sections.map(sectionOf)),
    part('remarks', ...doubts),
    foot(paper, link),
    ...photosOf(paper, pictures),
  );
}
