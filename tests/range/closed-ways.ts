import type { Point } from '@edgebite/core';
import {
  along,
  type Circle,
  cross,
  far,
  foot,
  height,
  type Line,
  minus,
  type Place,
  plus,
  type Shape,
} from './closed-shapes.js';

/** Two places nearest to each other, one on each of two shapes. */
export type Feet = readonly [Point, Point];

/** A way in which two shapes can lie at a distance from each other. */
export interface Way {
  /** The distance, run on past the ends of both; 0 where they touch, and of the other sign past that. */
  readonly gap: (m: Shape, s: Shape) => number;
  /** Where they are as near as that: on the first, on the second. Several for lines side by side; none all round. */
  readonly feet: (m: Shape, s: Shape) => readonly Feet[];
}

/** Two lines whose directions differ by more are nearest to each other in their ends, which are places. */
const PARALLEL = 1e-9;

/** The ways in which two shapes can face each other, wherever one of them is moved. */
export function waysOf(m: Shape, s: Shape): readonly Way[] {
  if (m.kind === 'line' && s.kind === 'line' && Math.abs(cross(along(m), along(s))) > PARALLEL) return [];
  return WAYS[`${m.kind} ${s.kind}`] as readonly Way[];
}

function ways<M extends Shape, S extends Shape>(
  ...list: readonly {
    readonly gap: (m: M, s: S) => number;
    readonly feet: (m: M, s: S) => readonly Feet[];
  }[]
): readonly Way[] {
  return list as unknown as readonly Way[];
}

const swapped = (list: readonly Way[]): readonly Way[] =>
  list.map(({ gap, feet }) => ({
    gap: (m, s) => gap(s, m),
    feet: (m, s) => feet(s, m).map(([p, q]): Feet => [q, p]),
  }));

/** The place of a circle that is nearest to another place, or the one across from it. */
function towards({ center, radius }: Circle, p: Point, side: 1 | -1): Point {
  return plus(center, minus(p, center), (side * radius) / far(center, p));
}

const circlePlace = ways<Circle, Place>({
  gap: (m, s) => far(m.center, s.at) - m.radius,
  feet: (m, s) => (far(m.center, s.at) === 0 ? [] : [[towards(m, s.at, 1), s.at]]),
});

const linePlace = ways<Line, Place>({
  gap: (m, s) => height(m, s.at),
  feet: (m, s) => [[foot(m, s.at), s.at]],
});

const placePlace = ways<Place, Place>({ gap: (m, s) => far(m.at, s.at), feet: (m, s) => [[m.at, s.at]] });

const circleLine = ways<Circle, Line>(
  ...([1, -1] as const).map((side) => ({
    gap: (m: Circle, s: Line) => height(s, m.center) - side * m.radius,
    feet: (m: Circle, s: Line): Feet[] => {
      const u = along(s);
      const down = { x: side * u.y, y: -side * u.x };
      return [[plus(m.center, down, m.radius), foot(s, m.center)]];
    },
  })),
);

/** Apart; the first within the second; the first around the second. */
const circleCircle = ways<Circle, Circle>(
  ...(
    [
      [1, 1],
      [1, -1],
      [-1, 1],
    ] as const
  ).map(([ofS, ofM]) => ({
    gap: (m: Circle, s: Circle) => far(m.center, s.center) - (ofS * s.radius + ofM * m.radius),
    feet: (m: Circle, s: Circle): Feet[] =>
      far(m.center, s.center) === 0 ? [] : [[towards(m, s.center, ofM), towards(s, m.center, ofS)]],
  })),
);

const lineLine = ways<Line, Line>({
  gap: (m, s) => height(s, m.a),
  feet: (m, s) => [
    [m.a, foot(s, m.a)],
    [m.b, foot(s, m.b)],
    [foot(m, s.a), s.a],
    [foot(m, s.b), s.b],
  ],
});

const WAYS: Readonly<Record<string, readonly Way[]>> = {
  'place place': placePlace,
  'circle place': circlePlace,
  'place circle': swapped(circlePlace),
  'line place': linePlace,
  'place line': swapped(linePlace),
  'circle line': circleLine,
  'line circle': swapped(circleLine),
  'circle circle': circleCircle,
  'line line': lineLine,
};
