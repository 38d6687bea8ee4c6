export type { Aim } from './aim/aim.js';
export { parseAim } from './aim/read-aim.js';
export { type AimDocument, aimJsonSchema, aimSchema } from './aim/schema-aim.js';
export { intersect, normalize, union, xor } from './combine/boolean.js';
export { offset, offsetPath } from './combine/offset.js';
export { subtract } from './combine/subtract.js';
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
export { DOINGS, type Doing, doingOf, type PassTravel, travelOfPass } from './cutting/doing.js';
export { type FeedOfDoing, type FeedTask, feedOfDoing, minutesOfPass } from './cutting/feed-of-doing.js';
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
export { type Link, type LinkKind, type LinkSize, type SideName, sizeOfLink } from './datum/chain.js';
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
export { JobError, type JobIssue } from './document/errors.js';
export { type CutDocument, type JobDocument, jobJsonSchema, jobSchema } from './document/schema.js';
export { type DrawerDocument, type DrawerTool, drawerJsonSchema } from './document/schema-drawer.js';
export { cautionsOf, STANDING_CAUTION } from './find/cautions.js';
export { type EdgeJson, type RegionJson, regionFromJson, regionToJson } from './format/json.js';
export { arcsFromPolyline, type PolylineOptions, type RecoveredEdges } from './format/polyline.js';
export * from './format/svg-path.js';
export * from './format/svg-write.js';
export * from './format/wkt.js';
export * from './format/wkt-write.js';
export * from './geometry/bounds.js';
export * from './geometry/distance.js';
export * from './geometry/edge.js';
export * from './geometry/measure.js';
export { type Meeting, type MeetingPoint, meet } from './geometry/meet.js';
export * from './geometry/point.js';
export {
  type Segment,
  segmentOfAngle,
  segmentOfDepth,
  segmentOfOpeningAndDepth,
  segmentsOfOpening,
} from './geometry/segment.js';
export { weldTolerance } from './geometry/tolerance.js';
export type { Watch } from './geometry/watch.js';
export {
  DEFAULT_BREAK_THROUGH,
  DEFAULT_KNIFE_EDGE,
  DEFAULT_RESOLUTION,
  DEFAULT_WEB,
  type Job,
  type Limits,
  type Units,
} from './job/job.js';
export type { AlongPlan, CenterPlan, CutPlan, JobCut, PassesPlan } from './job/plan.js';
export type { Web } from './left/discs.js';
export { type KnifeEdge, knifeEdgesOf } from './left/knife-edges.js';
export type { Relation } from './left/relation.js';
export { websOf } from './left/webs.js';
export { interiorAngles } from './left/wedges.js';
export { type CutChange, type Examiner, examiner } from './live/examiner.js';
export type { ArcEnd, FaceSide, PlacedBite } from './load/bite.js';
export {
  type Layer,
  type LoadAt,
  type LoadByHeight,
  loadByHeight,
  type RoundTool,
} from './load/by-height.js';
export {
  type EngagedArc,
  type Engagement,
  engagementOf,
  type SideLoad,
  sideLoadOf,
} from './load/engagement.js';
export { biteAlong, largestBite, type RadialBite } from './load/largest-bite.js';
export {
  type LoadCode,
  type LoadNames,
  type LoadRemark,
  noWayWords,
  placeRemark,
  underneathRemark,
} from './load/load-words.js';
export {
  DIRECTION_WORDS,
  type DirectionWords,
  type MachineDirection,
  machineDirection,
} from './load/machine-direction.js';
export { type RingEngagement, ringEngagementOf } from './load/ring-engagement.js';
export type { Stretch, StretchEnd } from './load/shadow.js';
export { type BadFooting, type PlacedTool, type PlaceFact, placeFacts } from './load/tool-place.js';
export { type GoesDown, type Underneath, underneath } from './load/underneath.js';
export {
  furthestOff,
  metalReach,
  type NoWay,
  type Obstacle,
  type WayOff,
  type WayOffTask,
  wayOff,
} from './load/way-off.js';
export { type Check, checksIn, type HeightSection, type Taken } from './measure/checks.js';
export { type Correction, correctionOf, type Dial } from './measure/correction.js';
export { type Estimate, type Fit, FitError, fitCircle, type Reading } from './measure/fit.js';
export { type PinFault, pairsFor, pinFault } from './measure/pins.js';
export { type Face as MeasuredFace, measurableIn, type Seat, type Span } from './measure/seat.js';
export { coverageOf } from './measure/spread.js';
export { type Trial, type TrialPlan, type TrialRow, trialOf } from './measure/trial.js';
export {
  type Circle,
  type FaceLine,
  readingOf,
  type Slopes,
  slopesOf,
  type Way as MeasureWay,
} from './measure/way.js';
export { type Fitting, type Gauges, waysFor } from './measure/ways.js';
export { OverlayError } from './noding/overlay-error.js';
export * from './outline/shapes.js';
export * from './outline/validate.js';
export { openOut, type Pass, type PassOptions, type PassPlan, stepIn } from './passes/passes.js';
export { type Gouge, type GougeOptions, gouges } from './path/gouge.js';
export { type IsoHeights, type IsoOptions, type IsoWords, isoWords } from './path/iso-words.js';
export {
  type CenterPass,
  type CenterPath,
  type CenterPathOptions,
  centerPath,
  centerPathAlong,
  edgesOfPass,
  type OutlineLoop,
} from './path/path.js';
export type { Milling, ToolSide } from './path/path-curve.js';
export { edgesToJson, type PassJson, passesToJson } from './path/path-json.js';
export { type Lead, LeadError } from './path/path-lead.js';
export type { LoopOrder } from './path/path-order.js';
export {
  isOnStretch,
  type OutlinePlace,
  type OutlineStretch,
  placeNear,
  placeOfSource,
} from './path/path-stretch.js';
export { type ReachOptions, type Unreached, unreached } from './path/reach.js';
export type { NarrowPlace, ReachLimit } from './path/reach-limit.js';
export type { Hand } from './placing/loci.js';
export { type DistancePlacement, type FromEdge, placeByDistances } from './placing/place-distances.js';
export {
  type FacePlacement,
  type OnFace,
  placeByDepth,
  placeByOpening,
  placementOn,
} from './placing/place-face.js';
export { bitesIn, type OutlineBite, type OutlinePlacement } from './placing/place-outline.js';
export { placeThrough } from './placing/place-points.js';
export { placeTangent, type TangentPlacement, type Touch } from './placing/place-tangent.js';
export { type Comparison, compareJobs, type PartDifference } from './propose/compare.js';
export { type Proposal, type ProposedWay, propose } from './propose/propose.js';
export type { Refusal, RefusalCode } from './propose/refusals.js';
export { type RowOptions, type WayRow, wayRowOf } from './propose/row.js';
export { type Along, type RangeQuery, RangeQueryError } from './range/number.js';
export type { Outcome, RangeChange, RangeFinding, RangeMark, RangeRelation } from './range/outcome.js';
export type { RangePresent } from './range/present.js';
export {
  type RangeEvent,
  type RangeInterval,
  type RangeReport,
  type RangeWatch,
  rangeOf,
} from './range/range.js';
export { parseJob } from './read/parse.js';
export { parseDrawer } from './read/shared-drawer.js';
export { twinOf } from './read/twin.js';
export { contains } from './region/contains.js';
export * from './region/measure.js';
export * from './region/region.js';
export {
  CAUTION_CODES,
  type CautionCode,
  FINDING_CODES,
  FINDING_LEVELS,
  type FindingCode,
} from './report/finding-codes.js';
export {
  edgeFromReport,
  fromReport,
  type GeometryLayer,
  pointFromReport,
  type ReportGeometry,
  regionFromReport,
  type StepGeometry,
} from './report/from-report.js';
export { type KnifeMark, knifeMarks, type WebMark, webMarks } from './report/marks.js';
export { type PathArc, type PathStand, pathStands } from './report/path-stands.js';
export * from './report/report-schema.js';
export { betweenText, sourceText } from './report/words.js';
export { examine } from './write/examine.js';
export { type Measured, type Measuring, measured } from './write/measure.js';
export { USUAL_READING } from './write/trial-row.js';
