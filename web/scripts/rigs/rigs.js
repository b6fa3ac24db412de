// The rigs of the shop: which one this job was taken with, and the keeping of them. What a rig has is
// copied into the job when it is chosen; from then on the job's own fields count, and nothing that
// becomes of the rig changes them.

import { get } from '../common/dom.js';
import { changeForm, readForm } from '../form/form.js';
import { newId } from '../jobs/store.js';
import { RigStore, rigFields } from './rig-store.js';
import { textElement } from '../common/parts.js';
import { say } from '../common/words.js';

/** @import { Fields } from '../form/changes.js' */
/** @import { Core } from '../python/core.js' */
/** @import { Repeats, Rig } from './rig-store.js' */
/** @typedef {{ check: string[], sweeps: Repeats[] }} Told what an answer tells of the rig */

const ID = 'rig.id';
const NAME = 'indicator.rig';
const SCATTER = 'indicator.repeatability';
const READING = /\.(sweeps|opposite)\.\d+\.\d+$/;

const address = new URL('..', import.meta.url).href;
const offered = get('rig-use');
const choice = /** @type {HTMLSelectElement} */ (get('rig-choice'));
const undo = get('rig-undo');

/** Whether a job has readings, which mean what they mean in its unit. @param {Fields} form */
function hasReadings(form) {
  return Object.entries(form).some(([name, text]) => READING.test(name) && text.trim());
}

/** What of a rig goes into a job. @param {Rig} rig @returns {Fields} */
function fieldsOf({ id, name, fields }) {
  return { ...rigFields(fields), [NAME]: name, [ID]: id };
}

export class Rigs {
  /** None where they can't be kept. @type {Promise<RigStore | null>} */
  #store;

  /** As they were when last read, the last used first. @type {Rig[]} */
  #rigs = [];

  /** @type {Core} */
  #core;

  /** What was last handed to the store to be learned. */
  #learnt = '';

  /** Tells other pages of the same host that there is something new. */
  #others = new BroadcastChannel(`sweepsheet rigs ${address}`);

