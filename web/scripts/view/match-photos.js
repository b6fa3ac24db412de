// Which reading a picture belongs to: its name, made of its bytes, stands in the link. Pictures come as
// files, or in the file of a job.

import { nameOf } from '../photos/album.js';
import { fromBase64, urlOf } from '../photos/base64.js';
import { LONGEST_FILE } from '../common/core-values.js';
import { make } from '../common/dom.js';
import { say } from '../common/words.js';

/** How wide a picture is shown; pixels. */
const WIDTH = 280;

/** The pictures in a file. @param {File} file @returns {Promise<Uint8Array<ArrayBuffer>[]>} */
async function picturesIn(file) {
  if (file.size > LONGEST_FILE) return [];
  if (!file.name.endsWith('.json')) return [new Uint8Array(await file.arrayBuffer())];
  try {
    const { pictures } = JSON.parse(await file.text());
    return pictures.map((/** @type {{ jpeg: string }} */ { jpeg }) => fromBase64(jpeg));
  } catch {
    return []; // no file of a job, or none with pictures: it matches nothing, and that is told
  }
}

/** Show each picture at its reading. @param {{ name: string }[]} photos @param {File[]} files
 * @param {HTMLElement} list a row for each photo @returns {Promise<string>} what came of it */
export async function matchPhotos(photos, files, list) {
  if (!globalThis.crypto?.subtle) return say('view.photos_need_https');
  const strangers = [];
  for (const file of files) {
    let isKnown = false;
    for (const bytes of await picturesIn(file)) {
      const name = await nameOf(bytes);
      for (const [i, photo] of photos.entries()) {
        if (photo.name !== name) continue;
        isKnown = true;
        await show(list.children[i], bytes);
      }
    }
    if (!isKnown) strangers.push(file.name);
  }
  const matched = list.querySelectorAll('[data-matched]').length;
  const told = [say('view.photos_matched', { n: matched, of: photos.length })];
  if (strangers.length) told.push(say('view.photos_strange', { names: strangers.join(', ') }));
  return told.join(' ');
}

/** @param {Element | undefined} row @param {Uint8Array<ArrayBuffer>} bytes */
async function show(row, bytes) {
  if (!(row instanceof HTMLElement) || row.dataset.matched) return;
  const text = row.textContent ?? '';
  const picture = make('img', { src: await urlOf(bytes), alt: text, width: WIDTH });
  row.dataset.matched = 'yes';
  row.append(' ', make('b', {}, say('view.photo_matches')), make('br'), picture);
}
