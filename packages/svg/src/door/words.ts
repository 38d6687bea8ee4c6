/* Numbers and names in words. Each checks its arguments; its own comment is at its definition. */

import { callable, number, reading, text } from '@edgebite/core/door';
import * as rawNumbers from '../pen/numbers.js';
import * as rawText from '../pen/text.js';
import * as rawWords from '../pen/words.js';
import * as rawZeroWords from '../pen/zero-words.js';
import * as rawRangeWords from '../range/range-words.js';
import * as rawReadouts from '../sheet/readouts.js';
import {
  along,
  changes,
  decimals,
  deep,
  findings,
  interval,
  link,
  names,
  report,
  roles,
  scale,
  setup,
  slabbed,
  slabs,
  units,
} from './kinds.js';

/** @function */
export const angleText: typeof rawNumbers.angleText = /* @__PURE__ */ reading(
  rawNumbers.angleText,
  'angleText',
  { degrees: number },
);
/** @function */
export const dimensionText: typeof rawNumbers.dimensionText = /* @__PURE__ */ reading(
  rawNumbers.dimensionText,
  'dimensionText',
  { value: number, units },
);
/** @function */
export const fixed: typeof rawNumbers.fixed = /* @__PURE__ */ reading(rawNumbers.fixed, 'fixed', {
  value: number,
  decimals,
});
/** @function */
export const numberText: typeof rawNumbers.numberText = /* @__PURE__ */ reading(
  rawNumbers.numberText,
  'numberText',
  { value: number, units },
);
/** @function */
export const unitText: typeof rawNumbers.unitText = /* @__PURE__ */ reading(rawNumbers.unitText, 'unitText', {
  units,
});
/** @function */
export const clean: typeof rawText.clean = /* @__PURE__ */ reading(rawText.clean, 'clean', { text });
/** @function */
export const countText: typeof rawWords.countText = /* @__PURE__ */ reading(rawWords.countText, 'countText', {
  count: number,
  noun: text,
  plural: { maybe: text },
});
/** @function */
export const depthsText: typeof rawWords.depthsText = /* @__PURE__ */ reading(
  rawWords.depthsText,
  'depthsText',
  { report: slabbed, slabs },
);
/** @function */
export const depthText: typeof rawWords.depthText = /* @__PURE__ */ reading(rawWords.depthText, 'depthText', {
  cut: deep,
  units,
});
/** @function */
export const gravestFirst: typeof rawWords.gravestFirst = /* @__PURE__ */ reading(
  rawWords.gravestFirst,
  'gravestFirst',
  { report: findings },
);
/** @function */
export const lengthText: typeof rawWords.lengthText = /* @__PURE__ */ reading(
  rawWords.lengthText,
  'lengthText',
  { value: number, units },
);
/** @function */
export const levelsText: typeof rawWords.levelsText = /* @__PURE__ */ reading(
  rawWords.levelsText,
  'levelsText',
  { report: findings },
);
/** @function */
export const roleText: typeof rawWords.roleText = /* @__PURE__ */ reading(rawWords.roleText, 'roleText', {
  role: roles,
});
/** @function */
export const doneText: typeof rawZeroWords.doneText = /* @__PURE__ */ reading(
  rawZeroWords.doneText,
  'doneText',
  { link, shown: callable, scale },
);
/** @function */
export const reachedText: typeof rawZeroWords.reachedText = /* @__PURE__ */ reading(
  rawZeroWords.reachedText,
  'reachedText',
  { of: text },
);
/** @function */
export const zeroAxes: typeof rawZeroWords.zeroAxes = /* @__PURE__ */ reading(
  rawZeroWords.zeroAxes,
  'zeroAxes',
  { setup },
);
/** @function */
export const alongText: typeof rawRangeWords.alongText = /* @__PURE__ */ reading(
  rawRangeWords.alongText,
  'alongText',
  { answer: along },
);
/** @function */
export const changesText: typeof rawRangeWords.changesText = /* @__PURE__ */ reading(
  rawRangeWords.changesText,
  'changesText',
  { changes, cut: text, names },
);
/** @function */
export const intervalText: typeof rawRangeWords.intervalText = /* @__PURE__ */ reading(
  rawRangeWords.intervalText,
  'intervalText',
  { interval, cut: text, names },
);
/** @function */
export const lostZeros: typeof rawReadouts.lostZeros = /* @__PURE__ */ reading(
  rawReadouts.lostZeros,
  'lostZeros',
  { report },
);
