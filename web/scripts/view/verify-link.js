// Works a link out again, with Python, and shows what comes of it beside what the link claims.

import { get } from '../common/dom.js';
import { paintClaimed, paintFigures, paintGist, refuse, tell, toldIn } from './claims.js';
import { showParts } from '../common/assembly-parts.js';
import { speakOf } from '../common/assembly-words.js';
import { namedFigures } from '../common/link.js';
import { startCore } from '../python/core.js';
import { readingsTable } from '../report/paper.js';
import { offerMove } from '../common/movement.js';
import { remarkItem, textElement } from '../common/parts.js';
import { putDrawing } from '../common/svg.js';
import { say } from '../common/words.js';

/** @import { Claimed } from '../common/link.js' */
/** @import { Table } from '../report/paper.js' */
/** @import { Remark } from '../common/parts.js' */

/**
 * @typedef {object} Opened
 * @property {boolean} agrees
 * @property {boolean} older it does not agree, and an older release made it
 * @property {string[]} claimed
 * @property {string[]} figures
 * @property {Omit<Claimed, 'figures'>} texts
 * @property {string} before
 * @property {string} after
 * @property {string[]} taken how the readings were taken
 * @property {Table[]} readings
 * @property {Remark[]} remarks
 * @property {{ name: string, text: string }[]} photos
 * @property {Record<string, string>} form
 *
 * @typedef {({ state: 'link' } & Opened) | { state: 'refused', text: string }} Answer
 */

/** A copy of a place, with a title above each, and whose figures are in which. @param {string} id */
function copyBelow(id) {
  const place = get(id);
  const copy = /** @type {HTMLElement} */ (place.cloneNode(true));
  copy.id = `${id}-recomputed`;
  place.before(textElement('h2', say('view.claimed')));
  place.after(textElement('h2', say('view.recomputed')), copy);
  return copy;
}

/** The figures that the readings give, beside those that the link shows.
 * @param {Opened} opened @param {string} [more] said below the state */
function paintBoth({ figures, texts }, more) {
  paintGist(namedFigures(figures), toldIn(texts), copyBelow('gist'));
  paintFigures(namedFigures(figures), copyBelow('claimed'));
  /** @type {HTMLDetailsElement} */ (get('all-figures')).open = true;
  if (more) get('check').append(textElement('span', more));
}

/** @param {Opened} opened */
function paint(opened) {
  const { agrees, older, claimed, figures, texts, before, after, taken, readings, remarks } = opened;
  paintClaimed({ ...texts, figures: namedFigures(agrees ? figures : claimed) });
  const state = agrees ? 'agrees' : older ? 'older' : 'disagrees';
  tell(state, say(`view.${state}`));
  if (!agrees) paintBoth(opened, older ? undefined : say('view.disagrees_more'));
  putDrawing(get('before'), before);
  putDrawing(get('after'), after);
  get('drawings').hidden = false;
  get('after-part').hidden = !after;
  offerMove(get('show-move'), get('after'));
  get('taken').replaceChildren(...taken.map((line) => textElement('li', line)));
  get('readings').replaceChildren(...readings.map(readingsTable));
  get('remarks').replaceChildren(...remarks.map(remarkItem));
  const remarksPart = /** @type {HTMLDetailsElement} */ (get('remarks-part'));
  remarksPart.hidden = remarks.length === 0;
  remarksPart.open = remarks.some(({ level }) => level === 'stop');
  offerToMatch(opened.photos);
  get('more').hidden = false;
  offerToOpen(opened.form);
}

/** How many photos there are, and whether the files that came with the link are these.
 * @param {Opened['photos']} photos */
function offerToMatch(photos) {
  get('photos-part').hidden = photos.length === 0;
  get('photos-count').textContent = say(photos.length === 1 ? 'view.photo_taken' : 'view.photos_taken', {
    n: photos.length,
  });
  get('photos').replaceChildren(...photos.map(({ text }) => textElement('li', text)));
  const open = /** @type {HTMLInputElement} */ (get('photos-open'));
  open.addEventListener('change', async () => {
    const files = [...(open.files ?? [])];
    open.value = ''; // so that the same files can be chosen again
    try {
      const { matchPhotos } = await import('./match-photos.js');
      get('photos-status').textContent = await matchPhotos(photos, files, get('photos'));
    } catch (error) {
      get('photos-status').textContent = say('view.photos_failed', { why: String(error) });
    }
  });
}

/** @param {Record<string, string>} form */
function offerToOpen(form) {
  const button = /** @type {HTMLButtonElement} */ (get('adopt'));
  button.hidden = false;
  button.addEventListener('click', async () => {
    button.disabled = true;
    get('adopted').textContent = say('view.opening');
    try {
      const { openAsOwn } = await import('../jobs/open-as-own.js');
      await openAsOwn(form);
    } catch (error) {
      button.disabled = false;
      get('adopted').textContent = say('view.not_opened', { why: String(error) });
    }
  });
}

/** @param {string} fragment */
export async function check(fragment) {
  const core = startCore({});
  try {
    /** @type {Answer} */
    const answer = await core.openLink(fragment);
    if (answer.state === 'link') {
      const assembly = answer.form['housing.assembly'] ?? '';
      showParts(assembly);
      await speakOf(assembly, import.meta.url).catch((error) => console.warn(String(error)));
      paint(answer);
    } else refuse(answer.text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    tell('unchecked', say('view.unchecked', { why }));
  } finally {
    core.stop();
  }
}
