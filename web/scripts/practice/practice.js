// The practice page: a housing with a hidden error, whose crank can be turned.
//
// Python tells what there is to be seen at every degree of the crank, as angles and texts; this module
// picks the entry of the degree at which the crank stands. It knows no sign of any reading.

import { clearActs, fieldOfAct, offerActs, readAct } from './acts.js';
import { Crank } from './crank.js';
import { clearFaults, markFault } from './faults.js';
import { get } from '../common/dom.js';
import { holdRelease } from '../common/release-lock.js';
import { startCore } from '../python/core.js';
import { tellBreak } from '../python/download-words.js';
import { keepForOffline } from '../common/offline.js';
import { paint } from '../report/paint.js';
import { startTurnedView } from '../report/turned-view.js';
import { Readings } from '../form/readings.js';
import { Lengths } from './lengths.js';
import { keepDrawing } from '../common/svg.js';
import { nameUnits } from '../common/units.js';
import { say } from '../common/words.js';
import { Course, letCopy } from './course.js';
import { drawn, showResults, startTeacher } from './teacher.js';
import { paintTruth } from './truth.js';

/** @import { Act, Choice, Offered } from './acts.js' */
/** @import { Shown } from './lengths.js' */
/** @import { Truth } from './truth.js' */

/**
 * @typedef {object} Entry what there is to be seen at one degree
 * @property {string} crank how the crank is turned, and so on: SVG transforms
 * @property {string} needle
 * @property {string} counter
 * @property {string} spoken
 * @property {string} [field] where a reading can be noted: its field, its text, and the button's
 * @property {string} [typed]
 * @property {string} [note]
 *
 * @typedef {object} Practice
 * @property {string} title
 * @property {string} level
 * @property {string} round
 * @property {string} dial
 * @property {string} crank
 * @property {1 | -1} sense
 * @property {string[]} positions
 * @property {number[]} stops
 * @property {Entry[]} turn
 * @property {Choice[]} sizes
 * @property {Offered[]} acts
 * @property {Shown[]} lengths
 * @property {string} droop
 * @property {number} highest_seed
 * @property {string | null} place which exercise of how many, in a set
 * @property {string[]} places of the exercises of a set
 * @property {Truth | null} truth
 */

const root = document.documentElement;
const main = /** @type {HTMLElement} */ (document.querySelector('main'));

const form = /** @type {HTMLFormElement} */ (get('form'));
const crank = new Crank(showCrank);
const noteButton = /** @type {HTMLButtonElement} */ (get('note'));
const seed = /** @type {HTMLInputElement} */ (get('seed'));
const level = /** @type {HTMLSelectElement} */ (get('level'));
const sag = /** @type {HTMLInputElement} */ (get('sag'));

const BEGINNING_SEED = '1';
const OF_AN_ACT = /^rounds\.\d+\.(act$|dowels\.|square\.)/;
/** Changes of these leave the readings as they are. */
const KEEPS_READINGS = ['exercise.positions', 'exercise.part', 'indicator.sag'];

/** @type {Practice | null} */
let practice = null;
/** The readings of each round, bore and face. @type {{ bore: Readings, face: Readings }[]} */
let rounds = [];
/** What was done before each round after the first, as typed. @type {Act[]} */
let acts = [];
let wantsTruth = false;
const course = new Course();
const lengths = new Lengths();
/** What was kept of an exercise and is not yet back in its fields. @type {Record<string, string> | null} */
let kept = null;
/** Counts the beginnings: what was asked for before one has no place after it. */
let beginnings = 0;

/** @param {Act[]} [done] */
function readForm(done = acts) {
  const texts = /** @type {Record<string, string>} */ ({});
  for (const [name, value] of new FormData(form)) texts[name] = String(value);
  // What is about to be put back counts as if it were there.
  for (const [name, text] of Object.entries(kept ?? {})) texts[name] ??= text;
  texts['exercise.rounds'] = String(done.length + 1);
  done.forEach((act, i) => {
    for (const [name, text] of Object.entries(act)) texts[`rounds.${i + 1}.${name}`] = text;
  });
  if (wantsTruth) texts['exercise.truth'] = '1';
  if (course.set) Object.assign(texts, { 'exercise.set': course.set, 'exercise.at': course.at });
  return texts;
}

