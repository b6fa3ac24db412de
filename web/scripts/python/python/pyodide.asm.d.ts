// The build puts Pyodide's own files into this folder; this one is for Pyodide alone to use.
export {};
