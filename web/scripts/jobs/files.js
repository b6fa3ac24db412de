// Jobs into files on this phone and back. Python makes the texts and reads them; what is opened always
// becomes a new job, but for one that is here already.

import { get } from '../common/dom.js';
import { readForm } from '../form/form.js';
import { LONGEST_FILE, PHOTO } from '../common/core-values.js';
import { say } from '../common/words.js';

/** @import { Fields } from '../form/form.js' */
/** @import { Jobs } from './jobs.js' */
/** @import { PhotoOffer } from '../photos/offer.js' */
/** @import { Core } from '../python/core.js' */

/**
 * @typedef {(
 *   { state: 'file', name: string, text: string, told: string } |
 *   { state: 'imported', jobs: Fields[], text: string, pictures: string[] } |
 *   { state: 'refused', text: string }
 * )} Answer
 */

/** Hand a text to the browser as a file. @param {string} name @param {string} text */
export function download(name, text) {
  const type = name.endsWith('.csv') ? 'text/csv' : 'application/json';
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // The browser has to have begun before the address goes.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

export class Files {
  /** @type {Core} */
  #core;

  /** @type {Jobs} */
  #jobs;

  /** @type {PhotoOffer} */
  #photos;

  /** @param {Core} core @param {Jobs} jobs which this browser may not keep @param {PhotoOffer} photos */
  constructor(core, jobs, photos) {
    this.#core = core;
    this.#jobs = jobs;
    this.#photos = photos;
    const open = /** @type {HTMLInputElement} */ (get('file-open'));
    for (const id of ['file-save-all', 'file-open-field']) get(id).hidden = !jobs.isKept;
    get('file-save').addEventListener('click', () => this.#try(() => this.#save()));
    get('file-csv').addEventListener('click', () => this.#try(() => this.#saveCsv()));
    get('file-save-all').addEventListener('click', () => this.#try(() => this.#saveAll()));
    open.addEventListener('change', async () => {
      const [file] = open.files ?? [];
      if (file) await this.#try(() => this.#open(file));
      open.value = ''; // so that the same file can be chosen again
    });
  }

  /** Say what came of it. @param {() => Promise<string>} action gives a sentence */
  async #try(action) {
    get('file-status').textContent = say('files.working');
    try {
      get('file-status').textContent = await action();
    } catch (error) {
      get('file-status').textContent = say('files.failed', { why: String(error) });
    }
  }

  /** The job in the form. @returns {Fields} */
  #here() {
    return { ...readForm(), name: this.#jobs.name };
  }

  #save() {
    return this.#toFile(this.#saved([this.#here()]));
  }

  #saveCsv() {
    return this.#toFile(this.#core.saveReadings(this.#here()));
  }

  async #saveAll() {
    return this.#toFile(this.#saved(await this.#jobs.all()));
  }

  /** With their photos, where they have any. @param {Fields[]} forms @returns {Promise<Answer>} */
  async #saved(forms) {
    const hasPhotos = forms.some((form) => Object.keys(form).some((name) => name.endsWith(PHOTO)));
    if (!hasPhotos) return this.#core.saveJobs({ forms, pictures: [] });
    try {
      const photos = await this.#photos.bring();
      return this.#core.saveJobs(await photos.carry(forms));
    } catch (error) {
      // The job itself must be had: what is told of the file says how many pictures it lacks.
      console.warn(`No pictures: ${error}`);
      return this.#core.saveJobs({ forms, pictures: [] });
    }
  }

  /** Keep the pictures of a file; where there is no room for them, the jobs are opened all the same.
   * @param {string[]} pictures @returns {Promise<string>} what became of them, if anything is to be said */
  async #take(pictures) {
    if (!pictures.length) return '';
    try {
      await (await this.#photos.bring()).take(pictures);
      return '';
    } catch (error) {
      return ` ${error instanceof Error ? error.message : String(error)}`;
    }
  }

  /** @param {Promise<Answer>} asked */
  async #toFile(asked) {
    const answer = await asked;
    if (answer.state !== 'file') return answer.state === 'refused' ? answer.text : '';
    download(answer.name, answer.text);
    return say('files.saved', { name: answer.name, told: answer.told });
  }

  /** @param {File} file */
  async #open(file) {
    if (file.size > LONGEST_FILE) return say('files.too_large');
    /** @type {Answer} */
    const answer = await this.#core.openFile(await file.text(), await this.#jobs.all());
    if (answer.state !== 'imported') return answer.state === 'refused' ? answer.text : '';
    const named = answer.jobs.map((job) => ({ ...job, name: job.name || file.name }));
    const told = await this.#take(answer.pictures);
    if (named.length) await this.#jobs.add(named);
    return answer.text + told;
  }
}
