// The page as it speaks of another assembly than the main one: its sentences are fetched when that is
// chosen, and put in the place of those that the build has put into the page, piece by piece. Nothing is
// fetched and nothing changed for the main one.

import { language, sayInstead } from './words.js';

/** Sentences that scripts say, by key; and pieces of the page's text, each with what stands instead.
 * @typedef {{ said: Record<string, string>, pieces: Record<string, string> }} Spoken */

/** What a person typed is text for ever, whatever it says. */
const TYPED = '#job-title, #job-list, .naming summary, #about dd, bdi, textarea, script, style';

const root = document.documentElement;

/** @type {Promise<Record<string, Spoken>> | null} */
let fetched = null;

/** @param {string} base where the release is */
async function load(base) {
  const response = await fetch(new URL(`assemblies.${language}.json`, base));
  if (!response.ok) throw new Error(String(response.status));
  return response.json();
}

/** Every text within a part, that of templates too. @param {ParentNode & Node} part @returns {Text[]} */
function textsIn(part) {
  const found = [];
  const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (!node.parentElement?.closest(TYPED)) found.push(/** @type {Text} */ (node));
  }
  for (const { content } of part.querySelectorAll('template')) found.push(...textsIn(content));
  return found;
}

/** Put the pieces of one assembly in the place of those of another.
 * @param {Record<string, string>} before @param {Record<string, string>} now */
function replacePieces(before, now) {
  const main = Object.fromEntries(Object.entries(before).map(([piece, instead]) => [instead, piece]));
  for (const node of textsIn(document.body)) {
    const text = node.data.trim();
    const piece = Object.hasOwn(main, text) ? main[text] : text;
    const wanted = Object.hasOwn(now, piece) ? now[piece] : piece;
    if (text && wanted !== text) node.data = node.data.replace(text, () => wanted);
  }
}

/** Have the page speak of an assembly; rejects where its sentences can't be had, and changes nothing.
 * @param {string} assembly blank for the main one
 * @param {string} base where the release is
 * @param {() => string} [wanted] which one is wanted once the sentences are there
 * @returns {Promise<boolean>} whether anything is said otherwise than before */
export async function speakOf(assembly, base, wanted = () => assembly) {
  const before = root.dataset.assembly ?? '';
  if (!assembly && !before && !fetched) return false;
  try {
    fetched ??= load(base);
    const all = await fetched;
    const now = wanted();
    const spoken = root.dataset.assembly ?? '';
    sayInstead(all[now]?.said ?? {});
    if (spoken === now) return false;
    replacePieces(all[spoken]?.pieces ?? {}, all[now]?.pieces ?? {});
    root.dataset.assembly = now;
    return true;
  } catch (error) {
    fetched = null; // it is tried again the next time
    throw error;
  }
}
