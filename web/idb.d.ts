// The build puts the library of this name beside the page's modules.
export * from 'idb';
