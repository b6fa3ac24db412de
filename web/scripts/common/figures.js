// Puts figures that are free of language, as Python writes them into links and as people type positions,
// into the words of the page: text for text. What has another form stays as it is.

import { say } from './words.js';

/** @import { Figures } from './link.js' */

const CLOCK = ['toward', 'dowel_aim', 'other_aim'];
const CODES = ['verdict', 'face_verdict', 'pilot_verdict', 'stops'];

/** A clock hour or a clock time. @param {string} position */
export function clockWords(position) {
  const found = /^(\d{1,2})(:\d\d)?$/.exec(position);
  if (!found) return position;
  const [, hour, minutes] = found;
  const kind = minutes ? 'time' : 'hour';
  return say(`clock.${kind}${hour === '1' ? '_one' : ''}`, { hour, time: position });
}

/** @param {string} chance in percent */
function chanceWords(chance) {
  if (chance === '>99%') return say('chance.over');
  return chance === '<1%' ? say('chance.under') : chance;
}

/** A number with the decimal mark of the language. @param {string} number */
function numberWords(number) {
  return /^\d+\.\d+$/.test(number) ? number.replace('.', say('number.decimal_mark')) : number;
}

/** @param {string} unit */
function unitWords(unit) {
  return unit === 'thou' || unit === 'mm' ? say(`unit.${unit}`) : unit;
}

/** @param {string} name @param {string} text */
function words(name, text) {
  if (CODES.includes(name)) return text;
  if (CLOCK.includes(name)) return clockWords(text);
  if (name === 'chance') return chanceWords(text);
  return name === 'unit' ? unitWords(text) : numberWords(text);
}

/** The same figures in words. @param {Figures} figures @returns {Figures} */
export function worded({ whole, rounds }) {
  const all = (/** @type {Record<string, string>} */ figures) =>
    Object.fromEntries(Object.entries(figures).map(([name, text]) => [name, words(name, text)]));
  return /** @type {Figures} */ ({ whole: all(whole), rounds: rounds.map(all) });
}
