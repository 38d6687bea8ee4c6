import { contains, examine, parseJob, type Report, regionFromJson } from '@edgebite/core';
import { draw } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { distanceTo, followed, printedRows } from './follow.js';

/*
 * The sheet is followed by a tool that knows no more than what is printed, in a part that lies turned or flipped; what it
 * has cut is compared with what the report says that the cuts take. How the part lies is worked out here once more: a
 * mirror in an axis, then a turn; the zeros are its leftmost and its foremost place.
 */

type Pair = readonly [number, number];

interface Lie {
  readonly turn: number;
  readonly flip: 'x' | 'y' | null;
}

const LIES: readonly Lie[] = [0, 90, 180, 270, 37].flatMap((turn) =>
  ([null, 'x', 'y'] as const).map((flip) => ({ turn, flip })),
);

const [WIDE, HIGH] = [100, 60];

const holes = [
  { circle: 20, at: [30, 30] },
  { circle: 24, at: [70, 30] },
];

/** Two rooms with a neck of 10 between them that a tool of 8 does not get through with 2 left on either side. */
const rooms = {
  svgPath: `M0 0 H40 V25 H60 V0 H${WIDE} V${HIGH} H60 V35 H40 V${HIGH} H0 Z`,
};

const along = (more: object) => ({ path: { along: more } });

/** Cuts with paths in several runs or one, drawn and along the outline, with leads and without. */
const PARTS: Readonly<Record<string, { readonly outline: object; readonly cuts: readonly object[] }>> = {
  'inside of all loops': {
    outline: { rectangle: [WIDE, HIGH], holes },
    cuts: [{ diameter: 4, ...along({ loop: 'all', side: 'inside', allowance: 2 }) }],
  },
  'outside of all loops, with leads': {
    outline: { rectangle: [WIDE, HIGH], corner: 6, holes },
    cuts: [{ diameter: 5, ...along({ loop: 'all', side: 'outside' }) }],
  },
  'along a wall that a neck parts': {
    outline: rooms,
    cuts: [
      {
        diameter: 8,
        ...along({
          side: 'inside',
          allowance: 2,
          from: { edge: 'outline:6', distance: 5 },
          to: { edge: 'outline:10', distance: 30 },
        }),
      },
    ],
  },
  'along drawn lines and arcs': {
    outline: { rectangle: [WIDE, HIGH] },
    cuts: [
      { diameter: 6, path: { svgPath: 'M10 20 H40 A12 12 0 0 1 52 32 V50' } },
      { diameter: 3, path: { svgPath: 'M70 10 A15 15 0 1 1 70 40' } },
    ],
  },
};

function reportOf(name: string, { turn, flip }: Lie): Report {
  const { outline, cuts } = PARTS[name] as (typeof PARTS)[string];
  const from = flip === null ? 'top' : 'bottom';
  const axis = (to: string) => [{ touch: to, tip: 10, then: 'move half the tip and set 0', tolerance: 0 }];
  return examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline, thickness: 10 },
      cuts: [
        ...cuts.map((cut, k) => ({ id: `way-${k}`, kind: 'swept', depth: 2, from, ...cut })),
        { id: 'hole', kind: 'bore', center: [12, 12], diameter: 6 },
      ],
      setups: [
        {
          id: 'one',
          turn,
          ...(flip === null ? {} : { flip }),
          readout: { units: 'mm', resolution: 0.001 },
          zero: { x: axis('left'), y: axis('front') },
          cuts: [...cuts.map((_, k) => `way-${k}`), 'hole'],
        },
      ],
    }),
  );
}

/** From a place on the drawing to what the readout shows over it. */
function readoutOf({ turn, flip }: Lie): (p: Pair) => Pair {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const lying = ([x, y]: Pair): Pair => {
    const [fx, fy] = [flip === 'y' ? -x : x, flip === 'x' ? -y : y];
    return [fx * cos - fy * sin, fx * sin + fy * cos];
  };
  return (p) => {
    const [x, y] = lying(p);
    return [x - leftmost(0), y - leftmost(1)];
  };
  function leftmost(axis: 0 | 1): number {
    const corners: Pair[] = [
      [0, 0],
      [WIDE, 0],
      [WIDE, HIGH],
      [0, HIGH],
    ];
    return Math.min(...corners.map((corner) => lying(corner)[axis]));
  }
}

/** Steps of the readout, twice over: a place this near to a rim is on either side of it. */
const NEAR = 0.004;

describe.each(Object.keys(PARTS))('a sheet for cutting %s', (name) => {
  it.each(LIES.filter(({ turn }) => turn !== 37 || !name.includes('leads')))(
    'takes what the report says and no more, at turn $turn and flip $flip',
    (lie) => {
      const report = reportOf(name, lie);
      const tracks = followed(printedRows(sheetHtml(sheetOf(report))));
      const toReadout = readoutOf(lie);
      let taken = 0;
      for (const cut of report.cuts) {
        const own = tracks.filter((track) => track.cut === cut.id);
        expect(own, cut.id).not.toEqual([]);
        const footprint = regionFromJson(cut.footprint);
        for (let x = -12.3; x < WIDE + 12; x += 1.7) {
          for (let y = -12.1; y < HIGH + 12; y += 1.3) {
            const where = contains(footprint, { x, y }, NEAR);
            if (where === 'boundary') continue;
            const place = toReadout([x, y]);
            const isCut = own.some(({ way, size }) => distanceTo(way, place) < size / 2);
            if (isCut) taken += 1;
            if (isCut !== (where === 'inside')) {
              expect.fail(`${cut.id} at (${x}, ${y}): ${isCut ? 'cut' : 'left'}, and ${where} its footprint`);
            }
          }
        }
      }
      expect(taken).toBeGreaterThan(100);
    },
  );

  it('can be drawn', () => {
    expect(draw(reportOf(name, { turn: 90, flip: 'x' }))).toContain('</svg>');
  });
});

describe('a path in several runs', () => {
  it('has its runs, each with a start and a lift', () => {
    const words = printedRows(sheetHtml(sheetOf(reportOf('inside of all loops', { turn: 0, flip: null }))));
    const count = (pattern: RegExp) => words.filter((row) => pattern.test(row.words)).length;
    expect([count(/lifted, then down$/), count(/lift off the part$/)]).toEqual([3, 3]);
    const [parted] = reportOf('along a wall that a neck parts', { turn: 0, flip: null }).cuts;
    expect(parted?.toolPath?.passes).toHaveLength(2);
  });

  it('is drawn without lines from run to run', () => {
    const report = reportOf('inside of all loops', { turn: 0, flip: null });
    const paths = [...draw(report).matchAll(/<path d="([^"]*)"[^>]*data-path="tool-centre"/g)];
    expect(paths).not.toEqual([]);
    for (const [, d = ''] of paths) expect(d.match(/M/g)).toHaveLength(3);
  });
});

describe('following a sheet', () => {
  const row = { cut: 'a', size: 4, depth: '2.000', at: [0, 0] as const };

  it('finds a tool that nobody lifts or sets down', () => {
    const down = { ...row, words: 'go there lifted, then down' };
    expect(() => followed([down])).toThrow('still down at the end');
    expect(() => followed([{ ...row, words: 'straight there' }])).toThrow('not down');
    expect(() => followed([down, { ...row, words: 'lift off the part' }])).toThrow('nothing to lift');
  });
});
