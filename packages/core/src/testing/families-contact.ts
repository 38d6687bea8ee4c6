import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';
import { type Anchor, anchorOn, fromAnchor, stepped } from './anchors.js';
import type { Cut } from './cut-case.js';
import { type Family, type FamilyPlan, family, type Picks } from './family.js';
import { ells, plates, rectangles } from './outlines.js';

function disc(center: Point, radius: number): Cut {
  return { kind: 'disc', center, radius };
}

/** A disc tangent to an edge but for a gap: inside for even choices, outside for odd ones. */
function nearTangent(gap: number): FamilyPlan['build'] {
  return (outline, { edge, along, choice, second, direction, ...picked }) => {
    const anchor = anchorOn(outline, edge, along);
    const radius = unlike(anchor.edge, picked.radius);
    const signed = choice & 2 ? -gap : gap;
    const first = disc(fromAnchor(anchor, choice & 1 ? -radius - signed : radius + signed), radius);
    if (!(choice & 4)) return [first];
    // And a second disc that as nearly touches the first.
    const other = stepped(
      first.kind === 'disc' ? first.center : anchor.at,
      direction,
      radius + second + signed,
    );
    return [first, disc(other, second)];
  };
}

/** A radius that is not the edge's: else disc and edge would run along each other, closer than the gap. */
function unlike(edge: Edge, radius: number): number {
  return edge.kind === 'arc' && Math.abs(edge.radius - radius) < 0.25 ? radius + 0.5 : radius;
}

/** Discs of nearly the same circle: radius or centre off by the gap. */
function nearCoincident(gap: number): FamilyPlan['build'] {
  return (outline, { edge, along, radius, choice, direction, second }) => {
    const center = fromAnchor(anchorOn(outline, edge, along), (choice - 2) * (second / 8));
    const other = choice & 1 ? disc(center, radius + gap) : disc(stepped(center, direction, gap), radius);
    return [disc(center, radius), other];
  };
}

function cornerOf(anchor: Anchor): Point {
  return (anchor.edge as Edge).a;
}

/** Touching chain or grid of equal discs; steps along rational directions, so that they touch to the bit or nearly. */
function touchingGrid(from: Point, { radius, count, direction }: Picks): Cut[] {
  const side = Math.min(count, 4);
  return Array.from({ length: side * side }, (_, k) => {
    const across = stepped(from, direction, (k % side) * radius);
    // Direction k + 1 of the table stands square on direction k within each group of four.
    const square = direction - (direction % 4) + ((direction + 1) % 4);
    return disc(stepped(across, square, Math.floor(k / side) * radius), radius / 2);
  });
}

const NEAR_GAPS = [
  { gap: 1e-3, marginal: false },
  { gap: 1e-6, marginal: false },
  // Of a part 100 long: 1e-7 is the weld tolerance itself, 1e-9 well below it.
  { gap: 1e-7, marginal: true },
  { gap: 1e-9, marginal: true },
];

