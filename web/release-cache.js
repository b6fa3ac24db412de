// The name of the cache in which sw.js keeps this release, made as sw.js makes it.

/** The folder of the whole page. */
const SCOPE = new URL('../', import.meta.url).href;
const RELEASE = new URL('./', import.meta.url).href.slice(SCOPE.length, -1);

export const CACHE = `sweepsheet ${SCOPE} ${RELEASE}`;
