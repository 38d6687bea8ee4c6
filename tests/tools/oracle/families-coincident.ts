import { disc, type Point, type Region, ring } from '@edgebite/core';
import type { OracleFamily } from './families.js';
import type { Draw } from './random.js';
import { box, polar, polygon, rounded, sector, slot } from './shapes.js';

const ORIGIN: Point = { x: 0, y: 0 };

/** A place near another: off by up to some gaps. */
function near(draw: Draw, p: Point, gap: number, times = 3): Point {
  return { x: p.x + draw.between(-times, times) * gap, y: p.y + draw.between(-times, times) * gap };
}

function several(draw: Draw, low: number, high: number, make: (k: number) => Region): Region[] {
  return Array.from({ length: draw.whole(low, high) }, (_, k) => make(k));
}

/** Rims, faces and arcs that run along each other but for a gap, and circles with nearly one centre. */
export const coincident: readonly OracleFamily[] = [
  {
    name: 'rims-jittered',
    operands: (draw, gap) => [
      ...several(draw, 2, 5, () => disc(near(draw, ORIGIN, gap), 0.4 + draw.between(-3, 3) * gap)),
      disc(polar(ORIGIN, draw.between(0, 7), 0.5), draw.between(0.1, 0.5)),
    ],
  },
  {
    name: 'rings-jittered',
    operands: (draw, gap) =>
      several(draw, 2, 4, () => {
        const outer = 0.45 + draw.between(-3, 3) * gap;
        return ring(near(draw, ORIGIN, gap), outer, draw.pick([0.3, 0.4, 0.2]) + draw.between(-3, 3) * gap);
      }),
  },
  {
    name: 'rims-and-strangers',
    operands: (draw, gap) => {
      const radius = draw.between(0.2, 0.3);
      const rims = several(draw, 2, 3, () =>
        disc(near(draw, ORIGIN, gap), radius + draw.between(-2, 2) * gap),
      );
      const others = several(draw, 1, 3, () =>
        disc(polar(ORIGIN, draw.between(0, 7), draw.between(0, 0.5)), draw.between(0.1, 0.5)),
      );
      return [...rims, ...others];
    },
  },
  {
    name: 'faces-flush',
    operands: (draw, gap) => [
      box(ORIGIN, 1, 0.6),
      ...several(draw, 1, 3, () => {
        const width = draw.between(0.1, 0.5);
        const side = draw.sign();
        return box(
          {
            x: (side * (1 - draw.sign() * width)) / 2 + draw.between(-2, 2) * gap,
            y: draw.between(-0.3, 0.3),
          },
          width,
          draw.between(0.1, 0.5),
        );
      }),
    ],
  },
  {
    name: 'faces-turned',
    operands: (draw, gap) => {
      const angle = draw.between(0, 3);
      return several(draw, 2, 4, () =>
        box(near(draw, ORIGIN, gap), 1, draw.pick([0.6, 0.4]), angle + draw.between(-4, 4) * gap),
      );
    },
  },
  {
    name: 'polygons-jittered',
    operands: (draw, gap) => {
      const sides = draw.whole(3, 12);
      const turn = draw.between(0, 7);
      return several(draw, 2, 4, () =>
        polygon(
          Array.from({ length: sides }, (_, k) =>
            near(draw, polar(ORIGIN, turn + (2 * Math.PI * k) / sides, 0.5), gap),
          ),
        ),
      );
    },
  },
  {
    name: 'rounded-jittered',
    operands: (draw, gap) => {
      const radius = draw.between(0.05, 0.25);
      return several(draw, 2, 4, () =>
        rounded(
          near(draw, ORIGIN, gap),
          1 + draw.between(-2, 2) * gap,
          0.6,
          radius + draw.between(-2, 2) * gap,
        ),
      );
    },
  },
  {
    name: 'slots-jittered',
    operands: (draw, gap) => {
      const end = polar(ORIGIN, draw.between(0, 7), 0.7);
      return several(draw, 2, 4, () =>
        slot(near(draw, ORIGIN, gap), near(draw, end, gap), 0.15 + draw.between(-2, 2) * gap),
      );
    },
  },
  {
    name: 'disc-on-fillet',
    operands: (draw, gap) => {
      const radius = draw.between(0.1, 0.28);
      const corner = { x: 0.5 - radius, y: 0.3 - radius };
      return [
        rounded(ORIGIN, 1, 0.6, radius),
        ...several(draw, 1, 3, () => disc(near(draw, corner, gap), radius + draw.between(-2, 2) * gap)),
      ];
    },
  },
  {
    name: 'sectors-on-rings',
    operands: (draw, gap) => {
      const [inner, outer] = [draw.between(0.1, 0.3), draw.between(0.35, 0.5)];
      return several(draw, 2, 4, () => {
        const from = draw.between(0, 6);
        const center = near(draw, ORIGIN, gap, 2);
        const turn = draw.pick([draw.between(0.1, 3), Math.PI / 2, Math.PI]);
        return sector(
          center,
          inner + draw.between(-2, 2) * gap,
          outer + draw.between(-2, 2) * gap,
          from,
          from + turn,
        );
      });
    },
  },
  {
    name: 'nearly-concentric',
    operands: (draw, gap) => {
      const base = draw.between(0.2, 0.4);
      return several(draw, 3, 6, (k) =>
        disc(near(draw, ORIGIN, gap), base + (k % 3) * gap * draw.between(0, 3)),
      );
    },
  },
  {
    name: 'concentric-rings',
    operands: (draw, gap) => {
      let inner = draw.between(0.05, 0.2);
      return several(draw, 2, 5, () => {
        const outer = inner + draw.pick([0.05, 0.1, gap * draw.between(0.5, 5)]);
        const made = ring(near(draw, ORIGIN, gap), outer, inner);
        inner = outer + draw.pick([0, gap, -gap, 0.02]);
        return made;
      });
    },
  },
  {
    name: 'concentric-inner-tangent',
    operands: (draw, gap) => {
      // The centres are as far apart as the radii differ, and both are small.
      const shift = gap * 10 ** draw.between(0, 4);
      const way = draw.between(0, 7);
      const [one, other] = [0.4, 0.4 - shift + draw.between(-2, 2) * gap];
      return [
        disc(ORIGIN, one),
        disc(polar(ORIGIN, way, shift), other),
        disc(polar(ORIGIN, draw.between(0, 7), 0.4), draw.between(0.05, 0.5)),
      ];
    },
  },
];
