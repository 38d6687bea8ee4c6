import { examine, METALS, parseJob, type Report, reportSchema, STANDING_CAUTION } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

type Plain = Record<string, unknown>;

const BORE = { id: 'eye', kind: 'bore', center: [30, 20], diameter: 12 };
const RING = { id: 'ring', kind: 'annular', center: [60, 20], diameter: 36, wall: 4.5 };
const GROOVE = {
  id: 'groove',
  kind: 'swept',
  diameter: 6,
  depth: 3,
  path: { svgPath: 'M10 8 H40 A10 10 0 0 1 50 18' },
};
const DRILL = { id: 'd', kind: 'drill', toolMaterial: 'HSS', diameter: 12, cuts: ['eye'] };
const CUTTER = { id: 'c', kind: 'annular cutter', toolMaterial: 'HSS', teeth: 8, cuts: ['ring'] };
const MILL = { id: 'm', kind: 'end mill', toolMaterial: 'HSS', teeth: 2, cuts: ['groove'] };
const HEAD = { id: 'h', kind: 'boring head', toolMaterial: 'carbide', cuts: ['eye'] };

function reportOn(tools: unknown, over: Plain = {}): Report {
  const part = { outline: { rectangle: [80, 40] }, thickness: 10, material: 'mild steel' };
  return examine(parseJob({ edgebite: 1, units: 'mm', part, cuts: [BORE, RING, GROOVE], tools, ...over }));
}

const row = (report: Report, id: string) => report.cuts.find((cut) => cut.id === id);
const codes = (report: Report) => report.findings.map(({ code }) => code);

describe('running', () => {
  it('is null without a tool', () => {
    for (const { running } of reportOn(undefined).cuts) expect(running).toBeNull();
  });

  // Metric table: 20 to 30 m/min in mild steel. 1000 x 20 / (pi 12) = 530.5, 1000 x 30 / (pi 12) = 795.8 (the formula of
  // Machinery's Handbook). Drill feeds: 12 mm is 0.472 in, 0.004 to 0.010 in a turn. 10 mm deep,
  // and the point of 118 degrees before it: 6 over tan 59 = 1.664279 is 3.605.
  it('of a drill: speed, feed and time', () => {
    const running = row(reportOn([DRILL]), 'eye')?.running;
    expect(running?.surfaceSpeed).toEqual([20, 30]);
    expect(running?.spindle?.map((n) => n.toFixed(1))).toEqual(['530.5', '795.8']);
    expect(running?.set).toEqual(running?.spindle);
    expect(running?.feedPerTurn?.map((f) => f.toFixed(4))).toEqual(['0.1016', '0.2540']);
    expect(running?.feed?.map((f) => f.toFixed(1))).toEqual(['53.9', '202.1']);
    expect(running?.minutes?.map((t) => t.toFixed(3))).toEqual(['0.067', '0.252']);
    expect(running?.travel).toBeCloseTo(10 + 6 / 1.664279, 5);
  });

  // The path: 30 straight and a quarter of a circle of radius 10.
  it('of an end mill: along its path', () => {
    expect(row(reportOn([MILL]), 'groove')?.running?.travel).toBeCloseTo(30 + 5 * Math.PI, 12);
  });

  // By hand: 3 off the edges of 80 by 30 with arcs of radius 3 about the corners, and a quarter turn of radius 4 in and out.
  it('of an end mill: its leads are travel too', () => {
    const report = examine(
      parseJob({
        edgebite: 1,
        units: 'mm',
        part: { outline: { rectangle: [80, 30] }, thickness: 12, material: 'mild steel' },
        tools: [
          { id: 'mill', kind: 'end mill', toolMaterial: 'HSS', diameter: 6, teeth: 4, cuts: ['round'] },
        ],
        cuts: [{ id: 'round', kind: 'swept', diameter: 6, path: { along: { side: 'outside', lead: 4 } } }],
      }),
    );
    const wanted = 2 * (80 + 30) + 6 * Math.PI + 2 * (2 * Math.PI);
    expect(report.cuts[0]?.running?.travel).toBeCloseTo(wanted, 9);
    expect(report.steps[0]?.travel).toBeCloseTo(wanted, 9);
  });

  it('of an end mill in a bore: once round inside, or straight down if it is as large', () => {
    const mill = (diameter: number) => ({ ...MILL, diameter, cuts: ['eye'] });
    expect(row(reportOn([mill(8)]), 'eye')?.running?.travel).toBeCloseTo(4 * Math.PI, 12);
    expect(row(reportOn([mill(12)]), 'eye')?.running?.travel).toBe(10);
    expect(codes(reportOn([mill(8)]))).not.toContain('tool-does-not-fit');
    expect(codes(reportOn([mill(14)]))).toContain('tool-does-not-fit');
  });

  it('in inches is the same as in millimetres', () => {
    const inch = (value: number) => value / 25.4;
    const part = {
      outline: { rectangle: [inch(80), inch(40)] },
      thickness: inch(10),
      material: 'mild steel',
    };
    const bore = { ...BORE, center: [inch(30), inch(20)], diameter: inch(12) };
    const tools = [{ ...DRILL, diameter: inch(12) }];
    const a = row(reportOn([DRILL]), 'eye')?.running;
    const b = examine(parseJob({ edgebite: 1, units: 'inch', part, cuts: [bore], tools })).cuts[0]?.running;
    expect([b?.surfaceSpeedUnit, b?.feedUnit]).toEqual(['ft/min', 'in/min']);
    for (const k of [0, 1]) {
      expect((b?.spindle?.[k] as number) / (a?.spindle?.[k] as number)).toBeCloseTo(1, 12);
      expect(((b?.surfaceSpeed?.[k] as number) * 0.3048) / (a?.surfaceSpeed?.[k] as number)).toBeCloseTo(
        1,
        12,
      );
      expect(((b?.feed?.[k] as number) * 25.4) / (a?.feed?.[k] as number)).toBeCloseTo(1, 12);
      expect((b?.minutes?.[k] as number) / (a?.minutes?.[k] as number)).toBeCloseTo(1, 12);
    }
  });
});

