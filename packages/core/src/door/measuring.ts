/* Ways to measure the arc that a cut leaves, and the correction. Each checks its arguments; its own comment is at its definition. */

import { measurable } from '../kinds/job-kinds.js';
import { anything, notNegative, number, overZero, share, vector } from '../kinds/kinds.js';
import { fit, PINS } from '../kinds/more-kinds.js';
import { region } from '../kinds/region-kind.js';
import { circle, dial, gauges, seat, seatOfPins, sections, way } from '../kinds/shared-kinds.js';
import * as rawChecks from '../measure/checks.js';
import * as rawCorrection from '../measure/correction.js';
import * as rawFit from '../measure/fit.js';
import * as rawPins from '../measure/pins.js';
import * as rawSeat from '../measure/seat.js';
import * as rawSpread from '../measure/spread.js';
import * as rawTrial from '../measure/trial.js';
import * as rawWay from '../measure/way.js';
import * as rawWays from '../measure/ways.js';
import { guarded } from './guarded.js';

/** @function */
export const checksIn: typeof rawChecks.checksIn = /* @__PURE__ */ guarded(rawChecks.checksIn, 'checksIn', {
  sections,
  gauges,
});
/** @function */
export const correctionOf: typeof rawCorrection.correctionOf = /* @__PURE__ */ guarded(
  rawCorrection.correctionOf,
  'correctionOf',
  { drawn: circle, spans: { listOf: { has: { from: number, to: number } } }, fit, dial },
);
/** @function */
export const fitCircle: typeof rawFit.fitCircle = /* @__PURE__ */ guarded(rawFit.fitCircle, 'fitCircle', {
  drawn: circle,
  readings: { listOf: { has: { way, value: anything, tolerance: anything } } },
});
/** @function */
export const measurableIn: typeof rawSeat.measurableIn = /* @__PURE__ */ guarded(
  rawSeat.measurableIn,
  'measurableIn',
  { section: region },
);
/** @function */
export const readingOf: typeof rawWay.readingOf = /* @__PURE__ */ guarded(rawWay.readingOf, 'readingOf', {
  way,
  circle,
});
/** @function */
export const slopesOf: typeof rawWay.slopesOf = /* @__PURE__ */ guarded(rawWay.slopesOf, 'slopesOf', {
  way,
  circle,
});
/** @function */
export const pairsFor: typeof rawPins.pairsFor = /* @__PURE__ */ guarded(rawPins.pairsFor, 'pairsFor', {
  seat: seatOfPins,
  towards: vector,
});
/** @function */
export const pinFault: typeof rawPins.pinFault = /* @__PURE__ */ guarded(rawPins.pinFault, 'pinFault', {
  seat: seatOfPins,
  towards: vector,
  pin: overZero,
  pins: PINS,
});
/** @function */
export const waysFor: typeof rawWays.waysFor = /* @__PURE__ */ guarded(rawWays.waysFor, 'waysFor', {
  seat,
  measurable,
  gauges,
});
/** @function */
export const coverageOf: typeof rawSpread.coverageOf = /* @__PURE__ */ guarded(
  rawSpread.coverageOf,
  'coverageOf',
  { widths: { listOf: notNegative }, share },
);
/** @function */
export const trialOf: typeof rawTrial.trialOf = /* @__PURE__ */ guarded(rawTrial.trialOf, 'trialOf', {
  seat,
  ways: { listOf: { has: { way } } },
  plan: { has: { dial, leaves: number, good: number, place: number } },
});
