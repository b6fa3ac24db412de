// The jobs on this phone: the one that is open is kept as it is typed, the others are a list.
//
// Whose text is it that stands in the form? That of the open job, at every moment: a job is opened in one
// stretch without an `await`, in which what was typed until then is handed to the store under the job it
// was typed into, and the form changes hands. Before the first job is known, what is typed waits in the
// form, and is handed over in the same stretch in which that job is opened.

import { get } from '../common/dom.js';
import { changed, differences } from '../form/changes.js';
import { fillForm, fillUnder, readForm, resetForm, untouchedForm } from '../form/form.js';
import { JobList } from './job-list.js';
import { cantKeep } from './answers.js';
import { opened } from './opened.js';
import { OPEN_HERE, newId } from './store.js';
import { say } from '../common/words.js';

/** @import { Answers } from './answers.js' */
/** @import { Store } from './store.js' */
/** @import { Changes } from '../form/changes.js' */
/** @import { Kept } from '../report/known.js' */
/** @import { Rigs } from '../rigs/rigs.js' */
/** @typedef {import('./store.js').Fields} Fields */

export class Jobs {
  /** Opened by `start`; nothing is asked of it before a job is open. */
  #store = /** @type {Store} */ (/** @type {unknown} */ (null));

  /** None where they can't be kept. @type {Answers | null} */
  #answers = null;

  /** The job in the form; none before the first is known, or where this browser keeps none. */
  #open = '';

  /** Openings of jobs, one after the other. @type {Promise<unknown>} */
  #turn = Promise.resolve();

  /** A job that is being read, and what other pages have written to it meanwhile.
   * @type {{ id: string, heard: Changes[] }} */
  #coming = { id: '', heard: [] };

  /** What is kept of it; nothing of a new one. @type {Fields} */
  #kept = {};

  /** A new one, in which nothing has been done. @type {Fields} */
  #blank = {};

  #stage = '';

  #askedToPersist = false;

  /** The last write. @type {Promise<unknown>} */
  #writing = Promise.resolve();

  /** Tells other pages of the same host what was written here. */
  #others = opened.others;

