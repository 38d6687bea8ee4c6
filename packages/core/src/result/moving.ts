import { footprint } from '../cut/footprint.js';
import type { Contact } from '../datum/contact.js';
import { asDrawn, driftAt, driftOfPath, type Placed, type Wall } from '../datum/drift.js';
import { generalTolerance, RANGE_ENDS } from '../datum/general-tolerance.js';
import { mostGrowth } from '../datum/growth.js';
import { inUnit } from '../datum/length-unit.js';
import type { Laid } from '../datum/setup.js';
import type { TipCurve } from '../datum/tip.js';
import { extentOf } from '../geometry/bounds.js';
import { nearestOnEdge } from '../geometry/distance.js';
import type { Edge } from '../geometry/edge.js';
import type { Point, Vector } from '../geometry/point.js';
import { cutOfSource } from '../geometry/source.js';
import type { Job } from '../job/job.js';
import { boundsOf, loopsOf } from '../region/measure.js';
import type { Loop } from '../region/region.js';
import { cutSizes } from './cut-sizes.js';

/** A boundary, and what of it grows. */
interface Boundary {
  readonly edge: Edge;
  readonly wall: Wall;
}

/** The boundaries of a job that may stand elsewhere than drawn: by source, their edges and whose they are. */
export interface Moving {
  readonly edges: ReadonlyMap<string, readonly Boundary[]>;
  /** By id of a cut: how far it may be off, for each setup that it is made in. */
  readonly cuts: ReadonlyMap<string, readonly Placed[]>;
  /** Places closer than this are one. */
  readonly near: number;
  /** Nothing moves further than this against anything else. */
  readonly farthest: number;
}

/** Share of the part's extent within which a place lies on an edge: a hundred times that at which points are welded. */
const NEAR_SHARE = 1e-7;

/** Sine of the angle from which on a web does not end square to an edge, but at a corner. */
const SQUARE = 1e-4;

/** How the boundaries of a job may move. */
export function movingOf(job: Job, lays: readonly Laid[]): Moving {
  if (lays.length === 0) return { edges: new Map(), cuts: new Map(), near: 0, farthest: 0 };
  const edges = new Map<string, Boundary[]>();
  const box = boundsOf(job.outline);
  const add = (loops: readonly Loop[], wall: Wall) => {
    for (const edge of loops.flat()) {
      const { source = '' } = edge;
      const known = edges.get(source);
      if (known === undefined) edges.set(source, [{ edge, wall }]);
      else known.push({ edge, wall });
    }
  };
  add(loopsOf(job.outline), 'own');
  for (const cut of job.cuts) {
    for (const { outer, holes } of footprint(cut)) {
      add([outer], 'rim');
      // The inside of a ring goes round a core; that of a path round what the tool goes round.
      add(holes, cut.kind === 'annular' ? 'core' : 'rim');
    }
  }
  const sizeOfCut = cutSizes(job);
  const cuts = new Map(
    job.cuts.map((cut) => [
      cut.id,
      lays
        .filter(({ setup }) => setup.cuts.includes(cut.id))
        .map((lay) => {
          const size = sizeOfCut(cut.id, lay.setup.id);
          return cut.kind === 'swept'
            ? driftOfPath(lay, cut.id, size)
            : driftAt(lay, cut.id, cut.center, size);
        }),
    ]),
  );
  const extent = box === null ? 0 : extentOf(box);
  return {
    edges,
    cuts,
    near: NEAR_SHARE * extent,
    farthest:
      Math.max(...lays.map((lay) => farthestDrift(lay, extent))) +
      2 *
        Math.max(
          0,
          ...lays.flatMap(({ setup }) => setup.cuts.map((id) => mostGrowth(sizeOfCut(id, setup.id)))),
        ),
  };
}

/** Which of the setups of each cut is looked at. */
export type Choice = ReadonlyMap<string, Placed>;

/**
 * Each way to choose one setup for every one of some boundaries' cuts; none where one of the cuts is in no setup, and
 * none where none of the boundaries is a cut's.
 */
