// A round lens: what lies under a mark on a picture, larger, where the finger that moves the mark does not hide
// it. It helps the eye alone; ears and keys do without.

import { make } from '../common/dom.js';

/** @typedef {[number, number]} Spot in the pixels of the picture itself, from its top left */

/** How many times larger than on the screen. */
const ZOOM = 3.5;
/** Between the mark and the edge of the lens, in pixels of the screen: above it, where a finger is not, and
 * beside it, where a hand is. */
const [ABOVE, ASIDE] = [30, 56];
/** From the lens to the edge of what can be seen, and the gap in its cross-hair. */
const [EDGE, GAP] = [4, 5];

export class Lens {
  /** @param {HTMLImageElement} picture */
  constructor(picture) {
    this.picture = picture;
    this.part = make('canvas', { className: 'lens', hidden: true });
    this.part.setAttribute('aria-hidden', 'true');
    this.pen = /** @type {CanvasRenderingContext2D} */ (this.part.getContext('2d'));
  }

  hide() {
    this.part.hidden = true;
  }

  /** Show what is at a spot of the picture, whose mark stands at a place of what holds both.
   * @param {Spot} spot @param {Spot} mark */
  show(spot, mark) {
    this.part.hidden = false;
    this.#draw(spot);
    this.#put(mark);
  }

  /** @param {Spot} spot */
  #draw([x, y]) {
    const { part, pen, picture } = this;
    const fine = devicePixelRatio;
    const middle = part.clientWidth / 2;
    part.width = part.height = Math.round(part.clientWidth * fine);
    const larger = (ZOOM * picture.width) / picture.naturalWidth;
    pen.setTransform(fine * larger, 0, 0, fine * larger, fine * (middle - larger * x), fine * (middle - larger * y));
    pen.drawImage(picture, 0, 0);
    pen.setTransform(fine, 0, 0, fine, fine * middle, fine * middle);
    // Dark on light, so that it is seen on both.
    for (const [width, color] of /** @type {const} */ ([
      [3, '#fff'],
      [1, '#000'],
    ])) {
      pen.lineWidth = width;
      pen.strokeStyle = color;
      pen.beginPath();
      for (const [right, down] of /** @type {const} */ ([
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ])) {
        pen.moveTo(GAP * right, GAP * down);
        pen.lineTo(middle * right, middle * down);
      }
      pen.stroke();
    }
  }

  /** Above the mark; where there is no room beside it, on the side that has more. @param {Spot} mark */
  #put([left, top]) {
    const { part } = this;
    const holder = /** @type {HTMLElement} */ (part.offsetParent);
    const half = part.offsetWidth / 2;
    const [wide, high] = [holder.clientWidth, holder.scrollTop + holder.clientHeight];
    const least = holder.scrollTop + half + EDGE;
    let [x, y] = [left, top - ABOVE - half];
    if (y < least) {
      x += left < wide / 2 ? ASIDE + half : -ASIDE - half;
      y = top;
    }
    part.style.left = `${between(half + EDGE, x, wide - half - EDGE)}px`;
    part.style.top = `${between(least, y, high - half - EDGE)}px`;
  }
}

/** @param {number} least @param {number} value @param {number} most */
export function between(least, value, most) {
  return Math.max(least, Math.min(value, most));
}
