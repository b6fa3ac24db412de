// The crank of the practice housing: the slider that says where it stands, the keys that turn it on, and
// the finger that drags it round. It knows angles only as places of a finger on the screen.

import { get } from '../common/dom.js';

const STEP_DEG = 6;

/** Where a finger is round the crank: degrees clockwise on the screen. @param {PointerEvent} event */
function fingerAngle({ clientX, clientY }) {
  const box = /** @type {Element} */ (document.querySelector('.grip')).getBoundingClientRect();
  const x = clientX - (box.left + box.right) / 2;
  const y = clientY - (box.top + box.bottom) / 2;
  return (Math.atan2(y, x) * 180) / Math.PI;
}

export class Crank {
  slider = /** @type {HTMLInputElement} */ (get('crank'));

  /** @type {() => void} */
  #onTurn;

  /** @type {number | undefined} */
  #moving;

  /** @param {() => void} onTurn called whenever it stands elsewhere */
  constructor(onTurn) {
    this.#onTurn = onTurn;
  }

  /** Where it stands, in whole degrees. */
  get degree() {
    return Number(this.slider.value);
  }

  /** Put it there at once. @param {number} degree */
  put(degree) {
    this.slider.value = String(degree);
  }

  /** It stays where it is. */
  hold() {
    cancelAnimationFrame(this.#moving ?? 0);
  }

  /** Turn it to a degree, so that the needle can be followed. @param {number} goal */
  turnTo(goal) {
    this.hold();
    const way = goal - this.degree;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const isNear = still || Math.abs(way) <= STEP_DEG;
    this.put(isNear ? goal : this.degree + Math.sign(way) * STEP_DEG);
    this.#onTurn();
    if (!isNear) this.#moving = requestAnimationFrame(() => this.turnTo(goal));
  }

  /** Turn it to the next mark, or to the one before. @param {1 | -1} way @param {number[]} stops */
  step(way, stops) {
    const last = stops[stops.length - 1] ?? 0;
    // From the end of a turn on to the first mark of the next.
    if (way > 0 && this.degree >= last) this.put(0);
    const from = this.degree;
    const goal = way > 0 ? stops.find((stop) => stop > from) : stops.filter((stop) => stop < from).pop();
    this.turnTo(goal ?? from);
  }

  /** Let it be dragged. A whole turn has an end: the drag stops there, and the next begins a new turn.
   * @param {() => 1 | -1 | null} sense which way a turn goes on the screen; null while it can't be told */
  letDrag(sense) {
    const view = get('crank-view');
    let last = 0;
    let at = 0;
    view.addEventListener('pointerdown', (event) => {
      if (!(event.target instanceof Element) || !event.target.closest('.grip')) return;
      this.hold();
      view.setPointerCapture(event.pointerId);
      last = fingerAngle(event);
      at = this.degree % Number(this.slider.max);
    });
    view.addEventListener('pointermove', (event) => {
      const way = sense();
      if (!view.hasPointerCapture(event.pointerId) || !way) return;
      const angle = fingerAngle(event);
      const turned = ((angle - last + 540) % 360) - 180;
      last = angle;
      at = Math.min(Number(this.slider.max), Math.max(0, at + turned * way));
      this.put(Math.round(at));
      this.#onTurn();
    });
  }
}
