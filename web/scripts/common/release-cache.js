// The name of the cache in which sw.js keeps a release, made as sw.js makes it.

/** @param {URL} folder that of the release, within that of the whole page */
export function cacheOf(folder) {
  const scope = new URL('../', folder).href;
  return `sweepsheet ${scope} ${folder.href.slice(scope.length, -1)}`;
}
