// Says why, where the page can't start: this browser is too old for its scripts, or one did not come.
// So this is a classic script in ES5, which the oldest browser reads, and stands at the root of dist/,
// where it is found even when an old index.html asks for a release that is gone.
(function () {
  'use strict';

  var OLD = 'This browser is too old for this page: ';
  var RENEW = ' Bring it up to date, or open the page in another.';
  var page = document.documentElement;
  // The customer's view tells by another name how far it is, and in another place what is wrong.
  var isView = page.hasAttribute('data-view');
  var state = isView ? 'data-view' : 'data-python';

  /** @param {string} why */
  function tell(why) {
    var place = document.getElementById(isView ? 'trouble' : 'status');
    var progress = document.getElementById('progress');
    page.setAttribute(state, isView ? 'refused' : 'failed');
    if (progress) progress.setAttribute('hidden', '');
    if (!place) return;
    if (!isView) place.className = 'fault';
    place.removeAttribute('hidden');
    place.textContent = why;
  }

  if (!('noModule' in document.createElement('script'))) {
    tell(OLD + 'it cannot load scripts that are made of parts (modules).' + RENEW);
    return;
  }
  // The scripts need nothing that is newer than this.
  if (!Object.hasOwn) {
    tell(OLD + 'its JavaScript is older than 2022.' + RENEW);
    return;
  }
  window.addEventListener(
    'error',
    function (event) {
      if (page.getAttribute(state) !== 'starting') return;
      if (event.target instanceof HTMLScriptElement) {
        tell('A part of this page did not come. Load the page again.');
      } else if (event.message) {
        tell('This page could not be started in this browser (' + event.message + ').' + RENEW);
      }
    },
    true
  );
})();