// What Python says ------------------------------------------------------------------------------

// boot.js has found that the page is wanted in another language: nothing is begun here.
if (document.documentElement.hasAttribute('data-leaving')) await new Promise(() => undefined);

holdRelease(new URL('./', import.meta.url));
startTurnedView();
const core = startCore({
  onProgress(loaded, total, isBroken) {
    const progress = /** @type {HTMLProgressElement} */ (get('progress'));
    progress.max = total;
    progress.value = loaded;
    tellBreak(get('status'), isBroken);
  },
  onReady: () => started('ready', say('index.ready')),
  onFailed: (why) => started('failed', why),
});

/** @param {'ready' | 'failed'} state @param {string} text */
function started(state, text) {
  root.dataset.python = state;
  get('status').textContent = text;
  get('status').className = state === 'failed' ? 'fault' : '';
  get('progress').hidden = true;
  get('start').hidden = state === 'ready';
  keepForOffline((kept, why) => {
    root.dataset.offline = kept;
    // What stands here is not kept, so nothing is taken over while it is being worked at.
    get('offline').textContent =
      kept === 'update-waiting' ? say('offline.next_time') : say(`offline.${kept}`, { why });
    if (kept === 'ready') core.quickenNextStart();
  });
}

/** Ask, and show what comes back; tells whether it could be done, null where it was overtaken.
 * @param {Act[]} [done] */
async function ask(done = acts) {
  course.keep(readForm());
  const beginning = beginnings;
  try {
    const shown = await core.practise(readForm(done));
    // What was begun meanwhile may wait for what was kept of it, and not have asked yet.
    if (shown === null || beginning !== beginnings) return null;
    const { practice: found, answer } = shown;
    if (found.state === 'faults') {
      showFaults(found.faults);
      return false;
    }
    acts = done;
    practice = found;
    showPractice(found);
    paint(answer);
    if (kept) putBack(found, kept);
    return true;
  } catch (error) {
    if (beginning !== beginnings) return null;
    // When Python is gone for good, onFailed has said so already.
    if (root.dataset.python !== 'failed') {
      get('start').hidden = false;
      get('status').className = 'fault';
      get('status').textContent = String(error);
    }
    return false;
  }
}

/** What is about to be done has its fault at its own fields. @param {{ field: string, text: string }[]} faults */
function showFaults(faults) {
  for (const { field, text } of faults) {
    const found = fieldOfAct(field) ?? form.elements.namedItem(field);
    markFault(found instanceof HTMLElement ? found : seed, text);
  }
}

/** @param {Practice} shown */
function showPractice(shown) {
  clearFaults();
  get('title').textContent = shown.title;
  get('level-text').textContent = shown.level;
  get('place').textContent = shown.place ?? '';
  for (const id of ['in-set', 'finish']) get(id).hidden = !shown.place;
  for (const id of ['alone', 'truth-part', 'teacher']) get(id).hidden = Boolean(shown.place);
  get('round').textContent = shown.round;
  keepDrawing(get('dial-view'), shown.dial);
  keepDrawing(get('crank-view'), shown.crank);
  offerActs(shown.acts, shown.sizes);
  lengths.offer(shown.lengths);
  while (rounds.length <= acts.length) addRound(rounds.length, shown.round);
  for (const { bore, face } of rounds) {
    bore.show(shown.positions);
    face.show(shown.positions);
  }
  const isOld = acts.length > 0 && !isBegun(readings(rounds.length - 1).bore);
  get('old-answer').hidden = !isOld;
  for (const id of ['shown', 'strip-verdict', 'strip-headline']) get(id).classList.toggle('stale', isOld);
  paintTruth(shown.truth);
  showCrank();
}

// The crank -------------------------------------------------------------------------------------

/** Show what there is to be seen where the slider stands. */
function showCrank() {
  const entry = practice?.turn[crank.degree];
  if (!entry) return;
  for (const what of /** @type {const} */ (['crank', 'needle', 'counter'])) {
    document.querySelector(`[data-turns="${what}"]`)?.setAttribute('transform', entry[what]);
  }
  crank.slider.setAttribute('aria-valuetext', entry.spoken);
  noteButton.disabled = !entry.field;
  noteButton.textContent = entry.note ?? say('exercise.to_mark');
}

