// Says why, where the page can't start: this browser is too old for its scripts, or one did not come.
// So this is a classic script in ES5, which the oldest browser reads, and stands at the root of dist/,
// where it is found even when an old index.html asks for a release that is gone.
(function () {
  'use strict';

  var OLD = 'This browser is too old for this page: ';
  var RENEW = ' Bring it up to date, or open the page in another.';
  var page = document.documentElement;

  /** @param {string} why */
  function tell(why) {
    var status = document.getElementById('status');
    var progress = document.getElementById('progress');
    page.setAttribute('data-python', 'failed');
    if (progress) progress.setAttribute('hidden', '');
    if (!status) return;
    status.className = 'fault';
    status.textContent = why;
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
      if (page.getAttribute('data-python') !== 'starting') return;
      if (event.target instanceof HTMLScriptElement) {
        tell('A part of this page did not come. Load the page again.');
      } else if (event.message) {
        tell('This page could not be started in this browser (' + event.message + ').' + RENEW);
      }
    },
    true
  );
})();
