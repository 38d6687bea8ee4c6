import type { EdgeDocument, OutlineDocument, ShapeDocument } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import { pointOf } from '../job/read-edges.js';
import { readShape } from '../job/read-shape.js';
import { type Motion, movedBy } from './motion.js';
import { onPaper } from './on-paper.js';
import { pair } from './plain-cut.js';

/** A mirror about the upright or the level middle line of a part. */
export type Mirror = Extract<Motion, { kind: 'mirror' }>;

type Shape = ShapeDocument | OutlineDocument;

/** A shape mirrored, its names with it; a drawing in words becomes edges, the outer loop first. Rectangles stay rectangles. */
export function mirroredShapes(shape: Shape, mirror: Mirror): ShapeDocument[] {
  const { holes: _, ...own } = shape as Shape & { readonly holes?: unknown };
  if ('rectangle' in own) return [{ ...own, at: cornerOf(own.rectangle, own.at ?? [0, 0], mirror) }];
  if ('circle' in own) return [{ ...own, at: mirroredPoint(own.at ?? [0, 0], mirror) }];
  if ('slot' in own) {
    const angle = own.angle === undefined ? {} : { angle: 0 - own.angle };
    return [{ ...own, at: mirroredPoint(own.at ?? [0, 0], mirror), ...angle }];
  }
  if ('edges' in own) return [{ ...own, edges: own.edges.map((edge) => writtenEdge(edge, mirror)) }];
  const drawn = readShape(own, '', '');
  const loops = drawn.ok ? drawn.value.loops : [];
  const { name } = own as { readonly name?: string };
  return loops.map((loop) => ({
    ...(name === undefined ? {} : { name }),
    edges: loop.map((edge) => writtenEdge(edgeDocument(edge), mirror)),
  }));
}

/**
 * The number that an edge of a shape has in the mirrored one: those of rectangles and slots are counted from the lower side
 * on counter-clockwise, whichever way they are mirrored; all others keep theirs.
 */
export function mirroredNumber(shape: Shape, number: number, { axis }: Mirror): number {
  const around = 'rectangle' in shape ? (shape.corner === undefined ? 4 : 8) : 'slot' in shape ? 4 : null;
  if (around === null) return number;
  return ((axis === 'x' ? around : (around * 3) / 2) - number) % around;
}

/** A place mirrored. */
export function mirroredPoint([x, y]: readonly [number, number], mirror: Mirror): [number, number] {
  return pair(movedBy([mirror], pointOf([x, y])));
}

/** The lower left corner of a mirrored rectangle. */
function cornerOf(
  [width, height]: readonly [number, number],
  [x, y]: readonly [number, number],
  { axis, twice }: Mirror,
): [number, number] {
  return axis === 'x'
    ? [onPaper([1, twice], [-1, x], [-1, width]), y]
    : [x, onPaper([1, twice], [-1, y], [-1, height])];
}

/** In the order in which it was drawn, so that edges keep their numbers; the loop then runs the other way. */
function writtenEdge(edge: EdgeDocument, mirror: Mirror): EdgeDocument {
  const ends = { a: mirroredPoint(edge.a, mirror), b: mirroredPoint(edge.b, mirror) };
  if (edge.kind === 'line') return { ...edge, ...ends };
  return { ...edge, ...ends, center: mirroredPoint(edge.center, mirror), ccw: !edge.ccw };
}

function edgeDocument(edge: Edge): EdgeDocument {
  const ends = { a: pair(edge.a), b: pair(edge.b) };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  return { kind: 'arc', ...ends, center: pair(edge.center), ccw: edge.ccw };
}
