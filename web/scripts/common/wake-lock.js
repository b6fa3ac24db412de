// Keeps the screen from going dark while someone lies under a car with both hands at the crank.

/** @typedef {{ release: () => Promise<void> }} Lock */

export class Awake {
  /** @type {Lock | null} */
  #lock = null;

  #wanted = false;

  /** @param {(isAwake: boolean) => void} onChange told whether the screen is kept awake */
  constructor(onChange) {
    this.onChange = onChange;
    document.addEventListener('visibilitychange', () => {
      // The browser lets go of it when the page is out of sight.
      if (this.#wanted && document.visibilityState === 'visible') this.#take();
    });
  }

  start() {
    this.#wanted = true;
    return this.#take();
  }

  async stop() {
    this.#wanted = false;
    const held = this.#lock;
    this.#lock = null;
    await held?.release();
  }

  async #take() {
    /** @type {{ request: (type: 'screen') => Promise<Lock> } | undefined} */
    const wakeLock = navigator.wakeLock; // not there on a plain http address and in older browsers
    if (!wakeLock) return this.onChange(false);
    try {
      const lock = await wakeLock.request('screen');
      const before = this.#lock;
      this.#lock = this.#wanted ? lock : null;
      // It may have been left meanwhile, or taken twice.
      await (this.#wanted ? before : lock)?.release();
      this.onChange(true);
    } catch {
      this.onChange(false); // refused, as a phone does that saves its battery: it is told
    }
  }
}