  #listed = new JobList((id) => {
    this.onCome(true);
    this.#inTurn(() => this.#show(id));
  });

  /** @param {() => void} onChange the form was changed from here
   * @param {(isChosen: boolean) => void} onCome a job has come back: chosen from the list, or as the page
   * was opened
   * @param {(answer: Kept | null) => void} onAnswer what was kept of the job that comes, before it is asked
   * about
   * @param {Rigs} rigs of which a new job takes the last */
  constructor(onChange, onCome, onAnswer, rigs) {
    this.rigs = rigs;
    this.onChange = onChange;
    this.onCome = onCome;
    this.onAnswer = onAnswer;
    get('job-name').addEventListener('input', () => this.#rename());
  }

  /** Bring back the job that was open last, into a form that has been drawn just now. Where this browser
   * keeps nothing, say so.
   * @returns {Promise<boolean>} whether it keeps jobs */
  async start() {
    this.#blank = untouchedForm(); // before anything can be added to it
    try {
      this.#store = await opened.store;
      this.#answers = await opened.answers.catch(cantKeep);
      await this.#begin();
      return true;
    } catch (error) {
      get('kept').dataset.kept = 'no';
      get('kept').textContent = say('job.not_kept', { why: String(error) });
      // What is left is to save the job to a file.
      get('jobs-here').hidden = true;
      return false;
    }
  }

  /** Keep what has changed in the form. Nothing is awaited before it is handed over. */
  keep() {
    if (!this.#open) return;
    const now = readForm();
    const isNew = Object.keys(this.#kept).length === 0;
    // A form in which nothing was done is no job; once something was, all of it is kept.
    if (Object.keys(differences(isNew ? this.#blank : this.#kept, now)).length === 0) return;
    const changes = differences(this.#kept, now);
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
    const job = this.#open;
    try {
      await this.#store.write(job, changes);
    } catch (error) {
      if (job !== this.#open) throw error;
      for (const [name, text] of Object.entries(changes)) {
        if (text === null) this.#kept[name] = '';
        else delete this.#kept[name];
      }
      throw error;
    }
  }

  #rename() {
    if (this.#open) this.#write(this.#store.rename(this.#open, this.name));
  }

  /** Whether this browser keeps the job that stands in the form. */
  get isKept() {
    return this.#open !== '';
  }

  /** The open job; none where this browser keeps none. */
  get id() {
    return this.#open;
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
    const here = { ...readForm(), name: this.name };
    const read = await Promise.all(others.map(({ id }) => this.#store.read(id)));
    return [here, ...read.map(({ name, fields }) => ({ ...fields, name }))];
  }

  /** New jobs from outside, the first of which is opened. @param {Fields[]} jobs */
  async add(jobs) {
    const made = jobs.map(({ name = '', ...fields }) => ({ id: newId(), name, fields }));
    await this.#store.add(made);
    await this.#inTurn(() => this.#show(made[0]?.id ?? newId()));
  }

  /** What was found last, for the list. @param {string} stage the verdict's code */
  setStage(stage) {
    if (!this.#open || stage === this.#stage || Object.keys(this.#kept).length === 0) return;
    this.#stage = stage;
    this.#write(this.#store.setStage(this.#open, stage));
  }

  /** @param {Kept} answer of what stands in the form */
  async keepAnswer(answer) {
    if (!this.#open || Object.keys(this.#kept).length === 0) return;
    await this.#answers?.write(this.#open, answer).catch(cantKeep);
  }

  async #begin() {
    this.#others.addEventListener('message', ({ data }) => this.#hear(data));
    const last = await opened.last;
    await this.#inTurn(() => this.#resume(last));
    get('job-new').addEventListener('click', () => this.#inTurn(() => this.#show(newId())));
    get('job-copy').addEventListener('click', () => this.#inTurn(() => this.#copy()));
    get('job-delete').addEventListener('click', () => this.#inTurn(() => this.#remove()));
    get('jobs').addEventListener('toggle', () => this.#list());
    // Handed over before any other can be deleted here; only for the next time, so the job came first.
    this.#store.forgetRemoved().catch((error) => console.warn(`Deleted jobs are not forgotten: ${error}`));
    // Those of deleted jobs; of one that was begun elsewhere a moment ago the answer comes again.
    const there = last.jobs.map(({ id }) => id);
    this.#answers?.forgetOthers(there).catch(cantKeep);
    this.rigs.forget(there);
  }

  /** Do this when what was asked for before is done. @param {() => Promise<void>} action */
  #inTurn(action) {
    const done = this.#turn.then(action);
    this.#turn = done.catch(() => undefined); // whoever asked for it is told
    return done;
  }

  /** Put a job into the form, and delete another one where that is wanted: not before this moment, since
   * it may be typed in until then. @param {string} id @param {string} [removed] */
  async #show(id, removed) {
    const { name, fields, answer, rig } = await this.#read(id);
    // One stretch from here on.
    this.keep();
    const gone = removed ? this.#store.remove(removed) : undefined;
    this.#take(id, name);
    resetForm();
    fillForm(rig);
    this.#blank = readForm();
    fillForm(fields);
    this.#kept = Object.keys(fields).length ? readForm() : {};
    this.onAnswer(answer);
    this.onChange();
    await gone;
    await this.#list();
  }

  /** Put the job of the last time into the form, or a new one, under what was done since the page came.
   * @param {Awaited<typeof opened.last>} last */
  async #resume(last) {
    const { id, name, answer, fields: read } = last;
    const rig = await this.#rigFor(read);
    // One stretch from here on.
    const heard = opened.heard.filter(({ job }) => job === id);
    const fields = heard.reduce((before, { changes }) => changed(before, changes), read);
    opened.others.onmessage = null;
    const named = this.name;
    this.#take(id || newId(), named || name);
    if (Object.keys(fields).length) this.#kept = fillUnder(fields, this.#blank);
    else if (Object.keys(rig).length) this.#blank = fillUnder(rig, this.#blank);
    this.keep();
    if (named) this.#rename();
    if (Object.keys(fields).length) this.onCome(false);
    this.onAnswer(answer);
    this.onChange();
    await this.#list();
  }

  /** What is kept of a job, with what another page writes while it is being read. @param {string} id */
  async #read(id) {
    const coming = { id, heard: /** @type {Changes[]} */ ([]) };
    this.#coming = coming;
    const answers = this.#answers?.read(id).catch(cantKeep);
    const { name, fields } = await this.#store.read(id);
    const answer = (await answers) ?? null;
    const rig = await this.#rigFor(fields);
    this.#coming = { id: '', heard: [] };
    return { name, fields: coming.heard.reduce(changed, fields), answer, rig };
  }

  /** What a new job takes of the rig used last. @param {Fields} fields of the job; a new one has none */
  async #rigFor(fields) {
    return (Object.keys(fields).length === 0 && (await this.rigs.last())) || {};
  }

  /** Make this the open job. @param {string} id @param {string} name */
  #take(id, name) {
    this.#open = id;
    this.#stage = '';
    sessionStorage.setItem(OPEN_HERE, id);
    /** @type {HTMLInputElement} */ (get('job-name')).value = name;
  }

  /** Go on in a copy: the form stays as it is, and belongs to the copy from now on. */
  async #copy() {
    this.keep();
    this.#take(newId(), say('job.copy_of', { name: this.name || say('job.unnamed') }));
    this.#kept = {};
    this.keep();
    this.#rename();
    this.onChange();
    await this.#list();
  }

  /** Open another job, and delete this one. */
  async #remove() {
    const removed = this.#open;
    const next = (await this.#store.list()).find(({ id }) => id !== removed);
    await this.#show(next?.id ?? newId(), removed);
    const undo = get('job-undo');
    undo.hidden = false;
    undo.onclick = () =>
      this.#inTurn(async () => {
        undo.hidden = true;
        await this.#store.bringBack(removed);
        await this.#show(removed);
      });
  }

  async #list() {
    const name = /** @type {HTMLInputElement} */ (get('job-name'));
    const before = name.value;
    const jobs = await this.#store.list();
    const open = jobs.find(({ id }) => id === this.#open);
    // Another page may have named it; what was typed here meanwhile counts.
    if (document.activeElement !== name && name.value === before) name.value = open?.name ?? '';
    get('job-title').textContent = open?.name || say('job.unnamed');
    this.#listed.show(jobs.filter(({ id }) => id !== this.#open));
  }

  /** Another page wrote to this job: take it over, but for the field that is being typed in here.
   * @param {{ job: string, changes: Changes }} message */
  #hear({ job, changes }) {
    if (job === this.#coming.id) this.#coming.heard.push(changes);
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
      const safe = (await navigator.storage?.persisted?.()) ?? false;
      this.keep(); // what an earlier write could not keep
      if (written !== this.#writing) return; // a later one tells
      get('kept').dataset.kept = 'yes';
      get('kept').textContent = say(safe ? 'job.kept' : 'job.kept_for_now');
    } catch (error) {
      get('kept').dataset.kept = 'no';
      get('kept').textContent = say('job.not_kept', { why: String(error) });
    }
  }

  /** Ask the browser, once, not to clear the store by itself; what is told of the last write may change. */
  async #persist() {
    if (this.#askedToPersist) return;
    this.#askedToPersist = true;
    await navigator.storage?.persist?.();
    await this.#tell(this.#writing);
  }
}