describe('findings on tools', () => {
  it('ask for the limit of a boring head and give no speed without it', () => {
    const report = reportOn([HEAD]);
    expect(codes(report)).toContain('speed-limit-missing');
    expect(row(report, 'eye')?.running).toMatchObject({ set: null, feed: null, minutes: null });
    expect(report.cautions.map(({ code }) => code)).toContain('speed-limit-unknown');
    const limited = reportOn([{ ...HEAD, maxSpeed: 900 }]);
    expect(codes(limited)).not.toContain('speed-limit-missing');
    // Carbide in mild steel, turning: 90 m/min on 12 mm is 2387, so the limit is what is set.
    expect(row(limited, 'eye')?.running).toMatchObject({ set: [900, 900], limitedBy: 'tool' });
    expect(codes(limited)).toContain('speed-under-range');
  });

  it('say that the machine is too fast', () => {
    const report = reportOn([CUTTER], { machine: { speeds: [500, 1000] } });
    expect(codes(report)).toContain('spindle-too-fast');
    expect(row(report, 'ring')?.running).toMatchObject({ set: null, limitedBy: 'machine' });
  });

  it('say that a material is not known, or not named', () => {
    const part = { outline: { rectangle: [80, 40] }, thickness: 10 };
    for (const material of [{ material: 'oak' }, {}]) {
      const report = reportOn([DRILL], { part: { ...part, ...material } });
      expect(codes(report)).toContain('speeds-unknown');
      expect(row(report, 'eye')?.running).toMatchObject({
        tool: 'd',
        surfaceSpeed: null,
        set: null,
        feed: null,
      });
    }
  });

  it('say that there is no feed without teeth', () => {
    const { teeth: _, ...toothless } = CUTTER;
    const report = reportOn([toothless]);
    expect(codes(report)).toContain('feed-unknown');
    expect(row(report, 'ring')?.running?.feed).toBeNull();
    expect(codes(reportOn([CUTTER]))).not.toContain('feed-unknown');
  });

  it('say that a tool is not of the size of its cut', () => {
    expect(codes(reportOn([{ ...DRILL, diameter: 11 }]))).toContain('tool-does-not-fit');
    expect(codes(reportOn([DRILL, CUTTER, MILL]))).not.toContain('tool-does-not-fit');
  });
});

describe('breaking off', () => {
  // Floor of 2 under a core of 27: pi 27 x 2 = 169.646 mm², at 41 to 56 ksi (282.7 to 386.1 MPa) in mild steel.
  it('of a held slug: the force on its kerf, and the saw cut instead', () => {
    const report = reportOn(undefined, { cuts: [{ ...RING, depth: 8 }] });
    const floor = report.floors.find(({ holds }) => holds !== null);
    expect(floor?.breakOff?.area).toBeCloseTo(54 * Math.PI, 9);
    expect(floor?.breakOff?.force.map((f) => Math.round(f))).toEqual([47956, 65501]);
    expect(floor?.breakOff?.forceUnit).toBe('N');
    expect(floor?.breakOff?.sawLength).toBeCloseTo(27 * Math.PI, 9);
  });

  // Centre at 6.8 from the edge, less the radius of 6, leaves 0.8; through all of 10.
  it('of a web: across its thickness, as high as its slab', () => {
    const report = reportOn(undefined, { cuts: [{ ...BORE, center: [30, 6.8] }] });
    const [web] = report.webs;
    expect(web?.breakOff?.thickness).toBeCloseTo(0.8, 9);
    expect(web?.breakOff?.area).toBeCloseTo(8, 9);
    // 206.8 MPa (30 ksi) x 10 x 0.8² / 4 = 0.331 N m.
    expect(web?.breakOff?.moment[0]).toBeCloseTo(0.331, 3);
    expect(web?.breakOff?.sawLength).toBeCloseTo(0.8, 9);
  });

  it('is null where there is nothing to break, or the material is not known', () => {
    const held = { cuts: [{ ...RING, depth: 8 }] };
    const part = { outline: { rectangle: [80, 40] }, thickness: 10, material: 'oak' };
    for (const { breakOff } of reportOn(undefined, { ...held, part }).floors) expect(breakOff).toBeNull();
    const groove = reportOn(undefined, { cuts: [GROOVE] });
    expect(groove.floors.map(({ holds, breakOff }) => [holds, breakOff])).toEqual([[null, null]]);
  });
});

