// Tells of a silence that has lasted too long.

/** Seconds are counted one by one: a phone that slept has not waited.
 * @param {number} patience seconds @param {() => void} onSilence called each second after those */
export function watch(patience, onSilence) {
  let quietSeconds = 0;
  const timer = setInterval(() => {
    if (++quietSeconds > patience) onSilence();
  }, 1000);
  return {
    heard() {
      quietSeconds = 0;
    },
    stop() {
      clearInterval(timer);
    },
  };
}
