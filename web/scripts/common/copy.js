// What stands in a field, to be pasted elsewhere.

/** Copy it. That takes https, and leave: without them it is marked in its field, to be copied by hand.
 * @param {HTMLInputElement | HTMLTextAreaElement} field @returns {Promise<boolean>} whether it was copied */
export async function copyOf(field) {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    field.focus();
    field.select();
    return false;
  }
}
