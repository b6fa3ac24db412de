// Leads through a sweep one position at a time, or through the lengths one by one, in very large type. What is typed goes straight into
// the form's own fields, so that nothing is lost whenever it is left. Python gives the words and the
// picture of each stop; until it is there, the positions stand as they were typed.

import { Awake } from '../common/wake-lock.js';
import { GuideView } from './guide-view.js';
import { MOST_SWEEPS } from '../common/core-values.js';
import { changed, turnSign } from '../form/readings.js';
import { DEPTH, fieldNamed, firstBlank, nextBlankSweep, stopsOf, sweepsAt } from './stops.js';
import { make } from '../common/dom.js';
import { bringStyle } from '../common/style-sheet.js';
import { keepDrawing } from '../common/svg.js';
import { hasVoice, hush, isVoiceWanted, rememberVoice, speak } from './voice.js';
import { say } from '../common/words.js';

/** @import { Stop } from './stops.js' */

/**
 * @typedef {object} Told what Python says of a stop
 * @property {string} label
 * @property {string} turn
 * @property {string[]} watch
 * @property {string} spoken
 * @property {string} [crank] an SVG transform
 * @property {string} [picture] an SVG of its own
 *
 * @typedef {{ state: 'guide', picture: string, steps: Told[] } | { state: 'faults', text: string }} Answer
 */

/** The style sheet, once. */
let styled = /** @type {Promise<unknown> | null} */ (null);

/** @type {Guide | null} */
let guide = null;

/** @param {import('../python/core.js').Core} core @param {() => Record<string, string>} readForm
 * @param {string} at the sweeps' place in the form @param {number} sweep */
export async function openGuide(core, readForm, at, sweep) {
  styled ??= bringStyle(new URL('guide.css', import.meta.url));
  await styled;
  guide ??= new Guide(core, readForm);
  guide.open(at, sweep);
}

class Guide {
  #at = '';
  #sweep = 0;
  /** @type {Stop[]} */
  #stops = [];
  #now = 0;
  /** @type {Answer | null} */
  #told = null;
  /** Which opening it is: what Python says of an earlier one comes too late. */
  #opening = 0;

