// English: what the page's own scripts say. What Python says comes worded from Python.

export const WORDS = {
  ready: 'Ready.',
  failed: (/** @type {string} */ why) => why,
  offline: {
    unsupported: (/** @type {string} */ why) => `Cannot be kept for use without a signal: ${why}.`,
    installing: () => 'Being kept for use without a signal …',
    ready: () => 'Ready to work without a signal.',
    failed: (/** @type {string} */ why) => `Could not be kept for use without a signal: ${why}`,
    'update-waiting': () =>
      'Ready to work without a signal. A newer release has come; it is taken the next time the page is opened.',
  },
  unnamed: 'Unnamed job',
  copyOf: (/** @type {string} */ name) => `${name}, copy`,
  kept: 'Kept on this phone as you type.',
  keptForNow:
    'Kept on this phone as you type. The browser may clear it if the page is not used for long: put it on the home screen.',
  notKept: (/** @type {string} */ why) =>
    `NOT KEPT: this browser does not store what you type (${why}). Write the readings down.`,
  asFound: 'As found',
  recheck: (/** @type {number} */ n) => `Recheck ${n}`,
  bore: 'bore',
  face: 'face',
  secondDial: 'Second dial, opposite',
  sweep: (/** @type {number} */ n, /** @type {string} */ what) => `Sweep ${n} of the ${what}`,
  removeSweep: (/** @type {number} */ n, /** @type {string} */ what) =>
    `Remove sweep ${n} of the ${what}`,
  remove: 'Remove',
  hour: (/** @type {string} */ hour) => `${hour} o'clock`,
  reading: (/** @type {string} */ where, /** @type {number} */ n, /** @type {string} */ what) =>
    `${where}, ${what}, sweep ${n}`,
  sign: (/** @type {string} */ where) => `Plus or minus: ${where}`,
  closing: 'Back at the start',
  closingHelp: 'How far off the dial is when the crank is back where the sweep began: 0 if it came back.',
  whatIsThis: 'What are these figures?',
  turnToMark: 'Turn to a mark',
  outOfOrder: 'One thing above is not right yet.',
  severalOutOfOrder: (/** @type {number} */ n) => `${n} things above are not right yet.`,
  unit: { inch: 'thou', metric: 'mm' },
  longUnit: { inch: 'inch', metric: 'mm' },
};
