import {
  type AimDocument,
  area,
  contains,
  type DrawerTool,
  disc,
  type Edge,
  type Loop,
  type Point,
  type Region,
  type RegionPart,
  subtract,
} from '@edgebite/core';
import fc from 'fast-check';
import { evenly } from '../tools/evenly.js';

/** A part that was made of a plate by discs, and the aim that only tells its outline. */
export interface MadePart {
  readonly aim: AimDocument;
  readonly blank: Region;
  readonly finished: Region;
  /** A place of the finished part. */
  readonly keep: readonly [number, number];
  readonly discs: readonly { readonly center: Point; readonly radius: number }[];
}

const whole = (min: number, max: number) => fc.integer({ min, max });

const halves = (min: number, max: number) => whole(2 * min, 2 * max).map((n) => n / 2);

const drills = fc.record({
  kind: fc.constant('drill' as const),
  diameter: whole(3, 14),
  reach: fc.constantFrom(8, 25, 80),
});

const rings = fc
  .record({
    diameter: whole(12, 36),
    wall: whole(2, 5),
    reach: fc.constantFrom(6, 12, 25),
    pilot: fc.boolean(),
  })
  .map((ring) => ({ kind: 'annular cutter' as const, teeth: 6, ...ring }));

const heads = fc
  .record({ least: whole(8, 16), span: whole(4, 40), reach: fc.constantFrom(10, 60) })
  .map(({ least, span, reach }) => ({
    kind: 'boring head' as const,
    smallest: least,
    largest: least + span,
    bar: reach,
    maxSpeed: 1200,
  }));

const mills = fc
  .record({ diameter: whole(4, 20), reach: fc.constantFrom(8, 20, 40), centerCutting: fc.boolean() })
  .map((mill) => ({ kind: 'end mill' as const, teeth: 4, ...mill }));

/** Drawers of so many tools. */
export function drawers(minLength: number, maxLength: number): fc.Arbitrary<readonly DrawerTool[]> {
  return fc
    .array(fc.oneof(drills, rings, heads, mills), { minLength, maxLength })
    .map((tools) => tools.map((tool, k) => ({ id: `t${k}`, toolMaterial: 'HSS' as const, ...tool })));
}

/** Plates with so many discs taken out of them, of sizes that the drawer may have or not. */
export function madeParts(most: number, drawer: fc.Arbitrary<readonly DrawerTool[]>): fc.Arbitrary<MadePart> {
  return fc
    .record({
      width: whole(60, 140),
      height: whole(40, 90),
      thickness: whole(4, 20),
      drawer,
      arcs: fc.boolean(),
      discs: fc.array(
        fc.record({
          x: evenly(-0.05, 1.05),
          y: evenly(-0.05, 1.05),
          size: halves(4, 40),
          pick: fc.option(whole(0, 7), { freq: 2 }),
        }),
        { minLength: 1, maxLength: most },
      ),
    })
    .map(({ width, height, thickness, drawer: tools, arcs, discs }) => {
      const round = discs.map(({ x, y, size, pick }) => ({
        center: { x: Math.round(x * width), y: Math.round(y * height) },
        radius: (sizeIn(tools, pick) ?? size) / 2,
      }));
      return partOf({ width, height, thickness, arcs }, tools, round);
    })
    .filter((part): part is MadePart => part !== null);
}

function sizeIn(tools: readonly DrawerTool[], pick: number | null): number | null {
  const tool = pick === null ? undefined : tools[pick % tools.length];
  return tool === undefined || tool.kind === 'boring head' ? null : tool.diameter;
}

/** What there is, and whether the machine leads tools along arcs. */
export interface Plate {
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
  readonly arcs: boolean;
}

/** Null where nothing is taken, or what is left is not one plain piece. */
function partOf(plate: Plate, drawer: readonly DrawerTool[], all: MadePart['discs']): MadePart | null {
  const { width, height, thickness, arcs } = plate;
  const blank = rectangle(width, height);
  const finished = subtract(
    blank,
    all.map(({ center, radius }) => disc(center, radius)),
  );
  const [part, second] = finished;
  if (part === undefined || second !== undefined || area(blank) - area(finished) < 1) return null;
  const discs = shownIn(part, all);
  const hidden = subtract(
    subtract(blank, [finished]),
    discs.map(({ center, radius }) => disc(center, radius)),
  );
  if (area(hidden) > 1e-9) return null;
  if (!isPlain(part)) return null;
  const aim: AimDocument = {
    edgebite: 1,
    units: 'mm',
    blank: { rectangle: [width, height] },
    finished: { ...written(part.outer), holes: part.holes.map(written) },
    thickness,
    material: 'mild steel',
    drawer,
    arcs,
  };
  return { aim, blank, finished, keep: insideOf(finished), discs };
}

/** A place of a grid that lies in a region; the grid grows finer until there is one. */
export function insideOf(region: Region): Place {
  for (let n = 8; ; n *= 2) {
    for (let k = 0; k < n * n; k++) {
      const p = { x: (140 * ((k % n) + 0.5)) / n, y: (90 * (Math.floor(k / n) + 0.5)) / n };
      if (contains(region, p, 140 / n / 4) === 'inside') return place(p);
    }
  }
}

/** The discs of which an arc is to be seen, each once. */
function shownIn({ outer, holes }: RegionPart, all: MadePart['discs']): MadePart['discs'] {
  const edges = [outer, ...holes].flat();
  return all.filter(
    ({ center: { x, y }, radius }, k) =>
      edges.some((e) => e.kind === 'arc' && e.center.x === x && e.center.y === y && e.radius === radius) &&
      all.findIndex((one) => one.center.x === x && one.center.y === y && one.radius === radius) === k,
  );
}

/** A plate with its lower left corner at zero. */
export function rectangle(width: number, height: number): Region {
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return [
    { outer: corners.map((a, k) => ({ kind: 'line', a, b: corners[(k + 1) % 4] as Point })), holes: [] },
  ];
}

/** Whether no two corners of the loops come together: an outline that touches itself is no outline. */
export function isPlain({ outer, holes }: RegionPart): boolean {
  const corners = [outer, ...holes].flat().map(({ a }) => a);
  return !corners.some((p, k) => corners.slice(k + 1).some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-3));
}

type Place = readonly [number, number];

const place = ({ x, y }: Point): Place => [x, y];

/** A loop as a job has it: its numbers alone, without a word of what made it. */
export function written(loop: Loop): Extract<AimDocument['finished'], { readonly edges: unknown }> {
  return {
    edges: loop.map((edge: Edge) =>
      edge.kind === 'line'
        ? { kind: 'line', a: place(edge.a), b: place(edge.b) }
        : { kind: 'arc', a: place(edge.a), b: place(edge.b), center: place(edge.center), ccw: edge.ccw },
    ),
  };
}
