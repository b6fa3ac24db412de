// Makes of the page's sources what the browser gets: one script for each page and for the worker, the
// style sheet without its blanks, and the first round of readings, so that it stands in the page
// before any script has run.
//
//   node page.mjs WEB OUT SCRIPT...
//
// OUT/release.js and OUT/core-values.js are there already: what the scripts are to know of the release and
// of the core. So is the main page in each language, OUT/index.html and OUT/index.es.html, in which the
// first round is drawn.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { Window } from 'happy-dom';

/** Where esbuild finds libraries, wherever the sources are. */
const LIBRARIES = fileURLToPath(new URL('../../node_modules', import.meta.url));

/** It tells what is wrong to browsers that can read no other. */
const PLAIN = 'boot.js';

/** Where the source of each script is, by its name, which is its own. @param {string} web */
function sourcesIn(web) {
  const paths = readdirSync(join(web, 'scripts'), { recursive: true }).filter((path) => path.endsWith('.js'));
  return Object.fromEntries(paths.map((path) => [basename(path), join(web, 'scripts', path)]));
}

/** What the build has written stands for its namesake among the sources. */
function useWritten(building, out) {
  const filter = /\/(release|core-values)\.js$/;
  building.onResolve({ filter }, ({ path }) => ({ path: join(out, basename(path)) }));
}

/** What is brought when it is first wanted stays a file of its own. */
function bringLater(building) {
  building.onResolve({ filter: /\/(guide|photos|film|match-photos)\.js$/ }, ({ kind, path }) =>
    kind === 'dynamic-import' ? { path: `./${basename(path)}`, external: true } : undefined,
  );
}

/** All of them come to stand side by side. @param {string} out @param {string[]} entries */
async function bundle(out, entries) {
  await build({
    entryPoints: entries,
    entryNames: '[name]',
    outdir: out,
    bundle: true,
    format: 'esm',
    target: 'es2022',
    minify: true,
    charset: 'utf8',
    external: ['./python/pyodide*'], // files of their own
    plugins: [
      { name: 'written', setup: (building) => useWritten(building, out) },
      { name: 'later', setup: bringLater },
    ],
    nodePaths: [LIBRARIES],
    logLevel: 'error',
  });
}

/** A script that the oldest browsers read, which stands in the page. @param {string} out
 * @param {string} entry */
async function plain(out, entry) {
  await build({
    entryPoints: [entry],
    outdir: out,
    target: 'es5',
    minify: true,
    charset: 'utf8',
    logLevel: 'error',
  });
}

/** What form.js itself makes of the empty form, run in a document without a browser.
 * @param {string} form the script @param {string} page */
async function firstRound(form, page) {
  const window = new Window({ url: 'http://localhost/' });
  window.document.write(readFileSync(page, 'utf8'));
  const place = window.document.getElementById('rounds');
  place.replaceChildren();
  for (const name of ['document', 'Element', 'Event', 'FormData', 'RadioNodeList']) {
    globalThis[name] = window[name];
  }
  globalThis.requestAnimationFrame = (drawn) => window.requestAnimationFrame(drawn);
  for (const name of ['HTMLElement', 'HTMLInputElement', 'HTMLSelectElement']) {
    globalThis[name] = window[name];
  }
  // A script is run once for an address, and this one is to be run for each page.
  const { startForm } = await import(`${pathToFileURL(form).href}?${encodeURIComponent(page)}`);
  startForm(() => undefined);
  return place.innerHTML;
}

/** The service worker, which browsers take as one plain script alone; the build fills it in.
 * @param {string} web @param {string} out */
async function keeper(web, out) {
  await build({
    entryPoints: [join(web, 'sw.js')],
    outdir: out,
    bundle: true,
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
    logLevel: 'error',
  });
}

const [web, out, ...scripts] = process.argv.slice(2);
const sources = sourcesIn(resolve(web));
const entries = scripts.filter((name) => name !== PLAIN).map((name) => sources[name]);
const styles = readdirSync(join(web, 'styles')).map((name) => resolve(web, 'styles', name));
await bundle(resolve(out), [...entries, ...styles]);
await plain(out, sources[PLAIN]);
await keeper(resolve(web), resolve(out));
const form = resolve(out, 'form', 'form.mjs');
await build({ entryPoints: [sources['form.js']], outfile: form, bundle: true, format: 'esm' });
for (const name of readdirSync(out).filter((name) => /^index\..*html$/.test(name))) {
  const drawn = await firstRound(form, join(out, name));
  writeFileSync(join(out, name.replace('index', 'first-round')), drawn);
}
process.exit(0); // happy-dom keeps Node's event loop alive
