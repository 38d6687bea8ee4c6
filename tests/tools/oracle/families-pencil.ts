import { disc, type Point, type Region } from '@edgebite/core';
import type { OracleFamily } from './families.js';
import type { Draw } from './random.js';
import { box, polar, polygon } from './shapes.js';

const ORIGIN: Point = { x: 0, y: 0 };

function near(draw: Draw, gap: number): Point {
  return { x: draw.between(-2, 2) * gap, y: draw.between(-2, 2) * gap };
}

function many(draw: Draw, make: (k: number) => Region): Region[] {
  return Array.from({ length: draw.whole(3, 8) }, (_, k) => make(k));
}

/** Many curves through a point, or past it by next to nothing. */
export const pencils: readonly OracleFamily[] = [
  {
    name: 'circles-through-a-point',
    operands: (draw, gap) =>
      many(draw, () => {
        const r = draw.between(0.1, 0.4);
        return disc(polar(near(draw, gap), draw.between(0, 7), r), r);
      }),
  },
  {
    name: 'circles-through-two-points',
    operands: (draw, gap) =>
      many(draw, () => {
        const x = draw.between(-0.3, 0.3);
        return disc({ x: x + draw.between(-1, 1) * gap, y: draw.between(-1, 1) * gap }, Math.hypot(x, 0.3));
      }),
  },
  {
    name: 'circles-tangent-at-a-point',
    operands: (draw, gap) => {
      const way = draw.pick([0, Math.PI / 2, draw.between(0, 7)]);
      return many(draw, () => {
        const r = draw.sign() * draw.between(0.05, 0.4);
        return disc(polar(near(draw, gap), way, r), Math.abs(r));
      });
    },
  },
  {
    name: 'faces-through-a-point',
    operands: (draw, gap) =>
      many(draw, () => {
        const way = draw.pick([draw.between(0, 7), (draw.whole(0, 7) * Math.PI) / 4]);
        const [a, b] = [polar(near(draw, gap), way, -0.4), polar(near(draw, gap), way, 0.4)];
        return polygon([a, b, polar(ORIGIN, way + Math.PI / 2, draw.between(0.1, 0.4))]);
      }),
  },
  {
    name: 'corners-at-a-point',
    operands: (draw, gap) =>
      many(draw, () => {
        const [from, turn] = [draw.between(0, 7), draw.between(0.05, 2.5)];
        return polygon([near(draw, gap), polar(ORIGIN, from, 0.4), polar(ORIGIN, from + turn, 0.4)]);
      }),
  },
  {
    name: 'all-kinds-at-a-point',
    operands: (draw, gap) =>
      many(draw, (k) => {
        const way = draw.between(0, 7);
        const r = draw.between(0.1, 0.4);
        if (k % 3 === 0) return disc(polar(near(draw, gap), way, r), r);
        if (k % 3 === 1) return box(polar(near(draw, gap), way, r / 2), r, draw.between(0.1, 0.4), way);
        return polygon([near(draw, gap), polar(ORIGIN, way, r), polar(ORIGIN, way + 1, r)]);
      }),
  },
];
