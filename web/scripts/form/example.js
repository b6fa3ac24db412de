// An invented job, for a first look at what the page does.

/** @type {Record<string, string>} texts by field, readings in thou */
export const EXAMPLE = {
  units: 'inch',
  'indicator.shows': 'signed',
  positions_choice: '12 1:30 3 4:30 6 7:30 9 10:30',
  turn: 'anticlockwise',
  'rounds.0.bore.sweeps.0.0': '0',
  'rounds.0.bore.sweeps.0.1': '2',
  'rounds.0.bore.sweeps.0.2': '-1',
  'rounds.0.bore.sweeps.0.3': '-7',
  'rounds.0.bore.sweeps.0.4': '-12.5',
  'rounds.0.bore.sweeps.0.5': '-14.5',
  'rounds.0.bore.sweeps.0.6': '-11.5',
  'rounds.0.bore.sweeps.0.7': '-6',
  'rounds.0.bore.closing.0': '0',
};
