import { arcEdge, disc, type Edge, lineEdge, type Point, type Region, sweptRegion } from '@edgebite/core';
import type { OracleFamily } from './families.js';
import { bowed, box, polar, polygon } from './shapes.js';

const ORIGIN: Point = { x: 0, y: 0 };

/** Edges far shorter than what they belong to, down to the gap. */
export const shortEdges: readonly OracleFamily[] = [
  {
    name: 'fine-bow',
    operands: (draw) => [
      bowed(1, 0.5, draw.between(0.001, 0.1), draw.whole(20, 400)),
      disc({ x: draw.between(0, 1), y: 0.5 }, draw.between(0.05, 0.4)),
    ],
  },
  {
    name: 'fine-circle',
    operands: (draw, gap) => {
      const sides = draw.whole(20, 400);
      const rim = Array.from({ length: sides }, (_, k) => polar(ORIGIN, (2 * Math.PI * k) / sides, 0.4));
      return [polygon(rim), disc({ x: draw.between(-2, 2) * gap, y: 0 }, 0.4 + draw.between(-2, 2) * gap)];
    },
  },
  {
    name: 'chamfers',
    operands: (draw, gap) => {
      const c = gap * draw.between(0.5, 20);
      const corners = [
        { x: -0.5 + c, y: -0.3 },
        { x: 0.5 - c, y: -0.3 },
        { x: 0.5, y: -0.3 + c },
        { x: 0.5, y: 0.3 - c },
        { x: 0.5 - c, y: 0.3 },
        { x: -0.5 + c, y: 0.3 },
        { x: -0.5, y: 0.3 - c },
        { x: -0.5, y: -0.3 + c },
      ];
      const r = draw.between(0.05, 0.3);
      return [
        polygon(corners),
        disc(draw.pick([draw.pick(corners), polar(draw.pick(corners), draw.between(0, 7), r)]), r),
        box({ x: 0.5, y: 0.3 }, draw.between(0.1, 0.3), draw.between(0.1, 0.3)),
      ];
    },
  },
  {
    name: 'zigzag',
    operands: (draw, gap) => {
      const steps = draw.whole(3, 40);
      const high = gap * draw.between(0.2, 5);
      const step = draw.pick([1 / steps, gap * draw.between(1, 50)]);
      const teeth = Array.from({ length: steps + 1 }, (_, k) => ({
        x: 0.5 - k * step,
        y: 0.3 + (k % 2) * high,
      }));
      const end = teeth[teeth.length - 1] as Point;
      return [
        polygon([
          { x: -0.6, y: -0.3 },
          { x: 0.6, y: -0.3 },
          ...teeth,
          { x: Math.min(-0.55, end.x - 0.05), y: 0.25 },
        ]),
        box({ x: draw.between(-0.3, 0.3), y: 0.4 + draw.between(-2, 2) * gap }, 0.3, 0.2),
        disc({ x: draw.between(-0.5, 0.5), y: 0.3 }, draw.between(0.05, 0.2)),
      ];
    },
  },
  {
    name: 'tiny-fillets',
    operands: (draw, gap) => {
      const r = gap * draw.between(1, 100);
      const edges: Edge[] = [];
      const corner = (x: number, y: number, sx: number, sy: number) => ({ x: x - sx * r, y: y - sy * r });
      const [w, h] = [0.5, 0.3];
      const centers = [
        corner(w, -h, 1, -1),
        corner(w, h, 1, 1),
        corner(-w, h, -1, 1),
        corner(-w, -h, -1, -1),
      ] as const;
      const ends: [Point, Point][] = [
        [
          { x: centers[0].x, y: -h },
          { x: w, y: centers[0].y },
        ],
        [
          { x: w, y: centers[1].y },
          { x: centers[1].x, y: h },
        ],
        [
          { x: centers[2].x, y: h },
          { x: -w, y: centers[2].y },
        ],
        [
          { x: -w, y: centers[3].y },
          { x: centers[3].x, y: -h },
        ],
      ];
      ends.forEach(([a, b], k) => {
        edges.push(arcEdge(a, b, centers[k] as Point, true));
        edges.push(lineEdge(b, (ends[(k + 1) % 4] as [Point, Point])[0]));
      });
      const part: Region = [{ outer: edges, holes: [] }];
      return [
        part,
        disc({ x: 0.5, y: 0.3 }, draw.pick([0.2, r, 2 * r])),
        box({ x: 0.4, y: 0.3 }, 0.2, draw.pick([r, 0.2])),
      ];
    },
  },
  {
    name: 'swept-in-steps',
    operands: (draw) => {
      const steps = draw.whole(5, 80);
      const turn = draw.between(0.2, 6);
      const at = (k: number) => polar(ORIGIN, (turn * k) / steps, 0.3);
      const path = Array.from({ length: steps }, (_, k) => lineEdge(at(k), at(k + 1)));
      return [sweptRegion(path, draw.between(0.02, 0.2)), box(ORIGIN, 0.7, 0.3)];
    },
  },
];
