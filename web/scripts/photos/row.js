// The row of a reading, as far as its photo is concerned.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';

/**
 * @typedef {object} Place
 * @property {string} name of the reading's field
 * @property {string} where spoken
 * @property {string} value what was read
 * @property {string | null} job
 * @property {string} rows
 */

/** The reading in a row, and its photo: a picture's name, a ticket, or nothing. @param {Element} row */
export function readingOf(row) {
  const input = /** @type {HTMLInputElement} */ (row.querySelector('input'));
  const field = /** @type {HTMLInputElement | null} */ (row.querySelector('.photo-id'));
  const where = input.getAttribute('aria-label') ?? '';
  return { name: input.name, where, value: input.value.trim(), id: field?.value ?? '' };
}

/** Put the key for the photo beside a reading. @param {Element} row */
export function dress(row) {
  const key = make('button', { type: 'button', className: 'photo' });
  row.classList.add('with-photo');
  row.querySelector('.sign')?.after(key);
  return key;
}

/** @param {Element} row */
export function undress(row) {
  row.classList.remove('with-photo');
  row.querySelector('.photo')?.remove();
}

/** Put the key for a film below a sweep, or take it away. @param {Element} sweep @param {boolean} isWanted */
export function dressSweep(sweep, isWanted) {
  const there = sweep.querySelector('.film-key');
  if (!isWanted) return there?.remove();
  const where = sweep.querySelector('h4')?.firstChild?.textContent ?? '';
  const label = say('photos.film_of', { where });
  const key = there ?? make('button', { type: 'button', className: 'film-key' }, say('photos.film'));
  if (key.getAttribute('aria-label') !== label) key.setAttribute('aria-label', label);
  if (!there) sweep.append(key);
  return undefined;
}

/** A camera, drawn. */
export function icon() {
  const name = 'http://www.w3.org/2000/svg';
  const made = document.createElementNS(name, 'svg');
  made.setAttribute('viewBox', '0 0 24 24');
  made.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(name, 'path');
  path.setAttribute('d', 'M3 7h4l2-3h6l2 3h4v13H3zM12 9a4 4 0 1 0 .01 0z');
  made.append(path);
  return made;
}
