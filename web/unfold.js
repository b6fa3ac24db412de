// Puts in what the build has folded away: the closed parts of the form, which nobody sees at first, and
// for which the first picture does not wait. Whoever imports this finds the whole form.

import { drawn } from './drawn.js';

if (performance.getEntriesByName('first-contentful-paint').length === 0) await drawn();
for (const folded of document.querySelectorAll('template[data-folded]')) {
  folded.replaceWith(/** @type {HTMLTemplateElement} */ (folded).content);
}
