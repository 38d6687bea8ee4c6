import { examine, JobError, parseJob, parseSvgPath, parseWkt } from '@edgebite/core';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../../packages/previewer/page/src/document/json.js';
import { type Moves, movedTo, nudged } from '../../packages/previewer/page/src/move/free.js';
import { gripsOf, inTurn, movesAt } from '../../packages/previewer/page/src/move/grips.js';
import { movesOf } from '../../packages/previewer/page/src/move/moves.js';
import { svgNumbers } from '../../packages/previewer/page/src/move/path-text.js';
import { passMoves } from '../../packages/previewer/page/src/move/steps.js';
import { movedText, startOfText } from '../../packages/previewer/page/src/move/text-numbers.js';
import { wktNumbers } from '../../packages/previewer/page/src/move/wkt-text.js';
import type { Place } from '../../packages/previewer/page/src/worker/sketch.js';
import { type Worked, workedOf } from '../../packages/previewer/page/src/worker/worked.js';
import { runs } from '../tools/runs.js';

const STEP = 0.005;

// Outer edges run counter-clockwise: 0 the front, 1 the right end, 2 the slope, 3 the back, 4 the left end, 5 an arc.
const outline = { svgPath: 'M0 0 L80 0 L80 30 L60 45 L10 45 L0 35 L0 20 A8 8 0 0 0 0 4 Z' };

const job = (cut: JsonObject): JsonObject => ({
  edgebite: 1,
  units: 'mm',
  resolution: STEP,
  part: { outline, thickness: 10 },
  cuts: [{ id: 'hole', kind: 'bore', diameter: 12, ...cut }],
});

const cutIn = (made: JsonObject): JsonObject => (made.cuts as readonly JsonObject[])[0] as JsonObject;

function workedAs(cut: JsonObject): Worked {
  const report = examine(parseJob(job(cut)));
  return workedOf(report, report.cuts[0] as (typeof report.cuts)[number]);
}

/** Moves a cut and works it out: what it is given by then, and where it came to. */
function taken(cut: JsonObject, move: (whole: JsonObject, moves: Moves) => JsonObject | null) {
  const whole = cutIn(job(cut));
  const next = move(whole, movesOf(whole, workedAs(cut)) as Moves);
  if (next === null) return null;
  return { center: next.center as JsonObject, path: next.path, at: workedAs(next).center as Place };
}

const drag = (cut: JsonObject, place: Place) =>
  taken(cut, (whole, moves) => movedTo(whole, moves, place, STEP));
const press = (cut: JsonObject, way: Place, steps = 1) =>
  taken(cut, (whole, moves) => nudged(whole, moves, way, steps, STEP));

const isOnStep = (value: unknown): boolean =>
  typeof value === 'number' && Math.abs(value / STEP - Math.round(value / STEP)) < 1e-6;

const away = (a: Place, b: Place): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Places all over a box. Doubles would crowd at 0, where little is at stake. */
const near = (x: readonly [number, number], y: readonly [number, number]) => {
  const within = ([min, max]: readonly [number, number]) =>
    fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);
  return fc.tuple(within(x), within(y));
};

