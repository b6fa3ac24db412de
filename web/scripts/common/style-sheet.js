// A style sheet of what is brought when it is wanted.

import { make } from './dom.js';

/** Bring it; where it can't be had the rest works without it. @param {URL} address */
export function bringStyle(address) {
  return new Promise((resolve) => {
    const link = make('link', { rel: 'stylesheet', href: address.href });
    link.addEventListener('load', resolve);
    link.addEventListener('error', resolve);
    document.head.append(link);
  });
}
