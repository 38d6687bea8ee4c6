import { disc, type Point } from '@edgebite/core';
import type { OracleFamily } from './families.js';
import { bowed, box, lens, polar, slot } from './shapes.js';

const ORIGIN: Point = { x: 0, y: 0 };

/** Of a flatter arc the centre is so far away that the rounding of it moves the arc by a weld tolerance. */
const LEAST_BOW = 4e-8;

/** Large things and very small ones in one place. */
export const scales: readonly OracleFamily[] = [
  {
    name: 'radii-over-decades',
    operands: (draw, gap) => {
      const rim = polar(ORIGIN, draw.between(0, 7), 0.5);
      const small = Array.from({ length: draw.whole(2, 5) }, () => {
        const r = 10 ** draw.between(Math.log10(gap), -1);
        return disc(polar(rim, draw.between(0, 7), draw.pick([0, r, draw.between(0, 3) * r])), r);
      });
      return [disc(ORIGIN, 0.5), ...small];
    },
  },
  {
    name: 'speck-at-crossing',
    operands: (draw, gap) => {
      const d = draw.between(0.2, 0.7);
      const x = d / 2;
      const crossing = { x, y: Math.sqrt(0.16 - x * x) };
      const specks = Array.from({ length: draw.whole(1, 3) }, () => {
        const r = gap * draw.between(0.5, 20);
        return disc(polar(crossing, draw.between(0, 7), draw.between(0, 2) * r), r);
      });
      return [disc(ORIGIN, 0.4), disc({ x: d, y: 0 }, 0.4), ...specks];
    },
  },
  {
    name: 'specks-on-face',
    operands: (draw, gap) => [
      box(ORIGIN, 1, 0.6, draw.pick([0, draw.between(0, 3)])),
      ...Array.from({ length: draw.whole(1, 4) }, () => {
        const r = gap * draw.between(0.5, 50);
        return disc({ x: draw.between(-0.5, 0.5), y: 0.3 + draw.between(-2, 2) * r }, r);
      }),
    ],
  },
  {
    name: 'almost-straight',
    operands: (draw, gap) => {
      const bow = Math.max(LEAST_BOW, gap * draw.between(0.2, 20));
      return [
        bowed(1, 0.5, bow, draw.whole(1, 3)),
        lens(
          { x: 0, y: 0.5 },
          { x: 1, y: 0.5 + draw.pick([0, draw.between(-2, 2) * gap]) },
          bow * draw.between(0.5, 2),
        ),
        disc({ x: draw.between(0, 1), y: 0.5 + draw.between(-0.2, 0.2) }, 0.2),
      ];
    },
  },
  {
    name: 'thin-slivers',
    operands: (draw, gap) => {
      const angle = draw.between(0, 3);
      const sliver = () =>
        box(
          polar(ORIGIN, angle, draw.between(-0.2, 0.2)),
          1,
          gap * draw.between(0.5, 20),
          angle + draw.between(-2, 2) * gap,
        );
      return [disc(ORIGIN, 0.3), sliver(), sliver()];
    },
  },
  {
    name: 'thin-slots',
    operands: (draw, gap) => {
      const r = gap * draw.between(0.5, 20);
      const a = { x: -0.4, y: draw.between(-2, 2) * gap };
      return [
        slot(a, { x: 0.4, y: draw.between(-2, 2) * gap }, r),
        slot(
          { x: draw.between(-0.4, 0.4), y: -0.3 },
          { x: draw.between(-0.4, 0.4), y: 0.3 },
          r * draw.between(0.5, 2),
        ),
        disc({ x: 0.1, y: 0 }, draw.between(0.05, 0.2)),
      ];
    },
  },
];
