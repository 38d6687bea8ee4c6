/* The entry `@edgebite/core/flatten`: regions in and out of `@flatten-js/core`, which it needs beside it, any 1.6. */

export { fromFlatten, toFlatten } from './door/flatten.js';
