import { examine, type JobDocument, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { commands } from '../../fixtures/path-area.js';
import { drawZero } from '../index.js';

type Setup = NonNullable<JobDocument['setups']>[number];

/** An L-shaped part, so that no two sides are alike, 60 by 40. */
const EDGES = [
  [0, 0],
  [60, 0],
  [60, 18],
  [25, 18],
  [25, 40],
  [0, 40],
] as const;

function reportOf(setup: Omit<Setup, 'id' | 'cuts'>, keepOut?: JobDocument['keepOut']): Report {
  const edges = EDGES.map((a, k) => ({
    kind: 'line' as const,
    a: [...a] as [number, number],
    b: [...(EDGES[(k + 1) % EDGES.length] as (typeof EDGES)[number])] as [number, number],
  }));
  const from = setup.flip === undefined ? 'top' : 'bottom';
  const job = {
    edgebite: 1,
    units: 'mm',
    part: { outline: { edges, holes: [{ circle: 6, at: [12, 30], name: 'dowel' }] }, thickness: 10 },
    setups: [{ id: 's', ...setup, cuts: ['a'] }],
    ...(keepOut === undefined ? {} : { keepOut }),
    cuts: [{ id: 'a', kind: 'bore', center: [12, 10], diameter: 4, depth: 3, from }],
  };
  return examine(parseJob(job));
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a frame of the drawing holds: the tag of an element of a role, with its numbers. */
function frame(svg: string, id: string) {
  const [, own = ''] = svg.split(`id="edgebite-zero-${id}"`);
  const text = own.split('id="edgebite-zero-')[0] ?? '';
  const tags = [...text.matchAll(/<(rect|circle|path|line)([^>]*)>/g)].map(
    ([, , attributes = '']) => attributes,
  );
  const of = (role: string) => tags.filter((one) => one.includes(`data-role="${role}"`));
  const number = (tag: string, name: string) => Number(new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1]);
  return {
    text,
    circle: (role: string) => {
      const [tag] = of(role);
      if (tag === undefined) return null;
      return { x: number(tag, 'cx'), y: number(tag, 'cy'), r: number(tag, 'r') };
    },
    rect: (role: string): Box | null => {
      const [tag] = of(role);
      if (tag === undefined) return null;
      const [left, top] = [number(tag, 'x'), number(tag, 'y')];
      return { left, top, right: left + number(tag, 'width'), bottom: top + number(tag, 'height') };
    },
    /** Corners of the part's outline on the sheet. */
    part: (role = 'part'): [number, number][] =>
      of(role)
        .slice(0, 1)
        .flatMap((tag) => commands(/ d="([^"]*)"/.exec(tag)?.[1] ?? ''))
        .flatMap(({ numbers }) =>
          numbers.length < 2 ? [] : [[numbers.at(-2), numbers.at(-1)] as [number, number]],
        )
        .slice(0, EDGES.length),
  };
}

/** Half a step of a thousandth at either end. */
const NEAR = 0.002;

/** Where a point is against a polygon: whether in it, and how far from its rim. */
function against(corners: readonly (readonly [number, number])[], [x, y]: readonly [number, number]) {
  let inside = false;
  let far = Number.POSITIVE_INFINITY;
  corners.forEach(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % corners.length] as readonly [number, number];
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
    const [ux, uy] = [bx - ax, by - ay];
    const t = Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy)));
    far = Math.min(far, Math.hypot(ax + t * ux - x, ay + t * uy - y));
  });
  return { inside, far };
}

const LIES = [
  {},
  { turn: 90 },
  { turn: 180 },
  { turn: 270 },
  { flip: 'x' },
  { flip: 'y' },
  { flip: 'x', turn: 90 },
] as const;

const FACES = [
  ['x', 'left'],
  ['x', 'right'],
  ['y', 'front'],
  ['y', 'back'],
] as const;

const other = (axis: 'x' | 'y') =>
  axis === 'x' ? [{ touch: 'front', tip: 4 }] : [{ touch: 'left', tip: 4 }];

