import {
  circleLoop,
  disc,
  type Loop,
  lineEdge,
  type Point,
  type Region,
  ring,
  subtract,
} from '@edgebite/core';
import { boxRegion, capsule, filleted, transformed } from '@edgebite/core/testing';
import fc from 'fast-check';

/*
 * Sections with much thin metal, drawn from small whole numbers: what the families of cuts seldom have. About 100
 * units large, then turned.
 */

const whole = (min: number, max: number) => fc.integer({ min, max });

/** A plate with holes on a lattice, some of its rows cut by the edges. */
const lattices: fc.Arbitrary<Region> = fc
  .record({
    count: whole(2, 4),
    pitch: whole(8, 30),
    skew: whole(0, 4),
    rise: whole(4, 10),
    radius: whole(2, 9),
    offset: whole(0, 12),
  })
  .map(({ count, pitch, skew, rise, radius, offset }) => {
    const across = pitch / 2;
    const holes = Array.from({ length: count * count }, (_, k) => {
      const [i, j] = [k % count, Math.floor(k / count)];
      const center = {
        x: offset + i * across + (j * skew * across) / 4,
        y: offset + (j * across * rise) / 8,
      };
      return disc(center, (across * radius) / 20);
    });
    return subtract(boxRegion(0, 0, 100, 60), holes);
  });

/** A bar with notches from both sides, square or pointed: corners face corners and edges. */
const notchedBars: fc.Arbitrary<Region> = fc
  .record({
    depth: whole(8, 24),
    notches: fc.array(
      fc.record({ gap: whole(2, 9), deep: whole(2, 20), pointed: fc.boolean(), below: fc.boolean() }),
      {
        minLength: 2,
        maxLength: 7,
      },
    ),
    corner: whole(0, 1),
  })
  .map(({ depth, notches, corner }) => {
    let x = 6;
    const cuts = notches.map(({ gap, deep, pointed, below }): Region => {
      const from = x + gap / 2;
      x = from + 3;
      const y = below ? [0, Math.min(deep, depth - 1)] : [depth, depth - Math.min(deep, depth - 1)];
      const out = below ? -1 : depth + 1;
      const corners: Point[] = pointed
        ? [
            { x: from, y: out },
            { x: from + 4, y: out },
            { x: from + 2, y: y[1] as number },
          ]
        : [
            { x: from, y: out },
            { x: from + 3, y: out },
            { x: from + 3, y: y[1] as number },
            { x: from, y: y[1] as number },
          ];
      const loop = below ? corners : [...corners].reverse();
      return [{ outer: filleted(loop, corner === 1 && !pointed ? 0.5 : 0), holes: [] }];
    });
    return subtract(boxRegion(0, 0, x + 10, depth), cuts);
  });

/** A ring, eccentric or not, opened by a slot and bitten by a disc. */
const rings: fc.Arbitrary<Region> = fc
  .record({
    outer: whole(20, 50),
    wall: whole(1, 12),
    off: whole(0, 6),
    slot: whole(0, 20),
    angle: whole(0, 359),
    bite: whole(0, 9),
  })
  .map(({ outer, wall, off, slot, angle, bite }) => {
    const turn = (angle * Math.PI) / 180;
    const way = { x: Math.cos(turn), y: Math.sin(turn) };
    const hole = disc({ x: off / 4, y: 0 }, outer - wall - off / 4);
    const cuts = [hole];
    if (slot > 0)
      cuts.push(capsule({ x: 0, y: 0 }, { x: way.x * 2 * outer, y: way.y * 2 * outer }, slot / 4));
    if (bite > 0)
      cuts.push(disc({ x: -way.x * (outer + bite), y: -way.y * (outer + bite) }, bite + wall / 2));
    return subtract(disc({ x: 0, y: 0 }, outer), cuts);
  });

/** A star with straight edges, pierced. */
const stars: fc.Arbitrary<Region> = fc
  .record({
    reaches: fc.array(whole(10, 50), { minLength: 6, maxLength: 14 }),
    holes: fc.array(fc.tuple(whole(-30, 30), whole(-30, 30), whole(1, 8)), { maxLength: 4 }),
  })
  .map(({ reaches, holes }) => {
    const corners = reaches.map((reach, k): Point => {
      const angle = (2 * Math.PI * k) / reaches.length;
      return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
    });
    return subtract(
      [{ outer: filleted(corners, 0), holes: [] }],
      holes.map(([x, y, radius]) => disc({ x, y }, radius)),
    );
  });

/** A hole drawn in straight edges, beside an edge and a round hole. */
const drawnHoles: fc.Arbitrary<Region> = fc
  .record({
    sides: whole(3, 40),
    radius: whole(5, 12),
    start: whole(0, 20),
    web: whole(1, 8),
    other: whole(2, 8),
  })
  .map(({ sides, radius, start, web, other }) => {
    const center = { x: 50, y: radius + web / 4 };
    const corner = (k: number): Point => {
      const angle = start / 20 - (2 * Math.PI * k) / sides;
      return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
    };
    const corners = Array.from({ length: sides }, (_, k) => corner(k));
    const hole: Loop = corners.map((a, k) => lineEdge(a, corners[(k + 1) % sides] as Point));
    const beside = { x: 50 + radius + web / 3 + other, y: Math.max(center.y + 2, other + 1) };
    const neighbour = circleLoop(beside, other, false);
    return boxRegion(0, 0, 100, 60).map((part) => ({ ...part, holes: [hole, neighbour] }));
  });

/** Slots and curved slots round one centre. */
const curvedSlots: fc.Arbitrary<Region> = fc
  .record({
    inner: whole(4, 15),
    web: whole(1, 6),
    width: whole(2, 8),
    opening: whole(4, 20),
    angle: whole(0, 359),
  })
  .map(({ inner, web, width, opening, angle }) => {
    const turn = (angle * Math.PI) / 180;
    const far = { x: 80 * Math.cos(turn), y: 80 * Math.sin(turn) };
    const center = { x: 0, y: 0 };
    const trench = subtract(ring(center, inner + web / 2 + width, inner + web / 2), [
      capsule(center, far, opening / 2),
    ]);
    return subtract(boxRegion(-40, -40, 40, 40), [disc(center, inner), trench]);
  });

/** Any of them, turned by any whole angle. */
export const thinParts: fc.Arbitrary<Region> = fc
  .tuple(fc.oneof(lattices, notchedBars, rings, stars, drawnHoles, curvedSlots), whole(0, 359))
  .map(([region, degrees]) => {
    const turn = (degrees * Math.PI) / 180;
    return transformed(region, {
      mirror: false,
      turn: [Math.cos(turn), Math.sin(turn)],
      scale: 1,
      shift: [0, 0],
    });
  });
