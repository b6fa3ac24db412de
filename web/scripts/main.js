// Starts Python, asks it anew whenever the form changes, paints what comes back, and has the page
// kept for use without a signal.

// First: what goes on while the page is being drawn.
import './python/first-worker.js';
import './jobs/opened.js';
import { get } from './common/dom.js';
import { changeForm, fillForm, readForm, startForm, takeBack } from './form/form.js';
import { Files } from './jobs/files.js';
import { startHand } from './form/thumb-keys.js';
import { startTurnedView } from './report/turned-view.js';
import { startLayout } from './form/layout.js';
import { holdRelease } from './common/release-lock.js';
import { Jobs } from './jobs/jobs.js';
import { forgetOtherJobs, offerOtherJobs } from './jobs/other-jobs.js';
import { offerGuide } from './guide/guide-button.js';
import { startCore } from './python/core.js';
import { tellBreak } from './python/download-words.js';
import { startMessenger } from './python/messenger.js';
import { keepForOffline, takeUpdate } from './common/offline.js';
import { Known } from './report/known.js';
import { PhotoOffer } from './photos/offer.js';
import { HandOn } from './rigs/hand-on.js';
import { Rigs } from './rigs/rigs.js';
import { Share } from './report/share.js';
import { say } from './common/words.js';

// For tests, which start a Python of their own, fill the form at once, and make links of odd answers.
export { fillForm, readForm, Share, startMessenger };

const root = document.documentElement;
const status = get('status');
const progress = /** @type {HTMLProgressElement} */ (get('progress'));
const start = get('start');
const offline = get('offline');
const update = get('update');
const take = /** @type {HTMLButtonElement} */ (get('update-take'));

// boot.js has found that the page is wanted in another language: nothing is begun here.
if (document.documentElement.hasAttribute('data-leaving')) await new Promise(() => undefined);

holdRelease(new URL('./', import.meta.url));

/** @param {'ready' | 'failed'} state @param {string} text */
function started(state, text) {
  root.dataset.python = state;
  status.textContent = text;
  status.className = state === 'failed' ? 'fault' : '';
  progress.hidden = true;
  start.hidden = state === 'ready';
  // Only now, so that keeping the files does not compete with the first answer.
  keepForOffline((kept, why) => {
    root.dataset.offline = kept;
    offline.textContent = say(`offline.${kept}`, { why });
    update.hidden = kept !== 'update-waiting' && kept !== 'update-taken';
    if (kept === 'ready') core.quickenNextStart();
  });
}

const core = startCore({
  onProgress(loaded, total, isBroken) {
    progress.max = total;
    progress.value = loaded;
    tellBreak(status, isBroken);
  },
  onReady: () => started('ready', say('index.ready')),
  onFailed(why) {
    started('failed', why);
    known.unanswered();
  },
});

const rigs = new Rigs(core);
const jobs = new Jobs(
  ask,
  (isChosen) => (coming = { isChosen }),
  (answer) => {
    forgetOtherJobs();
    known.come(answer);
  },
  rigs,
);
const known = new Known((answer) => jobs.keepAnswer(answer));

/** A job that came back, whose place on the page is still to be shown. @type {{ isChosen: boolean } | null} */
let coming = null;

const photos = new PhotoOffer({
  readForm,
  changeForm,
  readDial: (asked) => core.readDial({ ...asked, form: readForm() }),
  readFilm: core.readFilm,
});
const share = new Share(core, () => ({ ...readForm(), name: jobs.name }), photos);

offerGuide(core, readForm);

async function ask() {
  rigs.show();
  share.expire();
  photos.look();
  const form = readForm();
  const before = known.before(form);
  if (before) openAtStage(before.stage);
  try {
    const answer = await core.answer(form);
    if (answer === null) return;
    known.answered(form, answer);
    share.renew(answer.state === 'answer');
    if (answer.state === 'answer') jobs.setStage(answer.sheet.verdict);
    // While something typed is wrong, what the job told of its rig stays.
    if (answer.state !== 'faults') rigs.answered(jobs.id, form, answer.rig);
    openAtStage(answer.stage);
    performance.mark('first-answer');
  } catch (error) {
    // When Python is gone for good, onFailed has said so already.
    if (root.dataset.python !== 'failed') {
      start.hidden = false;
      status.className = 'fault';
      status.textContent = String(error);
    }
  }
}

/** A job that comes back is opened where its work goes on. Who has scrolled or begun to type since the
 * page was opened is left where he is. @param {string} stage */
function openAtStage(stage) {
  if (!coming) return;
  const hasMoved = scrollY > 0 || document.activeElement !== document.body;
  const isFree = coming.isChosen || !hasMoved;
  coming = null;
  const places = { fit: 'answer', trim: 'answer', close: 'answer', recheck: 'add-round' };
  const place = places[/** @type {keyof typeof places} */ (stage)];
  if (place && isFree) get(place).scrollIntoView({ block: place === 'answer' ? 'start' : 'end' });
}

// What stands on the screen in full is not said at its foot as well.
new IntersectionObserver(([seen]) => {
  get('foot').classList.toggle('said-above', seen?.isIntersecting ?? false);
}).observe(get('verdict'));

take.addEventListener('click', async () => {
  take.disabled = true;
  try {
    if (!jobs.isKept) throw new Error(say('offline.nothing_kept'));
    await jobs.keepNow();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    offline.textContent = say('offline.not_taken', { why });
    take.disabled = false;
    return;
  }
  await takeUpdate();
});

startForm(() => {
  jobs.keep();
  ask();
});
performance.mark('form-ready');
startHand(takeBack);
startLayout();
startTurnedView();
ask();
document.getElementById('job-name')?.addEventListener('input', ask); // it stands on the sheet
const isKept = await jobs.start();
new Files(core, jobs, photos);
offerOtherJobs(core, jobs);
if (isKept) photos.start();
new HandOn(core, rigs);
