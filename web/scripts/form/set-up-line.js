// The set-up in one line: all that matters for the readings below it, in words.

import { listOf } from './sweep-overrides.js';
import { unitsOf } from '../common/units.js';
import { say } from '../common/words.js';

/** @param {Record<string, string>} fields */
function positions(fields) {
  const n = listOf(fields['positions'] ?? '').length;
  const choice = fields['positions_choice'] ?? '';
  if (choice === 'own') return [say('set_up.own', { n })];
  const kind = choice === 'bolts' || choice === 'wheel' ? choice : 'positions';
  const first = fields['marks.first']?.trim() || '12';
  const turn = fields['turn'] === 'clockwise' ? 'clockwise' : 'anticlockwise';
  return [say(`set_up.${kind}`, { n, first }), say(`set_up.turn.${turn}`)];
}

/** @param {Record<string, string>} fields */
export function setUpLine(fields) {
  const units = unitsOf(fields['units']);
  const touches = fields['bore.contact'] === 'outside' ? 'outside' : 'inside';
  const assembly = fields['housing.assembly'];
  const rig = fields['indicator.rig']?.trim();
  const said = [...(assembly ? [say(`set_up.assembly.${assembly}`)] : []), ...(rig ? [rig] : [])];
  said.push(say(`unit.small.${units}`), say(`set_up.touches.${touches}`), ...positions(fields));
  if (fields['indicator.shows'] === 'all_round') said.push(say('set_up.all_round'));
  if (fields['indicator.plus_when'] === 'plunger_out') said.push(say('set_up.plus_out'));
  return said.join(' · ');
}
