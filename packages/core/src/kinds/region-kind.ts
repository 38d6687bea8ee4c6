import { type Bounds, extentOf, joined } from '../geometry/bounds.js';
import type { Edge } from '../geometry/edge.js';
import { distance, samePoint } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { loopArea, loopBounds, loopLength } from '../region/measure.js';
import type { Loop, Region, RegionPart } from '../region/region.js';
import { type Check, type Fault, flag, must, overZero, point, within } from './kinds.js';

/** Gives the object that it is told to back, so that a subclass puts its private field on that one. */
class Given {
  constructor(region: object) {
    // biome-ignore lint/correctness/noConstructorReturn: this is how a private field comes to be on an object at hand
    return region;
  }
}

/**
 * Marks regions that the library made, or has looked at and found sound, by a private field, which nobody sees and no copy
 * has. It takes nanoseconds; a set of them would cost a microsecond for each region, as much as a small cut takes.
 */
class Sound extends Given {
  readonly #sound = true;

  static has(region: object): boolean {
    return #sound in region;
  }
}

/** Notes that a region is sound, so that it is not looked at again. */
export function vouchFor<T extends object>(region: T): T {
  if (!Sound.has(region)) new Sound(region);
  return region;
}

/** Ends may lie this far off their circle, as a share of its radius; drawings round their numbers. */
const RADIUS_SLACK = 1e-3;

/** And as a share of the extent: welding has moved the ends of small arcs by up to that. */
const WELD_SLACK = 4e-9;

/** The same of an edge alone, of which nobody knows what it is part of: only what is no arc at all is refused. */
const LONE_SLACK = 0.1;

/** A line or an arc. */
export const edge: Check = (value) => edgeFault(value) ?? offCircle(value as Edge, LONE_SLACK, 0);

/** Edges one after the other, one at least, whether they join or not. */
export const path: Check = (value) => {
  if (!Array.isArray(value)) return must(value, 'be a list of edges');
  if (value.length === 0) return must(value, 'have one edge at least');
  for (let k = 0; k < value.length; k++) {
    const fault = edge(value[k]);
    if (fault !== null) return within(`[${k}]`, fault);
  }
  return null;
};

/** As `path`, or none. */
export const edges: Check = (value) => (Array.isArray(value) && value.length === 0 ? null : path(value));

/** A closed chain of edges. */
export const loop: Check = (value) => path(value) ?? gapIn(value as Loop);

/**
 * A region, looked at edge by edge and loop by loop: numbers finite, no edge without length, ends on their circles, loops
 * closed, outer ones counter-clockwise and holes clockwise. Whether loops cross is for `checkRegion` to say.
 */
export const region: Check = (value) => {
  if (typeof value === 'object' && value !== null && Sound.has(value)) return null;
  const fault = regionFault(value);
  if (fault === null) vouchFor(value as object);
  return fault;
};

/** What a glance at a region finds; null if it is as a region is. */
export function regionFault(value: unknown): Fault | null {
  if (!Array.isArray(value)) return wrong(must(value, 'be a region, which is a list of parts', PARTS));
  for (let k = 0; k < value.length; k++) {
    const fault = partFault(value[k]);
    if (fault !== null) return wrong(within(`[${k}]`, fault));
  }
  const extent = value.length === 0 ? 0 : extentOf(boundsOfParts(value as Region));
  for (let k = 0; k < value.length; k++) {
    const fault = shapeFault(value[k] as RegionPart, extent);
    if (fault !== null) return wrong(within(`[${k}]`, fault));
  }
  return null;
}

const PARTS = 'make one by outlineRegion, disc or regionFromJson; repairRegion mends what can be mended';

const wrong = (fault: Fault): Fault => ({ ...fault, code: 'region' });

function boundsOfParts(parts: Region): Bounds {
  return parts.map(({ outer }) => loopBounds(outer)).reduce(joined);
}

function partFault(value: unknown): Fault | null {
  if (typeof value !== 'object' || value === null || !('outer' in value) || !('holes' in value))
    return must(value, 'be a part of a region, which has outer and holes', PARTS);
  if (!Array.isArray(value.holes)) return within('.holes', must(value.holes, 'be a list of loops'));
  const fault = chainFault(value.outer);
  if (fault !== null) return within('.outer', fault);
  for (let k = 0; k < value.holes.length; k++) {
    const inHole = chainFault(value.holes[k]);
    if (inHole !== null) return within(`.holes[${k}]`, inHole);
  }
  return null;
}

