// The core, as the page sees it: one function for each thing that it can be asked.

import { startMessenger } from './messenger.js';

/** @import { Options } from './messenger.js' */
/** @import { Fields } from '../form/form.js' */

/** @typedef {ReturnType<typeof startCore>} Core */

/** Start it. What it is asked while it starts waits. @param {Options} options */
export function startCore(options) {
  const messenger = startMessenger(options);
  return {
    /** What the page shows for a form; null when a newer question overtook it. @param {Fields} form */
    answer: (form) => messenger.ask({ form }),
    /** The practice housing. @param {Fields} form */
    practise: (form) => messenger.ask({ practice: form }),
    /** A pupil's work as a link. @param {{ set: string, name: string, work: Fields[] }} work */
    sendResults: (work) => messenger.askSurely({ send_results: work }),
    /** What pupils' links come to. @param {string} lines */
    openResults: (lines) => messenger.askSurely({ open_results: lines }),
    /** What a link comes to when it is worked out again. @param {string} fragment */
    openLink: (fragment) => messenger.ask({ link: fragment }),
    /** Link and sheet of a form, when nothing else is asked. @param {Fields} form */
    share: (form) => messenger.askLater({ share: form }),
    /** What leads through a sweep. @param {Fields} form @param {string} at the sweep's place */
    guideSweep: (form, at) => messenger.askSurely({ guide: { form, at } }),
    /** Jobs as the text of a file, with pictures, which are base64. @param {{ forms: Fields[], pictures: string[] }} asked */
    saveJobs: (asked) => messenger.askSurely({ export: asked }),
    /** The readings of a job as CSV. @param {Fields} form */
    saveReadings: (form) => messenger.askSurely({ csv: form }),
    /** What other jobs tell of the housing of one. @param {Fields} here @param {Fields[]} others */
    otherJobs: (here, others) => messenger.askSurely({ memory: { here, others } }),
    /** The reading of a dial in a photo, with the form it stands beside. @param {object} asked */
    readDial: (asked) => messenger.askSurely({ dial: asked }),
    /** What a sweep on film is asked, piece by piece. @param {object} asked */
    readFilm: (asked) => messenger.askSurely({ film: asked }),
    /** The jobs in the text of a file that are not here. @param {string} text @param {Fields[]} here */
    openFile: (text, here) => messenger.askSurely({ import: { text, here } }),
    /** What jobs have told of a rig's scatter. @param {{ units: string, sweeps: object[] }} asked
     * @returns {Promise<{ text: string, offer: string }>} */
    learned: (asked) => messenger.askSurely({ rig_learned: asked }),
    /** The rig in a form, as a file and as a link. @param {Fields} form */
    rigOut: (form) => messenger.askSurely({ rig_out: form }),
    /** The rig in the text of a file or in a fragment. @param {string} text */
    rigIn: (text) => messenger.askSurely({ rig_in: text }),
    /** A QR code of a text; null when a newer one overtook it. @param {string} text */
    drawQr: (text) => messenger.drawQr(text),
    quickenNextStart: () => messenger.quickenNextStart(),
    stop: () => messenger.stop(),
  };
}
