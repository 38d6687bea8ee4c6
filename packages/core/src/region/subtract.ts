import { type Bounds, extentOf, grown } from '../geometry/bounds.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { arrange, arrangeSparse } from './arrange.js';
import { circleOf } from './circle.js';
import { clearCut } from './clear-cut.js';
import { windingRound } from './contains.js';
import { boxOf } from './gather.js';
import { loopsOf } from './measure.js';
import { circleLoop, type Loop, type Region, type RegionPart } from './region.js';
import { mayMeet, sparse } from './sparse.js';
import { SLIVER } from './sliver.js';
import { type Body, bodiesIn, collect } from './stitch.js';
import { windings } from './windings.js';

/** Up to this many cuts are looked at one part at a time, and only with the loops that are near them. */
const FEW_CUTS = 8;

/** How many tolerances from the cuts an edge must be to be left out; one would do. */
const NEAR_SLACK = 4;

/**
 * What is left of a region when others are taken from it, all in one go; their order does not matter and they may
 * overlap. Every edge keeps the source of the edge that it is part of.
 */
export function subtract(from: Region, cuts: readonly Region[]): Region {
  const cutLoops = cuts.map(loopsOf).filter((loops) => loops.length > 0);
  if (from.length === 0 || cutLoops.length === 0) return from;
  // Parts that touch share joints, which only an overlay of all of them can tell.
  const frame = boxOf([from.map(({ outer }) => outer)]);
  const discs = circlesOf(cutLoops);
  const clear = discs === null ? null : clearCut(from, discs, frame);
  if (clear !== null) return clear;
  if (cutLoops.length > FEW_CUTS || from.length > 1) return everywhere(loopsOf(from), cutLoops, frame);
  const near = grown(boxOf(cutLoops), NEAR_SLACK * weldTolerance(extentOf(frame)));
  return from.flatMap((part) => fromPart(part, cutLoops, near, frame));
}

function everywhere(whole: readonly Loop[], cuts: readonly (readonly Loop[])[], frame: Bounds): Region {
  const subdivision = arrange([whole, ...cuts], frame);
  const inWhole = windings(subdivision, (operand) => operand === 0);
  const inCuts = windings(subdivision, (operand) => operand > 0);
  const kept = new Uint8Array(subdivision.faceCount);
  for (let f = 1; f < kept.length; f++) if ((inWhole[f] as number) > 0 && inCuts[f] === 0) kept[f] = 1;
  return collect(subdivision, kept).map(({ outer, holes }) => ({ outer, holes }));
}

/** Loops with no edge near the cuts stay as they are, and only have to be dealt out to what is left. */
function fromPart(
  part: RegionPart,
  cuts: readonly (readonly Loop[])[],
  near: Bounds,
  frame: Bounds,
): RegionPart[] {
  const isNear = (edge: Edge) => mayMeet(edge, near);
  const hole = soleCircle(cuts);
  if (hole !== null && !isAnyNear(part, near)) return withHole(part, hole, frame);
  const loops = withTouching([part.outer, ...part.holes], (loop) => loop.some(isNear));
  const outerIsActive = loops[0] === true;
  const activeHoles = part.holes.filter((_, k) => loops[k + 1]);
  const idleHoles = part.holes.filter((_, k) => !loops[k + 1]);
  // Nothing of an idle loop is near, so all of the cuts lies on one side of it: beyond the part, or in a hole.
  const { a: cut } = ((cuts[0] as readonly Loop[])[0] as Loop)[0] as Edge;
  if (!outerIsActive && windingRound(part.outer, cut) === 0) return [part];
  if (idleHoles.some((hole) => windingRound(hole, cut) !== 0)) return [part];
  const active = outerIsActive ? [part.outer, ...activeHoles] : activeHoles;
  // With more loops than one, a run that is put away could hide a place where they touch.
  const thinned =
    active.length === 1 ? active.map((loop) => sparse(loop, isNear, weldTolerance(extentOf(frame)))) : active;
  const isThinned = thinned.some((loop, k) => loop !== active[k]);
  const subdivision =
    (isThinned ? arrangeSparse([thinned, ...cuts], frame, outerIsActive) : null) ??
    arrange([active, ...cuts], frame);
  const inPart = windings(subdivision, (operand) => operand === 0);
  const inCuts = windings(subdivision, (operand) => operand > 0);
  const base = outerIsActive ? 0 : 1;
  const kept = new Uint8Array(subdivision.faceCount);
  for (let f = 0; f < kept.length; f++) if (base + (inPart[f] as number) > 0 && inCuts[f] === 0) kept[f] = 1;
  return dealtOut(part, bodiesIn(subdivision, kept, always, isPart), idleHoles, outerIsActive);
}

