/*
 * The entry `@edgebite/core/door`: how this library checks its arguments, for packages that build on it and want to refuse
 * what is wrong in the same way, with the same error.
 */

export { guarded, type Makes } from './door/guarded.js';
export { reading } from './door/reading.js';
export {
  anything,
  type Check,
  callable,
  count,
  type Fault,
  faultIn,
  flag,
  type Kind,
  type Kinds,
  must,
  number,
  overZero,
  pair,
  text,
} from './kinds/kinds.js';
export { LEVELS, ROLES, wholeReport } from './kinds/report-kind.js';
export { UNITS } from './kinds/shared-kinds.js';
