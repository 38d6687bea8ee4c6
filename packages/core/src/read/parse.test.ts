import { describe, expect, it } from 'vitest';
import { footprint } from '../cut/footprint.js';
import { JobError } from '../document/errors.js';
import { area, perimeter } from '../region/measure.js';
import { parseJob } from './parse.js';

const SADDLE = {
  edgebite: 1,
  name: 'Manifold saddle',
  units: 'mm',
  part: {
    outline: { rectangle: [80, 30], corner: 4, at: [0, 0] },
    thickness: 12,
    material: 'mild steel',
  },
  keep: [20, 15],
  limits: { web: 1.5, knifeEdge: 30 },
  cuts: [
    { id: 'rough', kind: 'annular', center: [83, 15], diameter: 32, wall: 4.5, reach: 25 },
    { id: 'seat', kind: 'bore', center: [83, 15], diameter: 34 },
    {
      id: 'groove',
      kind: 'swept',
      diameter: 6,
      path: { svgPath: 'M10 24 L40 24 A8 8 0 0 1 48 32' },
      depth: 4,
    },
  ],
};

const withOutline = (outline: unknown) => ({
  ...SADDLE,
  part: { ...SADDLE.part, outline },
  keep: undefined,
  cuts: [],
});
const withCut = (cut: object) => ({ ...SADDLE, cuts: [{ id: 'x', ...cut }] });

describe('a sound job', () => {
  const job = parseJob(JSON.stringify(SADDLE));

  it('comes with its shapes worked out', () => {
    expect(area(job.outline)).toBeCloseTo(2400 - (4 - Math.PI) * 16, 10);
    expect(job).toMatchObject({
      name: 'Manifold saddle',
      units: 'mm',
      thickness: 12,
      material: 'mild steel',
      keep: { x: 20, y: 15 },
      limits: { web: 1.5, knifeEdge: 30 },
      resolution: 0.005,
    });
    expect(job.cuts[0]).toEqual({
      id: 'rough',
      kind: 'annular',
      from: 'top',
      depth: 12,
      through: true,
      center: { x: 83, y: 15 },
      diameter: 32,
      wall: 4.5,
      reach: 25,
    });
    expect(job.cuts[2]).toMatchObject({ kind: 'swept', depth: 4, through: false, diameter: 6 });
    // Elementary: half a turn less, 30 and a quarter of 16 pi long, 6 wide, and the two ends.
    expect(area(footprint(job.cuts[2] as (typeof job.cuts)[number]))).toBeCloseTo(
      6 * (30 + 4 * Math.PI) + 9 * Math.PI,
      9,
    );
  });

  it('is plain data, and can be made again of what it was written as', () => {
    expect(JSON.parse(JSON.stringify(job))).toEqual(job);
    expect(parseJob(job.document)).toEqual(job);
    expect(parseJob(JSON.stringify(job.document))).toEqual(job);
    expect(parseJob(SADDLE)).toEqual(job);
    expect(job.document).toEqual(SADDLE);
  });

  it('does not share data with what was handed over', () => {
    const mine = structuredClone(SADDLE);
    const parsed = parseJob(mine);
    mine.cuts[0]?.center?.fill(0);
    expect(parsed.document.cuts[0]).toMatchObject({ center: [83, 15] });
  });

  it('has defaults that go by the unit', () => {
    const bare = { edgebite: 1, part: { outline: { circle: 2 }, thickness: 1 }, cuts: [] };
    expect(parseJob({ ...bare, units: 'mm' })).toMatchObject({
      name: '',
      material: null,
      keep: null,
      limits: { web: 1, hold: 1, breakThrough: 1, knifeEdge: 30 },
      resolution: 0.005,
    });
    expect(parseJob({ ...bare, units: 'inch' })).toMatchObject({
      limits: { web: 0.04, hold: 0.04, breakThrough: 0.04, knifeEdge: 30 },
      resolution: 0.0002,
    });
    expect(parseJob({ ...bare, units: 'inch', limits: { knifeEdge: 90 } }).limits).toEqual({
      web: 0.04,
      hold: 0.04,
      breakThrough: 0.04,
      knifeEdge: 90,
    });
  });

  it('has no minus zero in it', () => {
    const parsed = parseJob(
      '{"edgebite":1,"units":"mm","part":{"outline":{"rectangle":[4,3],"at":[-0,-0.0]},"thickness":1},"cuts":[{"id":"a","kind":"bore","center":[-0,1],"diameter":1}]}',
    );
    const zeros: number[] = [];
    JSON.stringify(parsed, (_, value) => {
      if (value === 0) zeros.push(value);
      return value;
    });
    expect(zeros.length).toBeGreaterThan(4);
    for (const zero of zeros) expect(Object.is(zero, 0)).toBe(true);
  });

  it('may start with a byte order mark', () => {
    expect(parseJob(`\ufeff${JSON.stringify(SADDLE)}`)).toEqual(job);
  });

  it("may have ids that are names of an object's own", () => {
    const ids = ['constructor', '__proto__', 'toString', 'Ø 34 H7'];
    const cuts = ids.map((id) => ({ id, kind: 'bore', center: [1, 1], diameter: 1 }));
    expect(parseJob({ ...SADDLE, cuts }).cuts.map(({ id }) => id)).toEqual(ids);
  });
});

