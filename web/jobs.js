// The jobs on this phone: the one that is open is kept as it is typed, the others are a list.

import { changed, differences } from './changes.js';
import { fillForm, readForm, resetForm, untouchedForm } from './form.js';
import { OPEN_HERE, Store, newId } from './store.js';
import { say } from './words.js';

/** @import { Changes } from './changes.js' */
/** @typedef {import('./store.js').Fields} Fields */

const address = new URL('..', import.meta.url).href;

const STAGES = ['within', 'outside', 'undecided', 'none'];

/** @template {HTMLElement} T @param {string} id @returns {T} */
function get(id) {
  return /** @type {T} */ (document.getElementById(id));
}

/** What was last found. Older releases kept it in words. @param {string} stage */
function stageWord(stage) {
  return STAGES.includes(stage) ? say(`answer.verdict.${stage}`) : stage;
}

export class Jobs {
  /** @type {Store} */
  #store;

  /** The job in the form. */
  #open = '';

  /** What is kept of it. @type {Fields} */
  #kept = {};

  #stage = '';

  #askedToPersist = false;

  /** The last write. @type {Promise<unknown>} */
  #writing = Promise.resolve();

  /** Tells other pages of the same host what was written here. */
  #others = new BroadcastChannel(`sweepsheet ${address}`);

  /** @param {Store} store @param {() => void} onChange the form was changed from here */
  constructor(store, onChange) {
    this.#store = store;
    this.onChange = onChange;
  }

  /**
   * Bring back the job that was open last. Where this browser keeps nothing, say so.
   * @param {() => void} onChange
   * @returns {Promise<Jobs | null>}
   */
  static async start(onChange) {
    try {
      const jobs = new Jobs(await Store.open(address), onChange);
      await jobs.#begin();
      return jobs;
    } catch (error) {
      get('kept').textContent = say('job.not_kept', { why: String(error) });
      // What is left is to save the job to a file.
      get('jobs-here').hidden = true;
      return null;
    }
  }

  /** Keep what has changed in the form. Nothing is awaited before it is handed over. */
  keep() {
    const now = readForm();
    const changes = differences(this.#kept, now);
    if (Object.keys(changes).length === 0) return;
    this.#kept = now;
    this.#others.postMessage({ job: this.#open, changes });
    this.#write(this.#written(changes));
    this.#persist();
  }

  /** Resolves when all that was typed is on the disk; rejects where it is not. */
  async keepNow() {
    this.keep();
    await this.#writing; // writes are done in the order in which they were handed over
    this.keep(); // what an earlier write could not keep
    await this.#writing;
  }

  /** @param {Promise<unknown>} written */
  #write(written) {
    this.#writing = written;
    this.#tell(written);
  }

