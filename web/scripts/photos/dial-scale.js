// The scale of a dial that is to be read: asked once, and remembered on the phone.

import { recall, remember } from '../common/chosen.js';
import { make } from '../common/dom.js';
import { say } from '../common/words.js';

const KEPT = 'sweepsheet-dial';

/** @returns {{ divisions?: string, step?: string, way?: string }} */
function remembered() {
  try {
    return JSON.parse(recall(KEPT) ?? '{}') ?? {};
  } catch {
    return {}; // of something else: as for the first time
  }
}

/** A control with its label. @param {HTMLInputElement | HTMLSelectElement} control @param {string} name */
export function labelled(control, name) {
  return make('div', { className: 'field' }, make('label', { className: 'name', htmlFor: control.id }, name), control);
}

export class DialScale {
  /** @param {string} id what the ids of its fields begin with */
  constructor(id) {
    const { divisions = '100', step = '1', way } = remembered();
    this.divisions = make('input', { id: `${id}-divisions`, inputMode: 'numeric', value: divisions, maxLength: 4 });
    this.step = make('input', { id: `${id}-step`, inputMode: 'decimal', value: step, maxLength: 8 });
    const ways = ['clockwise', 'counter'].map((each) => new Option(say(`dial.${each}`), each));
    this.way = make('select', { id: `${id}-way` }, ...ways);
    this.way.value = way === 'counter' ? 'counter' : 'clockwise';
    this.parts = [
      labelled(this.divisions, say('dial.divisions')),
      labelled(this.step, say('dial.step')),
      labelled(this.way, say('dial.way')),
    ];
  }

  /** As the core is asked; it is what will stand there the next time. */
  take() {
    const texts = { divisions: this.divisions.value, step: this.step.value, way: this.way.value };
    remember(KEPT, JSON.stringify(texts));
    return { divisions: texts.divisions, step: texts.step, clockwise: texts.way === 'clockwise' };
  }
}
