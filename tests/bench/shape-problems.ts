import {
  arcEdge,
  disc,
  type Edge,
  edgeLength,
  type Loop,
  lineEdge,
  offsetPath,
  type Point,
  type Region,
  ring,
  subtract,
} from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import { rounded } from '../tools/oracle/shapes.js';
import { slabsSubtract } from '../tools/slabs.js';
import { type CutProblem, cutting, ell, holeGrid, type OffsetProblem, SIZE } from './problems.js';

/** Two regions of which what lies in one of them only is wanted. */
export interface XorProblem {
  readonly kind: 'xor';
  readonly name: string;
  readonly operands: readonly [Region, Region];
  readonly expected: () => number;
}

/** A path that a round tool is driven along. */
export interface SweptProblem {
  readonly kind: 'swept';
  readonly name: string;
  readonly path: readonly Edge[];
  readonly radius: number;
  readonly expected: () => number;
}

function slot(a: Point, b: Point, radius: number, source: string): Region {
  return offsetPath([lineEdge(a, b, source)], radius);
}

function named(region: Region, source: string): Region {
  return region.map(({ outer, holes }) => ({ outer: outer.map((edge) => ({ ...edge, source })), holes }));
}

/** Slots in rows and columns of a plate; none touches another. */
function slots(columns: number, rows: number): { plate: Region; cuts: Region[]; left: number } {
  const [wide, high, radius, half] = [SIZE / columns, SIZE / 2 / rows, 0.9, 1];
  const cuts = Array.from({ length: columns * rows }, (_, k) => {
    const [x, y] = [((k % columns) + 0.5) * wide, (Math.floor(k / columns) + 0.5) * high];
    const turn = k * 0.7;
    const [dx, dy] = [half * Math.cos(turn), half * Math.sin(turn)];
    return slot({ x: x - dx, y: y - dy }, { x: x + dx, y: y + dy }, radius, `cut:${k}`);
  });
  const one = 4 * half * radius + Math.PI * radius ** 2;
  return { plate: boxRegion(0, 0, SIZE, SIZE / 2), cuts, left: (SIZE * SIZE) / 2 - cuts.length * one };
}

/** Numbers spread evenly over 0 to 1 that follow no row or column (additive recurrence of the golden section and its square). */
function scattered(k: number): readonly [number, number] {
  return [(k * 0.754877666246693) % 1, (k * 0.569840290998053) % 1];
}

/** A wheel of many low teeth, half of its edges tooth tips and half roots, all of them arcs. */
function gear(teeth: number, turn: number, source: string): Region {
  const [low, high] = [SIZE / 2 - 1, SIZE / 2];
  const at = (radius: number, step: number): Point => {
    const angle = turn + (Math.PI * step) / teeth / 2;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  };
  const center = { x: 0, y: 0 };
  const outer: Loop = Array.from({ length: teeth }, (_, k) => {
    const flank = 1.2;
    const [a, b, c, d] = [
      at(high, 4 * k),
      at(high, 4 * k + 1),
      at(low, 4 * k + 2),
      at(low, 4 * k + 3),
    ] as const;
    const next = at(high, 4 * (k + 1));
    return [
      arcEdge(a, b, center, true, source),
      bulged(b, c, flank, source),
      arcEdge(c, d, center, true, source),
      bulged(d, next, flank, source),
    ];
  }).flat();
  return [{ outer, holes: [] }];
}

/** A clockwise arc between two points, of a radius in units of their distance. */
function bulged(a: Point, b: Point, share: number, source: string): Edge {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const away = Math.sqrt(share ** 2 - 1 / 4);
  const center = { x: (a.x + b.x) / 2 + dy * away, y: (a.y + b.y) / 2 - dx * away };
  return arcEdge(a, b, center, false, source);
}

/** Rows to and fro, joined by half circles: lines and arcs that go over into each other. */
function serpentine(rows: number): Edge[] {
  const [long, step] = [90, 0.8];
  return Array.from({ length: rows }, (_, k) => {
    const [from, to] = k % 2 === 0 ? [0, long] : [long, 0];
    const [y, next] = [k * step, (k + 1) * step];
    const line = lineEdge({ x: from, y }, { x: to, y });
    const turn = arcEdge({ x: to, y }, { x: to, y: next }, { x: to, y: (y + next) / 2 }, k % 2 === 0);
    return [line, turn];
  }).flat();
}