/** What each face is on the sheet, where y runs down. */
const at = (corners: readonly (readonly [number, number])[], face: string) => {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const all = {
    left: Math.min(...xs),
    right: Math.max(...xs),
    back: Math.min(...ys),
    front: Math.max(...ys),
  };
  return all[face as keyof typeof all];
};

describe.each(LIES.flatMap((lie) => FACES.map((face) => [lie, ...face] as const)))(
  'the picture of a part that lies %j, in %s on its %s',
  (lie, axis, face) => {
    const [key, low, high] =
      axis === 'x' ? (['x', 'left', 'right'] as const) : (['y', 'top', 'bottom'] as const);
    const zero = (own: unknown) => ({ [axis]: own, [axis === 'x' ? 'y' : 'x']: other(axis) }) as never;

    it('has the tip outside of the metal, touching that face', () => {
      const report = reportOf({
        ...lie,
        zero: zero([{ touch: face, tip: 8, then: 'move half the tip and set 0' }]),
      });
      const own = frame(drawZero(report), `${axis}-1`);
      const [tip, gone] = [own.circle('touch'), own.circle('gone')];
      const corners = own.part();
      expect(tip).not.toBeNull();
      if (tip === null || gone === null) return;
      const { inside, far } = against(corners, [tip.x, tip.y]);
      expect(inside).toBe(false);
      expect(Math.abs(far - tip.r)).toBeLessThan(NEAR);
      // It touches the outermost face of that name, and ends with its middle over it.
      expect(Math.abs(Math.abs(tip[key] - at(corners, face)) - tip.r)).toBeLessThan(NEAR);
      expect(Math.abs(gone[key] - at(corners, face))).toBeLessThan(NEAR);
    });

    it('has a stop beyond that face with the blocks between, and the tip on the side of the part', () => {
      const stops = [{ id: 'A', face: face as 'left' }];
      const actions = [
        { touch: 'A', tip: 6 },
        { bears: face, on: 'A', block: [7, 5] },
      ];
      const svg = drawZero(reportOf({ ...lie, stops, zero: zero(actions) }));
      const [first, second] = [frame(svg, `${axis}-1`), frame(svg, `${axis}-2`)];
      const [alone, stop, tip] = [
        first.rect('stop') as Box,
        second.rect('stop') as Box,
        first.circle('touch'),
      ];
      const corners = second.part();
      const edge = at(corners, face);
      const scale =
        (at(corners, 'right') - at(corners, 'left')) /
        (lie && 'turn' in lie && lie.turn % 180 === 90 ? 40 : 60);
      const isLow = face === 'left' || face === 'back';
      const looks = isLow ? stop[high] : stop[low];
      const before = isLow ? alone[high] : alone[low];
      // 12 of blocks between the two, and nothing of the part in the stop.
      expect(Math.abs(Math.abs(looks - edge) - 12 * scale)).toBeLessThan(2 * NEAR);
      expect(isLow ? looks < edge : looks > edge).toBe(true);
      // The tip stands against the stop, on the side from which the part comes.
      expect(Math.abs(((tip?.[key] ?? 0) - before) * (isLow ? 1 : -1) - (tip?.r ?? 0))).toBeLessThan(NEAR);
      expect(first.part()).toEqual([]);
      expect(first.text).toContain('data-role="part to come"');
      expect(second.circle('touch')).toBeNull();
      const block = second.rect('block') as Box;
      expect(Math.min(Math.abs(block[low] - looks), Math.abs(block[high] - looks))).toBeLessThan(NEAR);
    });
  },
);