describe('cautions', () => {
  it('without a cause are the standing one alone', () => {
    const report = reportOn(undefined, { cuts: [GROOVE] });
    expect(report.cautions).toEqual([{ code: 'instructions-first', message: STANDING_CAUTION, about: [] }]);
  });

  it('come in the order of danger, each naming its causes, once', () => {
    const open = { ...RING, center: [79, 20] };
    const report = reportOn([{ ...HEAD, maxSpeed: 900 }], { cuts: [BORE, open, GROOVE] });
    expect(report.cautions.map(({ code }) => code)).toEqual([
      'slug-unguarded',
      'slug-hot',
      'one-sided-cut',
      'sharp-break-through',
      'stop-to-measure',
      'instructions-first',
    ]);
    const known = new Set(['cut:eye', 'cut:ring', ...report.pieces.map(({ id }) => `piece:${id}`)]);
    for (const { about } of report.cautions.slice(0, -1)) {
      expect(about.length).toBeGreaterThan(0);
      expect(new Set(about).size).toBe(about.length);
      for (const name of about) expect(known).toContain(name);
    }
  });

  it('speak of a captive slug without calling it unguarded', () => {
    const found = reportOn(undefined, { cuts: [{ ...RING, center: [40, 20] }] }).cautions.map(
      ({ code }) => code,
    );
    expect(found).toContain('slug-hot');
    expect(found).not.toContain('slug-unguarded');
  });

  it('tell of slugs that a later cut would take', () => {
    const later = { ...BORE, id: 'seat', center: [60, 20], diameter: 37 };
    const report = reportOn(undefined, { cuts: [RING, later] });
    const hot = report.cautions.find(({ code }) => code === 'slug-hot');
    expect(hot?.about).toEqual(['cut:ring']);
  });

  it('name a few cuts and count the rest', () => {
    const holes = [10, 25, 40, 55, 70].map((x, k) => ({ ...BORE, id: `h${k}`, center: [x, 20] }));
    const report = reportOn(undefined, { cuts: holes });
    const sharp = report.cautions.find(({ code }) => code === 'sharp-break-through');
    expect(sharp?.message).toMatch(/^Cuts h0, h1, h2 and 2 more: /);
    expect(sharp?.about).toHaveLength(5);
  });

  it('put a part that nothing holds before all else', () => {
    const report = reportOn(undefined, { keep: [30, 20], cuts: [BORE, RING] });
    expect(report.cautions[0]?.code).toBe('part-not-held');
  });
});

describe('any tool and machine', () => {
  const speed = fc.double({ min: 0.001, max: 1e6, noNaN: true });
  const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
  const machine = fc.oneof(
    fc.record({ speeds: fc.array(speed, { minLength: 1, maxLength: 8 }) }),
    fc.tuple(speed, speed).map(([a, b]) => ({ slowest: Math.min(a, b), fastest: Math.max(a, b) })),
    fc.record({ fastest: speed }),
    fc.constant({}),
  );
  const tool = fc.record({
    kind: fc.constantFrom('drill', 'boring head', 'end mill'),
    toolMaterial: fc.constantFrom('HSS', 'carbide'),
    maxSpeed: maybe(speed),
    diameter: maybe(fc.double({ min: 1e-6, max: 1e7, noNaN: true })),
    teeth: maybe(fc.integer({ min: 1, max: 200 })),
  });

  it('give a sound report: ranges in order, within all limits, nothing lost as JSON', () => {
    fc.assert(
      fc.property(
        tool,
        machine,
        fc.constantFrom('mm', 'inch'),
        fc.constantFrom(undefined, 'oak', ...METALS),
        ({ kind, toolMaterial, ...given }, spindle, units, material) => {
          const own = kind === 'boring head' ? { maxSpeed: given.maxSpeed } : given;
          const part = { outline: { rectangle: [80, 40] }, thickness: 10, material };
          const tools = [{ id: 't', kind, toolMaterial, ...own, cuts: ['eye'] }];
          const report = reportOn(tools, { part, units, machine: spindle, cuts: [BORE] });
          expect(reportSchema.parse(report)).toEqual(report);
          expect(JSON.parse(JSON.stringify(report))).toStrictEqual(report);
          const running = row(report, 'eye')?.running;
          const ranges = [
            running?.surfaceSpeed,
            running?.spindle,
            running?.set,
            running?.feed,
            running?.minutes,
          ];
          for (const range of ranges) if (range) expect(range[0]).toBeLessThanOrEqual(range[1]);
          const most = running?.set?.[1] ?? 0;
          expect(most).toBeLessThanOrEqual(own.maxSpeed ?? most);
          expect(most).toBeLessThanOrEqual(running?.spindle?.[1] ?? 0);
          if ('fastest' in spindle) expect(most).toBeLessThanOrEqual(spindle.fastest);
        },
      ),
      { numRuns: runs(150) },
    );
  });
});
