// Pieces of the answer that stand in more than one place. Every text comes worded from Python and is
// set as text, never as markup.

/**
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
 */

/** @template {keyof HTMLElementTagNameMap} K @param {K} name @param {string} text */
export function textElement(name, text) {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

/** A row; its cells carry their heads, which stand before them where a table is stacked.
 * @param {'td' | 'th'} name @param {string[]} texts @param {string[]} [heads] */
export function tableRow(name, texts, heads = []) {
  const row = document.createElement('tr');
  const cells = texts.map((text, i) => {
    const cell = textElement(name, text);
    cell.dataset.head = heads[i] ?? '';
    return cell;
  });
  row.append(...cells);
  return row;
}

/** A part of the sheet beside the bore: its title and its verdict, the rest a tap away.
 * @param {Section} section */
export function sectionPart({ name, title, verdict, verdict_text: word, lines, head, rows }) {
  const part = document.createElement('details');
  part.id = `section-${name}`;
  part.className = 'part';
  const head3 = document.createElement('summary');
  head3.append(textElement('h3', title));
  if (word) head3.append(' ', textElement('span', word));
  part.append(head3);
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

/** @param {Remark} remark */
export function remarkItem({ level, label, text }) {
  const item = document.createElement('li');
  item.dataset.level = level;
  item.append(textElement('b', label), text);
  return item;
}