/** Cutting cases of other shapes than discs apart. */
export function shapeCuts(): CutProblem[] {
  const bySlabs = (outline: Region, cuts: readonly Region[]) => () => slabsSubtract(outline, cuts).area;
  const plate = boxRegion(0, 0, SIZE, SIZE / 2);
  const crossing = [slot({ x: 60, y: -4 }, { x: 70, y: 12 }, 3, 'cut:0')];
  // Flush with the lower and the right face of the L from within.
  const flush = [disc({ x: 60, y: 5 }, 5, 'cut:0'), disc({ x: 92, y: 15 }, 8, 'cut:1')];
  const apart = slots(20, 10);
  const spread = (k: number): Point => {
    const [u, v] = scattered(k + 1);
    return { x: u * SIZE, y: (v * SIZE) / 2 };
  };
  const crowd = Array.from({ length: 200 }, (_, k) => disc(spread(k), 2 + (k % 5) * 0.7, `cut:${k}`));
  const touching = Array.from({ length: 400 }, (_, k) =>
    disc({ x: 2 + (k % 20) * 4, y: 2 + Math.floor(k / 20) * 4 }, 2, `cut:${k}`),
  );
  const square = boxRegion(0, 0, 80, 80);
  const rounds = Array.from({ length: 300 }, (_, k) =>
    named(rounded(spread(k), 6 + (k % 4), 4 + (k % 3), 1), `cut:${k}`),
  );
  const rings = Array.from({ length: 60 }, (_, k) => ring(spread(k), 8 + (k % 4), 6, `cut:${k}`));
  const more = { peers: ['clipper2'] };
  return [
    cutting('one-slot', ell, crossing, bySlabs(ell, crossing), more),
    cutting('flush-bores', ell, flush, bySlabs(ell, flush), more),
    cutting('200-slots', apart.plate, apart.cuts, () => apart.left, more),
    cutting('200-slots-in-turn', apart.plate, apart.cuts, () => apart.left, { ...more, inTurn: true }),
    cutting('200-crowd', plate, crowd, bySlabs(plate, crowd), { ...more, overlap: true }),
    // Holes that touch in their rows and columns, and the faces of the plate: 80² less 400 circles of radius 2.
    cutting('400-touching', square, touching, () => 6400 - 1600 * Math.PI, more),
    cutting('300-rounded', plate, rounds, bySlabs(plate, rounds), { ...more, overlap: true }),
    cutting('60-rings', plate, rings, bySlabs(plate, rings), { ...more, overlap: true }),
  ];
}

/** The plate of 200 holes, grown: outside with round corners, each hole smaller. */
export function platesToGrow(): OffsetProblem[] {
  const { plate, holes } = holeGrid(20, 10, 5);
  const [distance, radius] = [0.4, 1.75];
  return [
    {
      kind: 'offset',
      name: 'offset-200-holes',
      outline: subtract(plate, holes),
      distance,
      expected: () =>
        5000 + 300 * distance + Math.PI * distance ** 2 - 200 * Math.PI * (radius - distance) ** 2,
      peers: ['clipper2'],
    },
  ];
}

/**
 * Two wheels of 2,000 arcs, one of them turned a little further. A flank that turns by t sweeps over t (R² - r²) / 2, whatever
 * its shape, and no flank comes as far as the next one.
 */
export function xorProblems(): XorProblem[] {
  const [teeth, turn] = [500, 0.4 / 500];
  const operands = [gear(teeth, 0, 'a'), gear(teeth, turn, 'b')] as const;
  const flanks = 2 * teeth;
  const swept = (turn * ((SIZE / 2) ** 2 - (SIZE / 2 - 1) ** 2)) / 2;
  return [{ kind: 'xor', name: 'xor-gears', operands, expected: () => flanks * swept }];
}

/** 100 rows to and fro: a way of a length L takes 2 r L + pi r², as long as it comes near itself nowhere. */
export function sweptProblems(): SweptProblem[] {
  const path = serpentine(100);
  const length = path.reduce((sum, edge) => sum + edgeLength(edge), 0);
  const radius = 0.3;
  return [
    {
      kind: 'swept',
      name: 'swept-200',
      path,
      radius,
      expected: () => 2 * radius * length + Math.PI * radius ** 2,
    },
  ];
}