  /** Write changes; those that could not be kept are tried again with the next ones.
   * @param {Changes} changes */
  async #written(changes) {
    try {
      await this.#store.write(this.#open, changes);
    } catch (error) {
      for (const [name, text] of Object.entries(changes)) {
        if (text === null) this.#kept[name] = '';
        else delete this.#kept[name];
      }
      throw error;
    }
  }

  /** The name of the open job. */
  get name() {
    return /** @type {HTMLInputElement} */ (get('job-name')).value;
  }

  /** Every job, with its name among its fields; the open one as it stands in the form.
   * @returns {Promise<Fields[]>} */
  async all() {
    this.keep();
    const others = (await this.#store.list()).filter(({ id }) => id !== this.#open);
    const fields = others.map(async ({ id, name }) => ({ ...(await this.#store.read(id)), name }));
    return [{ ...readForm(), name: this.name }, ...(await Promise.all(fields))];
  }

  /** New jobs from outside, the first of which is opened. @param {Fields[]} jobs */
  async add(jobs) {
    const made = jobs.map(({ name = '', ...fields }) => ({ id: newId(), name, fields }));
    await this.#store.add(made);
    await this.#show(made[0]?.id ?? newId());
  }

  /** What was found last, for the list. @param {string} stage the verdict's code */
  setStage(stage) {
    if (stage === this.#stage || Object.keys(this.#kept).length === 0) return;
    this.#stage = stage;
    this.#write(this.#store.setStage(this.#open, stage));
  }

  async #begin() {
    await this.#store.forgetRemoved();
    const jobs = await this.#store.list();
    const here = sessionStorage.getItem(OPEN_HERE);
    const last = jobs.find(({ id }) => id === here) ?? jobs[0];
    await this.#resume(last?.id ?? newId());
    this.#others.addEventListener('message', ({ data }) => this.#hear(data));
    get('job-name').addEventListener('input', () => {
      const { value } = /** @type {HTMLInputElement} */ (get('job-name'));
      this.#write(this.#store.rename(this.#open, value));
    });
    get('job-new').addEventListener('click', () => this.#show(newId()));
    get('job-copy').addEventListener('click', () => this.#copy());
    get('job-delete').addEventListener('click', () => this.#remove());
    get('jobs').addEventListener('toggle', () => this.#list());
  }

  /** Put a job into the form. @param {string} id */
  async #show(id) {
    const fields = await this.#take(id);
    resetForm();
    fillForm(fields);
    this.#kept = Object.keys(fields).length ? readForm() : {};
    await this.#list();
    this.onChange();
  }

  /** Put the job of the last time into the form, and over it what was typed since the page came.
   * @param {string} id */
  async #resume(id) {
    const fields = await this.#take(id);
    const typed = differences(untouchedForm(), readForm());
    if (Object.keys(fields).length) {
      fillForm(fields);
      this.#kept = readForm();
      fillForm(changed(this.#kept, typed));
    }
    if (Object.keys(typed).length) this.keep();
    await this.#list();
    this.onChange();
  }

  /** Make this the open job. @param {string} id */
  #take(id) {
    this.#open = id;
    this.#stage = '';
    sessionStorage.setItem(OPEN_HERE, id);
    return this.#store.read(id);
  }

  async #copy() {
    const { value } = /** @type {HTMLInputElement} */ (get('job-name'));
    const copy = newId();
    await this.#store.copy(this.#open, copy, say('job.copy_of', { name: value || say('job.unnamed') }));
    await this.#show(copy);
  }

  async #remove() {
    const removed = this.#open;
    await this.#store.remove(removed);
    const [next] = await this.#store.list();
    await this.#show(next?.id ?? newId());
    const undo = get('job-undo');
    undo.hidden = false;
    undo.onclick = async () => {
      undo.hidden = true;
      await this.#store.bringBack(removed);
      await this.#show(removed);
    };
  }

  async #list() {
    const jobs = await this.#store.list();
    const open = jobs.find(({ id }) => id === this.#open);
    const name = /** @type {HTMLInputElement} */ (get('job-name'));
    if (document.activeElement !== name) name.value = open?.name ?? '';
    get('job-title').textContent = open?.name || say('job.unnamed');
    const rows = jobs
      .filter(({ id }) => id !== this.#open)
      .map((job) => {
        const button = document.createElement('button');
        button.type = 'button';
        const when = new Date(job.changed).toLocaleString([], { dateStyle: 'short', timeStyle: 'short' });
        button.textContent = [job.name || say('job.unnamed'), stageWord(job.stage), when].filter(Boolean).join(' · ');
        button.addEventListener('click', () => this.#show(job.id));
        const row = document.createElement('li');
        row.append(button);
        return row;
      });
    get('job-list').replaceChildren(...rows);
    get('job-list-title').hidden = rows.length === 0;
  }

  /** Another page wrote to this job: take it over, but for the field that is being typed in here.
   * @param {{ job: string, changes: Changes }} message */
  #hear({ job, changes }) {
    if (job !== this.#open) return;
    // In a box or a list nothing is half typed.
    const typing = document.activeElement?.matches('input:not([type=checkbox], [type=radio]), textarea');
    const here = (typing && document.activeElement?.getAttribute('name')) || '';
    const { [here]: _, ...others } = changes;
    const now = readForm();
    const merged = changed(now, others);
    this.#kept = changed(this.#kept, changes);
    if (Object.keys(differences(now, merged)).length === 0) return;
    fillForm(merged);
    this.onChange();
  }

  /** @param {Promise<unknown>} written */
  async #tell(written) {
    try {
      await written;
      get('kept').dataset.kept = 'yes';
      const safe = (await navigator.storage?.persisted?.()) ?? false;
      get('kept').textContent = say(safe ? 'job.kept' : 'job.kept_for_now');
    } catch (error) {
      get('kept').dataset.kept = 'no';
      get('kept').textContent = say('job.not_kept', { why: String(error) });
    }
  }

  /** Ask the browser, once, not to clear the store by itself. */
  #persist() {
    if (this.#askedToPersist) return;
    this.#askedToPersist = true;
    this.#tell(Promise.resolve(navigator.storage?.persist?.()));
  }
}
