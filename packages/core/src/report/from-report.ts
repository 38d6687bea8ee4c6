import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import type { Region } from '../region/region.js';
import type { Report, ReportEdge, ReportRegion, ReportStep } from './report-schema.js';

type JsonPoint = readonly [number, number];

/** A section between two heights over the bottom of the part, in the unit of the report. */
export interface GeometryLayer {
  readonly from: number;
  readonly to: number;
  readonly region: Region;
}

/** The geometry of a step: as `steps` of the report has it, on the part as drawn. */
export interface StepGeometry {
  /** Null for a path. */
  readonly center: Point | null;
  /** Null where the report does not spell them out. */
  readonly before: readonly GeometryLayer[] | null;
  readonly after: readonly GeometryLayer[] | null;
  /** By body that comes loose in it: its plan view then. */
  readonly frees: readonly Region[];
  readonly stands: readonly Point[];
  /** Where its centre is once it has backed off; null where there is no way. */
  readonly backOff: Point | null;
}

/** The geometry of a report as the library's types; lists are in the order of the report's own. */
export interface ReportGeometry {
  readonly outline: Region;
  readonly keep: Point | null;
  readonly pieces: readonly { readonly view: Region; readonly sections: readonly GeometryLayer[] }[];
  readonly webs: readonly { readonly at: Point; readonly ends: readonly [Point, Point] }[];
  readonly knifeEdges: readonly { readonly at: Point }[];
  readonly floors: readonly { readonly at: Point }[];
  readonly cuts: readonly {
    readonly center: Point | null;
    /** Null for a cut that is not swept. */
    readonly path: readonly Edge[] | null;
    readonly footprint: Region;
  }[];
  readonly steps: readonly StepGeometry[];
  readonly keepOut: readonly { readonly region: Region }[];
}

/**
 * Reads the geometry of a report back: regions, edges and points as the library's types, with the names that edges have
 * in the report. A report that has been to JSON text and back gives the same. Takes the report as sound: `reportSchema`
 * says whether it is, if it comes from elsewhere.
 */
export function fromReport(report: Report): ReportGeometry {
  const region = knownRegions();
  const layers = (all: ReportStep['before']) =>
    all === null ? null : all.map(({ from, to, region: own }) => ({ from, to, region: region(own) }));
  return {
    outline: region(report.outline),
    keep: pointOrNull(report.keep),
    pieces: report.pieces.map(({ view, sections }) => ({
      view: region(view),
      sections: sections.map(({ from, to, region: own }) => ({ from, to, region: region(own) })),
    })),
    webs: report.webs.map(({ at, ends: [a, b] }) => ({
      at: pointFromReport(at),
      ends: [pointFromReport(a), pointFromReport(b)],
    })),
    knifeEdges: report.knifeEdges.map(({ at }) => ({ at: pointFromReport(at) })),
    floors: report.floors.map(({ at }) => ({ at: pointFromReport(at) })),
    cuts: report.cuts.map(({ center, path, footprint }) => ({
      center: pointOrNull(center),
      path: path === null ? null : path.map(edgeFromReport),
      footprint: region(footprint),
    })),
    steps: report.steps.map(({ center, before, after, frees, stands, backOff }) => ({
      center: pointOrNull(center),
      before: layers(before),
      after: layers(after),
      frees: frees.map(({ view }) => region(view)),
      stands: stands.map(({ at }) => pointFromReport(at)),
      backOff: pointOrNull(backOff.to),
    })),
    keepOut: report.keepOut.map(({ region: own }) => ({ region: region(own) })),
  };
}

/** The region that a report's region is of; the reverse of `regionToJson`. */
export function regionFromReport(region: ReportRegion): Region {
  return region.map(({ outer, holes }) => ({
    outer: outer.map(edgeFromReport),
    holes: holes.map((hole) => hole.map(edgeFromReport)),
  }));
}

/** The edge that a report's edge is of, with its source. */
export function edgeFromReport(edge: ReportEdge): Edge {
  const source = edge.source === undefined ? {} : { source: edge.source };
  const ends = { a: pointFromReport(edge.a), b: pointFromReport(edge.b), ...source };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  const { center, radius, ccw } = edge;
  return { kind: 'arc', ...ends, center: pointFromReport(center), radius, ccw };
}

/** The point that a report's place is. */
export function pointFromReport([x, y]: JsonPoint): Point {
  return { x, y };
}

function pointOrNull(place: JsonPoint | null): Point | null {
  return place === null ? null : pointFromReport(place);
}

/** Reads each region once: what stands before a step is what stood after the one before. */
function knownRegions(): (region: ReportRegion) => Region {
  const known = new Map<ReportRegion, Region>();
  return (region) => {
    const read = known.get(region) ?? regionFromReport(region);
    known.set(region, read);
    return read;
  };
}