  /** @param {import('../python/core.js').Core} core @param {() => Record<string, string>} readForm */
  constructor(core, readForm) {
    this.core = core;
    this.readForm = readForm;
    this.view = new GuideView({
      leave: () => this.view.dialog.close(),
      back: () => this.#go(this.#now - 1),
      next: () => this.#onward(this.view.readings.findIndex(({ input }) => input === this.view.reading)),
      skip: () => this.#skip(),
      again: () => this.#again(),
    });
    // A gauge that types as a keyboard does finds the field, wherever the focus is.
    this.view.dialog.addEventListener('keydown', ({ key, target }) => {
      const [first] = this.view.readings;
      const isFigure = /^[\d.,+\-−]$/.test(key) && !(target instanceof HTMLInputElement);
      if (isFigure && first && !first.part.hidden) first.input.focus();
    });
    const { dialog, voice, voicePart, readings, dark } = this.view;
    this.awake = new Awake((isAwake) => (dark.hidden = isAwake));
    voicePart.hidden = !hasVoice;
    voice.checked = isVoiceWanted();
    voice.addEventListener('change', () => {
      rememberVoice(voice.checked);
      if (voice.checked) this.#speak();
      else hush();
    });
    readings.forEach(({ input, sign }, i) => {
      input.addEventListener('input', () => this.#write(i));
      input.addEventListener('keydown', (event) => this.#enter(event, i));
      sign.addEventListener('click', () => {
        turnSign(input);
        input.focus();
      });
    });
    dialog.addEventListener('close', () => this.#left());
    addEventListener('popstate', () => dialog.open && dialog.close());
    const fit = () => this.#fit();
    window.visualViewport?.addEventListener('resize', fit);
    window.visualViewport?.addEventListener('scroll', fit);
    this.watcher = new MutationObserver(() => this.#showAnswer());
    document.body.append(dialog);
  }

  /** @param {string} at @param {number} sweep */
  open(at, sweep) {
    this.#take(at, sweep);
    this.#fit();
    this.view.showPad();
    this.view.dialog.showModal();
    history.pushState({ guide: true }, ''); // the phone's back button leads back to the form
    this.watcher.observe(/** @type {Node} */ (document.querySelector('main')), {
      subtree: true,
      childList: true,
      characterData: true,
    });
    this.awake.start();
    this.#go(firstBlank(this.#stops));
  }

  /** Take up one sweep. @param {string} at @param {number} sweep */
  #take(at, sweep) {
    this.#at = at;
    this.#sweep = sweep;
    this.#told = null;
    this.#stops = stopsOf(at, sweep);
    this.view.title.textContent = this.#title;
    this.view.dialog.classList.toggle('lengths', at === DEPTH);
    this.#ask(++this.#opening);
  }

  /** @param {number} opening */
  async #ask(opening) {
    try {
      const told = await this.core.guideSweep(this.readForm(), this.#at);
      if (opening !== this.#opening) return;
      this.#told = told;
    } catch (error) {
      if (opening !== this.#opening) return;
      this.#told = { state: 'faults', text: String(error instanceof Error ? error.message : error) };
    }
    this.#drawPicture();
    this.#showWords();
    this.#say();
  }

  get #title() {
    if (this.#at === DEPTH) return say('guide.lengths');
    const what = this.#at.endsWith('.face') ? 'what.face' : 'what.bore';
    return say('readings.sweep', { n: this.#sweep + 1, what: say(what) });
  }

  get #stop() {
    return /** @type {Stop} */ (this.#stops[this.#now]);
  }

  /** What Python says of this stop; nothing at the end, or before it is there. */
  get #words() {
    return this.#told?.state === 'guide' ? this.#told.steps[this.#now] : undefined;
  }

  // Going on and back ---------------------------------------------------------------------------

  #next() {
    if (this.#stop.kind === 'end') this.view.dialog.close();
    else this.#go(this.#now + 1);
  }

  #skip() {
    for (const { input } of this.view.readings) input.value = '';
    this.#stop.names.forEach((_, i) => this.#write(i));
    this.#next();
  }

  /** Enter goes to the second dial, then on. @param {KeyboardEvent} event @param {number} i */
  #enter(event, i) {
    if (event.key !== 'Enter' || event.isComposing) return;
    event.preventDefault();
    this.#onward(i);
  }

  /** From the first reading to that of the second dial, else on. @param {number} i which one, or -1 */
  #onward(i) {
    const other = i < 0 ? undefined : this.view.readings[i + 1];
    if (other && !other.part.hidden) other.input.focus();
    else this.#next();
  }

  #again() {
    this.#take(this.#at, nextBlankSweep(this.#at, this.#sweep));
    this.#go(0);
  }

  /** @param {number} n */
  #go(n) {
    const { view } = this;
    const hadField = view.readings.some(({ input }) => input === document.activeElement);
    this.#now = Math.max(0, Math.min(n, this.#stops.length - 1));
    this.#show();
    view.body.scrollTop = 0;
    // A number pad that comes up by itself would hide the picture; who types by keys wants the field.
    const [{ input, part }] = /** @type {[typeof view.readings[0]]} */ (view.readings);
    const isTouched = matchMedia('(pointer: coarse)').matches;
    if (part.hidden) view.next.focus();
    else if (hadField || !isTouched) {
      input.focus();
      input.select();
    } else view.position.focus({ preventScroll: true });
    this.#say();
  }

  #left() {
    this.#opening++;
    this.watcher.disconnect();
    this.awake.stop();
    hush();
    if (history.state?.guide) history.back();
    const from = `button.lead[data-at="${this.#at}"][data-sweep="${this.#sweep}"]`;
    const button = document.querySelector(from);
    if (button instanceof HTMLElement) button.focus();
  }

  // What is shown -------------------------------------------------------------------------------

