/** @param {number} ms @returns {Promise<void>} */
export function waited(ms) {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
