import {
  area,
  disc,
  type Edge,
  examine,
  interiorAngles,
  intersect,
  offset,
  parseJob,
  type Region,
  type Report,
  regionFromReport,
  subtract,
} from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

type Plain = Record<string, unknown>;

const reportOn = (part: Plain, cuts: readonly Plain[], limits: Plain = { web: 1, knifeEdge: 60 }): Report =>
  examine(parseJob({ edgebite: 1, units: 'mm', part: { thickness: 10, ...part }, limits, cuts }));

/** A bore of radius 15 whose centre lies `inside` under the back edge of a block of 80 by 40. */
const overhung = (inside: number, over: Plain = {}): Report =>
  reportOn({ outline: { rectangle: [80, 40] } }, [
    { id: 'seat', kind: 'bore', center: [40, 40 - inside], diameter: 30, ...over },
  ]);

const sectionOf = (report: Report, piece = 0): Region =>
  regionFromReport(report.pieces[piece]?.sections[0]?.region ?? []);

const edgesOf = (region: Region): Edge[] => region.flatMap(({ outer, holes }) => [outer, ...holes].flat());

/** How far a place is from the nearest joint of a region that is not itself. */
const jointsAt = (region: Region, y: number): number[] =>
  edgesOf(region)
    .flatMap(({ a, b }) => [a, b])
    .filter((p) => Math.abs(p.y - y) < 1e-9)
    .map(({ x }) => x)
    .sort((a, b) => a - b);

describe('the break of a knife edge between two straight edges', () => {
  // Tangent length of a round of radius r in an angle a: r cot(a / 2); a chamfer with legs of one length c has a flat of
  // 2 c sin(a / 2), and corners of 90 degrees and half the angle (plane trigonometry, common practice, no source).
  it.each([10, 20, 35, 59])('of %f degrees is what trigonometry says', (degrees) => {
    const t = Math.tan((degrees * Math.PI) / 180);
    const outline = { svgPath: `M0 0 H100 V${100 * t} Z` };
    const { knifeEdges } = reportOn({ outline }, []);
    const edge = knifeEdges.find(({ angle }) => Math.abs(angle - degrees) < 1e-6);
    const half = (degrees * Math.PI) / 360;
    expect(edge?.break.chamfer?.flat).toBeCloseTo(1, 9);
    expect(edge?.break.chamfer?.leg).toBeCloseTo(1 / (2 * Math.sin(half)), 9);
    for (const angle of edge?.break.chamfer?.angles ?? []) expect(angle).toBeCloseTo(90 + degrees / 2, 6);
    expect(edge?.break.radius?.radius).toBe(0.5);
    for (const leg of edge?.break.radius?.legs ?? []) expect(leg).toBeCloseTo(0.5 / Math.tan(half), 7);
    expect(edge?.break.radius?.back).toBeCloseTo(0.5 / Math.sin(half) - 0.5, 7);
    expect(edge?.break.opens).toBeNull();
  });

  it('is none where the metal is nowhere as thick', () => {
    const { knifeEdges } = reportOn({ outline: { svgPath: 'M0 0 H30 L30 0.5 Z' } }, []);
    expect(knifeEdges[0]?.break).toEqual({ chamfer: null, radius: null, opens: null });
  });
});