describe('a hole in a face', () => {
  const front = { center: { on: 'outline:0', along: 30, depth: 4 } };

  it('goes where it is dragged, by where it is along the face and how deep it bites', () => {
    fc.assert(
      fc.property(near([1, 79], [-5.9, 5.9]), (place) => {
        const moved = drag(front, place);
        expect(isOnStep(moved?.center.along) && isOnStep(moved?.center.depth)).toBe(true);
        // Half a step in each number.
        expect(away(moved?.at as Place, place)).toBeLessThanOrEqual(STEP * Math.SQRT1_2 + 1e-9);
      }),
      { numRuns: runs(60) },
    );
  });

  it('follows a slope, and is measured from the end that the job says', () => {
    const slope = { center: { on: 'outline:2', along: 9, from: 'end', depth: 4 } };
    const moved = drag(slope, [69, 39]);
    expect(away(moved?.at as Place, [69, 39])).toBeLessThanOrEqual(STEP);
    expect(moved?.center).toMatchObject({ on: 'outline:2', from: 'end' });
  });

  it('stays on its face, and bites no deeper than it is wide', () => {
    expect(drag(front, [-20, -30])?.center).toEqual({ on: 'outline:0', along: 0, depth: STEP });
    expect(drag(front, [200, 70])?.center).toEqual({ on: 'outline:0', along: 80, depth: 11.995 });
  });

  it('takes one step of one number for a key', () => {
    expect(press(front, [1, 0])?.center).toEqual({ on: 'outline:0', along: 30.005, depth: 4 });
    expect(press(front, [-1, 0], 10)?.center).toEqual({ on: 'outline:0', along: 29.95, depth: 4 });
    expect(press(front, [0, 1])?.center).toEqual({ on: 'outline:0', along: 30, depth: 4.005 });
    // The right end runs upwards, with the metal to the left.
    const right = { center: { on: 'outline:1', along: 10, depth: 4 } };
    expect(press(right, [0, 1])?.center).toMatchObject({ along: 10.005, depth: 4 });
    expect(press(right, [-1, 0])?.center).toMatchObject({ along: 10, depth: 4.005 });
  });

  it('given by its opening, goes over to the other side of the face', () => {
    const wide = { center: { on: 'outline:0', along: 30, opening: 8, pick: 'outside' } };
    fc.assert(
      fc.property(near([1, 79], [-5.5, 5.5]), (place) => {
        const moved = drag(wide, place);
        expect(isOnStep(moved?.center.opening)).toBe(true);
        const side = moved?.center.pick;
        if (side !== undefined) expect(side).toBe(place[1] > 0 ? 'inside' : 'outside');
        // Near the diameter the opening says little: off the face by sqrt(r² - w²/4), so half a step in the width is
        // up to sqrt(r step / 2) of the place.
        expect(away(moved?.at as Place, place)).toBeLessThan(Math.sqrt((6 * STEP) / 2) + STEP);
      }),
      { numRuns: runs(60) },
    );
    expect(press(wide, [0, 1])?.center).toEqual({
      on: 'outline:0',
      along: 30,
      opening: 8.005,
      pick: 'outside',
    });
  });
});

