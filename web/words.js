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
      'Ready to work without a signal. A newer release is ready: take it now, or it is taken the next time the page is opened.',
    'update-failed': (/** @type {string} */ why) =>
      `Ready to work without a signal. A newer release could not be kept, and this one stays: ${why}`,
    'update-taken': () =>
      'Ready to work without a signal. A newer release was taken in another window; this one goes on with the older, until it is loaded again.',
    notTaken: (/** @type {string} */ why) =>
      `The newer release was not taken, since what is typed could not be kept (${why}). Save the job to a file first.`,
    nothingKept: 'this browser does not store it',
  },
  unnamed: 'Unnamed job',
  copyOf: (/** @type {string} */ name) => `${name}, copy`,
  kept: 'Kept on this phone as you type.',
  keptForNow:
    'Kept on this phone as you type. The browser may clear it if the page is not used for long: put it on the home screen.',
  notKept: (/** @type {string} */ why) =>
    `NOT KEPT: this browser does not store what you type (${why}). Write the readings down.`,
  files: {
    working: 'A moment …',
    saved: (/** @type {string} */ name, /** @type {string} */ told) => `${told} File: ${name}`,
    tooLarge: 'This file is larger than any of ours, and was not opened.',
    failed: (/** @type {string} */ why) => `That did not work: ${why}`,
  },
  ticked: (/** @type {number} */ n, /** @type {number} */ of) => `${n} of ${of}`,
  naming: 'Name of this round',
  namingFirst: 'Name of this round; offset dowels that were in already',
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
  newerNextTime:
    'Ready to work without a signal. A newer release has come; it is taken the next time the page is opened.',
  turnToMark: 'Turn to a mark',
  outOfOrder: 'One thing above is not right yet.',
  severalOutOfOrder: (/** @type {number} */ n) => `${n} things above are not right yet.`,
  share: {
    title: 'What was measured on your bellhousing',
    reach: {
      all: '',
      network: 'This page stands at a private address: the link opens on this network only.',
      machine: 'This page stands at an address of this machine alone: the link opens here only.',
    },
    noQr: 'The link is too long for a QR code.',
    copied: 'The link is copied.',
    marked: 'This browser does not let the page copy. The link is marked: copy it by hand.',
    failed: (/** @type {string} */ why) => `That did not work: ${why}`,
  },
  unit: { inch: 'thou', metric: 'mm' },
  longUnit: { inch: 'inch', metric: 'mm' },
};
