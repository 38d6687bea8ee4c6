import type { Edge } from '../geometry/edge.js';
import { samePoint } from '../geometry/point.js';
import type { Loop, Region, RegionPart } from '../region/region.js';
import { conflict } from './conflict.js';
import { jointsOf } from './corners.js';
import {
  type Box,
  boxOf,
  edgesOf,
  extentOf,
  gapTo,
  placeAt,
  signedArea,
  span,
  WELD,
  windingOf,
} from './probe.js';

/** What the checker may assume. */
export interface ValidateOptions {
  /**
   * Extent of the input that the region was made from, in its unit: joints may have moved by 1e-9 of it.
   * The extent of the region itself if not given.
   */
  readonly extent?: number | undefined;
  /**
   * Extent that the tolerance of the operation was taken from, if less than that of all the input: joints closer than
   * 1e-9 of it have been welded, and what is further apart need not have a joint. `extent` if not given.
   */
  readonly welded?: number | undefined;
}

/** After welding both ends of an edge can have moved, and its circle is the old one. */
const SLACK_IN_WELDS = 4;

/**
 * Checks a region without mercy, with geometry of its own: numbers finite; loops closed to the last bit;
 * no edge of no length; arcs on their circles; outer loops counter-clockwise and holes clockwise with an area;
 * loops simple and touching in single points at most, with a joint there; holes inside their outer loop and
 * outside each other; every part in one piece; parts apart.
 * @throws Error that lists every fault with its place.
 */
export function validateRegion(region: Region, options: ValidateOptions = {}): void {
  const faults = regionFaults(region, options);
  if (faults.length > 0) throw new Error(`the region is not valid:\n  ${faults.join('\n  ')}`);
}

/** The faults that `validateRegion` finds, one sentence each; empty for a valid region. */
export function regionFaults(region: Region, options: ValidateOptions = {}): string[] {
  const extent = options.extent ?? extentOf(region);
  const slack = SLACK_IN_WELDS * WELD * extent;
  const weld = WELD * Math.min(extent, options.welded ?? extent);
  const loops = region.flatMap(namedLoops);
  const faults = loops.flatMap(({ name, loop }) => chainFaults(name, loop, slack));
  // Without sound chains the later checks would only repeat the complaint.
  if (faults.length > 0) return faults;
  faults.push(...region.flatMap(areaFaults), ...pairFaults(loops, slack, weld));
  faults.push(...jointFaults(loops, slack), ...region.flatMap(pieceFaults));
  faults.push(...region.flatMap(nestingFaults), ...partFaults(region));
  return faults;
}

interface NamedLoop {
  readonly name: string;
  readonly loop: Loop;
}

function namedLoops(part: RegionPart, index: number): NamedLoop[] {
  const holes = part.holes.map((loop, h) => ({ name: `part ${index} hole ${h}`, loop }));
  return [{ name: `part ${index} outer`, loop: part.outer }, ...holes];
}

function chainFaults(name: string, loop: Loop, slack: number): string[] {
  if (loop.length < 2) return [`${name}: ${loop.length} edges; a loop has at least two`];
  return loop.flatMap((edge, k) => {
    const next = loop[(k + 1) % loop.length] as Edge;
    const faults = edgeFaults(edge, slack).map((fault) => `${name} edge ${k}: ${fault}`);
    if (!samePoint(edge.b, next.a)) {
      faults.push(`${name} edge ${k}: ends at ${at(edge.b)}, but the next one starts at ${at(next.a)}`);
    }
    return faults;
  });
}

function edgeFaults(edge: Edge, slack: number): string[] {
  const numbers = [edge.a.x, edge.a.y, edge.b.x, edge.b.y];
  if (edge.kind === 'arc') numbers.push(edge.center.x, edge.center.y, edge.radius);
  if (!numbers.every(Number.isFinite)) return [`numbers that are not finite: ${numbers.join(' ')}`];
  if (samePoint(edge.a, edge.b)) return [`no length, at ${at(edge.a)}`];
  if (edge.kind === 'line') return [];
  if (!(edge.radius > 0)) return [`radius ${edge.radius}`];
  const off = Math.max(
    Math.abs(span(edge.center, edge.a) - edge.radius),
    Math.abs(span(edge.center, edge.b) - edge.radius),
  );
  return off > slack ? [`an end lies ${off} off its circle`] : [];
}

function areaFaults(part: RegionPart, index: number): string[] {
  return namedLoops(part, index).flatMap(({ name, loop }, k) => {
    const area = signedArea(loop);
    if (k === 0 ? area > 0 : area < 0) return [];
    return [`${name}: area ${area}; outer loops have one over 0, holes one under 0`];
  });
}

