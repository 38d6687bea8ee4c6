import { describe, expect, it } from 'vitest';
import { parseJob } from '../read/parse.js';
import { examine } from '../write/examine.js';
import { knifeMarks, webMarks } from './marks.js';
import type { ReportKnifeEdge, ReportWeb } from './report-schema.js';

const web: ReportWeb = {
  thickness: 0.8,
  at: [20, 29.6],
  ends: [
    [20, 29.2],
    [20, 30],
  ],
  between: ['cut:near', 'outline:2'],
  interval: null,
  length: 4.6,
  strip: 0,
  slab: 0,
  piece: 'kept',
  breakOff: null,
};

const edge: ReportKnifeEdge = {
  angle: 20,
  at: [77, 0],
  between: ['cut:rough', 'outline:0'],
  interval: null,
  feather: 3.9,
  break: { chamfer: null, radius: null, opens: null },
  slab: 0,
  piece: 'kept',
};

const marksOf = (...webs: readonly ReportWeb[]) =>
  webMarks({ webs, resolution: 0.005 }).map(({ id, members, slabs }) => [id, members, slabs]);

describe('marks of webs', () => {
  it('are numbered in the order of the report, one for all slabs, and each web has one', () => {
    const other = { ...web, thickness: 1.2, at: [20, 20.6], ends: [[20, 20] as const, [20, 21.2] as const] };
    const rows = [
      { ...web, slab: 1 },
      web,
      { ...other, slab: 1 },
      { ...other, slab: 0 },
    ] as unknown as ReportWeb[];
    expect(marksOf(...rows)).toEqual([
      ['W1', [0, 1], [0, 1]],
      ['W2', [2, 3], [0, 1]],
    ]);
  });

  it('keep two webs of one slab apart, however close', () => {
    expect(marksOf(web, web)).toHaveLength(2);
  });

  it('keep webs apart whose discs touch the metal in other places', () => {
    const slab = 1;
    const moved: ReportWeb = {
      ...web,
      slab,
      at: [20.1, 29.6],
      ends: [
        [20.1, 29.2],
        [20.1, 30],
      ],
    };
    expect(marksOf(web, moved)).toHaveLength(2);
    const thicker: ReportWeb = {
      ...web,
      slab,
      thickness: 0.9,
      ends: [
        [20, 29.15],
        [20, 30.05],
      ],
    };
    expect(marksOf(web, thicker)).toHaveLength(2);
    // The same disc, seen across: four holes in a square have two such webs with one middle.
    const across: ReportWeb = {
      ...web,
      slab,
      ends: [
        [19.6, 29.6],
        [20.4, 29.6],
      ],
    };
    expect(marksOf(web, across)).toHaveLength(2);
  });

  it('are one wherever the faces are the same, whichever cut or edge has them there, and whichever end is first', () => {
    const slab = 1;
    const [a, b] = web.ends;
    expect(marksOf(web, { ...web, slab, between: ['cut:eye', 'outline:2'] })).toHaveLength(1);
    expect(marksOf(web, { ...web, slab, ends: [b, a], between: ['outline:2', 'cut:near'] })).toHaveLength(1);
    expect(
      marksOf(web, {
        ...web,
        slab,
        at: [20.003, 29.6],
        ends: [
          [20.003, 29.2],
          [20.003, 30],
        ],
      }),
    ).toHaveLength(1);
  });
});

