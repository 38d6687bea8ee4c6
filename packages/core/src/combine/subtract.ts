/*
 * Room: the operations on regions: subtract, unite, intersect, xor, offset.
 * In: regions, and a distance for an offset.
 * Out: regions; every edge names its source.
 */

import { clearCut, clearShapes } from '../clear/clear-cut.js';
import { type Bounds, extentOf, grown } from '../geometry/bounds.js';
import type { ArcEdge, Edge } from '../geometry/edge.js';
import { anyMayMeet } from '../geometry/near.js';
import { weldTolerance } from '../geometry/tolerance.js';
import { boundsOfOperands } from '../noding/gather.js';
import { arrange } from '../overlay/arrange.js';
import { collect } from '../overlay/stitch.js';
import { windings } from '../overlay/windings.js';
import { circleOf } from '../region/circle.js';
import { windingRound } from '../region/contains.js';
import { homesOf } from '../region/homes.js';
import { Joints, touching } from '../region/joints.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, Region, RegionPart } from '../region/region.js';

/** Up to this many cuts, only the loops near them are examined. */
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
  const frame = boundsOfOperands([from.map(({ outer }) => outer)]);
  const discs = discsIn(cutLoops);
  const clear = discs === null ? clearShapes(from, cutLoops, frame) : clearCut(from, discs, frame);
  if (clear !== null) return clear;
  // Parts that touch share joints, which only an overlay of all of them can tell.
  const [part, ...others] = from;
  if (part === undefined || others.length > 0 || cutLoops.length > FEW_CUTS) {
    return everywhere(loopsOf(from), cutLoops, frame);
  }
  return fromPart(part, cutLoops, frame);
}

/** The full circles that the cuts are; null if one is no disc, or has two names. */
function discsIn(cuts: readonly (readonly Loop[])[]): ArcEdge[] | null {
  const circles: ArcEdge[] = [];
  for (const loops of cuts) {
    const loop = loops[0] as Loop;
    const circle = loops.length === 1 ? circleOf(loop) : null;
    if (!circle?.ccw || circle.source !== loop[1]?.source) return null;
    circles.push(circle);
  }
  return circles;
}

function everywhere(whole: readonly Loop[], cuts: readonly (readonly Loop[])[], frame: Bounds): Region {
  const subdivision = arrange([whole, ...cuts], frame);
  const inWhole = windings(subdivision, (operand) => operand === 0);
  const inCuts = windings(subdivision, (operand) => operand > 0);
  const kept = new Uint8Array(subdivision.faceCount);
  for (let f = 1; f < kept.length; f++) if ((inWhole[f] as number) > 0 && inCuts[f] === 0) kept[f] = 1;
  return collect(subdivision, kept).map(({ outer, holes }) => ({ outer, holes }));
}

/** Holes with no edge near the cuts stay as they are, and only have to be dealt out to what is left. */
function fromPart(part: RegionPart, cuts: readonly (readonly Loop[])[], frame: Bounds): Region {
  const slack = NEAR_SLACK * weldTolerance(extentOf(frame));
  const near = grown(boundsOfOperands(cuts), slack);
  const { outer, holes } = part;
  const isActive = withTouching([outer, ...holes], (loop) => loop === outer || anyMayMeet(loop, near));
  const idle = holes.filter((_, k) => !isActive[k + 1]);
  // Nothing of an idle hole is near, so that either none or all of the cuts lies in it.
  const { a: cut } = ((cuts[0] as readonly Loop[])[0] as Loop)[0] as Edge;
  if (idle.some((hole) => windingRound(hole, cut) !== 0)) return [part];
  const active = [outer, ...holes.filter((_, k) => isActive[k + 1])];
  const left = everywhere(active, cuts, frame).map(({ outer, holes }) => ({ outer, holes: [...holes] }));
  const homes = homesOf(
    left.map(({ outer }) => outer),
    idle,
    slack,
  );
  for (let k = 0; k < idle.length; k++) left[homes[k] as number]?.holes.push(idle[k] as Loop);
  return left;
}

/** Which loops are active, those included that touch an active one: what they part, they part together. */
function withTouching(loops: readonly Loop[], isActive: (loop: Loop) => boolean): boolean[] {
  const active = loops.map(isActive);
  if (!active.includes(true) || !active.includes(false)) return active;
  const joints = new Joints();
  loops.forEach((loop, k) => {
    if (active[k]) joints.add(loop);
  });
  // Most often none does. Otherwise chains of them are followed all at once.
  if (!loops.some((loop, k) => !active[k] && joints.touch(loop))) return active;
  const groups = touching(loops);
  const isChosen = new Set(active.flatMap((yes, k) => (yes ? [groups.leader(k)] : [])));
  return loops.map((_, k) => isChosen.has(groups.leader(k)));
}
