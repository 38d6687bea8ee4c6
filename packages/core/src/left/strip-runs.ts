import { distance } from '../geometry/point.js';
import type { Strip } from './strips.js';
import type { Wall, Walls } from './walls.js';

/** Strips that go on from one to the next, as one: metal of the same thickness along several edges. */
export interface StripRun {
  readonly strips: readonly Strip[];
  readonly thickness: number;
  readonly length: number;
  /** Whether it comes back to its start, as in a whole ring. */
  readonly closed: boolean;
}

/** Ends of strips within this many tolerances of each other are one place. */
const SAME_END = 10;

/** Joins strips where one ends and the next begins: where an edge that bounds them ends and goes on smoothly. */
export function stripRuns(walls: Walls, strips: readonly Strip[]): StripRun[] {
  const byWalls = new Map<string, { strip: Strip; k: number }[]>();
  strips.forEach((strip, k) => {
    for (const one of [strip, reversedStrip(strip)]) {
      const key = keyOf(one.one, one.other);
      byWalls.set(key, [...(byWalls.get(key) ?? []), { strip: one, k }]);
    }
  });
  const used = new Set<number>();
  const onward = (from: Strip): Strip[] => {
    const run: Strip[] = [];
    for (let last: Strip | null = from; last !== null; ) {
      const next: { strip: Strip; k: number } | undefined = successors(walls, byWalls, last).find(
        ({ k }) => !used.has(k),
      );
      if (next !== undefined) {
        used.add(next.k);
        run.push(next.strip);
      }
      last = next?.strip ?? null;
    }
    return run;
  };
  return strips.flatMap((strip, k) => {
    if (used.has(k)) return [];
    used.add(k);
    const ahead = onward(strip);
    const back = onward(reversedStrip(strip)).map(reversedStrip).reverse();
    return [runOf(walls, [...back, strip, ...ahead])];
  });
}

function keyOf(one: number, other: number): string {
  return `${one},${other}`;
}

/** The same strip walked the other way, along its other wall. */
export function reversedStrip(strip: Strip): Strip {
  const { one, other, length, at } = strip;
  return { ...strip, one: other, other: one, at: (s) => at(length - s) };
}

function successors(
  walls: Walls,
  byWalls: ReadonlyMap<string, readonly { strip: Strip; k: number }[]>,
  last: Strip,
): { strip: Strip; k: number }[] {
  const { after } = walls.list[last.one] as Wall;
  const { before } = walls.list[last.other] as Wall;
  return [keyOf(after, last.other), keyOf(last.one, before), keyOf(after, before)]
    .flatMap((key) => byWalls.get(key) ?? [])
    .filter(({ strip }) => follows(walls, last, strip));
}

function follows(walls: Walls, last: Strip, next: Strip): boolean {
  const near = SAME_END * walls.tolerance;
  return (
    Math.abs(last.thickness - next.thickness) <= near && distance(last.at(last.length), next.at(0)) <= near
  );
}

function runOf(walls: Walls, strips: readonly Strip[]): StripRun {
  const first = strips[0] as Strip;
  const last = strips[strips.length - 1] as Strip;
  return {
    strips,
    thickness: Math.min(...strips.map(({ thickness }) => thickness)),
    length: strips.reduce((sum, { length }) => sum + length, 0),
    closed:
      successors(walls, new Map([[keyOf(first.one, first.other), [{ strip: first, k: 0 }]]]), last).length >
      0,
  };
}