/** The full circles that the cuts are; null if one is no disc. */
function circlesOf(cuts: readonly (readonly Loop[])[]): ArcEdge[] | null {
  const circles: ArcEdge[] = [];
  for (const loops of cuts) {
    const circle = loops.length === 1 ? circleOf(loops[0] as Loop) : null;
    if (!circle?.ccw) return null;
    circles.push(circle);
  }
  return circles;
}

/** The circle that all cuts together are; null for all others. */
function soleCircle(cuts: readonly (readonly Loop[])[]): ArcEdge | null {
  const [first] = cuts;
  if (cuts.length !== 1 || first?.length !== 1) return null;
  const circle = circleOf(first[0] as Loop);
  return circle?.ccw ? circle : null;
}

function isAnyNear({ outer, holes }: RegionPart, near: Bounds): boolean {
  for (const edge of outer) if (mayMeet(edge, near)) return true;
  for (const hole of holes) {
    for (const edge of hole) if (mayMeet(edge, near)) return true;
  }
  return false;
}

/** A part less a disc that comes near none of its loops. */
function withHole(part: RegionPart, { a, center, radius, source }: ArcEdge, frame: Bounds): RegionPart[] {
  const isThin = radius <= SLIVER * weldTolerance(extentOf(frame));
  if (isThin || windingRound(part.outer, a) === 0) return [part];
  for (const hole of part.holes) if (windingRound(hole, a) !== 0) return [part];
  return [{ outer: part.outer, holes: [circleLoop(center, radius, false, source), ...part.holes] }];
}

const always = () => true;
const isPart = (operand: number) => operand === 0;

/** Which loops are active, those included that touch an active one: what they part, they part together. */
function withTouching(loops: readonly Loop[], isActive: (loop: Loop) => boolean): boolean[] {
  const active = loops.map(isActive);
  const waiting = active.flatMap((yes, k) => (yes ? [k] : []));
  if (waiting.length === 0 || waiting.length === loops.length) return active;
  const joints = new Map<number, number[]>();
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    for (const { a } of loops[next] as Loop) {
      const known = joints.get(a.x);
      if (known === undefined) joints.set(a.x, [a.y]);
      else known.push(a.y);
    }
    if (waiting.length > 0) continue;
    loops.forEach((loop, k) => {
      if (active[k] || !loop.some(({ a }) => joints.get(a.x)?.includes(a.y))) return;
      active[k] = true;
      waiting.push(k);
    });
  }
  return active;
}

/** Puts the loops that were left out back where they belong. */
function dealtOut(
  part: RegionPart,
  bodies: readonly Body[],
  idleHoles: readonly Loop[],
  outerIsActive: boolean,
): RegionPart[] {
  const drafts: { outer: Loop; holes: Loop[] }[] = [];
  // The part of an idle outer loop, if it is one, comes last: it has what no other part has.
  let rest: readonly Loop[] = [];
  for (const { outer, holes, isEndless } of bodies) {
    if (isEndless) rest = holes;
    else if (outer !== null) drafts.push({ outer, holes: [...holes] });
  }
  const made = drafts.map(({ outer, holes }) => ({ outer, holes: [...holes] }));
  if (!outerIsActive) drafts.push({ outer: part.outer, holes: [...rest] });
  for (const hole of idleHoles) {
    // Idle holes may touch each other or an idle outer loop, but none of the loops that are new.
    const { a: at } = hole[0] as Edge;
    const home = made.findIndex((part) => isHome(part, at));
    drafts.at(home)?.holes.push(hole);
  }
  return drafts;
}

function isHome({ outer, holes }: RegionPart, at: { x: number; y: number }): boolean {
  return windingRound(outer, at) !== 0 && !holes.some((hole) => windingRound(hole, at) !== 0);
}
