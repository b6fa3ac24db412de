// The work order for the machine shop: on the screen folded, on paper a page of its own. All its texts
// come worded from Python, and its drawings too.

import { get, make } from '../common/dom.js';
import { textElement } from '../common/parts.js';
import { aboutList, readingsTable } from './paper.js';
import { putDrawing } from '../common/svg.js';

/** @import { Entry, Table } from './paper.js' */

/**
 * @typedef {object} OrderSheet
 * @property {string} title
 * @property {string} shop
 * @property {string} job
 * @property {Entry[]} about
 * @property {string} work
 * @property {string[]} steps
 * @property {string[]} views
 * @property {string} profile
 * @property {Table[]} tables
 * @property {Table} measured
 * @property {string[]} cautions
 * @property {string[]} sign
 *
 * @typedef {{ title: string, lacking: string, lacks: string[], sheet: OrderSheet | null }} Order
 */

/** @param {string} svg */
function drawing(svg) {
  const place = make('div', { className: 'order-drawing' });
  putDrawing(place, svg);
  return place;
}

/** @param {'ul' | 'ol'} name @param {string[]} texts */
function list(name, texts) {
  return make(name, {}, ...texts.map((text) => textElement('li', text)));
}

/** @param {OrderSheet} sheet */
function head({ title, shop, job, about }) {
  const name = make('p', { className: 'shop', dir: 'auto' }, shop);
  const what = make('p', { className: 'order-job', dir: 'auto' }, job);
  return make('div', { className: 'paper-title' }, name, textElement('h1', title), what, aboutList(about));
}

/** All of the order, below its heading. @param {OrderSheet} sheet @param {'h2' | 'h4'} heading */
function whole(sheet, heading) {
  const { work, steps, views, profile, tables, measured, cautions, sign } = sheet;
  const drawings = [...views, ...(profile ? [profile] : [])].map(drawing);
  const lines = sign.map((text) => make('p', { className: 'signature' }, text));
  const signed = make('div', {}, ...lines);
  const after = make('div', { className: 'order-after' }, readingsTable(measured), signed);
  return [
    textElement(heading, work),
    make('div', { className: 'order-cautions' }, list('ul', cautions)),
    list('ol', steps),
    make('div', { className: 'order-tables' }, ...tables.map(readingsTable)),
    make('div', { className: 'order-foot' }, ...drawings, after),
  ];
}

/** On the screen, folded: the order, or what is missing for it. @param {Order | null | undefined} order */
export function showOrder(order) {
  const part = document.getElementById('order');
  if (!part) return; // the practice page has none
  part.hidden = !order;
  const { lacks = [], lacking = '', sheet = null } = order ?? {};
  get('order-lacks').hidden = lacks.length === 0;
  get('order-lacks').replaceChildren(textElement('p', lacking), list('ul', lacks));
  get('order-sheet').hidden = get('order-prints').hidden = !sheet;
  get('order-sheet').replaceChildren(...(sheet ? whole(sheet, 'h4') : []));
  for (const table of get('order-sheet').querySelectorAll('table')) table.className = 'stack';
}

/** On paper, with its head. @param {HTMLElement} place @param {Order | null} order */
export function paintOrder(place, order) {
  place.replaceChildren(...(order?.sheet ? [head(order.sheet), ...whole(order.sheet, 'h2')] : []));
}

/** What the next print is: the sheet, with the order behind it where that was asked for, or the order alone.
 * @param {'sheet' | 'order'} what */
export function printAs(what) {
  const root = document.documentElement;
  root.dataset.print = what;
  addEventListener('afterprint', () => delete root.dataset.print, { once: true });
  print();
}

/** Follow the tick that puts the order behind the sheet. */
export function startOrder() {
  const tick = /** @type {HTMLInputElement} */ (get('order-with-sheet'));
  tick.addEventListener('change', () => {
    document.documentElement.toggleAttribute('data-with-order', tick.checked);
  });
}
