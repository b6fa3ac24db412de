// Bytes of pictures as text and back.

/** An address that shows a picture, with its bytes as base64 behind the comma.
 * @param {Uint8Array<ArrayBuffer>} bytes @returns {Promise<string>} */
export function urlOf(bytes) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(new Blob([bytes], { type: 'image/jpeg' }));
  });
}

/** @param {string} text base64 */
export function fromBase64(text) {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}

/** A function takes so many arguments in every browser. */
const PIECE = 8192;

/** @param {Uint8Array} bytes */
export function toBase64(bytes) {
  let text = '';
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  }
  return btoa(text);
}
