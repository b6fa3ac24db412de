// The scale of a dial that is to be read: asked once, and remembered on the phone, for each rig and unit.

import { recall, remember } from '../common/chosen.js';
import { make } from '../common/dom.js';
import { say } from '../common/words.js';

const KEPT = 'sweepsheet-dial';

/** So many are remembered: those of the dials that were used last. */
const MOST = 20;
/** What one division of most dials is worth, in the unit of the readings. */
const STEPS = { inch: '1', metric: '0.01' };

/**
 * @typedef {object} Owner whose scale it is
 * @property {'inch' | 'metric'} units
 * @property {string} rig its id; empty where the job has none that is kept
 *
 * @typedef {{ divisions: string, step: string, way: string }} Texts
 */

/** @returns {(Owner & Texts)[]} the last used first */
function remembered() {
  try {
    const all = JSON.parse(recall(KEPT) ?? '[]');
    return Array.isArray(all) ? all.filter(Boolean) : [];
  } catch {
    return []; // of something else: as for the first time
  }
}

/** A control with its label. @param {HTMLInputElement | HTMLSelectElement} control @param {string} name */
export function labelled(control, name) {
  return make('div', { className: 'field' }, make('label', { className: 'name', htmlFor: control.id }, name), control);
}

export class DialScale {
  /** @type {Owner} */
  #owner = { units: 'inch', rig: '' };

  /** @param {string} id what the ids of its fields begin with */
  constructor(id) {
    this.divisions = make('input', { id: `${id}-divisions`, inputMode: 'numeric', maxLength: 4 });
    this.step = make('input', { id: `${id}-step`, inputMode: 'decimal', maxLength: 8 });
    const ways = ['clockwise', 'counter'].map((each) => new Option(say(`dial.${each}`), each));
    this.way = make('select', { id: `${id}-way` }, ...ways);
    this.parts = [
      labelled(this.divisions, say('dial.divisions')),
      labelled(this.step, say('dial.step')),
      labelled(this.way, say('dial.way')),
    ];
  }

  /** As it was used last with this rig; else in this unit. @param {Owner} owner */
  show(owner) {
    this.#owner = owner;
    const all = remembered().filter(({ units }) => units === owner.units);
    const { divisions, step, way } = all.find(({ rig }) => rig === owner.rig) ?? all[0] ?? {};
    this.divisions.value = divisions ?? '100';
    this.step.value = step ?? STEPS[owner.units];
    this.way.value = way === 'counter' ? 'counter' : 'clockwise';
  }

  /** As the core is asked; it is what will stand there the next time. */
  take() {
    const texts = { divisions: this.divisions.value, step: this.step.value, way: this.way.value };
    const { units, rig } = this.#owner;
    const others = remembered().filter((one) => one.units !== units || one.rig !== rig);
    remember(KEPT, JSON.stringify([{ units, rig, ...texts }, ...others].slice(0, MOST)));
    return { divisions: texts.divisions, step: texts.step, clockwise: texts.way === 'clockwise' };
  }
}