describe('a centre given by two distances', () => {
  it('from two faces goes where it is dragged, over to their other sides too', () => {
    const faces = {
      center: {
        distances: [
          { edge: 'outline:0', distance: 12 },
          { edge: 'outline:1', distance: 9 },
        ],
      },
    };
    fc.assert(
      fc.property(near([40, 95], [-10, 30]), (place) => {
        const moved = drag(faces, place);
        expect(away(moved?.at as Place, place)).toBeLessThanOrEqual(STEP * Math.SQRT1_2 + 1e-9);
        const dimensions = moved?.center.distances as readonly JsonObject[];
        for (const { distance } of dimensions) expect(isOnStep(distance) && Number(distance) >= 0).toBe(true);
      }),
      { numRuns: runs(60) },
    );
    expect(press(faces, [0, -1])?.center).toEqual({
      distances: [
        { edge: 'outline:0', distance: 11.995 },
        { edge: 'outline:1', distance: 9 },
      ],
    });
    // The metal lies to the left of the right end: a step to the left takes it farther away.
    expect(press(faces, [-1, 0])?.center).toEqual({
      distances: [
        { edge: 'outline:0', distance: 12 },
        { edge: 'outline:1', distance: 9.005 },
      ],
    });
  });

  it('from an end and a corner, or an arc, keeps to the answer near the hand', () => {
    const given = [
      [
        { along: 'outline:0', end: 'end', distance: 20 },
        { corner: 'outline:0', end: 'start', distance: 65 },
      ],
      [
        { edge: 'outline:0', distance: 12 },
        { edge: 'outline:6', distance: 9 },
      ],
      [
        { corner: 'outline:0', end: 'start', distance: 40 },
        { corner: 'outline:1', end: 'end', distance: 60 },
      ],
    ];
    // The ways in which the two numbers of each grow fastest, at a place.
    const from = (a: Place, b: Place): Place => [(b[0] - a[0]) / away(a, b), (b[1] - a[1]) / away(a, b)];
    const ways = [
      (place: Place) => [[1, 0], from([0, 0], place)] as const,
      (place: Place) => [[0, 1], from([0, 12], place)] as const,
      (place: Place) => [from([0, 0], place), from([80, 30], place)] as const,
    ];
    for (const [k, distances] of given.entries()) {
      fc.assert(
        fc.property(near([12, 60], [-20, 40]), (place) => {
          const [p, q] = (ways[k] as (typeof ways)[number])(place);
          const slant = Math.abs(p[0] * q[1] - p[1] * q[0]);
          // Where both measure nearly the same way, a step of one is many across them.
          if (slant < 0.2) return;
          const moved = drag({ center: { distances, pick: 'right' } as unknown as JsonObject }, place);
          expect(away(moved?.at as Place, place)).toBeLessThan(STEP / slant);
        }),
        { numRuns: runs(40) },
      );
    }
  });

  it('keeps the name of an answer as long as the hand stays on its side', () => {
    const distances = [
      { along: 'outline:0', end: 'start', distance: 30 },
      { corner: 'outline:0', end: 'start', distance: 36 },
    ];
    const cut = { center: { distances, pick: 'right' } } as unknown as JsonObject;
    const { at } = drag(cut, workedAs(cut).center as Place) as { at: Place };
    expect(drag(cut, [at[0] + 3, at[1] * 1.1])?.center.pick).toBe('right');
    const over = drag(cut, [at[0] + 3, -at[1]]);
    expect(over?.center.pick).toBeUndefined();
    expect(Math.sign(over?.at[1] as number)).toBe(-Math.sign(at[1]));
  });

  it('knows the hands of two corners by the line between them', () => {
    // 45 from (0, 0) and from (80, 30): beside the middle (40, 15) by sqrt(45² - 40² - 15²) = sqrt(200), square to the line.
    const distances = [
      { corner: 'outline:0', end: 'start', distance: 45 },
      { corner: 'outline:1', end: 'end', distance: 45 },
    ];
    const cut = { center: { distances, pick: 'right' } } as unknown as JsonObject;
    const by = Math.sqrt(200) / Math.hypot(80, 30);
    expect(away(workedAs(cut).center as Place, [40 + 30 * by, 15 - 80 * by])).toBeLessThan(1e-9);
    // At x = 47 the line is 17.6 up, at x = 36 it is 13.5 up.
    expect(drag(cut, [47, 14])?.center.pick).toBe('right');
    const over = drag(cut, [36, 27]);
    expect(over?.center).toMatchObject({ near: [36, 27] });
    expect(away(over?.at as Place, [36, 27])).toBeLessThan(2 * STEP);
  });
});

describe('what has no number of its own to move', () => {
  it('says why', () => {
    const touching = { center: { tangent: ['outline:0', 'outline:1'], pick: 'inside inside' } };
    const moves = movesOf(touching as unknown as JsonObject, workedAs(touching as unknown as JsonObject));
    expect(moves?.frees).toEqual([]);
    expect(moves?.at).toEqual([74, 6]);
    expect(moves?.why).toMatch(/touches the front and the right end/);
    expect(nudged({}, moves as Moves, [1, 0], 1, STEP)).toBeNull();
  });

  it('is not guessed where nothing is known of it', () => {
    expect(movesOf({ center: { on: 'outline:0', along: 3, depth: 2 } }, null)).toBeNull();
    expect(movesOf({ center: 'nowhere' }, null)).toBeNull();
    expect(movesOf({ center: [1, 'x'] }, null)).toBeNull();
  });
});

