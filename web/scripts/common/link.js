// Reads what a link carries, before Python is there: texts and figures to be shown, nothing more. The
// layout is that of core/sweepsheet/link/codec.py and figures.py, which check again and more strictly.

import {
  ABOUT,
  JOB_FIGURES,
  LINK_VERSIONS,
  LONGEST_LINE,
  LONGEST_LINK,
  LONGEST_TEXT,
  LONGEST_UNPACKED,
  MOST_ROUNDS,
  ROUND_FIGURES,
  SHORT,
} from './core-values.js';

/** Controls, overrides of the direction of writing, halves of characters. */
const HARMFUL = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\p{Cs}]/u;
const LINE = /^(?:[\p{L}\p{N}_ .,:%'’\u2212|-]|[<>](?=\d\d?%))*$/u;

/**
 * @typedef {{ [name in typeof JOB_FIGURES[number]]: string }} JobFigures
 * @typedef {{ [name in typeof ROUND_FIGURES[number]]: string }} RoundFigures
 * @typedef {{ whole: JobFigures, rounds: RoundFigures[] }} Figures
 * @typedef {{ [name in typeof ABOUT[number]]: string }} About
 * @typedef {object} Claimed
 * @property {string} name of the job
 * @property {About} about
 * @property {string} source of the limits
 * @property {string} recheck the name that the last of several rounds was given
 * @property {string} assembly what is put on what; blank for the main one
 * @property {Figures} figures
 *
 * @typedef {'none' | 'cut' | 'foreign' | 'newer' | 'longer'} Trouble
 */

/** Read figures by their names. @param {string[]} lines @returns {Figures} */
export function namedFigures([first, ...others]) {
  const named = (/** @type {readonly string[]} */ names, /** @type {string} */ line) => {
    const texts = line.split('|');
    return Object.fromEntries(names.map((name, i) => [name, texts[i] ?? '']));
  };
  return {
    whole: /** @type {JobFigures} */ (named(JOB_FIGURES, first)),
    rounds: others.map((line) => /** @type {RoundFigures} */ (named(ROUND_FIGURES, line))),
  };
}

/** @param {string} payload base64url @returns {Promise<string>} */
async function unpack(payload) {
  const plain = atob(payload.replaceAll('-', '+').replaceAll('_', '/'));
  const packed = Uint8Array.from(plain, (character) => character.charCodeAt(0));
  const { readable, writable } = new DecompressionStream('deflate');
  const writer = writable.getWriter();
  // What is wrong with it is told where it is read.
  writer.write(packed).catch(() => undefined);
  writer.close().catch(() => undefined);
  const reader = readable.getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let size = 0;
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    size += value.length;
    if (size > LONGEST_UNPACKED) {
      reader.cancel();
      throw new RangeError('It unpacks to too much.');
    }
    text += decoder.decode(value, { stream: true });
  }
}

/** A text that may be shown; empty where there is none. @param {unknown} value */
function textOf(value) {
  if (value === undefined) return '';
  if (typeof value !== 'string' || value.length > LONGEST_TEXT || HARMFUL.test(value)) {
    throw new TypeError('This is not a text.');
  }
  return value;
}

/** @param {any} job @param {any} lines @returns {Claimed} */
function claimedIn(job, lines) {
  const isLine = (/** @type {unknown} */ line) =>
    typeof line === 'string' && line.length <= LONGEST_LINE && LINE.test(line);
  const count = Array.isArray(lines) ? lines.length - 1 : 0;
  if (count < 1 || count > MOST_ROUNDS || !lines.every(isLine)) throw new TypeError('No figures.');
  const about = job[SHORT.about] ?? {};
  const texts = ABOUT.map((key) => [key, textOf(about[SHORT[key]])]);
  return {
    name: textOf(job[SHORT.name]),
    about: Object.fromEntries(texts),
    source: textOf((job[SHORT.limits] ?? {})[SHORT.source]),
    assembly: textOf((job[SHORT.housing] ?? {})[SHORT.assembly]),
    recheck: lines.length > 2 ? textOf(job[SHORT.rounds]?.at(-1)?.[SHORT.name]) : '',
    figures: namedFigures(lines),
  };
}

/** Whether this browser can unpack a link by itself. */
export function canUnpack() {
  return typeof DecompressionStream === 'function';
}

/** What is wrong with a link that can be seen from outside, or null.
 * @param {string} fragment @returns {Trouble | null} */
export function troubleWith(fragment) {
  if (!fragment) return 'none';
  if (fragment.length > LONGEST_LINK) return 'longer';
  const versions = /** @type {readonly string[]} */ (LINK_VERSIONS);
  if (versions.includes(fragment[0])) return /^[\w-]+$/.test(fragment) ? null : 'cut';
  return /^\d/.test(fragment) ? 'newer' : 'foreign';
}

/** What a link claims; null where it is not whole. @param {string} fragment @returns {Promise<Claimed | null>} */
export async function readLink(fragment) {
  try {
    const parts = JSON.parse(await unpack(fragment.slice(1)));
    return claimedIn(parts[0], parts[1]);
  } catch {
    return null;
  }
}