/** The dial is on something else: until Python tells its turn, nothing can be noted. */
function awaitTurn() {
  if (practice) practice = { ...practice, turn: [] };
  noteButton.disabled = true;
}

// Rounds ----------------------------------------------------------------------------------------

/** @param {number} n */
function readings(n) {
  return /** @type {{ bore: Readings, face: Readings }} */ (rounds[n]);
}

/** @param {number} n @param {string} name */
function addRound(n, name) {
  const part = document.createElement('details');
  part.open = true;
  const summary = document.createElement('summary');
  summary.append(Object.assign(document.createElement('h3'), { textContent: name }));
  part.append(summary);
  for (const old of get('rounds').querySelectorAll('details')) {
    old.open = false;
    old.className = 'old-round';
  }
  const [bore, face] = /** @type {const} */ (['bore', 'face']).map((what) => {
    const place = document.createElement('div');
    part.append(place);
    return new Readings(place, `rounds.${n}.${what}`, say(`what.${what}`));
  });
  get('rounds').append(part);
  rounds.push(/** @type {{ bore: Readings, face: Readings }} */ ({ bore, face }));
  showPart();
}

/** Whether anything was noted. @param {Readings} swept */
function isBegun({ place }) {
  return [...place.querySelectorAll('input')].some((input) => input.value);
}

/** The face has fields where the dial is on it or was. */
function showPart() {
  const part = readForm()['exercise.part'];
  for (const { face } of rounds) {
    face.place.hidden = part !== 'face' && !isBegun(face);
  }
}

/** The same housing again, or another, from the beginning. */
function begin() {
  main.inert = false;
  clear();
  ask();
}

function clear() {
  beginnings += 1;
  kept = null;
  rounds = [];
  acts = [];
  wantsTruth = false;
  get('rounds').replaceChildren();
  sag.value = '';
  lengths.clear();
  clearActs();
  crank.put(0);
  nameUnits(readForm().units);
}

/** Open an exercise of the set as it was left. The page waits: what is typed meanwhile would be lost. */
async function openInSet() {
  main.inert = true;
  course.isBack = false;
  clear();
  const beginning = beginnings;
  const fields = await course.take();
  if (beginning !== beginnings) return;
  kept = fields;
  for (const [name, text] of Object.entries(fields)) putText(name, text);
  for (let n = 1; `rounds.${n}.act` in fields; n++) acts.push(actOf(fields, n));
  nameUnits(readForm().units);
  const isShown = await ask();
  if (beginning !== beginnings) return;
  if (!isShown) course.isBack = true;
  main.inert = false;
}

/** What was done before a round. @param {Record<string, string>} fields @param {number} n */
function actOf(fields, n) {
  const own = Object.entries(fields).filter(([name]) => OF_AN_ACT.test(name) && name.startsWith(`rounds.${n}.`));
  return Object.fromEntries(own.map(([name, text]) => [name.replace(`rounds.${n}.`, ''), text]));
}

/** @param {string} name @param {string} text */
function putText(name, text) {
  const found = form.elements.namedItem(name);
  const isField = found instanceof HTMLInputElement || found instanceof HTMLSelectElement;
  if (isField || found instanceof RadioNodeList) found.value = text;
}

/** The readings that were kept, into the fields that are there now. @param {Practice} shown @param {Record<string, string>} fields */
function putBack({ positions }, fields) {
  kept = null;
  rounds.forEach((round, n) => {
    for (const what of /** @type {const} */ (['bore', 'face'])) {
      const sweeps = Object.keys(fields).filter((name) => name.startsWith(`rounds.${n}.${what}.closing.`));
      round[what].setCount(sweeps.length);
      round[what].show(positions);
    }
  });
  for (const [name, text] of Object.entries(fields)) putText(name, text);
  for (const { bore, face } of rounds) for (const swept of [bore, face]) swept.adopt();
  course.isBack = true;
  showPart();
  ask();
}

