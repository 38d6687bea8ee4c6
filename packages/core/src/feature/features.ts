/*
 * Room: holes, arcs, slots and walls in what is to go, and the cuts that make each.
 * In: an aim.
 * Out: features, each with the methods that its tools allow.
 */

import { type Aim, type AimLayer, SAME_SHARE } from '../aim/aim.js';
import { FINISHED } from '../aim/layers.js';
import { intersect } from '../combine/boolean.js';
import { subtract } from '../combine/subtract.js';
import type { Edge } from '../geometry/edge.js';
import { directionAtEnd, directionAtStart, pointAlong } from '../geometry/measure.js';
import { distance, type Point } from '../geometry/point.js';
import { roundedTo } from '../geometry/shown.js';
import { area, boundsOf, loopsOf } from '../region/measure.js';
import { disc, type Loop, type Region, type RegionPart } from '../region/region.js';
import { roundSlotsIn } from './round-slots.js';
import { type ArcCircle, type Slot, slotsIn } from './slots.js';

interface EveryFeature {
  /** `hole-1`, `arc-2`, `slot-1`, `wall-3`. */
  readonly id: string;
  readonly layer: AimLayer;
}

/** A round place of the finished part: a hole, or an arc that opens a side. Lengths in the unit of the aim. */
export interface RoundFeature extends EveryFeature {
  readonly kind: 'round';
  readonly center: Point;
  readonly radius: number;
  /** Whether its circle leaves the blank. */
  readonly isOpen: boolean;
}

/** A slot, straight or along an arc, with round ends, or ends in the air. */
export interface SlotFeature extends EveryFeature, Slot {
  readonly kind: 'slot';
}

/** All that is to go in one piece, to be milled along its walls. */
export interface WallFeature extends EveryFeature {
  readonly kind: 'wall';
  readonly region: Region;
}

/** What one method makes. */
export type Feature = RoundFeature | SlotFeature | WallFeature;

/** A connected piece of what is to go in a layer. */
export interface Patch {
  readonly layer: AimLayer;
  readonly region: Region;
  /** Features that together make it: several ways to see it. */
  readonly recipes: readonly (readonly Feature[])[];
  /** A corner that no round tool leaves; null if there is none. */
  readonly corner: Point | null;
}

/** The pieces of what is to go, each as round places and slots where these make it up, and as walls to mill along. */
export function patchesOf(aim: Aim): Patch[] {
  const counts = new Map<string, number>();
  const named = (word: string) => {
    const count = (counts.get(word) ?? 0) + 1;
    counts.set(word, count);
    return `${word}-${count}`;
  };
  return aim.layers.flatMap((layer) => layer.rest.map((part) => patchOf(aim, layer, part, named)));
}

function patchOf(aim: Aim, layer: AimLayer, part: RegionPart, named: (word: string) => string): Patch {
  const nothing = SAME_SHARE * area(aim.job.outline);
  const region = [part];
  const clear = (tool: Region) => area(intersect([layer.stays, tool])) <= nothing;
  const circles = circlesOf(part).filter(({ center, radius }) => clear(disc(center, radius)));
  const discs = (all: typeof circles) => all.map(({ center, radius }) => disc(center, radius));
  const isWhole = (tools: readonly Region[]) => area(subtract(region, tools)) <= nothing;
  const slots = isWhole(discs(circles))
    ? []
    : [...slotsIn(region, circles, aim.job.outline, clear), ...roundSlotsIn(region, circles, clear)];
  const taken = slots.map(({ swept }) => swept);
  const rounds = circles.filter(
    ({ center, radius }) => slots.length === 0 || area(subtract(disc(center, radius), taken)) > nothing,
  );
  const features = (): Feature[] => [
    ...rounds.map(({ center, radius }): RoundFeature => {
      const isOpen = area(subtract(disc(center, radius), [aim.job.outline])) > nothing;
      return { kind: 'round', id: named(isOpen ? 'arc' : 'hole'), layer, center, radius, isOpen };
    }),
    ...slots.map((slot): SlotFeature => ({ kind: 'slot', id: named('slot'), layer, ...slot })),
  ];
  const made = isWhole([...discs(rounds), ...taken]) ? [features()] : [];
  const isRound = made.length > 0 && slots.length === 0 && rounds.length === 1;
  const walls = (): Feature[] => [{ kind: 'wall', id: named('wall'), layer, region }];
  return { layer, region, recipes: isRound ? made : [...made, walls()], corner: cornerIn(region) };
}

/** The circles that the hollow arcs of a piece's made walls lie on, each once. */
function circlesOf(part: RegionPart): ArcCircle[] {
  const found: ArcCircle[] = [];
  for (const edge of [part.outer, ...part.holes].flat()) {
    if (edge.kind !== 'arc' || !edge.ccw || edge.source !== FINISHED) continue;
    const { center, radius } = edge;
    const near = SAME_CIRCLE * radius;
    const isKnown = found.some(
      (one) => distance(one.center, center) <= near && Math.abs(one.radius - radius) <= near,
    );
    if (!isKnown) found.push(withoutRounding({ center, radius }));
  }
  return found;
}

/** Digits of a circle that count, against its radius: those beyond are rounding, and would stand in a job as they are. */
const DIGITS = 12;

/** A circle whose numbers are as short as its drawing had them: 0 for 8.9e-16. */
function withoutRounding({ center, radius }: ArcCircle): ArcCircle {
  const digits = Math.min(Math.max(DIGITS - Math.ceil(Math.log10(radius)), 0), 100);
  const plain = (value: number) => roundedTo(value, digits);
  return { center: { x: plain(center.x), y: plain(center.y) }, radius: plain(radius) };
}

/** Circles closer than this share of their radius are one: rounding of drawings. */
const SAME_CIRCLE = 1e-7;

/** Walls that turn by less than this, as a sine, go on straight: rounding of drawings. */
const STRAIGHT = 1e-6;

/** A place where two walls meet in an inside corner of the part. */
function cornerIn(region: Region): Point | null {
  for (const loop of loopsOf(region)) {
    for (const [k, edge] of loop.entries()) {
      const before = loop[(k + loop.length - 1) % loop.length] as Edge;
      if (edge.source === FINISHED && before.source === FINISHED && turnsIn(before, edge)) return edge.a;
    }
  }
  return null;
}

/** Whether what is to go has a corner of less than half a turn between two edges. */
function turnsIn(before: Edge, after: Edge): boolean {
  const u = directionAtEnd(before);
  const v = directionAtStart(after);
  return u.dx * v.dy - u.dy * v.dx > STRAIGHT;
}

/** The middle of the longest wall of a patch, or a corner of it where it has none. */
export function wallPlace({ region }: Patch): Point {
  const edges = loopsOf(region).flat();
  const walls = edges.filter(({ source }) => source === FINISHED);
  const lengthOf = ({ a, b }: Edge) => distance(a, b);
  const all: Loop = walls.length > 0 ? walls : edges;
  const longest = all.reduce((most, edge) => (lengthOf(edge) > lengthOf(most) ? edge : most));
  return pointAlong(longest, 1 / 2);
}

/** The smallest radius of the hollow arcs of a patch; where it has none, half of what is narrowest is not known: its box. */
export function smallestArc({ region }: Patch): number {
  const radii = loopsOf(region)
    .flat()
    .flatMap((edge) => (edge.kind === 'arc' && edge.ccw && edge.source === FINISHED ? [edge.radius] : []));
  const box = boundsOf(region);
  const narrow = box === null ? 0 : Math.min(box.maxX - box.minX, box.maxY - box.minY) / 2;
  return Math.min(...radii, narrow);
}
