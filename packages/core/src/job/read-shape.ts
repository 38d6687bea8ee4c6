import type { OutlineDocument, ShapeDocument } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import type { Chain } from '../outline/chain.js';
import { circle, rectangle, slot } from '../outline/shapes.js';
import { loopArea } from '../region/measure.js';
import { bad, good, pointOf, type Read, readEdges, readSvgPath, readWkt } from './read-edges.js';

/** The loops of a shape as drawn, the outer one first; whether they close is not checked yet. */
export interface DrawnShape {
  readonly loops: readonly (readonly Edge[])[];
  /** JSON Pointer to what draws it. */
  readonly path: string;
  /** Whether `path` is that of a list which has an entry for each edge. */
  readonly listed: boolean;
}

/**
 * The loops of a shape of a job.
 * @param path JSON Pointer to the shape
 * @param owner what the names of its edges start with
 */
export function readShape(
  shape: ShapeDocument | OutlineDocument,
  path: string,
  owner: string,
): Read<DrawnShape> {
  if ('rectangle' in shape) return readRectangle(shape, path, owner);
  if ('slot' in shape) return readSlot(shape, path, owner);
  if ('circle' in shape) {
    return built(path, () => circle(shape.circle, { at: shape.at && pointOf(shape.at), owner }));
  }
  if ('svgPath' in shape) {
    const read = readSvgPath(shape.svgPath, `${path}/svgPath`);
    return read.ok ? ready(outerFirst(read.value), `${path}/svgPath`) : read;
  }
  if ('wkt' in shape) {
    const read = readWkt(shape.wkt, `${path}/wkt`);
    if (!read.ok) return read;
    const chains = read.value.kind === 'curve' ? [read.value.chain] : read.value.rings;
    return ready(
      chains.map(({ edges }) => edges),
      `${path}/wkt`,
    );
  }
  const read = readEdges(shape.edges, `${path}/edges`);
  return read.ok ? good({ loops: [read.value], path: `${path}/edges`, listed: true }) : read;
}

/** A shape made of sizes that are right in themselves, but may be too small for where they are. */
function built(path: string, build: () => readonly Edge[]): Read<DrawnShape> {
  try {
    return ready([build()], path);
  } catch (error) {
    if (error instanceof RangeError) return bad(path, 'is too small to keep its shape so far from zero');
    throw error;
  }
}

function ready(loops: readonly (readonly Edge[])[], path: string): Read<DrawnShape> {
  return good({ loops, path, listed: false });
}

/** The loop round the others has the largest area; the others stay in order. */
function outerFirst(chains: readonly Chain[]): (readonly Edge[])[] {
  const loops = chains.map(({ edges }) => edges);
  const areas = loops.map((loop) => Math.abs(loopArea(loop)));
  const outer = areas.reduce((best, area, i) => (area > (areas[best] as number) ? i : best), 0);
  return [loops[outer] as readonly Edge[], ...loops.filter((_, i) => i !== outer)];
}

function readRectangle(
  shape: Extract<ShapeDocument, { rectangle: unknown }>,
  path: string,
  owner: string,
): Read<DrawnShape> {
  const [width, height] = shape.rectangle;
  const { corner } = shape;
  const most = Math.min(width, height) / 2;
  if (corner !== undefined && corner > most) {
    return bad(`${path}/corner`, `must be at most half the shorter side, ${most}; it is ${corner}`);
  }
  return built(path, () => rectangle(width, height, { at: shape.at && pointOf(shape.at), corner, owner }));
}

function readSlot(
  shape: Extract<ShapeDocument, { slot: unknown }>,
  path: string,
  owner: string,
): Read<DrawnShape> {
  const [length, width] = shape.slot;
  if (width > length) {
    return bad(
      `${path}/slot`,
      `must be [overall length, width] with the length not under the width; it is [${length}, ${width}]`,
    );
  }
  const angle = ((shape.angle ?? 0) * Math.PI) / 180;
  return built(path, () => slot(length, width, { at: shape.at && pointOf(shape.at), angle, owner }));
}
