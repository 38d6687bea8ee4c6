/* Points, boxes, edges and segments of circles. Each checks its arguments; its own comment is at its definition. */

import * as rawBounds from '../geometry/bounds.js';
import * as rawDistance from '../geometry/distance.js';
import * as rawEdge from '../geometry/edge.js';
import * as rawMeasure from '../geometry/measure.js';
import * as rawMeet from '../geometry/meet.js';
import * as rawParts from '../geometry/parts.js';
import * as rawPoint from '../geometry/point.js';
import * as rawSegment from '../geometry/segment.js';
import * as rawTolerance from '../geometry/tolerance.js';
import { flag, notNegative, num, number, point, text, vector as vectorKind } from '../kinds/kinds.js';
import { edge } from '../kinds/region-kind.js';
import { arc, box } from '../kinds/shared-kinds.js';
import { guarded } from './guarded.js';

/** @function */
export const vector: typeof rawPoint.vector = /* @__PURE__ */ guarded(rawPoint.vector, 'vector', {
  a: point,
  b: point,
});
/** @function */
export const moved: typeof rawPoint.moved = /* @__PURE__ */ guarded(rawPoint.moved, 'moved', {
  p: point,
  v: vectorKind,
  times: { maybe: number },
});
/** @function */
export const distance: typeof rawPoint.distance = /* @__PURE__ */ guarded(rawPoint.distance, 'distance', {
  a: point,
  b: point,
});
/** @function */
export const midpoint: typeof rawPoint.midpoint = /* @__PURE__ */ guarded(rawPoint.midpoint, 'midpoint', {
  a: point,
  b: point,
});
/** @function */
export const samePoint: typeof rawPoint.samePoint = /* @__PURE__ */ guarded(rawPoint.samePoint, 'samePoint', {
  a: point,
  b: point,
});
/** @function */
export const joined: typeof rawBounds.joined = /* @__PURE__ */ guarded(rawBounds.joined, 'joined', {
  a: box,
  b: box,
});
/** @function */
export const grown: typeof rawBounds.grown = /* @__PURE__ */ guarded(rawBounds.grown, 'grown', {
  box,
  by: number,
});
/** @function */
export const boxAround: typeof rawBounds.boxAround = /* @__PURE__ */ guarded(
  rawBounds.boxAround,
  'boxAround',
  { p: point, by: { maybe: number } },
);
/** @function */
export const boxesMeet: typeof rawBounds.boxesMeet = /* @__PURE__ */ guarded(
  rawBounds.boxesMeet,
  'boxesMeet',
  { a: box, b: box },
);
/** @function */
export const extentOf: typeof rawBounds.extentOf = /* @__PURE__ */ guarded(rawBounds.extentOf, 'extentOf', {
  box,
});
/** @function */
export const middleOf: typeof rawBounds.middleOf = /* @__PURE__ */ guarded(rawBounds.middleOf, 'middleOf', {
  box,
});
/** @function */
export const lineEdge: typeof rawEdge.lineEdge = /* @__PURE__ */ guarded(rawEdge.lineEdge, 'lineEdge', {
  a: point,
  b: point,
  source: { maybe: text },
});
/** @function */
export const arcEdge: typeof rawEdge.arcEdge = /* @__PURE__ */ guarded(rawEdge.arcEdge, 'arcEdge', {
  a: point,
  b: point,
  center: point,
  ccw: flag,
  source: { maybe: text },
});
/** @function */
export const reversed: typeof rawParts.reversed = /* @__PURE__ */ guarded(rawParts.reversed, 'reversed', {
  edge,
});
/** @function */
export const edgeBounds: typeof rawMeasure.edgeBounds = /* @__PURE__ */ guarded(
  rawMeasure.edgeBounds,
  'edgeBounds',
  { edge },
);
/** @function */
export const edgeLength: typeof rawMeasure.edgeLength = /* @__PURE__ */ guarded(
  rawMeasure.edgeLength,
  'edgeLength',
  { edge },
);
/** @function */
export const directionAtStart: typeof rawMeasure.directionAtStart = /* @__PURE__ */ guarded(
  rawMeasure.directionAtStart,
  'directionAtStart',
  { edge },
);
/** @function */
export const directionAtEnd: typeof rawMeasure.directionAtEnd = /* @__PURE__ */ guarded(
  rawMeasure.directionAtEnd,
  'directionAtEnd',
  { edge },
);
/** @function */
export const curvature: typeof rawMeasure.curvature = /* @__PURE__ */ guarded(
  rawMeasure.curvature,
  'curvature',
  { edge },
);
/** @function */
export const pointAlong: typeof rawMeasure.pointAlong = /* @__PURE__ */ guarded(
  rawMeasure.pointAlong,
  'pointAlong',
  { edge, share: number },
);
/** @function */
export const onArcSide: typeof rawMeasure.onArcSide = /* @__PURE__ */ guarded(
  rawMeasure.onArcSide,
  'onArcSide',
  { arc, p: point },
);
/** @function */
export const sweep: typeof rawMeasure.sweep = /* @__PURE__ */ guarded(rawMeasure.sweep, 'sweep', { arc });
/** @function */
export const segmentArea: typeof rawMeasure.segmentArea = /* @__PURE__ */ guarded(
  rawMeasure.segmentArea,
  'segmentArea',
  { arc },
);
/** @function */
export const sineExcess: typeof rawMeasure.sineExcess = /* @__PURE__ */ guarded(
  rawMeasure.sineExcess,
  'sineExcess',
  { t: number },
);
/** @function */
export const nearestOnEdge: typeof rawDistance.nearestOnEdge = /* @__PURE__ */ guarded(
  rawDistance.nearestOnEdge,
  'nearestOnEdge',
  { edge, p: point },
);
/** @function */
export const meet: typeof rawMeet.meet = /* @__PURE__ */ guarded(rawMeet.meet, 'meet', {
  e: edge,
  f: edge,
  tolerance: notNegative,
});
/** @function */
export const weldTolerance: typeof rawTolerance.weldTolerance = /* @__PURE__ */ guarded(
  rawTolerance.weldTolerance,
  'weldTolerance',
  { extent: notNegative, magnitude: { maybe: notNegative } },
);
/** @function */
export const segmentOfAngle: typeof rawSegment.segmentOfAngle = /* @__PURE__ */ guarded(
  rawSegment.segmentOfAngle,
  'segmentOfAngle',
  { radius: num, includedAngle: num },
);
/** @function */
export const segmentOfDepth: typeof rawSegment.segmentOfDepth = /* @__PURE__ */ guarded(
  rawSegment.segmentOfDepth,
  'segmentOfDepth',
  { radius: num, depth: num },
);
/** @function */
export const segmentOfOpeningAndDepth: typeof rawSegment.segmentOfOpeningAndDepth = /* @__PURE__ */ guarded(
  rawSegment.segmentOfOpeningAndDepth,
  'segmentOfOpeningAndDepth',
  { opening: num, depth: num },
);
/** @function */
export const segmentsOfOpening: typeof rawSegment.segmentsOfOpening = /* @__PURE__ */ guarded(
  rawSegment.segmentsOfOpening,
  'segmentsOfOpening',
  { radius: num, opening: num },
);
