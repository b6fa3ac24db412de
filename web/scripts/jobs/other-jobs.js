// What the other jobs on this phone tell of the housing of the open one, when it is asked for.

import { get } from '../common/dom.js';
import { textElement } from '../common/parts.js';
import { putDrawing } from '../common/svg.js';
import { say } from '../common/words.js';

/** @import { Jobs } from './jobs.js' */
/** @import { Core } from '../python/core.js' */

/** @typedef {{ lines: string[], picture: string, same: number }} OtherJobs */

/** Which question was asked last: an answer to an older one has no place any more. */
let asked = 0;

/** @param {Core} core @param {Jobs} jobs which this browser may not keep */
export function offerOtherJobs(core, jobs) {
  get('other-jobs').hidden = !jobs.isKept;
  get('other-jobs-ask').addEventListener('click', () => compare(core, jobs));
}

/** Nothing of an answer stays when the job changes hands. */
export function forgetOtherJobs() {
  asked += 1;
  show({ lines: [], picture: '', same: 0 });
}

/** @param {Core} core @param {Jobs} jobs */
async function compare(core, jobs) {
  asked += 1;
  const mine = asked;
  show({ lines: [say('files.working')], picture: '', same: 0 });
  try {
    const [here, ...others] = await jobs.all();
    const found = /** @type {OtherJobs} */ (await core.otherJobs(here ?? {}, others));
    if (mine === asked) show(found);
  } catch (error) {
    if (mine === asked) show({ lines: [String(error)], picture: '', same: 0 });
  }
}

/** @param {OtherJobs} found */
function show({ lines, picture }) {
  get('other-jobs-lines').replaceChildren(...lines.map((line) => textElement('li', line)));
  putDrawing(get('other-jobs-view'), picture);
}
