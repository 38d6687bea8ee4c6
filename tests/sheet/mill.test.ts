import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../packages/previewer/src/sheet/html.js';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { type PrintedStep, printedSteps } from './follow.js';
import { type Lie, type Met, Mill, type Pair, type Tool } from './mill.js';

/*
 * The printed sheet, followed step by step on a part and with tools placed as shapes: what pushes the part which way,
 * what lets go at which depth and how large it is, what has to be taken out, and whether the way off the wall is clear.
 * The part is turned and flipped halfway through the job.
 */

const THICK = 10;
const CLEARANCE = 0.5;
const OUTLINE: readonly Pair[] = [
  [0, 0],
  [70, 0],
  [70, 30],
  [40, 30],
  [40, 50],
  [0, 50],
];
const KEEP: Pair = [30, 40];
const AS_DRAWN: Lie = { turn: 0, flip: null };
const LIES: readonly Lie[] = [0, 90, 180, 270].flatMap((turn) =>
  ([null, 'x', 'y'] as const).map((flip) => ({ turn, flip })),
);

const round = (id: string, center: Pair, diameter: number, more: object = {}) => ({
  id,
  kind: 'bore',
  center,
  diameter,
  clearance: CLEARANCE,
  ...more,
});

const ring = (id: string, center: Pair, diameter: number, wall: number, more: object = {}) => ({
  ...round(id, center, diameter, more),
  kind: 'annular',
  wall,
});

/** Wall of each hollow cutter, which one has in the hand: a sheet does not say it. */
const WALLS: Readonly<Record<string, number>> = { 'left-ring': 3, 'front-ring': 3, groove: 4 };

function sheetOfJob(lie: Lie): PrintedStep[] {
  const from = lie.flip === null ? 'top' : 'bottom';
  const axis = (to: string) => [{ touch: to, tip: 10, then: 'move half the tip and set 0', tolerance: 0 }];
  const setup = (id: string, { turn, flip }: Lie, cuts: readonly string[]) => ({
    id,
    turn,
    ...(flip === null ? {} : { flip }),
    readout: { units: 'mm', resolution: 0.001 },
    zero: { x: axis('left'), y: axis('front') },
    cuts,
  });
  const cuts = [
    // At the right end, not through: there `ear` meets less metal at some heights.
    round('pocket', [70, 15], 16, { depth: 4 }),
    ring('left-ring', [0, 20], 24, 3),
    ring('groove', [22, 33], 14, 4, { depth: 6, from }),
    round('ear', [66, 4], 20),
    ring('front-ring', [20, -2], 20, 3),
    // Through where the slug of the ring before it lies.
    round('cross', [20, 4], 16),
    round('seat', [20, 52], 14, { depth: 5, from, passes: { kind: 'step in', bite: 3, approach: 270 } }),
    round('eye', [55, 20], 6),
  ];
  const report = examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { svgPath: 'M0 0 H70 V30 H40 V50 H0 Z' }, thickness: THICK },
      keep: KEEP,
      limits: { web: 0.2, knifeEdge: 5 },
      cuts,
      setups: [
        setup('first', AS_DRAWN, ['pocket', 'left-ring']),
        setup('second', lie, ['groove', 'ear', 'front-ring', 'cross', 'seat', 'eye']),
      ],
    }),
  );
  return printedSteps(sheetHtml(sheetOf(report)));
}

/** A load as it is printed. */
interface Told {
  readonly names: string;
  /** Depth from which it is so. */
  readonly from: number;
  readonly met: Met;
  readonly words: string | null;
}

const NUMBER = '(\\d+(?:\\.\\d+)?)';
const LOAD = new RegExp(
  `^(?:(.*), from (?:the top|${NUMBER} mm deep): )?(?:pushes the part ([a-z ]+) \\(${NUMBER}°\\), side load ${NUMBER}, )?` +
    `in metal (?:(all round)|${NUMBER} % of a turn, (\\d+) strikes? a turn)(, no push to one side)?\\.$`,
  'i',
);

