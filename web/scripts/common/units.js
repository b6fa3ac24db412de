// What the units of the job are called, wherever a label names them.

import { say } from './words.js';

/** @param {string | undefined} chosen what the form says @returns {'inch' | 'metric'} */
export function nameUnits(chosen) {
  const units = chosen === 'metric' ? 'metric' : 'inch';
  for (const name of document.querySelectorAll('[data-unit]')) name.textContent = say(`unit.small.${units}`);
  for (const name of document.querySelectorAll('[data-long-unit]')) {
    name.textContent = say(`unit.long.${units}`);
  }
  return units;
}