  /** @param {Core} core */
  constructor(core) {
    this.#core = core;
    this.#store = RigStore.open(address).catch((error) => {
      this.tell(say('rig.not_kept', { why: String(error) }), true);
      for (const part of ['rig-choice-field', 'rig-keep', 'rig-take']) get(part).hidden = true;
      return null;
    });
    this.#others.addEventListener('message', () => this.#refresh());
    choice.addEventListener('change', () => this.#choose());
    get('rig-save').addEventListener('click', () => this.#save(readForm()[ID] || newId()));
    get('rig-save-new').addEventListener('click', () => this.#save(newId()));
    get('rig-rename').addEventListener('click', () => this.#rename());
    get('rig-delete').addEventListener('click', () => this.#delete());
    offered.addEventListener('click', () => changeForm({ [SCATTER]: offered.dataset.offer ?? '' }, true));
    get('rig').addEventListener('toggle', () => this.#showLearned());
    this.#refresh();
  }

  /** @param {string} text @param {boolean} [isFault] */
  tell(text, isFault = false) {
    get('rig-told').textContent = text;
    get('rig-told').classList.toggle('fault', isFault);
  }

  /** Keep a rig that came from outside, without a change to the open job.
   * @param {string} name @param {Fields} fields */
  add(name, fields) {
    this.#try((store) => store.save(newId(), name, rigFields(fields)), say('rig.saved', { name }));
  }

  /** What a new job begins with: the rig that was used last. @returns {Promise<Fields | null>} */
  async last() {
    const store = await this.#store;
    try {
      const [rig] = (await store?.list()) ?? [];
      return rig ? fieldsOf(rig) : null;
    } catch (error) {
      console.warn(`A new job comes without a rig: ${error}`);
      return null;
    }
  }

  /** Forget what was deleted before. @param {string[]} jobs that are there */
  async forget(jobs) {
    const store = await this.#store;
    await store?.forget(jobs).catch((error) => console.warn(`Nothing is forgotten: ${error}`));
  }

  /** The form was changed: show which rig is in it, and whether it is as it was saved. */
  show() {
    const form = readForm();
    const rig = this.#rigs.find(({ id }) => id === form[ID]);
    choice.value = rig?.id ?? '';
    const kept = rig ? fieldsOf(rig) : {};
    const isOther = Object.entries(kept).some(([name, text]) => form[name] !== text);
    get('rig-differs').hidden = !isOther;
    for (const id of ['rig-rename', 'rig-delete']) get(id).hidden = !rig;
    if (!rig) this.#tellLearned('', '');
  }

  /** Python has answered: show the check, and keep what this job tells of its rig, once a job.
   * @param {string} job the open one; none where jobs are not kept @param {Fields} form it was asked about
   * @param {Told} [told] nothing while there are too few readings for an answer */
  async answered(job, form, { check, sweeps } = { check: [], sweeps: [] }) {
    const lines = check.length ? check : [say('rig.check.how')];
    get('rig-check').replaceChildren(...lines.map((text) => textElement('li', text)));
    const learned = { rig: form[ID] ?? '', units: form['units'] ?? '', sweeps };
    const now = JSON.stringify([job, learned]);
    if (!job || now === this.#learnt) return;
    this.#learnt = now;
    try {
      await (await this.#store)?.learn(job, learned);
    } catch (error) {
      console.warn(`Nothing is learned of the rig: ${error}`);
    }
    await this.#showLearned();
  }

  /** What all jobs with this rig have told of its scatter, where somebody looks. */
  async #showLearned() {
    const form = readForm();
    const id = form[ID] ?? '';
    const isOpen = /** @type {HTMLDetailsElement} */ (get('rig')).open;
    if (!isOpen) return;
    const rig = this.#rigs.find((each) => each.id === id);
    if (!rig) {
      this.#tellLearned('', '');
      return;
    }
    try {
      const units = rig.fields['units'] ?? '';
      const all = (await (await this.#store)?.learnedOf(id)) ?? [];
      const sweeps = all.filter((each) => each.units === units).flatMap((each) => each.sweeps);
      const { text, offer } = await this.#core.learned({ units, sweeps });
      if (readForm()[ID] === id) this.#tellLearned(text, offer);
    } catch (error) {
      console.warn(`What was learned of the rig is not shown: ${error}`);
    }
  }

  /** @param {string} text @param {string} offer the scatter that the form is offered; none: empty */
  #tellLearned(text, offer) {
    get('rig-learned').textContent = text;
    offered.hidden = offer === '';
    offered.dataset.offer = offer;
    offered.textContent = say('rig.use', { offer });
  }

  /** @param {(store: RigStore) => Promise<unknown>} act @param {string} done the sentence for it */
  async #try(act, done) {
    try {
      const store = await this.#store;
      if (!store) return;
      await act(store);
      this.#others.postMessage('');
      await this.#refresh();
      this.tell(done);
    } catch (error) {
      this.tell(say('rig.not_kept', { why: String(error) }), true);
    }
  }

  /** Put the chosen rig into the job: in one stretch, from what is in memory. */
  #choose() {
    const rig = this.#rigs.find(({ id }) => id === choice.value);
    const form = readForm();
    if (!rig) {
      changeForm({ [ID]: '', [NAME]: '' }, true);
      this.tell('');
      return;
    }
    if (rig.fields['units'] !== form['units'] && hasReadings(form)) {
      this.show();
      this.tell(say('rig.other_units', { name: rig.name }), true);
      return;
    }
    changeForm(fieldsOf(rig), true);
    this.#try((store) => store.change(rig.id, (kept) => ({ ...kept, used: Date.now() })), '');
  }

  /** Save what stands in the form as this rig. @param {string} id */
  #save(id) {
    const form = readForm();
    const name = form[NAME]?.trim() ?? '';
    if (!name) {
      this.tell(say('rig.name_wanted'), true);
      get('rig-name').focus();
      return;
    }
    // The job is taken with this rig from now on, whether or not it can be kept for the next one.
    changeForm({ [NAME]: name, [ID]: id }, true);
    this.#try((store) => store.save(id, name, rigFields(form)), say('rig.saved', { name }));
  }

  #rename() {
    const form = readForm();
    const name = form[NAME]?.trim() ?? '';
    if (!name) return this.#save('');
    const renamed = (/** @type {Rig} */ rig) => ({ ...rig, name });
    return this.#try((store) => store.change(form[ID] ?? '', renamed), say('rig.saved', { name }));
  }

  /** Out of the list; the job stays as it is. */
  #delete() {
    const rig = this.#rigs.find(({ id }) => id === choice.value);
    if (!rig) return;
    const mark = (/** @type {boolean} */ deleted) => (/** @type {Rig} */ each) => ({ ...each, deleted });
    undo.hidden = false;
    undo.onclick = () => {
      undo.hidden = true;
      this.#try((store) => store.change(rig.id, mark(false)), '');
    };
    this.#try((store) => store.change(rig.id, mark(true)), say('rig.deleted', { name: rig.name }));
  }

  /** Read the rigs anew, and show them. */
  async #refresh() {
    const store = await this.#store;
    this.#rigs = (await store?.list().catch(() => [])) ?? [];
    const options = this.#rigs.map(({ id, name }) => new Option(name, id));
    choice.replaceChildren(new Option(say('rig.none'), ''), ...options);
    this.show();
    await this.#showLearned();
  }
}
