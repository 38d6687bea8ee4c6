import { examine, parseJob, type Report, type ReportEdge } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { liveOf } from '../../packages/previewer/page/src/move/live.js';
import { nearestOn, type Obstacle } from '../../packages/previewer/page/src/move/obstacles.js';

const edgesOf = ({ outline }: Report): readonly ReportEdge[] =>
  outline.flatMap(({ outer, holes }) => [...outer, ...holes.flat()]);

const rims = (edges: readonly ReportEdge[]): readonly Obstacle[] =>
  edges.map((edge) => ({ edge, at: edge.a, reach: 0, source: edge.source ?? '' }));

const hole = (id: string, x: number, y: number, diameter: number) => ({
  id,
  kind: 'bore',
  center: [x, y],
  diameter,
});

const job = (outline: object, cuts: readonly object[] = [hole('a', 1, 1, 0.5)], limits: object = {}) =>
  examine(parseJob({ edgebite: 1, units: 'mm', part: { outline, thickness: 10 }, limits, cuts }));

const plate = rims(edgesOf(job({ rectangle: [80, 40] })));

/** A round cut as an obstacle to another. */
const round = (x: number, y: number, diameter: number): Obstacle => ({
  edge: null,
  at: [x, y],
  reach: diameter / 2,
  source: 'cut:other',
});

describe('the dimensions of a round cut as it moves', () => {
  it('are those to the two nearest edges that are not side by side, and its thinnest web', () => {
    // 12 from the front, 20 from the left end; a radius of 4 leaves 8 to the front.
    const { edges, web, opened } = liveOf({ at: [20, 12], radius: 4 }, plate, []);
    expect(edges.map(({ size, source }) => [size, source])).toEqual([
      [12, 'outline:0'],
      [20, 'outline:3'],
    ]);
    expect([web?.size, web?.source, web?.from, web?.to]).toEqual([8, 'outline:0', [20, 8], [20, 0]]);
    expect(opened).toBeNull();
  });

  it('have the other cut where that is nearer, across the way between their centres', () => {
    // 3, 4, 5: centres 10 apart along a 6 and 8 triangle, radii 4 and 3 leave 3.
    const { web } = liveOf({ at: [30, 20], radius: 4 }, plate, [round(36, 28, 6)]);
    expect(web?.size).toBeCloseTo(3, 12);
    expect(web?.source).toBe('cut:other');
    // The web touches both circles on the line of centres: 4 and 7 from the first.
    expect(web?.from[0]).toBeCloseTo(30 + 0.6 * 4, 12);
    expect(web?.to[1]).toBeCloseTo(20 + 0.8 * 7, 12);
  });

  it('are depth and opening where it opens a face', () => {
    // Centre 6 in front of the face, radius 10: 4 deep, and half the opening is 8 by 6, 8, 10.
    const { opened, web } = liveOf({ at: [40, -6], radius: 10 }, plate, []);
    expect(opened?.depth.size).toBeCloseTo(4, 12);
    expect(opened?.depth.to[1]).toBeCloseTo(4, 12);
    expect(opened?.opening.size).toBeCloseTo(16, 12);
    expect(opened?.opening.source).toBe('outline:0');
    // What is left to the back: 40 - 4.
    expect(web?.size).toBeCloseTo(36, 12);
    expect(web?.source).toBe('outline:2');
  });

  it('take only what is left of a face for its opening', () => {
    // Radius 10 about a place on the front, 6 from the left end: 6 of it to the left, 10 to the right.
    const { opened } = liveOf({ at: [6, -0], radius: 10 }, rims(edgesOf(job({ rectangle: [80, 40] }))), []);
    // The left end is opened as well, so it is a corner and no bite of one face.
    expect(opened).toBeNull();
    // With round corners of 3 the face is 34 long, and a circle of 36 across leaves nothing of it.
    const seat = liveOf(
      { at: [92, 20], radius: 18 },
      rims(edgesOf(job({ rectangle: [90, 40], corner: 3 }))),
      [],
    );
    expect(seat.opened?.depth.size).toBeCloseTo(16, 9);
    expect(seat.opened?.opening.size).toBeCloseTo(34, 9);
  });

  it('have no web through the air, through another cut or where there is nothing between', () => {
    // A notch of 20 wide and 30 deep from the back: a hole to its left has the notch's wall next to it.
    const notched = rims(edgesOf(job({ wkt: 'POLYGON((0 0,80 0,80 40,50 40,50 10,30 10,30 40,0 40,0 0))' })));
    const left = liveOf({ at: [20, 25], radius: 5 }, notched, []);
    expect([left.web?.size, left.web?.source]).toEqual([5, 'outline:5']);
    // Over the middle of the notch, in the air: what is below it is not next to it.
    expect(liveOf({ at: [40, 30], radius: 2 }, notched, []).web).toBeNull();
    // Between the hole and the front lies another cut, which is next to it in its place.
    const under = liveOf({ at: [40, 20], radius: 4 }, plate, [round(40, 8, 12)]);
    expect([under.web?.size, under.web?.source]).toEqual([2, 'cut:other']);
    // Two cuts that run into each other have no web between them, but each has one to the edge next to it.
    const met = liveOf({ at: [40, 20], radius: 4 }, plate, [round(46, 20, 8)]);
    expect([met.web?.size, met.web?.source]).toEqual([16, 'outline:0']);
  });

  it('have a web of nothing where it touches an edge', () => {
    const { web } = liveOf({ at: [40, 4], radius: 4 }, plate, []);
    expect(web?.size).toBeCloseTo(0, 12);
    expect(web?.source).toBe('outline:0');
  });

  it('keep off a slot by its path and half its width', () => {
    const slot: Obstacle = {
      edge: { kind: 'line', a: [10, 30], b: [60, 30], source: 'tool' },
      at: [10, 30],
      reach: 2.5,
      source: 'cut:slot',
    };
    // 30 - 20 - 2.5 - 4.
    const { web } = liveOf({ at: [40, 20], radius: 4 }, plate, [slot]);
    expect(web?.size).toBeCloseTo(3.5, 12);
  });
});

