// One photo, large, with what can be done with it.

import { get, make } from '../common/dom.js';
import { DialReader } from './read-dial.js';
import { say } from '../common/words.js';

/** @import { Source } from './read-dial.js' */
/** @import { Place } from './row.js' */

/**
 * @typedef {object} Acts
 * @property {(place: Place, source: 'camera' | 'files') => unknown} ask
 * @property {(place: Place) => unknown} remove
 * @property {(place: Place) => Source} dial what the dial on it is read off
 */

/** What is said of a photo that can't be shown. */
const TROUBLE = /** @type {const} */ ({ waiting: 'wait', lost: 'was_lost', away: 'is_away' });

export class PhotoView {
  /** @type {Place | null} */
  #place = null;

  /** @param {Acts} acts */
  constructor(acts) {
    this.title = make('h2', { id: 'photo-title' });
    this.value = make('p');
    this.picture = make('img', { alt: '' });
    this.told = make('p', { className: 'help' });
    this.save = make('a', {}, say('photos.save'));
    const key = (/** @type {string} */ name, /** @type {(place: Place) => unknown} */ act) => {
      const made = make('button', { type: 'button', id: `photo-${name}-key` }, say(`photos.${name}`));
      made.addEventListener('click', () => {
        const place = this.#place;
        this.dialog.close();
        if (place) act(place);
      });
      return made;
    };
    const keys = [
      key('close', () => undefined),
      key('camera', (place) => acts.ask(place, 'camera')),
      key('files', (place) => acts.ask(place, 'files')),
      key('remove', (place) => acts.remove(place)),
    ];
    const row = make('p', { className: 'row' }, ...keys, this.save);
    this.acts = acts;
    this.dial = new DialReader(this.picture);
    const parts = [this.picture, ...this.dial.overlay, this.told, this.dial.part, row];
    this.dialog = make('dialog', { id: 'photo-view' }, this.title, this.value, ...parts);
    this.dialog.setAttribute('aria-labelledby', 'photo-title');
    this.dialog.addEventListener('close', () => this.#leave());
    document.body.append(this.dialog);
  }

  /** @param {Place} place @param {string} state @param {string} url empty where there is nothing to be shown */
  open(place, state, url) {
    this.#place = place;
    this.title.textContent = place.where;
    this.value.textContent = place.value ? say('photos.reading', { reading: place.value }) : say('photos.no_reading');
    this.picture.hidden = this.save.hidden = !url;
    if (url) {
      this.picture.src = this.save.href = url;
      this.picture.alt = say('photos.there', { where: place.where });
      this.save.download = `${place.name.replaceAll('.', '-')}.jpg`;
    }
    this.dial.open(url ? this.acts.dial(place) : null);
    const trouble = url ? undefined : TROUBLE[/** @type {keyof typeof TROUBLE} */ (state)];
    this.told.textContent = say(trouble ? `photos.${trouble}` : 'photos.kept_here');
    this.dialog.showModal();
    get('photo-close-key').focus();
  }

  /** Back to where it was opened, whatever was drawn anew since. */
  #leave() {
    this.dial.open(null);
    const field = document.getElementsByName(this.#place?.name ?? '')[0];
    const key = field?.closest('.reading')?.querySelector('button.photo');
    if (key instanceof HTMLElement) key.focus();
    else field?.focus();
    this.picture.removeAttribute('src');
  }
}