describe('an outline', () => {
  // The same plate in six ways; area and perimeter elementary.
  it.each([
    [{ rectangle: [80, 30] }],
    [{ svgPath: 'M0 0 H80 V30 H0 Z' }],
    [{ svgPath: 'M0 0 V30 H80 V0 Z' }],
    [{ wkt: 'POLYGON((0 0, 80 0, 80 30, 0 30, 0 0))' }],
    [{ wkt: 'LINESTRING(0 0, 80 0, 80 30, 0 30, 0 0)' }],
    [
      {
        edges: [
          { kind: 'line', a: [0, 0], b: [80, 0] },
          { kind: 'line', a: [80, 0], b: [80, 30] },
          { kind: 'line', a: [80, 30], b: [0, 30] },
          { kind: 'line', a: [0, 30], b: [0, 0] },
        ],
      },
    ],
  ])('can be %j', (outline) => {
    const { outline: region } = parseJob(withOutline(outline));
    expect(area(region)).toBe(2400);
    expect(perimeter(region)).toBe(220);
    expect(region[0]?.outer.map(({ source }) => source).sort()).toEqual(
      [0, 1, 2, 3].map((i) => `outline:${i}`),
    );
  });

  it.each([
    [{ circle: 20 }, Math.PI * 100],
    [{ slot: [40, 12], at: [5, 5], angle: 30 }, 28 * 12 + Math.PI * 36],
    [
      {
        edges: [
          { kind: 'line', a: [0, 0], b: [10, 0] },
          { kind: 'arc', a: [10, 0], b: [0, 0], center: [5, 0], ccw: true },
        ],
      },
      Math.PI * 12.5,
    ],
    [
      { wkt: 'CURVEPOLYGON(CIRCULARSTRING(-2 0,-1 -1,0 0,1 -1,2 0,0 2,-2 0),(-1 0,0 0.5,1 0,0 1,-1 0))' },
      3 * Math.PI - 0.5,
    ],
    [{ svgPath: 'M4 4h2v2h-2z M0 0H10V10H0Z M1 1h1v1h-1z' }, 95],
  ])('can be %j', (outline, size) => {
    expect(area(parseJob(withOutline(outline)).outline)).toBeCloseTo(size, 9);
  });

  it('has holes of every kind, named in order after those drawn with it', () => {
    const outline = {
      svgPath: 'M0 0H80V30H0Z M2 2h2v2h-2z',
      holes: [
        { circle: 6, at: [20, 15] },
        { rectangle: [4, 4], at: [30, 10] },
        { slot: [10, 4], at: [50, 15], angle: 90 },
        { svgPath: 'M60 10h5v5z' },
        { wkt: 'POLYGON((70 10,75 10,75 15,70 10))' },
        {
          edges: [
            { kind: 'arc', a: [10, 15], b: [14, 15], center: [12, 15], ccw: false },
            { kind: 'arc', a: [14, 15], b: [10, 15], center: [12, 15], ccw: false },
          ],
        },
      ],
    };
    const { outline: region } = parseJob(withOutline(outline));
    const holes = region[0]?.holes ?? [];
    expect(holes.map((hole) => hole[0]?.source?.split(':')[1])).toEqual(['0', '1', '2', '3', '4', '5', '6']);
    const taken = 4 + 9 * Math.PI + 16 + (24 + 4 * Math.PI) + 12.5 + 12.5 + 4 * Math.PI;
    expect(area(region)).toBeCloseTo(2400 - taken, 9);
  });

  it('may have arcs whose numbers are rounded, and keeps their ends', () => {
    const outline = {
      edges: [
        { kind: 'line', a: [0, 0], b: [10, 0] },
        { kind: 'arc', a: [10, 0], b: [7.071, 7.071], center: [0, 0], ccw: true },
        { kind: 'line', a: [7.071, 7.071], b: [0, 0] },
      ],
    };
    const arc = parseJob(withOutline(outline)).outline[0]?.outer[1];
    if (arc?.kind !== 'arc') throw new Error('no arc');
    expect(Math.hypot(arc.a.x - arc.center.x, arc.a.y - arc.center.y)).toBeCloseTo(
      Math.hypot(arc.b.x - arc.center.x, arc.b.y - arc.center.y),
      12,
    );
    expect(arc.b).toEqual({ x: 7.071, y: 7.071 });
  });
});

