// A photo beside a reading: taken or chosen, made small, shown. Which reading has which photo stands in the
// form, in a field beside the reading, and goes where the reading goes; the pictures are in the album.

import { Album, FullError, isTicket, nameOf, newTicket } from './album.js';
import { MOST_PHOTOS, PHOTO } from '../common/core-values.js';
import { make } from '../common/dom.js';
import { bringStyle } from '../common/style-sheet.js';
import { unitsOf } from '../common/units.js';
import { say } from '../common/words.js';
import { OPEN_HERE, Store } from '../jobs/store.js';
import { fromBase64, urlOf } from './base64.js';
import { asAsked, greyOf } from './grey.js';
import { PhotoView } from './photo-view.js';
import { dress, dressSweep, icon, readingOf, undress } from './row.js';
import { shrink } from './shrink.js';

/** @import { Fields } from '../form/form.js' */
/** @import { Owner } from './dial-scale.js' */
/** @import { Dial, Source as DialSource } from './read-dial.js' */
/** @import { Place } from './row.js' */

/**
 * @typedef {object} Page what the page lends
 * @property {() => Fields} readForm
 * @property {(changes: Record<string, string>, isStep: boolean) => void} changeForm
 * @property {(asked: object) => Promise<Dial>} readDial as the form says the dial is numbered
 * @property {(asked: object) => Promise<any>} readFilm
 *
 * @typedef {'camera' | 'files'} Source
 */

const address = new URL('..', import.meta.url).href;

/** What every job on this phone has in its fields for photos, a deleted one too that can be brought back.
 * @param {Fields} form of the open one, which may not be written yet */
async function usedIn(form) {
  const store = await Store.open(address);
  const all = [form];
  for (const { id } of await store.list(true)) all.push((await store.read(id)).fields);
  return new Set(all.flatMap((fields) => namesIn(fields).map((name) => fields[name] ?? '')));
}

/** The fields of photos. @param {Fields} fields */
function namesIn(fields) {
  return Object.keys(fields).filter((name) => name.endsWith(PHOTO));
}

/** Whose dial it is. @param {Fields} form @returns {Owner} */
function ownerOf(form) {
  return { units: unitsOf(form['units']), rig: form['rig.id'] ?? '' };
}

/** @param {Page} page */
export async function startPhotos(page) {
  if (!globalThis.crypto?.subtle) throw new Error(say('photos.needs_https'));
  const [album] = await Promise.all([Album.open(address), bringStyle(new URL('photos.css', import.meta.url))]);
  const key = `sweepsheet photos ${address}`;
  // A page that is open may still take back what it removed: pictures go when this one is alone.
  await navigator.locks.request(key, { ifAvailable: true }, async (isAlone) => {
    if (isAlone) await album.tidy(await usedIn(page.readForm()));
  });
  navigator.locks.request(key, { mode: 'shared' }, () => new Promise(() => undefined));
  return new Photos(page, album);
}

export { asAsked, greyOf };

export class Photos {
  /** @type {Page} */
  #page;

  /** @type {Album} */
  #album;

  /** Pictures that were shown, as addresses, by name. @type {Map<string, Promise<string>>} */
  #urls = new Map();

  /** Tickets that are being worked on here. @type {Set<string>} */
  #working = new Set();

  /** Where the picture belongs that is being chosen. @type {Place | null} */
  #place = null;

  /** A sweep on film that is open. @type {{ close: () => void } | null} */
  #panel = null;

