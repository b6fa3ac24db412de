// English: what the customer's view says by itself. It is read by a person who pays, not by one who
// knows the trade. What Python says comes worded from Python.

/** @import { RoundFigures, JobFigures } from './link.js' */

export const WORDS = {
  trouble: {
    none: 'This page shows a job that comes with a link, and there is none in the address.',
    cut: 'This link is cut or damaged: a part of it is missing or changed. Ask for it again, and open it whole.',
    foreign: 'This is not a link that Sweepsheet made.',
    newer:
      'This link was made by a newer Sweepsheet. Load this page again while you have a signal, then open the link again.',
    longer: 'This link is longer than any that Sweepsheet makes.',
  },
  waits: 'This browser can’t unpack the link by itself. It is read as soon as the calculation is there …',
  checking:
    'Not checked yet. This phone is now working everything out again from the readings; that takes a moment.',
  agrees: 'This phone worked it all out again from the readings: the figures agree.',
  disagrees: 'The figures and the readings do not agree.',
  disagreesMore:
    'Worked out again from the readings in this link, other figures come out than the ones it shows. The link was changed, or made by another release. Do not rely on it: ask the one who sent it. Below stand both.',
  claimed: 'What the link shows',
  recomputed: 'What the readings give',
  unchecked: (/** @type {string} */ why) =>
    `The figures below were not checked against the readings. ${why}`,
  /** @type {Record<string, string>} */
  name: {
    vehicle: 'Vehicle',
    engine: 'Engine',
    gearbox: 'Gearbox',
    housing: 'Housing',
    technician: 'Made by',
    customer: 'For',
    date: 'Date',
    notes: 'Notes',
  },
  /** @type {Record<string, string>} */
  verdict: {
    within: 'Within the limit',
    outside: 'Outside the limit',
    undecided: 'Too close to call',
    none: 'No limit to judge by',
  },
  bore: (/** @type {RoundFigures} */ { offset, pm, tir, toward }, /** @type {string} */ unit) =>
    `The bore stood ${offset} ${unit} off the crank's axis (± ${pm})${toward ? `, toward ${toward}` : ''}. On the dial that is TIR ${tir} ${unit}.`,
  chance: (/** @type {string} */ chance) => `Chance that it is inside the limit: ${chance}.`,
  face: (/** @type {RoundFigures} */ { face_runout, face_pm, face_limit }, /** @type {string} */ unit) =>
    `Rear face: out of square by ${face_runout} ${unit} (± ${face_pm})${face_limit ? `, limit ${face_limit}` : ''}.`,
  pilot: (/** @type {RoundFigures} */ { pilot_offset, pilot_pm }, /** @type {string} */ unit) =>
    `At the pilot bearing the gearbox's axis was ${pilot_offset} ${unit} off (± ${pilot_pm}).`,
  judged: (/** @type {string} */ line, /** @type {string} */ verdict) => `${line} ${verdict}.`,
  nothingDone: 'Nothing was changed: this is how it was found.',
  standard: 'Standard dowels, without offset.',
  dowels: (/** @type {string} */ offset, /** @type {string} */ aim, /** @type {string} */ unit) =>
    `Both dowels with ${offset} ${unit} offset, aimed at ${aim}.`,
  dowelsDiffer: (/** @type {RoundFigures} */ figures, /** @type {string} */ unit) => {
    const one = (/** @type {string} */ offset, /** @type {string} */ aim) =>
      aim ? `${offset} ${unit} offset, aimed at ${aim}` : 'standard';
    const { dowel_offset, dowel_aim, other_offset, other_aim } = figures;
    return `One dowel ${one(dowel_offset, dowel_aim)}; the other ${one(other_offset, other_aim)}.`;
  },
  round: (/** @type {number} */ n) => `Measured again, ${n}`,
  limit: (/** @type {JobFigures} */ { limit_offset, limit_tir, unit }) =>
    limit_offset
      ? `The bore may be ${limit_offset} ${unit} off at most, which is TIR ${limit_tir} ${unit}.`
      : 'No limit was given for the bore.',
  pilotLimit: (/** @type {JobFigures} */ { limit_pilot, unit }) =>
    `At the pilot bearing it may be ${limit_pilot} ${unit} at most.`,
  source: 'These limits come from: ',
  noSource: 'Nobody wrote down where these limits come from. Without the maker’s figure they are common practice, no more.',
  stops:
    'The record itself says STOP: something about these readings must be cleared up before anyone acts on them. Ask what.',
  before: 'As it was found',
  after: 'As it was left',
  readings: 'Every reading',
  doubts: 'What the record says of itself',
  opening: 'Opening …',
  notOpened: (/** @type {string} */ why) => `It could not be kept on this phone: ${why}`,
};