describe('webs beside those of the library', () => {
  // The thinnest web of a report is that of the cut, wherever it is put: the library finds it another way.
  it.each([
    [12, 9],
    [70, 31],
    [25, 20],
    [40, 33.5],
    [63, 12],
  ])('with a hole at %d, %d', (x, y) => {
    const others = [hole('b', 33, 14, 11), hole('c', 55, 24, 14)];
    const report = job({ rectangle: [80, 40], corner: 6 }, [hole('a', x, y, 7), ...others], { web: 20 });
    const own = report.webs.filter(({ between }) => between.includes('cut:a'));
    const { web } = liveOf({ at: [x, y], radius: 3.5 }, rims(edgesOf(report)), [
      { ...round(33, 14, 11), source: 'cut:b' },
      { ...round(55, 24, 14), source: 'cut:c' },
    ]);
    expect(own.length).toBeGreaterThan(0);
    expect(web?.size).toBeCloseTo(Math.min(...own.map(({ thickness }) => thickness)), 6);
  });
});

describe('the nearest place of an edge', () => {
  const arc: ReportEdge = { kind: 'arc', a: [10, 0], b: [0, 10], center: [0, 0], radius: 10, ccw: true };

  it('of an arc lies on it, or is one of its ends', () => {
    // 3, 4, 5: towards (6, 8) on the arc; from behind, an end.
    expect(nearestOn(arc, [3, 4]).map((value) => Number(value.toFixed(9)))).toEqual([6, 8]);
    expect(nearestOn(arc, [-5, -1])).toEqual([0, 10]);
    expect(nearestOn({ ...arc, ccw: false }, [-30, -40]).map((value) => Number(value.toFixed(9)))).toEqual([
      -6, -8,
    ]);
  });
});
