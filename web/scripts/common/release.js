// The build writes the true values over this file.

/** Size in bytes of each file below python/, by path. @type {Record<string, number>} */
export const SIZES = {};

/** Where the page stands for the world, if that was told at build time. @type {string} */
export const ADDRESS = '';