describe('the drawing of a zero', () => {
  it('has the spindle over a hole that is dialled in', () => {
    const dial = [{ 'dial in': 'dowel' }] as never;
    const svg = drawZero(reportOf({ turn: 90, zero: { x: dial, y: dial } }));
    for (const id of ['x-1', 'y-1']) {
      const own = frame(svg, id);
      const [, level = ''] = /data-role="spindle"[^>]*>(.*?)<\/g>/s.exec(own.text) ?? [];
      const [x1, y1, x2] = ['x1', 'y1', 'x2'].map((name) =>
        Number(new RegExp(` ${name}="([^"]*)"`).exec(level)?.[1]),
      );
      const corners = own.part();
      const scale = (at(corners, 'right') - at(corners, 'left')) / 40;
      // Turned by a quarter, (12, 30) lies 10 from the left side and 12 from the front.
      expect((((x1 ?? 0) + (x2 ?? 0)) / 2 - at(corners, 'left')) / scale).toBeCloseTo(10, 1);
      expect((at(corners, 'front') - (y1 ?? 0)) / scale).toBeCloseTo(12, 1);
    }
  });

  it('has the tool on the top over its feeler, or beside the part on a parallel', () => {
    const sides = { x: other('y'), y: other('x') } as never as Setup['zero'];
    const top = frame(drawZero(reportOf({ zero: { ...sides, z: [{ touch: 'top', feeler: 1 }] } })), 'z-1');
    const [part, tool] = [top.rect('part') as Box, top.rect('spindle') as Box];
    const scale = (part.bottom - part.top) / 10;
    expect(Math.abs(part.top - tool.bottom - scale)).toBeLessThan(2 * NEAR);
    expect(tool.left).toBeGreaterThan(part.left);
    // On a quill, whose numbers grow downwards, the tool stands no deeper.
    const quill = reportOf({
      quill: { units: 'mm', graduation: 0.05 },
      zero: { ...sides, z: [{ touch: 'top', feeler: 1 }] },
    } as never);
    expect(frame(drawZero(quill), 'z-1').rect('spindle')).toEqual(tool);
    const shape = { rectangle: [60, 5] as [number, number] };
    const keepOut = [{ id: 'P', kind: 'parallel' as const, shape, from: -8, to: 0 }];
    const svg = drawZero(reportOf({ zero: { ...sides, z: [{ touch: 'P', feeler: 1 }] } }, keepOut));
    const beside = frame(svg, 'z-1');
    const [one, level, end] = [beside.rect('part'), beside.rect('level'), beside.rect('spindle')] as Box[];
    expect(end?.right).toBeLessThan(one?.left ?? 0);
    expect(
      Math.abs((level?.top ?? 0) - (end?.bottom ?? 0) - ((one?.bottom ?? 0) - (one?.top ?? 0)) / 10),
    ).toBeLessThan(2 * NEAR);
    expect(Math.abs((level?.top ?? 0) - (one?.bottom ?? 0))).toBeLessThan(NEAR);
  });

  it('says what is done and what the readout shows, and shows what is measured', () => {
    const zero = {
      x: [
        { touch: 'left', tip: 10 },
        { measured: 60.02, from: 'left', to: 'right' },
      ],
      y: other('x'),
    };
    const svg = drawZero(reportOf({ zero: zero as never }));
    const second = frame(svg, 'x-2');
    expect(second.text.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ')).toContain(
      'Measured 60.02 mm, on to the right end.',
    );
    expect(svg).toContain('The right end stands at X\u00a065.020.');
    expect(second.text).toContain('>60.02<');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('refuses what it cannot draw, with what there is', () => {
    const report = reportOf({ zero: { x: other('y'), y: other('x') } as never });
    expect(() => drawZero(report, { setup: 't' })).toThrow('drawZero: setup is "t"; the report has s');
    expect(() => drawZero({ ...report, setups: [] })).toThrow('drawZero: the report has no setups');
    expect(() => drawZero(report, { width: 20 })).toThrow(
      'drawZero: options.width is 20; it must be from 100 to 1000 mm',
    );
    expect(() => drawZero(report, { idPrefix: '9' })).toThrow('drawZero: options.idPrefix is "9"');
    expect(() => drawZero(report, { theme: 'pink' as never })).toThrow('theme is "pink"');
  });
});
