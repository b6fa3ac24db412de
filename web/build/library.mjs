// Makes library.zip: the part of Python's library that the page needs, and our own package, both
// compiled; and qr.zip: what makes QR codes, which the page loads only when it is asked for one. Then
// starts Python on them alone, as the page will, and checks that nothing is missing and nothing is
// there without a use.
//
//   node library.mjs SWEEPSHEET.whl MICROPIP.whl SEGNO.whl LIBRARY.zip QR.zip RUNTIME
//
// RUNTIME is the folder with the Pyodide that the page gets, which may be less than the whole.

import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { loadPyodide } from 'pyodide';

const here = new URL('./', import.meta.url);

/** The lines of library.txt as {name, reason}. */
function readList() {
  const lines = readFileSync(new URL('library.txt', here), 'utf8').split('\n');
  return lines
    .map((line) => line.split('#').map((part) => part.trim()))
    .filter(([name]) => name)
    .map(([name, reason]) => ({ name, reason }));
}

async function pack(wheel, micropip, segno, names) {
  // A fixed hash seed, so that two builds give the same bytes; no columns for tracebacks, which have
  // no source lines to point at.
  const python = await loadPyodide({ env: { PYTHONHASHSEED: '0', PYTHONNODEBUGRANGES: '1' } });
  python.unpackArchive(new Uint8Array(readFileSync(micropip)), 'wheel');
  const inside = `/tmp/${basename(wheel)}`;
  python.FS.writeFile(inside, new Uint8Array(readFileSync(wheel)));
  python.runPython(readFileSync(new URL('library.py', here), 'utf8'));
  await python.globals.get('install')(inside);
  const modules = JSON.parse(python.globals.get('pack')(JSON.stringify(names)));
  python.FS.writeFile('/segno.whl', new Uint8Array(readFileSync(segno)));
  const drawing = readFileSync(new URL('qr_code.py', here), 'utf8');
  python.globals.get('pack_qr')('/segno.whl', drawing);
  const [library, qr] = ['/library.zip', '/qr.zip'].map((path) => python.FS.readFile(path));
  return { modules, library, qr };
}

/** Start on the pruned library alone; give the names of the modules that were loaded. */
async function tryOut(runtime, libraryPath, modules, qr) {
  const reduced = await import(pathToFileURL(join(runtime, 'pyodide.mjs')).href);
  const python = await reduced.loadPyodide({ stdLibURL: libraryPath });
  for (const module of modules) python.pyimport(module);
  const answer = python.pyimport('sweepsheet.page').handle_request('{"form": {}}');
  JSON.parse(answer);
  const loaded = python.runPython('import json, sys; json.dumps(sorted(sys.modules))');
  python.FS.writeFile('/qr.zip', qr);
  python.pyimport('sys').path.append('/qr.zip');
  if (JSON.parse(python.pyimport('qr_code').draw('1aB-_')).state !== 'qr') throw new Error('no QR code');
  return new Set(JSON.parse(loaded));
}

async function main(wheel, micropip, segno, out, qrOut, runtime) {
  const list = readList();
  const names = list.map(({ name }) => name);
  const { modules, library, qr } = await pack(wheel, micropip, segno, names);
  writeFileSync(out, library);
  writeFileSync(qrOut, qr);
  const loaded = await tryOut(runtime, out, modules, qr).catch((error) => {
    throw new Error(`Python does not start on the packed library; is it short of a module?\n${error}`);
  });
  const idle = list.filter(({ name, reason }) => !loaded.has(name) && !reason);
  if (idle.length) {
    const names = idle.map(({ name }) => name).join(' ');
    throw new Error(`library.txt lists what nothing loads; take it out or say why: ${names}`);
  }
}

// Node itself would print the line of Pyodide where it happened, which is a megabyte long. The exit
// is there because Pyodide keeps Node's event loop alive.
main(...process.argv.slice(2).map((path) => resolve(path))).then(
  () => process.exit(0),
  (error) => {
    console.error(String(error));
    process.exit(1);
  },
);
