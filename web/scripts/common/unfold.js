// Puts in what the first picture does without: it came with the page as templates, which are not laid out.

export function unfold() {
  for (const folded of document.querySelectorAll('template[data-folded]')) {
    folded.replaceWith(/** @type {HTMLTemplateElement} */ (folded).content);
  }
}
