// The build writes the true sizes over this file.

/** Size in bytes of each file below python/, by path. @type {Record<string, number>} */
export const SIZES = {};