  /** @param {Page} page @param {Album} album */
  constructor(page, album) {
    this.#page = page;
    this.#album = album;
    this.view = new PhotoView({
      ask: (place, source) => this.#ask(place, source),
      remove: (place) => this.#remove(place),
      dial: (place) => this.#dial(place),
    });
    const changes = { childList: true, subtree: true, attributes: true, attributeFilter: ['aria-label'] };
    const observer = new MutationObserver(() => this.show());
    for (const part of document.querySelectorAll('#rounds, #companions')) observer.observe(part, changes);
    for (const source of /** @type {const} */ (['camera', 'files'])) {
      const input = make('input', { type: 'file', accept: 'image/*', id: `photo-${source}`, hidden: true });
      if (source === 'camera') input.setAttribute('capture', 'environment');
      input.addEventListener('change', () => this.#chosen(input));
      document.body.append(input);
    }
    document.addEventListener('click', ({ target }) => {
      const row = target instanceof Element && target.closest('button.photo')?.closest('.reading');
      if (row instanceof HTMLElement) this.#press(row);
      const sweep = target instanceof Element && target.closest('button.film-key')?.closest('.sweep');
      if (sweep instanceof HTMLElement) this.#film(sweep);
    });
    this.show();
  }

  /** How photos come; "none" where only those are shown that there are. */
  get #source() {
    return /** @type {HTMLSelectElement} */ (document.getElementById('photos-choice')).value;
  }

