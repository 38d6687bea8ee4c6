export type { AnnularCut, BoreCut, Cut, EveryCut, Side, SweptCut } from './cut/cut.js';
export { coreOf, footprint } from './cut/footprint.js';
export { sweptRegion } from './cut/swept.js';
export { densityOf, massOf } from './cutting/density.js';
export * from './geometry/bounds.js';
export * from './geometry/distance.js';
export * from './geometry/edge.js';
export * from './geometry/measure.js';
export { type Meeting, type MeetingPoint, meet } from './geometry/meet.js';
export * from './geometry/point.js';
export { weldTolerance } from './geometry/tolerance.js';
export { JobError, type JobIssue } from './job/errors.js';
export { examine } from './job/examine.js';
export {
  DEFAULT_KNIFE_EDGE,
  DEFAULT_RESOLUTION,
  DEFAULT_WEB,
  type Job,
  type Limits,
  type Units,
} from './job/job.js';
export { parseJob } from './job/parse.js';
export * from './job/report-schema.js';
export { type CutDocument, type JobDocument, jobJsonSchema, jobSchema } from './job/schema.js';
export { interiorAngles, type KnifeEdge, knifeEdgesOf } from './left/knife-edges.js';
export type { Relation } from './left/relation.js';
export { type Web, websOf } from './left/webs.js';
export * from './outline/flatten.js';
export * from './outline/shapes.js';
export * from './outline/svg-path.js';
export * from './outline/svg-write.js';
export * from './outline/validate.js';
export * from './outline/wkt.js';
export * from './outline/wkt-write.js';
export { OverlayError } from './region/arrange.js';
export { intersect, normalize, union, xor } from './region/boolean.js';
export { contains } from './region/contains.js';
export * from './region/measure.js';
export * from './region/region.js';
export { subtract } from './region/subtract.js';
