/* Setups and readouts. Each checks its arguments; its own comment is at its definition. */

import * as rawChain from '../datum/chain.js';
import * as rawGeneralTolerance from '../datum/general-tolerance.js';
import * as rawLengthUnit from '../datum/length-unit.js';
import * as rawLie from '../datum/lie.js';
import * as rawSetup from '../datum/setup.js';
import * as rawStack from '../datum/stack.js';
import * as rawStep from '../datum/step.js';
import * as rawTarget from '../datum/target.js';
import { notNegative, number, overZero, pair, point } from '../kinds/kinds.js';
import { grade, lay, lie, link, setup, sizeTolerance, UNITS } from '../kinds/shared-kinds.js';
import { guarded } from './guarded.js';

/** @function */
export const axesOf: typeof rawLie.axesOf = /* @__PURE__ */ guarded(rawLie.axesOf, 'axesOf', { lie });
/** @function */
export const laid: typeof rawSetup.laid = /* @__PURE__ */ guarded(rawSetup.laid, 'laid', {
  setup,
  part: { has: { units: UNITS, tolerances: grade, sizeTolerance } },
});
/** @function */
export const placeUnder: typeof rawSetup.placeUnder = /* @__PURE__ */ guarded(
  rawSetup.placeUnder,
  'placeUnder',
  { lay, readout: pair },
);
/** @function */
export const readoutAt: typeof rawSetup.readoutAt = /* @__PURE__ */ guarded(rawSetup.readoutAt, 'readoutAt', {
  lay,
  p: point,
});
/** @function */
export const targetAt: typeof rawTarget.targetAt = /* @__PURE__ */ guarded(rawTarget.targetAt, 'targetAt', {
  lay,
  center: point,
});
/** @function */
export const stackOf: typeof rawStack.stackOf = /* @__PURE__ */ guarded(rawStack.stackOf, 'stackOf', {
  tolerances: { listOf: notNegative },
});
/** @function */
export const toStep: typeof rawStep.toStep = /* @__PURE__ */ guarded(rawStep.toStep, 'toStep', {
  value: number,
  step: overZero,
});
/** @function */
export const sizeOfLink: typeof rawChain.sizeOfLink = /* @__PURE__ */ guarded(
  rawChain.sizeOfLink,
  'sizeOfLink',
  { link, readout: UNITS, grade },
);
/** @function */
export const generalTolerance: typeof rawGeneralTolerance.generalTolerance = /* @__PURE__ */ guarded(
  rawGeneralTolerance.generalTolerance,
  'generalTolerance',
  { length: notNegative, grade: ['f', 'm', 'c', 'v'] },
);
/** @function */
export const inUnit: typeof rawLengthUnit.inUnit = /* @__PURE__ */ guarded(rawLengthUnit.inUnit, 'inUnit', {
  value: number,
  from: UNITS,
  to: UNITS,
});