function chainFault(value: unknown): Fault | null {
  if (!Array.isArray(value)) return must(value, 'be a loop, which is a list of edges', PARTS);
  if (value.length < 2) return must(value, 'have two edges at least');
  for (let k = 0; k < value.length; k++) {
    const fault = edgeFault(value[k]);
    if (fault !== null) return within(`[${k}]`, fault);
  }
  return gapIn(value as Loop);
}

/** What an overlay welds is no gap. */
function gapIn(chain: Loop): Fault | null {
  const isJoined = (b: Edge['b'], a: Edge['a']): boolean =>
    samePoint(b, a) || distance(a, b) <= weldTolerance(extentOf(loopBounds(chain)));
  for (let k = 0; k < chain.length; k++) {
    const next = (k + 1) % chain.length;
    const { b } = chain[k] as Edge;
    const { a } = chain[next] as Edge;
    if (isJoined(b, a)) continue;
    const what = `ends at ${shownPoint(b)}, ${shownNumber(distance(a, b))} from where [${next}] starts; a loop is closed`;
    return {
      at: `[${k}]`,
      what,
      remedy: 'end each edge where the next one starts, or use repairRegion',
    };
  }
  return null;
}

function edgeFault(value: unknown): Fault | null {
  if (typeof value !== 'object' || value === null) return must(value, 'be an edge, a line or an arc');
  const { kind, a, b, source } = value as Record<string, unknown>;
  if (kind !== 'line' && kind !== 'arc') return within('.kind', must(kind, 'be "line" or "arc"'));
  const atEnd = fieldFault('.a', point(a)) ?? fieldFault('.b', point(b));
  if (atEnd !== null) return atEnd;
  if (source !== undefined && typeof source !== 'string') return within('.source', must(source, 'be a text'));
  if (samePoint(a as Edge['a'], b as Edge['b'])) {
    const what = `has both ends at ${shownPoint(a as Edge['a'])}; an edge has a length`;
    return { at: '', what, remedy: 'leave it out; make a full circle of two arcs' };
  }
  if (kind === 'line') return null;
  const { center, radius, ccw } = value as Record<string, unknown>;
  return (
    fieldFault('.center', point(center)) ??
    fieldFault('.radius', overZero(radius)) ??
    fieldFault('.ccw', flag(ccw))
  );
}

function fieldFault(at: string, fault: Fault | null): Fault | null {
  return fault === null ? null : within(at, fault);
}

function offCircle(one: Edge, share: number, slack: number): Fault | null {
  if (one.kind === 'line') return null;
  const { center, radius, a, b } = one;
  const off = Math.max(Math.abs(distance(center, a) - radius), Math.abs(distance(center, b) - radius));
  if (off <= share * radius + slack) return null;
  const what = `has an end ${shownNumber(off)} off its circle of radius ${shownNumber(radius)}`;
  return {
    at: '',
    what,
    remedy: 'both ends must lie as far from the centre as the radius says; use arcEdge',
  };
}

function shapeFault({ outer, holes }: RegionPart, extent: number): Fault | null {
  const inOuter = loopFault(outer, 1, extent);
  if (inOuter !== null) return within('.outer', inOuter);
  for (let k = 0; k < holes.length; k++) {
    const inHole = loopFault(holes[k] as Loop, -1, extent);
    if (inHole !== null) return within(`.holes[${k}]`, inHole);
  }
  return null;
}

function loopFault(one: Loop, sense: 1 | -1, extent: number): Fault | null {
  for (let k = 0; k < one.length; k++) {
    const fault = offCircle(one[k] as Edge, RADIUS_SLACK, WELD_SLACK * extent);
    if (fault !== null) return within(`[${k}]`, fault);
  }
  // A loop as thin as rounding has no sense.
  if (sense * loopArea(one) > -WELD_SLACK * extent * loopLength(one)) return null;
  const [runs, should] =
    sense === 1 ? ['clockwise', 'counter-clockwise'] : ['counter-clockwise', 'clockwise'];
  const whose = sense === 1 ? 'an outer loop' : 'a hole';
  const remedy = 'turn it round, or use repairRegion';
  return { at: '', what: `runs ${runs}; ${whose} runs ${should}`, remedy };
}
