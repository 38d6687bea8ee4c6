import { type ArcEdge, type Edge, type Point, type Region, subtract } from '@edgebite/core';
import {
  areaOf,
  type Cut,
  type CutCase,
  cutRegions,
  edgesOf,
  extentOf,
  families,
} from '@edgebite/core/testing';
import fc from 'fast-check';
import { type Anchor, anchorOn, fromAnchor, stepped } from '../../packages/core/src/testing/anchors.js';

/**
 * Cuts in what earlier cuts have left: its arcs and corners are results, with all their rounding, and the new cuts
 * are set to touch, repeat or pass through just those.
 */
export const SECOND_CUTS = 'second-cuts';

/** How many ways there are to set a cut to an edge. */
const WAYS = 9;

interface Plan {
  readonly edge: number;
  readonly along: number;
  readonly direction: number;
  readonly size: number;
  readonly way: number;
  readonly ring: boolean;
}

/** Radii of the new cuts as shares of the extent; larger ones would be welded more coarsely than the part itself. */
const SIZES = [0.002, 0.01, 0.03, 0.1, 0.2, 0.5];

/** Planted gaps, as shares of the extent: far over the weld tolerance, so that nothing may hang on rounding. */
const GAPS = [1e-3, 1e-5, 1e-6];

/** What is left has to be this share of the squared extent, or the first outline is taken: a splinter proves nothing. */
const LEAST = 0.01;

const plans: fc.Arbitrary<Plan> = fc.record({
  edge: fc.nat(60),
  along: fc.integer({ min: 0, max: 16 }),
  direction: fc.nat(35),
  size: fc.nat(SIZES.length - 1),
  way: fc.nat(WAYS - 1),
  ring: fc.boolean(),
});

const firstCases = fc.oneof(...families.filter(({ marginal }) => !marginal).map(({ cases }) => cases));

/** Cases whose outline is a result. */
export const secondCuts: fc.Arbitrary<CutCase> = fc
  .tuple(firstCases, fc.array(plans, { minLength: 1, maxLength: 4 }))
  .map(([first, all]) => {
    const left = subtract(first.outline, cutRegions(first));
    const extent = extentOf(first.outline);
    const outline = areaOf(left) > LEAST * extent * extent ? left : first.outline;
    return { family: SECOND_CUTS, unit: first.unit, outline, cuts: all.map((plan) => cutBy(plan, outline)) };
  });

function cutBy(plan: Plan, outline: Region): Cut {
  const extent = extentOf(outline);
  const anchor = anchorOn(outline, plan.edge, plan.along);
  const radius = extent * (SIZES[plan.size] as number);
  const { center, r } = placed(plan, anchor, radius, outline, extent);
  return plan.ring ? { kind: 'ring', center, outer: r, inner: r * 0.7 } : { kind: 'disc', center, radius: r };
}

function placed(
  { way, direction, edge }: Plan,
  anchor: Anchor,
  radius: number,
  outline: Region,
  extent: number,
): { center: Point; r: number } {
  const arc = anchor.edge.kind === 'arc' ? anchor.edge : arcOf(outline, edge);
  const gap = extent * (GAPS[direction % GAPS.length] as number);
  switch (way) {
    case 0:
      return { center: fromAnchor(anchor, radius), r: radius };
    case 1:
      return { center: fromAnchor(anchor, -radius), r: radius };
    case 2:
      return { center: fromAnchor(anchor, radius + gap), r: radius };
    case 3:
      return { center: fromAnchor(anchor, radius - gap), r: radius };
    case 4:
      return { center: anchor.edge.a, r: radius };
    case 5:
      return { center: stepped(anchor.edge.a, direction, radius), r: radius };
    case 6:
      return arc === null
        ? { center: anchor.at, r: radius }
        : { center: arc.center, r: direction % 2 === 0 ? arc.radius : arc.radius + gap };
    case 7:
      return arc === null ? { center: anchor.at, r: radius } : { center: arc.center, r: radius };
    default:
      return { center: anchor.at, r: radius };
  }
}

function arcOf(outline: Region, edge: number): ArcEdge | null {
  const arcs = edgesOf(outline).filter((one: Edge): one is ArcEdge => one.kind === 'arc');
  return arcs[edge % Math.max(1, arcs.length)] ?? null;
}
