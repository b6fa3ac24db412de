// A sweep on film: its stops are found, each gives a picture, and what the dial on it reads is offered. A burst
// of pictures goes the same way, each of which is a stop. The form is changed by a tap alone, and what is typed
// meanwhile stays. The film is not kept.

import { MOST_PHOTOS, PHOTO } from '../common/core-values.js';
import { make } from '../common/dom.js';
import { waited } from '../common/waited.js';
import { say, sayInstead } from '../common/words.js';
import { toBase64, urlOf } from './base64.js';
import { DialScale, labelled } from './dial-scale.js';
import { Film } from './film-frames.js';
import { StopList } from './film-stops.js';
import { asAsked, greyIn, greyOf } from './grey.js';
import { jpegOf, shrink } from './shrink.js';

/** @import { Fields } from '../form/form.js' */
/** @import { Owner } from './dial-scale.js' */
/** @import { Dial } from './read-dial.js' */
/** @import { Found, Stop } from './film-stops.js' */

/**
 * @typedef {object} Sweep
 * @property {string} where what it is called
 * @property {Owner} owner whose dial is read
 * @property {{ name: string, label: string }[]} places its readings in order, the return to the start last
 * @property {() => boolean} isThere whether the readings are the same ones yet
 *
 * @typedef {object} Lent what the page lends
 * @property {() => Fields} readForm
 * @property {(changes: Record<string, string>, isStep: boolean) => void} changeForm
 * @property {(asked: object) => Promise<Dial>} readDial
 * @property {(asked: object) => Promise<any>} readFilm
 * @property {(pictures: Uint8Array<ArrayBuffer>[]) => Promise<string[]>} keep
 * @property {boolean} hasCamera whether pictures are wanted from it
 */

/** How many frames are handed over at once: so long an answer to what is typed may have to wait. */
const PIECE = 30;
/** A browser may say that it is at a place in the film, and show the one before for a moment: so long it is
 * waited for, in milliseconds, each time after another look. */
const WAITS = [0, 30, 100, 300];

/** The work was cancelled, or other work took its place. */
class Cancelled extends Error {}

/** @param {Lent} lent @param {Sweep} sweep @param {HTMLElement} place it comes behind this */
export async function openFilm(lent, sweep, place) {
  const how = await lent.readFilm({ open: true });
  sayInstead(how.words);
  if (!sweep.isThere()) return null;
  const panel = new FilmPanel(lent, sweep, how);
  place.after(panel.part);
  panel.title.focus();
  return panel;
}

class FilmPanel {
  /** Counts the pieces of work: what an older one finds has no place. */
  #work = 0;