/** The exercise that the address names: texts, which Python checks. */
function readAddress() {
  const named = new URLSearchParams(location.hash.slice(1));
  course.set = named.get('set') ?? '';
  course.at = named.get('at') ?? '1';
  seed.value = (named.get('seed') ?? BEGINNING_SEED).slice(0, seed.maxLength);
  const wanted = named.get('level') ?? '1';
  level.value = [...level.options].some(({ value }) => value === wanted) ? wanted : '1';
}

function writeAddress() {
  const { set, at } = course;
  const alone = { seed: seed.value, level: level.value };
  const named = new URLSearchParams(set ? { set, at } : alone);
  history.replaceState(null, '', `#${named}`);
}

/** Any exercise, not to be foretold: drawn here, since Python knows no chance without a seed. */
function drawSeed() {
  seed.value = String(drawn(practice?.highest_seed ?? 999));
}

form.addEventListener('submit', (event) => event.preventDefault());
form.addEventListener('input', ({ target }) => {
  if (target === crank.slider) {
    crank.hold();
    return showCrank();
  }
  const name = target instanceof HTMLElement ? target.getAttribute('name') : null;
  if (name === 'exercise.part') {
    crank.put(0);
    showPart();
    awaitTurn();
  }
  if (target === seed || target === level) writeAddress();
  if (!name || /^(rounds|depth)\./.test(name) || KEEPS_READINGS.includes(name)) return ask();
  begin();
});
noteButton.addEventListener('click', () => {
  const entry = practice?.turn[crank.degree];
  const field = entry?.field ? form.elements.namedItem(entry.field) : null;
  if (!(field instanceof HTMLInputElement)) return;
  field.value = entry?.typed ?? '';
  field.dispatchEvent(new Event('input', { bubbles: true }));
});
get('back').addEventListener('click', () => practice && crank.step(-1, practice.stops));
get('on').addEventListener('click', () => practice && crank.step(1, practice.stops));
get('once-more').addEventListener('click', () => {
  if (!rounds.length) return;
  const { bore, face } = readings(rounds.length - 1);
  const swept = readForm()['exercise.part'] === 'face' ? face : bore;
  swept.setCount(swept.count + 1);
  crank.put(0);
  ask();
});
get('measure-droop').addEventListener('click', () => {
  sag.value = practice?.droop ?? '';
  ask();
});
get('fit').addEventListener('click', async () => {
  clearFaults();
  const wanted = [...acts, readAct()];
  const beginning = beginnings;
  let done;
  do done = await ask(wanted);
  while (done === null && beginning === beginnings); // something was typed meanwhile
  if (!done) return;
  crank.put(0);
  const bore = /** @type {HTMLInputElement} */ (form.querySelector('[name="exercise.part"]'));
  bore.checked = true;
  showPart();
  awaitTurn();
  await ask();
  document.querySelector('#bench .choice')?.scrollIntoView();
});
get('tell').addEventListener('click', () => {
  wantsTruth = true;
  ask();
});
get('new').addEventListener('click', () => {
  course.set = '';
  drawSeed();
  writeAddress();
  begin();
});
/** To another exercise of the set. @param {1 | -1} way */
function stepInSet(way) {
  const places = practice?.places ?? [];
  const at = places[places.indexOf(course.at) + way];
  if (!at) return;
  course.at = at;
  writeAddress();
  openInSet();
  get('title').scrollIntoView();
}
get('set-back').addEventListener('click', () => stepInSet(-1));
get('set-on').addEventListener('click', () => stepInSet(1));
get('send').addEventListener('click', () => course.send(core, practice?.places ?? []));
get('forget').addEventListener('click', async () => {
  if (!confirm(say('set.sure'))) return;
  await course.forget();
  openInSet();
});
letCopy('sent-link', 'copy-sent');
startTeacher(core, () => practice?.highest_seed ?? 999);

/** What the address asks for. */
function openAddress() {
  const results = /^#results=(.*)$/.exec(location.hash)?.[1];
  if (results) return showAlone(results);
  readAddress();
  writeAddress();
  if (course.set) openInSet();
  else begin();
}

/** Beside a pupil's results any exercise stands; the link stays in the address. @param {string} results */
function showAlone(results) {
  course.set = '';
  seed.value = BEGINNING_SEED;
  begin();
  showResults(results);
}
addEventListener('hashchange', openAddress);

crank.letDrag(() => practice?.sense ?? null);
openAddress();
