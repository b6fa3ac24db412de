// Lets a drawing show its movement, which the core drew: nothing moves by itself, nor for who wants no motion.

/** @param {HTMLElement} button hidden where there is nothing to be moved @param {HTMLElement} place */
export function offerMove(button, place) {
  /** @type {SVGAnimationElement[]} */
  const movements = [...place.querySelectorAll('animateTransform')];
  button.hidden = !movements.length || matchMedia('(prefers-reduced-motion: reduce)').matches;
  button.onclick = () => {
    for (const movement of movements) movement.beginElement();
  };
}
