/* Speeds, feeds, times and forces. Each checks its arguments; its own comment is at its definition. */

import * as rawBreakOff from '../cutting/break-off.js';
import * as rawDensity from '../cutting/density.js';
import * as rawDoing from '../cutting/doing.js';
import * as rawFeedOfDoing from '../cutting/feed-of-doing.js';
import * as rawFeedTable from '../cutting/feed-table.js';
import * as rawMaterial from '../cutting/material.js';
import * as rawSpeed from '../cutting/speed.js';
import * as rawSpeedTable from '../cutting/speed-table.js';
import * as rawSpindleSet from '../cutting/spindle-set.js';
import * as rawStrength from '../cutting/strength.js';
import { TOOL_MATERIALS } from '../cutting/tool.js';
import { notNegative, num, overZero, range, text } from '../kinds/kinds.js';
import { travel } from '../kinds/more-kinds.js';
import { doing, metal, strength, toolKind, UNITS } from '../kinds/shared-kinds.js';
import { guarded } from './guarded.js';

/** @function */
export const breakOffOf: typeof rawBreakOff.breakOffOf = /* @__PURE__ */ guarded(
  rawBreakOff.breakOffOf,
  'breakOffOf',
  { strength, width: overZero, thickness: overZero, units: UNITS },
);
/** @function */
export const breakingMoment: typeof rawBreakOff.breakingMoment = /* @__PURE__ */ guarded(
  rawBreakOff.breakingMoment,
  'breakingMoment',
  { strength, width: overZero, thickness: overZero },
);
/** @function */
export const elasticMoment: typeof rawBreakOff.elasticMoment = /* @__PURE__ */ guarded(
  rawBreakOff.elasticMoment,
  'elasticMoment',
  { stress: notNegative, width: overZero, thickness: overZero },
);
/** @function */
export const plasticMoment: typeof rawBreakOff.plasticMoment = /* @__PURE__ */ guarded(
  rawBreakOff.plasticMoment,
  'plasticMoment',
  { stress: notNegative, width: overZero, thickness: overZero },
);
/** @function */
export const shearForce: typeof rawBreakOff.shearForce = /* @__PURE__ */ guarded(
  rawBreakOff.shearForce,
  'shearForce',
  { shear: range, area: notNegative },
);
/** @function */
export const densityOf: typeof rawDensity.densityOf = /* @__PURE__ */ guarded(
  rawDensity.densityOf,
  'densityOf',
  { material: text },
);
/** @function */
export const massOf: typeof rawDensity.massOf = /* @__PURE__ */ guarded(rawDensity.massOf, 'massOf', {
  volume: notNegative,
  density: overZero,
  units: UNITS,
});
/** @function */
export const doingOf: typeof rawDoing.doingOf = /* @__PURE__ */ guarded(rawDoing.doingOf, 'doingOf', {
  tool: { has: { kind: toolKind, diameter: overZero } },
  cut: { has: { kind: ['bore', 'annular', 'swept'], diameter: overZero } },
});
/** @function */
export const travelOfPass: typeof rawDoing.travelOfPass = /* @__PURE__ */ guarded(
  rawDoing.travelOfPass,
  'travelOfPass',
  { pass: travel },
);
/** @function */
export const feedOfDoing: typeof rawFeedOfDoing.feedOfDoing = /* @__PURE__ */ guarded(
  rawFeedOfDoing.feedOfDoing,
  'feedOfDoing',
  {
    task: {
      has: {
        doing,
        kind: toolKind,
        metal: { orNull: metal },
        diameter: num,
        teeth: { orNull: overZero },
        units: UNITS,
        spindle: { orNull: range },
        own: { orNull: { has: { perTurn: num, rpm: num } } },
      },
    },
  },
);
/** @function */
export const minutesOfPass: typeof rawFeedOfDoing.minutesOfPass = /* @__PURE__ */ guarded(
  rawFeedOfDoing.minutesOfPass,
  'minutesOfPass',
  { travel: notNegative, rate: { orNull: range } },
);
/** @function */
export const feedFor: typeof rawFeedTable.feedFor = /* @__PURE__ */ guarded(rawFeedTable.feedFor, 'feedFor', {
  kind: toolKind,
  metal,
  diameter: overZero,
  units: UNITS,
});
/** @function */
export const metalOf: typeof rawMaterial.metalOf = /* @__PURE__ */ guarded(rawMaterial.metalOf, 'metalOf', {
  material: text,
});
/** @function */
export const feedPerTurnOf: typeof rawSpeed.feedPerTurnOf = /* @__PURE__ */ guarded(
  rawSpeed.feedPerTurnOf,
  'feedPerTurnOf',
  { feedPerTooth: range, teeth: overZero },
);
/** @function */
export const feedRate: typeof rawSpeed.feedRate = /* @__PURE__ */ guarded(rawSpeed.feedRate, 'feedRate', {
  spindle: range,
  feedPerTurn: range,
});
/** @function */
export const minutesFor: typeof rawSpeed.minutesFor = /* @__PURE__ */ guarded(
  rawSpeed.minutesFor,
  'minutesFor',
  { length: notNegative, feed: range },
);
/** @function */
export const spindleSpeed: typeof rawSpeed.spindleSpeed = /* @__PURE__ */ guarded(
  rawSpeed.spindleSpeed,
  'spindleSpeed',
  { surfaceSpeed: range, diameter: overZero, units: UNITS },
);
/** @function */
export const surfaceSpeedOf: typeof rawSpeed.surfaceSpeedOf = /* @__PURE__ */ guarded(
  rawSpeed.surfaceSpeedOf,
  'surfaceSpeedOf',
  { spindle: range, diameter: overZero, units: UNITS },
);
/** @function */
export const surfaceSpeedUnit: typeof rawSpeed.surfaceSpeedUnit = /* @__PURE__ */ guarded(
  rawSpeed.surfaceSpeedUnit,
  'surfaceSpeedUnit',
  { units: UNITS },
);
/** @function */
export const speedEntry: typeof rawSpeedTable.speedEntry = /* @__PURE__ */ guarded(
  rawSpeedTable.speedEntry,
  'speedEntry',
  { kind: toolKind, toolMaterial: TOOL_MATERIALS, metal },
);
/** @function */
export const surfaceSpeedFor: typeof rawSpeedTable.surfaceSpeedFor = /* @__PURE__ */ guarded(
  rawSpeedTable.surfaceSpeedFor,
  'surfaceSpeedFor',
  { kind: toolKind, toolMaterial: TOOL_MATERIALS, metal, unit: ['m/min', 'ft/min'] },
);
/** @function */
export const spindleSetting: typeof rawSpindleSet.spindleSetting = /* @__PURE__ */ guarded(
  rawSpindleSet.spindleSetting,
  'spindleSetting',
  {
    wish: range,
    limits: {
      has: {
        tool: { orNull: overZero },
        slowest: { orNull: overZero },
        fastest: { orNull: overZero },
        speeds: { orNull: { listOf: overZero } },
      },
    },
  },
);
/** @function */
export const strengthOf: typeof rawStrength.strengthOf = /* @__PURE__ */ guarded(
  rawStrength.strengthOf,
  'strengthOf',
  { metal },
);
