// The customer's view: what a link claims, readable at once; then Python works it out again. The build
// puts this script into the page, so that the text waits for nothing else to come.

import { paintClaimed, refuse, tell } from './claims.js';
import { showParts } from '../common/assembly-parts.js';
import { speakOf } from '../common/assembly-words.js';
import { drawn } from '../common/after-paint.js';
import { holdRelease } from '../common/release-lock.js';
import { LONGEST_LINK } from '../common/core-values.js';
import { canUnpack, readLink, troubleWith } from '../common/link.js';
import { unfold } from '../common/unfold.js';
import { say } from '../common/words.js';

/** Where the script that checks is; this one is within the page, and the release is not told to it. */
const VERIFY_LINK = new URL(document.documentElement.dataset.verifyLink ?? '', document.baseURI);

/** Show what the link says, as far as can be told without Python: whether there is anything to be checked.
 * @param {string} fragment */
async function show(fragment) {
  const trouble = troubleWith(fragment);
  if (trouble) {
    refuse(say(`link.${trouble}`, { high: LONGEST_LINK }));
    return false;
  }
  if (!canUnpack()) {
    tell('waits', say('view.waits'));
    return true;
  }
  const claimed = await readLink(fragment);
  if (!claimed) {
    refuse(say('link.cut'));
    return false;
  }
  if (claimed.assembly) {
    showParts(claimed.assembly);
    // Without its words it is read in those of the main one.
    await speakOf(claimed.assembly, VERIFY_LINK.href).catch((error) => console.warn(String(error)));
  }
  paintClaimed(claimed);
  tell('claimed', say('view.checking'));
  return true;
}

async function begin() {
  // The page's scripts are there: from here on it says itself what is wrong.
  document.documentElement.dataset.python = 'later';
  const fragment = location.hash.slice(1);
  const isToBeChecked = await show(fragment);
  performance.mark('readable');
  // What else there is, Python too, comes in when this has been drawn, so that it takes nothing from it.
  await drawn();
  unfold();
  if (!isToBeChecked) return;
  try {
    /** @type {typeof import('./verify-link.js')} */
    const { check } = await import(VERIFY_LINK.href);
    await check(fragment);
  } catch (error) {
    tell('unchecked', say('view.unchecked', { why: String(error) }));
  }
}

// boot.js has found that the page is wanted in another language: nothing is begun here.
if (document.documentElement.hasAttribute('data-leaving')) await new Promise(() => undefined);

holdRelease(new URL('./', VERIFY_LINK));
document.getElementById('print')?.addEventListener('click', () => print());
addEventListener('hashchange', () => location.reload());
begin().catch((error) => refuse(say('view.unchecked', { why: String(error) })));
