import { examine, parseJob, type Report, type ReportCheck, type ReportWay } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { commands } from '../../fixtures/path-area.js';
import { drawCheck } from '../index.js';
import { type WayScene, wayScene } from './way-scene.js';

type Place = readonly [number, number];

/** A plate with seats at its back: shallow, deep (overhung), and two beside each other; pins and balls to measure with. */
function plate(centers: readonly Place[], turn = 0, flip?: 'x' | 'y'): Report {
  const cuts = centers.map(([x, y], k) => ({
    id: `seat-${k}`,
    kind: 'bore' as const,
    center: [x, y] as [number, number],
    diameter: 24,
  }));
  return examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [120, 50] }, thickness: 18 },
      keep: [5, 5],
      gauges: { pins: [8, 11, 14], balls: [10] },
      setups: [
        {
          id: 's',
          turn,
          zero: { x: [{ touch: 'left', tip: 10, reads: 0 }], y: [{ touch: 'front', tip: 10, reads: 0 }] },
          ...(flip === undefined ? {} : { flip }),
          cuts: cuts.map(({ id }) => id),
        },
      ] as never,
      cuts: flip === undefined ? cuts : cuts.map((cut) => ({ ...cut, from: 'bottom' as const })),
    }),
  );
}

/** A round part of radius 40 with a bite in its side. */
const round = (): Report =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { circle: 80 }, thickness: 10 },
      keep: [-30, 0],
      cuts: [{ id: 'seat-0', kind: 'bore', center: [44, 0], diameter: 24 }],
    }),
  );

const away = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function scenes(report: Report): { check: ReportCheck; way: ReportWay; scene: WayScene }[] {
  return report.checks.flatMap((check) =>
    check.ways.map((way) => {
      const scene = wayScene(report, check, way);
      if (scene === null) throw new Error(`nothing to see of ${way.words}`);
      return { check, way, scene };
    }),
  );
}

const SHALLOW: Place = [30, 54];
const DEEP: Place = [30, 44];

describe('the scene of a way', () => {
  const all = [
    plate([SHALLOW]),
    plate([DEEP]),
    plate([
      [30, 44],
      [62, 42],
    ]),
    round(),
  ].flatMap(scenes);

  it('is there for every kind of way', () => {
    const kinds = new Set(all.map(({ way }) => way.kind));
    expect([...kinds].sort()).toEqual([
      'across',
      'depth',
      'height',
      'left',
      'opening',
      'over pins',
      'pins out',
      'round',
      'to pins',
      'wall',
    ]);
  });

  it('shows two places that are as far apart as the reading says', () => {
    for (const { way, scene } of all) {
      expect(away(...scene.ends), way.words).toBeCloseTo(Math.abs(way.reading), 9);
    }
  });

  it('shows pins that touch the arc from inside, each other, and the reading', () => {
    const pinned = all.filter(({ scene }) => scene.pins.length > 0);
    expect(pinned.length).toBeGreaterThan(8);
    for (const { check, scene } of pinned) {
      for (const { center, radius } of scene.pins) {
        expect(away(center, check.center) + radius).toBeCloseTo(check.radius, 9);
        // Where it touches is on the arc, not in the opening.
        const angle = (Math.atan2(center[1] - check.center[1], center[0] - check.center[0]) * 180) / Math.PI;
        expect(
          check.spans.some(([from, to]) => [-360, 0, 360].some((t) => from <= angle + t && angle + t <= to)),
        ).toBe(true);
      }
      const [one, other] = scene.pins;
      if (one !== undefined && other !== undefined)
        expect(away(one.center, other.center)).toBeCloseTo(2 * one.radius, 9);
      const [first] = scene.pins;
      expect(
        Math.min(
          ...scene.ends.map((end) => Math.abs(away(end, first?.center as Place) - (first?.radius ?? 0))),
        ),
      ).toBeCloseTo(0, 9);
    }
  });

  it('ends on the arc where the arc itself is read', () => {
    for (const { check, way, scene } of all) {
      if (scene.pins.length > 0) continue;
      const onArc = scene.ends.filter((end) => Math.abs(away(end, check.center) - check.radius) < 1e-9);
      expect(onArc.length, way.words).toBeGreaterThanOrEqual(
        way.kind === 'opening' || way.kind === 'across' ? 2 : 1,
      );
    }
  });
});

/** The end points of the line of a frame's reading, on the sheet. */
function readingIn(svg: string, number: number): Place[] {
  const [, own = ''] = svg.split(`id="edgebite-way-${number}"`);
  const [, reading = ''] = own.split('data-role="reading"');
  const tag = /<line ([^>]*)>/.exec(reading)?.[1] ?? '';
  const at = (name: string) => Number(new RegExp(`${name}="([^"]*)"`).exec(tag)?.[1]);
  return [
    [at('x1'), at('y1')],
    [at('x2'), at('y2')],
  ];
}

describe('drawCheck', () => {
  it('shows the part as it lies when the arc is cut', () => {
    // The depth goes from the back face, y = 50, into the part: on the sheet downwards as drawn, turned by 90 degrees its back lies left, and it
    // goes to the right; by 180: upwards; turned over about x: upwards too.
    const ways: [number, 'x' | 'y' | undefined, Place][] = [
      [0, undefined, [0, 1]],
      [90, undefined, [1, 0]],
      [180, undefined, [0, -1]],
      [270, undefined, [-1, 0]],
      [0, 'y', [0, 1]],
      [0, 'x', [0, -1]],
    ];
    for (const [turn, flip, way] of ways) {
      const report = plate([SHALLOW], turn, flip);
      const number = report.checks[0]?.ways.findIndex(({ kind }) => kind === 'depth') ?? -1;
      const [a, b] = readingIn(drawCheck(report, 0), number + 1) as [Place, Place];
      const long = away(a, b);
      expect((b[0] - a[0]) / long).toBeCloseTo(way[0], 3);
      expect((b[1] - a[1]) / long).toBeCloseTo(way[1], 3);
    }
  });

  it('draws the arc through the metal that stands, and names each reading', () => {
    const report = plate([SHALLOW]);
    const svg = drawCheck(report, 0);
    for (const [k, way] of (report.checks[0]?.ways ?? []).entries()) {
      const [, own = ''] = svg.split(`id="edgebite-way-${k + 1}"`);
      expect(own).toContain(way.reading.toFixed(3));
      expect(own.split('data-role="part"').length).toBeGreaterThan(1);
    }
    const arc = /<path d="([^"]*)"[^>]*data-role="arc"/.exec(svg)?.[1] ?? '';
    expect(commands(arc).some(({ letter }) => letter === 'A')).toBe(true);
    expect(svg).toContain('Stop the spindle');
  });

  it('draws those ways that are asked for, and refuses what is not there', () => {
    const report = plate([SHALLOW]);
    const one = drawCheck(report, 0, { ways: [2] });
    expect(one.match(/id="edgebite-way-\d+"/g)).toEqual(['id="edgebite-way-3"']);
    expect(() => drawCheck(report, 1)).toThrow('there is no arc 1 to measure; the report has 1, from 0');
    expect(() => drawCheck(report, 0, { ways: [99] })).toThrow('there is no way 99');
    expect(() => drawCheck(report, 0, { width: 20 })).toThrow('it must be from 100 to 1000 mm');
  });
});