function loadsOf(lines: readonly string[]): Told[] {
  return lines.flatMap((line) => {
    const found = LOAD.exec(line);
    if (found === null) return [];
    const [, names, from, words, degrees, side, all, share, strikes] = found;
    return [
      {
        names: (names ?? 'at entry and at worst and breaking through').toLowerCase(),
        from: Number(from ?? 0),
        words: words ?? null,
        met: {
          share: all === undefined ? Number(share) / 100 : 1,
          strikes: Number(strikes ?? 0),
          sideLoad: Number(side ?? 0),
          push: Number(degrees ?? 0),
        },
      },
    ];
  });
}

/** The nearest of eight directions, for a person that stands in front of the table and looks along Y. */
function wordsOf(degrees: number): string {
  const eight = [
    'to the right',
    'to the right and away from you',
    'away from you',
    'to the left and away from you',
    'to the left',
    'to the left and towards you',
    'towards you',
    'to the right and towards you',
  ];
  return eight[Math.round(degrees / 45) % 8] as string;
}

function expectLoad(step: string, told: Told, met: Met): void {
  const name = `${step}, ${told.names}`;
  expect(Math.abs(told.met.share - met.share), `${name}: share`).toBeLessThan(0.008);
  expect(told.met.strikes, `${name}: strikes`).toBe(met.strikes);
  expect(Math.abs(told.met.sideLoad - met.sideLoad), `${name}: side load`).toBeLessThan(0.02);
  if (told.words === null || met.sideLoad < 0.05) return;
  const off = Math.abs(((told.met.push - met.push + 540) % 360) - 180);
  expect(off, `${name}: push`).toBeLessThan(1.5);
  expect(told.words, `${name}: push in words`).toBe(wordsOf(told.met.push));
}

