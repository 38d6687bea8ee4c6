import type { Reference } from './reference.js';
import { cuttingReferences } from './rows/cutting.js';
import { datumReferences } from './rows/datum.js';
import { leftReferences } from './rows/left.js';
import { libraryReferences } from './rows/libraries.js';
import { loadReferences } from './rows/load.js';
import { machineReferences } from './rows/machine.js';
import { measureReferences } from './rows/measure.js';
import { pathReferences } from './rows/path.js';
import { shapeReferences } from './rows/shapes.js';

/** Every outside reference whose values are compared here by number. */
export const references: readonly Reference[] = [
  ...shapeReferences,
  ...libraryReferences,
  ...leftReferences,
  ...loadReferences,
  ...pathReferences,
  ...datumReferences,
  ...measureReferences,
  ...cuttingReferences,
  ...machineReferences,
];
