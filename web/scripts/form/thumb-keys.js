// Keys for the thumb, above whatever the phone lays over the page: they move the reading that is being
// typed by one step of the dial, go on to the next, and take the last change back.

import { Awake } from '../common/wake-lock.js';
import { get, make } from '../common/dom.js';
import { turnSign, walkOn } from './readings.js';
import { nudge } from './nudge.js';
import { makePad, padChoice, rememberPad } from './pad.js';
import { say } from '../common/words.js';

const foot = get('foot');
const keys = get('hand');

/** Between two readings the crank is turned, with the phone on the floor: its screen stays on so long. */
const SWEEP_MS = 5 * 60_000;
const awake = new Awake(() => undefined);
/** @type {number | undefined} */
let resting;

/** A reading is being typed: the screen stays on for a while. */
function stayAwake() {
  if (resting === undefined) awake.start();
  clearTimeout(resting);
  resting = setTimeout(() => {
    resting = undefined;
    awake.stop();
  }, SWEEP_MS);
}

/** The reading that has the focus, or null. */
function reading() {
  const { activeElement: field } = document;
  const isReading = field instanceof HTMLInputElement && field.closest('#form .reading');
  return isReading ? field : null;
}

/** @param {string} text @param {string} spoken @param {(field: HTMLInputElement) => void} act */
function key(text, spoken, act) {
  const button = make('button', { type: 'button', tabIndex: -1 }, text); // a keyboard has the arrows
  button.setAttribute('aria-label', spoken);
  button.addEventListener('click', () => {
    const field = reading();
    if (field) act(field);
  });
  return button;
}

/** Keep the foot above what covers the page: some phones shrink only what is seen of it. */
function dock() {
  const seen = window.visualViewport;
  const covered = seen ? Math.max(0, innerHeight - seen.height - seen.offsetTop) : 0;
  foot.style.bottom = `${covered}px`;
  document.documentElement.style.setProperty('--foot', `${foot.offsetHeight + covered + 8}px`);
}

/** @param {() => void} takeBack */
export function startHand(takeBack) {
  const row = make(
    'div',
    { className: 'hand-row' },
    key('±', say('hand.sign'), turnSign),
    key('−', say('hand.down'), (field) => nudge(field, -1)),
    key('+', say('hand.up'), (field) => nudge(field, 1)),
    key(say('hand.undo'), say('hand.undo'), takeBack),
    key(say('hand.next'), say('hand.next'), walkOn),
  );
  const pad = makePad(reading, walkOn, takeBack);
  keys.append(row, pad);
  const choice = /** @type {HTMLSelectElement} */ (get('pad-choice'));
  choice.value = padChoice();
  /** The phone's own pad, or ours in its place. */
  const choosePad = () => {
    const isOurs = choice.value === 'all';
    row.hidden = isOurs;
    pad.hidden = !isOurs;
  };
  choosePad();
  choice.addEventListener('change', () => {
    rememberPad(choice.value);
    choosePad();
  });
  // Before the field has the focus, or the phone's pad comes up all the same.
  for (const sign of ['pointerdown', 'focusin']) {
    document.addEventListener(
      sign,
      ({ target }) => {
        const isReading = target instanceof HTMLInputElement && target.closest('#form .reading');
        if (isReading) target.inputMode = choice.value === 'all' ? 'none' : 'decimal';
      },
      true,
    );
  }
  // The field keeps the focus, and so the number pad stays up.
  for (const press of ['pointerdown', 'mousedown']) {
    keys.addEventListener(press, (event) => event.preventDefault());
  }
  const show = () => {
    const field = reading();
    keys.hidden = !field;
    dock();
    field?.scrollIntoView({ block: 'nearest' });
  };
  document.addEventListener('focusin', show);
  for (const sign of ['focusin', 'input']) {
    document.addEventListener(sign, () => reading() && stayAwake());
  }
  document.addEventListener('focusout', () => setTimeout(show));
  document.addEventListener('keydown', (event) => {
    const way = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : null;
    const field = reading();
    if (!field || way === null || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    nudge(field, way);
  });
  window.visualViewport?.addEventListener('resize', show);
  window.visualViewport?.addEventListener('scroll', dock);
  new ResizeObserver(dock).observe(foot);
}
