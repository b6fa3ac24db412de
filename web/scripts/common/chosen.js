// What was chosen on this phone and is the phone's, not a job's; kept where the browser keeps anything.

/** What was kept under a name; null where nothing was, or storage is refused: as for the first time.
 * @param {string} name */
export function recall(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Where storage is refused, what was chosen holds until the page is left. @param {string} name @param {string} text */
export function remember(name, text) {
  try {
    localStorage.setItem(name, text);
  } catch {
    // See above.
  }
}
