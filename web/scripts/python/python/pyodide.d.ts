// The build puts Pyodide's own files into this folder; its types come from the npm package.
export * from 'pyodide';
