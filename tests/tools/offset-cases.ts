import {
  disc,
  type Edge,
  nearestOnEdge,
  pointAlong,
  type Region,
  ring,
  subtract,
  union,
  xor,
} from '@edgebite/core';
import {
  type Box,
  boxOf,
  boxRegion,
  capsule,
  cutRegions,
  edgesOf,
  extentOf,
  families,
  outlines,
  type Similarity,
  transformed,
  UNMOVED,
} from '@edgebite/core/testing';
import fc from 'fast-check';

/** A region to be grown (distance over 0) or shrunk. JSON-safe, so a failure can be kept. */
export interface OffsetCase {
  readonly region: Region;
  readonly distance: number;
}

/** A plain outline, or one that cuts have gone through: islands, tips, loops that touch. */
const cutOutlines: fc.Arbitrary<Region> = fc
  .oneof(...families.filter((family) => !family.marginal).map((family) => family.cases))
  .map((cutCase) => subtract(cutCase.outline, cutRegions(cutCase)));

/** Discs, rings, boxes and slots on a grid of whole numbers, so that contacts of every kind are common. */
const shapes: fc.Arbitrary<Region> = fc
  .record({
    kind: fc.constantFrom('disc', 'ring', 'box', 'slot'),
    x: fc.nat(20),
    y: fc.nat(20),
    size: fc.integer({ min: 1, max: 6 }),
    other: fc.integer({ min: 1, max: 6 }),
  })
  .map(({ kind, x, y, size, other }) => {
    if (kind === 'disc') return disc({ x, y }, size);
    if (kind === 'ring') return ring({ x, y }, size + 1, size);
    if (kind === 'box') return boxRegion(x, y, x + size, y + other);
    return capsule({ x, y }, { x: x + size, y: y + (other % 3) }, other / 2);
  });

const heaps: fc.Arbitrary<Region> = fc
  .record({
    parts: fc.array(shapes, { minLength: 2, maxLength: 10 }),
    how: fc.constantFrom('union', 'xor', 'plate'),
  })
  .map(({ parts, how }) => {
    if (how === 'plate') return subtract(boxRegion(0, 0, 20, 20), parts);
    return how === 'union' ? union(parts) : xor(parts);
  });

/** Regions of every kind, the empty one left out. */
export const regions: fc.Arbitrary<Region> = fc
  .oneof(outlines, cutOutlines, heaps)
  .filter((region) => region.length > 0);

/** How a distance is drawn: some share of the extent, or one at which something just happens. */
interface DistancePick {
  readonly kind: 'share' | 'radius' | 'gap' | 'width';
  readonly share: number;
  readonly one: number;
  readonly other: number;
  readonly shrinks: boolean;
}

const picks: fc.Arbitrary<DistancePick> = fc.record({
  kind: fc.constantFrom<DistancePick['kind']>('share', 'share', 'radius', 'gap', 'width'),
  share: fc.integer({ min: 1, max: 400 }).map((thousandths) => thousandths / 1000),
  one: fc.nat(1000),
  other: fc.nat(1000),
  shrinks: fc.boolean(),
});

/** Regions with a distance, a third of them turned by some angle. */
export const offsetCases: fc.Arbitrary<OffsetCase> = fc
  .record({
    region: regions,
    pick: picks,
    degrees: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 359 })),
  })
  .map(({ region, pick, degrees }) => {
    const angle = (degrees * Math.PI) / 180;
    const turn: Similarity['turn'] = degrees === 0 ? [1, 0] : [Math.cos(angle), Math.sin(angle)];
    const size = sizeOf(region, pick);
    const turned = transformed(region, { ...UNMOVED, turn });
    return { region: turned, distance: pick.shrinks ? -size : size };
  });

/** Cases that a peer's chords, fine as they must be for the distance, can be asked about. */
export const comparableCases: fc.Arbitrary<OffsetCase> = offsetCases.filter(
  ({ region, distance }) => Math.abs(distance) > 2e-3 * extentOf(region),
);

/** Over 0. */
function sizeOf(region: Region, { kind, share, one, other }: DistancePick): number {
  const plain = share * extentOf(region);
  const edges = edgesOf(region);
  if (kind === 'radius') {
    const arcs = edges.filter((edge) => edge.kind === 'arc');
    return arcs[one % Math.max(1, arcs.length)]?.radius ?? plain;
  }
  if (kind === 'gap') {
    const p = pointAlong(edges[one % edges.length] as Edge, (other % 3) / 2);
    return nearestOnEdge(edges[other % edges.length] as Edge, p).distance / 2 || plain;
  }
  return kind === 'width' ? narrower(boxOf(edges)) / 2 : plain;
}

function narrower({ minX, minY, maxX, maxY }: Box): number {
  return Math.min(maxX - minX, maxY - minY);
}
