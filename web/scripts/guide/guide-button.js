// Brings the guide through a sweep when its button is pressed for the first time.

import { say } from '../common/words.js';

/** @param {import('../python/core.js').Core} core @param {() => Record<string, string>} readForm */
export function offerGuide(core, readForm) {
  document.addEventListener('click', async ({ target }) => {
    const button = target instanceof Element ? target.closest('button.lead') : null;
    if (!(button instanceof HTMLButtonElement)) return;
    const { at = '' } = button.dataset;
    const sweep = [...document.querySelectorAll(`button.lead[data-at="${at}"]`)].indexOf(button);
    if (button.nextElementSibling?.matches('.lead-lost')) button.nextElementSibling.remove();
    try {
      const { openGuide } = await import('./guide.js');
      await openGuide(core, readForm, at, sweep);
    } catch (error) {
      const lost = document.createElement('p');
      lost.className = 'fault lead-lost';
      lost.setAttribute('role', 'alert');
      lost.textContent = say('guide.lost', { why: String(error) });
      button.after(lost);
    }
  });
}