describe('what is given by several places', () => {
  it('goes as a whole: three places on a circle', () => {
    const cut = {
      diameter: undefined,
      center: {
        through: [
          [20, 10],
          [26, 16],
          [20, 22],
        ],
      },
    };
    const moved = drag(cut as unknown as JsonObject, [33.333, 9.999]);
    expect(moved?.center.through).toEqual([
      [33.335, 4],
      [39.335, 10],
      [33.335, 16],
    ]);
    expect(away(moved?.at as Place, [33.333, 9.999])).toBeLessThan(STEP);
  });

  it('goes as a whole: a path of edges', () => {
    const edges = [
      { kind: 'line', a: [10, 10], b: [20, 10] },
      { kind: 'arc', a: [20, 10], b: [25, 15], center: [20, 15], ccw: true },
    ];
    const cut = { kind: 'swept', diameter: 4, path: { edges } } as unknown as JsonObject;
    const whole = cutIn(job(cut));
    const next = movedTo(whole, movesOf(whole, null) as Moves, [13, 8.5], STEP);
    expect(next?.path).toEqual({
      edges: [
        { kind: 'line', a: [13, 8.5], b: [23, 8.5] },
        { kind: 'arc', a: [23, 8.5], b: [28, 13.5], center: [23, 13.5], ccw: true },
      ],
    });
  });
});

describe('path data', () => {
  it.each([
    ['M20 27 L52 27 A8 8 0 0 0 60 19 L60 7', 'M21 25 L53 25 A8 8 0 0 0 61 17 L61 5'],
    ['M 1,2 L 3,4 H 7 V -1', 'M 2,0 L 4,2 H 8 V -3'],
    ['m1 2 2 2 4 0 0-5', 'm2 0 2 2 4 0 0-5'],
    ['M.5.25.75.125', 'M1.5 -1.75 1.75 -1.875'],
    ['M0 0A5 5 0 015 5 5 5 0 1010 10', 'M1 -2A5 5 0 01 6 3 5 5 0 10 11 8'],
    ['M1 1h2v2z m1 1 h3 M4 4l1 1', 'M2 -1h2v2z m1 1 h3 M5 2l1 1'],
    ['M0 0A5 5 0 0 1 4.5.5.5.5 0 0 1 1 1', 'M1 -2A5 5 0 0 1 5.5 -1.5 .5.5 0 0 1 2 -1'],
  ])('%s is moved by its own numbers', (text, moved) => {
    expect(movedText(text, [1, -2], svgNumbers)).toBe(moved);
  });

  it('draws the same shape elsewhere, and comes back', () => {
    const number = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 200);
    const piece = fc.oneof(
      fc.tuple(fc.constantFrom('L', 'l', 'M', 'm'), number, number).map(([c, x, y]) => `${c}${x} ${y}`),
      fc.tuple(fc.constantFrom('H', 'h', 'V', 'v'), number).map(([c, x]) => `${c}${x}`),
      fc
        .tuple(fc.constantFrom('A', 'a'), fc.constantFrom('00', '01', '10', '11'), number, number)
        .map(([c, flags, x, y]) => `${c}90 90 0 ${flags}${x},${y}`),
      fc.constant('Z'),
    );
    fc.assert(
      fc.property(fc.tuple(number, number), fc.array(piece, { maxLength: 8 }), (by, pieces) => {
        const text = `M1 2${pieces.join('')}`;
        const moved = movedText(text, by, svgNumbers) as string;
        const ends = (path: string) =>
          parseSvgPath(path).flatMap(({ edges }) => edges.flatMap(({ a, b }) => [a.x, a.y, b.x, b.y]));
        const [before, after] = [ends(text), ends(moved)];
        expect(after.length).toBe(before.length);
        for (const [k, value] of before.entries()) {
          expect(Math.abs((after[k] ?? Number.NaN) - value - (by[k % 2] ?? 0))).toBeLessThan(1e-6);
        }
        expect(ends(movedText(moved, [-by[0], -by[1]], svgNumbers) as string).length).toBe(before.length);
      }),
      { numRuns: runs(200) },
    );
  });

  it('is left alone where it is none', () => {
    for (const text of ['M1 2 C 1 2 3 4 5 6', 'M1 2 L x', '12 3', 'M0 0A5 5 0 2 1 3 3']) {
      expect(movedText(text, [1, 1], svgNumbers), text).toBeNull();
    }
    expect(startOfText('', svgNumbers)).toBeNull();
  });
});

