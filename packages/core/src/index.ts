export { type BackOff, backOff } from './center/back-off.js';
export type { ArcEnd, FaceSide, PlacedBite } from './center/bite.js';
export {
  type EngagedArc,
  type Engagement,
  engagementOf,
  type SideLoad,
  sideLoadOf,
} from './center/engagement.js';
export { type Gouge, type GougeOptions, gouges } from './center/gouge.js';
export { type IsoHeights, type IsoOptions, type IsoWords, isoWords } from './center/iso-words.js';
export { biteAlong, largestBite, type RadialBite } from './center/largest-bite.js';
export type { Hand } from './center/loci.js';
export { openOut, type Pass, type PassOptions, type PassPlan, stepIn } from './center/passes.js';
export {
  type CenterPass,
  type CenterPath,
  type CenterPathOptions,
  centerPath,
  centerPathAlong,
  edgesOfPass,
  type OutlineLoop,
} from './center/path.js';
export type { Milling, ToolSide } from './center/path-curve.js';
export { edgesToJson, type PassJson, passesToJson } from './center/path-json.js';
export { type Lead, LeadError } from './center/path-lead.js';
export type { LoopOrder } from './center/path-order.js';
export {
  isOnStretch,
  type OutlinePlace,
  type OutlineStretch,
  placeNear,
  placeOfSource,
} from './center/path-stretch.js';
export { type DistancePlacement, type FromEdge, placeByDistances } from './center/place-distances.js';
export {
  type FacePlacement,
  type OnFace,
  placeByDepth,
  placeByOpening,
  placementOn,
} from './center/place-face.js';
export { bitesIn, type OutlineBite, type OutlinePlacement } from './center/place-outline.js';
export { placeThrough } from './center/place-points.js';
export { placeTangent, type TangentPlacement, type Touch } from './center/place-tangent.js';
export { type ReachOptions, type Unreached, unreached } from './center/reach.js';
export type { NarrowPlace, ReachLimit } from './center/reach-limit.js';
export {
  type Segment,
  segmentOfAngle,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  segmentsOfOpening,
} from './center/segment.js';
export type { AnnularCut, BoreCut, Cut, EveryCut, Side, SweptCut } from './cut/cut.js';
export { coreOf, footprint } from './cut/footprint.js';
export { sweptRegion } from './cut/swept.js';
export {
  type BreakOffEstimate,
  breakingMoment,
  breakOffOf,
  elasticMoment,
  plasticMoment,
  shearForce,
} from './cutting/break-off.js';
export { densityOf, massOf } from './cutting/density.js';
export { type FeedEntry, feedFor } from './cutting/feed-table.js';
export { HARDNESS, METALS, type Metal, metalOf } from './cutting/material.js';
export type { Range } from './cutting/range.js';
export {
  feedPerTurnOf,
  feedRate,
  minutesFor,
  type SurfaceSpeedUnit,
  spindleSpeed,
  surfaceSpeedOf,
  surfaceSpeedUnit,
} from './cutting/speed.js';
export { type SpeedEntry, speedEntry, surfaceSpeedFor } from './cutting/speed-table.js';
export { type SpindleLimits, type SpindleSetting, spindleSetting } from './cutting/spindle-set.js';
export { type Strength, strengthOf } from './cutting/strength.js';
export { TOOL_KINDS, TOOL_MATERIALS, type ToolKind, type ToolMaterial } from './cutting/tool.js';
export { type ChainPlace, type Link, type LinkKind, type LinkSize, sizeOfLink } from './datum/chain.js';
export { generalTolerance, type ToleranceClass } from './datum/general-tolerance.js';
export type { KeepOut } from './datum/keep-out.js';
export { inUnit, type LengthUnit } from './datum/length-unit.js';
export { type Axes, axesOf, type Lie } from './datum/lie.js';
export type { Interval } from './datum/reach.js';
export {
  type AxisZero,
  type Laid,
  laid,
  placeUnder,
  type Readout,
  readoutAt,
  type SetPart,
  type Setup,
  type ZeroSize,
} from './datum/setup.js';
export { type Stack, stackOf } from './datum/stack.js';
export { toStep } from './datum/step.js';
export { type Target, targetAt } from './datum/target.js';
export * from './geometry/bounds.js';
export * from './geometry/distance.js';
export * from './geometry/edge.js';
export * from './geometry/measure.js';
export { type Meeting, type MeetingPoint, meet } from './geometry/meet.js';
export * from './geometry/point.js';
export { weldTolerance } from './geometry/tolerance.js';
export { cautionsOf, STANDING_CAUTION } from './job/cautions.js';
export { JobError, type JobIssue } from './job/errors.js';
export { examine } from './job/examine.js';
export { type CutChange, type Examiner, examiner } from './job/examiner.js';
export {
  DEFAULT_KNIFE_EDGE,
  DEFAULT_RESOLUTION,
  DEFAULT_WEB,
  type Job,
  type Limits,
  type Units,
} from './job/job.js';
export { parseJob } from './job/parse.js';
export type { AlongPlan, CenterPlan, CutPlan, JobCut, PassesPlan } from './job/plan.js';
export * from './job/report-schema.js';
export { type CutDocument, type JobDocument, jobJsonSchema, jobSchema } from './job/schema.js';
export { interiorAngles, type KnifeEdge, knifeEdgesOf } from './left/knife-edges.js';
export type { Relation } from './left/relation.js';
export { type Web, websOf } from './left/webs.js';
export * from './outline/flatten.js';
export { type EdgeJson, type RegionJson, regionFromJson, regionToJson } from './outline/json.js';
export { arcsFromPolyline, type PolylineOptions, type RecoveredEdges } from './outline/polyline.js';
export * from './outline/shapes.js';
export * from './outline/svg-path.js';
export * from './outline/svg-write.js';
export * from './outline/validate.js';
export * from './outline/wkt.js';
export * from './outline/wkt-write.js';
export { type Along, type RangeQuery, RangeQueryError } from './range/number.js';
export type { Outcome, RangeChange, RangeFinding, RangeMark, RangeRelation } from './range/outcome.js';
export type { RangePresent } from './range/present.js';
export { type RangeEvent, type RangeInterval, type RangeReport, rangeOf } from './range/range.js';
export { OverlayError } from './region/arrange.js';
export { intersect, normalize, union, xor } from './region/boolean.js';
export { contains } from './region/contains.js';
export * from './region/measure.js';
export { offset, offsetPath } from './region/offset.js';
export * from './region/region.js';
export { subtract } from './region/subtract.js';
