// Starts Python's worker while the rest of the page is still being read.

export function newWorker() {
  return new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
}

let early = typeof Worker === 'function' ? newWorker() : null;
early?.addEventListener('error', (event) => {
  event.preventDefault();
  early = null; // whoever wants a worker makes a new one, and sees the error for himself
});

/** Give the worker that was started early to the first who asks; it says nothing unless asked. */
export function takeWorker() {
  const taken = early ?? newWorker();
  early = null;
  return taken;
}