describe('a path in well-known text', () => {
  it.each([
    ['LINESTRING (1 2, 3 4)', 'LINESTRING (2 0, 4 2)'],
    [' linestring(1 2,3 4 )\n', ' linestring(2 0,4 2 )\n'],
    ['CIRCULARSTRING(1 -2, 2.5 1e1, .5 3)', 'CIRCULARSTRING(2 -4, 3.5 8, 1.5 1)'],
    ['LINESTRING(1-2,3-4)', 'LINESTRING(2-4,4-6)'],
    ['LINESTRING(1-1,-1+2)', 'LINESTRING(2-3,0 0)'],
    [
      'COMPOUNDCURVE((1 2, 3 4), CIRCULARSTRING(3 4, 4 5, 5 4))',
      'COMPOUNDCURVE((2 0, 4 2), CIRCULARSTRING(4 2, 5 3, 6 2))',
    ],
  ])('%j is moved by its own numbers', (text, moved) => {
    expect(movedText(text, [1, -2], wktNumbers)).toBe(moved);
  });

  it('draws the same shape elsewhere', () => {
    const number = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 200);
    const point = fc.tuple(number, number);
    const text = (points: readonly (readonly [number, number])[]) =>
      points.map(([x, y]) => `${x} ${y}`).join(', ');
    fc.assert(
      fc.property(
        point,
        fc.uniqueArray(point, { minLength: 2, maxLength: 8, selector: String }),
        (by, points) => {
          const ends = (wkt: string) => {
            const shape = parseWkt(wkt);
            return shape.kind === 'curve'
              ? shape.chain.edges.flatMap(({ a, b }) => [a.x, a.y, b.x, b.y])
              : [];
          };
          const drawn = `LINESTRING (${text(points)})`;
          const [before, after] = [ends(drawn), ends(movedText(drawn, by, wktNumbers) as string)];
          expect(before.length).toBe(4 * (points.length - 1));
          expect(after.length).toBe(before.length);
          for (const [k, value] of before.entries()) {
            expect(Math.abs((after[k] ?? Number.NaN) - value - (by[k % 2] ?? 0))).toBeLessThan(1e-6);
          }
        },
      ),
      { numRuns: runs(200) },
    );
  });

  it('goes as a whole when it is dragged or moved by keys, and stays well-known text', () => {
    const cut = {
      kind: 'swept',
      diameter: 5,
      depth: 3,
      path: { wkt: 'COMPOUNDCURVE((20 10, 40 10), CIRCULARSTRING(40 10, 45 15, 40 20))' },
    } as unknown as JsonObject;
    const start = (place: Place) => {
      const whole = cutIn(job(cut));
      const next = movedTo(whole, movesOf(whole, workedAs(cut)) as Moves, place, STEP) as JsonObject;
      return { path: next.path, start: workedAs(next).start };
    };
    expect(start([22.4999, 11.003])).toEqual({
      path: {
        wkt: 'COMPOUNDCURVE((22.5 11.005, 42.5 11.005), CIRCULARSTRING(42.5 11.005, 47.5 16.005, 42.5 21.005))',
      },
      start: [22.5, 11.005],
    });
    expect(press(cut, [0, -1], 2)?.path).toEqual({
      wkt: 'COMPOUNDCURVE((20 9.99, 40 9.99), CIRCULARSTRING(40 9.99, 45 14.99, 40 19.99))',
    });
  });

  it('is left alone where it is none', () => {
    for (const text of ['LINESTRING (1 2, 3)', 'LINESTRING (1 2 3, 4 5 6)', 'LINESTRING [1 2]', 'POINT (1']) {
      expect(movedText(text, [1, 1], wktNumbers), text).toBeNull();
    }
    expect(startOfText('LINESTRING EMPTY', wktNumbers)).toBeNull();
  });
});

