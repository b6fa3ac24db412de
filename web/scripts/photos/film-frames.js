// Frames of a film, one after the other: the browser is asked for the film at a time, and what it shows is
// drawn. The film is read from where the person has it, and is not kept.

import { waited } from '../common/waited.js';
import { say } from '../common/words.js';

/** So long a browser may take for one frame; a film that is broken in the middle never comes to it. */
const PATIENCE_MS = 20_000;
/** So long a browser may take to show a frame after it says that it went there; and so often in a row it may not
 * tell that it did, as while the page is hidden, until it is not waited for any more. */
const SHOWN_MS = 500;
const UNTOLD = 3;
/** Beyond the end of any film: a browser that does not know how long one is finds out. */
const BEYOND_S = 1e7;

export class Film {
  /** How often in a row it was not told that a frame is shown. */
  #untold = 0;

  /** @param {HTMLVideoElement} video @param {string} url */
  constructor(video, url) {
    this.video = video;
    this.url = url;
  }

  /** @param {Blob} file @param {number} smallest pixels of the shorter side */
  static async open(file, smallest) {
    if (!file.size) throw new Error(say('film.empty'));
    const video = document.createElement('video');
    video.muted = video.playsInline = true;
    video.preload = 'auto';
    const film = new Film(video, URL.createObjectURL(file));
    try {
      video.src = film.url;
      await film.#until('loadedmetadata');
      if (!Number.isFinite(video.duration)) await film.#goTo(BEYOND_S);
      if (!Number.isFinite(video.duration) || !video.videoWidth) throw new Error(say('film.not_a_film'));
      if (film.side < smallest) throw new Error(say('film.too_small', { low: smallest }));
      return film;
    } catch (error) {
      film.close();
      throw error;
    }
  }

  get duration() {
    return this.video.duration;
  }

  /** Of the square in the middle, in pixels. */
  get side() {
    return Math.min(this.video.videoWidth, this.video.videoHeight);
  }

  /** Show what there is at a time. @param {number} seconds */
  async show(seconds) {
    const isAwaited = this.#untold < UNTOLD && 'requestVideoFrameCallback' in this.video;
    /** @type {Promise<boolean>} */
    const shown = new Promise((resolve) => {
      if (isAwaited) this.video.requestVideoFrameCallback(() => resolve(true));
    });
    // There is no frame at the very end.
    await this.#goTo(Math.min(seconds, this.duration - 0.01));
    if (!isAwaited) return;
    const isShown = await Promise.race([shown, waited(SHOWN_MS).then(() => false)]);
    this.#untold = isShown ? 0 : this.#untold + 1;
  }

  /** Draw the middle of what is shown. @param {CanvasRenderingContext2D} pen on a square */
  draw(pen) {
    const { side, video } = this;
    const [left, top] = [(video.videoWidth - side) / 2, (video.videoHeight - side) / 2];
    pen.drawImage(video, left, top, side, side, 0, 0, pen.canvas.width, pen.canvas.height);
  }

  close() {
    this.video.removeAttribute('src');
    this.video.load();
    URL.revokeObjectURL(this.url);
  }

  /** @param {number} seconds */
  async #goTo(seconds) {
    const go = () => {
      this.video.currentTime = seconds;
    };
    const there = this.#until('seeked');
    // Firefox at times forgets what it is asked before it has a first frame.
    this.video.addEventListener('loadeddata', go);
    try {
      go();
      await there;
    } finally {
      this.video.removeEventListener('loadeddata', go);
    }
  }

  /** @param {'loadedmetadata' | 'seeked'} event @returns {Promise<void>} */
  #until(event) {
    const { video } = this;
    return new Promise((resolve, reject) => {
      const done = (/** @type {() => void} */ act) => {
        clearTimeout(timer);
        video.removeEventListener(event, right);
        video.removeEventListener('error', wrong);
        act();
      };
      const right = () => {
        if (!video.seeking) done(resolve); // else it was asked again meanwhile
      };
      const wrong = () => done(() => reject(new Error(say('film.not_a_film'))));
      const timer = setTimeout(() => done(() => reject(new Error(say('film.stuck')))), PATIENCE_MS);
      video.addEventListener(event, right);
      video.addEventListener('error', wrong);
    });
  }
}
