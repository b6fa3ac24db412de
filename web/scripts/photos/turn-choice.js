// How often the needle went round: a photo does not show it. The readings that it may be stand below a fold, one of
// which is chosen; they come from the core.

import { make } from '../common/dom.js';
import { say } from '../common/words.js';

/** @typedef {{ typed: string, shown: string, text: string }} Turn a reading: as it is entered, as it is shown, and
 * what is said of it */

export class TurnChoice {
  /** @type {Turn[]} */
  #turns = [];

  /** @param {(turn: Turn) => void} choose */
  constructor(choose) {
    this.choices = make('div', { className: 'turns' });
    this.choices.setAttribute('role', 'radiogroup');
    this.choices.setAttribute('aria-label', say('dial.turns'));
    this.choices.addEventListener('change', ({ target }) => {
      const turn = this.#turns.find(({ typed }) => target instanceof HTMLInputElement && typed === target.value);
      if (turn) choose(turn);
    });
    this.part = make(
      'details',
      { id: 'dial-turns', hidden: true },
      make('summary', {}, say('dial.turns')),
      make('p', { className: 'help' }, say('dial.turns_help')),
      this.choices,
    );
  }

  hide() {
    this.part.hidden = true;
    this.choices.replaceChildren();
  }

  /** @param {Turn[]} turns @param {string} typed the one that was read */
  show(turns, typed) {
    const choice = (/** @type {Turn} */ { typed: value, text }) => {
      const input = make('input', { type: 'radio', name: 'dial-turn', value, checked: value === typed });
      return make('label', {}, input, text);
    };
    this.#turns = turns;
    this.choices.replaceChildren(...turns.map(choice));
    this.part.open = this.part.hidden = false;
  }
}
