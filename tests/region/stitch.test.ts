import {
  type ArcEdge,
  arcEdge,
  area,
  circleLoop,
  disc,
  type Edge,
  type Loop,
  lineEdge,
  type Point,
  type Region,
  union,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { arrange } from '../../packages/core/src/overlay/arrange.js';
import type { Subdivision } from '../../packages/core/src/overlay/label.js';
import { collect } from '../../packages/core/src/overlay/stitch.js';
import { windings } from '../../packages/core/src/overlay/windings.js';
import { p } from './shapes.js';

/*
 * How faces become loops again: whose names edges bear, which joints go, what is too thin to be anything. Elementary, no
 * source.
 */

const closed = (points: readonly Point[], name: (k: number) => string | undefined = () => undefined): Loop =>
  points.map((a, k) => lineEdge(a, points[(k + 1) % points.length] as Point, name(k)));
const box = (x: number, y: number, width: number, height: number, name?: string) =>
  closed(
    [p(x, y), p(x + width, y), p(x + width, y + height), p(x, y + height)],
    (k) => name && `${name}:${k}`,
  );
const region = (outer: Loop, ...holes: Loop[]): Region => [{ outer, holes }];

/** The faces that so many of the operands go round. */
function faces(
  subdivision: Subdivision,
  isKept: (counts: readonly number[]) => boolean,
  operands: number,
): Uint8Array {
  const counts = Array.from({ length: operands }, (_, k) =>
    windings(subdivision, (operand) => operand === k),
  );
  return Uint8Array.from({ length: subdivision.faceCount }, (_, f) =>
    isKept(counts.map((list) => list[f] as number)) ? 1 : 0,
  );
}

const names = (loop: Loop) => loop.map(({ source }) => source).sort();

describe('an edge along which several operands run', () => {
  // Three squares on top of each other, and one beside them that runs down along their right side.
  const loops = [
    box(0, 0, 10, 10, 'a'),
    box(0, 0, 10, 10, 'b'),
    box(0, 0, 10, 10, 'c'),
    box(10, 0, 10, 10, 'd'),
  ];
  const subdivision = arrange(loops.map((loop) => [loop]));
  const kept = faces(subdivision, ([a]) => a === 1, 4);
  const named = (mayName?: (operand: number) => boolean) => {
    const [part, ...others] = collect(subdivision, kept, mayName);
    expect(others).toHaveLength(0);
    return names((part as Region[number]).outer);
  };

  it('bears the name of the first of those that may lend it', () => {
    expect(named()).toEqual(['a:0', 'a:1', 'a:2', 'a:3']);
    expect(named((operand) => operand > 0)).toEqual(['b:0', 'b:1', 'b:2', 'b:3']);
    expect(named((operand) => operand === 2)).toEqual(['c:0', 'c:1', 'c:2', 'c:3']);
    expect(named((operand) => operand !== 0 && operand !== 2)).toEqual(['b:0', 'b:1', 'b:2', 'b:3']);
  });

  it('bears that of the first of all where none may', () => {
    expect(named(() => false)).toEqual(['a:0', 'a:1', 'a:2', 'a:3']);
    // Only the right side has the fourth operand along it.
    expect(named((operand) => operand === 3)).toEqual(['a:0', 'a:2', 'a:3', 'd:3']);
  });

  it('runs the way of the border, whichever way the one runs that names it', () => {
    const round = circleLoop(p(3, 4), 5, true, 'disc');
    const hole = circleLoop(p(3, 4), 5, false, 'hole');
    const both = arrange([[round], [box(-10, -10, 30, 30, 'plate'), hole]]);
    const inside = faces(both, ([inDisc]) => inDisc === 1, 2);
    for (const [mayName, name] of [
      [() => true, 'disc'],
      [(operand: number) => operand === 1, 'hole'],
    ] as const) {
      const [part] = collect(both, inside, mayName);
      const { outer } = part as Region[number];
      expect(outer.map((edge) => [edge.kind, edge.source, (edge as ArcEdge).ccw])).toEqual([
        ['arc', name, true],
        ['arc', name, true],
      ]);
      expect(area([part as Region[number]])).toBeCloseTo(25 * Math.PI, 10);
    }
  });
});

describe('an edge that nothing has changed', () => {
  it('is the very edge that was given', () => {
    const outer = [
      lineEdge(p(0, 0), p(10, 0)),
      arcEdge(p(10, 0), p(10, 10), p(10, 5), true),
      lineEdge(p(10, 10), p(0, 10)),
      lineEdge(p(0, 10), p(0, 0)),
    ];
    const [part] = union([region(outer), disc(p(0, 5), 2)]);
    const back = (part as Region[number]).outer;
    for (const edge of outer.slice(0, 3)) expect(back).toContain(edge);
    expect(back).not.toContain(outer[3]);
  });
});
describe('two lines that go on from each other', () => {
  /** A part with a side from (0, 0) along a direction, its joint at `at` and off that side by `off`; with what is far away. */
  function joints(direction: number, at: number, off: number, length = 20): number {
    const [c, s] = [Math.cos(direction), Math.sin(direction)];
    const turned = (x: number, y: number) => p(x * c - y * s + 7, x * s + y * c - 3);
    const outer = closed(
      [turned(0, 0), turned(at, off), turned(length, 0), turned(length, 10), turned(0, 10)],
      (k) => (k < 2 ? 'side' : `other ${k}`),
    );
    const frame = box(-50, -50, 100, 100);
    // A plate of 100 with the part beside its middle as a hole of it, so that a tolerance is 1e-7.
    const both = union([
      region(frame, [...outer].map(({ a, b, source }) => lineEdge(b, a, source)).reverse()),
    ]);
    return (both[0] as Region[number]).holes[0]?.filter(({ source }) => source === 'side').length ?? 0;
  }
  const directions = [0, 0.4, 1, Math.PI / 2, 2, 2.9, Math.PI, -0.3, -1.2, -Math.PI / 2, -2];

  it('are one in any direction', () => {
    for (const direction of directions)
      for (const at of [1e-3, 3, 10, 19]) expect(joints(direction, at, 0)).toBe(1);
  });

  it('are one as long as the bend is within a tolerance, by where the shorter leads to when it is as long again', () => {
    // Of two halves the joint lies off the line between their ends by up to half a tolerance.
    expect(joints(0.4, 10, 0.45e-7)).toBe(1);
    expect(joints(0.4, 10, 0.55e-7)).toBe(2);
    // Of 8 and 12 the bend is off / 8 + off / 12, and 8 of it may come to a tolerance.
    expect(joints(0.4, 8, 0.55e-7)).toBe(1);
    expect(joints(0.4, 12, 0.55e-7)).toBe(1);
    expect(joints(0.4, 8, 0.65e-7)).toBe(2);
  });

  it('are two where a short one leads aside, however little it reaches there', () => {
    for (const direction of directions) expect(joints(direction, 1e-3, 0.5e-7)).toBe(2);
  });
});

describe('what is thinner than four tolerances', () => {
  // 200 across, so that a tolerance is 2e-7.
  const frame = region(box(-100, -100, 200, 10));
  const parts = (outer: Loop) => union([frame, region(outer)]).length;
  const at = (angle: number, r: number) => p(r * Math.cos(angle), r * Math.sin(angle));

  it('is nothing as a bar, in any direction and on any side of the origin', () => {
    for (const [x, y] of [
      [0, 0],
      [-5, 0],
      [20, 30],
      [-40, 50],
    ] as const) {
      const bar = (width: number, height: number) => parts(box(x, y, width, height));
      expect(bar(10, 6e-7)).toBe(1);
      expect(bar(6e-7, 10)).toBe(1);
      expect(bar(10, 1e-6)).toBe(2);
      expect(bar(1e-6, 10)).toBe(2);
    }
  });

  it('is nothing as an arched one', () => {
    for (const radius of [0.5, 3, 40]) {
      const arch = (thickness: number): Loop => {
        const outer = radius + thickness;
        const end = 0.9 * Math.PI;
        return [
          arcEdge(at(0, outer), at(end, outer), p(0, 0), true),
          lineEdge(at(end, outer), at(end, radius)),
          arcEdge(at(end, radius), at(0, radius), p(0, 0), false),
          lineEdge(at(0, radius), at(0, outer)),
        ];
      };
      expect(parts(arch(6e-7))).toBe(1);
      expect(parts(arch(1e-6))).toBe(2);
    }
  });
});

describe('loops that touch themselves', () => {
  it('are parted there, and those that do not are left whole', () => {
    // Two squares corner to corner, drawn as one loop, and one by itself.
    const eight: Loop = closed([p(0, 0), p(5, 0), p(5, 5), p(10, 5), p(10, 10), p(5, 10), p(5, 5), p(0, 5)]);
    const subdivision = arrange([[eight, box(20, 0, 5, 5)]]);
    const kept = faces(subdivision, ([count]) => count === 1, 1);
    const parts = collect(subdivision, kept);
    expect(parts.map(({ outer }) => outer.length)).toEqual([4, 4, 4]);
    expect(parts.map((part) => area([part]))).toEqual([25, 25, 25]);
  });

  it('have a hole where they close round one', () => {
    // A square with a notch whose corner comes back to the outline: three of its four corners are in the square.
    const frame = box(0, 0, 20, 20);
    const hole: Edge[] = closed([p(10, 0), p(5, 5), p(10, 10), p(15, 5)]) as Edge[];
    const subdivision = arrange([[frame], [hole.map(({ a, b }) => lineEdge(b, a)).reverse()]]);
    const kept = faces(subdivision, ([inFrame, inHole]) => inFrame === 1 && inHole === 0, 2);
    const [part, ...others] = collect(subdivision, kept);
    expect(others).toHaveLength(0);
    expect(part?.holes).toHaveLength(1);
    expect(part?.holes[0]).toHaveLength(4);
    expect(area([part as Region[number]])).toBe(400 - 50);
  });
});
