// An invented job, for a first look at what the page does.

/** Readings in thou by position, `closing` for the one back at the start. */
export const EXAMPLE = {
  positions: '12 1:30 3 4:30 6 7:30 9 10:30',
  turn: 'anticlockwise',
  readings: {
    12: '0',
    '10:30': '2',
    9: '-1',
    '7:30': '-7',
    6: '-12.5',
    '4:30': '-14.5',
    3: '-11.5',
    '1:30': '-6',
    closing: '0',
  },
};
