/*
 * The entry `@edgebite/core/machining`: cuts, placing, passes, paths, load, setups, speeds, measuring. Points, edges and regions are
 * those of `@edgebite/core/geometry`. Names that are ambiguous in the whole library have the terms of the field here.
 */

export type { AnnularCut, BoreCut, Cut as ToolCut, EveryCut, Side, SweptCut } from './cut/cut.js';
export type { BreakOffEstimate } from './cutting/break-off.js';
export { DOINGS, type Doing, type PassTravel } from './cutting/doing.js';
export type { FeedOfDoing, FeedTask } from './cutting/feed-of-doing.js';
export type { FeedEntry } from './cutting/feed-table.js';
export { HARDNESS, METALS, type Metal } from './cutting/material.js';
export type { Range as LeastAndMost } from './cutting/range.js';
export type { SurfaceSpeedUnit } from './cutting/speed.js';
export type { SpeedEntry } from './cutting/speed-table.js';
export type { SpindleLimits, SpindleSetting } from './cutting/spindle-set.js';
export type { Strength } from './cutting/strength.js';
export { TOOL_KINDS, TOOL_MATERIALS, type ToolKind, type ToolMaterial } from './cutting/tool.js';
export type { Link, LinkKind, LinkSize, SideName } from './datum/chain.js';
export type { ToleranceClass } from './datum/general-tolerance.js';
export type { KeepOut } from './datum/keep-out.js';
export type { LengthUnit } from './datum/length-unit.js';
export type { Axes, Lie } from './datum/lie.js';
export type { Interval } from './datum/reach.js';
export type { AxisZero, Laid, Readout, SetPart, Setup, ZeroSize } from './datum/setup.js';
export type { Stack as ErrorStack } from './datum/stack.js';
export type { Target } from './datum/target.js';
export {
  breakingMoment,
  breakOffOf,
  densityOf,
  doingOf,
  elasticMoment,
  feedFor,
  feedOfDoing,
  feedPerTurnOf,
  feedRate,
  massOf,
  metalOf,
  minutesFor,
  minutesOfPass,
  plasticMoment,
  shearForce,
  speedEntry,
  spindleSetting,
  spindleSpeed,
  strengthOf,
  surfaceSpeedFor,
  surfaceSpeedOf,
  surfaceSpeedUnit,
  travelOfPass,
} from './door/cutting.js';
export {
  axesOf,
  generalTolerance,
  inUnit,
  laid,
  placeUnder,
  readoutAt,
  sizeOfLink,
  stackOf,
  targetAt,
  toStep,
} from './door/datum.js';
export { edgesToJson, passesToJson } from './door/format.js';
export {
  biteAlong,
  engagementOf,
  furthestOff,
  largestBite,
  loadByHeight,
  machineDirection,
  metalReach,
  noWayWords,
  placeFacts,
  placeRemark,
  ringEngagementOf,
  sideLoadOf,
  underneath,
  underneathRemark,
  wayOff,
} from './door/load.js';
export {
  checksIn,
  correctionOf,
  coverageOf,
  fitCircle,
  measurableIn,
  pairsFor,
  pinFault,
  readingOf,
  slopesOf,
  trialOf,
  waysFor,
} from './door/measuring.js';
export {
  centerPath,
  centerPathAlong,
  edgesOfPass,
  gouges,
  isOnStretch,
  isoWords,
  placeNear,
  placeOfSource,
  unreached,
} from './door/paths.js';
export {
  bitesIn,
  interiorAngles,
  knifeEdgesOf,
  openOut,
  placeByDepth,
  placeByDistances,
  placeByOpening,
  placementOn,
  placeTangent,
  placeThrough,
  stepIn,
  websOf,
} from './door/placing.js';
export { coreOf, footprint, sweptRegion as sweptArea } from './door/shapes.js';
export type { Web } from './left/discs.js';
export type { KnifeEdge } from './left/knife-edges.js';
export type { Relation } from './left/relation.js';
export type { ArcEnd, FaceSide, PlacedBite } from './load/bite.js';
export type { Layer, LoadAt, LoadByHeight, RoundTool } from './load/by-height.js';
export type { EngagedArc, Engagement, SideLoad } from './load/engagement.js';
export type { RadialBite } from './load/largest-bite.js';
export type { LoadCode, LoadNames, LoadRemark } from './load/load-words.js';
export { DIRECTION_WORDS, type DirectionWords, type MachineDirection } from './load/machine-direction.js';
export type { RingEngagement } from './load/ring-engagement.js';
export type { Stretch as RimStretch, StretchEnd } from './load/shadow.js';
export type { BadFooting, PlacedTool, PlaceFact } from './load/tool-place.js';
export type { GoesDown, Underneath } from './load/underneath.js';
export type { NoWay, Obstacle, WayOff, WayOffTask } from './load/way-off.js';
export type { Check as MeasuringCheck, HeightSection, Taken } from './measure/checks.js';
export type { Correction, Dial } from './measure/correction.js';
export { type Estimate, type Fit, FitError, type Reading } from './measure/fit.js';
export type { PinFault } from './measure/pins.js';
export type { Face as MeasuredFace, Seat, Span } from './measure/seat.js';
export type { Trial, TrialPlan, TrialRow } from './measure/trial.js';
export type { Circle as MeasuredCircle, FaceLine, Slopes, Way as MeasureWay } from './measure/way.js';
export type { Fitting, Gauges } from './measure/ways.js';
export type { Pass, PassOptions, PassPlan } from './passes/passes.js';
export type { Gouge, GougeOptions } from './path/gouge.js';
export type { IsoHeights, IsoOptions, IsoWords } from './path/iso-words.js';
export type { CenterPass, CenterPath, CenterPathOptions, OutlineLoop } from './path/path.js';
export type { Milling, ToolSide } from './path/path-curve.js';
export type { PassJson } from './path/path-json.js';
export { type Lead, LeadError } from './path/path-lead.js';
export type { LoopOrder } from './path/path-order.js';
export type { OutlinePlace, OutlineStretch } from './path/path-stretch.js';
export type { ReachOptions, Unreached } from './path/reach.js';
export type { NarrowPlace, ReachLimit } from './path/reach-limit.js';
export type { Hand } from './placing/loci.js';
export type { DistancePlacement, FromEdge } from './placing/place-distances.js';
export type { FacePlacement, OnFace } from './placing/place-face.js';
export type { OutlineBite, OutlinePlacement } from './placing/place-outline.js';
export type { TangentPlacement, Touch as TangentPoint } from './placing/place-tangent.js';
