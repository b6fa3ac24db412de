// "Show it to the customer": the link, its QR code and the sheet on paper, made in a quiet moment after
// each answer, so that they are there when they are wanted and no typing waits for them.

import { copyOf } from '../common/copy.js';
import { get, make } from '../common/dom.js';
import { paintOrder, printAs, startOrder } from './order.js';
import { paintPaper } from './paper.js';
import { ADDRESS } from '../common/release.js';
import { putDrawing } from '../common/svg.js';
import { say } from '../common/words.js';

/** @import { Core } from '../python/core.js' */
/** @import { Fields } from '../form/form.js' */
/** @import { Order } from './order.js' */
/** @import { Paper } from './paper.js' */
/** @import { PhotoOffer } from '../photos/offer.js' */

/** @typedef {{ state: 'share', fragment: string, trouble: string, paper: Paper, order: Order | null }} Shared */

const QUIET_MS = 1200;
const HERE = new URL('..', import.meta.url);

/** Who can open a link to this page: everybody, this network, or this machine alone.
 * @param {URL} address @returns {'all' | 'network' | 'machine'} */
function reachOf({ protocol, hostname }) {
  const host = hostname.replace(/^\[|\]$/g, '');
  if (!protocol.startsWith('http') || host === '::1' || /^127\.|(^|\.)localhost$/.test(host)) {
    return 'machine';
  }
  const isPrivate =
    /^10\.|^192\.168\.|^169\.254\.|^172\.(1[6-9]|2\d|3[01])\.|\.(local|lan|home|internal)$/.test(host) ||
    (host.includes(':') && /^f[cde]/.test(host)) ||
    !/[.:]/.test(host);
  return isPrivate ? 'network' : 'all';
}

/** @param {URL} address */
function reachNote(address) {
  const reach = reachOf(address);
  return reach === 'all' ? '' : say(`share.reach.${reach}`);
}

export class Share {
  /** @type {Core} */
  #core;

  /** @type {() => Fields} */
  #readForm;

  /** @type {PhotoOffer | undefined} */
  #photos;

  #timer = 0;

  /** Counts the changes of the form. */
  #version = 0;

  /** What is being made, or was made last; null when the form has changed since.
   * @type {Promise<boolean> | null} */
  #made = null;

  #link = '';

  /** @param {Core} core @param {() => Fields} readForm @param {PhotoOffer} [photos] */
  constructor(core, readForm, photos) {
    this.#core = core;
    this.#readForm = readForm;
    this.#photos = photos;
    get('share-send').hidden = typeof navigator.share !== 'function';
    this.#onPress('share-send', () => this.#send());
    this.#onPress('share-copy', () => this.#copy());
    this.#onPress('share-qr', () => this.#showQr());
    this.#onPress('share-print', () => printAs('sheet'));
    this.#onPress('order-print', () => printAs('order'));
    startOrder();
  }

  /** What was made of the form holds no longer. */
  expire() {
    this.#version += 1;
    this.#made = null;
    clearTimeout(this.#timer);
    document.documentElement.dataset.share = 'stale';
    get('qr').hidden = true;
  }

  /** There is an answer again, or none any more. @param {boolean} isAnswered */
  renew(isAnswered) {
    this.expire();
    get('share').hidden = !isAnswered;
    this.#tell('');
    if (isAnswered) this.#timer = setTimeout(() => this.#make(), QUIET_MS);
    else document.documentElement.dataset.share = 'none';
  }

  /** @param {string} id @param {() => unknown} act */
  #onPress(id, act) {
    get(id).addEventListener('click', async () => {
      if (await this.#make()) await act();
    });
  }

  /** Make link, code and sheet, unless they are there; tells whether they are. */
  #make() {
    clearTimeout(this.#timer);
    this.#made ??= this.#makeNow();
    return this.#made;
  }

  async #makeNow() {
    const version = this.#version;
    const isStale = () => version !== this.#version;
    try {
      /** @type {Shared | null} */
      const shared = await this.#core.share(this.#readForm());
      if (isStale() || shared?.state !== 'share') return false;
      const link = shared.fragment ? linkTo(shared.fragment) : '';
      const code = link ? await this.#core.drawQr(link) : null;
      const pictures = await this.#pictures(shared.paper);
      if (isStale()) return false;
      this.#show(shared, link, code?.svg ?? '', pictures);
      return true;
    } catch (error) {
      if (isStale()) return false;
      this.#made = null;
      const why = error instanceof Error ? error.message : String(error);
      this.#tell(say('share.failed', { why }));
      return false;
    }
  }

  /** The pictures of its photos that are on this phone, ready to be printed. @param {Paper} paper
   * @returns {Promise<Record<string, HTMLImageElement>>} */
  async #pictures({ photos = [] }) {
    if (!photos.length || !this.#photos) return {};
    const names = photos.map(({ name }) => name);
    const found = await this.#photos
      .bring()
      .then((photos) => photos.addresses(names))
      // The sheet says of each that it is not here.
      .catch(() => /** @type {Record<string, string>} */ ({}));
    const ready = names
      .filter((name) => found[name])
      .map(async (name) => {
        const picture = make('img', { src: found[name], alt: '' });
        await picture.decode();
        return [name, picture];
      });
    return Object.fromEntries(await Promise.all(ready));
  }

  /** @param {Shared} shared @param {string} link @param {string} svg empty where it is too long for one
   * @param {Record<string, HTMLImageElement>} pictures */
  #show({ paper, order, trouble }, link, svg, pictures) {
    this.#link = link;
    const field = /** @type {HTMLInputElement} */ (get('share-link'));
    field.value = link;
    for (const id of ['share-send', 'share-copy']) {
      /** @type {HTMLButtonElement} */ (get(id)).disabled = !link;
    }
    /** @type {HTMLButtonElement} */ (get('share-qr')).disabled = !svg;
    putDrawing(get('qr-code'), svg);
    const note = link ? reachNote(new URL(link)) : '';
    paintPaper(get('paper'), paper, svg ? { address: link, svg, note } : null, pictures);
    paintOrder(get('order-paper'), order);
    const told = link ? [note, svg ? '' : say('share.no_qr')] : [trouble];
    this.#tell(told.filter(Boolean).join(' '));
    document.documentElement.dataset.share = 'ready';
  }

  async #send() {
    try {
      await navigator.share({ title: say('share.title'), url: this.#link });
    } catch (error) {
      // The person changed his mind: nothing to tell.
      if (!(error instanceof DOMException && error.name === 'AbortError')) {
        this.#tell(say('share.failed', { why: String(error) }));
      }
    }
  }

  async #copy() {
    const isCopied = await copyOf(/** @type {HTMLInputElement} */ (get('share-link')));
    this.#tell(say(isCopied ? 'share.copied' : 'share.marked'));
  }

  #showQr() {
    get('qr').hidden = false;
    get('qr').scrollIntoView({ block: 'nearest' });
  }

  /** @param {string} text */
  #tell(text) {
    get('share-status').textContent = text;
  }
}

/** It names no language: the one who opens it has his own. @param {string} fragment */
function linkTo(fragment) {
  const address = new URL('view.html', ADDRESS || HERE);
  address.hash = fragment;
  return address.href;
}
