// What the units of the job are called, wherever a label names them.

import { say } from './words.js';

/** @param {string | undefined} chosen what the form says @returns {'inch' | 'metric'} */
export function unitsOf(chosen) {
  return chosen === 'metric' ? 'metric' : 'inch';
}

/** @param {string | undefined} chosen what the form says */
export function nameUnits(chosen) {
  const units = unitsOf(chosen);
  for (const name of document.querySelectorAll('[data-unit]')) name.textContent = say(`unit.small.${units}`);
  for (const name of document.querySelectorAll('[data-long-unit]')) {
    name.textContent = say(`unit.long.${units}`);
  }
  return units;
}