describe('the depth of a cut', () => {
  const ring = { kind: 'annular', center: [83, 15], diameter: 32, wall: 4.5 };
  const bore = { kind: 'bore', center: [83, 15], diameter: 32 };
  it.each([
    ['is through unless given', bore, 12, true],
    ['can be given as through', { ...bore, depth: 'through' }, 12, true],
    ['is a length', { ...bore, depth: 5 }, 5, false],
    ['of the whole thickness is through', { ...bore, depth: 12 }, 12, true],
    ['short of it by rounding is through', { ...bore, depth: 12 - 1e-12 }, 12, true],
    ['over it by rounding is through', { ...bore, depth: 12 + 1e-12 }, 12, true],
    ['over the thickness is through', { ...bore, depth: 13 }, 12, true],
    ['over the reach is held to it', { ...ring, reach: 8, depth: 9 }, 8, false],
    ['is held to the reach of the cutter', { ...ring, reach: 8 }, 8, false],
    ['is held to the reach though asked to go through', { ...ring, reach: 8, depth: 'through' }, 8, false],
    ['within the reach stands', { ...ring, reach: 8, depth: 6 }, 6, false],
    ['may be all of the reach', { ...ring, reach: 8, depth: 8 }, 8, false],
    ['is through where the reach is the thickness', { ...ring, reach: 12 }, 12, true],
  ])('%s', (_, cut, depth, through) => {
    expect(parseJob(withCut(cut)).cuts[0]).toMatchObject({ depth, through });
  });

  it('counts from the side named', () => {
    expect(parseJob(withCut({ ...bore, from: 'bottom' })).cuts[0]?.from).toBe('bottom');
  });
});

describe('the path of a swept cut', () => {
  it.each([
    [{ svgPath: 'M10 24 L40 24 A8 8 0 0 1 48 32' }],
    [
      {
        wkt: 'COMPOUNDCURVE((10 24, 40 24), CIRCULARSTRING(40 24, 45.65685424949238 26.34314575050762, 48 32))',
      },
    ],
    [
      {
        edges: [
          { kind: 'line', a: [10, 24], b: [40, 24] },
          { kind: 'arc', a: [40, 24], b: [48, 32], center: [40, 32], ccw: true },
        ],
      },
    ],
  ])('can be %j', (path) => {
    const cut = parseJob(withCut({ kind: 'swept', diameter: 6, path })).cuts[0];
    if (cut?.kind !== 'swept') throw new Error('no swept cut');
    expect(cut.path).toHaveLength(2);
    expect(area(footprint(cut))).toBeCloseTo(6 * (30 + 4 * Math.PI) + 9 * Math.PI, 8);
  });

  it('may close and may cross itself', () => {
    const path = { svgPath: 'M0 0L10 10V0L0 10Z' };
    expect(parseJob(withCut({ kind: 'swept', diameter: 1, path })).cuts[0]).toMatchObject({ kind: 'swept' });
  });
});

describe('the error', () => {
  it('lists all faults, each with its place', () => {
    let error: unknown;
    try {
      parseJob({ ...SADDLE, units: 'cm', part: { ...SADDLE.part, thickness: -3 } });
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(JobError);
    expect((error as JobError).issues).toEqual([
      { path: '/units', message: 'must be "mm" or "inch"; it is "cm"' },
      { path: '/part/thickness', message: 'must be over 0; it is -3' },
    ]);
    expect((error as JobError).message).toBe(
      'The job has 2 faults:\n/units: must be "mm" or "inch"; it is "cm"\n/part/thickness: must be over 0; it is -3',
    );
  });
});

describe('a large job', () => {
  // Work that grows with the square of the number of cuts would take minutes, and run into the limit for a hang.
  it('is read, and all its faults are told', () => {
    const cuts = Array.from({ length: 20_000 }, (_, i) => ({
      id: `c${i}`,
      kind: 'bore',
      center: [i % 200, Math.floor(i / 200)],
      diameter: 0.5,
    }));
    const text = JSON.stringify({ ...SADDLE, cuts });
    expect(parseJob(text).cuts).toHaveLength(20_000);
    expect(() => parseJob(text.replaceAll('0.5', '-0.5'))).toThrow('The job has 20000 faults');
  });
});