  /** @param {Lent} lent @param {Sweep} sweep @param {any} how films are looked at, from the core */
  constructor(lent, sweep, how) {
    this.lent = lent;
    this.sweep = sweep;
    this.how = how;
    this.title = make('h4', { tabIndex: -1 }, say('film.title', { where: sweep.where }));
    this.title.id = 'film-title';
    this.scale = new DialScale('film');
    this.scale.show(sweep.owner);
    this.first = this.#first();
    this.keep = make('input', { type: 'checkbox', id: 'film-keep', checked: true });
    this.told = make('p', { className: 'told', id: 'film-told' });
    this.told.setAttribute('role', 'status');
    this.progress = make('progress', { hidden: true });
    this.progress.setAttribute('aria-labelledby', 'film-told');
    this.cancel = key('cancel', () => this.#stop(say('film.cancelled')));
    this.cancel.hidden = true;
    this.again = key('again', () => this.#try(() => this.#read()));
    this.all = key('all', () => this.#try(() => this.#enter(this.list.ready(this.lent.readForm()))));
    this.list = new StopList(sweep.places, {
      changed: () => this.#matched(),
      turned: () => this.#show(),
      enter: (stop) => this.#try(() => this.#enter([stop])),
    });
    const close = key('close', () => this.close());
    this.part = make('section', { className: 'film', id: 'film' }, this.title);
    this.part.setAttribute('aria-labelledby', 'film-title');
    const keep = make('label', {}, this.keep, ` ${say('film.keep')}`);
    this.part.append(
      make('p', { className: 'help' }, say('film.help')),
      make('p', { className: 'help' }, say('film.tried')),
      ...this.scale.parts,
      labelled(this.first, say('film.first')),
      make('p', {}, keep),
      ...this.#choosers(),
      this.told,
      this.progress,
      make('p', { className: 'row' }, this.cancel),
      this.list.part,
      make('p', { className: 'row' }, this.again, this.all, close),
    );
    for (const field of this.part.querySelectorAll('input, select')) field.setAttribute('form', 'none');
    // What is typed in the form shows beside what was read.
    this.follow = () => this.list.paint(this.lent.readForm());
    document.addEventListener('input', this.follow);
    this.#show();
  }

  close() {
    this.#work += 1;
    document.removeEventListener('input', this.follow);
    const back = this.part.previousElementSibling?.querySelector('button.film-key');
    this.part.remove();
    if (back instanceof HTMLElement) back.focus();
  }

  #first() {
    const first = this.lent.readForm()[this.sweep.places[0]?.name ?? ''] || '0';
    return make('input', { id: 'film-first', inputMode: 'decimal', value: first, maxLength: 12 });
  }

  #choosers() {
    const film = make('input', { type: 'file', className: 'file-key', accept: 'video/*', id: 'film-file' });
    film.addEventListener('change', () => this.#chosen(film, ([file]) => this.#film(/** @type {File} */ (file))));
    const burst = make('input', { type: 'file', className: 'file-key', accept: 'image/*', id: 'film-burst', multiple: true });
    burst.addEventListener('change', () => this.#chosen(burst, (files) => this.#burst(files)));
    const all = [labelled(film, say('film.choose')), labelled(burst, say('film.burst'))];
    if (!this.lent.hasCamera) return all;
    const camera = make('input', { type: 'file', className: 'file-key', accept: 'video/*', id: 'film-camera' });
    camera.setAttribute('capture', 'environment');
    camera.addEventListener('change', () => this.#chosen(camera, ([file]) => this.#film(/** @type {File} */ (file))));
    return [labelled(camera, say('film.record')), ...all];
  }

  /** @param {HTMLInputElement} input @param {(files: File[]) => Promise<void>} act */
  #chosen(input, act) {
    const files = [...(input.files ?? [])];
    input.value = ''; // so that the same file can be chosen again
    if (!files.length) return;
    this.list.empty();
    this.#try(() => act(files));
  }

  /** @param {() => Promise<void>} act */
  async #try(act) {
    const mine = ++this.#work;
    this.cancel.hidden = false;
    this.#show();
    try {
      await act();
    } catch (error) {
      if (mine === this.#work) this.#stop(error instanceof Error ? error.message : String(error));
      return;
    }
    if (mine === this.#work) this.#stop(null);
  }

  /** @param {string | null} text none: what was said stays */
  #stop(text) {
    this.#work += 1;
    const hadFocus = document.activeElement === this.cancel;
    this.cancel.hidden = this.progress.hidden = true;
    if (text !== null) this.told.textContent = text;
    this.#show();
    if (hadFocus) this.title.focus();
  }

  /** @param {string} text @param {number} done @param {number} of */
  #tell(text, done, of) {
    if (this.told.textContent !== text) this.told.textContent = text;
    this.progress.hidden = false;
    this.progress.max = of;
    this.progress.value = done;
  }

  /** What can be pressed. */
  #show() {
    const isIdle = this.cancel.hidden === true;
    this.again.hidden = this.list.isEmpty;
    this.again.disabled = !isIdle;
    this.list.allow(isIdle);
    this.list.paint(this.lent.readForm());
    this.all.hidden = this.list.isEmpty;
    this.all.disabled = !isIdle || !this.list.ready(this.lent.readForm()).length;
  }

  /** Goes on only while nothing else was begun. @template T @param {Promise<T>} promise @returns {Promise<T>} */
  async #still(promise) {
    const mine = this.#work;
    const found = await promise;
    if (mine !== this.#work || !this.part.isConnected) throw new Cancelled();
    return found;
  }

  /** @param {File} file */
  async #film(file) {
    const { side, step, window, longest, smallest } = this.how;
    this.#tell(say('film.working'), 0, 1);
    const opening = Film.open(file, smallest);
    const film = await this.#still(opening).catch(async (error) => {
      if (error instanceof Cancelled) (await opening).close();
      throw error;
    });
    try {
      if (film.duration > longest) throw new Error(say('film.too_long', { high: longest }));
      const pen = penOf(side);
      const count = Math.floor(film.duration / step);
      /** @type {{ movements: number[], sharpness: number[] }} */
      const seen = { movements: [], sharpness: [] };
      /** @type {Uint8Array[]} */
      const frames = [];
      let from = 0;
      for (let i = 0; i < count; i += 1) {
        this.#tell(say('film.working'), i, count);
        await this.#still(film.show(step * i));
        film.draw(pen);
        frames.push(greyIn(pen));
        if (frames.length < from + PIECE && i + 1 < count) continue;
        const piece = frames.slice(from);
        const text = toBase64(await this.#still(joined(piece)));
        const told = await this.#still(this.lent.readFilm({ frames: text, count: piece.length }));
        seen.movements.push(...told.movements);
        seen.sharpness.push(...told.sharpness.slice(from ? window - 1 : 0));
        from = Math.max(0, frames.length - window + 1);
      }
      const found = await this.#still(this.lent.readFilm({ ...seen, positions: this.sweep.places.length - 1 }));
      let shown = count - 1; // the last frame that was seen to be there
      await this.#take(found, async (i) => {
        await film.show(step * i);
        const large = penOf(film.side);
        for (const wait of WAITS) {
          await waited(wait);
          film.draw(pen);
          film.draw(large);
          const now = greyIn(pen);
          if (difference(now, frames[i]) > difference(now, frames[shown])) continue; // it is the one before
          shown = i;
          return jpegOf(large.canvas);
        }
        return null;
      });
    } finally {
      film.close();
    }
    await this.#read();
  }

  /** @param {File[]} files */
  async #burst(files) {
    if (files.length > this.how.most) throw new Error(say('film.many', { high: this.how.most }));
    const order = (/** @type {File} */ one, /** @type {File} */ other) =>
      one.lastModified - other.lastModified || one.name.localeCompare(other.name, undefined, { numeric: true });
    files.sort(order);
    const asked = { pictures: files.length, positions: this.sweep.places.length - 1 };
    const found = await this.#still(this.lent.readFilm(asked));
    await this.#take(found, (i) => shrink(/** @type {File} */ (files[i])));
    await this.#read();
  }

  /** The pictures of the stops. @param {Found} found
   * @param {(i: number) => Promise<Uint8Array<ArrayBuffer> | null>} picture none where it is not sure which it is */
  async #take(found, picture) {
    if (found.state === 'refused') throw new Error(found.text);
    /** @type {Stop[]} */
    const stops = [];
    for (const { text, best } of found.stops) {
      this.#tell(say('film.pictures'), stops.length, found.stops.length);
      const pictures = [];
      for (const i of best) {
        const jpeg = await this.#still(picture(i));
        if (jpeg) pictures.push(jpeg);
      }
      const [jpeg] = pictures;
      const url = jpeg ? await this.#still(urlOf(jpeg)) : '';
      stops.push({ text, pictures, best: 0, url, at: '', read: null });
    }
    this.list.fill(stops, found);
  }

  /** A stop was given another position: what was read by another first picture holds no more. */
  #matched() {
    this.told.textContent = '';
    this.#show();
  }

  /** Read every stop by the one at the first position. */
  async #read() {
    const [scale, reading] = [this.scale.take(), this.first.value];
    this.list.forget();
    const stops = this.list.placed();
    const first = stops.find(({ at }) => at === this.sweep.places[0]?.name);
    if (!first) throw new Error(say('film.no_first'));
    this.#tell(say('film.reading'), 0, stops.length);
    const seen = await this.#readOne(first, scale);
    if (seen.state !== 'face') {
      first.read = seen;
      throw new Error(`${first.text}: ${seen.text}`);
    }
    const reference = { face: seen.face, reading };
    for (const [i, stop] of stops.entries()) {
      this.#tell(say('film.reading'), i, stops.length);
      if (stop === first) stop.read = await this.#asTyped(first, { scale, reference });
      else stop.read = await this.#readOne(stop, scale, reference);
      this.list.paint(this.lent.readForm());
    }
    this.told.textContent = this.list.said;
  }

  /** The first one, read by itself: what was typed, as a number. @param {Stop} first @param {object} how */
  async #asTyped(first, how) {
    const found = await this.#ask(first.pictures[first.best], how);
    if (found.state !== 'read') return found;
    return { ...found, turns: [], text: say('film.first_is', { reading: found.shown }) };
  }

  /** Read a stop off the first of its pictures that can be read. @param {Stop} stop @param {object} scale
   * @param {object} [reference] @returns {Promise<Dial>} */
  async #readOne(stop, scale, reference) {
    /** @type {Dial | null} */
    let refused = null;
    for (const [k, picture] of stop.pictures.entries()) {
      const found = await this.#ask(picture, reference ? { scale, reference } : { scale });
      if (found.state !== 'refused') {
        stop.best = k;
        stop.url = await this.#still(urlOf(picture));
        return found;
      }
      refused ??= found;
    }
    return refused ?? { state: 'refused', text: say('film.unsure') };
  }

  /** @param {Uint8Array<ArrayBuffer> | undefined} picture @param {object} how @returns {Promise<Dial>} */
  async #ask(picture, how) {
    const grey = await this.#still(greyOf(/** @type {Uint8Array<ArrayBuffer>} */ (picture)));
    return this.#still(this.lent.readDial({ ...how, picture: asAsked(grey) }));
  }

  /** Put readings and pictures into the form, as one step. @param {Stop[]} stops */
  async #enter(stops) {
    const shown = new Map(stops.map(({ at }) => [at, this.list.shown(at)]));
    const { names, trouble } = await this.#kept(stops);
    // From here on nothing is awaited.
    if (!this.sweep.isThere()) throw new Error(say('film.moved'));
    const form = this.lent.readForm();
    /** @type {Record<string, string>} */
    const changes = {};
    // What was typed since it was shown is not overwritten.
    for (const { at, read } of stops) {
      if (read?.state === 'read' && (form[at] ?? '') === shown.get(at)) changes[at] = read.typed;
    }
    const entered = Object.keys(changes).length;
    for (const [at, name] of names) if (at in changes || !form[at + PHOTO]) changes[at + PHOTO] = name;
    if (Object.keys(changes).length) this.lent.changeForm(changes, true);
    const left = this.list.placed().length - entered;
    this.told.textContent = [say('film.done', { n: entered, left }), trouble].filter(Boolean).join(' ');
  }

  /** Their pictures in the album, if they are wanted: names by places.
   * @param {Stop[]} stops @returns {Promise<{ names: Map<string, string>, trouble: string }>} */
  async #kept(stops) {
    const names = new Map();
    if (!this.keep.checked) return { names, trouble: '' };
    const form = this.lent.readForm();
    // With all that were read come the pictures of those that were not, to be tapped.
    const all = stops.length > 1 ? this.list.placed().filter(({ at }) => !form[at + PHOTO]) : stops;
    const wanted = all.filter(({ pictures }) => pictures.length);
    const there = Object.keys(form).filter((name) => name.endsWith(PHOTO) && form[name]);
    const added = wanted.filter(({ at }) => !form[at + PHOTO]);
    if (there.length + added.length > MOST_PHOTOS) return { names, trouble: say('photos.many', { high: MOST_PHOTOS }) };
    const pictures = wanted.map(({ pictures: its, best }) => /** @type {Uint8Array<ArrayBuffer>} */ (its[best]));
    try {
      const kept = await this.#still(this.lent.keep(pictures));
      wanted.forEach(({ at }, i) => names.set(at, kept[i]));
      return { names, trouble: '' };
    } catch (error) {
      if (error instanceof Cancelled) throw error;
      return { names, trouble: error instanceof Error ? error.message : String(error) };
    }
  }
}

/** @param {number} side */
function penOf(side) {
  const canvas = make('canvas', { width: side, height: side });
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return /** @type {CanvasRenderingContext2D} */ (pen);
}

/** By how much two small frames differ. @param {Uint8Array} one @param {Uint8Array | undefined} other */
function difference(one, other) {
  return one.reduce((sum, value, i) => sum + Math.abs(value - (other?.[i] ?? 0)), 0);
}

/** @param {Uint8Array[]} pieces */
async function joined(pieces) {
  return new Uint8Array(await new Blob(/** @type {BlobPart[]} */ (pieces)).arrayBuffer());
}

/** @param {string} name @param {() => unknown} act */
function key(name, act) {
  const made = make('button', { type: 'button', id: `film-${name}-key` }, say(`film.${name}`));
  made.addEventListener('click', act);
  return made;
}
