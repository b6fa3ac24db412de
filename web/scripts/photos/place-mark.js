// Places a mark on a picture: by a tap, by a finger or mouse that is dragged and let go, or by the keys. A mark is
// kept in the pixels of the picture itself, so it stays where it is when the phone is turned.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';
import { Lens, between } from './lens.js';

/** @import { Spot } from './lens.js' */

/** By how much the keys move the mark, in pixels of the screen. */
const WAYS = /** @type {const} */ ({
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
});
/** So many times as far with the shift key. */
const FAR = 10;

export class MarkPlacer {
  /** @type {Spot} */
  #spot = [0, 0];

  /** The finger or mouse that is down. @type {number | null} */
  #pointer = null;

  /** @param {HTMLImageElement} picture
   * @param {(spot: Spot, across: number) => void} set where, and how many pixels of the picture one of the
   * screen was across then */
  constructor(picture, set) {
    this.picture = picture;
    this.set = set;
    this.lens = new Lens(picture);
    this.mark = make('div', { className: 'dial-mark', hidden: true, tabIndex: 0 });
    this.mark.setAttribute('role', 'button');
    this.mark.addEventListener('keydown', (event) => this.#pressed(event));
    this.mark.addEventListener('blur', () => this.#pointer === null && this.lens.hide());
    picture.draggable = false;
    picture.addEventListener('pointerdown', (event) => this.#down(event));
    picture.addEventListener('pointermove', (event) => this.#follow(event));
    picture.addEventListener('pointerup', (event) => this.#up(event));
    picture.addEventListener('pointercancel', () => this.#let());
    // A finger that rests on a picture is no wish for a menu.
    picture.addEventListener('contextmenu', (event) => this.isOn && event.preventDefault());
    new ResizeObserver(() => this.isOn && this.#show(!this.lens.part.hidden)).observe(picture);
  }

  get isOn() {
    return this.mark.hidden === false;
  }

  /** How many pixels of the picture one of the screen is across. */
  get #across() {
    return this.picture.naturalWidth / this.picture.width;
  }

  /** Begin in the middle. @param {string} label what the mark is for */
  begin(label) {
    this.picture.classList.add('tapped');
    this.mark.hidden = false;
    this.name(label);
    this.#put(this.picture.naturalWidth / 2, this.picture.naturalHeight / 2, false);
    this.picture.scrollIntoView({ block: 'nearest' });
    this.mark.focus({ preventScroll: true });
  }

  /** @param {string} label */
  name(label) {
    this.mark.setAttribute('aria-label', `${label} ${say('dial.keys')}`);
  }

  stop() {
    this.#let();
    this.mark.hidden = true;
    this.picture.classList.remove('tapped');
  }

  #let() {
    this.#pointer = null;
    this.lens.hide();
  }

  /** @param {number} x @param {number} y @param {boolean} isSeen whether the lens shows it */
  #put(x, y, isSeen) {
    const { naturalWidth, naturalHeight } = this.picture;
    this.#spot = [between(0, x, naturalWidth), between(0, y, naturalHeight)];
    this.#show(isSeen);
  }

  /** @param {boolean} isSeen */
  #show(isSeen) {
    const [x, y] = this.#spot;
    const left = this.picture.offsetLeft + x / this.#across;
    const top = this.picture.offsetTop + y / this.#across;
    this.mark.style.left = `${left}px`;
    this.mark.style.top = `${top}px`;
    if (isSeen) this.lens.show(this.#spot, [left, top]);
  }

  /** @param {PointerEvent} event */
  #down(event) {
    if (!this.isOn || this.#pointer !== null || event.button) return;
    event.preventDefault();
    this.#pointer = event.pointerId;
    this.picture.setPointerCapture(event.pointerId);
    this.#follow(event);
  }

  /** @param {PointerEvent} event */
  #follow(event) {
    if (event.pointerId !== this.#pointer) return;
    const { left, top } = this.picture.getBoundingClientRect();
    this.#put((event.clientX - left) * this.#across, (event.clientY - top) * this.#across, true);
  }

  /** @param {PointerEvent} event */
  #up(event) {
    if (event.pointerId !== this.#pointer) return;
    this.#follow(event);
    this.#let();
    this.mark.focus({ preventScroll: true });
    this.set(this.#spot, this.#across);
  }

  /** @param {KeyboardEvent} event */
  #pressed(event) {
    const way = WAYS[/** @type {keyof typeof WAYS} */ (event.key)];
    const [x, y] = this.#spot;
    const far = this.#across * (event.shiftKey ? FAR : 1);
    if (way) this.#put(x + far * way[0], y + far * way[1], true);
    else if (event.key === 'Enter' || event.key === ' ') this.set(this.#spot, this.#across);
    else return;
    event.preventDefault();
  }
}
