// Faults of the practice page, each at its field.

/** @param {HTMLElement} field */
function faultPlace(field) {
  const around = /** @type {HTMLElement} */ (field.closest('.field') ?? field.parentElement);
  const place = around.querySelector('.practice-fault') ?? document.createElement('p');
  place.className = 'fault practice-fault';
  place.setAttribute('role', 'status');
  around.append(place);
  return place;
}

/** @param {HTMLElement} field @param {string} text */
export function markFault(field, text) {
  field.setAttribute('aria-invalid', 'true');
  faultPlace(field).textContent = text;
}

export function clearFaults() {
  for (const place of document.querySelectorAll('.practice-fault')) place.textContent = '';
  for (const field of document.querySelectorAll('[aria-invalid]')) field.removeAttribute('aria-invalid');
}