/** A machine that does what a sheet says, and looks at what comes of it. */
function follow(steps: readonly PrintedStep[], lies: readonly Lie[]): string[] {
  const mill = new Mill(OUTLINE, THICK, KEEP);
  const loose = new Map<string, Set<number>>();
  const seen: string[] = [];
  steps.forEach(({ block, rows, over, under }, k) => {
    const [row, back] = rows as [PrintedStep['rows'][number], PrintedStep['rows'][number] | undefined];
    const { cut, at, size } = row;
    const name = `step ${k + 1} (${cut})`;
    mill.lay(lies[block] as Lie);
    const inner = cut in WALLS ? size / 2 - (WALLS[cut] as number) : 0;
    const tool: Tool = { at, radius: size / 2, inner };
    const depth = row.depth === 'through' ? THICK : Number(row.depth);
    expect(depth, name).toBeGreaterThan(0);

    // What lies loose in the way is named, and nothing else.
    const taken = mill.through(tool, depth);
    const inWay = [...loose].filter(([, body]) => [...body].some((cell) => taken.has(cell)));
    const named = over.flatMap((line) => /take out (\S+), loose since/.exec(line)?.[1] ?? []);
    expect(named, name).toEqual(inWay.map(([id]) => id));
    for (const [id, body] of inWay) {
      mill.takeOut(body);
      loose.delete(id);
      seen.push('taken out first');
    }
    const lying = new Set([...loose.values()].flatMap((body) => [...body]));

    // What the tool meets on its way down.
    const layers = new Map<string, Met>();
    const met = Array.from({ length: depth }, (_, d) => {
      const layer = mill.nameOf(d, lying);
      const known = layers.get(layer) ?? mill.meets(tool, d, lying);
      layers.set(layer, known);
      return known;
    });
    const there = met.flatMap(({ share }, d) => (share > 0 ? [d] : []));
    const told = loadsOf(under);
    if (there.length === 0) expect(under, name).toContain('Meets no metal.');
    else {
      expect(told, `${name}: ${under.join(' ')}`).not.toEqual([]);
      const of = (what: string) => told.find(({ names }) => names.includes(what));
      const [first = 0] = there;
      const entry = of('at entry') as Told;
      expectLoad(name, entry, met[first] as Met);
      const starts = under.some((line) => line.startsWith('Starts in no metal'));
      expect(starts, name).toBe(first > 0);
      const most = Math.max(...met.map(({ sideLoad }) => sideLoad));
      const worst = of('at worst') as Told;
      expect(Math.abs(worst.met.sideLoad - most), `${name}: worst`).toBeLessThan(0.02);
      if (told.length > 1) {
        expectLoad(name, worst, met[worst.from] as Met);
        expect(entry.from, name).toBe(first);
        seen.push('loads that differ');
      }
      const breaks = of('breaking through');
      if (breaks !== undefined && depth === THICK)
        expectLoad(name, breaks, met[there.at(-1) as number] as Met);
    }

    // What lets go, when, and how large it is then.
    const before = mill.loose().length;
    expect(before, name).toBe(loose.size);
    const lets = under.flatMap((line) => {
      const found = /^Lets (\S+) go (\S+) mm deep, (\S+) mm³\./.exec(line);
      return found === null
        ? []
        : [{ id: found[1] as string, depth: Number(found[2]), volume: Number(found[3]) }];
    });
    const known = new Set(lying);
    for (let d = 1; d <= depth; d++) {
      if (!mill.cut(tool, d)) continue;
      for (const body of mill.loose()) {
        if ([...body].some((cell) => known.has(cell))) continue;
        const free = lets.find((one) => one.depth === d && !loose.has(one.id));
        expect(free, `${name}: a body lets go ${d} deep`).toBeDefined();
        const { id, volume } = free as (typeof lets)[number];
        expect(Math.abs(mill.volumeOf(body) / volume - 1), `${name}: volume`).toBeLessThan(0.06);
        loose.set(id, body);
        for (const cell of body) known.add(cell);
        seen.push('let go');
      }
    }
    expect(loose.size, name).toBe(before + lets.length);

    // The way off the wall.
    if (back !== undefined) {
      expect(back.words, name).toMatch(/^back off there at depth, then lift$/);
      const way: Pair = [back.at[0] - at[0], back.at[1] - at[1]];
      for (let s = 0; s <= 1; s += 0.1) {
        const place: Pair = [at[0] + s * way[0], at[1] + s * way[1]];
        expect(mill.nearest(place, depth, lying), `${name}: on its way off`).toBeGreaterThan(size / 2 - 0.01);
      }
      expect(mill.nearest(back.at, depth, lying), `${name}: off the wall`).toBeGreaterThan(
        size / 2 + CLEARANCE - 0.01,
      );
      const line = under.find((one) => one.startsWith('Before you lift, back off'));
      const found = new RegExp(
        `back off ([a-z ]+) \\(${NUMBER}°\\) by ${NUMBER} mm, to X (-?\\d+\\.\\d+) Y (-?\\d+\\.\\d+)`,
      ).exec(line ?? '');
      expect(found, name).not.toBeNull();
      const [, words, degrees, by, x, y] = found as RegExpExecArray;
      const heading = (Math.atan2(way[1], way[0]) * 180) / Math.PI;
      expect(Math.abs(((Number(degrees) - heading + 540) % 360) - 180), name).toBeLessThan(0.5);
      expect(words, name).toBe(wordsOf(Number(degrees)));
      expect(Math.abs(Number(by) - Math.hypot(...way)), name).toBeLessThan(0.002);
      expect([Number(x), Number(y)], name).toEqual(back.at);
      seen.push('way off');
    } else if (under.some((line) => line.startsWith('There is no way off the wall'))) {
      seen.push('no way off');
    } else {
      expect(under.at(-1), name).toMatch(/stands at no wall/);
      expect(mill.nearest(at, depth, lying), name).toBeGreaterThan(size / 2);
    }
    // A core that has come loose is lifted out with the tool; what lies beside stays till it is told to be taken out.
  });
  return seen;
}

describe('a printed sheet, followed on a part that is turned and flipped halfway', () => {
  it.each(LIES)('tells what happens, at turn $turn and flip $flip', (lie) => {
    const seen = follow(sheetOfJob(lie), [AS_DRAWN, lie]);
    for (const what of ['let go', 'taken out first', 'way off', 'no way off', 'loads that differ'])
      expect(seen, what).toContain(what);
  });
});
