import { disc, type Point, type Region, ring } from '@edgebite/core';
import type { OracleFamily } from './families.js';
import type { Draw } from './random.js';
import { box, polar, polygon, rounded, slot } from './shapes.js';

const ORIGIN: Point = { x: 0, y: 0 };

/** Directions in which rounding shows: along the axes but for little, and any. */
function direction(draw: Draw, gap: number): number {
  const level = (draw.whole(0, 3) * Math.PI) / 2;
  return draw.pick([
    level,
    level + draw.between(-9, 9) * Math.sqrt(gap),
    level + gap * draw.between(-9, 9),
    draw.between(0, 7),
  ]);
}

/** A gap or an overlap of up to two gaps. */
function off(draw: Draw, gap: number): number {
  return draw.between(-2, 2) * gap;
}

function touching(draw: Draw, gap: number, make: (center: Point, radius: number) => Region): Region[] {
  const [r, s] = [draw.between(0.1, 0.4), draw.between(0.05, 0.4)];
  const way = direction(draw, gap);
  return [make(ORIGIN, r), make(polar(ORIGIN, way, r + s + off(draw, gap)), s)];
}

/** Shapes that touch, or miss or overlap by next to nothing. */
export const tangent: readonly OracleFamily[] = [
  { name: 'discs-touch', operands: (draw, gap) => touching(draw, gap, disc) },
  {
    name: 'discs-touch-within',
    operands: (draw, gap) => {
      const [r, s] = [draw.between(0.3, 0.5), draw.between(0.05, 0.29)];
      const way = direction(draw, gap);
      return [
        disc(ORIGIN, r),
        disc(polar(ORIGIN, way, r - s + off(draw, gap)), s),
        ...(draw.unit() < 0.5
          ? [disc(polar(ORIGIN, way + off(draw, gap), r + 0.1 + off(draw, gap)), 0.1)]
          : []),
      ];
    },
  },
  {
    name: 'rings-touch',
    operands: (draw, gap) => touching(draw, gap, (center, radius) => ring(center, radius, radius * 0.7)),
  },
  {
    name: 'ring-within-ring',
    operands: (draw, gap) => {
      const s = draw.between(0.05, 0.2);
      const way = direction(draw, gap);
      return [ring(ORIGIN, 0.5, 0.4), ring(polar(ORIGIN, way, 0.4 - s + off(draw, gap)), s, s * 0.6)];
    },
  },
  {
    name: 'disc-on-face',
    operands: (draw, gap) => {
      const angle = draw.pick([0, direction(draw, gap)]);
      const r = draw.between(0.05, 0.3);
      const away = 0.3 + draw.sign() * r + off(draw, gap);
      const along = draw.between(-0.5, 0.5);
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return [
        box(ORIGIN, 1, 0.6, angle),
        disc({ x: along * cos - away * sin, y: along * sin + away * cos }, r),
      ];
    },
  },
  {
    name: 'disc-between-faces',
    operands: (draw, gap) => {
      const r = 0.3 + off(draw, gap);
      return [
        box(ORIGIN, 1, 0.6, draw.pick([0, draw.between(-3, 3) * gap])),
        ...Array.from({ length: draw.whole(1, 3) }, () =>
          disc({ x: draw.between(-0.4, 0.4), y: off(draw, gap) }, r),
        ),
      ];
    },
  },
  {
    name: 'disc-at-corner',
    operands: (draw, gap) => {
      const reflex = { x: 0.4, y: 0.4 };
      const corners = [ORIGIN, { x: 1, y: 0 }, { x: 1, y: 0.4 }, reflex, { x: 0.4, y: 1 }, { x: 0, y: 1 }];
      const r = draw.between(0.1, 0.5);
      const way = draw.pick([draw.between(0, 7), (draw.whole(0, 7) * Math.PI) / 4]);
      return [polygon(corners), disc(polar(draw.pick(corners), way, r + off(draw, gap)), r)];
    },
  },
  {
    name: 'disc-on-hole',
    operands: (draw, gap) => {
      const [r, s] = [draw.between(0.1, 0.2), draw.between(0.05, 0.25)];
      const way = direction(draw, gap);
      const plate = box(ORIGIN, 1, 0.8)[0];
      const hole =
        disc(ORIGIN, r)[0]?.outer.map((edge) => ({ ...edge, a: edge.b, b: edge.a, ccw: false })) ?? [];
      const outline: Region = [{ outer: plate?.outer ?? [], holes: [[...hole].reverse() as never] }];
      return [outline, disc(polar(ORIGIN, way, draw.pick([r + s, r - s]) + off(draw, gap)), s)];
    },
  },
  {
    name: 'slot-on-disc',
    operands: (draw, gap) => {
      const [r, s] = [draw.between(0.05, 0.2), draw.between(0.05, 0.3)];
      const a = { x: -0.3, y: 0 };
      const b = { x: 0.3, y: 0 };
      const flank = { x: draw.between(-0.4, 0.4), y: draw.sign() * (r + draw.sign() * s) + off(draw, gap) };
      const end = polar(b, direction(draw, gap), r + s + off(draw, gap));
      return [slot(a, b, r), disc(draw.pick([flank, end]), s)];
    },
  },
  {
    name: 'slot-on-slot',
    operands: (draw, gap) => {
      const r = draw.between(0.05, 0.15);
      const turn = draw.pick([0, draw.between(-3, 3) * gap, draw.between(0, 3)]);
      const y = draw.pick([0, 2 * r]) + off(draw, gap);
      const x = draw.pick([draw.between(-0.3, 0.3), 0.4]);
      const a = { x, y };
      return [
        slot({ x: -0.2, y: 0 }, { x: 0.2, y: 0 }, r),
        slot(a, polar(a, turn, 0.4), r + draw.pick([0, off(draw, gap)])),
      ];
    },
  },
  {
    name: 'chain-touches',
    operands: (draw, gap) => {
      const way = direction(draw, gap);
      let at: Point = ORIGIN;
      let radius = draw.between(0.05, 0.15);
      return Array.from({ length: draw.whole(3, 8) }, (_, k) => {
        const s = draw.pick([radius, draw.between(0.05, 0.15)]);
        if (k > 0)
          at = polar(at, way + draw.pick([0, Math.PI / 3, off(draw, gap)]), radius + s + off(draw, gap));
        radius = k > 0 ? s : radius;
        return disc(at, radius);
      });
    },
  },
  {
    name: 'packed-discs',
    operands: (draw, gap) => {
      const r = 0.1;
      const hexagonal = draw.unit() < 0.5;
      const row = hexagonal ? Math.sqrt(3) * r : 2 * r;
      return Array.from({ length: 9 }, (_, k) => {
        const [i, j] = [k % 3, Math.floor(k / 3)];
        const shift = hexagonal && j % 2 === 1 ? r : 0;
        return disc(
          { x: 2 * r * i + shift + off(draw, gap), y: row * j + off(draw, gap) },
          r + off(draw, gap) / 2,
        );
      });
    },
  },
  {
    name: 'fillets-touch',
    operands: (draw, gap) => {
      const [r, s] = [draw.between(0.05, 0.2), draw.between(0.05, 0.2)];
      const center = { x: 0.5 - r, y: 0.3 - r };
      return [
        rounded(ORIGIN, 1, 0.6, r),
        disc(polar(center, draw.between(-0.2, Math.PI / 2 + 0.2), r + draw.sign() * s + off(draw, gap)), s),
      ];
    },
  },
];
