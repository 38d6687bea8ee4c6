/* The load of the metal on a tool, and obstacles. Each checks its arguments; its own comment is at its definition. */

import { flag, notNegative, num, number, overZero, point, text } from '../kinds/kinds.js';
import { fact, heading, why } from '../kinds/more-kinds.js';
import { region } from '../kinds/region-kind.js';
import {
  axes,
  doing,
  keepOuts,
  layers,
  loadNames,
  metal,
  roundTool,
  toolKind,
  wordings,
} from '../kinds/shared-kinds.js';
import * as rawByHeight from '../load/by-height.js';
import * as rawEngagement from '../load/engagement.js';
import * as rawLargestBite from '../load/largest-bite.js';
import * as rawLoadWords from '../load/load-words.js';
import * as rawMachineDirection from '../load/machine-direction.js';
import * as rawRingEngagement from '../load/ring-engagement.js';
import * as rawToolPlace from '../load/tool-place.js';
import * as rawUnderneath from '../load/underneath.js';
import * as rawWayOff from '../load/way-off.js';
import { guarded } from './guarded.js';

/** @function */
export const engagementOf: typeof rawEngagement.engagementOf = /* @__PURE__ */ guarded(
  rawEngagement.engagementOf,
  'engagementOf',
  { metal: region, center: point, radius: num },
);
/** @function */
export const sideLoadOf: typeof rawEngagement.sideLoadOf = /* @__PURE__ */ guarded(
  rawEngagement.sideLoadOf,
  'sideLoadOf',
  { arcs: { listOf: { has: { start: number, sweep: number } } } },
);
/** @function */
export const ringEngagementOf: typeof rawRingEngagement.ringEngagementOf = /* @__PURE__ */ guarded(
  rawRingEngagement.ringEngagementOf,
  'ringEngagementOf',
  { metal: region, center: point, outer: num, inner: num },
);
/** @function */
export const biteAlong: typeof rawLargestBite.biteAlong = /* @__PURE__ */ guarded(
  rawLargestBite.biteAlong,
  'biteAlong',
  { metal: region, center: point, radius: num, angle: num },
);
/** @function */
export const largestBite: typeof rawLargestBite.largestBite = /* @__PURE__ */ guarded(
  rawLargestBite.largestBite,
  'largestBite',
  { metal: region, center: point, radius: num },
);
/** @function */
export const loadByHeight: typeof rawByHeight.loadByHeight = /* @__PURE__ */ guarded(
  rawByHeight.loadByHeight,
  'loadByHeight',
  { tool: roundTool, layers, from: ['top', 'bottom'], isThrough: flag },
);
/** @function */
export const machineDirection: typeof rawMachineDirection.machineDirection = /* @__PURE__ */ guarded(
  rawMachineDirection.machineDirection,
  'machineDirection',
  { axes, drawn: heading },
);
/** @function */
export const placeFacts: typeof rawToolPlace.placeFacts = /* @__PURE__ */ guarded(
  rawToolPlace.placeFacts,
  'placeFacts',
  {
    tool: {
      has: {
        doing,
        cutsToCenter: { orNull: flag },
        center: point,
        radius: num,
        layers,
        metal: { orNull: metal },
      },
    },
  },
);
/** @function */
export const placeRemark: typeof rawLoadWords.placeRemark = /* @__PURE__ */ guarded(
  rawLoadWords.placeRemark,
  'placeRemark',
  { fact, names: loadNames },
);
/** @function */
export const noWayWords: typeof rawLoadWords.noWayWords = /* @__PURE__ */ guarded(
  rawLoadWords.noWayWords,
  'noWayWords',
  { why, doing: { orNull: doing }, names: wordings },
);
/** @function */
export const underneathRemark: typeof rawLoadWords.underneathRemark = /* @__PURE__ */ guarded(
  rawLoadWords.underneathRemark,
  'underneathRemark',
  {
    underneath: { has: { below: number, over: { orNull: text }, margin: { orNull: number } } },
    least: number,
    names: loadNames,
  },
);
/** @function */
export const underneath: typeof rawUnderneath.underneath = /* @__PURE__ */ guarded(
  rawUnderneath.underneath,
  'underneath',
  {
    tool: {
      has: {
        cut: ['bore', 'annular', 'swept'],
        tool: { orNull: toolKind },
        diameter: num,
        depth: num,
        through: flag,
        reach: { orNull: num },
      },
    },
    body: region,
    thickness: overZero,
    keepOuts,
  },
);
/** @function */
export const wayOff: typeof rawWayOff.wayOff = /* @__PURE__ */ guarded(rawWayOff.wayOff, 'wayOff', {
  task: {
    has: { tool: roundTool, layers, clearance: num, keepOuts: { listOf: { has: { id: text, region } } } },
  },
});
/** @function */
export const furthestOff: typeof rawWayOff.furthestOff = /* @__PURE__ */ guarded(
  rawWayOff.furthestOff,
  'furthestOff',
  { radius: overZero, clearance: notNegative },
);
/** @function */
export const metalReach: typeof rawWayOff.metalReach = /* @__PURE__ */ guarded(
  rawWayOff.metalReach,
  'metalReach',
  { radius: overZero, clearance: notNegative },
);
