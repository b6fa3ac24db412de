// The usual way to run a package in Pyodide, for comparison: the stock files, and micropip installs
// the wheel at each start. The bench lays this out as a worker.

import { loadPyodide } from './pyodide.mjs';

const [wheel, question] = ['{{wheel}}', '{"form": {}}'];
const python = await loadPyodide();
await python.loadPackage('micropip');
const here = new URL(wheel, import.meta.url).href;
await python.runPythonAsync(`import micropip; await micropip.install(${JSON.stringify(here)})`);
postMessage(python.pyimport('sweepsheet.page').handle_request(question));