  /** Beside each reading that has a photo, or all of them, its key. */
  show() {
    for (const row of document.querySelectorAll('#rounds .reading, #companions .reading')) {
      const { id } = readingOf(row);
      const there = row.querySelector('button.photo');
      if (!id && this.#source === 'none') {
        undress(row);
        continue;
      }
      const key = there ?? dress(row);
      this.#paint(/** @type {HTMLButtonElement} */ (key), row);
    }
    for (const sweep of document.querySelectorAll('#rounds .sweep, #companions .sweep')) {
      dressSweep(sweep, this.#source !== 'none');
    }
  }

  /** A sweep on film, below its readings. What it takes is brought when it is first asked for.
   * @param {HTMLElement} sweep */
  async #film(sweep) {
    // A second dial has readings of its own there; the film shows the first one.
    const both = [...sweep.querySelectorAll('.rows > .reading, .reading.closing')];
    const rows = both.filter((row) => !readingOf(row).name.includes('.opposite.'));
    const { name, job, rows: all } = this.#placeOf(/** @type {Element} */ (rows[0]));
    const places = rows.map((row) => ({
      name: readingOf(row).name,
      label: row.querySelector('label')?.textContent ?? '',
    }));
    const isThere = () => this.#isThere({ job, rows: all });
    const where = sweep.querySelector('h4')?.firstChild?.textContent ?? '';
    try {
      const { openFilm } = await import('./film.js');
      this.#panel?.close();
      const lent = { ...this.#page, keep: this.keep.bind(this), hasCamera: this.#source === 'camera' };
      const place = /** @type {HTMLElement} */ (sweep.parentElement);
      const owner = ownerOf(this.#page.readForm());
      this.#panel = await openFilm(lent, { where, places, owner, isThere }, place);
    } catch (error) {
      this.#tell(name, say('photos.not_here', { why: error instanceof Error ? error.message : String(error) }));
    }
  }

  /** The small grey picture of a photo, for what reads a dial; none where it is not here.
   * @param {string} name */
  async grey(name) {
    const bytes = await this.#album.picture(name);
    return bytes ? greyOf(bytes) : null;
  }

  /** Pictures as addresses that a page can show; none for those that are not here.
   * @param {string[]} names @returns {Promise<Record<string, string>>} */
  async addresses(names) {
    const found = await Promise.all(names.map(async (name) => [name, await this.#url(name)]));
    return Object.fromEntries(found);
  }

  /** What goes into a file: jobs whose photos are ready, and the pictures that are here, as base64.
   * @param {Fields[]} forms */
  async carry(forms) {
    const settled = await Promise.all(forms.map((form) => this.#settled(form)));
    const names = new Set(settled.flatMap((form) => namesIn(form).map((name) => form[name] ?? '')));
    const urls = Object.values(await this.addresses([...names]));
    return { forms: settled, pictures: urls.filter(Boolean).map((url) => url.replace(/^.*,/, '')) };
  }

  /** Keep the pictures of a file. @param {string[]} pictures as base64 */
  async take(pictures) {
    const names = await this.keep(pictures.map(fromBase64));
    for (const name of names) this.#urls.delete(name);
    // A job that was here without them shows them now.
    for (const key of document.querySelectorAll('button.photo')) {
      if (key instanceof HTMLElement && names.includes(key.dataset.photo ?? '')) delete key.dataset.photo;
    }
    this.show();
  }

  /** Keep pictures, all of them or none. @param {Uint8Array<ArrayBuffer>[]} pictures ready ones
   * @returns {Promise<string[]>} their names */
  async keep(pictures) {
    const names = await Promise.all(pictures.map(nameOf));
    try {
      await this.#album.add(new Map(pictures.map((each, i) => [names[i] ?? '', each])));
    } catch (error) {
      throw error instanceof FullError ? new Error(say('photos.none_kept')) : error;
    }
    return names;
  }

  /** @param {Fields} form @returns {Promise<Fields>} */
  async #settled(form) {
    const found = { ...form };
    for (const name of namesIn(form)) {
      const text = form[name] ?? '';
      if (isTicket(text)) found[name] = (await this.#album.ticket(text))?.picture ?? '';
    }
    return found;
  }

  /** @param {string} name @returns {Promise<string>} empty where it is not here */
  #url(name) {
    const before = this.#urls.get(name);
    if (before) return before;
    const made = this.#album.picture(name).then((bytes) => (bytes ? urlOf(bytes) : ''));
    this.#urls.set(name, made);
    // One that is not here may come.
    made.then((url) => url || this.#urls.delete(name)).catch(() => this.#urls.delete(name));
    return made;
  }

  /** @param {HTMLButtonElement} key @param {Element} row */
  async #paint(key, row) {
    const { id, where } = readingOf(row);
    const tell = (/** @type {string} */ state) => {
      key.dataset.state = state;
      const label = say(`photos.${state}`, { where });
      if (key.getAttribute('aria-label') !== label) key.setAttribute('aria-label', label);
    };
    if (key.dataset.photo === id) return tell(key.dataset.state ?? 'add');
    key.dataset.photo = id;
    key.firstChild?.remove();
    if (!id) {
      key.append(icon());
      return tell('add');
    }
    if (isTicket(id)) {
      tell('waiting');
      const isThere = await this.#follow(id);
      if (!isThere && key.dataset.photo === id) tell('lost');
      return undefined;
    }
    tell('waiting');
    const url = await this.#url(id);
    if (key.dataset.photo !== id) return undefined;
    if (url) key.append(make('img', { src: url, alt: '' }));
    return tell(url ? 'there' : 'away');
  }

  /** @param {HTMLElement} row */
  async #press(row) {
    const place = this.#placeOf(row);
    const { id } = readingOf(row);
    const source = this.#source;
    if (!id && source !== 'none') return this.#ask(place, /** @type {Source} */ (source));
    const state = row.querySelector('button.photo')?.getAttribute('data-state') ?? '';
    return this.view.open(place, state, isTicket(id) ? '' : await this.#url(id));
  }

  /** @param {Element} row @returns {Place} */
  #placeOf(row) {
    const { name, where, value } = readingOf(row);
    return { name, where, value, job: sessionStorage.getItem(OPEN_HERE), rows: this.#rows() };
  }

  /** Which readings there are: a place holds only while these are the same. */
  #rows() {
    const all = [...document.querySelectorAll('#rounds .reading, #companions .reading')];
    return all.map((row) => `${readingOf(row).name} ${row.getAttribute('data-at')}`).join('|');
  }

  /** @param {Pick<Place, 'job' | 'rows'>} place */
  #isThere({ job, rows }) {
    return job === sessionStorage.getItem(OPEN_HERE) && rows === this.#rows();
  }

  /** Let the person take or choose a picture; the browser asks for what it needs. @param {Place} place
   * @param {Source} source */
  #ask(place, source) {
    const form = this.#page.readForm();
    const isNew = !form[place.name + PHOTO];
    if (isNew && namesIn(form).filter((name) => form[name]).length >= MOST_PHOTOS) {
      return this.#tell(place.name, say('photos.many', { high: MOST_PHOTOS }));
    }
    this.#place = place;
    return document.getElementById(`photo-${source}`)?.click();
  }

  /** @param {HTMLInputElement} input */
  #chosen(input) {
    const [file] = input.files ?? [];
    const place = this.#place;
    input.value = ''; // so that the same file can be chosen again
    if (!file || !place) return;
    if (!this.#isThere(place)) return this.#tell(place.name, say('photos.moved'));
    this.#tell(place.name, '');
    const ticket = newTicket();
    this.#working.add(ticket);
    // The job has the ticket before anything is awaited.
    this.#page.changeForm({ [place.name + PHOTO]: ticket }, true);
    this.#work(ticket, file, place.name).finally(() => this.#working.delete(ticket));
  }

  /** What the dial on a photo is read off: it, and the first photo of its sweep with its reading.
   * @param {Place} place @returns {DialSource} */
  #dial(place) {
    const first = place.name.replace(/\d+$/, '0');
    const form = this.#page.readForm();
    const [here, before] = [place.name, first].map((name) => form[name + PHOTO] ?? '');
    const isFirst = first === place.name || !before || isTicket(before);
    return {
      owner: ownerOf(form),
      ask: (asked) => this.#page.readDial(asked),
      grey: () => this.grey(here ?? ''),
      first: () => this.grey(before ?? ''),
      firstName: before ?? '',
      firstReading: isFirst ? '' : (form[first] ?? ''),
      enter: (typed) => {
        this.view.dialog.close();
        if (!this.#isThere(place)) return this.#tell(place.name, say('photos.moved'));
        return this.#page.changeForm({ [place.name]: typed }, true);
      },
    };
  }

  /** @param {Place} place */
  #remove(place) {
    if (!this.#isThere(place)) return this.#tell(place.name, say('photos.moved'));
    return this.#page.changeForm({ [place.name + PHOTO]: '' }, true);
  }

  /** Make the picture ready, and put its name wherever its ticket is by then.
   * @param {string} ticket @param {Blob} file @param {string} name of the reading */
  async #work(ticket, file, name) {
    try {
      await this.#album.wait(ticket, file).catch((error) => console.warn(`Until it is ready: ${error}`));
      const picture = await this.#album.keep(ticket, await shrink(file));
      this.#replace(ticket, picture);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const told = error instanceof FullError ? say('photos.full') : say('photos.failed', { why });
      await this.#album.forget(ticket).catch(() => undefined); // it is told all the same
      this.#replace(ticket, '');
      this.#tell(name, told);
    }
  }

  /** What has become of a ticket that stands in the form: of a picture that was being made ready when the
   * job or the page was left. @param {string} ticket @returns {Promise<boolean>} whether anything has */
  async #follow(ticket) {
    if (this.#working.has(ticket)) return true;
    this.#working.add(ticket);
    try {
      const { picture, file } = (await this.#album.ticket(ticket)) ?? {};
      if (picture) this.#replace(ticket, picture);
      else if (file) await this.#work(ticket, file, '');
      return Boolean(picture || file);
    } finally {
      this.#working.delete(ticket);
    }
  }

  /** No step of its own: taking the photo back takes the ticket back. @param {string} ticket @param {string} text */
  #replace(ticket, text) {
    const form = this.#page.readForm();
    const names = namesIn(form).filter((name) => form[name] === ticket);
    if (names.length) this.#page.changeForm(Object.fromEntries(names.map((name) => [name, text])), false);
  }

  /** Say it at the reading, or below them all. @param {string} name @param {string} text */
  #tell(name, text) {
    for (const old of document.querySelectorAll('.photo-trouble')) old.remove();
    if (!text) return;
    const said = make('p', { className: 'fault photo-trouble' }, text);
    said.setAttribute('role', 'alert');
    const row = document.getElementsByName(name)[0]?.closest('.reading');
    if (row) row.append(said);
    else document.getElementById('kept')?.after(said);
  }
}