export function choicesFor(moving: Moving, sources: readonly string[]): Choice[] {
  const ids = [...new Set(sources.map(cutOfSource).filter((id) => id !== null))];
  if (ids.length === 0) return [];
  return ids.reduce<Choice[]>(
    (choices, id) =>
      choices.flatMap((choice) =>
        (moving.cuts.get(id) ?? []).map((placed) => new Map([...choice, [id, placed]])),
      ),
    [new Map()],
  );
}

function placedOf(source: string, at: Point, choice: Choice): Placed {
  return choice.get(cutOfSource(source) ?? '') ?? asDrawn(at);
}

/** Edges of a source through a place. */
function edgesAt(moving: Moving, source: string, at: Point): readonly Boundary[] {
  return (moving.edges.get(source) ?? []).filter(
    ({ edge }) => nearestOnEdge(edge, at).distance <= moving.near,
  );
}

/** Unit normal of an edge at a place on it. */
function normalAt(edge: Edge, at: Point): Vector {
  if (edge.kind === 'line') return normalOf(edge);
  const length = Math.hypot(at.x - edge.center.x, at.y - edge.center.y);
  return { dx: (at.x - edge.center.x) / length, dy: (at.y - edge.center.y) / length };
}

/** Unit normal of a straight edge, to the left of its travel. */
export function normalOf({ a, b }: { readonly a: Point; readonly b: Point }): Vector {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return { dx: -(b.y - a.y) / length, dy: (b.x - a.x) / length };
}

/**
 * What a web touches at one of its ends: an edge that it is square to, or a corner of the outline; null where the
 * source has no such edge there.
 * @param n unit vector across the web
 */
export function contactAt(
  moving: Moving,
  choice: Choice,
  source: string,
  at: Point,
  n: Vector,
): Contact | null {
  const found = edgesAt(moving, source, at).find(({ edge }) => {
    const m = normalAt(edge, at);
    return Math.abs(m.dx * n.dy - m.dy * n.dx) <= SQUARE;
  });
  const placed = placedOf(source, at, choice);
  if (found !== undefined) {
    const { edge, wall } = found;
    return edge.kind === 'line'
      ? { kind: 'flat', placed, wall, at }
      : { kind: 'round', placed, wall, center: edge.center };
  }
  // Corners that point into metal are the outline's own: a round tool leaves none.
  return cutOfSource(source) !== null ? null : { kind: 'round', placed, wall: 'own', center: at };
}

/** The curves of a source that run through the tip of a knife edge. */
export function tipCurves(moving: Moving, choice: Choice, source: string, at: Point): TipCurve[] {
  return edgesAt(moving, source, at).map(({ edge, wall }): TipCurve => {
    const placed = placedOf(source, at, choice);
    if (edge.kind === 'line') return { kind: 'line', placed, wall, at: edge.a, normal: normalOf(edge) };
    const { center, radius, ccw } = edge;
    return { kind: 'circle', placed, wall, center, radius, ccw };
  });
}

/**
 * A bound on how far anything may move against anything else, in the unit of the part: both chains and two steps of
 * the readout along each axis, for both, and the part's own size.
 */
function farthestDrift({ setup, part, x, y }: Laid, extent: number): number {
  const own = 2 * (x.worst + y.worst + 2 * setup.readout.resolution);
  const { contact: a } = setup.zero.x;
  const { contact: b } = setup.zero.y;
  // Twice as far as the part is long, for each of both, and as much again for the squares that a small angle leaves.
  const turned = 8 * setup.angleTolerance * (extent + a.half + b.half + a.lever + b.lever);
  const { tolerances, units, sizeTolerance } = part;
  const mm = inUnit(extent, units, 'mm');
  const sizes =
    tolerances === null
      ? []
      : [mm, ...RANGE_ENDS.filter((end) => end < mm)].map(
          (length) => generalTolerance(length, tolerances) ?? 0,
        );
  const size = sizeTolerance ?? inUnit(Math.max(0, ...sizes), 'mm', units);
  return inUnit(own, setup.readout.units, units) + 2 * size + turned;
}
