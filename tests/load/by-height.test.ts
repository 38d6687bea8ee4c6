import {
  axesOf,
  disc,
  engagementOf,
  type Layer,
  loadByHeight,
  machineDirection,
  type Point,
  type Region,
  type RoundTool,
  ring,
  ringEngagementOf,
  subtract,
  union,
} from '@edgebite/core';
import { outlines } from '@edgebite/core/testing';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, near, nearPlace, underXAxis } from '../center/near.js';
import { evenly } from '../tools/evenly.js';
import { runs } from '../tools/runs.js';
import { quarterPoint, quarters } from './quarters.js';

const P = (x: number, y: number): Point => ({ x, y });
const HALF = underXAxis(100);
const WHOLE: Region = block(100, 100);

/** Layers of 5 each. */
function layers(...metals: Region[]): Layer[] {
  return metals.map((metal, k) => ({ from: 5 * k, to: 5 * k + 5, metal }));
}

const circle = (center: Point, radius: number): RoundTool => ({ kind: 'circle', center, radius });

describe('loadByHeight', () => {
  it('starts in air over a pocket, and is told where it enters, at its worst and at break-through', () => {
    // Above nothing; then half a circle, pushed to the left (metal below, clockwise); then all round; then half again.
    const found = loadByHeight(circle(P(0, 0), 10), layers([], HALF, ...[full(), HALF]), 'top', true);
    expect(found.starts).toBe('air');
    expect(found.heights.map(({ share }) => share)).toEqual(
      [0, 0.5, 1, 0.5].map((s) => expect.closeTo(s, 12)),
    );
    expect(found.heights.map(({ strikes }) => strikes)).toEqual([0, 1, 0, 1]);
    expect(found.entry).toBe(found.heights[1]);
    // Both halves are as bad as each other: the upper one is told.
    expect(found.worst).toBe(found.heights[1]);
    expect(found.breakThrough).toBe(found.heights[3]);
    near(found.worst?.sideLoad ?? 0, 2 / Math.PI, 1e-12);
    nearPlace(P(found.worst?.push?.dx ?? 9, found.worst?.push?.dy ?? 9), P(-1, 0), 1);
    expect(found.heights[2]?.push).toBeNull();
  });

  it('from the bottom, told on the drawing, the spindle goes round the other way', () => {
    const [top, bottom] = (['top', 'bottom'] as const).map((from) =>
      loadByHeight(circle(P(0, 0), 10), layers(HALF), from, false),
    );
    nearPlace(P(top?.worst?.push?.dx ?? 9, top?.worst?.push?.dy ?? 9), P(-1, 0), 1);
    nearPlace(P(bottom?.worst?.push?.dx ?? 9, bottom?.worst?.push?.dy ?? 9), P(1, 0), 1);
    // As a placed shape: turned over like a page, the metal still lies towards the person and the tooth goes to the
    // left there; on the drawing that is to the right.
    const flipped = loadByHeight(circle(P(0, 0), 10), layers(HALF), 'top', false);
    expect(flipped.worst?.push?.dx).toBe(-(bottom?.worst?.push?.dx ?? 0));
  });

  it('breaks through where metal ends above its lowest; stops blind in metal; or meets none', () => {
    const tool = circle(P(50, 50), 10);
    expect(loadByHeight(tool, layers(WHOLE, WHOLE), 'top', false).breakThrough).toBeNull();
    expect(loadByHeight(tool, layers(WHOLE, WHOLE), 'top', true).breakThrough?.from).toBe(5);
    expect(loadByHeight(tool, layers(WHOLE, WHOLE, []), 'top', false).breakThrough?.to).toBe(10);
    // Through a void and into metal again, where it stops.
    expect(loadByHeight(tool, layers(WHOLE, [], WHOLE), 'top', false).breakThrough).toBeNull();
    const none = loadByHeight(tool, layers([], []), 'top', true);
    expect([none.entry, none.worst, none.breakThrough, none.starts]).toEqual([null, null, null, 'air']);
  });

  it('of equal side loads takes the larger share, then the upper one', () => {
    const tool = circle(P(50, 50), 10);
    // Two opposite slots leave two arcs, which balance as a whole circle does.
    const slot = subtract(WHOLE, [
      [{ outer: block(100, 10)[0]?.outer.map((e) => ({ ...e, a: up(e.a), b: up(e.b) })) ?? [], holes: [] }],
    ]);
    const found = loadByHeight(tool, layers(slot, WHOLE, WHOLE), 'top', false);
    expect(found.heights.map(({ sideLoad }) => sideLoad)).toEqual([0, 0, 0]);
    expect(found.worst).toBe(found.heights[1]);
  });

  it('meets a boss that lies within its circle, though no tooth at its rim is in metal', () => {
    const found = loadByHeight(circle(P(0, 0), 10), layers([], disc(P(1, 1), 3)), 'top', false);
    expect(found.heights[1]).toMatchObject({ meets: true, share: 0, strikes: 0, sideLoad: 0, push: null });
    expect(found.entry?.from).toBe(5);
    expect(loadByHeight(circle(P(0, 0), 10), layers(ring(P(0, 0), 20, 10)), 'top', false).starts).toBe('air');
  });

  it('takes a ring by the width of its teeth, and a circle by itself', () => {
    const metal = union([disc(P(13, 0), 2), disc(P(0, -30), 15)]);
    const teeth = loadByHeight(
      { kind: 'ring', center: P(0, 0), radius: 16, inner: 10 },
      layers(metal),
      'top',
      true,
    );
    const rim = loadByHeight(circle(P(0, 0), 16), layers(metal), 'top', true);
    const known = ringEngagementOf(metal, P(0, 0), 16, 10);
    expect(teeth.heights[0]).toMatchObject({ share: known.share, strikes: 2, sideLoad: known.sideLoad.size });
    expect(rim.heights[0]?.share).toBe(engagementOf(metal, P(0, 0), 16).share);
    expect(rim.heights[0]?.strikes).toBe(1);
  });

  it('costs no more for holes that are far away, and gives the same', () => {
    const plate = subtract(block(400, 400), [
      ...Array.from({ length: 36 }, (_, k) => disc(P(30 + 60 * (k % 6), 30 + 60 * Math.floor(k / 6)), 10)),
    ]);
    const tool = circle(P(41, 30), 12);
    const one = loadByHeight(tool, layers(plate), 'top', true).worst;
    const few = loadByHeight(
      tool,
      layers(subtract(block(400, 400), [disc(P(30, 30), 10)])),
      'top',
      true,
    ).worst;
    near(one?.sideLoad ?? 0, few?.sideLoad ?? 1, 1e-9);
    near(one?.share ?? 0, few?.share ?? 1, 1e-9);
  });

  it('turns with the drawing by quarters: what is told at the machine stays, to the last digit that is printed', () => {
    fc.assert(
      fc.property(
        outlines,
        outlines,
        evenly(-20, 100),
        evenly(-20, 60),
        fc.double({ min: 2, max: 30, noNaN: true }),
        fc.boolean(),
        (upper, lower, x, y, radius, isRing) => {
          const told = (k: number) => {
            const center = quarterPoint(P(x, y), k);
            const tool: RoundTool = isRing
              ? { kind: 'ring', center, radius, inner: 0.7 * radius }
              : { kind: 'circle', center, radius };
            const axes = axesOf({ flip: null, turn: -90 * k });
            const turned = [upper, lower].map((metal) => quarters(metal, k));
            const { heights, entry, worst, breakThrough, starts } = loadByHeight(
              tool,
              layers(...turned),
              'top',
              false,
            );
            return {
              heights: heights.map(({ share, strikes, sideLoad, push }) => [
                share.toFixed(6),
                strikes,
                sideLoad.toFixed(6),
                push === null ? null : machineDirection(axes, push),
              ]),
              at: [entry?.from, worst?.from, breakThrough?.from, starts],
            };
          };
          for (const k of [1, 2, 3]) expect(told(k)).toEqual(told(0));
        },
      ),
      { numRuns: runs(40) },
    );
  });

  it('refuses layers that are none or not in order', () => {
    const tool = circle(P(0, 0), 10);
    expect(() => loadByHeight(tool, [], 'top', true)).toThrow('loadByHeight: there are no layers');
    expect(() => loadByHeight(tool, [{ from: 5, to: 5, metal: [] }], 'top', true)).toThrow(
      'layer 0 goes from 5 to 5',
    );
    const apart = [
      { from: 0, to: 5, metal: [] },
      { from: 6, to: 7, metal: [] },
    ];
    expect(() => loadByHeight(tool, apart, 'top', true)).toThrow(
      'layer 1 starts at 6; the one before it ends at 5',
    );
    expect(() => loadByHeight(circle(P(0, 0), -1), layers([]), 'top', true)).toThrow(
      'loadByHeight: radius is -1',
    );
  });
});

function full(): Region {
  return union([HALF, disc(P(0, 0), 30)]);
}

function up({ x, y }: Point): Point {
  return P(x, y + 45);
}
