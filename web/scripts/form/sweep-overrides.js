// Fields of its own for a sweep that was taken otherwise than the rest: other positions, another radius.
// They are seen only where something stands in them, or when they were asked for.

/** The positions in a text, as written. @param {string} text */
export function listOf(text) {
  return text.split(/[\s,;]+/).filter(Boolean);
}

export class Otherwise {
  /** @type {Map<string, HTMLInputElement | HTMLSelectElement>} */
  #fields = new Map();

  /** @param {HTMLElement} readings the block goes before the readings of this sweep
   * @param {string} prefix @param {string[]} keys which fields there are */
  constructor(readings, prefix, keys) {
    const template = /** @type {HTMLTemplateElement} */ (
      document.getElementById('otherwise-template')
    );
    const made = /** @type {DocumentFragment} */ (template.content.cloneNode(true));
    const above = readings.previousElementSibling; // as the build put it, in the first round
    const isThere = above?.classList.contains('otherwise');
    this.part = /** @type {HTMLElement} */ (isThere ? above : made.firstElementChild);
    for (const field of this.part.querySelectorAll('[data-own]')) {
      if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement)) continue;
      const key = field.dataset.own ?? '';
      const row = field.closest('.field');
      if (!keys.includes(key)) {
        row?.remove();
        continue;
      }
      field.name = field.id = `${prefix}.${key}`;
      row?.querySelector('.name')?.setAttribute('for', field.id);
      this.#fields.set(key, field);
    }
    if (!isThere) readings.before(this.part);
  }

  /** What stands in a field; nothing where there is no such field. @param {string} key */
  text(key) {
    return this.#fields.get(key)?.value.trim() ?? '';
  }

  /** The positions of this sweep. @param {string[]} common those of the rest */
  positions(common) {
    const own = listOf(this.text('positions'));
    return own.length ? own : common;
  }

  /** Show the fields, and go to the first. */
  open() {
    this.part.hidden = false;
    const around = this.part.closest('details');
    if (around) around.open = true;
    this.#fields.values().next().value?.focus();
  }

  clear() {
    for (const field of this.#fields.values()) field.value = '';
    this.adopt();
  }

  /** Take over what stands in the fields. They do not go away while one of them is emptied. */
  adopt() {
    this.part.hidden = [...this.#fields.keys()].every((key) => !this.text(key));
  }
}
