// A rig to another phone and from one: as a file and as a link. What comes is offered, and never taken
// without a press.

import { copyOf } from '../common/copy.js';
import { get } from '../common/dom.js';
import { readForm } from '../form/form.js';
import { download } from '../jobs/files.js';
import { LONGEST_FILE } from '../common/core-values.js';
import { ADDRESS } from '../common/release.js';
import { textElement } from '../common/parts.js';
import { say } from '../common/words.js';

/** @import { Core } from '../python/core.js' */
/** @import { Rigs } from './rigs.js' */
/** @import { Fields } from '../form/changes.js' */

/**
 * @typedef {{ state: 'refused', text: string }} Refused
 * @typedef {{ state: 'file', name: string, text: string, told: string, fragment: string } | Refused} Out
 * @typedef {{ state: 'rig', name: string, fields: Fields, text: string, lines: string[] } | Refused} In
 */

const LINK = /^#rig-/;
const HERE = new URL('..', import.meta.url);

export class HandOn {
  /** @type {Core} */
  #core;

  /** @type {Rigs} */
  #rigs;

  /** What is offered, and not taken yet. @type {{ name: string, fields: Fields } | null} */
  #offered = null;

  /** @param {Core} core @param {Rigs} rigs */
  constructor(core, rigs) {
    this.#core = core;
    this.#rigs = rigs;
    const open = /** @type {HTMLInputElement} */ (get('rig-open'));
    get('rig-file').addEventListener('click', () => this.#try(() => this.#save()));
    get('rig-link').addEventListener('click', () => this.#try(() => this.#copyLink()));
    get('rig-take').addEventListener('click', () => this.#take());
    open.addEventListener('change', async () => {
      const [file] = open.files ?? [];
      if (file) await this.#try(() => this.#open(file));
      open.value = ''; // so that the same file can be chosen again
    });
    addEventListener('hashchange', () => this.#follow());
    this.#follow();
  }

  /** @param {() => Promise<string>} action gives a sentence, or why it did not work */
  async #try(action) {
    try {
      this.#rigs.tell(await action());
    } catch (error) {
      this.#rigs.tell(error instanceof Error ? error.message : String(error), true);
    }
  }

  async #out() {
    /** @type {Out} */
    const out = await this.#core.rigOut(readForm());
    if (out.state === 'refused') throw new Error(out.text);
    return out;
  }

  async #save() {
    const { name, text, told } = await this.#out();
    download(name, text);
    return say('files.saved', { name, told });
  }

  async #copyLink() {
    const { fragment } = await this.#out();
    const address = new URL('./', ADDRESS || HERE);
    address.hash = fragment;
    const field = /** @type {HTMLInputElement} */ (get('rig-address'));
    field.value = address.href;
    get('rig-address-field').hidden = false;
    return say((await copyOf(field)) ? 'share.copied' : 'share.marked');
  }

  /** @param {File} file */
  async #open(file) {
    if (file.size > LONGEST_FILE) throw new Error(say('files.too_large'));
    await this.#offer(await file.text());
    return '';
  }

  /** The rig that the address of this page carries, if it does. */
  #follow() {
    if (!LINK.test(location.hash)) return;
    const part = /** @type {HTMLDetailsElement} */ (get('rig'));
    part.open = true;
    part.scrollIntoView({ block: 'start' });
    this.#try(async () => {
      await this.#offer(location.hash.slice(1));
      part.scrollIntoView({ block: 'start' });
      return '';
    });
  }

  /** @param {string} text of a file, or the fragment of a link */
  async #offer(text) {
    /** @type {In} */
    const found = await this.#core.rigIn(text);
    if (found.state === 'refused') throw new Error(found.text);
    this.#offered = found;
    get('rig-offer').hidden = false;
    get('rig-offer-text').textContent = found.text;
    get('rig-offer-lines').replaceChildren(...found.lines.map((line) => textElement('li', line)));
  }

  /** Keep what is offered; no job is changed by it. */
  #take() {
    if (!this.#offered) return;
    const { name, fields } = this.#offered;
    this.#offered = null;
    get('rig-offer').hidden = true;
    // A reload must not offer it again.
    if (LINK.test(location.hash)) history.replaceState(null, '', location.pathname + location.search);
    this.#rigs.add(name, fields);
  }
}