/** All pairs of edges of the whole region whose boxes meet, found by a sweep along x. */
function pairFaults(loops: readonly NamedLoop[], slack: number, weld: number): string[] {
  const items = loops
    .flatMap(({ name, loop }) =>
      loop.map((edge, k) => ({ name: `${name} edge ${k}`, edge, box: boxOf([edge]) })),
    )
    .sort((s, t) => s.box.minX - t.box.minX);
  const faults: string[] = [];
  items.forEach((s, k) => {
    for (let j = k + 1; j < items.length; j += 1) {
      const t = items[j] as (typeof items)[number];
      if (t.box.minX > s.box.maxX + slack) break;
      if (!overlapInY(s.box, t.box, slack)) continue;
      const fault = conflict(s.edge, t.edge, slack, weld);
      if (fault !== null) faults.push(`${s.name} and ${t.name} ${fault}`);
    }
  });
  return faults;
}

function overlapInY(s: Box, t: Box, slack: number): boolean {
  return s.minY <= t.maxY + slack && t.minY <= s.maxY + slack;
}

/** Loops are simple, and the edges round a joint, of all parts together, do not cut through each other. */
function jointFaults(loops: readonly NamedLoop[], slack: number): string[] {
  const faults = loops.flatMap(({ name, loop }) => {
    const starts = loop.map((edge) => at(edge.a));
    return new Set(starts).size < starts.length ? [`${name}: passes through a joint twice`] : [];
  });
  for (const joint of jointsOf(
    loops.map(({ loop }) => loop),
    slack,
  )) {
    if (joint.fault !== null) faults.push(`joint ${at(joint.at)}: ${joint.fault}`);
  }
  return faults;
}

function pieceFaults(part: RegionPart, index: number): string[] {
  return touchesFormRing(part) ? [`part ${index}: touching loops cut it into more than one piece`] : [];
}

/** Loops that touch are links of a graph; a ring in it encloses metal that belongs to another part. */
function touchesFormRing(part: RegionPart): boolean {
  const group = [part.outer, ...part.holes].map((_, k) => k);
  const rootOf = (k: number): number => (group[k] === k ? k : rootOf(group[k] as number));
  const firstAt = new Map<string, number>();
  let ring = false;
  [part.outer, ...part.holes].forEach((loop, k) => {
    const joined = new Set<string>();
    for (const edge of loop) {
      const key = at(edge.a);
      const first = firstAt.get(key);
      if (first === undefined) firstAt.set(key, k);
      else if (first !== k && !joined.has(key)) {
        joined.add(key);
        if (rootOf(first) === rootOf(k)) ring = true;
        group[rootOf(k)] = rootOf(first);
      }
    }
  });
  return ring;
}

function nestingFaults(part: RegionPart, index: number): string[] {
  const faults: string[] = [];
  const boxes = part.holes.map((hole) => boxOf(hole));
  part.holes.forEach((hole, h) => {
    if (!liesIn(hole, part.outer)) faults.push(`part ${index} hole ${h}: not inside the outer loop`);
    part.holes.forEach((other, k) => {
      if (h !== k && boxesMeet(boxes[h] as Box, boxes[k] as Box) && liesIn(hole, other)) {
        faults.push(`part ${index} hole ${h}: inside hole ${k}`);
      }
    });
  });
  return faults;
}

/** Parts overlap nowhere. Their edges do not cross (checked above), so one place of each decides. */
function partFaults(region: Region): string[] {
  const boxes = region.map((part) => boxOf(edgesOf([part])));
  return region.flatMap((part, p) =>
    region.flatMap((other, q) => {
      if (p === q || !boxesMeet(boxes[p] as Box, boxes[q] as Box)) return [];
      const inside = liesIn(part.outer, other.outer) && !other.holes.some((hole) => liesIn(part.outer, hole));
      return inside ? [`part ${p}: inside the metal of part ${q}`] : [];
    }),
  );
}

function boxesMeet(s: Box, t: Box): boolean {
  return s.minX <= t.maxX && t.minX <= s.maxX && overlapInY(s, t, 0);
}

/** True if a loop that does not cross another one lies inside it: seen at its place farthest from the other. */
function liesIn(loop: Loop, other: Loop): boolean {
  let best = { place: (loop[0] as Edge).a, gap: -1 };
  for (const edge of loop) {
    const place = placeAt(edge, 0.5);
    const gap = Math.min(...other.map((o) => gapTo(o, place)));
    if (gap > best.gap) best = { place, gap };
  }
  return windingOf(other, best.place) !== 0;
}

function at(p: { readonly x: number; readonly y: number }): string {
  return `(${p.x}, ${p.y})`;
}
