// Limits and lists of the core. Written by web/build/core_values.py: change them there.

/** Characters of a link. */
export const LONGEST_LINK = 8000;

/** Bytes of a link that was unpacked. */
export const LONGEST_UNPACKED = 64000;

/** Characters of a line of figures. */
export const LONGEST_LINE = 200;

/** Characters of a text in a job. */
export const LONGEST_TEXT = 2000;

/** Bytes of a file. */
export const LONGEST_FILE = 10000000;

/** Bytes of a picture. */
export const LARGEST_PICTURE = 120000;

/** Photos of a job. */
export const MOST_PHOTOS = 60;

/** What stands behind the name of a reading, in the name of its photo's field. */
export const PHOTO = '.photo';

/** Rounds of a job. */
export const MOST_ROUNDS = 20;

/** Sweeps of a part. */
export const MOST_SWEEPS = 10;

/** Marks round the crank, at least. */
export const FEWEST_MARKS = 3;

/** Positions of a sweep. */
export const MOST_POSITIONS = 72;

/** Versions of links that are read. */
export const LINK_VERSIONS = /** @type {const} */ ([
  '1',
  '2',
  '3',
]);

/** What a result may be. */
export const VERDICTS = /** @type {const} */ ([
  'within',
  'outside',
  'undecided',
]);

/** What may stand over an answer. */
export const STANDINGS = /** @type {const} */ ([
  'within',
  'within_but_face',
  'within_but_pilot',
  'within_but_depth',
  'within_face_open',
  'within_pilot_open',
  'outside',
  'undecided',
  'again',
  'none',
]);

/** What an assembly has none of. */
export const LACKS = /** @type {const} */ ({
  converter: 'depth housing.pilot_bearing',
  transfer_case: 'depth housing.pilot_distance housing.pilot_bearing limits.pilot_offset stock.aim_for companions.pilot_bore checklist.starter_and_release',
  pump: 'depth housing.pilot_distance housing.pilot_bearing limits.pilot_offset stock.aim_for companions.pilot_bore',
  other: 'depth housing.pilot_distance housing.pilot_bearing limits.pilot_offset stock.aim_for companions.pilot_bore checklist.starter_and_release',
});

/** Limits that are usual for the main assembly alone. */
export const BELLHOUSING_LIMITS = /** @type {const} */ ([
  'limits.bore_offset',
  'limits.face_runout',
]);

/** Texts of a job. */
export const ABOUT = /** @type {const} */ ([
  'shop',
  'vehicle',
  'engine',
  'gearbox',
  'housing',
  'technician',
  'customer',
  'date',
  'notes',
]);

/** Figures of a link, of the job. */
export const JOB_FIGURES = /** @type {const} */ ([
  'unit',
  'limit_offset',
  'limit_tir',
  'limit_pilot',
  'stops',
]);

/** Figures of a link, of a round. */
export const ROUND_FIGURES = /** @type {const} */ ([
  'offset',
  'tir',
  'pm',
  'toward',
  'chance',
  'verdict',
  'face_runout',
  'face_pm',
  'face_limit',
  'face_verdict',
  'pilot_offset',
  'pilot_pm',
  'pilot_verdict',
  'dowel_offset',
  'dowel_aim',
  'other_offset',
  'other_aim',
]);

/** Lengths along the crank axis, in the order in which they are taken. */
export const LENGTHS = /** @type {const} */ ([
  'depth.to_face',
  'depth.to_pilot',
  'depth.pilot_length',
  'depth.to_bottom',
  'depth.to_hub_front',
  'depth.to_hub_rear',
  'depth.to_fingers',
  'depth.to_tip',
  'depth.journal_length',
  'depth.to_splines_front',
  'depth.to_splines_rear',
  'depth.to_bearing',
]);

/** Fields of a rig. */
export const RIG_FIELDS = /** @type {const} */ ([
  'units',
  'indicator.plus_when',
  'indicator.shows',
  'indicator.turn',
  'indicator.holder',
  'indicator.sag',
  'indicator.sag_allowance',
  'indicator.sag_date',
  'indicator.sag_bar',
  'indicator.sag_reach',
  'indicator.contact_angle_deg',
  'indicator.step',
  'indicator.accuracy',
  'indicator.repeatability',
]);

/** Short names of keys in a link. */
export const SHORT = /** @type {const} */ ({
  about: 'a',
  limits: 'b',
  source: 'c',
  rounds: 'd',
  vehicle: 'e',
  engine: 'f',
  gearbox: 'g',
  housing: 'h',
  technician: 'i',
  customer: 'j',
  date: 'k',
  notes: 'l',
  name: 'm',
  shop: '_',
  assembly: '}B',
});
