import { type AimDocument, JobError, parseAim } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* What an aim is refused for, and where in it: no other place than the faulty one is named. */

const AIM = {
  edgebite: 1,
  units: 'mm',
  thickness: 10,
  blank: { rectangle: [60, 40] },
  finished: { rectangle: [50, 30], at: [5, 5] },
  drawer: [{ id: 'mill', kind: 'end mill', diameter: 6, reach: 20, toolMaterial: 'HSS', teeth: 4 }],
} as const;

type Given = Partial<Record<keyof AimDocument, unknown>>;

function issuesOf(over: Given): readonly (readonly [string, string])[] {
  try {
    parseAim({ ...AIM, ...over });
  } catch (error) {
    if (error instanceof JobError) return error.issues.map(({ path, message }) => [path, message]);
    throw error;
  }
  return [];
}

describe('an aim', () => {
  it('names one stop of an axis where a tip finds the part, whichever ends those are', () => {
    const twice = [['/stops', 'names two stops of one axis; with "tip" name one of them']];
    expect(issuesOf({ tip: 10, stops: ['left', 'right'] })).toEqual(twice);
    expect(issuesOf({ tip: 10, stops: ['front', 'back'] })).toEqual(twice);
    expect(issuesOf({ tip: 10, stops: ['right', 'front', 'back'] })).toEqual(twice);
    for (const x of ['left', 'right'])
      for (const y of ['front', 'back']) expect(issuesOf({ tip: 10, stops: [x, y] })).toEqual([]);
    expect(issuesOf({ stops: ['left', 'right'] })).toEqual([]);
  });

  it('keeps its part within its blank, by area and place, however thick a layer that is over', () => {
    // 50 by 30 from (15, 5) goes 5 past a right edge at 60: 5 * 30.
    const [issue, ...others] = issuesOf({ finished: { rectangle: [50, 30], at: [15, 5] } });
    expect(others).toEqual([]);
    expect(issue?.[0]).toBe('/finished');
    expect(issue?.[1]).toMatch(/^goes beyond the blank by an area of 150(\.0*)?, by \(6[05][^)]*\)/);
    expect(issuesOf({ finished: { rectangle: [60, 40] } })).toEqual([]);
  });

  it('has pockets that do not go through, each told by its number', () => {
    const pocket = (depth: number) => ({ rectangle: [10, 10], at: [20, 15], depth });
    expect(issuesOf({ pockets: [pocket(3), pocket(9.99)] })).toEqual([]);
    expect(issuesOf({ pockets: [pocket(3), pocket(10)] })).toEqual([
      [
        '/pockets/1/depth',
        'is 10; it must be less than the thickness, 10: what goes through belongs to "finished"',
      ],
    ]);
    expect(
      issuesOf({ pockets: [{ ...pocket(3), rectangle: [10, -1] }, pocket(3)] }).map(([path]) => path),
    ).toEqual(['/pockets/0/rectangle/1']);
  });

  it('has pockets with islands, told by their own name', () => {
    const pocket = { rectangle: [20, 20], at: [20, 10], depth: 4 };
    const withIslands = (...islands: unknown[]) => ({ pockets: [{ ...pocket, islands }] });
    expect(issuesOf(withIslands({ circle: 6, at: [30, 20] }))).toEqual([]);
    expect(issuesOf(withIslands()).length).toBe(0);
    expect(issuesOf(withIslands({ circle: -6, at: [30, 20] })).map(([path]) => path)).toEqual([
      '/pockets/0/islands/0/circle',
    ]);
    // One that goes over the wall of its pocket crosses it twice.
    expect(new Set(issuesOf(withIslands({ circle: 6, at: [40, 20] })).map(([path]) => path))).toEqual(
      new Set(['/pockets/0/islands/0']),
    );
  });

  it('tells faults of its two outlines where they stand, and others once', () => {
    expect(issuesOf({ blank: { rectangle: [0, 40] } }).map(([path]) => path)).toEqual(['/blank/rectangle/0']);
    expect(issuesOf({ finished: { circle: -4 } }).map(([path]) => path)).toEqual(['/finished/circle']);
    expect(issuesOf({ thickness: 0 }).map(([path]) => path)).toEqual(['/thickness']);
  });

  it('is held where its part stands and no pocket is, as deep within it as there is room', () => {
    // Beside a pocket over the left 35 of 50 there are 15 by 30 left: its middle is 7.5 from all walls, and is told in
    // whole units.
    const {
      keep: [x, y],
    } = parseAim({
      ...AIM,
      pockets: [{ rectangle: [35, 30], at: [5, 5], depth: 4 }],
    });
    expect(Math.min(x - 40, 55 - x, y - 5, 35 - y)).toBeGreaterThanOrEqual(7);
  });
});
