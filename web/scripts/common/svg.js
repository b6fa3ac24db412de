// Puts a drawing that Python made into the page: parsed as SVG, never as HTML.

/** @param {HTMLElement} place hidden where there is none @param {string} svg empty for none */
export function putDrawing(place, svg) {
  place.hidden = !svg;
  if (!svg) return place.replaceChildren();
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  place.replaceChildren(document.importNode(parsed, true));
}