describe('passes', () => {
  const stepping = (passes: object) =>
    ({
      center: [40, -1],
      diameter: 20,
      passes: { kind: 'step in', approach: 90, ...passes },
    }) as unknown as JsonObject;

  it('come from where the tool touches, towards the cut', () => {
    // A radius of 10 touches the face y = 0 from (40, -10), and goes 9 up.
    const { touch, approach, travel } = workedAs(stepping({ bite: 2 })).steps ?? {};
    expect([...(touch ?? []), ...(approach ?? []), travel].map((one) => Number(one?.toFixed(9)))).toEqual([
      ...[40, -10, 0, 1],
      9,
    ]);
    // Into the left end x = 0 along the x axis it touches at (-10, 28).
    const beside = workedAs({
      ...stepping({ bite: 2, approach: 0 }),
      center: [-1, 28],
    } as unknown as JsonObject).steps;
    expect(beside?.touch.map((one) => Number(one.toFixed(9)))).toEqual([-10, 28]);
  });

  it('stand where one of them is dragged, as near as they share the way evenly, with the smallest bite that does', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, 0.4, 1),
        fc.integer({ min: 1, max: 3 }),
        fc.double({ min: -9.5, max: -1.1, noNaN: true }),
        (finish, number, y) => {
          const cut = stepping({ bite: 2, finish });
          const known = workedAs(cut);
          const whole = cutIn(job(cut));
          const moves = passMoves(whole, known, number) as Moves;
          const next = movedTo(whole, moves, [40, y], STEP) as JsonObject;
          const bite = (next.passes as { bite: number }).bite;
          expect(isOnStep(bite)).toBe(true);
          const steps = workedAs(next).steps;
          const stops = [...(steps?.stops ?? []), [40, -1] as const];
          // Of all ways to share the way in, with a bite no less than what is left to finish, none has this pass
          // nearer to the hand, but for a step of the readout in the bite of each pass up to it.
          // It touches 10 under the face, and goes 9 from there.
          expect(steps?.travel).toBeCloseTo(9, 9);
          const way = 9 - finish;
          const bites = Array.from({ length: 1000 - number }, (_, k) => way / (number + k));
          const best = Math.min(
            ...bites.filter((one) => one >= finish - 1e-9).map((one) => Math.abs(number * one - (y + 10))),
          );
          const stands = Math.abs((stops[number - 1]?.[1] ?? Number.NaN) - y);
          expect(stands).toBeLessThanOrEqual(best + number * STEP + 1e-9);
        },
      ),
      { numRuns: runs(12) },
    );
  });

  it('keep within what a job may have', () => {
    const cut = stepping({ bite: 2, finish: 0.5 });
    const whole = cutIn(job(cut));
    const moves = passMoves(whole, workedAs(cut), 1) as Moves;
    for (const place of [
      [40, -300],
      [40, 300],
    ] as const) {
      const next = movedTo(whole, moves, place, STEP) as JsonObject;
      expect(() => parseJob(job(next))).not.toThrow(JobError);
    }
    expect((nudged(whole, moves, [0, 1], 1, STEP) as { passes?: { bite: number } }).passes?.bite).toBe(2.005);
    expect((nudged(whole, moves, [0, -1], 10, STEP) as { passes?: { bite: number } }).passes?.bite).toBe(
      1.95,
    );
    expect(nudged(whole, moves, [1, 0], 1, STEP)).toBeNull();
  });

  it('have grips of their own after all cuts, in turn right after their own', () => {
    const whole = job(stepping({ bite: 2 }));
    const more = {
      ...whole,
      cuts: [...(whole.cuts as Json[]), { id: 'b', kind: 'bore', center: [9, 9], diameter: 4 }],
    };
    const report = examine(parseJob(more));
    const known = new Map(report.cuts.map((cut) => [cut.id, workedOf(report, cut)]));
    const stops = known.get('hole')?.steps?.stops.length ?? 0;
    expect(stops).toBeGreaterThan(2);
    const grips = gripsOf(more, known, 'hole');
    expect(grips.map(({ key }) => key).slice(0, 3)).toEqual(['handle-0', 'handle-1', 'handle-0-pass-1']);
    expect(grips.length).toBe(2 + stops);
    expect(inTurn(grips).map(({ index }) => index)).toEqual([...Array(1 + stops).fill(0), 1]);
    expect(gripsOf(more, known, 'b').length).toBe(2);
    expect(movesAt(more.cuts[0] as JsonObject, null, 1)).toBeNull();
  });
});
