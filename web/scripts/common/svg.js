// Puts a drawing that Python made into the page: parsed as SVG, never as HTML.

/** One that stands there already is left. @param {HTMLElement} place @param {string} svg empty for none */
export function keepDrawing(place, svg) {
  if (place.dataset.drawn === svg) return;
  place.dataset.drawn = svg;
  putDrawing(place, svg);
}

/** @param {HTMLElement} place hidden where there is none @param {string} svg empty for none */
export function putDrawing(place, svg) {
  place.hidden = !svg;
  if (!svg) return place.replaceChildren();
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  place.replaceChildren(document.importNode(parsed, true));
}
