import {
  type AimDocument,
  arcEdge,
  area,
  type DrawerTool,
  disc,
  type Point,
  type Region,
  subtract,
  sweptRegion,
} from '@edgebite/core';
import fc from 'fast-check';
import { evenly } from '../tools/evenly.js';
import { insideOf, isPlain, type Plate, rectangle, written } from './parts.js';

/** What was taken out of a plate. */
export interface Taken {
  readonly region: Region;
  /** Across it, and how far its tool went along; 0 for a round. */
  readonly size: number;
  readonly length: number;
  /** Whether it went along an arc. */
  readonly isBent: boolean;
  /** Null where it goes through. */
  readonly depth: number | null;
  readonly from: 'top' | 'bottom';
}

/** A part that was made of a plate by discs and swept slots, through and blind, and the aim that tells its shape only. */
export interface MixedPart {
  readonly aim: AimDocument;
  readonly blank: Region;
  readonly taken: readonly Taken[];
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const share = evenly(-0.05, 1.05);

const shapes = fc.record({
  x: share,
  y: share,
  length: fc.oneof(fc.constant(0), whole(5, 50)),
  // Degrees that it turns by on its way.
  bend: fc.option(whole(20, 320), { freq: 2 }),
  degrees: fc.oneof(fc.constantFrom(0, 90, 180, 45), whole(0, 359)),
  size: whole(4, 24),
  pick: fc.option(whole(0, 7), { freq: 3 }),
  depth: fc.option(evenly(0.2, 0.8), { freq: 2 }),
  from: fc.constantFrom('top' as const, 'bottom' as const),
});

/** Machines that turn as slow and as fast as one likes, or not. */
const machines = fc.option(
  fc.constantFrom({ slowest: 60, fastest: 2000 }, { slowest: 900 }, { fastest: 120 }),
  {
    freq: 3,
  },
);

/** Stops, and the tip of a finder, or not. */
const benches = fc.constantFrom<Partial<AimDocument>>(
  {},
  {},
  { stops: ['left', 'back'] },
  { stops: ['left'], tip: 10 },
  { stops: ['right', 'front'], tip: 6 },
  { tip: 10 },
);

/** Plates with so many discs, slots and pockets taken out of them. */
export function mixedParts(
  most: number,
  drawer: fc.Arbitrary<readonly DrawerTool[]>,
): fc.Arbitrary<MixedPart> {
  return fc
    .record({
      width: whole(60, 140),
      height: whole(40, 90),
      thickness: whole(4, 20),
      drawer,
      arcs: fc.boolean(),
      // Whether pieces are such as the tool of their size makes.
      apt: fc.boolean(),
      machine: machines,
      bench: benches,
      shapes: fc.array(shapes, { minLength: 1, maxLength: most }),
    })
    .map(({ width, height, thickness, drawer: tools, arcs, apt, machine, bench, shapes: all }) => {
      const taken = all.map((shape): Taken => {
        const { x, y, degrees, size, pick, from, bend } = shape;
        const at = { x: Math.round(x * width), y: Math.round(y * height) };
        const tool = pick === null && !apt ? undefined : tools[(pick ?? 0) % tools.length];
        const across = tool === undefined || tool.kind === 'boring head' ? size : tool.diameter;
        // Only a mill goes along, or leaves a square floor.
        const isBare = apt && tool !== undefined && tool.kind !== 'end mill';
        const length = isBare ? 0 : shape.length;
        const depth = isBare || shape.depth === null ? null : Math.round(shape.depth * thickness * 10) / 10;
        return {
          region: shapeOf(at, length, degrees, across, bend),
          size: across,
          length,
          isBent: length > 0 && bend !== null && (length / bend) * (180 / Math.PI) > 0.6 * across,
          depth,
          from: depth === null ? 'top' : from,
        };
      });
      return partOf(
        { width, height, thickness, arcs },
        { ...bench, ...(machine === null ? {} : { machine }) },
        tools,
        taken,
      );
    })
    .filter((part): part is MixedPart => part !== null);
}

function shapeOf(at: Point, length: number, degrees: number, size: number, bend: number | null): Region {
  if (length === 0) return disc(at, size / 2);
  // An arc that is too narrow for its tool would come out as no slot.
  const radius = bend === null ? 0 : (length / bend) * (180 / Math.PI);
  if (bend !== null && radius > 0.6 * size) return bent(at, radius, degrees, bend, size);
  const turn = (degrees * Math.PI) / 180;
  const b = { x: at.x + length * Math.cos(turn), y: at.y + length * Math.sin(turn) };
  return sweptRegion([{ kind: 'line', a: at, b }], size / 2);
}

function bent(center: Point, radius: number, degrees: number, bend: number, size: number): Region {
  const on = (angle: number): Point => ({
    x: center.x + radius * Math.cos((angle * Math.PI) / 180),
    y: center.y + radius * Math.sin((angle * Math.PI) / 180),
  });
  const path = arcEdge(on(degrees), on(degrees + bend), center, true);
  return sweptRegion([path], size / 2);
}

function partOf(
  plate: Plate,
  more: Partial<AimDocument>,
  drawer: readonly DrawerTool[],
  taken: readonly Taken[],
): MixedPart | null {
  const { width, height, thickness, arcs } = plate;
  const blank = rectangle(width, height);
  const through = taken.flatMap(({ region, depth }) => (depth === null ? [region] : []));
  const finished = through.length === 0 ? blank : subtract(blank, through);
  const floors = taken.flatMap(({ region, depth }) => (depth === null ? [] : [region]));
  const [part] = finished;
  const whole = floors.length === 0 ? finished : subtract(finished, floors);
  if (part === undefined || finished.length > 1 || !isPlain(part) || area(whole) < 0.3 * area(blank))
    return null;
  const aim: AimDocument = {
    edgebite: 1,
    units: 'mm',
    blank: { rectangle: [width, height] },
    finished: { ...written(part.outer), holes: part.holes.map(written) },
    // A slot round an arc can come back to itself and leave an island.
    pockets: taken.flatMap(({ region: [pocket], depth, from }) =>
      depth === null || pocket === undefined
        ? []
        : [{ ...written(pocket.outer), islands: pocket.holes.map(written), depth, from }],
    ),
    keep: insideOf(whole),
    thickness,
    material: 'mild steel',
    ...more,
    drawer,
    arcs,
  };
  return { aim, blank, taken };
}

/** What is left of a mixed part at a height over its bottom. */
export function leftAt({ aim: { thickness }, blank, taken }: MixedPart, height: number): Region {
  return subtract(
    blank,
    taken.flatMap(({ region, depth, from }) => {
      const isOpen = depth === null || (from === 'top' ? height > thickness - depth : height < depth);
      return isOpen ? [region] : [];
    }),
  );
}
