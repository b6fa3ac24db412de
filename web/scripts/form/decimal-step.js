// A reading moved by one step of the dial: arithmetic of decimals as they are written, without a
// computer's rounding. What the reading means is Python's business.

const DECIMAL = /^([+\-−–]?)(\d{0,9})(?:[.,](\d{0,9}))?$/;

/** @typedef {{ units: bigint, places: number, isSigned: boolean }} Decimal */

/** @param {string} text @returns {Decimal | null} */
function decimalOf(text) {
  const found = DECIMAL.exec(text.trim().replace(/^([+\-−–])\s+/, '$1'));
  if (!found) return null;
  const [, sign = '', whole = '', part = ''] = found;
  if (!whole && !part && (sign || /[.,]/.test(text))) return null;
  const size = BigInt(`${whole}${part}` || '0');
  const isMinus = sign !== '' && sign !== '+';
  return { units: isMinus ? -size : size, places: part.length, isSigned: sign !== '' };
}

/** @param {Decimal} decimal @param {number} places */
function scaled({ units, places: had }, places) {
  return units * 10n ** BigInt(places - had);
}

/** @param {bigint} units @param {number} places @param {string} mark */
function written(units, places, mark) {
  const digits = String(units < 0n ? -units : units).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const part = digits.slice(digits.length - places).replace(/0+$/, '');
  return `${units < 0n ? '-' : ''}${whole}${part ? mark + part : ''}`;
}

/**
 * The text one step on; null where there is no number to move.
 * @param {string} text a blank counts as 0
 * @param {string} step what is read off the dial at least
 * @param {1 | -1} way
 * @param {string} mark the decimal mark, where the text has none of its own
 * @param {string | null} turn the reading of a whole turn, where the dial's numbers go all the way round
 */
export function moved(text, step, way, mark, turn = null) {
  const [at, by] = [decimalOf(text), decimalOf(step)];
  const round = turn === null ? null : decimalOf(turn);
  if (!at || !by || by.units <= 0n || (turn !== null && (!round || round.units <= 0n))) return null;
  const places = Math.max(at.places, by.places, round?.places ?? 0);
  let units = scaled(at, places) + BigInt(way) * scaled(by, places);
  // What has a sign is taken as it stands, and goes on past zero with it.
  if (round && !at.isSigned) {
    const whole = scaled(round, places);
    units = ((units % whole) + whole) % whole;
  }
  return written(units, places, /[.,]/.exec(text)?.[0] ?? mark);
}
