// What the figures of the answer are: a list of terms behind each list of figures, closed until it is
// asked for. Every text comes from Python.

import { say } from '../common/words.js';

/** @typedef {{ term: string, meaning: string }} PlainWord */

/** The parts that were opened stay open while the answer changes. @type {Set<string>} */
const opened = new Set();

/** @param {string} part @param {PlainWord[]} words */
function explanation(part, words) {
  const made = document.createElement('details');
  made.className = 'meanings';
  made.open = opened.has(part);
  made.addEventListener('toggle', () => {
    if (made.isConnected && made.open) opened.add(part);
    else if (made.isConnected) opened.delete(part);
  });
  const summary = document.createElement('summary');
  summary.textContent = say('result.explain');
  const list = document.createElement('dl');
  for (const { term, meaning } of words) {
    const name = Object.assign(document.createElement('dt'), { textContent: term });
    const said = Object.assign(document.createElement('dd'), { textContent: meaning });
    list.append(name, said);
  }
  made.append(summary, list);
  return made;
}

/** Put what it means behind each list of figures. @param {Record<string, PlainWord[]>} words by part */
export function explain(words) {
  for (const [part, listed] of Object.entries(words)) {
    const place = part === 'bore' ? '#figures' : `#section-${CSS.escape(part)} > .figures`;
    const figures = document.querySelector(place);
    if (!figures) continue;
    const next = figures.nextElementSibling;
    const made = explanation(part, listed);
    if (next?.classList.contains('meanings')) {
      if (next.textContent !== made.textContent) next.replaceWith(made);
    } else figures.after(made);
  }
}