/** Families in which cuts touch the outline or each other, exactly or nearly. */
export const contactFamilies: readonly Family[] = [
  family({
    name: 'tangent-inside',
    about: 'a disc inside that touches a line or an arc',
    build: (outline, { edge, along, radius }) => [
      disc(fromAnchor(anchorOn(outline, edge, along), radius), radius),
    ],
  }),
  family({
    name: 'tangent-outside',
    about: 'a disc outside that touches a line or an arc, and another cut',
    build: (outline, { edge, along, radius, second }) => {
      const anchor = anchorOn(outline, edge, along);
      return [disc(fromAnchor(anchor, -radius), radius), disc(fromAnchor(anchor, second + 1), second)];
    },
  }),
  family({
    name: 'tangent-ring',
    about: 'a ring whose outer or inner circle touches an edge',
    build: (outline, { edge, along, radius, second, choice }) => {
      const reach = choice & 1 ? radius : radius + second;
      const center = fromAnchor(anchorOn(outline, edge, along), choice & 2 ? -reach : reach);
      return [{ kind: 'ring', center, outer: radius + second, inner: radius }];
    },
  }),
  family({
    name: 'tangent-to-two',
    about: 'a disc that touches both sides of a square corner',
    outlines: rectangles,
    build: (outline, { edge, radius, second }) => {
      const { at, inward } = anchorOn(outline, edge, 0);
      const before = anchorOn(outline, edge + 3, 8).inward;
      const center = (r: number): Point => ({
        x: at.x + (inward[0] + before[0]) * r,
        y: at.y + (inward[1] + before[1]) * r,
      });
      return [disc(center(radius), radius), disc(center(second), second)];
    },
  }),
  family({
    name: 'centre-on-edge',
    about: 'a disc whose centre lies on an edge',
    build: (outline, { edge, along, radius }) => [disc(anchorOn(outline, edge, along).at, radius)],
  }),
  family({
    name: 'centre-on-corner',
    about: 'a disc or ring whose centre is a corner',
    build: (outline, { edge, radius, second, choice }) => {
      const center = cornerOf(anchorOn(outline, edge, 8));
      if (choice & 1) return [{ kind: 'ring', center, outer: radius + second, inner: radius }];
      return [disc(center, radius)];
    },
  }),
  family({
    name: 'through-corner',
    about: 'a circle that passes through a corner',
    build: (outline, { edge, radius, direction }) => [
      disc(stepped(cornerOf(anchorOn(outline, edge, 8)), direction, radius), radius),
    ],
  }),
  family({
    name: 'touching-reflex-corner',
    about: 'a disc in the metal that touches an inner corner of an L or of a hole',
    outlines: ells,
    build: (outline, { edge, radius, direction }) => {
      // The reflex corner starts edge 3 of a sharp L, edge 6 of a rounded one (the arc before it).
      const corner = anchorOn(outline, edge % 2 === 0 ? 3 : 6, 0).at;
      return [disc(stepped(corner, direction, -radius), radius)];
    },
  }),
  family({
    name: 'common-point',
    about: 'several circles through one place in the metal',
    build: (outline, { edge, along, count, direction, radius, second }) => {
      const place = fromAnchor(anchorOn(outline, edge, along), second / 2);
      return Array.from({ length: count }, (_, k) => {
        const r = radius / 2 + k;
        return disc(stepped(place, direction + 5 * k, r), r);
      });
    },
  }),
  family({
    name: 'touching-holes',
    about: 'a chain of holes, each touching the next at a point',
    outlines: plates,
    build: (outline, { edge, along, count, direction, radius, second }) => {
      let at = fromAnchor(anchorOn(outline, edge, along), second / 2);
      return Array.from({ length: count }, (_, k) => {
        const cut = disc(at, (radius + k) / 4);
        at = stepped(at, direction + (k % 3) * 4, (radius + k) / 4 + (radius + k + 1) / 4);
        return cut;
      });
    },
  }),
  family({
    name: 'touching-grid',
    about: 'equal discs on a square grid, each touching its neighbours',
    build: (outline, picked) =>
      touchingGrid(fromAnchor(anchorOn(outline, picked.edge, picked.along), 1), picked),
  }),
  family({
    name: 'tangent-discs',
    about: 'a disc inside another one, touching it from within, and a ring the other way',
    build: (outline, { edge, along, radius, second, direction, choice }) => {
      const center = fromAnchor(anchorOn(outline, edge, along), choice);
      const outer = radius + second;
      const inner = disc(stepped(center, direction, outer - radius), radius);
      if (choice & 1) return [inner, disc(center, outer)];
      return [{ kind: 'ring', center, outer: outer + 2, inner: outer }, inner];
    },
  }),
  ...NEAR_GAPS.flatMap(({ gap, marginal }) => [
    family({
      name: `near-tangent-${gap.toExponential()}`,
      about: `discs that miss or pass an edge or each other by ${gap}`,
      marginal,
      build: nearTangent(gap),
    }),
    family({
      name: `near-coincident-${gap.toExponential()}`,
      about: `two discs whose circles differ by ${gap}`,
      marginal,
      build: nearCoincident(gap),
    }),
  ]),
];