  #show() {
    const { view } = this;
    const { kind, names } = this.#stop;
    const of = this.#stops.filter((stop) => stop.kind === 'position').length;
    const isLength = this.#at === DEPTH;
    const isLast = kind === 'end';
    view.count.textContent = kind === 'position' ? say('guide.count', { n: this.#now, of }) : '';
    view.back.disabled = this.#now === 0;
    const onward = kind === 'ready' ? 'guide.begin' : 'guide.next';
    view.next.textContent = say(isLast ? 'guide.leave' : onward);
    view.leave.hidden = isLast;
    view.skip.hidden = kind !== 'position';
    const isFull = isLength || sweepsAt(this.#at) >= MOST_SWEEPS;
    view.again.hidden = !isLast || isFull;
    view.readings.forEach(({ part, label, input, sign }, i) => {
      const name = names[i];
      part.hidden = !name;
      if (!name) return;
      const unit = document.querySelector('[data-long-unit]')?.textContent ?? '';
      const called = isLength ? 'guide.length_read' : i ? 'guide.reading_opposite' : 'guide.reading';
      label.textContent = say(called, { unit });
      input.value = fieldNamed(name)?.value ?? '';
      const spoken = fieldNamed(name)?.getAttribute('aria-label') ?? this.#stop.label;
      input.setAttribute('aria-label', `${label.textContent}: ${spoken}`);
      sign.setAttribute('aria-label', say('readings.sign', { where: spoken }));
    });
    this.#drawPicture();
    this.#showWords();
    this.#showAnswer();
  }

  #showWords() {
    const { view } = this;
    const words = this.#words;
    const isEnd = this.#stop.kind === 'end';
    view.position.textContent = words?.label ?? this.#stop.label;
    view.turn.textContent = words?.turn ?? '';
    view.watch.replaceChildren(...(words?.watch ?? []).map((text) => make('li', {}, text)));
    const { picture } = view;
    picture.hidden = !words || !picture.firstChild;
    const crank = picture.querySelector('[data-turns="crank"]');
    if (words?.crank) crank?.setAttribute('transform', words.crank);
    const notice = this.#told?.state === 'faults' ? this.#told.text : '';
    view.notice.textContent = notice;
    view.notice.hidden = !notice || isEnd;
  }

  #drawPicture() {
    const drawn = this.#words?.picture ?? (this.#told?.state === 'guide' ? this.#told.picture : '');
    keepDrawing(this.view.picture, drawn);
  }

  /** What the form says by now: the answer in short, at the end in full, and faults. */
  #showAnswer() {
    const { view } = this;
    const isEnd = this.#stop.kind === 'end';
    const isAnswered = document.documentElement.dataset.answer === 'answer';
    const text = (/** @type {string} */ id) => document.getElementById(id)?.textContent ?? '';
    const short = `${text('strip-verdict')} ${text('strip-headline')}`.trim();
    if (view.short.textContent !== short) view.short.textContent = short;
    view.short.hidden = !isAnswered || isEnd;
    view.verdict.hidden = !isEnd;
    view.verdict.replaceChildren(...(isEnd ? this.#verdicts(isAnswered, short) : []));
    view.readings.forEach(({ input, fault }, i) => {
      const name = this.#stop.names[i] ?? '';
      fault.textContent = name ? text(`fault-${fieldNamed(name)?.id || name}`) : '';
      input.toggleAttribute('aria-invalid', false);
      if (fault.textContent) input.setAttribute('aria-invalid', 'true');
    });
  }

  /** @param {boolean} isAnswered @param {string} short */
  #verdicts(isAnswered, short) {
    if (!isAnswered) return [make('p', { className: 'headline' }, short)];
    const copy = (/** @type {string} */ selector) =>
      [...document.querySelectorAll(selector)].map((part) => {
        const made = /** @type {Element} */ (part.cloneNode(true));
        for (const each of [made, ...made.querySelectorAll('[id]')]) each.removeAttribute('id');
        return made;
      });
    if (this.#at === DEPTH) return [...copy('#verdict'), ...copy('#remarks'), ...copy('#section-depth > :not(summary)')];
    const face = this.#at.endsWith('.face') ? copy('#section-face :is(h3, .verdict, .figures)') : [];
    return [...copy('#verdict'), ...copy('#headline'), ...face];
  }

  // What is typed, heard and seen ---------------------------------------------------------------

  /** Into the form's own field. @param {number} i */
  #write(i) {
    const field = fieldNamed(this.#stop.names[i] ?? '');
    const typed = this.view.readings[i]?.input.value ?? '';
    if (!field || field.value === typed) return;
    field.value = typed;
    changed(field);
  }

  /** For who listens: the new position, and what to do there. */
  #say() {
    const { view } = this;
    const { count, position, turn } = view;
    const said = [count, position, turn].map(({ textContent }) => textContent ?? '').filter(Boolean);
    const text = said.join('. ');
    if (view.heard.textContent === text) return;
    view.heard.textContent = text;
    this.#speak();
  }

  #speak() {
    if (!this.view.voice.checked || !hasVoice) return;
    const words = this.#words;
    const { textContent: label } = this.view.position;
    speak(words ? words.spoken : (label ?? ''));
  }

  /** As high as what is to be seen above the number pad; a page that was zoomed into is left alone. */
  #fit() {
    const seen = window.visualViewport;
    if (!seen || seen.scale > 1.01) return;
    this.view.dialog.style.setProperty('--seen', `${seen.height}px`);
    this.view.dialog.style.setProperty('--above', `${seen.offsetTop}px`);
  }
}