describe('marks of knife edges', () => {
  const of = (...knifeEdges: readonly ReportKnifeEdge[]) =>
    knifeMarks({ knifeEdges, resolution: 0.005 }).map(({ id, members }) => [id, members]);

  it('are one for a tip in several slabs, and two where its angle is another', () => {
    expect(of(edge, { ...edge, slab: 1 })).toEqual([['K1', [0, 1]]]);
    expect(of(edge, { ...edge, slab: 1, angle: 25 })).toHaveLength(2);
    expect(of(edge, { ...edge, slab: 1, at: [77, 0.1] })).toHaveLength(2);
  });

  it('keep the two of a tangent apart, each with its own in the other slab', () => {
    const left: ReportKnifeEdge = { ...edge, angle: 0, piece: 'kept' };
    const right: ReportKnifeEdge = { ...left, piece: 'offcut-1' };
    expect(of(left, right, { ...right, slab: 1 }, { ...left, slab: 1 })).toEqual([
      ['K1', [0, 3]],
      ['K2', [1, 2]],
    ]);
  });
});

describe('marks of one tip that several slabs share', () => {
  const of = (...knifeEdges: readonly ReportKnifeEdge[]) =>
    knifeMarks({ knifeEdges, resolution: 0.01 }).map(({ id, members, slabs }) => [id, members, slabs]);

  it('list their slabs going up, in whatever order the report has them', () => {
    expect(of({ ...edge, slab: 2 }, { ...edge, slab: 0 }, { ...edge, slab: 1 })).toEqual([
      ['K1', [0, 1, 2], [0, 1, 2]],
    ]);
    expect(marksOf({ ...web, slab: 2 }, { ...web, slab: 0 }, { ...web, slab: 1 })).toEqual([
      ['W1', [0, 1, 2], [0, 1, 2]],
    ]);
  });

  it('are one to the resolution in every direction, on each side of either axis, and two past it', () => {
    // Round numbers lie on every border that a raster of the plane could have.
    for (const from of [
      [0, 0],
      [-0.02, 0.02],
      [0.06, -0.04],
      [30, -7.5],
    ] as const) {
      for (let turn = 0; turn < 360; turn += 15) {
        const place = (by: number): [number, number] => [
          from[0] + by * Math.cos((turn * Math.PI) / 180),
          from[1] + by * Math.sin((turn * Math.PI) / 180),
        ];
        const first = { ...edge, at: [from[0], from[1]] as const };
        expect(of(first, { ...edge, slab: 1, at: place(0.0099) }), `${turn} degrees`).toHaveLength(1);
        expect(of(first, { ...edge, slab: 1, at: place(0.0101) }), `${turn} degrees`).toHaveLength(2);
      }
    }
  });

  it('are rather those of the same two edges, whichever of these is named first', () => {
    const one: ReportKnifeEdge = { ...edge, between: ['cut:rough', 'outline:0'] };
    const other: ReportKnifeEdge = { ...edge, between: ['cut:fine', 'outline:0'] };
    const turned = ({ between: [a, b], ...rest }: ReportKnifeEdge): ReportKnifeEdge => ({
      ...rest,
      between: [b, a],
      slab: 1,
    });
    expect(of(one, other, turned(other), turned(one))).toEqual([
      ['K1', [0, 3], [0, 1]],
      ['K2', [1, 2], [0, 1]],
    ]);
    expect(of(turned(one), turned(other), { ...other, slab: 0 }, { ...one, slab: 0 })).toEqual([
      ['K1', [0, 3], [0, 1]],
      ['K2', [1, 2], [0, 1]],
    ]);
  });
});

describe('a circle that is bored in two depths', () => {
  it('has one mark and one finding for the web beside it, whose faces two cuts share', () => {
    // The wall of both bores lies 0.8 from the edge: 4.8 - 8 / 2.
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [40, 30] }, thickness: 10 },
        keep: [35, 25],
        cuts: [
          { id: 'first', kind: 'bore', center: [20, 4.8], diameter: 8, depth: 4 },
          { id: 'second', kind: 'bore', center: [20, 4.8], diameter: 8 },
        ],
      }),
    );
    expect(report.webs.map(({ thickness }) => thickness.toFixed(9))).toEqual(['0.800000000', '0.800000000']);
    expect(webMarks(report)).toHaveLength(1);
    expect(report.findings.filter(({ code }) => code === 'thin-web')).toHaveLength(1);
  });
});
