// What differs between two states of the form, and one state changed by that.

/** @typedef {Record<string, string>} Fields every named field with its text */
/** @typedef {Record<string, string | null>} Changes null: the field is gone */

/** @param {Fields} before @param {Fields} after @returns {Changes} */
export function differences(before, after) {
  const changes = /** @type {Changes} */ ({});
  for (const [name, text] of Object.entries(after)) if (before[name] !== text) changes[name] = text;
  for (const name of Object.keys(before)) if (!(name in after)) changes[name] = null;
  return changes;
}

/** @param {Fields} fields @param {Changes} changes @returns {Fields} */
export function changed(fields, changes) {
  const merged = /** @type {Fields} */ ({ ...fields });
  for (const [name, text] of Object.entries(changes)) {
    if (text === null) delete merged[name];
    else merged[name] = text;
  }
  return merged;
}
