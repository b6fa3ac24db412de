// Sees to it, first, that the page comes in the language that is wanted: chosen by hand, or else the
// browser's. And says why, where the page can't start: this browser is too old for its scripts, or one
// did not come. So this is a classic script in ES5, which the oldest browser reads, and the build puts it
// into the head of every page: it is there even when an old index.html asks for a release that is gone,
// and nothing is drawn in the wrong language.
(function () {
  'use strict';

  var CHOICE = 'sweepsheet language';
  var page = document.documentElement;
  // The customer's view tells by another name how far it is, and in another place what is wrong.
  var isView = page.hasAttribute('data-view');
  var state = isView ? 'data-view' : 'data-python';

  // The language ------------------------------------------------------------------------------

  /** The address of this page in a language, or null. @param {string} code */
  function pageIn(code) {
    var known = document.querySelectorAll('link[hreflang]');
    for (var i = 0; i < known.length; i++) {
      var link = /** @type {HTMLLinkElement} */ (known[i]);
      if (link.hreflang === code) return link.href;
    }
    return null;
  }

  /** What was chosen by hand just now: it stands in the address. */
  function chosen() {
    var found = /[?&]language=([\w-]+)/.exec(location.search);
    return found && pageIn(found[1]) ? found[1] : null;
  }

  /** What was chosen by hand before. A browser may refuse to tell, or to keep it. */
  function remembered() {
    try {
      return localStorage.getItem(CHOICE);
    } catch (error) {
      return null;
    }
  }

  /** @param {string} code */
  function remember(code) {
    try {
      localStorage.setItem(CHOICE, code);
    } catch (error) {
      // Then it holds from page to page, and no longer.
    }
  }

  /** The first language of the browser in which there is this page, or null. */
  function ofBrowser() {
    var codes = navigator.languages || [navigator.language];
    for (var i = 0; i < codes.length; i++) {
      var code = String(codes[i]).split('-')[0].toLowerCase();
      if (pageIn(code)) return code;
    }
    return null;
  }

  /** Whether a link on another page of ours led here, which was in this language. */
  function isFromHere() {
    var folder = location.href.replace(/[?#].*/, '').replace(/[^/]*$/, '');
    return document.referrer.indexOf(folder) === 0;
  }

  /** Go to the page in the language that is wanted, if this is not it. */
  function choose() {
    var byHand = chosen();
    if (byHand && !isView) remember(byHand);
    if (!byHand && isFromHere()) return;
    var wanted = byHand || remembered() || ofBrowser();
    var address = wanted && wanted !== page.lang ? pageIn(wanted) : null;
    if (!address) return;
    page.setAttribute('data-leaving', '');
    location.replace(address + location.search + location.hash);
  }

  // What stands behind the # is the customer's link, or the exercise: it goes along.
  document.addEventListener('click', function (event) {
    var link = event.target;
    if (link instanceof HTMLAnchorElement && link.className === 'language') link.hash = location.hash;
  });

  choose();

  // Why it can't start ------------------------------------------------------------------------

  /** A sentence in the page's language. @param {string} key @param {string} [why] */
  function say(key, why) {
    var words = document.getElementById('words');
    var sentence = words ? JSON.parse(words.textContent || '{}')[key] : '';
    return String(sentence).replace('{why}', function () {
      return why || '';
    });
  }

  /** Say what is wrong, as soon as its place is there. @param {string} key @param {string} [detail] */
  function tell(key, detail) {
    if (!document.getElementById('words')) {
      document.addEventListener('DOMContentLoaded', function () {
        tell(key, detail);
      });
      return;
    }
    var place = document.getElementById(isView ? 'trouble' : 'status');
    var progress = document.getElementById('progress');
    page.setAttribute(state, isView ? 'refused' : 'failed');
    if (progress) progress.setAttribute('hidden', '');
    if (!place) return;
    if (!isView) place.className = 'fault';
    place.removeAttribute('hidden');
    place.textContent = say(key, detail);
  }

  if (!('noModule' in document.createElement('script'))) {
    tell('start.no_modules');
    return;
  }
  // The scripts need nothing that is newer than this.
  if (!Object.hasOwn) {
    tell('start.too_old');
    return;
  }
  window.addEventListener(
    'error',
    function (event) {
      if (page.getAttribute(state) !== 'starting') return;
      if (event.target instanceof HTMLScriptElement) {
        tell('start.lost');
      } else if (event.message) {
        tell('start.failed', event.message);
      }
    },
    true
  );
})();
