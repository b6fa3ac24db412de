// What the guide through a sweep is made of on the screen: built once, filled anew for each stop.

import { make } from '../common/dom.js';
import { makePad, padChoice } from '../form/pad.js';
import { say } from '../common/words.js';

/** A button. @param {string} className @param {string} text @param {() => void} onPress */
function button(className, text, onPress) {
  const made = make('button', { type: 'button', className }, text);
  made.addEventListener('click', onPress);
  return made;
}

/** One reading: its label, its large field and the plus/minus key. @param {number} i */
function reading(i) {
  const id = `guide-reading-${i}`;
  const input = make('input', { id, inputMode: 'decimal', autocomplete: 'off' });
  input.setAttribute('enterkeyhint', 'next');
  const label = make('label', { htmlFor: id });
  const sign = make('button', { type: 'button', className: 'sign' }, '±');
  const fault = make('p', { className: 'fault', id: `${id}-fault` });
  input.setAttribute('aria-describedby', fault.id);
  return { input, label, sign, fault, part: make('div', { className: 'guide-reading' }, label, input, sign, fault) };
}

export class GuideView {
  title = make('h2', { id: 'guide-title' });
  count = make('p', { className: 'guide-count' });
  position = make('h3', { className: 'guide-position', tabIndex: -1 });
  turn = make('p', { className: 'guide-turn' });
  readings = [reading(0), reading(1)];
  picture = make('div', { className: 'guide-picture', hidden: true });
  notice = make('p', { className: 'guide-notice', hidden: true });
  watch = make('ul', { className: 'guide-watch' });
  verdict = make('div', { className: 'guide-verdict' });
  short = make('p', { className: 'guide-short', hidden: true });
  heard = make('p', { className: 'heard' });
  dark = make('p', { className: 'help', hidden: true }, say('guide.dark'));
  voice = make('input', { type: 'checkbox' });
  voicePart = make('div', { className: 'guide-voice' });

  /** @param {Record<'leave' | 'back' | 'next' | 'skip' | 'again', () => void>} on */
  constructor(on) {
    this.pad = makePad(() => this.reading);
    this.pad.hidden = true;
    for (const { input } of this.readings) {
      input.addEventListener('focus', () => this.showPad());
      // Not before a press has ended elsewhere, or what is pressed moves away under the thumb.
      input.addEventListener('blur', () => setTimeout(() => this.showPad(), 300));
    }
    this.heard.setAttribute('role', 'status');
    this.voice.setAttribute('role', 'switch');
    this.voicePart.append(
      make('label', {}, this.voice, ` ${say('guide.voice')}`),
      make('p', { className: 'help' }, say('guide.voice_own')),
    );
    this.skip = button('guide-skip', say('guide.skip'), on.skip);
    this.again = button('guide-again', say('guide.again'), on.again);
    this.back = button('guide-back', say('guide.previous'), on.back);
    this.next = button('guide-next', say('guide.next'), on.next);
    this.leave = button('guide-leave', say('guide.leave'), on.leave);
    // What is read is typed, then Next: the field keeps the focus, and so the number pad stays up.
    for (const key of [this.back, this.next, this.skip, ...this.readings.map(({ sign }) => sign)]) {
      key.addEventListener('pointerdown', (event) => event.preventDefault());
    }
    this.body = make(
      'div',
      { className: 'guide-body' },
      ...[this.position, this.turn, this.verdict, ...this.readings.map(({ part }) => part)],
      ...[this.again, this.picture, this.notice, this.watch, this.skip, this.voicePart, this.dark],
    );
    this.dialog = make(
      'dialog',
      { id: 'guide', className: 'guide' },
      make('header', {}, make('div', {}, this.title, this.count), this.leave),
      this.body,
      make('footer', {}, this.short, this.pad, make('div', { className: 'guide-keys' }, this.back, this.next)),
      this.heard,
    );
    this.dialog.setAttribute('aria-labelledby', this.title.id);
  }

  /** The reading that is being typed, or null. */
  get reading() {
    return this.readings.find(({ input }) => input === document.activeElement)?.input ?? null;
  }

  /** Ours is there while a reading is typed, and the phone's own where that was chosen. */
  showPad() {
    const isOurs = padChoice() !== 'none';
    this.pad.hidden = !isOurs || !this.reading;
    for (const { input } of this.readings) input.inputMode = isOurs ? 'none' : 'decimal';
  }
}
