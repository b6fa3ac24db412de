// Elements: one that is in the page, and one that is made.

/** The element of this id, which is there. @template {HTMLElement} T @param {string} id @returns {T} */
export function get(id) {
  return /** @type {T} */ (document.getElementById(id));
}

/** An element with its properties and what stands in it.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} name @param {Partial<HTMLElementTagNameMap[K]>} [properties]
 * @param {(Node | string)[]} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function make(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}