describe('the break of a horn', () => {
  it('is told for both horns of a seat that overhangs, with what its opening grows by', () => {
    const { knifeEdges } = overhung(12);
    expect(knifeEdges).toHaveLength(2);
    const [one, other] = knifeEdges.map((edge) => edge.break);
    expect(one?.opens).toMatchObject({ cut: 'seat', face: 'outline:2' });
    expect(one?.opens?.chamfer).toBeCloseTo(other?.opens?.chamfer as number, 9);
    expect(one?.opens?.chamfer).toBe(one?.chamfer?.leg);
    // The edges are named cuts first: the second leg is that on the face.
    expect(one?.opens?.radius).toBe(one?.radius?.legs[1]);
  });

  it('made on the part, leaves corners and an opening as told, and nothing thinner', () => {
    fc.assert(
      fc.property(fc.double({ min: 8, max: 14.5, noNaN: true }), (inside) => {
        const report = overhung(inside);
        const { break: broken, at } = report.knifeEdges[0] as Report['knifeEdges'][number];
        const tip = { x: at[0], y: at[1] };
        const section = sectionOf(report);
        const { chamfer, radius, opens } = broken;
        if (chamfer === null || radius === null || opens === null) throw new Error('there is no break');
        // The flat runs between the two places at the length of a leg from the tip: take off all on the tip's side of it.
        const near = intersect([section, disc(tip, chamfer.leg)]);
        const arc = edgesOf(near).filter(({ source, kind }) => source === undefined && kind === 'arc');
        const ends = arc.flatMap(({ a, b }) => [a, b]);
        const [p, q] = [
          ends.reduce((best, one) => (one.y > best.y ? one : best)),
          ends.reduce((best, one) => (one.y < best.y ? one : best)),
        ];
        expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeCloseTo(1, 6);
        const flat = { kind: 'line' as const, a: p, b: q };
        const away = { x: 3 * tip.x - p.x - q.x, y: 3 * tip.y - p.y - q.y };
        const triangle: Edge[] = [flat, { kind: 'line', a: q, b: away }, { kind: 'line', a: away, b: p }];
        const turned = area([{ outer: triangle, holes: [] }]) > 0 ? triangle : [];
        const wedge: Region = [
          {
            outer:
              turned.length > 0
                ? turned
                : [...triangle].reverse().map(({ a, b }): Edge => ({ kind: 'line', a: b, b: a })),
            holes: [],
          },
        ];
        const left = subtract(section, [wedge]);
        const angles = interiorAngles(left).map((angle) => (angle * 180) / Math.PI);
        for (const angle of chamfer.angles)
          expect(Math.min(...angles.map((one) => Math.abs(one - angle)))).toBeLessThan(1e-4);
        // One horn is broken: its end of the opening on the face has gone out by what is told.
        const before = jointsAt(section, 40);
        const after = jointsAt(left, 40);
        const grown = Math.max(...after.map((x) => Math.min(...before.map((old) => Math.abs(x - old)))));
        expect(grown).toBeCloseTo(opens.chamfer as number, 6);
      }),
      { numRuns: runs(30) },
    );
  });

  it('by a radius is what opening the section by a disc of that size leaves', () => {
    // Shrunk and grown again by the radius, a part has all its sharp corners rounded with it, and nothing else.
    for (const inside of [8, 11, 13.5]) {
      const report = overhung(inside);
      const { break: broken, at } = report.knifeEdges[0] as Report['knifeEdges'][number];
      const rounded = offset(offset(sectionOf(report), -0.5), 0.5);
      const gap = Math.min(
        ...edgesOf(rounded).flatMap((edge) =>
          edge.kind === 'arc' && Math.abs(edge.radius - 0.5) < 1e-9
            ? [Math.hypot(edge.center.x - at[0], edge.center.y - at[1]) - 0.5]
            : [],
        ),
      );
      expect(gap).toBeCloseTo(broken.radius?.back as number, 6);
      const joints = jointsAt(rounded, 40).map((x) => Math.abs(x - at[0]));
      expect(Math.min(...joints)).toBeCloseTo(broken.opens?.radius as number, 6);
    }
  });

  it('is the same wherever the part lies, and in each of two heights', () => {
    const legs = (report: Report) =>
      report.knifeEdges.map(({ break: { chamfer } }) => chamfer?.leg.toFixed(9)).sort();
    const turned = reportOn({ outline: { svgPath: 'M0 0 H40 V80 H0 Z' } }, [
      { id: 'seat', kind: 'bore', center: [12, 40], diameter: 30 },
    ]);
    expect(legs(turned)).toEqual(legs(overhung(12)));
    const below = overhung(12, { from: 'bottom', depth: 4 });
    expect(legs(below)).toEqual(legs(overhung(12)));
    const two = reportOn({ outline: { rectangle: [80, 40] } }, [
      { id: 'seat', kind: 'bore', center: [40, 28], diameter: 30 },
      { id: 'upper', kind: 'bore', center: [40, 26], diameter: 36, depth: 4 },
    ]);
    expect(new Set(legs(two)).size).toBe(2);
    expect(two.knifeEdges.map(({ break: { opens } }) => opens?.cut).sort()).toEqual([
      'seat',
      'seat',
      'upper',
      'upper',
    ]);
  });
});
