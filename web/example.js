// An invented job, for a first look at what the page does.

/** Readings in thou by position, `closing` for the one back at the start. */
export const EXAMPLE = {
  positions: '12 1:30 3 4:30 6 7:30 9 10:30',
  turn: 'anticlockwise',
  readings: {
    12: '0',
    '10:30': '3.5',
    9: '0.5',
    '7:30': '-7',
    6: '-14',
    '4:30': '-17.5',
    3: '-14.5',
    '1:30': '-7.5',
    closing: '0',
  },
};
