// What the page's own scripts say: the build puts their sentences into the page as data, in its language
// (core/sweepsheet/words/en/pages.py and its like). What Python says comes worded from Python.

const place = document.getElementById('words');
/** @type {Record<string, string>} sentences by key */
const sentences = JSON.parse(place?.textContent ?? '{}');

/** Those that another assembly has instead of some (assembly-words.js). @type {Record<string, string>} */
let instead = {};

/** @param {Record<string, string>} others */
export function sayInstead(others) {
  instead = others;
}

/** The code of the page's language. */
export const language = document.documentElement.lang;

/** A sentence, with what belongs into its places in braces.
 * @param {string} key @param {Record<string, string | number>} [values] */
export function say(key, values = {}) {
  const sentence = instead[key] ?? sentences[key];
  if (sentence === undefined) throw new Error(`There is no sentence ${key}.`);
  return sentence.replace(/\{(\w+)\}/g, (_, name) => String(values[name]));
}
