/*
 * The entry `@edgebite/core/geometry`: points, edges, loops and regions, operations on them, and file formats. Names that are
 * ambiguous in the whole library have the terms of the field here; the root has both under their old names.
 */

export { checkRegion, type RegionFault } from './door/check-region.js';
export {
  boundingCircle,
  convexHull,
  gapBetweenRegions,
  mirroredRegion,
  movedRegion,
  nearestOnRegion,
  polygonsOf,
  relationOfRegions,
  scaledRegion,
  secondMoments,
  smallestWidth,
  splitByLine,
  turnedRegion,
} from './door/figures.js';
export {
  arcsFromPolyline,
  openSvgPath,
  parseSvgPath,
  parseWkt,
  regionFromGeoJson,
  regionFromJson,
  regionFromWkt,
  regionToJson,
  toGeoJson,
  toSvgDocument,
  toSvgPath,
  toWkt,
} from './door/format.js';
export {
  arcEdge,
  boxAround,
  boxesMeet,
  curvature,
  directionAtEnd,
  directionAtStart,
  distance,
  edgeBounds,
  edgeLength,
  extentOf,
  grown as grownBox,
  joined as joinedBox,
  lineEdge,
  meet,
  middleOf,
  midpoint,
  moved,
  nearestOnEdge,
  onArcSide,
  pointAlong,
  reversed,
  samePoint,
  segmentArea,
  segmentOfAngle,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  segmentsOfOpening,
  sineExcess,
  sweep as sweepAngle,
  vector,
  weldTolerance,
} from './door/primitives.js';
export { repairRegion } from './door/repair-region.js';
export {
  area,
  boundsOf,
  centroid,
  checkOutline,
  circle as circleOfDiameter,
  circleLoop,
  contains,
  disc as discOfRadius,
  intersect,
  loopArea,
  loopBounds,
  loopLength,
  loopsOf,
  normalize,
  offset,
  offsetPath as bufferPath,
  outlineRegion,
  partArea,
  perimeter,
  rectangle,
  ring,
  slot,
  subtract,
  union,
  xor,
} from './door/shapes.js';
export type { NearestPlace, RegionGap, RegionRelation } from './figure/between.js';
export type { PolygonPart } from './figure/chords.js';
export type { BoundingCircle, SmallestWidth } from './figure/extremes.js';
export type { GeoJsonArea } from './figure/geojson.js';
export type { SecondMoments } from './figure/moments.js';
export type { SplitRegion } from './figure/split.js';
export type { SvgDocumentOptions } from './figure/svg-document.js';
export type { EdgeJson, RegionJson } from './format/json.js';
export type { PolylineOptions, RecoveredEdges } from './format/polyline.js';
export type { SvgPathOptions } from './format/svg-write.js';
export { TextError } from './format/text-error.js';
export type { WktShape } from './format/wkt.js';
export type { Bounds } from './geometry/bounds.js';
export type { Nearest } from './geometry/distance.js';
export type { ArcEdge, Edge, LineEdge, Source } from './geometry/edge.js';
export { type EdgebiteCode, EdgebiteError, type ErrorAbout } from './geometry/edgebite-error.js';
export type { Meeting, MeetingPoint } from './geometry/meet.js';
export type { Point, Vector } from './geometry/point.js';
export type { Segment as CircularSegment } from './geometry/segment.js';
export { OverlayError } from './noding/overlay-error.js';
export { OutlineError, type OutlineFault } from './outline/fault.js';
export type { RectangleOptions, SlotOptions, Standing } from './outline/shapes.js';
export type { CheckedOutline } from './outline/validate.js';
export type { Loop, Region, RegionPart } from './region/region.js';
